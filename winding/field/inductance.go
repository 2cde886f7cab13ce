package field

import (
	"errors"
	"fmt"
	"math"
)

// # The inductance of a phase
//
// One number per phase, the cyclic (synchronous) inductance: volts across a phase per rate of change of
// its current while the three currents sum to zero. It sets the current that a winding cannot exceed
// however fast it turns.
//
// It is read, best first, from a short circuit at speed, from a bridge on the leads, from the amps on
// the plate, or computed from the iron: what crosses the gap, what crosses the slots, what goes round
// the end turns. The first three measure a whole machine; the geometry leaves out the iron's own share
// and its saturation and is good to perhaps a third. None of them is a single number when the rotor has
// salient poles: it then swings between two values twice a pole pair, and these are their mean.

// ErrInductance is wrapped by the errors about an inductance.
var ErrInductance = errors.New("inductance")

// Mu0 is the permeability of vacuum, H/m: the defined value before the SI of 2019, which made it a
// measured one, the same to nine digits.
const Mu0 = 4e-7 * math.Pi

// BridgeOn says which of three leads an inductance bridge was on.
type BridgeOn int

const (
	// TwoLeads is two leads, the third open.
	TwoLeads BridgeOn = iota
	// OneAgainstTwo is one lead and the two others joined.
	OneAgainstTwo
	// LeadAndStar is one lead and the star point, in star only.
	LeadAndStar
)

// FromBridge is henries per phase from an inductance bridge on the leads of three phases, mH, above 0
// to 1e5. In star two leads have two phases in series, 2·L, one against two joined 3/2·L; in delta two
// leads have a phase in parallel with two in series, 2·L/3, one against two joined two phases in
// parallel, L/2. Their currents sum to zero, so L is the cyclic one. A lead and the star point have one
// phase alone, (2·L + L0)/3, L0 being the zero-sequence inductance (symmetrical components); alike is
// L0/L, 0 to 10, ignored otherwise. Turn the rotor and take the mean of the highest and lowest reading.
// A bridge works at a thousandth of the working current and can read half of what a short circuit does.
func FromBridge(leadMilliHenries float64, on BridgeOn, delta bool, alike float64) (henries float64, err error) {
	if err := within(ErrInductance, bounds{"bridge reading, mH", leadMilliHenries, 1e-6, 1e5}, bounds{"inductance of alike currents over that of a phase", alike, 0, 10}); err != nil {
		return 0, err
	}
	per := [3]float64{2, 1.5, (2 + alike) / 3}
	if delta {
		per = [3]float64{2.0 / 3, 0.5, 0}
	}
	if on < TwoLeads || on > LeadAndStar || per[on] == 0 {
		return 0, fmt.Errorf("%w: a bridge on a lead and the star point of a delta, expected two leads; a delta has no star point", ErrInductance)
	}
	return leadMilliHenries * 1e-3 / per[on], nil
}

// FromShort is henries per phase from a short-circuit reading: all leads shorted, at hertz electrical,
//
//	L = √((E/I)² − R²)/(2π·f)
//
// phaseVolts is the rms volts of a phase at that speed and field with the leads open, phaseAmps the rms
// amps in a phase when shorted (in delta the amps of a lead over √3), ohms per phase at its temperature
// then. An error when the ohms alone account for the reading: it was taken too slowly. Source: X =
// E/I_sc, any machines text.
func FromShort(phaseVolts, phaseAmps, ohms, hertz float64) (henries float64, err error) {
	if err := within(ErrInductance, bounds{"open-circuit volts of a phase", phaseVolts, 1e-6, 1e6},
		bounds{"short-circuit amps of a phase", phaseAmps, 1e-6, 1e6},
		bounds{"ohms of a phase", ohms, 0, 1e6}, bounds{"frequency, Hz", hertz, 1e-3, 1e5}); err != nil {
		return 0, err
	}
	z := phaseVolts / phaseAmps
	if z <= ohms*(1+1e-9) {
		return 0, fmt.Errorf("%w: %.4g V at %.4g A is %.4g Ω, expected more than the %.4g Ω of the copper; read it again at a higher speed",
			ErrInductance, phaseVolts, phaseAmps, z, ohms)
	}
	// (z−R)(z+R) keeps its digits where z² − R² loses them.
	return math.Sqrt((z-ohms)*(z+ohms)) / (2 * math.Pi * hertz), nil
}

