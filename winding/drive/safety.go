package drive

import "math"

// Brake is a machine braked by shorting its leads.
type Brake struct {
	LeadAmps float64 // rms
	CoilAmps float64 // rms in a winding
	Watts    float64 // copper loss, which is all of the braking
	TorqueNm float64
}

// ShortAll shorts all leads of a machine: a phase EMF (rms) behind ohms and reactance. I = E/√(R² +
// X²), three times I²·R in the copper. In a delta the leads carry √3 of it. For one phase there is one
// winding.
func ShortAll(phaseEMF, ohms, reactance, rpm float64, phases int, delta bool) Brake {
	z := math.Hypot(ohms, reactance)
	if !(z > 0) || !(rpm > 0) {
		return Brake{}
	}
	amps := phaseEMF / z
	b := Brake{LeadAmps: amps, CoilAmps: amps, Watts: float64(phases) * amps * amps * ohms}
	if delta && phases == 3 {
		b.LeadAmps *= math.Sqrt(3)
	}
	b.TorqueNm = b.Watts / (2 * math.Pi * rpm / 60)
	return b
}

// ShortPair shorts two leads of a three-phase machine and leaves the third open. Star: √3·E through two
// phases. Delta: E through one phase, in parallel with the other two in series, whose EMFs sum to the
// same.
func ShortPair(phaseEMF, ohms, reactance, rpm float64, delta bool) Brake {
	z := math.Hypot(ohms, reactance)
	if !(z > 0) || !(rpm > 0) {
		return Brake{}
	}
	b := Brake{}
	if delta {
		whole, half := phaseEMF/z, phaseEMF/(2*z)
		b.CoilAmps, b.LeadAmps = whole, whole+half
		b.Watts = ohms * (whole*whole + 2*half*half)
	} else {
		amps := math.Sqrt(3) * phaseEMF / (2 * z)
		b.CoilAmps, b.LeadAmps = amps, amps
		b.Watts = 2 * ohms * amps * amps
	}
	b.TorqueNm = b.Watts / (2 * math.Pi * rpm / 60)
	return b
}

// ShortTorque is the braking torque of all leads shorted against speed, N·m, from phase EMF (rms) and
// reactance per rpm. It peaks where the reactance equals the ohms and falls beyond: a rotor that is
// already fast may not be stopped by shorting the leads. Balance it against the rotor's torque to see.
func ShortTorque(emfPerRPM, ohms, reactancePerRPM float64, phases int) Torque {
	return func(rpm float64) float64 {
		if !(rpm > 0) {
			return 0
		}
		return ShortAll(emfPerRPM*rpm, ohms, reactancePerRPM*rpm, rpm, phases, false).TorqueNm
	}
}

// DumpLoad is a resistor that takes amps at a voltage: its ohms and watts. Zeros when nothing is to be
// taken.
func DumpLoad(volts, amps float64) (ohms, watts float64) {
	if !(volts > 0 && amps > 0) {
		return 0, 0
	}
	return volts / amps, volts * amps
}
