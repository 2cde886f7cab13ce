package charge

import "math"

// # How two phases on one load are solved
//
//	   R   ωL      ┌─────────┐            a: e = Ê·sin θ
//	(a)▭──ᔔ───────┤ bridge  ├──┬── +      b: e = Ê·sin(θ - 90°)
//	               └─────────┘  │
//	   R   ωL      ┌─────────┐  Rb         V and Rb carry the currents of both
//	(b)▭──ᔔ───────┤ bridge  ├──┤
//	               └─────────┘  V          each path through a bridge: 2·V0 + 2·r·i
//
// The idea. Two single windings a quarter of a cycle apart, with a bridge each, do not pulse together:
// one peaks where the other is at zero. Where the load has ohms each sees the current of the other, so
// they are one circuit; twice one phase against twice the ohms is a different circuit, and gives 29 %
// less into a lamp from a winding of little resistance. As in bridge3.go everything is linear between
// two switchings.
//
// The circuit. With s the direction in which a phase conducts and j = s·i its size, r including the
// diodes' slope, v = V + 2·V0:
//
//	idle   none conducts, until |e| exceeds v
//	lone   one conducts, the other rests
//	       x·j' + (r + rb)·j = s·e - v
//	duo    both conduct; their sum and their difference decouple
//	       x·S' + (r + 2rb)·S = s·e + s'·e' - 2v
//	       x·D' + r·D         = s·e - s'·e'
//
// so each equation has a single exponential, and pieces.go, events.go and integrals.go do the rest. A
// resting phase starts conducting where |e| = v + rb·j, its current beginning with slope zero. Where a
// current reaches zero it reverses at once if its EMF exceeds that in the other direction, else it
// rests.
//
// The periodic state. After 90° the same happens with the phases exchanged, i_b where i_a was and -i_b
// where i_a will be, so a quarter is enough. The map of the two currents over it is composed of exact
// pieces (pairmarch.go) and closed on itself by Newton's method; its derivative jumps only where a
// current reverses. Two states under the same EMF never move apart, so the answer is unique, and plain
// marching converges to it where Newton's step brings no gain.
//
// Without a search: pulses of up to 90° never overlap, and each is that of single.go with the load's
// ohms to itself. With no ohms in the load (a converter's input, a battery behind no cable) neither
// phase sees the other: both are single.go's to the last digit, and only the rms of their sum has to be
// found, by the integral of their product.
//
// Half wave. One diode each: no current reverses, and the period is a whole cycle; the rest is the
// same. Doubler. Both phases fill the same two capacitors, whose voltage does not ripple (halfwave.go),
// so each sees only the mean of the other: one phase against twice the ohms, doubled, is exact there.
//
// Cost. Some 6 µs a point over the table of the tests, 5 from a neighbour, no allocation: three to four
// marches. Accuracy. As bridge3.go: power in is power out to 1e-9 over random circuits, each watt being
// integrated separately; amps agree with time stepping to 1e-4, which is its own accuracy, and with a
// circuit simulator, whose diodes are curved, to 1e-3.
//
// Limits. As bridge3.go; the two windings link none of each other's flux. Two sets of three phases, in
// step or 30° apart, are not solved this way but as one set against twice the ohms: their direct
// current has little ripple, and by time stepping amps and watts were within 0.32 % of that.

// pair solves two phases on one load: the means over what repeats, and the mode. It starts from a
// neighbour's state and leaves its own there.
func (c *circuit) pair(oneWay bool, near *neighbour) (sums, Mode, error) {
	if c.v >= math.Sqrt2/2 { // pulses are 180° - 2·arcsin v long, and longer with inductance
		if p, event := c.pulse(math.Pi / 2); event == 0 {
			near.pair = false
			sum := c.beside(&p, Pulses, oneWay)
			return sum, Pulses, nil
		}
	}
	if c.rb == 0 {
		return c.independent(oneWay)
	}
	m := pairMarch{c: c, oneWay: oneWay}
	from := m.guess()
	if near.pair {
		from = near.two
	}
	if err := m.settle(from); err != nil {
		return sums{}, Off, err
	}
	near.pair, near.two = true, m.from
	sum, mode := m.sums()
	return sum, mode, nil
}

// betweenPairs is Between for two phases.
func betweenPairs(a, b *Solver, part float64) Solver {
	last := b.last
	for k, to := range b.last.two {
		from := a.last.two[k]
		if at := from + part*(to-from); at*to > 0 {
			last.two[k] = at
		}
	}
	return Solver{last}
}

// independent is two phases that do not see each other: the load has no ohms.
func (c *circuit) independent(oneWay bool) (sum sums, mode Mode, err error) {
	alone := c.single
	if oneWay {
		alone = c.oneDiode
	}
	p, mode, err := alone()
	if err != nil {
		return sums{}, Off, err
	}
	if sum = c.beside(&p, mode, oneWay); mode == Pulses {
		mode = Mixed
	}
	return sum, mode, nil
}

// beside is the means of two phases each with the piece p, a quarter of a cycle apart.
func (c *circuit) beside(p *piece, mode Mode, oneWay bool) (sum sums) {
	p.integrate(mode == Pulses || oneWay, &sum)
	const quarter = math.Pi / 2
	both := 2 * p.product(quarter)
	if oneWay {
		both = p.product(quarter) + p.product(3*quarter)
	}
	return sums{2 * sum.amps, 2*sum.square + 2*both, 2 * sum.phases, 2 * sum.input}.over(cycle(oneWay))
}

// cycle is the period of one phase's current, its sign aside.
func cycle(oneWay bool) float64 {
	if oneWay {
		return 2 * math.Pi
	}
	return math.Pi
}

// product is the integral of a pulse times itself shifted by an angle.
func (p *piece) product(later float64) (sum float64) {
	lambda := p.main.lambda
	for from, end := 0.0, p.span-later; from < end; {
		to := min(end, from+panel(from, lambda, lambda))
		middle, half := (from+to)/2, (to-from)/2
		for k, at := range tenPoints.at {
			for _, t := range [...]float64{middle - half*at, middle + half*at} {
				sum += half * tenPoints.by[k] * p.main.value(newArc(t)) * p.main.value(newArc(t+later))
			}
		}
		from = to
	}
	return sum
}

// doublers solves two phases that fill the same two capacitors.
func (c *circuit) doublers() (sums, Mode, error) {
	one := *c
	one.rb *= 2
	sum, mode, err := one.doubler()
	return sums{2 * sum.amps, 4 * sum.square, 2 * sum.phases, 2 * sum.input}, mode, err
}
