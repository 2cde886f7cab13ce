package field

import "math"

// Wound is the circuit of a wound rotor.
type Wound struct {
	Ohms20     float64 // of the coil at 20 °C
	TempC      float64 // of the coil when running
	BrushVolts float64 // both brushes
}

// Ohms is the coil's resistance when running (copper, 234.5).
func (w Wound) Ohms() float64 { return w.Ohms20 * (234.5 + w.TempC) / 254.5 }

// Amps is what a supply drives; 0 when it does not pass the brushes.
func (w Wound) Amps(supply float64) float64 {
	if !(w.Ohms20 > 0) {
		return 0
	}
	return max(0, supply-w.BrushVolts) / w.Ohms()
}

// Watts is what the supply gives at a field current, brushes included, when nothing but
// the coil takes it (a regulator that switches gives the same mean).
func (w Wound) Watts(amps float64) float64 { return amps * (amps*w.Ohms() + w.BrushVolts) }

// # Feeding itself
//
// A rotor fed from the machine's own rectified output needs, at field current I, the
// voltage R·I + Vb at the coil and two diode drops more; open circuit, the machine gives
// k·Φ(I) for each rpm. The speed at which both are equal is
//
//	n(I) = (R·I + Vb + 2·Vd)/(k·Φ(I))
//
// The lowest of it over I is the speed below which no field holds itself. Building up
// from nothing but the iron's residual flux asks for more: n must be above n(I) at every
// current on the way. Without residual flux it never begins, and a battery must lend the
// first ampere.

// SelfExcitation is the two speeds, rpm: Hold, below which an excited machine falls back,
// and Build, from which it excites itself; Build is +Inf when it cannot.
// voltsPerFlux is volts DC peak for each rpm and unit of flux; most is the highest field
// current to look at.
func SelfExcitation(c Curve, w Wound, diodeVolts, voltsPerFlux, most float64) (hold, build float64) {
	speed := func(amps float64) float64 {
		return (w.Ohms()*amps + w.BrushVolts + 2*diodeVolts) / (voltsPerFlux * c.At(amps))
	}
	hold, build = math.Inf(1), math.Inf(1)
	if !(most > 0 && voltsPerFlux > 0) {
		return hold, build
	}
	const steps = 2000
	at := 0.0
	for n := 1; n <= steps; n++ {
		amps := most * float64(n) / steps
		if v := speed(amps); v < hold {
			hold, at = v, amps
		}
	}
	at = golden(speed, max(most/steps/1e3, at-most/steps), min(most, at+most/steps))
	hold = min(hold, speed(at))
	if c.Residual > 0 {
		build = speed(0)
		for n := 1; n <= steps; n++ {
			if amps := at * float64(n) / steps; amps > 0 {
				build = max(build, speed(amps))
			}
		}
	}
	return hold, build
}
