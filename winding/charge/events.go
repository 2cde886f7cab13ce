package charge

import "math"

// Finding the first event
//
// A piece ends when one of a few functions of the angle, all positive at its start, first reaches zero:
// a current about to reverse in a diode, or the margin by which a resting phase stays between the
// rails. A root finder that brackets on a grid can step over a short dip. So the walk uses steps that
// cannot: at each point value, slope, curvature and a bound M on the third derivative from there on are
// known in closed form, so within w (Taylor)
//
//	h ≥ value + slope·τ + c·τ²/2   with   c = curvature - M·w/3
//
// A leap (leap.go) looks where the next event is to be expected, by Halley steps, which converge in two
// or three but may pass over a dip, and then proves by that bound, from the start over one half and
// back from the event over the other, that nothing came before. In most pieces that is all. Where the
// proof fails the walk makes one safe step: the largest τ for which the bound is still positive. Far
// from a root such steps are long; near one the bound approaches Halley's step from the safe side and
// converges as fast. A fast exponential (little inductance) makes M large only while it lasts: steps
// grow as it dies, so it costs a handful of steps whatever its rate.

// maxSteps bounds the work; the usual number is 1 or 2. Hundreds are taken only by the first march from
// rest of a circuit with next to no inductance.
const maxSteps = 10000

// safeStep is an angle, no more than limit, within which the function has no root. 0 means that it is
// at a root.
func (j jet) safeStep(limit float64) float64 {
	within := limit
	tau := j.lowerRoot(within)
	if tau >= within {
		return within
	}
	// Angles at which the bound on the third derivative matters about as much as curvature, slope and
	// value: below them the parabola is a close bound.
	for _, reach := range [...]float64{0.9 * math.Abs(j.second), math.Sqrt(math.Abs(j.first) * j.third)} {
		within = min(limit, reach/j.third)
		tau = max(tau, min(within, j.lowerRoot(within)))
	}
	for _, stretch := range [...]float64{2.5, 1.3} {
		within = min(limit, stretch*tau)
		better := j.lowerRoot(within)
		if better >= within {
			return within
		}
		tau = max(tau, better)
	}
	return tau
}

// lowerRoot is the first root, within an angle, of the parabola that bounds the function from below;
// +Inf if it has none.
func (j jet) lowerRoot(within float64) float64 {
	c := j.second - j.third*within/3
	if c >= 0 && j.first >= 0 {
		return math.Inf(1)
	}
	disc := j.first*j.first - 2*c*j.value
	if disc < 0 {
		return math.Inf(1)
	}
	if j.value == 0 && j.first <= 0 {
		return 0
	}
	if j.first <= 0 {
		return 2 * j.value / (-j.first + math.Sqrt(disc))
	}
	return (j.first + math.Sqrt(disc)) / -c
}

// fromZero is a jet at the start of a piece, where a value or slope below zero can only be rounding, or
// belongs to a phase that has just been released.
func (j jet) fromZero() jet {
	j.value = max(j.value, 0)
	if j.value == 0 {
		j.first = max(j.first, 0)
	}
	return j
}

// firstEvent walks a piece until the first of its event functions reaches zero, or to span. It returns
// the angle and which function, or -1. The functions are evaluated together by jets.
func (p *piece) firstEvent(span float64) (float64, int) { return p.eventNear(span, 0, -1) }

// eventNear is firstEvent where an event is expected near an angle: it is looked for there first, and
// proved like any other. An angle of 0 means no expectation.
func (p *piece) eventNear(span, near float64, due int) (float64, int) {
	p.main.bound()
	if p.twofold() {
		p.split.bound()
	}
	here, n := p.jetsAtStart()
	for k := range n {
		here[k] = here[k].fromZero()
	}
	t, reach := 0.0, math.Inf(1)
	for range maxSteps {
		if way, event, ok := p.leap(t, min(span-t, reach), near, due, here[:n]); ok && (event >= 0 || t+way >= span) {
			return min(t+way, span), event
		} else if ok {
			t, reach = t+way, math.Inf(1)
		} else {
			step, which := safeStep(here[:n], span-t)
			if which < 0 {
				return span, -1
			}
			if step <= 1e-15*t {
				return t, which
			}
			t, reach = t+step, 4*step
		}
		near = 0
		here, _ = p.jets(newArc(t))
		for k := range n {
			if here[k].value <= 0 {
				return t, k
			}
		}
	}
	return t, -2
}

// safeStep is the longest step within limit in which none of the functions has a root, and the function
// that limits it; -1 if none does.
func safeStep(here []jet, limit float64) (step float64, which int) {
	step, which = limit, -1
	for k := range here {
		if tau := here[k].safeStep(step); tau < step {
			step, which = tau, k
		}
	}
	return step, which
}
