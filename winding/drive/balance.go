package drive

import (
	"math"
	"slices"
)

// # Where drive and alternator come to terms
//
// The shaft settles where the torque it is given is the torque it has to give. There
// may be several such speeds: a wind rotor with a stiff alternator has a slow one where
// its blades are stalled, a fast one, and between them one that it cannot stay at. All
// are looked for.
//
// The difference of the two torques is sampled on a grid; a change of sign is a root, and
// an extreme that may reach zero between the samples is looked at more closely, since a
// pair of roots can hide there (a tangency is the limit of that). Roots are refined by the secant in a
// bracket (Illinois) until the torques agree to 1e-9 of the larger. Cost: the grid, and
// about six calls a root. What is narrower than a step of the grid and not next to an
// extreme of the samples is not found; 96 steps leave nothing of a smooth torque curve.
//
// A speed is one to stay at when a little more speed leaves less torque over.

// Equilibrium is a speed at which torque given and taken agree.
type Equilibrium struct {
	RPM    float64 `json:"rpm"`
	Torque float64 `json:"torque_nm"`
	Stable bool    `json:"stable"`
}

// Torque is a torque against speed, N·m and rpm.
type Torque func(rpm float64) float64

// Balance finds every equilibrium from low to high, going up.
func Balance(given, taken Torque, low, high float64, steps int) []Equilibrium {
	over := func(rpm float64) float64 { return given(rpm) - taken(rpm) }
	xs, ys := make([]float64, steps+1), make([]float64, steps+1)
	for i := range xs {
		xs[i] = low + (high-low)*float64(i)/float64(steps)
		ys[i] = over(xs[i])
	}
	return Roots(over, given, taken, xs, ys)
}

// Roots is Balance on samples of the difference that are there already; over is the
// exact difference, which they may only come near to.
func Roots(over, given, taken Torque, xs, ys []float64) []Equilibrium {
	var found []Equilibrium
	add := func(a, b, fa, fb float64) {
		rpm := refine(over, given, taken, a, b, fa, fb)
		found = append(found, Equilibrium{RPM: rpm, Torque: taken(rpm), Stable: fa > fb})
	}
	for i := 1; i < len(xs); i++ {
		a, b, fa, fb := xs[i-1], xs[i], ys[i-1], ys[i]
		switch {
		case (fa > 0) != (fb > 0):
			add(a, b, fa, fb)
		case i+1 < len(xs) && (fb > 0) == (ys[i+1] > 0) && mayTouch(fa, fb, ys[i+1]):
			// An extreme that comes near: look whether it passes zero.
			if x, f := nearestZero(over, a, xs[i+1], fb > 0); (f > 0) != (fb > 0) || f == 0 {
				add(a, x, fa, f)
				add(x, xs[i+1], f, ys[i+1])
			}
		}
	}
	slices.SortFunc(found, func(a, b Equilibrium) int {
		if a.RPM < b.RPM {
			return -1
		}
		return 1
	})
	return found
}

// mayTouch reports whether the middle of three samples of one sign is the nearest to
// zero and the parabola through them comes at least half of the way from it to zero.
func mayTouch(a, m, b float64) bool {
	if math.Abs(m) > math.Abs(a) || math.Abs(m) > math.Abs(b) {
		return false
	}
	bend, tilt := a-2*m+b, (b-a)/2
	if bend == 0 {
		return false
	}
	vertex := m - tilt*tilt/(2*bend)
	return vertex*m <= 0.5*m*m
}

// nearestZero is the lowest point of a function in a bracket when above is set, else
// the highest.
func nearestZero(f Torque, a, b float64, above bool) (x, y float64) {
	sign := 1.0
	if !above {
		sign = -1
	}
	ratio := (math.Sqrt(5) - 1) / 2
	c, d := b-ratio*(b-a), a+ratio*(b-a)
	fc, fd := sign*f(c), sign*f(d)
	for range 40 {
		if fc < fd {
			b, d, fd = d, c, fc
			c = b - ratio*(b-a)
			fc = sign * f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + ratio*(b-a)
			fd = sign * f(d)
		}
	}
	x = (a + b) / 2
	return x, f(x)
}

// refine is the root in a bracket.
func refine(over, given, taken Torque, a, b, fa, fb float64) float64 {
	side := 0
	m := a
	for range 80 {
		m = (fa*b - fb*a) / (fa - fb)
		if !(m >= a && m <= b) {
			m = (a + b) / 2
		}
		fm := over(m)
		if math.Abs(fm) <= 1e-9*max(math.Abs(given(m)), math.Abs(taken(m))) || b-a <= 1e-14*b {
			return m
		}
		if (fm > 0) == (fa > 0) {
			if a, fa = m, fm; side == 1 {
				fb /= 2
			}
			side = 1
		} else {
			if b, fb = m, fm; side == -1 {
				fa /= 2
			}
			side = -1
		}
	}
	return m
}

// Settle is the equilibrium that a shaft at a speed comes to: up while torque is over,
// down while it is short, to the next one it can stay at. ok is false when there is
// none that way: upwards it runs away, downwards it stops.
func Settle(equilibria []Equilibrium, rpm, over float64) (e Equilibrium, ok bool) {
	if over >= 0 {
		for _, e := range equilibria {
			if e.Stable && e.RPM >= rpm*(1-1e-9) {
				return e, true
			}
		}
		return Equilibrium{}, false
	}
	for _, e := range slices.Backward(equilibria) {
		if e.Stable && e.RPM <= rpm*(1+1e-9) {
			return e, true
		}
	}
	return Equilibrium{}, false
}
