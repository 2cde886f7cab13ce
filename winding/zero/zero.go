// Package zero finds where a function crosses zero between two places at which its values have two
// signs.
//
// It knows nothing of machines. A search that also carries what was solved at each place (a run, a
// switching) does its own steps with a [Bracket].
package zero

// # False position
//
// The next place is where the straight line through the two values crosses zero. On a function that
// bends one way the same end stays for ever, and the other creeps. So the value at an end that has
// stayed twice is halved, which throws the line past the crossing (the Illinois variant):
//
//	m = (f(a)·b − f(b)·a)/(f(a) − f(b))
//
// Where rounding puts m on an end or past it, the middle is taken. Near a simple zero three values
// make one and a half digits twice (order 1.44; Dowell and Jarratt 1971, from memory); the zero stays
// bracketed throughout.

// Bracket is two places with a zero between them.
type Bracket struct {
	// A is below B. At is the value at each; the two have opposite signs.
	A, B, AtA, AtB float64
	// stays is 1 while A was moved last, -1 while B was.
	stays int
}

// Next is the place to look at: strictly between A and B.
func (z *Bracket) Next() float64 {
	m := (z.AtA*z.B - z.AtB*z.A) / (z.AtA - z.AtB)
	if !(m > z.A && m < z.B) {
		m = (z.A + z.B) / 2
	}
	return m
}

// Put narrows the bracket to a place between its ends with the value there, not 0; moved is by how much
// the end that it takes the place of moves, and upper says that this is B.
func (z *Bracket) Put(m, at float64) (moved float64, upper bool) {
	if (at > 0) == (z.AtA > 0) {
		moved = m - z.A
		if z.A, z.AtA = m, at; z.stays == 1 {
			z.AtB /= 2
		}
		z.stays = 1
		return moved, false
	}
	moved = z.B - m
	if z.B, z.AtB = m, at; z.stays == -1 {
		z.AtA /= 2
	}
	z.stays = -1
	return moved, true
}

// Middle is halfway.
func (z *Bracket) Middle() float64 { return (z.A + z.B) / 2 }

// most is how many places are looked at: more than any continuous function needs.
const most = 60

// Of is where a function crosses zero between two places above 0, a below b, with values of two signs
// there, to 1 part in 10⁵.
func Of(f func(float64) float64, a, b, atA, atB float64) float64 {
	z := Bracket{A: a, B: b, AtA: atA, AtB: atB}
	for range most {
		m := z.Next()
		at := f(m)
		if at == 0 {
			return m
		}
		if moved, _ := z.Put(m, at); z.B-z.A <= 1e-5*z.B || moved <= 1e-6*z.B {
			return m
		}
	}
	return z.Middle()
}

// Bisect is where a condition begins to hold between two places above 0, to 1 part in 10⁵; it must not
// hold at the lower one and hold at the higher.
func Bisect(low, high float64, holds func(float64) bool) float64 {
	for high-low > 1e-5*high {
		mid := (low + high) / 2
		if holds(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return (low + high) / 2
}
