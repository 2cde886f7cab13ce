package drive

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// MeanWatts is the mean of a power curve over the winds between the breaks, m/s. The breaks must go up,
// and between two of them watts has to be smooth: cut-in, furling and every corner is a break. Below
// the first and above the last it counts as 0.
//
// Gauss-Legendre with 24 points (gonum) on stretches of at most the width of the distribution: for a
// smooth curve good to 1e-9, and so far against the closed form of CubeWatts. For k below 1 the density
// is unbounded at no wind; there the integral is over t = (v/c)^k instead, in which it is bounded.
func (w Weibull) MeanWatts(watts func(wind float64) float64, breaks ...float64) float64 {
	c := w.Scale()
	sum := 0.0
	for i := 1; i < len(breaks); i++ {
		a, b := max(0, breaks[i-1]), max(0, breaks[i])
		if w.K < 1 {
			sum += gauss(func(t float64) float64 { return watts(c*math.Pow(t, 1/w.K)) * math.Exp(-t) },
				math.Pow(a/c, w.K), math.Pow(b/c, w.K), 1)
			continue
		}
		sum += gauss(func(v float64) float64 { return watts(v) * w.density(v, c) }, a, b, 2*c/w.K)
	}
	return sum
}

// gauss is an integral by panels of at most a width; finer next to 0, where a power that
// is not whole has no smooth derivative.
func gauss(f func(float64) float64, a, b, width float64) float64 {
	panels := int(min(1000, max(1, math.Ceil((b-a)/width))))
	at := func(i int) float64 { return a + (b-a)*float64(i)/float64(panels) }
	edges := []float64{a}
	if a == 0 {
		edges = append(edges, at(1)/64, at(1)/8)
	}
	sum := 0.0
	for i := range panels {
		edges = append(edges, at(i+1))
	}
	for i := 1; i < len(edges); i++ {
		sum += quad.Fixed(f, edges[i-1], edges[i], 24, quad.Legendre{}, 0)
	}
	return sum
}
