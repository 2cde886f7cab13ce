package drive

import (
	"errors"
	"fmt"
	"math"
)

// Kind is what lies between drive and alternator.
type Kind int

// The kinds.
const (
	Direct Kind = iota
	Belt
	Chain
	Gear
)

// Transmission turns the drive's speed into the alternator's. DriverMM and DrivenMM are
// for a belt, the teeth for chain and gear; Ratio, alternator turns for one turn of the
// drive, goes before both when above 0.
type Transmission struct {
	Kind                     Kind
	DriverMM, DrivenMM       float64
	DriverTeeth, DrivenTeeth float64
	Ratio                    float64
	Slip                     float64 // of a belt, 0 to 0.5
	Efficiency               float64 // 0 is 1
}

// ErrTransmission is wrapped by the errors about a transmission.
var ErrTransmission = errors.New("transmission")

// Turns is alternator turns for one turn of the drive, slip taken off:
// n_alt = n_drive·D_drive/D_alt·(1 − slip), or teeth over teeth.
func (t Transmission) Turns() (float64, error) {
	if !(t.Slip >= 0 && t.Slip <= 0.5) {
		return 0, fmt.Errorf("%w: slip: read %g, expected 0 to 0.5", ErrTransmission, t.Slip)
	}
	if t.Ratio > 0 {
		return t.Ratio, nil
	}
	over := func(a, b float64, what string) (float64, error) {
		if !(a > 0 && b > 0) || math.IsInf(a, 0) || math.IsInf(b, 0) {
			return 0, fmt.Errorf("%w: read %g and %g, expected %s", ErrTransmission, a, b, what)
		}
		return a / b, nil
	}
	switch t.Kind {
	case Belt:
		r, err := over(t.DriverMM, t.DrivenMM, "two pulley diameters above 0")
		return r * (1 - t.Slip), err
	case Chain, Gear:
		return over(t.DriverTeeth, t.DrivenTeeth, "the teeth of two wheels")
	default:
		return 1, nil
	}
}

// RealRatio is what two tachometer readings under load say, and the slip that means
// against the nominal ratio (negative: the pulleys were measured wrong).
func RealRatio(driveRPM, alternatorRPM, nominal float64) (ratio, slip float64, err error) {
	if !(driveRPM > 0 && alternatorRPM > 0) {
		return 0, 0, fmt.Errorf("%w: read %g and %g rpm, expected two speeds above 0", ErrTransmission, driveRPM, alternatorRPM)
	}
	ratio = alternatorRPM / driveRPM
	if nominal > 0 {
		slip = 1 - ratio/nominal
	}
	return ratio, slip, nil
}

// DriverFor is the diameter of the drive's pulley (or the teeth of its wheel) for a
// wanted ratio; DrivenFor that of the alternator's. slip is 0 for chain and gear.
func DriverFor(ratio, driven, slip float64) float64 { return ratio * driven / (1 - slip) }

// DrivenFor is the alternator's pulley for a wanted ratio.
func DrivenFor(ratio, driver, slip float64) float64 { return driver * (1 - slip) / ratio }

// BeltLength is that of an open belt over pulleys a distance apart, all in one unit:
// 2·C·cos β + (π/2)(D + d) + β(D − d), sin β = (D − d)/2C; exact. NaN when the pulleys
// overlap.
func BeltLength(d1, d2, centre float64) float64 {
	s := math.Abs(d1-d2) / (2 * centre)
	if !(s < 1) {
		return math.NaN()
	}
	beta := math.Asin(s)
	return 2*centre*math.Cos(beta) + math.Pi/2*(d1+d2) + beta*math.Abs(d1-d2)
}

// CentreFor is the distance for a belt of a length, by halving; NaN when it is too short.
func CentreFor(d1, d2, length float64) float64 {
	low := math.Abs(d1-d2)/2*(1+1e-12) + 1e-12
	if !(BeltLength(d1, d2, low) <= length) {
		return math.NaN()
	}
	high := length
	for range 200 {
		mid := (low + high) / 2
		if BeltLength(d1, d2, mid) < length {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}

// WrapDegrees is the contact angle on the smaller pulley, 180 − 2·asin((D − d)/2C).
func WrapDegrees(d1, d2, centre float64) float64 {
	return 180 - 2*math.Asin(math.Abs(d1-d2)/(2*centre))*180/math.Pi
}

// BeltSpeed is metres per second of a belt on a pulley.
func BeltSpeed(diameterMM, rpm float64) float64 { return math.Pi * diameterMM / 1000 * rpm / 60 }
