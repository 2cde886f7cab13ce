package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/winding/wants"

	"github.com/stretchr/testify/assert"
)

// A reading without a ± has its instrument's, not zero: volts and speed 2 and 1 %, the mean turn 2 %
// measured and 3 % by ohms, a cut-in of the old winding 5 % (common practice, no source). A typed ±
// replaces it.
func TestAReadingWithoutAToleranceIsAsGoodAsItsInstrument(t *testing.T) {
	part := func(f quantity.Figure) float64 { return f.PlusMinus / f.Value }
	j := load(t, "trial-coil.toml")
	a := winding.Evaluate(j).Trials[0]
	assert.InEpsilon(t, math.Hypot(0.02, 0.01), part(a.LinePerRPM), 1e-9)
	assert.InEpsilon(t, 0.02, part(a.MeanTurnMM), 1e-9)
	assert.Greater(t, part(a.CutInRPM), 0.02)
	j.Machine.MeanTurnMM.PlusMinus = j.Machine.MeanTurnMM.Value / 200
	j.Coils[0].Volts.PlusMinus = j.Coils[0].Volts.Value / 100
	j.Coils = j.Coils[:1]
	a = winding.Evaluate(j).Trials[0]
	assert.InEpsilon(t, 0.01, part(a.LinePerRPM), 1e-9)
	assert.InEpsilon(t, 0.005, part(a.MeanTurnMM), 1e-9)

	k := ready() // ohms of the old winding, and where it began to charge
	k.Field.GapTesla = quantity.Reading{}
	k.Old.LeadOhms, k.Old.CutInRPM = quantity.Known(0.3), quantity.Known(800)
	a = evaluateA(k)
	assert.InEpsilon(t, 0.03, part(a.MeanTurnMM), 1e-6)
	assert.InEpsilon(t, 0.03, part(a.LeadOhms20), 1e-6)
	assert.InEpsilon(t, 0.05, part(a.LinePerRPM), 0.2, "and what the diodes may drop")
	k.Old.LeadOhms.PlusMinus = 0.003
	assert.InEpsilon(t, 0.01, part(evaluateA(k).MeanTurnMM), 1e-6)
}

// The bare slot is as accurate as its area was read; the room left for wire only as accurate as the
// assumed lining.
func TestABareSlotIsAsItWasRead(t *testing.T) {
	j := plain()
	j.Slot.AreaMM2 = plusMinus(72, 2)
	m := winding.Evaluate(j).Machine
	assert.False(t, m.GrossMM2.Origin.Weak())
	assert.InDelta(t, 2, m.GrossMM2.PlusMinus, 1e-9)
	assert.True(t, m.NetMM2.Origin.Weak())
	j.Slot.AreaMM2.Origin = quantity.Guessed
	assert.True(t, winding.Evaluate(j).Machine.GrossMM2.Origin.Weak())
}

// The amps of a wound rotor's winding that rest on the air gap alone are doubted and have a wide ±, and
// a better source is asked for: until a plate, a short circuit or amps are given, and never for
// magnets.
func TestAWoundRotorsGapIsNotEnough(t *testing.T) {
	j := load(t, "engine.toml")
	j.Shorts, j.Amps, j.Old.LeadMilliHenries = nil, nil, quantity.Reading{}
	j.Old.RatedAmps, j.Old.RatedVolts, j.Old.RatedRPM = quantity.Reading{}, quantity.Reading{}, quantity.Reading{}
	j.Field.Kind, j.Machine.AirGapMM = "wound", quantity.Known(0.4)
	state := func() (doubted, asked bool, part float64) {
		o := winding.Evaluate(j)
		for _, f := range o.Findings {
			doubted = doubted || f.Path == "machine.air_gap" && f.Severity == winding.Doubt
		}
		for _, w := range wants.Of(&j) {
			asked = asked || w.Path == "old.plate_current"
		}
		h := o.Trials[0].PhaseMilliHenries
		return doubted, asked, h.PlusMinus / h.Value
	}
	doubted, asked, part := state()
	assert.True(t, doubted)
	assert.True(t, asked)
	assert.Greater(t, part, 0.69)
	j.Shorts = load(t, "engine-alternator-short.toml").Shorts
	if assert.NotEmpty(t, j.Shorts) {
		doubted, asked, part = state()
		assert.False(t, doubted)
		assert.False(t, asked)
		assert.Less(t, part, 0.4)
	}
	j.Shorts, j.Field.Kind = nil, "magnets"
	_, asked, _ = state()
	assert.False(t, asked)
}
