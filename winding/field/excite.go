package field

import "math"

// # Self-excitation
//
// A rotor fed from the machine's own rectified output needs, at field current I, the voltage R·I + Vb
// at the coil plus the diode drops Vd, two behind a bridge; open circuit, the machine gives k·Φ(I) per
// rpm. The coil's own inductance keeps its current steady through the ripple, so k is for the mean
// behind the diodes, not for its peak (BridgeMean; a doubler's capacitors hold the peak). The speed at
// which both are equal is
//
//	n(I) = (R·I + V0)/(k·Φ(I)),  V0 = Vb + Vd
//
// Its minimum over I is the speed below which no field sustains itself: there the line of the field
// circuit is tangent to the magnetisation curve. With Froelich's curve written as Φ = (A·I + B)/(I0 +
// I), A = Φ∞ + Φr, B = Φr·I0, setting the slope of n to zero gives
//
//	A·R·I² + 2·R·B·I + (R·I0 + V0)·B − A·V0·I0 = 0
//
// which has one positive root or none; with none n rises from the start and its minimum is at I = 0.
// Below that root n only falls, so building up from the iron's residual flux alone takes n(0) =
// V0/(k·Φr) and, once begun, goes all the way. Without residual flux it never begins, and a battery
// must lend the first ampere. A curve that is bent to its readings is Froelich's on each piece, with an
// A and B of its own and a root of its own; building up takes the highest n on the way.
//
// The winding's own drop at field current is left out, so the real speeds are a little higher; a diode
// that already conducts a little below its drop makes the build-up speed lower than this. Treat both as
// a guide. Without residual flux, brushes and diodes, hold is the textbook's critical speed,
// R·I0/(k·Φ∞); with a residual and no drop to overcome, both are 0, since there is some field at any
// speed.

// SelfExcitation is the two speeds, rpm: hold, below which an excited machine loses its field, and
// build, from which it excites itself; +Inf where it cannot. voltsPerFlux is mean volts DC per rpm and
// unit of flux, above 0; most is the highest field current to consider, A, above 0; diodeVolts is the
// sum of the diodes' drops, V.
func SelfExcitation(c Curve, w Wound, diodeVolts, voltsPerFlux, most float64) (hold, build float64) {
	never := math.Inf(1)
	drop := w.BrushVolts + diodeVolts
	if !(most > 0 && voltsPerFlux > 0 && w.Ohms() > 0 && drop >= 0) || !(c.Infinity > 0 && c.Residual >= 0) {
		return never, never
	}
	speed := func(amps float64) float64 {
		return (w.Ohms()*amps + drop) / (voltsPerFlux * c.At(amps))
	}
	touch := c.touch(speed, w.Ohms(), drop, most)
	if touch <= 0 && c.At(0) == 0 { // no drop to overcome: the limit of n as I goes to 0
		return w.Ohms() / (voltsPerFlux * c.slope(0)), never
	}
	if c.At(0) == 0 {
		return speed(touch), never
	}
	return speed(touch), c.worstUpTo(touch, speed)
}

// touch is the field current up to most at which the speed is lowest: where the field circuit's line is
// tangent to the curve; for a bent curve the lowest over its pieces.
func (c Curve) touch(speed func(amps float64) float64, ohms, drop, most float64) float64 {
	if len(c.pieces) == 0 {
		return min(most, c.touching(ohms, drop))
	}
	best, least := 0.0, math.Inf(1)
	from := 0.0
	for _, p := range c.pieces {
		at := min(most, max(from, min(p.to, p.law.touching(ohms, drop))))
		if n := speed(at); n < least {
			best, least = at, n
		}
		from = p.to
	}
	return best
}

// worstUpTo is the highest speed between no current and amps: within a piece the speed has a minimum
// and no maximum, so it is at an end of one.
func (c Curve) worstUpTo(amps float64, speed func(amps float64) float64) float64 {
	worst := speed(0)
	for _, p := range c.pieces {
		if p.to < amps {
			worst = max(worst, speed(p.to))
		}
	}
	return worst
}

// BridgeMean is the open-circuit mean of a bridge's output over its peak: 3/π for three phases, 2/π for
// one (the mean of a sine's tip sixty degrees wide, and of its half wave; any power electronics text).
// Its diodes are not included.
func BridgeMean(phases int) float64 {
	if phases == 1 {
		return 2 / math.Pi
	}
	return 3 / math.Pi
}

// slope is the slope of the curve at a current, flux per ampere; where two pieces meet, the lower one's.
func (c Curve) slope(amps float64) float64 {
	switch {
	case len(c.pieces) > 0:
		return c.pieceOf(amps).law.slope(amps)
	case c.Straight:
		return c.Infinity
	}
	return c.Infinity * c.Half / ((c.Half + amps) * (c.Half + amps))
}

// touching is the field current at which a field circuit's line is tangent to the curve; 0 when it
// never is above 0, +Inf on a straight line, which only gets better.
func (c Curve) touching(ohms, drop float64) float64 {
	if c.Straight {
		if ohms*c.Residual < drop*c.Infinity {
			return math.Inf(1)
		}
		return 0
	}
	a, b := c.Infinity+c.Residual, c.Residual*c.Half
	// A·R·I² + 2·h·I + k = 0 with h = R·B, positive root only when k < 0.
	h, k := ohms*b, (ohms*c.Half+drop)*b-a*drop*c.Half
	if k >= 0 {
		return 0
	}
	// −k/(h + √…) keeps its digits where −h + √… would not.
	return -k / (h + math.Sqrt(h*h-a*ohms*k))
}

// Hold is the field that holds a wanted flux.
type Hold struct {
	Amps float64
	// Watts is what the supply gives for it, brushes included.
	Watts float64
	// Enough is false when the curve or the supply cannot reach the flux; Amps is then all that the
	// supply drives.
	Enough bool
	// Extrapolated is true above the highest current read: the curve is a guess there.
	Extrapolated bool
}

// AmpsToHold is the field current for a flux, in the unit of the curve, from a supply of some volts. A
// machine whose output must hold a voltage V at n rpm needs, with no load, the flux V/(k·n). A flux of
// 0 or less needs none.
func (c Curve) AmpsToHold(w Wound, supplyVolts, flux float64) Hold {
	most := w.Amps(supplyVolts)
	amps, ok := c.Amps(flux)
	if math.IsNaN(flux) || !ok || amps > most {
		return Hold{Amps: most, Watts: w.Watts(most), Extrapolated: c.Outside(most)}
	}
	return Hold{Amps: amps, Watts: w.Watts(amps), Enough: true, Extrapolated: c.Outside(amps)}
}

// NetWatts is an output, W, net of the field's share at a field current; negative where it runs at a
// loss.
func (w Wound) NetWatts(outputWatts, fieldAmps float64) float64 {
	return outputWatts - w.Watts(fieldAmps)
}
