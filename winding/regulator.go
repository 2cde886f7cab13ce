package winding

import (
	"fmt"
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/job"
)

// # What holds the current
//
// A regulator or controller may limit the net amps into the battery. Below the limit nothing changes;
// above it the amps are known and something else is the unknown:
//
//	wound rotor   the share of the field current that makes just these amps. The flux follows its
//	              own curve where one was read, else it is proportional; the rotor's watts follow
//	              the field current, and iron loss the square of the flux. Friction stays: a third
//	              of the drag, as in the guess of it (drag.go).
//	in series     with magnets: the volts dropped in a controller between bridge and battery.
//	              The bridge is solved against battery and controller together, so current, heat
//	              and torque are those of that voltage. A controller that drops volts burns
//	              them, and that is what is computed. One that opens late in each half wave
//	              leaves nearly the same amps in the winding but burns little: with it the shaft
//	              is loaded less than shown here, by up to the controller's watts, and a drive
//	              that gives way turns faster. What the figures mean for a switching
//	              controller is said beside them (IfItSwitches).
//	shunt         with magnets: the winding carries all that the bridge lets through, at the battery's
//	              voltage, and the excess is burned in parallel. Only the battery's amps are held.
//
// The unknown is found by false position (Anderson and Björck's weights), to a millionth of the amps,
// at one temperature of the winding; the temperature is balanced around that as without a regulator,
// each time with a warm start from the previous unknown. So a winding that would overheat without a
// regulator finds its steady temperature with one. Ten to twenty solutions of the bridge a speed.
// Between solved speeds it is interpolated like everything else (characteristic.go), with the share or
// the volts in place of the amps, which are known.
//
// It ends where the residual flux, with no field current, already brings more than the limit: there no
// regulator holds, and what is shown is the current with no field at all. Diode volts, cable and
// battery are unchanged. It is assumed that the regulator itself uses no power and does not act on the
// battery's voltage; how these three kinds work is common practice, no source.

// regulator is what holds the net amps; nil where nothing does.
type regulator struct {
	amps         float64 // net limit
	wound, shunt bool
	// Of a wound rotor: field is the field current in use, A, 0 where it is not known; flux and
	// watts are the flux and the rotor's watts at a share of it.
	field       float64
	flux, watts func(share float64) float64
}

// newRegulator is the job's; nil where none was given or the load is no battery.
func newRegulator(g *job.BatterySpec, e *excitation, f *flux) *regulator {
	if !g.MostAmps.Given() || g.Load == job.LoadResistor || g.Load == job.LoadBus {
		return nil
	}
	r := &regulator{amps: g.MostAmps.Value, wound: e.wound, shunt: !e.wound && g.HeldBy == job.HeldByShunt}
	if !r.wound {
		return r
	}
	r.flux, r.watts = func(share float64) float64 { return share }, func(float64) float64 { return 0 }
	if !e.amps.Known() || !(e.amps.Value > 0) {
		return r
	}
	r.field = e.amps.Value
	if e.watts.Known() {
		r.watts = func(share float64) float64 { return e.coil.Watts(share * r.field) }
	}
	if f.at != nil {
		if full := f.at(r.field); full > 0 {
			r.flux = func(share float64) float64 { return f.at(share*r.field) / full }
		}
	}
	return r
}

// stays reports whether flux remains without any field current.
func (g *regulator) stays() bool { return g.wound && g.flux(0) > 0 }

// least is the smaller of some net amps and the regulator's limit.
func (g *regulator) least(amps float64) float64 {
	if g == nil {
		return amps
	}
	return min(amps, g.amps)
}

// bends reports whether the bridge's own amps are held, not the battery's alone.
func (g *regulator) bends() bool { return g != nil && !g.shunt }

