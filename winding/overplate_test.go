package winding_test

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// said counts the findings that contain the words.
func said(o *winding.Outcome, words string) int {
	n := 0
	for _, f := range o.Findings {
		if strings.Contains(f.Text+" → "+f.Fix, words) {
			n++
		}
	}
	return n
}

// By hand: 3.4 Ω at 20 °C are 3.4·(234.5 + 80)/(234.5 + 20) = 4.2016 Ω in service, and the brushes drop
// 1 V: from 14 V the coil takes 13/4.2016 = 3.094 A, from 24 V 5.474 A, 1.769 times that and 3.13 times
// its heat. Limited to 3.8 A, 1.23 times, there is no finding.
func TestARotorMadeForFewerVolts(t *testing.T) {
	j := load(t, "engine.toml")
	j.Field.Amps, j.Field.Ohms, j.Field.Volts = quantity.Reading{}, quantity.Known(3.4), quantity.Known(24)
	j.Old.RatedVolts = quantity.Known(14)
	o := winding.Evaluate(j)
	assert.Equal(t, 1, said(&o, "the rotor coil takes 5.47 A here, on its plate's 14 V it takes 3.09 A: 3.1 times the heat"))
	assert.Equal(t, 1, said(&o, "hold the field to 3.1 A"))
	j.Field.Amps = quantity.Known(3.8)
	o = winding.Evaluate(j)
	assert.Zero(t, said(&o, "times the heat"))
	j.Field.Amps, j.Old.RatedVolts = quantity.Reading{}, quantity.Reading{}
	o = winding.Evaluate(j)
	assert.Zero(t, said(&o, "times the heat"), "no plate, nothing to hold it against")
}

// A joint fit keeps the doubt about a field current above all readings where the open-circuit volts
// decide, and not where the plate does, which was read in service.
func TestSolvedTogetherKeepsTheDoubtAbove(t *testing.T) {
	j := load(t, "engine.toml") // read at 1 and 2.5 A
	j.Old.RatedAmps, j.Old.RatedVolts, j.Old.RatedRPM = quantity.Known(60), quantity.Known(14), quantity.Known(6000)
	off := func(amps float64) (winding.Outcome, float64) {
		j.Field.Amps = quantity.Known(amps)
		o := winding.Evaluate(j)
		assert.Contains(t, o.Machine.FluxFrom, "solved together; decided by spin-up volts")
		return o, o.Trials[0].LinePerRPM.PlusMinus / o.Trials[0].LinePerRPM.Value
	}
	_, within := off(2.4)
	above, far := off(4)
	assert.Less(t, within, 0.03)
	assert.Greater(t, far, 0.08)
	assert.Equal(t, 1, said(&above, "is above the highest one read: the flux there is a guess, ±"))
}
