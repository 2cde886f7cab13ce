package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// A year's energy against gonum's own Weibull distribution and a much finer rule.
func TestEnergyAgainstAReferenceLibrary(t *testing.T) {
	for _, w := range []Weibull{{3, 2}, {5, 2}, {6.5, 2}, {5, 1.5}, {7, 3}} {
		d := distuv.Weibull{K: w.K, Lambda: w.Scale()}
		assert.InEpsilon(t, d.Mean(), w.Mean, 1e-12)
		assert.InEpsilon(t, d.Prob(4), w.Density(4), 1e-12)
		assert.InEpsilon(t, d.Survival(4), w.Above(4), 1e-12)
		watts := func(v float64) float64 { // starts, rises with the cube, furls level
			return 3 * math.Pow(min(v, 12), 3)
		}
		want := 0.0
		for i := range 400 {
			a, b := 3+17*float64(i)/400, 3+17*float64(i+1)/400
			want += quad.Fixed(func(v float64) float64 { return watts(v) * d.Prob(v) }, a, b, 10, quad.Legendre{}, 0)
		}
		assert.InEpsilon(t, want*8.760, 8.760*w.MeanWatts(watts, 3, 7, 12, 16, 20), 1e-6)
	}
}

// The closed form for a rotor held at its best, against the quadrature and against a
// plain sum of gonum's distribution.
func TestCubeAgainstQuadrature(t *testing.T) {
	for _, w := range []Weibull{{3, 2}, {5, 2}, {6.5, 1}, {5, 1.5}, {7, 3}, {4, 0.7}, {6, 12}} {
		cube := func(v float64) float64 { return 0.2 * v * v * v }
		assert.InEpsilon(t, w.CubeWatts(0.2, 2.5, 14), w.MeanWatts(cube, 2.5, 14), 1e-8, "%+v", w)
		assert.InEpsilon(t, w.CubeWatts(0.2, 2.5, 14), w.MeanWatts(cube, 2.5, 3, 8, 14), 1e-8, "%+v", w)
		assert.InEpsilon(t, 0.2*w.MeanCube()*math.Pow(w.Mean, 3), w.CubeWatts(0.2, 0, 1e3*w.Mean), 1e-9, "%+v", w)
		assert.InEpsilon(t, w.CubeWatts(0.2, 0, 12), w.MeanWatts(cube, 0, 12), 1e-6, "%+v", w)
	}
	assert.Equal(t, Weibull{5, 2}, Rayleigh(5))
	assert.InEpsilon(t, 0.25, CapacityFactor(100, 400), 1e-12)
	assert.Zero(t, CapacityFactor(100, 0))
}

// The year of straight lines, closed, against the quadrature of the same lines.
func TestLinesAgainstQuadrature(t *testing.T) {
	winds, watts := []float64{0, 2.5, 3, 7.5, 8, 12, 14}, []float64{0, 0, -5, 120, 90, 310, 0}
	line := func(v float64) float64 {
		i := 1
		for v > winds[i] {
			i++
		}
		return watts[i-1] + (watts[i]-watts[i-1])*(v-winds[i-1])/(winds[i]-winds[i-1])
	}
	for _, w := range []Weibull{{3, 2}, {5, 2}, {6.5, 1}, {5, 1.5}, {7, 3}, {4, 0.7}, {6, 12}} {
		assert.InEpsilon(t, w.MeanWatts(line, winds...)*HoursPerYear/1000, w.LinesKWh(winds, watts), 1e-6, "%+v", w)
	}
}

func TestYearsAtTheEdges(t *testing.T) {
	for _, bad := range []Weibull{{0, 2}, {-1, 2}, {5, 0.1}, {5, 21}, {math.NaN(), 2}, {5, math.NaN()}} {
		assert.ErrorIs(t, bad.Check(), ErrWind)
	}
	for _, k := range []float64{0.5, 1, 1.7, 5} {
		w := Weibull{5, k}
		require.NoError(t, w.Check())
		assert.Equal(t, 1.0, w.Above(-3))
		assert.Zero(t, w.Density(-3))
		assert.True(t, finite(w.Density(0), w.Density(200), w.Above(1e4)))
		one := w.MeanWatts(func(float64) float64 { return 1 }, 0, 500)
		assert.InEpsilon(t, 1-w.Above(500), one, 1e-6, "all winds together, k %g", k)
	}
	assert.Zero(t, Rayleigh(5).LinesKWh([]float64{4}, []float64{3}), "no stretch")
}
