package layout

import (
	"cmp"
	"slices"
)

/*
Parallel circuits

Parallel circuits must have the same EMF, in magnitude and angle, or a current
circulates inside the phase; and the same ohms, or they share the load unevenly. So each
phase's coils must divide into a sets with equal phasor sums and equal wire.

Sort a phase's coils by phasor, as wound. Coils with the same phasor, turns and
reach are equivalent. If a divides the number of coils of every kind, each circuit takes
an equal share of each kind and the sums are equal term by term. The largest a is
thus the greatest common divisor of the numbers of equivalent coils, and the others are
its divisors. Cost: one sort.

Nothing is missed where a layout is as [New] makes it for three phases, equal
coils. Its spokes as wound are powers k = 0..n-1 of z = e^(j·60°/n). Two sets with
equal sums but not equal kinds would give a polynomial with whole coefficients of
degree below n with the root z, a primitive 6n-th root of unity. Its minimal
polynomial has degree φ(6n), which is n or more for every n this package accepts
(φ(6n)/n = 2·Π(1-1/r) over the primes r > 3 that divide n; for that to be below 1
n must contain the seven primes 5 to 23, and exceed 37 million). So there are none.

One phase over 120 or 180 degrees, nested coils and lists as found can have equal sums
of different coils; such circuits are not offered.
*/

// likeness is what coils must share to replace each other in a circuit, in whole numbers so that
// rounding cannot separate equal ones.
type likeness struct {
	middle int // electrical angle of the coil's phasor, in half Q-ths of a turn
	width  int // electrical reach folded to 0..Q/2: the size of the phasor
	turns  int
	reach  int // slots between the sides the short way: the length of wire
}

// likenessOf reduces start-finish = -2j·sin(π·d/Q)·e^(jπ(2·start+d)/Q).
func (l *Layout) likenessOf(c *Coil) likeness {
	q, p := l.spec.Slots, l.spec.pairs()
	d := wrap(p*(c.Finish-c.Start), 2*q)
	middle := 2*p*c.Start + d
	if d > q {
		d, middle = d-q, middle+q // sin is negative: turn by half a turn
	}
	if c.Sense < 0 {
		middle += q
	}
	steps := wrap(c.Finish-c.Start, q)
	like := likeness{middle: wrap(middle, 2*q), width: min(d, q-d), turns: c.Turns, reach: min(steps, q-steps)}
	if like.width == 0 {
		like.middle = 0
	}
	return like
}

// compareLikeness orders likenesses, in any fixed order.
func compareLikeness(a, b likeness) int {
	return cmp.Or(cmp.Compare(a.middle, b.middle), cmp.Compare(a.width, b.width),
		cmp.Compare(a.turns, b.turns), cmp.Compare(a.reach, b.reach))
}

// kinds sorts a phase's coils, except those left out, into runs of equivalent ones; within a run they
// go up round the machine. It returns each run as indexes.
func (l *Layout) kinds(set, phase int, order []int) [][]int {
	type item struct {
		like  likeness
		index int
	}
	var items []item
	for _, i := range order {
		if c := &l.coils[i]; c.Set == set && c.Phase == phase && c.Turns > 0 {
			items = append(items, item{l.likenessOf(c), i})
		}
	}
	slices.SortStableFunc(items, func(a, b item) int { return compareLikeness(a.like, b.like) })
	var runs [][]int
	for n, it := range items {
		if n == 0 || items[n-1].like != it.like {
			runs = append(runs, nil)
		}
		last := len(runs) - 1
		runs[last] = append(runs[last], it.index)
	}
	return runs
}

// CircuitChoices is every number of parallel circuits that all phases allow, going up from 1.
func (l *Layout) CircuitChoices() []int {
	order := groupOrder(l.coils)
	most := 0
	for set := range l.spec.Sets {
		for phase := range l.spec.Phases {
			for _, run := range l.kinds(set, phase, order) {
				most = gcd(len(run), most)
			}
		}
	}
	choices := []int{1}
	for a := 2; a <= most; a++ {
		if most%a == 0 {
			choices = append(choices, a)
		}
	}
	return choices
}

// WithCircuits is the layout with a parallel circuits in each phase, each circuit a contiguous part of
// the machine where possible. The error names the numbers that [Layout.CircuitChoices] allows.
func (l *Layout) WithCircuits(a int) (*Layout, error) {
	choices := l.CircuitChoices()
	if !slices.Contains(choices, a) {
		return nil, problemf("circuits: read %d, expected one of %v; with others the circuits would have unequal voltage or wire and drive a current round each other", a, choices)
	}
	next := l.copied()
	next.circuits = a
	for i := range next.coils {
		next.coils[i].Circuit = 1
	}
	order := groupOrder(l.coils)
	for set := range l.spec.Sets {
		for phase := range l.spec.Phases {
			for _, run := range l.kinds(set, phase, order) {
				for n, i := range run {
					next.coils[i].Circuit = n/(len(run)/a) + 1
				}
			}
		}
	}
	return next, nil
}
