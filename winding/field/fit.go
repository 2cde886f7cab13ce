package field

import "math"

// # Fitting Froelich's curve
//
// Weighted least squares of the flux itself. (The old method of drawing I/Φ against I as a straight
// line weights the highest current most and allows no residual flux; it is right for two readings
// only.)
//
// For a given I0 the formula is linear in Φ∞ and Φr, which have a closed form; what remains is a
// one-dimensional search over ln I0: a scan over five decades, which finds the right valley, then a
// golden section, which finds the minimum: to about eight digits where readings disagree, and to twelve
// where a curve goes through them all (two readings, three with residual flux), since there the sum
// goes to zero. It takes some two hundred passes over the readings, tens of microseconds.
//
// Φr is kept at 0 and above. An I0 beyond a hundred times the highest current means that nothing
// flattens: the straight line is taken.

// fit finds Infinity, Half and Residual; Low and High are set.
func (c *Curve) fit(readings []Reading) {
	amps := Currents(readings)
	residual := len(amps) > 2 || c.Low == 0
	cost := func(half float64) float64 {
		_, _, sum := solve(readings, froelich(half), residual)
		return sum
	}
	top := c.High * 1e2
	half := c.search(cost, c.High/1e3, top)
	slope, offset, line := solve(readings, func(amps float64) float64 { return amps }, residual)
	if len(amps) == 2 && c.Low == 0 || half >= top*(1-1e-6) || line <= cost(half)*(1+1e-9) {
		c.Infinity, c.Residual, c.Straight = slope, offset, true
		return
	}
	c.Half = half
	c.Infinity, c.Residual, _ = solve(readings, froelich(half), residual)
}

// search is the minimum of cost between two I0, both above 0.
func (c *Curve) search(cost func(float64) float64, low, top float64) float64 {
	const steps = 120
	width := math.Log(top/low) / steps
	best, least := low, math.Inf(1)
	for n := range steps + 1 {
		half := low * math.Exp(width*float64(n))
		if v := cost(half); v < least {
			best, least = half, v
		}
	}
	at := golden(func(x float64) float64 { return cost(math.Exp(x)) },
		max(math.Log(low), math.Log(best)-width), min(math.Log(top), math.Log(best)+width))
	return math.Exp(at)
}

func froelich(half float64) func(float64) float64 {
	return func(amps float64) float64 { return amps / (half + amps) }
}

// solve is least squares of flux = a·shape(amps) + b, with b ≥ 0, or b = 0.
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

// golden is the minimum, in a bracket, of a function with a single one.
func golden(f func(float64) float64, a, b float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	c, d := b-ratio*(b-a), a+ratio*(b-a)
	fc, fd := f(c), f(d)
	for range 60 {
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
