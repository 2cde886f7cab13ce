package drive

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func level(v float64) Torque { return func(float64) float64 { return v } }

// A pair of roots anywhere against the grid, from far apart to a thousandth of a step,
// and none where the curves pass clear of one another by as little.
func TestBalancePairsAtAnyDistance(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 4))
	for range 4000 {
		x0 := 5 + 90*r.Float64()
		half := math.Pow(10, -2.2+2.6*r.Float64()) // 0.006 to 2.5; a step is 1.04
		sign := math.Copysign(1, r.Float64()-0.5)
		if x0-half < 0 || x0+half > 100 {
			continue
		}
		off := func(gap float64) Torque {
			return func(n float64) float64 { return 40 + sign*((n-x0)*(n-x0)+gap)/100 }
		}
		two := Balance(off(-half*half), level(40), 0, 100, 96)
		require.Len(t, two, 2, "x0 %g half %g", x0, half)
		// Torques agree to 1e-9, so the speeds do to 1e-9·40·100/(2·half).
		assert.InDelta(t, x0-half, two[0].RPM, 1e-8+4e-6/half)
		assert.InDelta(t, x0+half, two[1].RPM, 1e-8+4e-6/half)
		assert.Equal(t, sign > 0, two[0].Stable)
		assert.Equal(t, sign < 0, two[1].Stable)
		assert.Empty(t, Balance(off(half*half), level(40), 0, 100, 96), "x0 %g half %g", x0, half)
	}
}

func TestBalanceFindsTouches(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for i := range 400 {
		x0 := 2 + 96*r.Float64()
		if i == 0 {
			x0 = 50 // on the grid
		}
		sign := math.Copysign(1, r.Float64()-0.5)
		touch := func(n float64) float64 { return 40 + sign*(n-x0)*(n-x0)/100 }
		one := Balance(touch, level(40), 0, 100, 96)
		require.Len(t, one, 1, "x0 %g", x0)
		assert.InDelta(t, x0, one[0].RPM, 3e-3)
		assert.True(t, one[0].Tangent)
		assert.False(t, one[0].Stable)
		assert.InDelta(t, 0, one[0].Slope, 1e-3)
	}
}

// The corner at cut-in: a V that dips just below zero.
func TestBalanceFindsPairsAtACorner(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 1))
	for range 2000 {
		x0, depth := 3+94*r.Float64(), math.Pow(10, -4*r.Float64())
		left, right := 0.5+3*r.Float64(), 0.5+3*r.Float64()
		v := func(n float64) float64 { return 40 + max(left*(x0-n), right*(n-x0)) - depth }
		list := Balance(v, level(40), 0, 100, 96)
		require.Len(t, list, 2)
		assert.InDelta(t, x0-depth/left, list[0].RPM, 1e-6)
		assert.InDelta(t, x0+depth/right, list[1].RPM, 1e-6)
		v = func(n float64) float64 { return 40 + max(left*(x0-n), right*(n-x0)) + depth }
		assert.Empty(t, Balance(v, level(40), 0, 100, 96))
	}
}

// Polynomials with one to five known roots at least two steps apart.
func TestBalanceFindsAllOfSeveral(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 2))
	for range 1500 {
		var roots []float64
		for x := 1 + 20*r.Float64(); x < 99 && len(roots) < 5; x += 4 + 30*r.Float64() {
			roots = append(roots, x)
		}
		down := math.Copysign(1, r.Float64()-0.5)
		f := func(n float64) float64 {
			p := down
			for _, x := range roots {
				p *= (n - x) / 10
			}
			return 5 + p
		}
		list := Balance(f, level(5), 0, 100, 96)
		require.Len(t, list, len(roots), "%v", roots)
		for i, e := range list {
			assert.InDelta(t, roots[i], e.RPM, 1e-4)
			assert.InEpsilon(t, f(e.RPM), 5.0, 1e-6)
			assert.Equal(t, e.Slope < 0, e.Stable)
			assert.InEpsilon(t, e.Torque*2*math.Pi*e.RPM/60, e.Watts, 1e-12)
			assert.False(t, e.Jump || e.Tangent)
		}
	}
}

func TestBalanceAtAJump(t *testing.T) {
	for _, high := range []float64{9, 1e4, 1e12} {
		relay := func(n float64) float64 {
			if n < 33.3 {
				return 1
			}
			return high
		}
		list := Balance(level(5), relay, 0, 100, 48)
		require.Len(t, list, 1)
		assert.InDelta(t, 33.3, list[0].RPM, 1e-6)
		assert.True(t, list[0].Jump)
		assert.True(t, list[0].Stable)
	}
}

func TestBalanceOutOfRange(t *testing.T) {
	nan := func(float64) float64 { return math.NaN() }
	assert.Empty(t, Balance(level(1), level(1), 10, 10, 48))
	assert.Empty(t, Balance(level(1), level(1), 10, math.Inf(1), 48))
	assert.Empty(t, Balance(nan, level(1), 0, 10, 48))
	assert.Empty(t, Balance(level(1), level(1), 0, 10, 48), "equal everywhere is no one speed")
	assert.Empty(t, Sample(level(1), math.NaN(), 48).RPM)
}

// Samples of a slightly different torque still lead to the exact roots.
func TestRootsFromSamplesThatAreOff(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for range 500 {
		x0 := 5 + 90*r.Float64()
		taken := func(n float64) float64 { return n }
		given := level(x0)
		s := Sample(func(n float64) float64 { return n * (1 + 0.002*math.Sin(n)) }, 100, 64)
		list := s.Balance(given, taken)
		require.Len(t, list, 1, "x0 %g", x0)
		assert.InEpsilon(t, x0, list[0].RPM, 1e-8)
		assert.True(t, list[0].Stable)
	}
}

func TestSampleStandsAtTheCorners(t *testing.T) {
	s := Sample(level(1), 1000, 20, 321, 2000)
	require.Equal(t, len(s.RPM), len(s.Nm))
	near := 0
	for i, rpm := range s.RPM {
		if i > 0 {
			assert.Greater(t, rpm, s.RPM[i-1])
		}
		if math.Abs(rpm-321) < 0.001 {
			near++
		}
	}
	assert.Equal(t, 2, near)
	assert.Positive(t, s.RPM[0])
	assert.InEpsilon(t, 1000, s.RPM[len(s.RPM)-1], 1e-12)
}

// The number of calls stated in the essay.
func TestBalanceCalls(t *testing.T) {
	calls := 0
	taken := func(n float64) float64 { calls++; return 0.02 * math.Max(0, n-300) }
	rotor := Rotor{DiameterM: 2, PeakCp: 0.35, PeakLambda: 6}
	given := func(n float64) float64 { return rotor.Torque(6, n, 1.2) }
	s := Sample(taken, rotor.RPM(6, rotor.Runaway()), 96, 300)
	sampled := calls
	list := s.Balance(given, taken)
	require.NotEmpty(t, list)
	assert.LessOrEqual(t, calls-sampled, 14*len(list))
}
