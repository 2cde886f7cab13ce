package winding

import (
	"math"

	"slotwright/winding/charge"
)

// steadyWithin is the tolerance on the temperature, K: 0.01 K is 0.004 % of the ohms.
const steadyWithin = 0.01

// For an intermediate result, the last step in temperature is not solved again if it is no longer than
// this, K: the current is extrapolated by the effect of a kelvin. From two temperatures solved at this
// speed that is right to a part in 100,000; with the effect at the previous point, which may have been
// a fifth larger or smaller, to two.
const (
	stepOfBefore = 0.02
	stepOfTwo    = 0.2
)

// stepCompared is how many times longer such a step may be for what is only compared, by agreement to 3 parts
// in 1,000: from another point by 0.2 K, between two temperatures by 2 K, either right to some parts in 10,000.
const stepCompared = 10

// longer is a step that need not be solved, by what it is for.
func (r *charger) longer(step float64) float64 {
	if r.compared {
		return stepCompared * step
	}
	return step
}

// hottest is where following the temperature stops, °C: past it a winding is said to burn, whether it would
// settle above that or run away. Class H, the hottest of the usual ones, allows 180 °C (IEC 60085).
const hottest = 300.0

// balance looks for the temperature whose loss leads to that same temperature, by the secant method in
// a bracket: hotter ohms may make more loss or, where they limit the current, less.
type balance struct {
	at, low, high  float64
	lastAt, lastUp float64
	twice, tried   bool
	// bend is the slope: the change of the temperature led to for a kelvin. It starts from the previous
	// point's, which is nearly the same.
	bend float64
	last float64 // the longest step that is not solved, 0 where all are
}

// next takes the temperature that the loss at h.at leads to, and says where to look next.
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
		done = math.Abs(celsius-h.at) < h.last
	case up > 0 && h.high == hottest && !h.tried: // is there a steady temperature at all?
		h.tried, celsius = true, hottest
	default:
		celsius = (h.low + h.high) / 2
	}
	return celsius, done
}

// electric is the number of a point's values that depend on temperature: amps, their rms, phase amps,
// watts in copper and diodes. The rest follows from these.
const electric = 5

func electricOf(p *charge.Point) [electric]float64 {
	return [electric]float64{p.DCAmps, p.DCAmpsRMS, p.PhaseAmpsRMS, p.CopperWatts, p.DiodeWatts}
}

// warming is the effect of a kelvin at a point: the relative change of each value, and the change of
// the temperature led to.
type warming struct {
	known bool
	bend  float64
	part  [electric]float64
}

// step is the longest step that need not be solved at a next point.
func (w *warming) step() float64 {
	if w.known {
		return stepOfBefore
	}
	return 0
}

// learn takes the effect from two points a number of kelvin apart, and returns the longest step that
// now need not be solved.
func (w *warming) learn(from, to *charge.Point, kelvin float64) (step float64) {
	if from.Mode != to.Mode { // a corner lies between
		return 0
	}
	before := electricOf(from)
	for j, v := range electricOf(to) {
		if w.part[j] = 0; v > 0 {
			w.part[j] = (v - before[j]) / (v * kelvin)
		}
	}
	w.known = true
	return stepOfTwo
}

// warmer is a point at a temperature so many kelvin higher.
func (r *charger) warmer(p charge.Point, kelvin float64) charge.Point {
	if kelvin == 0 {
		return p
	}
	var v [channels]float64
	for j, now := range electricOf(&p) {
		v[j] = now * (1 + kelvin*r.warms.part[j])
	}
	return r.drawn(v, p.Mode)
}

// trend is a first guess of the temperature at the next speed: linear from the last two.
type trend struct {
	ambient            float64
	rpm, celsius       float64
	lastRPM, lastC     float64
	known, knownBefore bool
}

// next is the guess for a speed.
func (t *trend) next(rpm float64) float64 {
	switch {
	case !t.known:
		return t.ambient
	case !t.knownBefore || t.rpm == t.lastRPM:
		return t.celsius
	}
	return min(hottest, t.celsius+(rpm-t.rpm)*(t.celsius-t.lastC)/(t.rpm-t.lastRPM))
}

// add takes in the temperature found.
func (t *trend) add(rpm, celsius float64) {
	t.lastRPM, t.lastC, t.knownBefore = t.rpm, t.celsius, t.known
	t.rpm, t.celsius, t.known = rpm, celsius, true
}
