package slot

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

const copper20 = 1.7241e-8 // Ω·m, IEC 60028

// The real formulas against Dowell's complex form, Proc. IEE 113(8), 1966 (from memory):
// φ = Re[u coth u], ψ = Re[2u tanh(u/2)], u = (1+j)ξ.
func TestFactorsAgainstComplexForm(t *testing.T) {
	for xi := 0.001; xi < 60; xi *= 1.07 {
		u := complex(xi, xi)
		own, other := xi, 2*xi
		if xi < 20 {
			own = real(u * cmplx.Cosh(u) / cmplx.Sinh(u))
			other = real(2 * u * cmplx.Sinh(u/2) / cmplx.Cosh(u/2))
		}
		assert.InEpsilon(t, own, ownFactor(xi), 1e-9, "φ at %g", xi)
		assert.InDelta(t, other, otherFactor(xi), 1e-9*max(1, xi), "ψ at %g", xi)
	}
}

// Field's expansion for low frequency, k = 1 + (m² - 0.2)/9·ξ⁴ (Field 1905; Pyrhönen et al. ch. 5;
// from memory), and its limits: one layer 1 + 4ξ⁴/45; thick metal φ = ξ.
func TestFactorsAtTheirLimits(t *testing.T) {
	for _, xi := range []float64{0.01, 0.049, 0.051, 0.1, 0.2} {
		x4 := math.Pow(xi, 4)
		for _, m := range []float64{1, 2, 5, 12} {
			extra := ownFactor(xi) - 1 + (m*m-1)/3*otherFactor(xi)
			assert.InEpsilon(t, (m*m-0.2)/9*x4, extra, 0.05*xi+1e-6, "m %g ξ %g", m, xi)
		}
		assert.InEpsilon(t, 4*x4/45, ownFactor(xi)-1, 0.05*xi+1e-6)
	}
	assert.InDelta(t, 30, ownFactor(30), 1e-12)
	for _, f := range []func(float64) float64{ownFactor, otherFactor} { // no step where the branches meet
		for _, at := range []float64{0.05, 20} {
			assert.InEpsilon(t, f(at*(1-1e-9)), f(at*(1+1e-9)), 1e-6)
		}
	}
}

// Round wires at low frequency: F - 1 = π²ω²μ0²N²n²d⁶/(768 ρ²b²) for N turns of n strands in a window
// b wide (Sullivan, IEEE Trans. Power Electronics 14(2), 1999, eq. 2, from memory; for a
// field that rises from zero over many layers). The equal-area square overstates it by π/3.
func TestACFactorAgainstRoundWireLoss(t *testing.T) {
	d, across, deep, width, hertz := 0.5, 10.0, 30.0, 8.0, 300.0
	w, b, dm := 2*math.Pi*hertz, width/1000, d/1000
	n := across * deep
	sullivan := math.Pi * math.Pi * w * w * mu0 * mu0 * n * n * math.Pow(dm, 6) / (768 * copper20 * copper20 * b * b)
	got := ACFactor(d, deep, hertz, copper20, width, across) - 1
	assert.InEpsilon(t, sullivan*math.Pi/3, got, 2e-3)
}

// Through the public function: one layer is φ alone, m layers Field's low-frequency expansion.
func TestACFactorLayers(t *testing.T) {
	for _, hertz := range []float64{50, 400, 5000} {
		xi, ok := reducedHeight(1, hertz, copper20, 8, 6)
		assert.True(t, ok)
		assert.Equal(t, ownFactor(xi), ACFactor(1, 1, hertz, copper20, 8, 6))
		assert.Equal(t, ownFactor(xi), ACFactor(1, 0.3, hertz, copper20, 8, 6), "less than a layer is a layer")
	}
	xi, _ := reducedHeight(1, 50, copper20, 8, 6)
	for _, m := range []float64{1, 1.5, 4, 9} {
		assert.InEpsilon(t, (m*m-0.2)/9*math.Pow(xi, 4), ACFactor(1, m, 50, copper20, 8, 6)-1, 0.01)
	}
}