// pulled makes h a copy of r with its regulator's lever at a position: a share of the field
// current, or volts in the controller.
func (r *charger) pulled(h *charger, lever float64) {
	if g := r.holder; g.wound {
		flux := g.flux(lever)
		h.peak, h.openPeak, h.field = r.peak*flux, r.openPeak*flux, g.watts(lever)
		h.drag = r.drag.atFlux(flux)
		return
	}
	h.drop, h.load.Volts = lever, r.load.Volts+lever
}

// unheld is the same charger without its regulator.
func (r *charger) unheld() *charger {
	other := *r
	other.holder = nil
	return &other
}

// heldAmps is what one set's bridge gives where the regulator holds A net amps, their rms being
// known. V·I + c watts go in at the posts, c being the heat of the battery's own ohms, so of I amps
// I·(1 − field/(V·I + c)) are left. Setting that to A gives a quadratic in I.
func (r *charger) heldAmps(h *charger, rms float64) float64 {
	v, heat := r.load.Volts, r.inner*sq(rms*r.sets)
	b := heat - h.field - r.holder.amps*v
	return (math.Sqrt(sq(b)+4*v*r.holder.amps*heat) - b) / (2 * v) / r.sets
}

// ruling is what a regulator does at a speed.
type ruling uint8

const (
	lets  ruling = iota // need not hold
	holds               // holds the amps
	spent               // has removed the whole field, and still too much flows
)

// heldRun is a trial at a speed and a temperature with its regulator: unchanged where it need not
// hold, else with the lever where it has to be, or at its end where that does not suffice.
type heldRun struct {
	charger
	point  charge.Point
	lever  float64
	ruling ruling
}

// heldWithin is the tolerance of the held amps, relative.
const heldWithin = 1e-6

// pull is the lever at the previous temperature, and the slope of the net amps over it there; slope is
// 0 if nothing was limited yet.
type pull struct{ lever, slope float64 }

// holding finds the lever at a temperature, starting from the previous one.
func (r *charger) holding(rpm, celsius float64, before *pull) heldRun {
	h := heldRun{charger: *r.unheld()}
	if before.slope != 0 && r.holdingNear(&h, rpm, celsius, before) {
		return h
	}
	h.charger = *r.unheld()
	if h.point = h.solve(rpm, celsius); h.net(&h.point) <= r.holder.amps {
		r.near, r.eight = h.near, h.eight
		h.lever, h.ruling = 0, lets
		return h
	}
	if r.holder.stays() {
		bare := heldRun{charger: h.charger, ruling: spent}
		r.pulled(&bare.charger, 0)
		if bare.point = bare.solve(rpm, celsius); bare.net(&bare.point) > r.holder.amps {
			return bare
		}
	}
	h.ruling = holds
	// From nothing held, which is too much, to nothing let through.
	a, over := 0.0, h.net(&h.point)-r.holder.amps
	b, under := r.openPeak*rpm-r.load.Volts, -r.holder.amps
	if r.holder.wound {
		a, b = 1, 0
	}
	last, was, had := 0, a, over
	for range 80 {
		h.lever = a + (b-a)*over/(over-under)
		now := r.pulledTo(&h, rpm, celsius)
		if h.lever != was {
			before.slope = (now - had) / (h.lever - was)
		}
		was, had = h.lever, now
		if math.Abs(now) <= heldWithin*r.holder.amps || math.Abs(b-a) <= 1e-12*(math.Abs(a)+math.Abs(b)) {
			break
		}
		if now > 0 {
			if last > 0 {
				under *= weight(now, over)
			}
			a, over, last = h.lever, now, 1
			continue
		}
		if last < 0 {
			over *= weight(now, under)
		}
		b, under, last = h.lever, now, -1
	}
	before.lever = h.lever
	r.knows(&h)
	return h
}

