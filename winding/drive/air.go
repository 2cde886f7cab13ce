package drive

import (
	"errors"
	"fmt"
	"math"
)

// The standard atmosphere (ISO 2533:1975): 101 325 Pa and 288.15 K at the sea, 6.5 K
// cooler each kilometre; R = 287.05287 J/kgK, exponent g/(R·L) = 5.25588.
const (
	seaPascal   = 101325.0
	seaKelvin   = 288.15
	lapse       = 0.0065
	gasConstant = 287.05287
	exponent    = 9.80665 / (gasConstant * lapse)
	lowestM     = -500.0
	highestM    = 11000.0
	coldestC    = -90.0
	hottestC    = 70.0
)

// ErrAir is wrapped by the errors about the air.
var ErrAir = errors.New("air")

// CheckAir tests an altitude and a temperature: -500 to 11 000 m, where the standard atmosphere is one
// formula, and -90 to 70 °C.
func CheckAir(altitudeM, celsius float64) error {
	switch {
	case !(altitudeM >= lowestM && altitudeM <= highestM):
		return fmt.Errorf("%w: altitude: read %g m, expected %g to %g", ErrAir, altitudeM, lowestM, highestM)
	case !(celsius >= coldestC && celsius <= hottestC):
		return fmt.Errorf("%w: temperature: read %g °C, expected %g to %g", ErrAir, celsius, coldestC, hottestC)
	}
	return nil
}

// Pascal is the air pressure of the standard atmosphere at an altitude of -500 to 11 000 m, and that of
// the nearer end outside.
func Pascal(altitudeM float64) float64 {
	return seaPascal * math.Pow(1-lapse*min(highestM, max(lowestM, altitudeM))/seaKelvin, exponent)
}

// AirDensity is kg/m³ at an altitude and a temperature, ρ = p/(R·T): the pressure of the standard
// atmosphere at that altitude with the actual temperature. Dry air: at 30 °C air full of water vapour
// is 1.6 % lighter. For values that CheckAir passes.
func AirDensity(altitudeM, celsius float64) float64 {
	return Pascal(altitudeM) / (gasConstant * (celsius + 273.15))
}

// StandardC is the standard atmosphere's temperature at an altitude.
func StandardC(altitudeM float64) float64 { return 15 - lapse*altitudeM }
