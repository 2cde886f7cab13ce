package wound_test

import (
	"math"
	"os"
	"slices"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// byHand is the example's first trial, with ohms and volts read as multiples of the plan.
func byHand(t *testing.T, change func(*job.Trial), ohms, volts, began float64) *wound.Record {
	j := job.Example().Job()
	j.Trials = []job.Trial{j.Trials[0]}
	change(&j.Trials[0])
	plan := winding.Evaluate(j).Trials[0]
	r := job.AsWound{RPM: quantity.Known(600), LeadOhmsC: quantity.Known(20)}
	if ohms > 0 {
		r.LeadOhms = quantity.Known(ohms * plan.LeadOhms20.Value)
	}
	if volts > 0 {
		r.LineVolts = quantity.Known(volts * plan.LinePerRPM.Value * 600)
	}
	if began > 0 {
		r.CutInRPM = quantity.Known(began * plan.CutInRPM.Value)
	}
	j.AsWound = []job.AsWound{r}
	return &winding.Evaluate(j).Wound[0]
}

// Worked by hand for faults in one phase. A star of 1, 1 and 2 Ω: pairs 2, 3 and 3, mean 8/3 of 2
// planned, ×4/3. A delta with one of three open: pairs 2, 1 and 1 of a phase's ohms, mean
// 4/3 of 2/3 planned, ×2, its volts as they were; of 1, 1 and 2 Ω: pairs 3/4, 3/4 and 1, mean
// 5/6 of 2/3, ×5/4. A star with one phase turned round: pairs 1, 1
// and √3 of a phase's volts, mean 1.244 of 1.732, ×0.718.
func TestFaultsOfOnePhaseByHand(t *testing.T) {
	two := func(t *job.Trial) { t.Strands = quantity.Known(2) }
	delta := func(t *job.Trial) { t.Connection = layout.Delta }
	twoInDelta := func(t *job.Trial) { two(t); delta(t) }
	as := func(*job.Trial) {}
	for _, c := range []struct {
		change             func(*job.Trial)
		ohms, volts, began float64
		want               string
	}{
		{two, 4.0 / 3, 1, 0, "1 strand of 2 open in one phase: the pairs are unlike"},
		{twoInDelta, 5.0 / 4, 1, 0, "1 strand of 2 open in one phase: the pairs are unlike"},
		{delta, 2, 1, 1, "one phase of the delta open: one pair reads twice the others"},
		{as, 1, (2 + math.Sqrt(3)) / 3 / math.Sqrt(3), 1, "one phase turned round: two pairs read 58 % of the third"},
		{as, 0.5, 1 / math.Sqrt(3), 1, "read between a lead and the star point, not between two leads"},
		{as, 1, 1 / math.Sqrt(3), 1, "the volts read between a lead and the star point, not between two leads"},
		{as, 1.0 / 3, 1 / math.Sqrt(3), 0, "joined in delta, not star"},
		{delta, 3, math.Sqrt(3), 0, "joined in star, not delta"},
		{two, 4, 2, 0.5, "its 2 strands joined in series, not side by side"},
		{as, 1, 0.5, 2, "the tachometer showing twice the speed"},
	} {
		list := byHand(t, c.change, c.ohms, c.volts, c.began).Likely
		require.NotEmpty(t, list, c.want)
		assert.Equal(t, c.want, list[0].Fault, "%+v", list)
	}
}

// A fault is named once; ohms that no connection explains are called open or shorted; ohms explained
// only by a fault that the volts do not confirm say so; and volts contradicted by a cut-in speed are to
// be read again.
func TestWhatAReadingSpeaksOf(t *testing.T) {
	speaks := func(ohms, volts, began float64) map[string]string {
		said := map[string]string{}
		for _, c := range byHand(t, func(*job.Trial) {}, ohms, volts, began).Checks() {
			said[c.Field] = c.Speaks()
		}
		return said
	}
	s := speaks(1.0/3, 1/math.Sqrt(3), math.Sqrt(3))
	assert.Equal(t, "likely joined in delta, not star (ohms ×0.33, volts ×0.58)", s["lead"])
	assert.Equal(t, "the same, as with ohms at 20 °C", s["line"])
	assert.Equal(t, "the same, as with ohms at 20 °C", s["cut_in"])
	assert.Contains(t, speaks(276, 0, 0)["lead"], "open: a lead or a joint not connected")
	assert.Contains(t, speaks(0.01, 0, 0)["lead"], "shorted:")
	assert.Contains(t, speaks(1, 0.02, 0)["line"], "as good as none: a lead or the star point not connected")
	s = speaks(1.0/3, 1.27, 0)
	assert.Contains(t, s["lead"], "joined in delta, not star (ohms ×0.33, volts ×0.58), which the volts do not confirm")
	assert.Contains(t, s["line"], "speed or field current more than said")
	assert.Contains(t, speaks(1, 0.31, 1)["line"], "it begins to charge as if its volts were right: read them again")
	assert.NotContains(t, speaks(1, 0.8, 1.25)["line"], "begins to charge as if", "both say the same")
	assert.Contains(t, speaks(1.13, 1, 1)["lead"], "cold joint", "no join makes it")
}

// The finding about a record names the fault, once.
func TestAFaultIsCalledOutOnce(t *testing.T) {
	j := job.Example().Job()
	j.Trials = []job.Trial{j.Trials[0]}
	plan := winding.Evaluate(j).Trials[0]
	j.AsWound = []job.AsWound{{LeadOhms: quantity.Known(plan.LeadOhms20.Value / 3), LeadOhmsC: quantity.Known(20),
		LineVolts: quantity.Known(plan.LinePerRPM.Value * 600 / math.Sqrt(3)), RPM: quantity.Known(600)}}
	n := 0
	for _, f := range winding.Evaluate(j).Findings {
		if len(f.Text) > 0 && slices.Contains([]string{"wound[0].lead", "wound[0].line"}, f.Path) {
			if f.Path == "wound[0].lead" {
				assert.Contains(t, f.Text, ": likely joined in delta, not star")
			} else {
				assert.NotContains(t, f.Text, "likely")
			}
			n++
		}
	}
	assert.Equal(t, 2, n)
}

// One phase of ten coils, in one, two and five circuits: one coil turned round leaves 1 − 2/10 of its volts.
func TestACoilOfASinglePhaseTurnedRound(t *testing.T) {
	for _, circuits := range []int{1, 2, 5} {
		text, err := os.ReadFile("../../testdata/jobs/flywheel-ten-of-twelve.toml")
		require.NoError(t, err)
		j := job.Parse(string(text)).Job()
		j.Trials = j.Trials[:1]
		j.Trials[0].Circuits = quantity.Known(float64(circuits))
		made := winding.Evaluate(j).Trials[0]
		require.True(t, made.LinePerRPM.Known(), made.LinePerRPM.Why)
		volts := func(part float64) []wound.Likely {
			j.AsWound = []job.AsWound{{Trial: made.Name, RPM: quantity.Known(1000), LineVolts: quantity.Known(part * made.LinePerRPM.Value * 1000),
				LeadOhms: quantity.Known(made.LeadOhms20.Value), LeadOhmsC: quantity.Known(20)}}
			return winding.Evaluate(j).Wound[0].Likely
		}
		list := volts(0.8)
		require.NotEmpty(t, list, circuits)
		assert.Equal(t, "one coil of 10 turned round", list[0].Fault)
		assert.Empty(t, volts(1))
	}
}
