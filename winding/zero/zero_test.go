package zero

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Numbers known to many digits: the cube root of 2, π from the sine, the fixed point of the cosine
// (0.739085133215161, OEIS A003957), each from brackets of either sign.
func TestKnownZeros(t *testing.T) {
	for _, c := range []struct {
		f          func(float64) float64
		a, b, want float64
	}{
		{func(x float64) float64 { return x*x*x - 2 }, 0.5, 3, math.Cbrt(2)},
		{math.Sin, 2, 4, math.Pi},
		{func(x float64) float64 { return math.Cos(x) - x }, 0.1, 1.5, 0.739085133215161},
	} {
		for _, sign := range []float64{1, -1} {
			f := func(x float64) float64 { return sign * c.f(x) }
			assert.InEpsilon(t, c.want, Of(f, c.a, c.b, f(c.a), f(c.b)), 1e-5)
		}
	}
}

// The power x¹⁰ − 1 from 0 to 1.3 is the textbooks' example of a false position that creeps: without the
// halving, counted with another program, its lower end has come to 0.81 after thirteen places and it is
// found at the 52nd. With it thirteen are enough, and the zero stays between the ends throughout.
func TestTheEndThatStaysIsHalved(t *testing.T) {
	f := func(x float64) float64 { return math.Pow(x, 10) - 1 }
	z := Bracket{A: 0, B: 1.3, AtA: f(0), AtB: f(1.3)}
	for range 10 {
		m := z.Next()
		assert.True(t, m > z.A && m < z.B)
		wide := z.B - z.A
		was := z
		moved, upper := z.Put(m, f(m))
		assert.InDelta(t, wide-moved, z.B-z.A, 1e-15, "by how much the end moved")
		assert.Equal(t, f(m) > 0, upper)
		assert.True(t, z.A <= 1 && z.B >= 1, "%+v", was)
	}
	looked := 0
	got := Of(func(x float64) float64 { looked++; return f(x) }, 0, 1.3, f(0), f(1.3))
	assert.InDelta(t, 1, got, 1e-5)
	assert.LessOrEqual(t, looked, 13)
}

// A line is met at the first place; a jump is closed in on by the middle where the line says nothing.
func TestLinesAndJumps(t *testing.T) {
	looked := 0
	assert.Equal(t, 2.0, Of(func(x float64) float64 { looked++; return 2 - x }, 1, 5, 1, -3))
	assert.Equal(t, 1, looked)
	step := func(x float64) float64 { return math.Copysign(1, x-math.Sqrt2) }
	assert.InEpsilon(t, math.Sqrt2, Of(step, 1, 2, -1, 1), 1e-4)
	z := Bracket{A: 1, B: 3, AtA: 1e-320, AtB: -1e300}
	assert.Equal(t, 2.0, z.Next(), "the line crosses on an end, within rounding")
}

// A condition that begins to hold at the square root of 2.
func TestBisect(t *testing.T) {
	assert.InEpsilon(t, math.Sqrt2, Bisect(1, 4, func(x float64) bool { return x*x >= 2 }), 1e-5)
}