// holdingNear is holding with a warm start from another temperature, by the secant method; false if it
// does not converge in a few steps.
func (r *charger) holdingNear(h *heldRun, rpm, celsius float64, before *pull) bool {
	h.lever, h.ruling = before.lever, holds
	was, had := math.NaN(), 0.0
	for range 5 {
		now := r.pulledTo(h, rpm, celsius)
		if slope := (now - had) / (h.lever - was); slope != 0 && !math.IsNaN(slope) && !math.IsInf(slope, 0) {
			before.slope = slope
		}
		if math.Abs(now) <= heldWithin*r.holder.amps {
			before.lever = h.lever
			r.knows(h)
			return true
		}
		was, had = h.lever, now
		h.lever -= now / before.slope
		if !(h.lever > 0) || r.holder.wound && h.lever >= 1 {
			return false
		}
	}
	return false
}

// pulledTo solves with the lever as set; over is the excess of the net amps over the limit.
func (r *charger) pulledTo(h *heldRun, rpm, celsius float64) (over float64) {
	r.pulled(&h.charger, h.lever)
	h.point = h.solve(rpm, celsius)
	return h.net(&h.point) - r.holder.amps
}

// knows sets what is known exactly where the amps are held at the limit.
func (r *charger) knows(h *heldRun) {
	h.point.DCAmps = r.heldAmps(&h.charger, h.point.DCAmpsRMS)
	h.point.BatteryWatts = h.load.Volts * h.point.DCAmps
}

// weight is the factor on the value at the end that stays (Anderson and Björck).
func weight(now, before float64) float64 {
	if w := 1 - now/before; w > 0 {
		return w
	}
	return 0.5
}

// steadyHeld is steady with a regulator that bends the bridge's amps.
func (r *charger) steadyHeld(rpm, warm float64) (h heldRun, celsius float64, tooHot bool) {
	var lever pull
	if r.holdsHeat() {
		return r.holding(rpm, warm, &lever), warm, false
	}
	p, celsius, tooHot := r.steady(rpm, warm)
	if !tooHot && r.net(&p) <= r.holder.amps {
		return heldRun{charger: *r.unheld(), point: p}, celsius, false
	}
	rth := r.air.perWatt(rpm)
	heats := balance{at: max(r.air.ambientC, min(warm, hottest)), low: r.air.ambientC, high: hottest}
	for range 40 {
		h = r.holding(rpm, heats.at, &lever)
		from := ironThroughStator*h.drag.at(rpm) + fieldThroughStator*h.field + h.point.CopperWatts*r.sets
		next, done := heats.next(r.air.ambientC + rth*from)
		switch {
		case done:
			return h, heats.at, false
		case heats.low > hottest-1:
			return r.holding(rpm, hottest, &lever), hottest, true
		}
		heats.at = next
	}
	return h, heats.at, false
}

// shown is the point as it is shown.
func (h *heldRun) shown(r *charger, rpm, celsius float64, tooHot bool) RunPoint {
	out := h.charger.point(rpm, celsius, tooHot, h.point)
	switch h.ruling {
	case lets:
		return out
	case spent:
		out.Spent, out.flux = true, r.holder.flux(0)
		return out
	}
	out.Held, out.flux = true, 1
	if r.holder.wound {
		out.HeldFieldAmps, out.flux = r.holder.field*h.lever, r.holder.flux(h.lever)
	}
	out.NetAmps = r.holder.amps // exact but for rounding
	return out
}

// dumped takes the excess off the battery's part of a point: a shunt burns it in parallel.
func (g *regulator) dumped(p *RunPoint) {
	if g == nil || !g.shunt || p.NetAmps <= g.amps {
		return
	}
	share := g.amps / p.NetAmps
	p.ControllerWatts = p.BatteryWatts * (1 - share)
	p.BatteryWatts *= share
	p.NetWatts, p.NetAmps, p.Held = p.BatteryWatts-p.FieldWatts, g.amps, true
}

// heldSaid says that the regulator holds the amps of a condition; "" where it does not.
func (t *TrialOutcome) heldSaid(condition int) string {
	switch p := t.in(condition); {
	case p != nil && p.Held:
		return ", held by the regulator"
	case p != nil && p.Spent:
		return ", more than the regulator can hold"
	}
	return ""
}

