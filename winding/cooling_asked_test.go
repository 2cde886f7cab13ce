package winding

import (
	"testing"

	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// The kind of cooling is asked for where it was not given and a winding that fits exceeds, under the
// assumed one, what it withstands; not where it was given, or where all withstand it.
func TestCoolingIsAskedForWhereItMatters(t *testing.T) {
	mouth := 4.0
	asked := func(cooling string, kelvin quantity.Reading, turns float64) (text string) {
		j := loadJob(t, "vane-on-a-mast")
		j.Machine.Cooling, j.Machine.KelvinPerWatt = cooling, kelvin
		j.Trials, j.Slot.MouthMM = j.Trials[:1], quantity.Known(mouth)
		j.Trials[0].Turns = quantity.Known(turns)
		o := Evaluate(j)
		for _, f := range o.Findings {
			if f.Path == "machine.cooling" {
				text += f.Text
				assert.Equal(t, Doubt, f.Severity)
			}
		}
		assert.Equal(t, turns < 16 || mouth < 1, !o.Trials[0].stands(&o.Machine) || !o.Trials[0].Fits(), "%g turns", turns)
		return text
	}
	none := quantity.Reading{}
	assert.Contains(t, asked("", none, 12), "taken as open: with that the winding of trial A gets too hot")
	assert.Empty(t, asked("open", none, 12), "it was said")
	assert.Empty(t, asked("", quantity.Known(2), 12), "what it is asked for is known")
	assert.Empty(t, asked("", none, 30), "nothing hangs on it")
	mouth = 0.8
	assert.Empty(t, asked("", none, 12), "it cannot be wound")
}
