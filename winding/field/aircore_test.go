package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A coil with a very narrow side links sin(h·w/D) of a wave: one a pole pitch wide all of it, one of
// two thirds sin 60°. With sides from zero to a pole pitch the mean of the sine over 0 to 90° is 2/π.
func TestWindowByHand(t *testing.T) {
	pitch := math.Pi * 300 / 16
	assert.InDelta(t, 1, Flat{CircleMM: 300, HoleMM: pitch, SideMM: 1e-4}.Window(8), 1e-6)
	assert.InDelta(t, math.Sin(math.Pi/3), Flat{CircleMM: 300, HoleMM: pitch * 2 / 3, SideMM: 1e-4}.Window(8), 1e-5)
	assert.InDelta(t, 2/math.Pi, Flat{CircleMM: 300, HoleMM: 0, SideMM: pitch / 2}.Window(8), 1e-12)
}

// One coil of one turn alone in a uniform, narrow gap, by hand: of width w on a circle of πD its mmf is
// 1 - w/πD inside and -w/πD outside, with mean zero, and it links μ0·L·w·(1 - w/πD)/G. Here D = 200, L
// = 40, w = 150 and G = 0.001 mm.
func TestFlatCoilInANarrowGap(t *testing.T) {
	f := Flat{CircleMM: 200, LengthMM: 40, HoleMM: 150, SideMM: 0.01, IronGapMM: 1e-3}
	want := Mu0 * 0.040 * 0.150 / 1e-6 * (1 - 150/(math.Pi*200))
	alone := f.Henries([]FlatCoil{{Sense: 1}}, 1, 1, 40) // 40 pairs: more waves
	assert.InEpsilon(t, want, alone, 5e-3)
	assert.InEpsilon(t, 100*alone, f.Henries([]FlatCoil{{Sense: 1}}, 10, 1, 40), 1e-9, "with turns squared")
}

// In a wide gap the iron no longer matters: coth goes to 1, and from G = 10 to 20 circles wide
// nothing changes. The field then stays near the coil and the inductance is finite.
func TestFlatCoilFarFromIron(t *testing.T) {
	f := Flat{CircleMM: 200, LengthMM: 40, HoleMM: 30, SideMM: 15, IronGapMM: 2000}
	near := f.Henries([]FlatCoil{{Sense: 1}}, 50, 1, 8)
	f.IronGapMM = 4000
	assert.InEpsilon(t, near, f.Henries([]FlatCoil{{Sense: 1}}, 50, 1, 8), 1e-3)
	f.IronGapMM = 20
	assert.Greater(t, f.Henries([]FlatCoil{{Sense: 1}}, 50, 1, 8), near, "iron close by carries more")
}

// Three phases in a narrow gap, sides of zero width and touching coils: balanced currents against the
// uniform gap's formula for the working wave. Twelve coils on eight poles give 4π²/27 = 1.462 working
// waves, the closed form for half a slot per pole and phase (harmonic leakage, Pyrhönen, Jokinen and
// Hrabovcová, Design of Rotating Electrical Machines, ch. 4, from memory). Nine on twelve have the same
// staircase but use the wave of half its length, 1/4 as large: four times as many.
func TestFlatCoilsOfThreePhases(t *testing.T) {
	sum := func(n, pairs int) float64 {
		var coils []FlatCoil
		for i := range n {
			coils = append(coils, FlatCoil{Place: float64(i) / float64(n), Sense: 1, Lag: 2 * math.Pi * float64(i*pairs) / float64(n)})
		}
		f := Flat{CircleMM: 200, LengthMM: 40, HoleMM: math.Pi * 200 / float64(n), SideMM: 1e-3, IronGapMM: 0.01}
		kw := math.Abs(math.Sin(math.Pi * float64(pairs) / float64(n)))
		one, err := InductanceAirGap(3, 200, 40, 0.01, float64(2*pairs), 10*float64(n)/3, kw)
		require.NoError(t, err)
		return f.Henries(coils, 10, 3, pairs) / one
	}
	closed := 4 * math.Pi * math.Pi / 27
	assert.InEpsilon(t, closed, sum(12, 4), 5e-3)
	assert.InEpsilon(t, 4*closed, sum(9, 6), 5e-3)
}
