package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The round slot of the job by hand: straight sides 24 - 5 = 19 mm deep between 10 and 7 mm
// make 161.5 mm², the half disc 10²·π/8 = 39.27: 200.77. The pear's mouth of 3 mm meets its upper
// round √(3.5² - 1.5²) = 3.1623 mm above its centre, so 15.8377 mm of straight sides make 134.62
// mm², the lower half disc 39.27, the upper one 3.5²·π/2 = 19.24 less the cap over the mouth,
// 3.5²·asin(1.5/3.5) - 1.5·3.1623 = 0.682: 192.45.
func TestRoundAndPearThroughAJob(t *testing.T) {
	for name, want := range map[string]float64{"round-slots.toml": 200.770, "pear-slots.toml": 192.45} {
		o := winding.Evaluate(load(t, name))
		require.True(t, o.Machine.GrossMM2.Known(), o.Machine.GrossMM2.Why)
		assert.InDelta(t, want, o.Machine.GrossMM2.Value, 0.01, name)
		a := o.Trials[0]
		for what, f := range map[string]quantity.Figure{"fill": a.WireFill, "fit": a.TurnsThatFit, "pack": a.MostThatPack, "mouth": a.MouthSpareMM} {
			assert.True(t, f.Known(), "%s of %s: %s", what, name, f.Why)
		}
		for _, f := range o.Findings {
			assert.NotContains(t, f.Text, "slot shape")
		}
		picture, why := winding.Prepare(load(t, name)).Picture(0)
		assert.Empty(t, why)
		assert.Equal(t, 16, picture.Placed, "4 turns of 2 strands, two sides")
	}
}

// Every word that the file accepts for a shape is one that the slot knows, and vice versa.
func TestShapesHaveOneVocabulary(t *testing.T) {
	f, ok := job.InputAt("slot.shape")
	require.True(t, ok)
	assert.Equal(t, slot.ShapeNames(), f.Words)
	for _, word := range f.Words {
		j := plain()
		j.Slot = job.SlotSpec{Shape: word, AreaMM2: quantity.Known(100), TopMM: quantity.Known(6), BottomMM: quantity.Known(6), DepthMM: quantity.Known(16)}
		o := winding.Evaluate(j)
		assert.True(t, o.Machine.GrossMM2.Known(), "%s: %s", word, o.Machine.GrossMM2.Why)
	}
}

// Coils round one tooth are drawn side by side, the clockwise one to the left as seen with
// the bore above; one side to a slot and longer coils are not.
func TestPictureOfToothCoils(t *testing.T) {
	p, why := winding.Prepare(load(t, "hub-outside.toml")).Picture(0)
	require.Empty(t, why)
	assert.True(t, p.Beside)
	assert.Equal(t, 2*38, p.Placed)
	for _, c := range p.Circles {
		assert.Equal(t, c.Layer == 1, c.X > 0)
	}
	p, why = winding.Prepare(load(t, "round-slots.toml")).Picture(0)
	require.Empty(t, why)
	assert.False(t, p.Beside)
}

// Leakage across the slot of coils round one tooth by geometry: of 12 teeth and 16 poles every slot
// holds two phases 60 degrees apart, so their halves make (1 + ½)/2 = ¾ of what the same current in
// both would. Taken from two machines that are otherwise identical: the same coils in one phase and
// alternating (12 teeth and 12 poles) have equal currents in both sides.
func TestLeakageOfToothCoilsGoesByTheirPhases(t *testing.T) {
	room, err := slot.Measure(slot.Slot{Shape: slot.Parallel, TopMM: 8, DepthMM: 20, MouthMM: 3, MouthHeightMM: 1},
		slot.Insulation{LinerMM: 0.25, WedgeMM: 1, Layers: 2, Beside: true})
	require.NoError(t, err)
	lambda := slot.LeakageParts(room, 2, 0.5).Total
	assert.InEpsilon(t, 0.75*slot.LeakageParts(room, 2, 1).Total, lambda, 1e-12)
	at := func(mouthHeight float64) float64 {
		j := ready()
		j.Old = job.OldWinding{}
		j.Machine.Poles, j.Machine.Slots, j.Machine.Span, j.Machine.Layers = quantity.Known(16), quantity.Known(12), quantity.Known(1), quantity.Known(2)
		j.Machine.AirGapMM = quantity.Known(1)
		j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(8), DepthMM: quantity.Known(20), MouthMM: quantity.Known(3), MouthHeightMM: quantity.Known(mouthHeight)}
		return evaluateA(j).PhaseMilliHenries.Value
	}
	// A neck higher by 3 mm is λ more by ¾·3/3; the phase of N = 40 has 8 sides: 2μ0·L·N²·Δλ/(p·q),
	// p = 8, q = 12/48.
	want := 2 * 4e-7 * math.Pi * 0.05 * 1600 * 0.75 / (8 * 0.25) * 1000
	assert.InEpsilon(t, want, at(4)-at(1), 1e-6)
}
