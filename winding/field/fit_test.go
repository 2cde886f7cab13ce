package field

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two readings and three go through exactly; weights do not move an exact curve.
func TestExactOnTwoAndThreeReadings(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 3))
	for range 500 {
		want := Curve{Infinity: 0.01 + 5*r.Float64(), Half: 0.3 + 6*r.Float64(), Residual: 0.2 * r.Float64()}
		amps := []float64{0.5 + r.Float64(), 2 + r.Float64(), 4 + r.Float64()}
		var three []Reading
		for _, i := range amps {
			three = append(three, Reading{Amps: i, Flux: want.At(i), Weight: 0.1 + r.Float64()})
		}
		got, err := Fit(three)
		require.NoError(t, err)
		assert.Less(t, got.Error, 1e-10)
		assert.InEpsilon(t, want.Half, got.Half, 1e-7)
		want.Residual = 0
		two, err := Fit([]Reading{{Amps: amps[0], Flux: want.At(amps[0])}, {Amps: amps[2], Flux: want.At(amps[2])}})
		require.NoError(t, err)
		assert.InEpsilon(t, want.Half, two.Half, 1e-10)
		assert.InEpsilon(t, want.Infinity, two.Infinity, 1e-10)
		assert.Less(t, two.Error, 1e-12)
	}
}

// A least-squares fit cannot be improved by moving I0.
func TestFitIsTheLeastSquares(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 3))
	for range 200 {
		truth := Curve{Infinity: 1 + r.Float64(), Half: 1 + 3*r.Float64(), Residual: 0.05}
		var readings []Reading
		for _, i := range []float64{0.5, 1, 1.5, 2, 3, 4, 5} {
			readings = append(readings, Reading{Amps: i, Flux: truth.At(i) * (1 + 0.02*r.NormFloat64()), Weight: 0.5 + r.Float64()})
		}
		c, err := Fit(readings)
		require.NoError(t, err)
		assert.Less(t, c.Error, 0.15)
		if c.Straight {
			continue
		}
		_, _, least := solve(readings, froelich(c.Half), true)
		for _, nudge := range []float64{0.5, 0.9, 0.999, 1.001, 1.1, 2} {
			_, _, sum := solve(readings, froelich(c.Half*nudge), true)
			assert.GreaterOrEqual(t, sum, least*(1-1e-9))
		}
	}
}

// The residual and one current are a line: nothing shows where the iron saturates.
func TestResidualAndOneReadingAreALine(t *testing.T) {
	c, err := Fit([]Reading{{Amps: 0, Flux: 0.1}, {Amps: 3, Flux: 1}})
	require.NoError(t, err)
	assert.True(t, c.Straight)
	assert.InEpsilon(t, 0.4, c.At(1), 1e-12)
	flux, guess := c.Flux(4)
	assert.InEpsilon(t, 1.3, flux, 1e-12)
	assert.True(t, guess)
	_, guess = c.Flux(3)
	assert.False(t, guess)
}

func TestOneReadingSaysWhatToReadNext(t *testing.T) {
	_, err := Fit([]Reading{{Amps: 3, Flux: 1}})
	assert.ErrorContains(t, err, "another reading at 1.5 A")
	_, err = Fit([]Reading{{Amps: 0, Flux: 1}})
	assert.ErrorContains(t, err, "full field current")
	_, err = Fit(nil)
	assert.ErrorContains(t, err, "read none")
}

// Whatever is read, the curve is finite, rises, and can be inverted.
func FuzzFit(f *testing.F) {
	f.Add(0.0, 0.1, 2.0, 1.0, 4.0, 1.5)
	f.Add(1.0, 2.0, 2.0, 1.0, 3.0, 0.5)
	f.Add(1e-3, 1e9, 1e5, 1e-9, 2.0, 2.0)
	f.Add(1.0, 1.0, 1.0, 2.0, 1.0, 3.0)
	f.Fuzz(func(t *testing.T, a, fa, b, fb, c, fc float64) {
		curve, err := Fit([]Reading{{Amps: a, Flux: fa}, {Amps: b, Flux: fb}, {Amps: c, Flux: fc}})
		if err != nil {
			assert.ErrorIs(t, err, ErrReadings)
			return
		}
		for _, v := range []float64{curve.Infinity, curve.Half, curve.Residual, curve.Error, curve.At(curve.High), curve.At(curve.High / 3)} {
			require.False(t, math.IsNaN(v) || math.IsInf(v, 0) || v < 0, fmt.Sprintf("%+v", curve))
		}
		require.GreaterOrEqual(t, curve.At(curve.High), curve.At(curve.High/2))
	})
}

func BenchmarkFit(b *testing.B) {
	var readings []Reading
	for _, i := range []float64{0.5, 1, 1.5, 2, 3, 4, 5} {
		readings = append(readings, Reading{Amps: i, Flux: i/(2+i) + 0.01*math.Sin(9*i)})
	}
	for b.Loop() {
		_, _ = Fit(readings)
	}
}
