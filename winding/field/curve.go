package field

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// # The magnetisation curve
//
// Froelich's formula, Φ = Φ∞·I/(I0 + I) + Φr, is the simplest curve that rises in
// proportion at first and flattens as the iron fills up: Φ∞ is what it would come to, I0
// the current for half of that, Φr what is left at no current. It was put up for
// dynamos in the 1880s and is still the textbook's first one (from memory). On a small
// claw-pole or salient rotor it follows the measured curve to a few percent between the
// readings; above the highest one it is a guess, and says so.
//
// The fit is least squares. For a given I0 the formula is linear in Φ∞ and Φr, which
// have a closed form; what is left is a search over I0 alone: a scan over five decades
// and a golden section. Two readings give the curve through both with Φr = 0. Readings
// that do not flatten give the straight line.

// Reading is a flux, or anything in proportion to it, at a field current.
type Reading struct {
	Amps   float64 // 0 and up
	Flux   float64 // above 0
	Weight float64 // above 0; 0 is taken as 1
}

// Curve is a magnetisation curve.
type Curve struct {
	Infinity float64 // Φ∞; with Straight the slope per ampere
	Half     float64 // I0, amps
	Residual float64 // Φr, 0 and up
	Straight bool    // the readings do not flatten: Φ = slope·I + Φr
	// Low and High are the lowest and highest current read.
	Low, High float64
	// Error is the largest misfit of a reading, a fraction of it.
	Error float64
}

// ErrReadings is wrapped by the errors about readings.
var ErrReadings = errors.New("field readings")

// Fit finds the curve through readings at two field currents or more. The error says
// what is missing or out of range.
func Fit(readings []Reading) (Curve, error) {
	distinct := map[float64]bool{}
	c := Curve{Low: math.Inf(1)}
	for _, r := range readings {
		if !(r.Amps >= 0 && r.Amps <= 1e6) || !(r.Flux > 0 && r.Flux <= 1e12) || !(r.Weight >= 0 && r.Weight <= 1e12) {
			return Curve{}, fmt.Errorf("%w: read %g A and a flux of %g, expected 0 and up and above 0", ErrReadings, r.Amps, r.Flux)
		}
		distinct[r.Amps] = true
		c.Low, c.High = min(c.Low, r.Amps), max(c.High, r.Amps)
	}
	if len(distinct) < 2 || c.High == 0 {
		return Curve{}, fmt.Errorf("%w: read one field current, expected two or more; take another reading at half of it", ErrReadings)
	}
	c.fit(readings, len(distinct) > 2 || c.Low == 0)
	for _, r := range readings {
		c.Error = max(c.Error, math.Abs(c.At(r.Amps)/r.Flux-1))
	}
	return c, nil
}

// fit searches I0.
func (c *Curve) fit(readings []Reading, residual bool) {
	cost := func(logHalf float64) float64 {
		_, _, sum := solve(readings, froelich(math.Exp(logHalf)), residual)
		return sum
	}
	low, high := math.Log(c.High/1e3), math.Log(c.High*1e2)
	const steps = 120
	best := low
	for n := range steps + 1 {
		if x := low + (high-low)*float64(n)/steps; cost(x) < cost(best) {
			best = x
		}
	}
	at := golden(cost, best-(high-low)/steps, best+(high-low)/steps)
	slope, offset, line := solve(readings, func(amps float64) float64 { return amps }, residual)
	if at > high-1e-9 || line <= cost(at)*(1+1e-9) {
		c.Infinity, c.Residual, c.Straight = slope, offset, true
		return
	}
	c.Half = math.Exp(at)
	c.Infinity, c.Residual, _ = solve(readings, froelich(c.Half), residual)
}

func froelich(half float64) func(float64) float64 {
	return func(amps float64) float64 { return amps / (half + amps) }
}

// solve is least squares of flux = a·shape(amps) + b, b 0 and up, or 0.
func solve(readings []Reading, shape func(float64) float64, residual bool) (a, b, sum float64) {
	var w, sx, sy, sxx, sxy float64
	for _, r := range readings {
		k := weight(r)
		x := shape(r.Amps)
		w, sx, sy, sxx, sxy = w+k, sx+k*x, sy+k*r.Flux, sxx+k*x*x, sxy+k*x*r.Flux
	}
	if det := w*sxx - sx*sx; residual && det > 1e-15*w*sxx {
		a, b = (w*sxy-sx*sy)/det, (sxx*sy-sx*sxy)/det
	}
	if !residual || b < 0 || a <= 0 {
		a, b = sxy/sxx, 0
	}
	for _, r := range readings {
		d := a*shape(r.Amps) + b - r.Flux
		sum += weight(r) * d * d
	}
	return a, b, sum
}

func weight(r Reading) float64 {
	if r.Weight == 0 {
		return 1
	}
	return r.Weight
}

// golden is where a function with one valley in a bracket is lowest.
func golden(f func(float64) float64, a, b float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	c, d := b-ratio*(b-a), a+ratio*(b-a)
	fc, fd := f(c), f(d)
	for range 90 {
		if fc < fd {
			b, d, fd = d, c, fc
			c = b - ratio*(b-a)
			fc = f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + ratio*(b-a)
			fd = f(d)
		}
	}
	return (a + b) / 2
}

// At is the flux at a field current, 0 and up.
func (c Curve) At(amps float64) float64 {
	amps = max(0, amps)
	if c.Straight {
		return c.Infinity*amps + c.Residual
	}
	return c.Infinity*amps/(c.Half+amps) + c.Residual
}

// Amps is the current for a flux; ok is false for one that the curve never comes to.
func (c Curve) Amps(flux float64) (amps float64, ok bool) {
	over := flux - c.Residual
	switch {
	case over <= 0:
		return 0, true
	case c.Straight:
		return over / c.Infinity, true
	case over >= c.Infinity:
		return math.Inf(1), false
	}
	return c.Half * over / (c.Infinity - over), true
}

// Outside reports whether a current is above the readings, so that the curve is a guess.
func (c Curve) Outside(amps float64) bool { return amps > c.High*1.001 }

// Currents lists the distinct currents of readings, going up.
func Currents(readings []Reading) []float64 {
	var list []float64
	for _, r := range readings {
		if !slices.Contains(list, r.Amps) {
			list = append(list, r.Amps)
		}
	}
	slices.Sort(list)
	return list
}
