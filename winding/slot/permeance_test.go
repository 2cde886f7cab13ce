package slot

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Parallel slot: λ = h/3b + h/b above + neck (Pyrhönen et al., Design of Rotating Electrical
// Machines, ch. 4; Say, Alternating Current Machines; from memory).
func TestLeakageOfParallelSlot(t *testing.T) {
	room := mustMeasure(t, Slot{Shape: Parallel, TopMM: 8, DepthMM: 20, MouthMM: 2, MouthHeightMM: 1}, Insulation{LinerMM: 0.5, WedgeMM: 1.5})
	p := LeakageParts(room, 1, 1)
	assert.InEpsilon(t, 17.5/(3*8), p.Body, 1e-5) // wire from 0.5 to 18
	assert.InDelta(t, 2.0/8, p.Wedge, 1e-9)       // wedge and folded liner
	assert.InDelta(t, 0.5, p.Neck, 1e-9)
	assert.InDelta(t, p.Body+p.Wedge+p.Neck, p.Total, 1e-12)
}

// Two layers: λ = k1·(2h)/3b + h'/4b + k2·(parts above), k1 = 1 - 9ε/16, k2 = 1 - 3ε/4 (Pyrhönen
// et al., ch. 4; from memory). The textbook puts k1 on the wire alone; with no separator the
// two agree exactly.
func TestLeakageOfTwoLayers(t *testing.T) {
	s := Slot{Shape: Parallel, TopMM: 8, DepthMM: 20, MouthMM: 2, MouthHeightMM: 1}
	thin := mustMeasure(t, s, Insulation{WedgeMM: 2, Layers: 2})
	one := LeakageParts(thin, 1, 1)
	for _, e := range []float64{0, 0.1, 1.0 / 6, 1.0 / 3} {
		p := LeakageParts(thin, 2, 1-1.5*e)
		assert.InEpsilon(t, one.Body*(1-9*e/16), p.Body, 1e-5, "ε %g", e)
		assert.InDelta(t, one.Wedge*(1-3*e/4), p.Wedge, 1e-9)
		assert.InDelta(t, one.Neck*(1-3*e/4), p.Neck, 1e-9)
	}
	thick := mustMeasure(t, s, Insulation{WedgeMM: 2, SeparatorMM: 2, Layers: 2})
	assert.InEpsilon(t, 16/(3*8.0)+2/(4*8.0), LeakageParts(thick, 2, 1).Body, 1e-5)
	assert.Equal(t, LeakageParts(thick, 2, -1), LeakageParts(thick, 2, -1.5), "clamped")
	assert.Equal(t, LeakageParts(thick, 2, 1), LeakageParts(thick, 2, math.NaN()))
	assert.Equal(t, LeakageParts(thick, 1, 1), LeakageParts(thick, 1, 0.7), "one layer has nothing to shorten")
}

// Tapered slot: the integral done by hand with width growing evenly from b1 (bottom) to b2:
// λ = h/(b2-b1)/(b2²-b1²)² · [(b2⁴-b1⁴)/4 - b1²(b2²-b1²) + b1⁴ ln(b2/b1)].
func TestLeakageOfTaperedSlot(t *testing.T) {
	closed := func(b1, b2, h float64) float64 {
		d := b2*b2 - b1*b1
		return h / (b2 - b1) / (d * d) * ((math.Pow(b2, 4)-math.Pow(b1, 4))/4 - b1*b1*d + math.Pow(b1, 4)*math.Log(b2/b1))
	}
	for _, b := range [][2]float64{{4, 10}, {10, 4}, {6, 8}, {1, 12}, {12, 1}} {
		room := mustMeasure(t, Slot{Shape: Tapered, TopMM: b[1], BottomMM: b[0], DepthMM: 18, MouthMM: b[1]}, Insulation{})
		assert.InEpsilon(t, closed(b[0], b[1], 18), LeakageParts(room, 1, 1).Body, 1e-5, "%v", b)
	}
	parallel := mustMeasure(t, Slot{Shape: Parallel, TopMM: 7, DepthMM: 18}, Insulation{})
	nearly := mustMeasure(t, Slot{Shape: Tapered, TopMM: 7, BottomMM: 7.0001, DepthMM: 18}, Insulation{})
	assert.InEpsilon(t, LeakageParts(parallel, 1, 1).Total, LeakageParts(nearly, 1, 1).Total, 1e-4)
}

// A round slot has λ = 0.623 whatever its size: the classic figure of the design books (Say;
// Liwschitz-Garik; from memory), by this integral π/6 + 5/(16π).
func TestLeakageOfRoundSlot(t *testing.T) {
	for _, r := range []float64{1, 7.5} {
		circle := func(y float64) float64 { return 2 * math.Sqrt(max(0, y*(2*r-y))) }
		got := across(circle, 0, 2*r, [2]float64{0, 1}, [2]float64{0, 1})
		assert.InDelta(t, math.Pi/6+5/(16*math.Pi), got, 1e-4)
		assert.InDelta(t, 0.623, got, 5e-4)
	}
}

func TestLeakageProperties(t *testing.T) {
	everyRoom(t, func(t *testing.T, _ *rand.Rand, s Slot, ins Insulation, room Room) {
		p := LeakageParts(room, room.Layers, 1)
		assert.Positive(t, p.Body)
		assert.GreaterOrEqual(t, p.Wedge, 0.0)
		assert.True(t, finite(p.Total))
		s2, ins2 := scaled(s, ins, 3)
		assert.InEpsilon(t, p.Total, LeakageParts(mustMeasure(t, s2, ins2), room.Layers, 1).Total, 1e-9, "a pure number")
		if room.Layers == 2 {
			assert.Less(t, LeakageParts(room, 2, 0.7).Total, p.Total, "shortening lowers leakage")
			if ins.SeparatorMM < 0.01 {
				assert.InEpsilon(t, LeakageParts(room, 1, 1).Total, p.Total, 0.01, "a thin sheet changes little")
			}
		}
	})
	assert.Zero(t, LeakageParts(Room{}, 2, 1))
}

func BenchmarkLeakage(b *testing.B) {
	room := mustMeasure(b, Slot{Shape: RoundBottom, TopMM: 9, BottomMM: 8, DepthMM: 18, MouthMM: 3}, Insulation{LinerMM: 0.25, Layers: 2})
	b.ReportAllocs()
	for b.Loop() {
		LeakageParts(room, 2, 1)
	}
}
