package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shorted is a wound rotor read open at 2.5 A of field and shorted at some amps and field.
func shorted(amps, field float64) job.Job {
	j := plain()
	j.Field = job.FieldSpec{Kind: "wound", Amps: quantity.Known(2.5)}
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound}
	j.Spins = []job.SpinReading{{RPM: quantity.Known(1000), LineVolts: quantity.Known(14), FieldAmps: quantity.Known(2.5)}}
	j.Shorts = []job.ShortReading{{RPM: quantity.Known(1000), LineAmps: quantity.Known(amps), FieldAmps: quantity.Known(field)}}
	return j
}

// The short-circuit characteristic is a straight line through nothing (IEC 60034-4, IEEE Std
// 115, from memory): 6 A at 1.0 A of field is 15 A at 2.5 A, and is said to be taken so.
func TestShortCircuitAtAnotherField(t *testing.T) {
	same, other := winding.Evaluate(shorted(15, 2.5)), winding.Evaluate(shorted(6, 1.0))
	want := same.Trials[0].PhaseMilliHenries
	require.Contains(t, same.Trials[0].InductanceFrom, "short-circuit")
	assert.InEpsilon(t, want.Value, other.Trials[0].PhaseMilliHenries.Value, 1e-12)
	assert.False(t, says(&same, "short[0].field", "2.5 times as many"))
	assert.True(t, says(&other, "short[0].field", "2.5 times as many"))
	// Within the few percent of two meters nothing is scaled.
	near := winding.Evaluate(shorted(15, 2.45))
	assert.InEpsilon(t, want.Value, near.Trials[0].PhaseMilliHenries.Value, 1e-12)
}

// Two sets of one slot per pole and phase: shorted alone a set has π²/9 of the working wave,
// with the other beside it 2·(π/12)²/sin²(π/12). Without a gap all of it is the gap's.
func TestOneSetJoinedOrBoth(t *testing.T) {
	j := shorted(15, 2.5)
	j.Machine.Slots, j.Machine.Sets, j.Machine.Span, j.Machine.Layers = quantity.Known(72), quantity.Known(2), quantity.Known(6), quantity.Known(2)
	both := evaluateA(j).PhaseMilliHenries.Value
	j.Shorts[0].Sets = quantity.Known(2)
	assert.Equal(t, both, evaluateA(j).PhaseMilliHenries.Value, "both are joined where nothing is said")
	j.Shorts[0].Sets = quantity.Known(1)
	k := math.Pi / 12 / math.Sin(math.Pi/12)
	assert.InEpsilon(t, 2*k*k/(math.Pi*math.Pi/9), evaluateA(j).PhaseMilliHenries.Value/both, 1e-9)
	// A bridge reads one set, the other open.
	bridge := plain()
	bridge.Machine = j.Machine
	bridge.Old = job.OldWinding{Wound: bridge.Trials[0].Wound, LeadMilliHenries: quantity.Known(2)}
	assert.InEpsilon(t, 2*k*k/(math.Pi*math.Pi/9), evaluateA(bridge).PhaseMilliHenries.Value, 1e-9)
}

// From a double layer on twelve teeth to a single one: (N·kw)² and the waves that each list puts into
// the gap, 1.9683 and 3.6730 (see the sums of harmonics).
func TestInductanceIsCarriedWithItsWaves(t *testing.T) {
	j := plain()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span, j.Machine.Layers = quantity.Known(12), quantity.Known(10), quantity.Known(1), quantity.Known(2)
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound, LeadMilliHenries: quantity.Known(2)}
	j.Trials[0].Layers = quantity.Known(1)
	o := winding.Evaluate(j)
	a := o.Trials[0]
	turns := a.SeriesTurns.Value * a.Kw1.Value / (o.Old.SeriesTurns.Value * o.Old.Kw1.Value)
	assert.InEpsilon(t, turns*turns*3.67299/1.96835, a.PhaseMilliHenries.Value, 1e-5)
}

// The yoke of 10 mm behind slots of 20 + 1 mm carries half of a pole's flux: (2/π)·B1·τp/2
// over 10 mm of which 95 % is iron.
func TestYokeIsShown(t *testing.T) {
	j := plain()
	j.Field.GapTesla = quantity.Known(0.5)
	j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(4), DepthMM: quantity.Known(20)}
	j.Machine.OutsideMM = quantity.Known(100 + 2*21 + 20)
	o := winding.Evaluate(j)
	assert.InEpsilon(t, 2/math.Pi*0.5*math.Pi*100/12/2/(10*0.95), o.Machine.YokeTesla.Value, 1e-9)
	// A tooth a third of a pole wide gathers a wave's 2/π·τ·sin(30°) under its middle.
	assert.InEpsilon(t, 0.5*2/math.Pi*(math.Pi*100/12)*0.5/((math.Pi*102/36-4)*0.95), o.Machine.ToothTesla.Value, 1e-9)
}
