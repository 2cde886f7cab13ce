package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// reading is one whole spin-up reading: volts per rpm and effective turn, and the
// field current it was taken at.
type spinPoint struct {
	perTurn float64
	weight  float64 // rpm²: a slow reading says less
	amps    float64
	known   bool // the field current is
	origin  quantity.Origin
}

// spinPoints is the readings that are whole.
func (b *Bench) spinPoints() []spinPoint {
	var points []spinPoint
	share := b.phaseOfLine(b.job.Old.Connection)
	for _, s := range b.job.Spins {
		if !s.RPM.Given() || !s.LineVolts.Given() {
			continue
		}
		points = append(points, spinPoint{
			perTurn: s.LineVolts.Value * share / s.RPM.Value / b.old.effective, weight: sq(s.RPM.Value),
			amps: s.FieldAmps.Value, known: s.FieldAmps.Given(), origin: guessedIf(s.RPM, s.LineVolts),
		})
	}
	return points
}

// fluxFromSpins is the flux from spin-up readings of the old winding. At one field
// current, or with magnets, their mean; at several, the magnetisation curve through
// them, taken at the current that the rotor will have.
func (b *Bench) fluxFromSpins() (fluxSource, bool) {
	if b.old.effective <= 0 {
		return fluxSource{}, false
	}
	points := b.spinPoints()
	if len(points) == 0 {
		return fluxSource{}, false
	}
	if f, ok := b.fluxFromCurve(points); ok {
		return f, true
	}
	return b.fluxFromMean(points), true
}

// fluxFromMean weighs the readings by their speeds squared: least squares of V = k·n.
func (b *Bench) fluxFromMean(points []spinPoint) fluxSource {
	sum, weight, low, high := 0.0, 0.0, math.Inf(1), 0.0
	origin := b.job.Old.Turns.Origin
	for _, p := range points {
		sum, weight = sum+p.perTurn*p.weight, weight+p.weight
		low, high = min(low, p.perTurn), max(high, p.perTurn)
		if p.origin == quantity.Guessed {
			origin = quantity.Guessed
		}
	}
	f := fluxSource{
		perTurn: quantity.Of(sum/weight, origin), relative: b.old.relative,
		from: "spin-up readings of the old winding", spread: (high - low) / (sum / weight),
		fieldAmps: quantity.Missing("no field current given"),
	}
	if points[0].known {
		f.fieldAmps = quantity.Of(points[0].amps)
	}
	return f
}