// ξ by hand: a square of side h that fills the slot's width has ξ = h/δ, δ the skin depth
// √(ρ/(π f μ0)): copper at 50 Hz 9.35 mm (handbook figure, about 9.3 mm, from memory).
func TestReducedHeightIsSideOverSkinDepth(t *testing.T) {
	d := 2.0
	side := d * math.Sqrt(math.Pi) / 2
	xi, _ := reducedHeight(d, 50, copper20, side, 1)
	assert.InDelta(t, 9.35, side/xi, 0.01)
	quarter, _ := reducedHeight(d, 50, copper20, 4*side, 1)
	assert.InDelta(t, xi/2, quarter, 1e-12, "a quarter of the width filled is half of ξ")
	over, _ := reducedHeight(d, 50, copper20, side, 3)
	assert.Equal(t, xi, over, "no more metal than the slot is wide")
}

func TestSplittingSaves(t *testing.T) {
	whole := ACFactor(1.6, 8, 400, copper20, 8, 4) - 1
	last := whole
	assert.Greater(t, whole, 0.1, "worth splitting")
	for strands := 2; strands <= 16; strands++ {
		extra := ACFactorSplit(1.6, 8, 400, copper20, 8, 4, strands) - 1
		assert.Less(t, extra, last, "%d strands", strands)
		last = extra
	}
	low := ACFactor(0.8, 20, 50, copper20, 8, 8) - 1
	assert.InEpsilon(t, low/7, ACFactorSplit(0.8, 20, 50, copper20, 8, 8, 7)-1, 0.01, "1/strands at low frequency")
	assert.Equal(t, whole, ACFactorSplit(1.6, 8, 400, copper20, 8, 4, 0)-1)
}

func TestACFactorProperties(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 5))
	for range 2000 {
		d, m, f, b, a := 0.2+2*r.Float64(), 1+30*r.Float64(), 5+2000*r.Float64(), 4+10*r.Float64(), 1+8*r.Float64()
		k := ACFactor(d, m, f, copper20, b, a)
		assert.GreaterOrEqual(t, k, 1.0)
		assert.GreaterOrEqual(t, ACFactor(d, m+1, f, copper20, b, a), k)
		assert.GreaterOrEqual(t, ACFactor(d, m, f*1.1, copper20, b, a), k)
		assert.LessOrEqual(t, ACFactor(d, m, f, copper20*1.3, b, a), k, "hot copper has less extra loss")
		assert.InEpsilon(t, k, ACFactor(d*2, m, f/4, copper20, b*2, a), 1e-12, "ξ is a pure number")
	}
	nan, inf := math.NaN(), math.Inf(1)
	for _, v := range []float64{0, -1, nan, inf} {
		assert.Equal(t, 1.0, ACFactor(v, 5, 50, copper20, 8, 4))
		assert.Equal(t, 1.0, ACFactor(1, v, 50, copper20, 8, 4))
		assert.Equal(t, 1.0, ACFactor(1, 5, v, copper20, 8, 4))
		assert.Equal(t, 1.0, ACFactor(1, 5, 50, v, 8, 4))
		assert.Equal(t, 1.0, ACFactor(1, 5, 50, copper20, v, 4))
		assert.Equal(t, 1.0, ACFactor(1, 5, 50, copper20, 8, v))
	}
	assert.Equal(t, 1e6, ACFactor(900, 1e9, 1e9, copper20, 900, 1))
}

func TestLayersDeep(t *testing.T) {
	room := mustMeasure(t, Slot{Shape: Parallel, TopMM: 8.5, DepthMM: 16, MouthMM: 3}, Insulation{LinerMM: 0.25})
	deep, across := LayersDeep(room, 1, 40)
	assert.InDelta(t, 8, across, 1e-9)
	assert.InDelta(t, 5, deep, 1e-9)
	deep, across = LayersDeep(room, 20, 3)
	assert.Equal(t, []float64{3, 1}, []float64{deep, across})
	deep, across = LayersDeep(room, 1, 2)
	assert.Equal(t, 1.0, deep)
	assert.InDelta(t, 8, across, 1e-9)
	deep, across = LayersDeep(room, math.NaN(), 0)
	assert.Equal(t, []float64{1, 1}, []float64{deep, across})
}
