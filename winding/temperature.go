package winding

import "math"

// steadyWithin is how near the temperature has to come, K: 0.01 K is 0.004 % of the ohms.
const steadyWithin = 0.01

// hottest is where following the temperature stops: past it no winding lives.
const hottest = 300.0

// balance looks for the temperature that makes the loss which makes that temperature, by
// the secant in a bracket: hotter ohms may make more loss or, where they hold the current
// back, less.
type balance struct {
	at, low, high  float64
	lastAt, lastUp float64
	twice, tried   bool
	// bend is by how much hotter a kelvin makes the temperature that it leads to: of the
	// point before to begin with, which a neighbour has nearly.
	bend float64
}

// next takes the temperature that the loss at h.at leads to, and says where to look then.
func (h *balance) next(leadsTo float64) (celsius float64, done bool) {
	up := leadsTo - h.at
	if math.Abs(up) < steadyWithin {
		return h.at, true
	}
	if up > 0 {
		h.low = max(h.low, h.at)
	} else {
		h.high = min(h.high, h.at)
	}
	if h.twice && up != h.lastUp {
		h.bend = max(-9, min(0.6, 1+(up-h.lastUp)/(h.at-h.lastAt)))
		celsius = h.at - up*(h.at-h.lastAt)/(up-h.lastUp)
	} else {
		celsius = h.at + up/(1-h.bend)
	}
	h.lastAt, h.lastUp, h.twice = h.at, up, true
	switch {
	case celsius > h.low && celsius < h.high:
	case up > 0 && h.high == hottest && !h.tried: // is there an end to it at all?
		h.tried, celsius = true, hottest
	default:
		celsius = (h.low + h.high) / 2
	}
	return celsius, false
}

// trend is a first idea of the temperature at the next speed: in a straight line from the
// last two.
type trend struct {
	ambient            float64
	rpm, celsius       float64
	lastRPM, lastC     float64
	known, knownBefore bool
}

// next is the idea for a speed.
func (t *trend) next(rpm float64) float64 {
	switch {
	case !t.known:
		return t.ambient
	case !t.knownBefore || t.rpm <= t.lastRPM:
		return t.celsius
	}
	ahead := t.celsius + (rpm-t.rpm)*(t.celsius-t.lastC)/(t.rpm-t.lastRPM)
	return max(t.ambient, min(hottest, ahead))
}

// add takes in what it came to.
func (t *trend) add(rpm, celsius float64) {
	t.lastRPM, t.lastC, t.knownBefore = t.rpm, t.celsius, t.known
	t.rpm, t.celsius, t.known = rpm, celsius, true
}
