package charge

import "math"

// # Half wave and doubler
//
// Both are the single phase of single.go,
//
//	x·i' + ρ·i = sin θ - v
//
// with another v, ρ and count of half waves.
//
// Half wave. One diode: v = V + V0, ρ = r + rb, and current in one direction only. A pulse begins where
// sin θ = v and ends where the current reaches zero, at most 360° later: over a whole cycle the mean of
// x·i' is zero, so a pulse of 360° would need ρ·i + v to be zero too. Each pulse therefore begins from
// no current, and the march over one is the exact answer for any inductance. Where neither load nor
// resistance takes anything (a coil short-circuited through an ideal diode) the pulse reaches zero just
// as the next begins.
//
// Doubler. Each half wave fills its own capacitor, which feeds the load throughout the cycle. With
// capacitors so large that their voltage does not ripple, each is at half of the load's u = V + Rb·I,
// and the winding sees what a bridge of one diode would show it: v = u/2 + V0, ρ = r, in both
// directions. Half of the mean of |i| goes into either capacitor, and exactly that flows out through
// the load:
//
//	I = ½·mean|i|(u)     u = V + Rb·I
//
// mean|i| falls as u rises and I rises with it, so there is one u; it lies between V and twice what the
// peak leaves, and false position finds it to rounding. With Rb = 0 there is nothing to find.
//
// Accuracy. Exact for the circuit, like the bridge. The doubler's capacitors are taken without ripple:
// capacitors of C farads each ripple by I/(f·C) volts, which changes the amps by a fraction of the
// order of that over V (the tests run finite ones for comparison).

// halfWave solves one phase on one diode: the means over a cycle, and the mode.
func (c *circuit) halfWave() (sums, Mode, error) {
	p, mode, err := c.oneDiode()
	if err != nil {
		return sums{}, Off, err
	}
	var sum sums
	p.integrate(true, &sum)
	return sum.over(2 * math.Pi), mode, nil
}

// oneDiode is the pulse through one diode.
func (c *circuit) oneDiode() (piece, Mode, error) {
	p, event := c.pulse(2 * math.Pi)
	switch {
	case event == -2:
		return p, Off, errUnsettled
	case event < 0:
		return p, Continuous, nil
	}
	return p, Pulses, nil
}

// pulse is the pulse of a phase from no current, or as much of it as is asked for, and the event that
// ends it.
func (c *circuit) pulse(longest float64) (p piece, event int) {
	cos := math.Sqrt((1 - c.v) * (1 + c.v))
	p = piece{kind: alone, main: newMode(c.r+c.rb, c.x, 0, 0, cos, c.v)}
	p.span, event = p.firstEvent(longest)
	return p, event
}

// doubler solves one phase on two diodes and two capacitors: the means of the winding's current, and
// the load's amps in the circuit's unit.
func (c *circuit) doubler() (sum sums, mode Mode, err error) {
	// In halves: v is half the load and a diode, rb half the load's ohms for the mean of |i|/2.
	low, high := c.v, 1.0
	try := func(v float64) float64 {
		held := *c
		held.v, held.rb = v, 0
		sum, mode, err = held.bridge1()
		if c.rb == 0 {
			return 0
		}
		return sum.amps/2 - (v-c.v)*2/c.rb
	}
	over, under := try(low), -(high-low)*2/c.rb
	if c.rb == 0 || over <= 0 {
		return sum, mode, err
	}
	kept := 0
	for n := 0; err == nil && n < 200 && high-low > 1e-15; n++ {
		at := low + (high-low)*over/(over-under)
		if n%8 == 7 || !(at > low && at < high) {
			at = (low + high) / 2
		}
		switch f := try(at); {
		case f == 0:
			return sum, mode, err
		case f > 0:
			if low, over = at, f; kept == 1 {
				under /= 2
			}
			kept = 1
		default:
			if high, under = at, f; kept == -1 {
				over /= 2
			}
			kept = -1
		}
	}
	return sum, mode, err
}
