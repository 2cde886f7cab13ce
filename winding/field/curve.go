package field

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// # The magnetisation curve
//
// Froelich's formula, Φ = Φ∞·I/(I0 + I) + Φr, is the simplest curve that is proportional at first and
// flattens as the iron saturates: Φ∞ is its asymptote, I0 the current for half of that, Φr the residual
// flux at no current. It was proposed for dynamos in the 1880s and is still the first one in textbooks
// (from memory). Above the highest reading it is a guess, and says so.
//
// The fit is described in fit.go. Iron saturates more suddenly than the formula does, so with three or
// more readings some lie off it, by a tenth and more near the knee: there the curve is bent to pass
// through them all (bend.go), and at a current that was read the flux is the reading. Readings that do
// not flatten give the straight line, and so do two of which one is at no current: they cannot show
// where the iron saturates. One reading gives an error that says what to read next.

// Reading is a flux, or anything proportional to it, at a field current.
type Reading struct {
	Amps   float64 // 0 and up
	Flux   float64 // above 0
	Weight float64 // above 0; 0 is taken as 1
}

// Curve is a magnetisation curve: Froelich's, or one bent to the readings.
type Curve struct {
	Infinity float64 // Φ∞; with Straight the slope per ampere
	Half     float64 // I0, amps
	Residual float64 // Φr, 0 and up
	Straight bool    // the readings do not flatten: Φ = slope·I + Φr
	// Low and High are the lowest and highest current read.
	Low, High float64
	// Error is the largest relative amount by which readings contradict each other, or saturation,
	// which only flattens.
	Error float64
	// pieces is the curve from reading to reading, from 0 A on; empty if the formula alone applies.
	pieces []piece
}

// tooFew says what more to read.
func tooFew(c Curve) error {
	switch {
	case math.IsInf(c.Low, 1):
		return fmt.Errorf("%w: read none, expected two field currents or more", ErrReadings)
	case c.High == 0:
		return fmt.Errorf("%w: read only the residual flux at 0 A, expected two field currents or more; take readings at full field current and at half of it", ErrReadings)
	}
	return fmt.Errorf("%w: read one field current, %.3g A, expected two or more; take another reading at %.2g A at the same speed", ErrReadings, c.High, c.High/2)
}

// ErrReadings is wrapped by the errors about readings.
var ErrReadings = errors.New("field readings")

// Fit finds the curve through readings at two field currents or more. The error says
// what is missing or out of range.
func Fit(readings []Reading) (Curve, error) {
	distinct := map[float64]bool{}
	c := Curve{Low: math.Inf(1)}
	for _, r := range readings {
		if !(r.Amps >= 0 && r.Amps <= 1e6) || !(r.Flux > 0 && r.Flux <= 1e12) || !(r.Weight >= 0 && r.Weight <= 1e12) {
			return Curve{}, fmt.Errorf("%w: read %g A and a flux of %g, expected amps of 0 and up and a flux above 0", ErrReadings, r.Amps, r.Flux)
		}
		distinct[r.Amps] = true
		c.Low, c.High = min(c.Low, r.Amps), max(c.High, r.Amps)
	}
	if len(distinct) < 2 {
		return Curve{}, tooFew(c)
	}
	c.fit(readings)
	c.bend(readings)
	return c, nil
}

// At is the flux at a field current, 0 and up.
func (c Curve) At(amps float64) float64 {
	amps = max(0, amps)
	if len(c.pieces) > 0 {
		return c.pieceOf(amps).at(amps)
	}
	if c.Straight {
		return c.Infinity*amps + c.Residual
	}
	return c.Infinity*amps/(c.Half+amps) + c.Residual
}

// Amps is the current for a flux; ok is false for one that the curve never reaches.
func (c Curve) Amps(flux float64) (amps float64, ok bool) {
	if len(c.pieces) > 0 && flux > c.At(0) {
		return c.pieceTo(flux).law.Amps(flux)
	}
	over := flux - c.Residual
	switch {
	case over <= 0, len(c.pieces) > 0:
		return 0, true
	case c.Straight:
		if c.Infinity <= 0 {
			return math.Inf(1), false
		}
		return over / c.Infinity, true
	case over >= c.Infinity:
		return math.Inf(1), false
	}
	return c.Half * over / (c.Infinity - over), true
}

// Flux is At, and whether the current is above the highest one read, so that the flux is a guess.
func (c Curve) Flux(amps float64) (flux float64, extrapolated bool) {
	return c.At(amps), c.Outside(amps)
}

// Outside reports whether a current is above the readings, so that the curve is a guess.
func (c Curve) Outside(amps float64) bool { return amps > c.High*1.001 }

// OutsideDoubt is the uncertainty of the flux at a current above the readings, 0 at or below the
// highest. Iron only flattens: above the highest reading the flux lies between its value there and the
// tangent there. The ± reaches to the farther of the two.
func (c Curve) OutsideDoubt(amps float64) float64 {
	if !c.Outside(amps) {
		return 0
	}
	formula := c
	formula.pieces = nil
	// between readings close together the slope is mostly error; the formula's slope uses all of them
	top, slope := c.At(c.High), max(c.slope(c.High), formula.slope(c.High))
	there := c.At(amps)
	return max(there-top, top+slope*(amps-c.High)-there)
}

// Currents lists the distinct currents of readings, going up.
func Currents(readings []Reading) []float64 {
	var list []float64
	for _, r := range readings {
		if !slices.Contains(list, r.Amps) {
			list = append(list, r.Amps)
		}
	}
	slices.Sort(list)
	return list
}
