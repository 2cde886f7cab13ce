package charge

import "math"

// # The mixed state from two unknowns
//
// Where each phase rests for part of the cycle and direct current never stops, the usual sequence is a
// trio (one phase hands over to the next) and then a loop, repeated every 60°. Take the sixth in which
// phase a holds the upper rail and c takes over from b at the lower one. It begins as the resting
// terminal c comes down to its rail, which fixes the angle once the current i is known:
//
//	3·sin(θ - 240°) = -(v + rb·i),   falling
//
// The trio ends at angle τ, as b's current reaches zero; the loop a-c continues until, 60° after the
// start, the next phase wakes, which it does if and only if the current is i again. So the two unknowns
// i and τ have two equations,
//
//	i_b(τ) = 0,   i_loop(60° - τ) = i
//
// solved together by Newton's method: a march over the sixth costs two short evaluations, and the
// derivatives come from the same numbers (each mode decays, each switching adds a jump). From the state
// at a neighbouring speed it takes two or three rounds, from nothing four or five.
//
// A solution is accepted only after every diode has been checked: both pieces are walked like any other
// (events.go); the trio must end at τ by phase b, and the loop at 60° by phase b waking at the upper
// rail. The periodic state is unique (bridge3.go), so a state that passes is the answer wherever the
// search began. One that does not, or another sequence of switching, is left to the general march
// (newton.go).

// handover is the mixed state: the current at the start of the sixth, in the circuit's unit, and the
// trio's length.
type handover struct{ amps, trio float64 }

// maxRounds is how many rounds of Newton's method are tried before the general march takes over.
const maxRounds = 12

// stuck is the fraction of the miss two rounds before above which a search is given up: in a circuit
// whose phases all conduct it always runs against the end of the sixth, and gains little per round.
const stuck = 0.6

// nearEnough is the relative miss from which one more round of a quadratically convergent method leaves
// only rounding; this is checked afterwards.
const nearEnough = 3e-7

// roughHandover is a first guess: the mean current of a bridge whose commutation costs 3x/π ohms, and
// lasts as long as without resistance: 1 - cos τ = 2x·i/√3 (both common practice, no source).
func (c *circuit) roughHandover() handover {
	amps := (3*math.Sqrt(3)/math.Pi - c.v) / (2*c.r + c.rb + 3*c.x/math.Pi)
	amps = max(1.1*amps, 0.02)
	return handover{amps, math.Acos(max(1-2*c.x*amps/math.Sqrt(3), 0.6))}
}

// towards is the state that a round leads to, or half way to the ends of the possible range.
func (at handover) towards(amps, trio float64) handover {
	return handover{max(amps, at.amps/2), max(at.trio/2, min(trio, (at.trio+sixth)/2))}
}

// mixed solves a circuit in the mixed state from a first guess, leaves its pieces in m, and returns the
// state, or false if this is no such circuit.
func (m *march) mixed(at handover) (handover, bool) {
	last, before := math.Inf(1), math.Inf(1)
	for range maxRounds {
		next, miss, ok := m.c.round(at)
		if !ok || miss > stuck*before {
			return at, false
		}
		at, last, before = next, miss, last
		if miss > nearEnough {
			continue
		}
		off, ok := m.agreesMixed(&at)
		if !ok || off <= 1e-13 {
			return at, ok
		}
	}
	return at, false
}

// wakes gives the EMFs at the angle at which c wakes at the lower rail while a and b carry a current,
// and the derivative of that angle by it; false if none is low enough.
func (c *circuit) wakes(amps float64) (e emfs, perAmp float64, ok bool) {
	depth := (c.v + c.rb*amps) / 3
	if !(depth < 1) {
		return e, 0, false
	}
	fall := math.Sqrt((1 - depth) * (1 + depth))
	return emfsOf(-depth, -fall).from(2), c.rb / 3 / fall, true
}

// handTo is the trio in which c takes over from b.
func (c *circuit) handTo(e *emfs, amps float64) piece {
	return c.newTrio(e, 0, 1, &[3]float64{amps, -amps, 0})
}

// round is a round of Newton's method: the state it leads to, and the larger of the two relative
// misses.
func (c *circuit) round(at handover) (next handover, miss float64, ok bool) {
	e, perAmp, ok := c.wakes(at.amps)
	if !ok || !(at.amps > 0 && at.trio > 0 && at.trio < sixth) {
		return at, 0, false
	}
	p := c.handTo(&e, at.amps)
	t := newArc(at.trio)
	main, mainDecay := p.main.at(t)
	split, splitDecay := p.split.at(t)
	turned := e.turned(t)
	q := c.newLoop(&turned, 0, 2, main.value)
	end, endDecay := q.main.at(newArc(sixth - at.trio))

	// By the current at the start, which moves the start itself; then by the angle of the event.
	dMain, dSplit := (1-p.main.slope0*perAmp)*mainDecay, (1-p.split.slope0*perAmp)*splitDecay
	bend := main.first - q.main.slope0
	off, falls := (main.value+split.value)/2, (main.first+split.first)/2
	late, perAmpLate := -off/falls, -(dMain+dSplit)/2/falls
	miss, slope := end.value-at.amps+endDecay*bend*late, endDecay*(dMain+bend*perAmpLate)+end.first*perAmp-1
	amps := -miss / slope
	next = at.towards(at.amps+amps, at.trio+late+perAmpLate*amps)
	return next, max(math.Abs(end.value-at.amps), math.Abs(off)) / at.amps, falls < 0
}

// agreesMixed checks all diodes over the sixth that begins with a current, and sets the trio's actual
// length. It returns the relative error with which the current fails to repeat.
func (m *march) agreesMixed(at *handover) (off float64, ok bool) {
	e, _, ok := m.c.wakes(at.amps)
	if !ok || !(at.amps > 0) {
		return 0, false
	}
	p, q := &m.pieces[0], &m.pieces[1]
	*p = m.c.handTo(&e, at.amps)
	span, event := p.eventNear(sixth, at.trio, 0)
	if event != 0 {
		return 0, false
	}
	t := newArc(span)
	p.span, at.trio = span, span
	turned := e.turned(t)
	*q = m.c.newLoop(&turned, 0, 2, p.main.value(t))
	left := sixth - span
	if end, event := q.eventNear(left, left, 1); event == -2 || event == 0 || event == 2 || left-end > 1e-9 {
		return 0, false
	}
	q.span, m.n = left, 2
	return math.Abs(q.main.value(newArc(left))/at.amps - 1), true
}
