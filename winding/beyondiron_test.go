package winding

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// findingAt is the finding at a path, nil where there is none.
func findingAt(o *Outcome, path string) *Finding {
	for i := range o.Findings {
		if o.Findings[i].Path == path {
			return &o.Findings[i]
		}
	}
	return nil
}

// A trial coil whose speed and volts were swapped is reported at its own field, with the possible
// values, and the teeth are not mentioned.
func TestASwappedTrialCoilIsCalledOutItself(t *testing.T) {
	j := loadJob(t, "trial-coil")
	o := Evaluate(j)
	assert.Nil(t, findingAt(&o, "coil[0].voltage"))
	c := &j.Coils[0]
	c.RPM, c.Volts = c.Volts, c.RPM
	o = Evaluate(j)
	f := findingAt(&o, "coil[0].voltage")
	if assert.NotNil(t, f) {
		assert.Equal(t, Broken, f.Severity)
		assert.Contains(t, f.Fix, "swap speed and volts?")
	}
	j.Coils = j.Coils[:1]
	assert.False(t, Evaluate(j).Trials[0].LinePerRPM.Known(), "nothing follows from it")
	for _, f := range o.Findings {
		assert.False(t, strings.Contains(f.Text, "the teeth"), f.Text)
	}
}

// The most volts of a turn are those of the flux of a whole pole at 2 T, by the frequency for any
// number of poles: computed here pole by pole.
func TestTheMostVoltsOfATurnAreThoseOfFullIron(t *testing.T) {
	for _, poles := range []float64{4, 12, 30} {
		j := loadJob(t, "trial-coil")
		j.Machine.Poles = quantity.Known(poles)
		pitch := math.Pi * j.Machine.BoreMM.Value / 1000 / poles
		webers := 2 / math.Pi * 2.0 * pitch * j.Machine.StackMM.Value / 1000
		want := 4.4429 * (poles / 120) * webers
		b := Prepare(j)
		assert.InEpsilon(t, want, b.machine.mostPerTurn().Value, 1e-4)
	}
}

// A winding colder than its air after an hour is doubted in both units; one as warm as its air is not.
func TestAWindingColderThanItsAirIsDoubted(t *testing.T) {
	j := loadJob(t, "trial-coil")
	j.AsWound = []job.AsWound{{Trial: j.Trials[0].Name, WarmC: quantity.Known(14), WarmAirC: quantity.Known(22)}}
	o := Evaluate(j)
	f := findingAt(&o, "wound[0].warm")
	if assert.NotNil(t, f) {
		assert.Contains(t, f.Text, "14 °C (57 °F) is colder than its air, 22 °C (72 °F)")
	}
	j.AsWound[0].WarmC = quantity.Known(22)
	o = Evaluate(j)
	assert.Nil(t, findingAt(&o, "wound[0].warm"))
}