// Plate is what a machine's plate says of a bridge output that no longer rises.
type Plate struct {
	DCAmps  float64 // out of the bridge at that speed, above 0 to 1e5
	EMFPeak float64 // of a phase at that speed, open circuit, peak volts; above 0 to 1e6
	Hertz   float64 // electrical, above 0 to 1e5
	// DCVolts is at the bridge with both diode drops, V' = V + 2·Vd, 0 to 1e6; 0 takes
	// the bridge as a short circuit.
	DCVolts float64
	Ohms    float64 // of a phase, warm, 0 to 1e6; 0 leaves them out
	Delta   bool
}

// Henries is the inductance of a phase from the plate's amps.
//
// Far above cut-in every phase conducts all the time and its current is close to a sine of peak Î. The
// positive halves of three such sines sum to half the sum of their moduli, mean (3/2)·(2/π)·Î, so I_dc
// = (3/π)·Î. The bridge puts a fundamental of (2/π)·V' peak on each phase in phase with the current,
// and the ohms add R·Î in phase with it, so
//
//	Ê² = (2V'/π + R·Î)² + (ωL·Î)²   →   L = √(Ê² − (2V'/π + R·Î)²)/(ω·Î)
//
// Ê is the PEAK of a phase: with E rms it is √2·E. Delta is the star of Ê/√3, R/3 and L/3. Source:
// Power Electronics Handbook, 3rd ed., p. 655 (as quoted on a public page) without ohms and diodes;
// those after Caliskan, Perreault, Jahns and Kassakian, IEEE TCAS-I 50 (2003), from memory.
//
// Against the exact bridge (testdata/charge/rectifier_cases.csv) it reads 0 to 6 % high where √3·Ê is
// twice V' and more and ωL above 1.5·R, some 10 % at 1.7 times, and 20 % where R is as large as ωL.
// Give the ohms and the volts: without the ohms the same cases read 1 to 39 % high, without both 3 to
// 52 %.
func (p Plate) Henries() (float64, error) {
	if err := within(ErrInductance, bounds{"amps DC on the plate", p.DCAmps, 1e-6, 1e5}, bounds{"peak volts of a phase", p.EMFPeak, 1e-6, 1e6},
		bounds{"frequency, Hz", p.Hertz, 1e-3, 1e5}, bounds{"volts DC with diodes", p.DCVolts, 0, 1e6}, bounds{"ohms of a phase", p.Ohms, 0, 1e6}); err != nil {
		return 0, err
	}
	peak, ohms, scale := p.EMFPeak, p.Ohms, 1.0
	if p.Delta {
		peak, ohms, scale = peak/math.Sqrt(3), ohms/3, 3
	}
	amps := math.Pi / 3 * p.DCAmps
	against := 2/math.Pi*p.DCVolts + ohms*amps
	if peak <= against {
		return 0, fmt.Errorf("%w: plate: a phase of %.4g V peak as star, expected above the %.4g V that bridge and ohms hold against it; check amps and speed, or take a higher one",
			ErrInductance, peak, against)
	}
	return scale * math.Sqrt((peak-against)*(peak+against)) / (2 * math.Pi * p.Hertz * amps), nil
}

// FromNameplate is Plate.Henries in star with the bridge taken as a short circuit: L =
// (3/π)·Ê/(2π·f·I_dc), emfPeak being the peak of a phase. It is an upper bound, often a third too high;
// Plate with its volts and ohms is better.
func FromNameplate(dcAmps, emfPeak, hertz float64) (henries float64, err error) {
	return Plate{DCAmps: dcAmps, EMFPeak: emfPeak, Hertz: hertz}.Henries()
}
