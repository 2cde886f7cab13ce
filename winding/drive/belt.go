package drive

import (
	"fmt"
	"math"
)

// OpenBelt is a belt, not crossed, over two pulleys whose shafts are a distance apart.
// All three in one unit of length, which the lengths below are then in as well.
type OpenBelt struct {
	D1, D2 float64 // diameters at the belt's neutral line, above 0
	Centre float64 // more than half the sum of the diameters: the pulleys do not touch
}

// Limits for a belt drive; common practice, no source (belt makers' design guides say much the same):
// less wrap than 120° on the small pulley slips under load, V-belts are kept to about 30 m/s.
const (
	LeastWrapDegrees = 120.0
	MostBeltMPS      = 30.0
)

// Check tests the numbers.
func (b OpenBelt) Check() error {
	for _, d := range []float64{b.D1, b.D2} {
		if !(d > 0) || math.IsInf(d, 0) {
			return fmt.Errorf("%w: pulley diameter: read %g, expected above 0", ErrTransmission, d)
		}
	}
	if least := (b.D1 + b.D2) / 2; !(b.Centre > least) || math.IsInf(b.Centre, 0) {
		return fmt.Errorf("%w: distance of the shafts: read %g, expected more than %g, at which the pulleys touch", ErrTransmission, b.Centre, least)
	}
	return nil
}

// lean is the angle between the belt's free run and the line of the shafts,
// asin((D − d)/2C), rad.
func (b OpenBelt) lean() float64 { return math.Asin(math.Abs(b.D1-b.D2) / (2 * b.Centre)) }

// Length is the belt's, exact: 2·C·cos β + (π/2)(D + d) + β(D − d), sin β = (D − d)/2C.
func (b OpenBelt) Length() (float64, error) {
	if err := b.Check(); err != nil {
		return 0, err
	}
	return b.length(), nil
}

func (b OpenBelt) length() float64 {
	beta := b.lean()
	return 2*b.Centre*math.Cos(beta) + math.Pi/2*(b.D1+b.D2) + beta*math.Abs(b.D1-b.D2)
}

// WrapDegrees is the contact angle on the smaller pulley, 180 − 2·asin((D − d)/2C).
func (b OpenBelt) WrapDegrees() (float64, error) {
	if err := b.Check(); err != nil {
		return 0, err
	}
	return 180 - 2*b.lean()*180/math.Pi, nil
}

// CentreFor is the distance of the shafts at which a belt of a length fits two pulleys. The length
// grows with the distance, so bisection finds it.
func CentreFor(d1, d2, length float64) (float64, error) {
	b := OpenBelt{D1: d1, D2: d2, Centre: (d1 + d2) / 2 * (1 + 1e-12)}
	if err := b.Check(); err != nil {
		return 0, err
	}
	if least := b.length(); !(length > least) || math.IsInf(length, 0) {
		return 0, fmt.Errorf("%w: belt length: read %g, expected more than %g, at which the pulleys touch", ErrTransmission, length, least)
	}
	low, high := b.Centre, length
	for range 200 {
		b.Centre = (low + high) / 2
		if b.length() < length {
			low = b.Centre
		} else {
			high = b.Centre
		}
	}
	return b.Centre, nil
}

// BeltSpeed is the speed of a belt, m/s, on a pulley of a diameter at a shaft speed.
func BeltSpeed(diameterMM, rpm float64) float64 { return math.Pi * diameterMM / 1000 * rpm / 60 }
