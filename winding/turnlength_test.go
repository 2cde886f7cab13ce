package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// A coil lies at half the depth of the slot, on a circle wider than the bore by one depth. By
// hand for a bore of 100, slots 20 deep, 3 of 36 slots: W = π·120·3/36 = 31.416 mm, l = 2·50 +
// 2.4·31.416 + 4·9 = 211.398 mm; Pyrhönen, Jokinen and Hrabovcová's end turn (from memory).
// Without the depth it would be 198.8 mm, and every ohm 6 % too low.
func TestMeanTurnOfADeepSlot(t *testing.T) {
	j := plain()
	shallow := evaluateA(j)
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(8), DepthMM: quantity.Known(20)}
	deep := evaluateA(j)
	assert.InDelta(t, 198.832, shallow.MeanTurnMM.Value, 0.001)
	assert.InDelta(t, 211.398, deep.MeanTurnMM.Value, 0.001)
	// 60 turns of 211.398 mm of 0.7854 mm² at 58 MS/m: 0.27844 Ω.
	assert.InDelta(t, 0.27844, deep.PhaseOhms20.Value, 0.00001)
	assert.InEpsilon(t, 1.0632, deep.PhaseOhms20.Value/shallow.PhaseOhms20.Value, 1e-4)
	assert.InEpsilon(t, 1.0632, deep.CopperKg.Value/shallow.CopperKg.Value, 1e-4)
	// A slot of which only the area is known is as deep as one twice as deep as wide: 200 mm²
	// are 10 by 20.
	j.Slot = job.SlotSpec{AreaMM2: quantity.Known(200)}
	assert.InDelta(t, 211.398, evaluateA(j).MeanTurnMM.Value, 0.001)
	// One that cannot be measured has no usable depth.
	j.Slot = job.SlotSpec{Shape: "tapered", TopMM: quantity.Known(8), DepthMM: quantity.Known(20)}
	assert.InDelta(t, 198.832, evaluateA(j).MeanTurnMM.Value, 0.001)
}

// A small alternator: bore 90, slots 18 deep, 36 of them, stack 30, one pole pitch of 3. By
// hand: W = π·108·3/36 = 28.274, l = 60 + 67.858 + 36 = 163.858 mm; 152.549 mm without the
// depth, 7 % less.
func TestMeanTurnOfASmallAlternator(t *testing.T) {
	j := plain()
	j.Machine.BoreMM, j.Machine.StackMM = quantity.Known(90), quantity.Known(30)
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(4), DepthMM: quantity.Known(18)}
	a := evaluateA(j)
	assert.InDelta(t, 163.858, a.MeanTurnMM.Value, 0.001)
	j.Slot = job.SlotSpec{}
	assert.InEpsilon(t, 163.858/152.549, a.PhaseOhms20.Value/evaluateA(j).PhaseOhms20.Value, 1e-5)
	// Converted from a measured turn to a span of 2, the end turns shrink on the same circle.
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(4), DepthMM: quantity.Known(18)}
	j.Machine.Layers, j.Machine.MeanTurnMM = quantity.Known(2), quantity.Known(160)
	j.Trials[0].Span = quantity.Known(2)
	assert.InDelta(t, 160-2.4*math.Pi*108/36, evaluateA(j).MeanTurnMM.Value, 1e-9)
}

// The old winding's ohms are doubted if they imply a mean turn a quarter off a measured one, too short
// as well as too long; a third and more off an estimate.
func TestOldOhmsAreDoubtedBothWays(t *testing.T) {
	doubted := func(measured, spoken float64) bool {
		j := plain()
		j.Machine.MeanTurnMM = quantity.Known(spoken)
		ohms := evaluateA(j).LeadOhms20.Value
		j.Machine.MeanTurnMM = quantity.Reading{}
		if measured > 0 {
			j.Machine.MeanTurnMM = quantity.Known(measured)
		}
		j.Old = job.OldWinding{Wound: j.Trials[0].Wound, LeadOhms: quantity.Known(ohms)}
		o := winding.Evaluate(j)
		f := finding(&o, "old.lead")
		if f != nil {
			assert.NotEqual(t, winding.Note, f.Severity)
			assert.Contains(t, f.Text, "its mean turn")
			once := 0
			for i := range o.Findings {
				if o.Findings[i].Path == "old.lead" {
					once++
				}
			}
			assert.Equal(t, 1, once, "one mistake is told once")
		}
		return f != nil
	}
	for spoken, want := range map[float64]bool{140: true, 149: true, 151: false, 200: false, 249: false, 251: true, 280: true} {
		assert.Equal(t, want, doubted(200, spoken), "200 mm measured, the ohms speak of %g", spoken)
	}
	estimate := evaluateA(plain()).MeanTurnMM.Value // from bore and stack
	for part, want := range map[float64]bool{0.60: true, 0.64: true, 0.66: false, 1: false, 1.34: false, 1.36: true} {
		assert.Equal(t, want, doubted(0, part*estimate), "%g of what bore and stack say", part)
	}
}
