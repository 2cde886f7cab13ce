package winding

import "math"

// steadyWithin is how near the temperature has to come, K: 0.05 K is 0.02 % of the ohms.
const steadyWithin = 0.05

// hottest is where following the temperature stops: past it no winding lives.
const hottest = 300.0

// balance looks for the temperature that makes the loss which makes that temperature, by
// the secant in a bracket: hotter ohms may make more loss or, where they hold the current
// back, less.
type balance struct {
	at, low, high  float64
	lastAt, lastUp float64
	twice          bool
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
	celsius = leadsTo
	if h.twice && up != h.lastUp {
		celsius = h.at - up*(h.at-h.lastAt)/(up-h.lastUp)
	}
	h.lastAt, h.lastUp, h.twice = h.at, up, true
	if !(celsius > h.low && celsius < h.high) {
		celsius = (h.low + h.high) / 2
	}
	return celsius, false
}
