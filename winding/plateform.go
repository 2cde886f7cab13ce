package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/heat"
	"slotwright/winding/layout"
)

// # The form of the plate's current
//
// The plate gives amps DC; the copper is heated by the rms of a phase's current. Far above cut-in the
// reactance rounds the current off: star and sine make π/(3√2) = 0.741 A rms per ampere DC, where
// blocks make √(2/3) = 0.816 (any power electronics text), a fifth more heat. As the rise per watt is
// the class's rise over that heat, blocks would make the machine look better cooled than it is. So the
// old winding is run at the plate's speed against the plate's volts, as warm as its class allows, with
// the flux that brings the plate's amps (a plate is for full field, the job may have less), and that
// solution gives the form factor. A temperature limit uses the form factor in the same way, from the
// trial's own curve (formfactor.go); so a winding put back as it was withstands its own plate.
//
// Where the old winding cannot be run, or reaches the plate's amps with no flux near the known one, the
// convention is used, three phases in blocks, and the rise per watt says so.

// How close the plate's amps must come, in how many tries, and how far the flux may be off: the form
// factor hardly depends on the amps there, and flux further off indicates a misread plate.
const (
	plateAmpsWithin = 0.005
	plateTries      = 24
	mostPlateFlux   = 3.0
)

// plateForm is the rms amps of a phase per ampere DC at the plate.
type plateForm struct {
	perDC float64 // 0 where no plate gives the rise per watt, or it is taken by convention
	conn  layout.Connection
	why   string // why it is taken by convention
}

// at is rms amps of a phase per ampere DC of a winding: the plate's form factor where that is known and
// the winding has the same connection, else the conventional one.
func (f plateForm) at(m *machine, conn layout.Connection) float64 {
	if f.perDC > 0 && f.conn == conn {
		return f.perDC
	}
	return m.phasePerDC(conn) / float64(m.sets)
}

// plateForm runs the old winding at its plate.
func (b *bed) plateForm(old *oldWinding, oldOhms *Ohms, class heat.Class) plateForm {
	rpm := old.RatedRPM.Figure("no plate")
	if !old.RatedAmps.Given() || !oldOhms.PhaseOhms20.Known() || b.machine.KelvinPerWatt.Given() || !b.machine.asOnPlate(rpm, b.speeds.top) {
		return plateForm{} // the rise per watt uses no plate
	}
	o := TrialOutcome{Inductance: b.henries.of(&old.candidate)}
	o.PhasePerRPM, o.PhaseOhms20 = b.flux.phasePerRPM(&old.coils), oldOhms.PhaseOhms20
	r, why := b.chargerOf(&old.candidate, &o)
	if r == nil {
		return plateForm{why: why}
	}
	if volts := old.RatedVolts.Or(b.dc.absorption.Value); volts > 0 { // at its posts: no cable
		r.load.Volts, r.load.Ohms = volts, 0
	}
	p := r.bringing(old.RatedAmps.Value/r.sets, rpm.Value, coolantC+class.RiseK())
	if p.DCAmps <= 0 {
		return plateForm{why: "no flux near the known one brings its amps"}
	}
	return plateForm{perDC: p.PhaseAmpsRMS / (p.DCAmps * r.sets), conn: old.Connection}
}

// bringing is one set at a speed with the flux that brings a given DC current; no current flows in the
// result where no flux near the known one does. The current is set by the EMF over that at cut-in.
func (r *charger) bringing(amps, rpm, celsius float64) charge.Point {
	flux := 1.0
	for range plateTries {
		p := r.excited(flux, r.field).solve(rpm, celsius)
		if math.Abs(p.DCAmps-amps) <= plateAmpsWithin*amps {
			return p
		}
		over := p.Kappa - 1
		switch {
		case !(p.Kappa > 0):
			return charge.Point{}
		case over <= 0 || p.DCAmps <= 0:
			flux *= 1.5 / p.Kappa
		default:
			flux *= (1 + over*amps/p.DCAmps) / p.Kappa
		}
		if flux > mostPlateFlux || flux < 1/mostPlateFlux {
			return charge.Point{}
		}
	}
	return charge.Point{}
}
