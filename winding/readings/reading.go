package readings

import (
	"cmp"
	"fmt"
	"math"
)

// Kind says what was read.
type Kind string

// The kinds of reading.
const (
	// SpinUp is volts with the leads open: Volts rms between leads.
	SpinUp Kind = "spin-up volts"
	// SpinUpDC is volts behind the bridge with nothing on it but a meter (and a capacitor, if any):
	// Volts is the peak between leads less two diodes that carry almost nothing.
	SpinUpDC Kind = "spin-up volts behind the bridge"
	// TrialCoil is SpinUp, computed from what a trial coil in the same iron gave.
	TrialCoil Kind = "a trial coil"
	// Short is Amps rms in a lead with all leads shorted.
	Short Kind = "short circuit"
	// Loaded is Amps DC into a battery, Volts at the bridge's output while they flow.
	Loaded Kind = "amps into a battery"
	// Plate is Loaded as given on the machine's plate.
	Plate Kind = "the plate"
	// Began is the speed at which charging was seen to begin into a battery of Volts. Amps is the
	// current seen there; 0 takes 1 % of the plate's, or of the highest read.
	Began Kind = "began to charge"
	// Bridge is Henries of one phase, from an inductance bridge at a standstill.
	Bridge Kind = "inductance bridge"
)

// Reading is one thing read of the old winding.
type Reading struct {
	Kind Kind
	RPM  float64 // above 0 to 1e6; ignored for Bridge
	// Volts and Amps are as the kind has them, above 0 to 1e6.
	Volts, Amps float64
	Henries     float64 // for Bridge, above 0 to 1e3
	// FieldAmps is the field current of a wound rotor; 0 with magnets or where it was not read.
	FieldAmps float64
	// Ohms is that of a phase when this was read, 0 that of the machine: a winding under load is warm,
	// and copper has 0.39 % more a kelvin.
	Ohms float64
	// Part is the inductance of a phase in this reading over that with every set carrying current,
	// above 0 to 2, for Short and Bridge: less than 1 with one set of two shorted and the other idle. 0
	// takes 1.
	Part float64
	// PlusMinus is the relative 95 % uncertainty of the reading's volts, amps or henries; for Began of
	// its speed. 0 takes the usual value for such meters; see Usual.
	PlusMinus float64
}

// Usual is the relative uncertainty of a reading of a kind where none is given (common practice, no
// source).
func Usual(k Kind) float64 {
	switch k {
	case Short:
		return 0.02
	case Plate:
		return 0.06
	case Began:
		return 0.04
	case Bridge:
		return 0.5
	default:
		return 0.015
	}
}

const (
	// tachometer and battery are the relative errors of speed and volts of a loaded reading.
	tachometer, battery = 0.005, 0.008
	// diodeVolts is the error of a diode's drop, V.
	diodeVolts = 0.1
	// firstSight is the share of the plate's amps at which a person sees charging begin.
	firstSight = 0.01
)

// loaded reports whether the reading is of amps through the bridge.
func (r Reading) loaded() bool { return r.Kind == Loaded || r.Kind == Plate || r.Kind == Began }

// spin reports whether the reading is of the EMF itself.
func (r Reading) spin() bool { return r.Kind == SpinUp || r.Kind == SpinUpDC || r.Kind == TrialCoil }

// off is the reading's ±, as given or as usual.
func (r Reading) off() float64 {
	if r.PlusMinus > 0 {
		return r.PlusMinus
	}
	return Usual(r.Kind)
}

// part is Part, 1 where it is not given.
func (r Reading) part() float64 { return cmp.Or(r.Part, 1) }

// emf is the volts rms of a phase by a spin-up reading.
func (r Reading) emf(m Machine) float64 {
	if r.Kind == SpinUpDC {
		return m.cutIn(r.Volts)
	}
	return r.Volts / m.linePerPhase()
}

// check says what is missing from a reading, or nil; n is its index in the list, from 0.
func (r Reading) check(n int) error {
	needs := map[Kind][3]bool{ // rpm, volts, amps
		SpinUp: {true, true, false}, TrialCoil: {true, true, false}, SpinUpDC: {true, true, false}, Short: {true, false, true},
		Loaded: {true, true, true}, Plate: {true, true, true}, Began: {true, true, false}, Bridge: {},
	}
	need, ok := needs[r.Kind]
	if !ok {
		return fmt.Errorf("%w: reading %d is of kind %q, which is not known", ErrReadings, n+1, r.Kind)
	}
	for i, v := range []float64{r.RPM, r.Volts, r.Amps} {
		name := []string{"rpm", "volts", "amps"}[i]
		if need[i] && !within(v, math.SmallestNonzeroFloat64, 1e6) || !within(v, 0, 1e6) {
			return fmt.Errorf("%w: reading %d (%s) has %g %s; give them, above 0 to a million", ErrReadings, n+1, r.Kind, v, name)
		}
	}
	if r.Kind == Bridge && !within(r.Henries, math.SmallestNonzeroFloat64, 1e3) {
		return fmt.Errorf("%w: reading %d (%s) has %g henries; give them, above 0", ErrReadings, n+1, r.Kind, r.Henries)
	}
	if !within(r.PlusMinus, 0, 10) || !within(r.Ohms, 0, 1e6) || !within(r.FieldAmps, 0, 1e6) || !within(r.Part, 0, 2) {
		return fmt.Errorf("%w: reading %d (%s) has ±%g, %g ohms, %g A of field and a part of %g; none of them is below 0, the part not above 2", ErrReadings, n+1, r.Kind, r.PlusMinus, r.Ohms, r.FieldAmps, r.Part)
	}
	return nil
}
