package winding

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Figures that need a running winding are marked with the reason for one that cannot be wound; its
// dimensions are not.
func TestWhatCannotBeWoundBringsNothing(t *testing.T) {
	kinds := map[string]func(*job.Trial, *TrialOutcome){
		"does not fit": func(t *job.Trial, o *TrialOutcome) { t.Turns = quantity.Known(o.TurnsThatFit.Value + 1) },
		"":             func(t *job.Trial, o *TrialOutcome) { t.Turns = quantity.Known(o.TurnsThatFit.Value) },
	}
	for _, name := range []string{"vane-on-a-mast", "pedals", "water", "engine"} {
		for why, change := range kinds {
			j := loadJob(t, name)
			before := Evaluate(j)
			change(&j.Trials[0], &before.Trials[0])
			o := Evaluate(j)
			marked, figures := 0, 0
			for _, f := range Outputs() {
				a := &o.Trials[0]
				c := o.Row(&f, name == "vane-on-a-mast").Cells[0]
				if !f.Runs || !c.Figure.Known() {
					assert.Empty(t, c.Unwound)
					continue
				}
				figures++
				if why == "" {
					assert.Empty(t, c.Unwound)
					continue
				}
				require.False(t, a.Fits())
				assert.Contains(t, c.Unwound, why, f.ID)
				if assert.Equal(t, Past, c.Verdict, "%s %s", name, f.ID) {
					marked++
				}
			}
			assert.Greater(t, figures, 5, name)
			assert.Equal(t, why != "", marked > 0)
		}
	}
}

// Every figure of amps and watts delivered, and the year, requires a winding that can be wound.
func TestWhatRunsIsNamed(t *testing.T) {
	for _, id := range []string{"amps_dc_slow", "amps_dc_usual", "amps_dc_top", "amps_dc_usual_empty", "amps_dc_usual_absorbing", "net_w_usual", "efficiency_usual", "year_kwh", "full_power_amps_dc"} {
		assert.True(t, OutputOf(id).Runs, id)
	}
	for _, id := range []string{"lead_ohms_20c", "wire_fill", "cut_in_rpm", "volts_line_rms_per_1000rpm"} {
		assert.False(t, OutputOf(id).Runs, id)
	}
}
