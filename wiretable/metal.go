package wiretable

import "math"

// Metal is what the conductor is made of. The zero value is Copper.
type Metal uint8

// The metals.
const (
	// Copper is annealed copper of 100 % IACS.
	Copper Metal = iota
	// Aluminium is electrical aluminium of 61 % IACS.
	Aluminium
	metalCount
)

// Constants of the metals at 20 °C.
//
// Copper: the International Annealed Copper Standard (IEC 60028; NBS
// Handbook 100) sets the conductivity at 58 MS/m, so 1.7241e-8 Ω·m, and the
// density at 8890 kg/m³. The inferred zero of resistance, -234.5 °C, is
// 20 - 1/0.00393 (IEEE Std 112; NBS Handbook 100).
//
// Aluminium: 61 % IACS, 2703 kg/m³ and 0.00403 per kelvin at 20 °C, hence
// -228.1 °C (IEC 60889, from memory).
//
// Specific heats: 385 and 897 J/kgK (handbook values at 25 °C, from memory).
const (
	copperSiemensPerM   = 58e6
	aluminiumShareIACS  = 0.61
	copperDensity       = 8890.0
	aluminiumDensity    = 2703.0
	copperSpecific      = 385.0
	aluminiumSpecific   = 897.0
	copperZeroC         = -234.5
	aluminiumZeroC      = -228.1
	referenceC          = 20.0
	vacuumPermeability  = 4e-7 * math.Pi
	squareMetresPerMM2  = 1e-6
	millimetresPerMetre = 1e3
)

// String is the word for the file and the screen.
func (m Metal) String() string {
	switch m {
	case Copper:
		return "copper"
	case Aluminium:
		return "aluminium"
	}
	return "unknown metal"
}

// Metals lists every metal.
func Metals() []Metal { return []Metal{Copper, Aluminium} }

// MarshalText writes String.
func (m Metal) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads what ParseMetal reads; empty text is Copper.
func (m *Metal) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*m = Copper
		return nil
	}
	read, err := ParseMetal(string(text))
	if err != nil {
		return err
	}
	*m = read
	return nil
}

// ParseMetal reads a metal: "copper", "cu", "aluminium", "aluminum", "al". The
// error is a *ParseError.
func ParseMetal(text string) (Metal, error) {
	switch squash(text) {
	case "copper", "cu":
		return Copper, nil
	case "aluminium", "aluminum", "al", "alu":
		return Aluminium, nil
	}
	return Copper, &ParseError{
		Read:     clip(text),
		Expected: "the metal of the wire",
		Fix:      "write copper or aluminium",
	}
}

// InferredZeroC is the temperature in °C at which the resistance extrapolates linearly to zero.
func (m Metal) InferredZeroC() float64 {
	if m == Aluminium {
		return aluminiumZeroC
	}
	return copperZeroC
}

// DensityKgM3 is the density at 20 °C in kg/m³.
func (m Metal) DensityKgM3() float64 {
	if m == Aluminium {
		return aluminiumDensity
	}
	return copperDensity
}

// SpecificHeat is the heat in joules that warms a kilogram by a kelvin, at 25 °C.
func (m Metal) SpecificHeat() float64 {
	if m == Aluminium {
		return aluminiumSpecific
	}
	return copperSpecific
}

// TempFactor is the resistance at toC over the resistance at fromC (both °C),
// (zero + to)/(zero + from) as in IEEE Std 112. Valid about -50 to 250 °C;
// fromC must be above the inferred zero.
func (m Metal) TempFactor(fromC, toC float64) float64 {
	zero := m.InferredZeroC()
	return (toC - zero) / (fromC - zero)
}

// Resistivity is in Ω·m at a temperature in °C.
func (m Metal) Resistivity(tempC float64) float64 {
	conductivity := copperSiemensPerM
	if m == Aluminium {
		conductivity *= aluminiumShareIACS
	}
	return m.TempFactor(referenceC, tempC) / conductivity
}

// OhmsPerMetre is the DC resistance of one metre of conductor, ρ/A, for an
// area in mm² (above 0) at a temperature in °C.
func OhmsPerMetre(areaMM2 float64, m Metal, tempC float64) float64 {
	return m.Resistivity(tempC) / (areaMM2 * squareMetresPerMM2)
}

// KgPerMetre is the mass of the bare metal in one metre of conductor, for an
// area in mm². The enamel, a few per cent, is not in it.
func KgPerMetre(areaMM2 float64, m Metal) float64 {
	return m.DensityKgM3() * areaMM2 * squareMetresPerMM2
}

// SkinDepthMM is the depth in mm at which current density falls to 1/e,
// sqrt(ρ/(π·f·μ0)), at a temperature in °C and a frequency in hertz (above 0;
// at 0 Hz it is +Inf, there being no skin).
func SkinDepthMM(m Metal, tempC, hertz float64) float64 {
	depth := math.Sqrt(m.Resistivity(tempC) / (math.Pi * hertz * vacuumPermeability))
	return depth * millimetresPerMetre
}
