package winding_test

import (
	"math"
	"reflect"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

func plusMinus(v, pm float64) quantity.Reading {
	return quantity.Reading{Value: v, PlusMinus: pm, Origin: quantity.Measured}
}

// Laws that are exact: volts go with the flux, ohms with the mean turn, fill against the
// slot; independent tolerances add as squares (JCGM 100:2008, 5.1.2).
func TestTolerancesAreFollowed(t *testing.T) {
	j := ready()
	j.Battery.DiodeVolts = quantity.Known(0.75)
	j.Field.GapTesla = plusMinus(0.5, 0.025)
	j.Machine.MeanTurnMM = plusMinus(200, 8)
	j.Slot.AreaMM2 = plusMinus(60, 1.5)
	before := j
	a := evaluateA(j)
	assert.True(t, reflect.DeepEqual(before, j), "the job is not touched")
	rel := func(f quantity.Figure) float64 { return f.PlusMinus / f.Value }
	assert.InEpsilon(t, 0.05, rel(a.LinePerRPM), 1e-9)
	assert.InEpsilon(t, 0.04, rel(a.LeadOhms20), 1e-9)
	assert.InEpsilon(t, 0.04, rel(a.CopperKg), 1e-9)
	assert.InEpsilon(t, 1-1/1.05, rel(a.CutInRPM), 1e-9, "by what it does at its end")
	assert.Greater(t, rel(a.WireFill), 0.02)
	assert.Zero(t, a.BareMM.PlusMinus)

	// Two tolerances on one figure: the mean turn by bore and stack.
	k := plain()
	k.Machine.BoreMM, k.Machine.StackMM = plusMinus(100, 2), plusMinus(50, 1)
	// on top of a guess that is good to a tenth.
	w := math.Pi * 3 / 36 * 2.4
	turn := evaluateA(k).MeanTurnMM
	assert.InEpsilon(t, math.Hypot(math.Hypot(2*w, 2), 0.1*turn.Value), turn.PlusMinus, 1e-9)
}

// A tolerance of one trial stays with it; one in a list of readings reaches all.
func TestTolerancesStayWhereTheyBelong(t *testing.T) {
	j := ready()
	j.Trials = append(j.Trials, j.Trials[0])
	j.Field.GapTesla = quantity.Reading{}
	j.Spins = []job.SpinReading{{RPM: quantity.Known(1000), LineVolts: plusMinus(12, 0.6)}}
	o := winding.Evaluate(j)
	for _, a := range o.Trials {
		assert.InEpsilon(t, 0.05, a.LinePerRPM.PlusMinus/a.LinePerRPM.Value, 1e-9)
		assert.InEpsilon(t, 0.10, a.LeadOhms20.PlusMinus/a.LeadOhms20.Value, 1e-9, "the mean turn is a guess, and nothing else moves the ohms")
	}
	assert.InEpsilon(t, 0.05, o.Old.LinePerRPM.PlusMinus/o.Old.LinePerRPM.Value, 1e-9)
	m := evaluateA(load(t, "wind-good.toml"))
	assert.InEpsilon(t, 0.15, m.LinePerRPM.PlusMinus/m.LinePerRPM.Value, 1e-9, "magnets are good to 15 %")
	assert.Greater(t, m.CutInRPM.PlusMinus/m.CutInRPM.Value, 0.12)
}
