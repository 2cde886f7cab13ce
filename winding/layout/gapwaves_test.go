package layout

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// laid is a layout with one turn a coil.
func laid(t *testing.T, spec Spec) *Layout {
	t.Helper()
	plan, err := New(spec)
	require.NoError(t, err)
	return plan
}

// summed is Σ (kwν/ν)²/kw1² over the waves that remain in the gap for given currents, each from the
// coil list by its own slot phasors; rotates is how far the current of a set and phase lags, in turns.
func summed(plan *Layout, sets int, rotates func(set, phase int) float64) float64 {
	spec := plan.Spec()
	wave := func(order int) float64 { // order counts in waves round the machine
		var sum complex128
		for _, c := range plan.Coils() {
			if c.Set >= sets {
				continue
			}
			at := func(slot int) complex128 {
				return cmplx.Rect(1, -2*math.Pi*float64(order*(slot-1)%spec.Slots)/float64(spec.Slots))
			}
			current := cmplx.Rect(float64(c.Sense*c.Turns), 2*math.Pi*rotates(c.Set, c.Phase))
			sum += current * (at(c.Start) - at(c.Finish))
		}
		return real(sum)*real(sum) + imag(sum)*imag(sum)
	}
	pairs := spec.Poles / 2
	var working complex128
	for _, c := range plan.Coils() {
		if c.Set == 0 && c.Phase == 0 {
			turn := 2 * math.Pi * float64(pairs) / float64(spec.Slots)
			working += complex(float64(c.Sense*c.Turns), 0) * (cmplx.Rect(1, -turn*float64(c.Start-1)) - cmplx.Rect(1, -turn*float64(c.Finish-1)))
		}
	}
	one := sq(cmplx.Abs(working) * float64(spec.Phases) / float64(pairs)) // both ways round, each of half that
	all := 0.0
	// A slot's phasor repeats every Q waves: Σ 1/(r + kQ)² over all k is (π/Q)²/sin²(πr/Q), which
	// includes every order in both directions of rotation.
	q := float64(spec.Slots)
	for r := 1; r < spec.Slots; r++ {
		all += wave(r) * sq(math.Pi/q/math.Sin(math.Pi*float64(r)/q))
	}
	return all / one
}

// The sums of harmonics of coil lists, computed independently by slot phasors; those of the harmonic
// leakage σ = sum − 1 in Pyrhönen, Jokinen and Hrabovcová, Design of Rotating Electrical Machines, ch.
// 4 (from memory), agree with the first column to their printed digits.
func TestGapWavesAreTheSumOfHarmonics(t *testing.T) {
	for _, c := range []struct {
		spec Spec
		want float64
	}{
		{Spec{Slots: 36, Poles: 12, Span: 3, Layers: 2}, 1.10},
		{Spec{Slots: 27, Poles: 6, Span: 4, Layers: 2}, 1.05},
		{Spec{Slots: 24, Poles: 10, Span: 2, Layers: 2}, 1.25},
		{Spec{Slots: 12, Poles: 8, Span: 1, Layers: 2}, 1.46},
		{Spec{Slots: 30, Poles: 20, Span: 1, Layers: 2}, 1.46},
		{Spec{Slots: 12, Poles: 10, Span: 1, Layers: 2}, 1.97},
		{Spec{Slots: 9, Poles: 8, Span: 1, Layers: 2}, 2.18},
		{Spec{Slots: 18, Poles: 16, Span: 1, Layers: 2}, 2.18},
		{Spec{Slots: 12, Poles: 14, Span: 1, Layers: 2}, 3.86},
		{Spec{Slots: 12, Poles: 10, Span: 1, Layers: 1}, 3.67},
	} {
		c.spec.Phases = 3
		name := fmt.Sprintf("%d slots, %d poles, span %d, %d layers", c.spec.Slots, c.spec.Poles, c.spec.Span, c.spec.Layers)
		plan := laid(t, c.spec)
		w := plan.GapWaves()
		assert.InDelta(t, c.want, w.One, 0.005, name)
		assert.Equal(t, w.One, w.All, name)
		sum := summed(plan, 1, func(_, phase int) float64 { return angleOf(plan, 0, phase) })
		assert.InEpsilon(t, sum, w.One, 1e-9, name)
	}
}

// angleOf is how far a phase's own working wave is turned, in turns.
func angleOf(plan *Layout, set, phase int) float64 {
	return cmplx.Phase(plan.PhasePhasor(set, phase, 1)) / (2 * math.Pi)
}

// One slot per pole and phase leaves the harmonics 6k±1, two such sets together 12k±1, all with a
// factor of one; Σ 1/(mk±1)² is (π/m)²/sin²(π/m). In-phase currents leave the odd multiples of three:
// twice Σ 1/(3·odd)² = π²/36.
func TestGapWavesInClosedForm(t *testing.T) {
	sum := func(m float64) float64 { return sq(math.Pi / m / math.Sin(math.Pi/m)) }
	one := laid(t, Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1}).GapWaves()
	assert.InEpsilon(t, sum(6), one.One, 1e-12)
	assert.InEpsilon(t, math.Pi*math.Pi/36, one.Alike, 1e-12)
	assert.InEpsilon(t, 1, one.AlikeSlots, 1e-12, "a slot of one phase has nothing to cancel")
	two := laid(t, Spec{Slots: 72, Poles: 12, Phases: 3, Span: 6, Layers: 2, Sets: 2}).GapWaves()
	assert.InEpsilon(t, sum(6), two.One, 1e-12)
	assert.InEpsilon(t, 2*sum(12), two.All, 1e-12)
	assert.InDelta(t, 1.87, two.All/two.One, 0.005)
	// One phase full pitch is a square wave: the mean square over the fundamental's is π²/8.
	single := laid(t, Spec{Slots: 4, Poles: 4, Phases: 1, Span: 1, Layers: 2}).GapWaves()
	assert.InEpsilon(t, math.Pi*math.Pi/8, single.One, 1e-12)
}

// At two thirds of a pole pitch every slot holds two phases wound against each other for in-phase
// currents: nothing is left in the slots, and no third wave.
func TestAlikeCurrentsCancelAtTwoThirdsPitch(t *testing.T) {
	w := laid(t, Spec{Slots: 36, Poles: 12, Phases: 3, Span: 2, Layers: 2}).GapWaves()
	assert.InDelta(t, 0, w.AlikeSlots, 1e-12)
	assert.InDelta(t, 0, w.Alike, 1e-12)
}

// The sums do not depend on the turns and circuits of the list.
func TestGapWavesDoNotDependOnTurns(t *testing.T) {
	plan := laid(t, Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 2})
	more, err := plan.WithTurns(17)
	require.NoError(t, err)
	split, err := more.WithCircuits(3)
	require.NoError(t, err)
	a, b := plan.GapWaves(), split.GapWaves()
	assert.InEpsilon(t, a.One, b.One, 1e-12)
	assert.InEpsilon(t, a.Alike, b.Alike, 1e-12)
}
