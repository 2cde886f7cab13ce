package winding_test

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every figure says where it comes from, by existing fields.
func TestEveryFigureSaysHow(t *testing.T) {
	for _, f := range winding.Outputs() {
		h := winding.HowOf(f.ID)
		require.NotEmpty(t, h.Formula, f.ID)
		require.NotEmpty(t, h.Source, f.ID)
		require.NotEmpty(t, h.Takes, f.ID)
		assert.NotContains(t, h.Words(), "{", f.ID)
		for _, take := range h.Takes {
			if table, many := strings.CutSuffix(take, "."); many {
				_, ok := job.TableOf(table)
				assert.True(t, ok, "%s: %s", f.ID, take)
				continue
			}
			_, ok := job.InputAt(take)
			assert.True(t, ok, "%s: %s", f.ID, take)
		}
	}
}

// The named inputs are complete: whatever reading of a job is changed, the figures that change with it
// name it.
func TestTheInputsOfAFigureAreAllNamed(t *testing.T) {
	moved := 0
	for _, name := range []string{"example", "wind-good", "fixed", "engine", "amps-readings", "plate-and-began", "trial-coil"} {
		d := job.Example()
		if name != "example" {
			text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
			require.NoError(t, err)
			d = job.Parse(string(text))
		}
		before := winding.Prepare(d.Job()).WithoutOffers().Outcome()
		for _, table := range []string{"machine", "slot", "old", "spin", "short", "amps", "coil", "field", "drive", "drive_point", "battery", "target", "trial"} {
			for _, in := range job.InputsOf(table) {
				path, f := in.PathAt(0), in.PathAt(0)
				if i := strings.IndexByte(f, '['); i >= 0 {
					f = f[:i] + f[strings.IndexByte(f, ']')+1:]
				}
				text, _, given := d.Typed(path)
				var v float64
				if _, err := fmt.Sscan(strings.TrimPrefix(text, "~"), &v); !given || in.Kind != job.Number || err != nil {
					continue
				}
				after := winding.Prepare(d.Set(path, quantity.Number(v*1.01, 6), quantity.Choice{}).Job()).WithoutOffers().Outcome()
				for _, o := range winding.Outputs() {
					a, b := o.Of(&before.Trials[0]), o.Of(&after.Trials[0])
					if a.Known() && b.Known() && math.Abs(a.Value-b.Value) > 1e-6*math.Abs(a.Value) {
						moved++
						h := winding.HowOf(o.ID)
						j := d.Job()
						assert.True(t, h.UsesIn(&j, f), "%s: %s moves %s", name, f, o.ID)
					}
				}
			}
		}
	}
	assert.Greater(t, moved, 200)
}

// Volts depend on what the old winding gave, not on its wire; the wire replaces its ohms where amps are
// solved without measured ohms.
func TestVoltsNameTheOldInputsThatWeigh(t *testing.T) {
	h := winding.HowOf("volts_line_rms_per_1000rpm")
	j := load(t, "amps-readings.toml")
	require.True(t, j.Old.LeadOhms.Given())
	assert.True(t, h.UsesIn(&j, "old.turns"))
	assert.True(t, h.UsesIn(&j, "old.lead"))
	assert.False(t, h.UsesIn(&j, "old.gauge"))
	ohms := winding.HowOf("lead_ohms_20c")
	j.Machine.MeanTurnMM = quantity.Reading{}
	assert.True(t, ohms.UsesIn(&j, "old.gauge"), "the mean turn goes by it")
	j.Old.LeadOhms = quantity.Reading{}
	assert.True(t, h.UsesIn(&j, "old.gauge"))
}

// The formula with its numbers has each figure as it is written elsewhere, in the preferred units.
func TestTheFormulaWithItsNumbers(t *testing.T) {
	j := job.Example().Job()
	o := winding.Evaluate(j)
	h := winding.HowOf("cut_in_rpm")
	assert.Equal(t, "(battery at rest + two diodes) / peak volts for each rpm, at the field that the battery drives at rest where it feeds the rotor", h.Words())
	text := h.Numbers(&j, &o.Machine, &o.Trials[0], quantity.Choice{})
	var rest, drop, per, field float64
	_, err := fmt.Sscanf(text, "= (%f V + 2 × %f V) / (%f V × %f)", &rest, &drop, &per, &field)
	require.NoError(t, err, text)
	assert.InEpsilon(t, o.Trials[0].CutInRPM.Value, (rest+2*drop)/(per*field), 0.005)
	held := j
	held.Field.Amps = quantity.Known(o.Machine.FieldAmps.Value)
	alike := winding.Evaluate(held)
	text = h.Numbers(&held, &alike.Machine, &alike.Trials[0], quantity.Choice{})
	_, err = fmt.Sscanf(text, "= (%f V + 2 × %f V) / %f V", &rest, &drop, &per)
	require.NoError(t, err, text)
	assert.InEpsilon(t, alike.Trials[0].CutInRPM.Value, (rest+2*drop)/per, 0.005)
	h = winding.HowOf("volts_dc_open_top")
	assert.Equal(t, "“DC peak per 1 rpm” × “top”", h.Words())
	h = winding.HowOf("mean_turn_mm")
	assert.Empty(t, h.Numbers(&j, &o.Machine, &o.Trials[0], quantity.Choice{}), "it names no figure")
	h = winding.HowOf("metal_kg")
	assert.Contains(t, h.Numbers(&j, &o.Machine, &o.Trials[0], quantity.Choice{Inch: true}), " m × ", "the formula holds as it is written")
	h = winding.HowOf("wire_fill")
	assert.Contains(t, h.Numbers(&j, &o.Machine, &o.Trials[0], quantity.Choice{Inch: true}), " in)²")
}

// Exactly the inputs that matter in a figure are named: no magnets of a wound rotor, no plate and no
// cooling in a weight, no iron where the mean turn was derived from the old ohms.
func TestOnlyWhatAFigureRestsOnIsNamed(t *testing.T) {
	j := load(t, "amps-readings.toml")
	j.Field.Kind, j.Machine.MeanTurnMM = "wound", quantity.Reading{}
	require.True(t, j.Old.LeadOhms.Given() && !j.Old.Bundle().IsZero())
	volts, kilos, turn, amps := winding.HowOf("volts_line_rms_per_1000rpm"), winding.HowOf("wire_to_buy_kg"), winding.HowOf("mean_turn_mm"), winding.HowOf("amps_dc_usual")
	for _, field := range []string{"field.cover", "field.leakage", "field.magnet_at", "field.remanence"} {
		assert.False(t, volts.UsesIn(&j, field), field)
	}
	for _, field := range []string{"old.plate_current", "machine.cooling", "machine.thermal_class", "machine.ambient", "machine.bore", "machine.stack", "slot.area"} {
		assert.False(t, kilos.UsesIn(&j, field), field)
		assert.True(t, amps.UsesIn(&j, field), field)
	}
	assert.True(t, turn.UsesIn(&j, "old.lead"))
	assert.False(t, turn.UsesIn(&j, "machine.bore"))
	j.Old.LeadOhms = quantity.Reading{}
	assert.False(t, turn.UsesIn(&j, "old.gauge"))
	assert.True(t, turn.UsesIn(&j, "machine.bore") && turn.UsesIn(&j, "slot.area"))
	j.Field.Kind = "magnets"
	assert.True(t, volts.UsesIn(&j, "field.cover"))
}
