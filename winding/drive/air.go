package drive

import "math"

// The standard atmosphere (ISO 2533:1975): 101 325 Pa and 288.15 K at the sea, 6.5 K
// cooler each kilometre; R = 287.05287 J/kgK, exponent g/(R·L) = 5.25588.
const (
	seaPascal   = 101325.0
	seaKelvin   = 288.15
	lapse       = 0.0065
	gasConstant = 287.05287
	exponent    = 5.25588
)

// Pascal is the air pressure of the standard atmosphere at an altitude of -500 to
// 11 000 m.
func Pascal(altitudeM float64) float64 {
	return seaPascal * math.Pow(1-lapse*altitudeM/seaKelvin, exponent)
}

// AirDensity is kg/m³ at an altitude and a temperature, ρ = p/(R·T).
func AirDensity(altitudeM, celsius float64) float64 {
	return Pascal(altitudeM) / (gasConstant * (celsius + 273.15))
}

// StandardC is the standard atmosphere's temperature at an altitude.
func StandardC(altitudeM float64) float64 { return 15 - lapse*altitudeM }
