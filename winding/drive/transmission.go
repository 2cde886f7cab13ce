package drive

import (
	"errors"
	"fmt"
	"math"
)

// Kind is what connects drive and alternator.
type Kind int

// The kinds.
const (
	Direct Kind = iota
	Belt
	Chain
	Gear
)

// String is the word for it.
func (k Kind) String() string {
	switch k {
	case Belt:
		return "belt"
	case Chain:
		return "chain"
	case Gear:
		return "gear"
	}
	return "direct"
}

// Transmission turns the drive's speed into the alternator's. DriverMM and DrivenMM are for a belt, the
// teeth for chain and gear; Ratio, alternator turns per turn of the drive, precedes both when above 0:
// the actual one, slip included, or that of Stages of the kind in series, before their slip.
type Transmission struct {
	Kind                     Kind
	DriverMM, DrivenMM       float64 // effective diameters of the pulleys, above 0
	DriverTeeth, DrivenTeeth float64 // above 0
	Ratio                    float64 // 0: not given
	Stages                   int     // in Ratio; 0: it is the actual ratio
	Slip                     float64 // of a belt, 0 to 0.5
	Efficiency               float64 // of the whole, above 0, at most 1; 0 is not given, and then 1
}

// ErrTransmission is wrapped by the errors about a transmission.
var ErrTransmission = errors.New("transmission")

// maxTurns is the ratio above which, or below one over which, a reading is a typing error.
const maxTurns = 1e4

// Check tests the numbers that the kind needs.
func (t Transmission) Check() error {
	_, err := t.Turns()
	return err
}

// Turns is alternator turns per turn of the drive, slip deducted: n_alt = n_drive·D_drive/D_alt·(1 −
// slip), or teeth over teeth; with stages (1 − slip) for each. Source of the formula: any text on the
// theory of machines (Khurmi and Gupta, chapter 11).
func (t Transmission) Turns() (float64, error) {
	if !(t.Slip >= 0 && t.Slip <= 0.5) {
		return 0, fmt.Errorf("%w: slip: read %g, expected 0 to 0.5", ErrTransmission, t.Slip)
	}
	if !(t.Efficiency >= 0 && t.Efficiency <= 1) {
		return 0, fmt.Errorf("%w: efficiency: read %g, expected above 0 and at most 1", ErrTransmission, t.Efficiency)
	}
	if t.Ratio != 0 {
		return plausible(t.Ratio*math.Pow(1-t.slips(), float64(t.Stages)), "ratio")
	}
	switch t.Kind {
	case Belt:
		r, err := quotient(t.DriverMM, t.DrivenMM, "two pulley diameters above 0")
		return r * (1 - t.slips()), err
	case Chain, Gear:
		return quotient(t.DriverTeeth, t.DrivenTeeth, "the teeth of two wheels")
	default:
		return 1, nil
	}
}

// slips is the part of the speed that one stage loses: only a belt does.
func (t Transmission) slips() float64 {
	if t.Kind != Belt {
		return 0
	}
	return t.Slip
}

// SlipOfAll is the part of the speed lost to slip in total, 0 where the ratio is the actual one.
func (t Transmission) SlipOfAll() float64 {
	if t.Ratio != 0 {
		return 1 - math.Pow(1-t.slips(), float64(t.Stages))
	}
	return t.slips()
}

// quotient is a/b of two sizes.
func quotient(a, b float64, expected string) (float64, error) {
	if !(a > 0 && b > 0) || math.IsInf(a, 0) || math.IsInf(b, 0) {
		return 0, fmt.Errorf("%w: read %g and %g, expected %s", ErrTransmission, a, b, expected)
	}
	return plausible(a/b, "ratio of the two")
}

// plausible checks a ratio.
func plausible(ratio float64, what string) (float64, error) {
	if !(ratio >= 1/maxTurns && ratio <= maxTurns) {
		return 0, fmt.Errorf("%w: %s: read %g, expected %g to %g turns for one", ErrTransmission, what, ratio, 1/maxTurns, maxTurns)
	}
	return ratio, nil
}

// Up is the alternator's speed at a speed of the drive, in the same unit.
func (t Transmission) Up(driveRPM float64) (alternatorRPM float64, err error) {
	turns, err := t.Turns()
	if err != nil {
		return 0, err
	}
	return driveRPM * turns, nil
}

// Down is the drive's speed at a speed of the alternator, in the same unit.
func (t Transmission) Down(alternatorRPM float64) (driveRPM float64, err error) {
	turns, err := t.Turns()
	if err != nil {
		return 0, err
	}
	return alternatorRPM / turns, nil
}

// Passes is the part of the drive's power that reaches the alternator: the efficiency, or 1 when it is
// not given. V-belts 0.92 to 0.95, toothed belts 0.98 (US Department of Energy tip sheet and field
// literature); chains and gears 0.95 to 0.98 (common practice, no source).
func (t Transmission) Passes() float64 {
	if t.Efficiency == 0 {
		return 1
	}
	return t.Efficiency
}

// RealRatio is the ratio by two tachometer readings under load, and the slip that it implies against
// the nominal ratio (negative: the pulleys were measured wrong). Without a nominal ratio, 0, the slip
// is 0.
func RealRatio(driveRPM, alternatorRPM, nominal float64) (ratio, slip float64, err error) {
	if !(driveRPM > 0 && alternatorRPM > 0) {
		return 0, 0, fmt.Errorf("%w: read %g and %g rpm, expected two speeds above 0", ErrTransmission, driveRPM, alternatorRPM)
	}
	if ratio, err = plausible(alternatorRPM/driveRPM, "ratio of the two speeds"); err != nil {
		return 0, 0, err
	}
	if nominal > 0 {
		slip = 1 - ratio/nominal
	}
	return ratio, slip, nil
}

// End is an end of a transmission.
type End int

// The ends.
const (
	DriveEnd      End = iota // the pulley or wheel on the drive
	AlternatorEnd            // the one on the alternator
)

// PulleyFor is the pulley (its diameter, in the unit of the other one) or the wheel (its teeth, not
// rounded) for one end that makes a wanted ratio of alternator turns per turn of the drive, with the
// other end unchanged. Slip is that of a belt; 0 for chain and gear.
func PulleyFor(end End, ratio, other, slip float64) (float64, error) {
	if _, err := plausible(ratio, "wanted ratio"); err != nil {
		return 0, err
	}
	if !(other > 0) || math.IsInf(other, 0) {
		return 0, fmt.Errorf("%w: the other pulley or wheel: read %g, expected above 0", ErrTransmission, other)
	}
	if !(slip >= 0 && slip <= 0.5) {
		return 0, fmt.Errorf("%w: slip: read %g, expected 0 to 0.5", ErrTransmission, slip)
	}
	if end == DriveEnd {
		return ratio * other / (1 - slip), nil
	}
	return other * (1 - slip) / ratio, nil
}
