package drive

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// LinesKWh is a year's energy, kWh, of a power that is linear between watts at winds, m/s, which go up
// from 0 or more; below the first and above the last it counts as 0.
//
// Closed form: with F(v) = 1 - exp(-(v/c)^k) the part of the year below a wind and M(v) = mean·P(1+1/k,
// (v/c)^k) the mean of those winds, P the regularised lower incomplete gamma function, a stretch from
// v0 with slope s brings (watts(v0) - s·v0)·ΔF + s·ΔM. It is the first partial moment of Weibull's
// distribution, by the same substitution as in CubeWatts.
func (w Weibull) LinesKWh(winds, watts []float64) float64 {
	sum := 0.0
	for i, part := range w.LineKWh(winds) {
		sum += part * watts[i]
	}
	return sum
}

// LineKWh is what each watt at each of the winds adds to LinesKWh, kWh: for many powers over the same
// winds, since the gamma function is most of the cost.
func (w Weibull) LineKWh(winds []float64) []float64 {
	const kilo = HoursPerYear / 1000
	c, s, parts := w.Scale(), 1+1/w.K, make([]float64, len(winds))
	var above, mean float64
	for i, v := range winds {
		t := math.Pow(v/c, w.K)
		aboveThis, meanThis := math.Exp(-t), w.Mean*mathext.GammaIncReg(s, t)
		if i > 0 && v > winds[i-1] {
			share, sum, apart := above-aboveThis, meanThis-mean, v-winds[i-1]
			parts[i-1] += kilo * (v*share - sum) / apart
			parts[i] += kilo * (sum - winds[i-1]*share) / apart
		}
		above, mean = aboveThis, meanThis
	}
	return parts
}

// CubeWatts is the mean of perCube·v³ over a range of winds, in closed form:
// perCube·c³·Γ(1+3/k)·(P(1+3/k, (to/c)^k) − P(1+3/k, (from/c)^k)), P the regularised lower incomplete
// gamma function. For a rotor held at its best tip-speed ratio perCube is ½ρ·A·Cp.
func (w Weibull) CubeWatts(perCube, from, to float64) float64 {
	c, s := w.Scale(), 1+3/w.K
	part := func(v float64) float64 { return mathext.GammaIncReg(s, math.Pow(max(0, v)/c, w.K)) }
	return perCube * c * c * c * math.Gamma(s) * (part(to) - part(from))
}

// CapacityFactor is mean power over rated power; 0 when there is no rated power.
func CapacityFactor(meanWatts, ratedWatts float64) float64 {
	if !(ratedWatts > 0) {
		return 0
	}
	return meanWatts / ratedWatts
}
