package drive

import (
	"errors"
	"fmt"
	"math"
)

// HoursPerYear is for 365 days.
const HoursPerYear = 8760.0

// Weibull is a year's winds: the mean and the shape k; k = 2 is Rayleigh's.
type Weibull struct {
	Mean float64 // m/s, above 0
	K    float64 // 0.5 to 20
}

// ErrWind is wrapped by the errors about a year's winds.
var ErrWind = errors.New("year's wind")

// Check tests the numbers.
func (w Weibull) Check() error {
	if !(w.Mean > 0 && w.Mean < 100) || !(w.K >= 0.5 && w.K <= 20) {
		return fmt.Errorf("%w: read a mean of %g m/s and k %g, expected above 0 and 0.5 to 20", ErrWind, w.Mean, w.K)
	}
	return nil
}

// Rayleigh is a year of a mean wind with the usual shape, k = 2.
func Rayleigh(mean float64) Weibull { return Weibull{mean, 2} }

// Scale is Weibull's c, mean/Γ(1 + 1/k).
func (w Weibull) Scale() float64 { return w.Mean / math.Gamma(1+1/w.K) }

// Density is the part of the year per m/s at a wind. For k below 1 it is unbounded towards no wind; at
// 0 itself it is then given as 0.
func (w Weibull) Density(wind float64) float64 { return w.density(wind, w.Scale()) }

// density is Density with the scale, which costs a gamma function, precomputed.
func (w Weibull) density(wind, scale float64) float64 {
	if wind < 0 || wind == 0 && w.K < 1 {
		return 0
	}
	x := wind / scale
	return w.K / scale * math.Pow(x, w.K-1) * math.Exp(-math.Pow(x, w.K))
}

// Above is the part of the year with more wind than that.
func (w Weibull) Above(wind float64) float64 {
	return math.Exp(-math.Pow(max(0, wind)/w.Scale(), w.K))
}

// MeanCube is the mean of v³ over the cube of the mean, Γ(1+3/k)/Γ(1+1/k)³; 6/π for
// Rayleigh.
func (w Weibull) MeanCube() float64 { return math.Gamma(1+3/w.K) / math.Pow(math.Gamma(1+1/w.K), 3) }
