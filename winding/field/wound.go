package field

import "slotwright/wiretable"

// Wound is the circuit of a wound rotor: a copper coil behind two brushes.
type Wound struct {
	Ohms20     float64 // of the coil at 20 °C, above 0
	TempC      float64 // of the coil when running, above -234.5
	BrushVolts float64 // both brushes, 0 and up; about 1 (common practice, no source)
}

// Ohms is the coil's resistance when running, R20·(234.5 + t)/254.5: copper's 0.00393 a
// kelvin at 20 °C (IEC 60028, package wiretable).
func (w Wound) Ohms() float64 { return w.Ohms20 * wiretable.Copper.TempFactor(20, w.TempC) }

// Amps is the current from a supply of some volts; 0 when these are below the brush drop.
func (w Wound) Amps(supply float64) float64 {
	if !(w.Ohms() > 0 && supply > w.BrushVolts) {
		return 0
	}
	return (supply - w.BrushVolts) / w.Ohms()
}

// Watts is the power from the supply at a field current, brushes included, when nothing but the coil
// takes it (a switching regulator gives the same mean).
func (w Wound) Watts(amps float64) float64 { return amps * (amps*w.Ohms() + w.BrushVolts) }
