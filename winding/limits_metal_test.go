package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// limitNamed is a trial's limit of a name.
func limitNamed(t *testing.T, o *winding.TrialOutcome, name string) *winding.Limit {
	for i := range o.Each {
		if o.Each[i].Name == name {
			return &o.Each[i]
		}
	}
	require.Fail(t, "no limit of that name", name)
	return nil
}

// Wires of the same size make equal heat per metre at equal I²·ρ: aluminium of 61 % IACS (IEC 60889)
// then carries √0.61 = 0.781 of what copper does, 3.71 A/mm² for copper's 4.75.
func TestAluminiumStandsLessThanCopperOfItsSize(t *testing.T) {
	j := ready()
	copper := evaluateA(j)
	j.Trials[0].Metal = wiretable.Aluminium
	alu := evaluateA(j)
	of, was := limitNamed(t, &alu, "density"), limitNamed(t, &copper, "density")
	assert.InEpsilon(t, math.Sqrt(0.61), of.AmpsDC.Value/was.AmpsDC.Value, 1e-4)
	assert.Contains(t, was.Reason, "4.8 A/mm²")
	assert.Contains(t, of.Reason, "3.7 A/mm² (532 circular mils per ampere), open, for aluminium at the heat that 4.8 make in copper")
	per := func(o *winding.TrialOutcome, l *winding.Limit) float64 {
		return math.Pow(l.AmpsDC.Value, 2) * o.PhaseOhms20.Value
	}
	assert.InEpsilon(t, per(&copper, was), per(&alu, of), 1e-4, "the same watts in the same coils")
}

// The density that the plate's amps proved for copper means no more than the same heat in aluminium.
func TestAProvedDensityIsTheOldMetals(t *testing.T) {
	j := ready()
	j.Old.RatedAmps, j.Old.RatedRPM = quantity.Known(20), quantity.Known(900)
	copper := evaluateA(j)
	j.Trials[0].Metal = wiretable.Aluminium
	alu := evaluateA(j)
	of, was := limitNamed(t, &alu, "old density"), limitNamed(t, &copper, "old density")
	assert.InEpsilon(t, 20.0, was.AmpsDC.Value, 1e-9, "the old winding again")
	assert.InEpsilon(t, 20*math.Sqrt(0.61), of.AmpsDC.Value, 1e-4)
	assert.Contains(t, of.Reason, "for aluminium at the heat of the")
	j.Old.Metal = wiretable.Aluminium
	again := evaluateA(j)
	assert.InEpsilon(t, 20.0, limitNamed(t, &again, "old density").AmpsDC.Value, 1e-9)
}
