package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A trial coil
//
// A few turns of any wire, laid into two slots of the stripped iron with the rotor turning past, give
//
//	V = √2·π·f·N·kp·Φ,  kp = sin(π/2 · span·poles/slots)
//
// so volts over speed, turns and the coil's own pitch factor are the flux in the form used everywhere
// here. Pitch factor: Pyrhönen, Jokinen and Hrabovcová, Design of Rotating Electrical Machines (from
// memory); the handbook tables of testdata/layout have it. It needs nothing of the old winding.

// coilPoints is the trial coils that are complete and possible.
func (r *fluxRoutes) coilPoints() []spinPoint {
	var points []spinPoint
	for i := range r.coils {
		c := &r.coils[i]
		kp, why := r.pitchFactor(c.Span)
		if why != "" || !c.Turns.Given() || !c.RPM.Given() || !c.Volts.Given() || r.rotor.Kind == job.FieldMagnets && c.FieldAmps.Given() {
			continue
		}
		if most := r.machine.mostPerTurn(); most.Known() && c.Volts.Value > most.Value*c.Turns.Value*c.RPM.Value {
			continue // reported as impossible (beyondIron): nothing may follow from it
		}
		points = append(points, spinPoint{
			perTurn: c.Volts.Value / c.RPM.Value / (c.Turns.Value * kp), weight: sq(c.RPM.Value * c.Turns.Value * kp),
			amps: c.FieldAmps.Value, known: c.FieldAmps.Given(), origin: guessedIf(c.RPM, c.Volts, c.Turns),
			said: c.Volts.PlusMinus > 0 || c.RPM.PlusMinus > 0,
		})
	}
	return points
}

// leastPitch is the pitch factor below which a trial coil says little: its volts are then mostly
// harmonics.
const leastPitch = 0.2

// pitchFactor is kp of a coil of a span, the machine's own where none is given.
func (r *fluxRoutes) pitchFactor(span quantity.Reading) (kp float64, why string) {
	m := r.machine
	if !m.Slots.Given() || !m.Poles.Given() {
		return 0, "needs the number of slots and poles"
	}
	slots := span.Or(m.Span.Or(float64(fullPitch(m.Machine))))
	kp = math.Abs(math.Sin(math.Pi / 2 * slots * m.Poles.Value / m.Slots.Value))
	if kp < leastPitch {
		return 0, fmt.Sprintf("a span of %.0f slots finds only %.2f of its turns' volts: lay the coil about %d slots wide", slots, kp, fullPitch(m.Machine))
	}
	return kp, ""
}

// trialCoil is the flux from trial coils, at one field current or along their curve.
func (r *fluxRoutes) trialCoil() (flux, bool) {
	return r.through(r.coilPoints(), "trial coils", quantity.Measured, false)
}
