package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/readings"
)

// # Iron that saturates
//
// Where the old winding's readings show how its inductance falls with current, so does that of every
// other: the iron saturates by ampere-turns, so a winding of c times the effective turns has at a
// current i the share of its inductance that the old one had at c·i. Current and inductance then depend
// on each other; wanted is the lowest self-consistent current, which is the one that a machine brought
// up from rest reaches. readings.Settle finds it in a few solutions of the bridge.

// filling is how the inductance of a winding falls with the current of a phase, A rms; the zero value
// does not.
type filling struct {
	fit   *fitted
	ratio float64
	loose bool
}

// fillingOf is that of a winding.
func (b *inductances) fillingOf(w *candidate) filling {
	c, was := &w.coils, &b.old.coils
	if b.route != byAll || !b.old.likeCoils(c) || was.effective <= 0 {
		return filling{}
	}
	return filling{b.fit, c.effective / was.effective, b.loose}
}

// factor is the inductance at a phase current over that at the current it is given for.
func (f filling) factor(amps float64) float64 {
	if f.fit == nil {
		return 1
	}
	return f.fit.fit.HenriesFactor(amps * f.ratio)
}

// filled is one set at a speed with so many ohms a phase, at the inductance for its own current.
func (r *charger) filled(rpm, ohms float64) charge.Point {
	solve := func(henries float64) charge.Point {
		p, err := r.bridge(charge.Source{
			EMFPeak: r.peak * rpm, Hertz: r.hertz * rpm, Ohms: ohms, Henries: henries, Phases: r.phases, Delta: r.delta,
		})
		if err != nil {
			return charge.Point{Mode: charge.Off}
		}
		return p
	}
	if r.fill.fit == nil {
		return solve(r.henries)
	}
	p := readings.SettleAt(func(amps float64) float64 { return r.henries * r.fill.factor(amps) }, solve)
	if r.fill.loose {
		return loosened(p, r.openPeak*rpm/(r.load.Volts+2*r.load.DiodeVolts))
	}
	return p
}

// loosened is a point with its current raised by the possible error of the lumped model; kappa is the
// EMF over that at cut-in.
func loosened(p charge.Point, kappa float64) charge.Point {
	if p.DCAmps <= 0 {
		return p
	}
	more := 1 + readings.ModelDoubt(kappa)
	rest := p.InputWatts - p.CopperWatts
	p.DCAmps, p.DCAmpsRMS, p.PhaseAmpsRMS = p.DCAmps*more, p.DCAmpsRMS*more, p.PhaseAmpsRMS*more
	p.BatteryWatts, p.DiodeWatts, p.CopperWatts = p.BatteryWatts*more, p.DiodeWatts*more, p.CopperWatts*more*more
	p.InputWatts = rest*more + p.CopperWatts
	return p
}

// shorted is the inductance at the current of joined leads, for volts of a phase, ohms and ohms of
// reactance for one henry.
func (r *charger) shorted(volts, ohms, perHenry float64) float64 {
	if r.fill.fit == nil {
		return r.henries
	}
	henries := func(amps float64) float64 { return r.henries * r.fill.factor(amps) }
	amps := readings.Settle(henries, func(h float64) float64 { return volts / math.Hypot(ohms, perHenry*h) })
	return henries(amps)
}
