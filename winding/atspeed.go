package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/drive"
)

// This file reads a characteristic (characteristic.go) off at a speed.

// at is the trial at a speed, 0 and up.
func (c *characteristic) at(rpm float64) RunPoint {
	i, s, within := c.find(rpm)
	switch {
	case !within:
		r := *c.r
		return r.at(rpm, c.warm)
	case !c.agreed[i]:
		return c.solved(rpm, i)
	}
	v := c.draw(i, s)
	if c.knots[i].ruling != lets {
		return c.heldAt(rpm, i, v)
	}
	return c.r.point(rpm, v[channels-1], c.knots[i].tooHot, c.r.drawn(v, c.knots[i].mode))
}

// find is the stretch that a speed lies in and its place there; within is false where there is
// none.
func (c *characteristic) find(rpm float64) (i int, s float64, within bool) {
	if len(c.knots) == 0 || rpm <= c.from || rpm > c.top*(1+1e-9) {
		return 0, 0, false
	}
	s = math.Sqrt((rpm - c.from) / (c.top - c.from))
	i, high := 0, len(c.agreed)
	for high-i > 1 { // the last one that begins no further on
		if middle := (i + high) / 2; c.knots[middle].s > s {
			high = middle
		} else {
			i = middle
		}
	}
	return i, s, true
}

// torqueAt is the torque alone, as at has it: a shaft asks for it hundreds of times.
func (c *characteristic) torqueAt(rpm float64) float64 {
	i, s, within := c.find(rpm)
	switch {
	case rpm < c.from && c.r.idles():
		return dragTorque(c.r.drag, rpm)
	case rpm < c.from && c.r.ringOnly():
		return torqueOf(c.ringWatts(rpm)*c.r.sets+c.r.drag.at(rpm), rpm)
	case !within || !c.agreed[i] || c.knots[i].ruling != lets:
		return c.at(rpm).TorqueNm
	}
	p := c.r.drawn(c.draw(i, s), c.knots[i].mode)
	return torqueOf(p.InputWatts*c.r.sets+c.r.drag.at(rpm), rpm)
}

// ringOnly reports whether below cut-in nothing but the current round a delta can flow, at a field that no
// regulator lowers.
func (r *charger) ringOnly() bool { return r.star.third == 0 && !r.holder.bends() }

// ringWatts is the heat of the current round a delta below cut-in, W of a set, at its steady temperature:
// that of charger.steady without the bridge, which does not conduct there.
func (c *characteristic) ringWatts(rpm float64) float64 {
	r := c.r
	watts := func(celsius float64) float64 {
		_, heat := r.round(rpm, r.ohms20*r.factor(20, celsius))
		return heat
	}
	rth, floor := r.air.perWatt(rpm), r.floor(rpm)
	switch {
	case r.holdsHeat():
		return watts(c.warm)
	case floor > hottest-1:
		return watts(hottest)
	}
	heats := balance{at: max(floor, min(c.warm, hottest)), low: floor, high: hottest, bend: r.warms.bend}
	for range 40 {
		heat := watts(heats.at)
		next, done := heats.next(floor + rth*heat*r.sets)
		switch {
		case done:
			return heat
		case heats.low > hottest-1:
			return watts(hottest)
		}
		heats.at = next
	}
	return watts(heats.at)
}

// heldAt is a speed at which the regulator holds, or cannot hold enough.
func (c *characteristic) heldAt(rpm float64, i int, v [channels]float64) RunPoint {
	h := heldRun{charger: *c.r.unheld(), ruling: c.knots[i].ruling}
	if h.ruling == holds {
		h.lever = v[0]
	}
	c.r.pulled(&h.charger, h.lever)
	if h.ruling == holds {
		v[0] = c.r.heldAmps(&h.charger, v[1])
	}
	h.point = h.drawn(v, c.knots[i].mode)
	return h.shown(c.r, rpm, v[channels-1], c.knots[i].tooHot)
}

// drawn makes a bridge point from interpolated values; the rest follows from these as in package
// charge.
func (r *charger) drawn(v [channels]float64, mode charge.Mode) charge.Point {
	p := charge.Point{DCAmps: v[0], DCAmpsRMS: v[1], PhaseAmpsRMS: v[2], CopperWatts: v[3], DiodeWatts: v[4], Mode: mode}
	p.DCVolts, p.BatteryWatts = r.load.Volts+r.load.Ohms*p.DCAmps, r.load.Volts*p.DCAmps
	p.InputWatts = p.BatteryWatts + r.load.Ohms*sq(p.DCAmpsRMS) + p.CopperWatts + p.DiodeWatts
	return p
}

// solved is a speed in a stretch that is not interpolated. It leaves no state behind, so the same
// speed always gives the same result.
func (c *characteristic) solved(rpm float64, i int) RunPoint {
	r, warm := *c.r, c.warm
	if !r.holdsHeat() {
		warm = (c.knots[i].v[channels-1] + c.knots[i+1].v[channels-1]) / 2
	}
	return r.at(rpm, warm)
}

// torque is the trial as a shaft sees it: its torque against speed, with the corner where current begins to
// flow into a battery that takes charge, and samples of that up to a speed.
func (c *characteristic) torque(high float64) drive.Load {
	return drive.Load{Taken: c.torqueAt, CutInRPM: c.from, Samples: drive.Sample(c.torqueAt, high, driveSamples, c.from)}
}

// driveSamples is the number of torque samples given to the drive.
const driveSamples = 48