// words say what holds the amps at a point where the regulator does.
func (g *regulator) words(p *Operating) string {
	text := "the regulator holds them at " + figures(g.amps) + " A: "
	switch {
	case p.Spent:
		return "the flux that stays without any field current produces them: the regulator, set to " + figures(g.amps) + " A, can lower them no further"
	case g.wound && g.field > 0:
		return text + fmt.Sprintf("the field is down to %s A of %s A", figures(p.HeldFieldAmps), figures(g.field))
	case g.wound:
		return text + fmt.Sprintf("the flux is down to %.0f %%", 100*p.flux)
	case g.shunt:
		return text + fmt.Sprintf("%s W of what the winding gives are burned in a shunt", figures(p.ControllerWatts))
	}
	return text + fmt.Sprintf("the controller takes up %s V, %s W if it burns them; %s", figures(p.ControllerWatts/p.AmpsDC), figures(p.ControllerWatts), IfItSwitches)
}

// IfItSwitches says what the figures of a held winding mean to someone whose series controller does
// not burn what it drops. One with an inductor of its own (a buck converter) gives the battery more
// amps than the winding carries, by the balance of watts: winding and drive are loaded less than
// shown. One that only opens and closes lets the winding carry, while closed, what flows without
// it: for the same mean amps the heat lies between the two. How these kinds work is common
// practice, no source.
const IfItSwitches = "one with a coil of its own (a buck, most MPPT) asks less of winding and drive; one that only opens and closes (most PWM) lets the winding carry while closed what flows unheld"

// pastHolding is the highest net current in any condition that flows without any field, past the
// regulator's setting; 0 where it holds everywhere.
func (t *TrialOutcome) pastHolding(g *regulator) (most float64) {
	for i := range t.Operating {
		p := &t.Operating[i]
		if amps := max(p.NetAmps, p.EmptyAmps, p.FullAmps); amps > g.amps*(1+10*heldWithin) {
			most = max(most, amps)
		}
	}
	return most
}

// residual reports that the residual flux brings more than the regulator can hold: in the first
// condition in which it does, or does so into an empty battery.
func (a aboutRunning) residual(d *doubts, t job.Trial, o *TrialOutcome) {
	if a.holder == nil || !a.holder.wound {
		return
	}
	for i := range o.Operating {
		p := &o.Operating[i]
		most, into := p.NetAmps, ""
		if !p.Spent {
			most, into = p.EmptyAmps, ", the battery empty"
		}
		if most > a.holder.amps*(1+10*heldWithin) {
			d.add(Finding{Severity: Doubt, Path: "battery.most_current", Trial: t.Name, Fix: "a lower top speed, fewer turns, or a switch between bridge and battery"},
				"residual flux alone brings %s A (%s%s), more than the %s A that the regulator should hold: with no field current at all it can lower them no further", amps(most), a.drive.label(p), into, amps(a.holder.amps))
			return
		}
	}
}

// fieldSaid explains the field current where the regulator sets it.
func (g *regulator) fieldSaid(p *Operating) string {
	if p.Spent {
		return "where the regulator has cut it to nothing"
	}
	return "where the regulator holds it"
}

// guarded is the first condition in which only the regulator keeps the winding within its limit;
// nil where there is none.
func (t *TrialOutcome) guarded() *Operating {
	for i := range t.Operating {
		if p := &t.Operating[i]; p.unheld > 0 && !t.PassedIn(&p.RunPoint) && t.Passed(p.unheld, p.unheldRPM) {
			return p
		}
	}
	return nil
}

// Unguarded is the amps DC that would flow without the regulator where only that keeps the winding
// within its limit; guards is false where nothing depends on the regulator.
func (t *TrialOutcome) Unguarded() (amps float64, guards bool) {
	if p := t.guarded(); p != nil {
		return p.unheld, true
	}
	return 0, false
}

// sayMost says where a regulator's setting is typed.
const sayMost = "say it in Most current of the battery"
