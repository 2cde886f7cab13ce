package heat

import "math"

// # Heating without cooling
//
// For seconds a thick current only warms the metal it flows in: what air and iron carry
// off is not yet felt. Then
//
//	c·γ·dT/dτ = J²·ρ20·(k + T)/(k + 20)
//
// c J/kgK, γ kg/m³, J A/m², ρ20 Ω·m, k the inferred zero. ln(k + T) goes up steadily:
//
//	ln((k+T2)/(k+T1)) = J²·ρ20·τ/(c·γ·(k+20))
//
// It is the adiabatic equation of IEC 60949 (from memory), with K² = c·γ·(k+20)/ρ20. That
// standard's heat capacities a volume, 3.45 and 2.5 J/cm³K, lie 1 and 3 % above the room-
// temperature ones used here, which grow by as much on the way up; so it errs to the safe
// side. Valid for a few seconds at tens of A/mm²; over minutes the winding's surroundings
// take part and Steady is the other end.

// Metal is what a conductor is made of, for its heating.
type Metal struct {
	Resistivity20 float64 // Ω·m at 20 °C
	InferredZero  float64 // °C below zero where it would have none
	Density       float64 // kg/m³
	Specific      float64 // J/kgK
}

// The metals. Copper: 1.7241e-8 Ω·m and 8890 kg/m³ (IEC 60028); aluminium: 61 % of that
// conductivity, 2703 kg/m³ and 228.1 (IEC 60889, from memory). Specific heats: copper 385,
// aluminium 897 J/kgK (handbook values at 25 °C, from memory).
var (
	Copper    = Metal{1.7241e-8, 234.5, 8890, 385}
	Aluminium = Metal{1.7241e-8 / 0.61, 228.1, 2703, 897}
)

// rate is d ln(k+T)/dτ at a current density, 1/s.
func (m Metal) rate(ampsPerMM2 float64) float64 {
	j := ampsPerMM2 * 1e6
	return j * j * m.Resistivity20 / (m.Specific * m.Density * (m.InferredZero + 20))
}

// Seconds is how long a current density, A/mm², takes to heat a metal from one
// temperature to another when no heat is carried off. +Inf without current, and for
// temperatures that are none; 0 when it is there already.
func Seconds(m Metal, ampsPerMM2, fromC, toC float64) float64 {
	switch {
	case !(ampsPerMM2 > 0) || !(fromC > -m.InferredZero) || math.IsNaN(toC):
		return math.Inf(1)
	case toC <= fromC:
		return 0
	}
	return math.Log((m.InferredZero+toC)/(m.InferredZero+fromC)) / m.rate(ampsPerMM2)
}

// RiseRate is how fast a metal at a temperature warms at a current density, A/mm², K/s,
// when no heat is carried off. 0 without current, and at or below the inferred zero.
func RiseRate(m Metal, ampsPerMM2, atC float64) float64 {
	if !(ampsPerMM2 > 0) || !(atC > -m.InferredZero) || math.IsInf(atC, 0) {
		return 0
	}
	return m.rate(ampsPerMM2) * (m.InferredZero + atC)
}

// After is the temperature, °C, that a metal comes to from another in some seconds at a
// current density, A/mm², when no heat is carried off: Seconds turned round. +Inf when
// it is past all numbers. The start without current or time.
func After(m Metal, ampsPerMM2, fromC, seconds float64) float64 {
	if !(ampsPerMM2 > 0 && seconds > 0) || !(fromC > -m.InferredZero) {
		return fromC
	}
	return (m.InferredZero+fromC)*math.Exp(m.rate(ampsPerMM2)*seconds) - m.InferredZero
}
