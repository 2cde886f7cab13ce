package winding_test

import (
	"math"
	"math/cmplx"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// 36 slots, 4 poles, full pitch: 12 coils a phase in 4 groups of 3, 20° apart. With 12, 10
// and 8 turns there are 4·30 = 120 in series, and the factor is that of the three phasors
// |12 + 10∠20° + 8∠40°|/30 (any text on windings: the sum of the coils' EMFs).
func TestUnequalTurnsByHand(t *testing.T) {
	j := plain()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span, j.Machine.Layers = quantity.Known(36), quantity.Known(4), quantity.Known(9), quantity.Known(2)
	j.Slot.AreaMM2 = quantity.Known(60)
	j.Trials[0].Turns = quantity.Reading{}
	j.Trials[0].CoilTurns = []int{12, 10, 8}
	a := evaluateA(j)
	at := func(turns, degrees float64) complex128 { return cmplx.Rect(turns, degrees*math.Pi/180) }
	kw := func(n float64) float64 { return cmplx.Abs(at(12, 0)+at(10, 20*n)+at(8, 40*n)) / 30 }
	assert.Equal(t, 120.0, a.SeriesTurns.Value)
	assert.InEpsilon(t, kw(1), a.Kw1.Value, 1e-12)
	assert.InEpsilon(t, kw(5), a.Kw5.Value, 1e-9)
	flux := 2 * 0.5 * 0.1 * 0.05 / 4
	assert.InEpsilon(t, math.Sqrt2*math.Pi*4/120*120*kw(1)*flux, a.PhasePerRPM.Value, 1e-12)
	assert.InEpsilon(t, 1/58e6*120*a.MeanTurnMM.Value/1000/(math.Pi/4*1e-6), a.PhaseOhms20.Value, 1e-9)
	assert.InEpsilon(t, 3*120*a.MeanTurnMM.Value/1000*1.1, a.Buy[0].Metres.Value, 1e-12)
	assert.Equal(t, 24.0, a.Conductors.Value, "the slot must hold two sides of the largest coil")

	// The same number of turns, all alike: another factor but the same ohms.
	j.Trials[0].CoilTurns, j.Trials[0].Turns = nil, quantity.Known(10)
	same := evaluateA(j)
	assert.InEpsilon(t, same.PhaseOhms20.Value, a.PhaseOhms20.Value, 1e-12)
	assert.InEpsilon(t, math.Sin(math.Pi/6)/(3*math.Sin(math.Pi/18)), same.Kw1.Value, 1e-12)
}

// If slots or poles are unknown only ratios have a meaning: 12, 10 and 8 turns are 10 a coil, and
// against an old winding of 5 they make twice the volts.
func TestUnequalTurnsWithoutSlotsOrPoles(t *testing.T) {
	for _, forget := range []func(*job.Machine){
		func(m *job.Machine) { m.Slots = quantity.Reading{} },
		func(m *job.Machine) { m.Poles = quantity.Reading{} },
		func(m *job.Machine) { *m = job.Machine{} },
	} {
		j := plain()
		forget(&j.Machine)
		j.Field = job.FieldSpec{}
		j.Old = job.OldWinding{Wound: j.Trials[0].Wound, CutInRPM: quantity.Known(2000)}
		j.Old.Turns = quantity.Known(5)
		j.Trials[0].Turns = quantity.Reading{}
		j.Trials[0].CoilTurns = []int{12, 10, 8}
		a := evaluateA(j)
		assert.InEpsilon(t, 2, a.Against.Volts.Value, 1e-12)
		assert.InEpsilon(t, 0.5, a.Against.CutIn.Value, 1e-12)
		assert.InEpsilon(t, 2, a.Against.Ohms.Value, 1e-12)
		assert.InEpsilon(t, 1000, a.CutInRPM.Value, 1e-9)
	}
}

// A group of three cannot have four different coils.
func TestUnequalTurnsMustFitTheGroup(t *testing.T) {
	j := plain()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span, j.Machine.Layers = quantity.Known(36), quantity.Known(4), quantity.Known(9), quantity.Known(2)
	j.Trials[0].CoilTurns = []int{12, 10, 8, 6}
	a := winding.Evaluate(j).Trials[0]
	assert.False(t, a.Kw1.Known())
	assert.NotEmpty(t, a.Kw1.Why)
	assert.False(t, a.PhasePerRPM.Known())
}
