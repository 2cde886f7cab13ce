package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// spinPoint is one complete spin-up reading: volts per rpm and effective turn, and the field current it
// was taken at.
type spinPoint struct {
	perTurn float64
	weight  float64 // rpm²: a slow reading says less
	amps    float64
	known   bool // the field current is known
	origin  quantity.Origin
	// said says that a ± was typed with volts or speed.
	said bool
}

// spinPoints is the complete readings.
func (r *fluxRoutes) spinPoints() []spinPoint {
	var points []spinPoint
	share := r.machine.phaseOfLine(r.old.Connection)
	for _, s := range r.spins {
		if !s.RPM.Given() || !s.LineVolts.Given() || r.rotor.Kind == job.FieldMagnets && s.FieldAmps.Given() {
			continue // a field current means the wound rotor that it had before
		}
		points = append(points, spinPoint{
			perTurn: s.LineVolts.Value * share / s.RPM.Value / r.old.coils.effective, weight: sq(s.RPM.Value),
			amps: s.FieldAmps.Value, known: s.FieldAmps.Given(), origin: guessedIf(s.RPM, s.LineVolts),
			said: s.LineVolts.PlusMinus > 0 || s.RPM.PlusMinus > 0,
		})
	}
	return points
}

// spinUp is the flux from spin-up readings of the old winding.
func (r *fluxRoutes) spinUp() (flux, bool) {
	if r.old.coils.effective <= 0 {
		return flux{}, false
	}
	return r.through(r.spinPoints(), "spin-up readings of the old winding", r.old.Turns.Origin, r.old.coils.relative)
}

// through is the flux through points of one kind: at one field current, or with magnets, their mean; at
// several, the magnetisation curve through them, taken at the current that the rotor will have.
func (r *fluxRoutes) through(points []spinPoint, kind string, turns quantity.Origin, relative bool) (flux, bool) {
	if len(points) == 0 {
		return flux{}, false
	}
	for _, p := range points {
		if p.origin.Weak() {
			turns = quantity.Guessed
		}
	}
	f, ok := r.curve(points, kind, turns)
	if !ok {
		f = r.carried(mean(points, kind, turns))
	}
	f.relative = relative
	f.perTurn.PlusMinus = math.Hypot(f.perTurn.PlusMinus, f.perTurn.Value*usualOff(points))
	return f, true
}

// Relative errors of readings without a typed ±: one meter and one tachometer read all of a kind, so
// more readings do not reduce them. Common practice, no source: a hand multimeter on AC has 1 to 2 %,
// more where the wave is no sine.
const (
	usualVoltsOff = 0.02
	usualSpeedOff = 0.01
	usualBeganOff = 0.05 // of the speed at which something begins to charge
)

// usualOff is the relative uncertainty of volts per rpm by the instruments; 0 where one was typed.
func usualOff(points []spinPoint) float64 {
	for _, p := range points {
		if p.said {
			return 0
		}
	}
	return math.Hypot(usualVoltsOff, usualSpeedOff)
}

// spinsApart is how far spin-up readings at one field current may differ, relative (common practice, no
// source).
const spinsApart = 0.10

// mean weights the readings by their speeds squared: least squares of V = k·n.
func mean(points []spinPoint, kind string, origin quantity.Origin) flux {
	sum, weight, low, high := 0.0, 0.0, math.Inf(1), 0.0
	for _, p := range points {
		sum, weight = sum+p.perTurn*p.weight, weight+p.weight
		low, high = min(low, p.perTurn), max(high, p.perTurn)
	}
	f := flux{
		perTurn: quantity.Of(sum/weight, origin), from: kind, spread: (high - low) / (sum / weight),
		fieldAmps: quantity.Missing("no field current given"),
	}
	if f.spread > spinsApart { // they contradict each other: what follows is marked too
		f.perTurn.Origin = quantity.Guessed
	}
	if points[0].known {
		f.fieldAmps = quantity.Of(points[0].amps)
	}
	return f
}
