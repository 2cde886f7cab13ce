package heat

import (
	"math"

	"slotwright/wiretable"
)

// # Heating without cooling
//
// For seconds a large current warms only the metal it flows in: what air and iron carry off is not yet
// felt. Then
//
//	c·γ·dT/dτ = J²·ρ20·(k + T)/(k + 20)
//
// c J/kgK, γ kg/m³, J A/m², ρ20 Ω·m, k the inferred zero. ln(k + T) rises linearly:
//
//	ln((k+T2)/(k+T1)) = J²·ρ20·τ/(c·γ·(k+20))
//
// It is the adiabatic equation of IEC 60949 (from memory), with K² = c·γ·(k+20)/ρ20. That standard's
// volumetric heat capacities, 3.45 and 2.5 J/cm³K, are 1 and 3 % above the room-temperature ones used
// here, which grow by as much on the way up; so it errs on the safe side. Valid for a few seconds at
// tens of A/mm²; over minutes the winding's surroundings take part, and Steady is the other limit.

// rate is d ln(k+T)/dτ at a current density, 1/s.
func rate(m wiretable.Metal, ampsPerMM2 float64) float64 {
	j := ampsPerMM2 * 1e6
	return j * j * m.Resistivity(20) / (m.SpecificHeat() * m.DensityKgM3() * (k(m) + 20))
}

// k is the inferred zero of the metal's resistance, K below 0 °C: copper 234.5.
func k(m wiretable.Metal) float64 { return -m.InferredZeroC() }

// Seconds is how long a current density, A/mm², takes to heat a metal from one temperature to another
// when no heat is carried off. +Inf without current, and for invalid temperatures; 0 when it is there
// already.
func Seconds(m wiretable.Metal, ampsPerMM2, fromC, toC float64) float64 {
	switch {
	case !(ampsPerMM2 > 0) || !(fromC > -k(m)) || math.IsNaN(toC):
		return math.Inf(1)
	case toC <= fromC:
		return 0
	}
	return math.Log((k(m)+toC)/(k(m)+fromC)) / rate(m, ampsPerMM2)
}

// RiseRate is how fast a metal at a temperature warms at a current density, A/mm², K/s, when no heat is
// carried off. 0 without current, and at or below the inferred zero.
func RiseRate(m wiretable.Metal, ampsPerMM2, atC float64) float64 {
	if !(ampsPerMM2 > 0) || !(atC > -k(m)) || math.IsInf(atC, 0) {
		return 0
	}
	return rate(m, ampsPerMM2) * (k(m) + atC)
}

// After is the temperature, °C, that a metal reaches from another in some seconds at a current density,
// A/mm², when no heat is carried off: the inverse of Seconds. +Inf when it overflows. The starting
// temperature without current or time.
func After(m wiretable.Metal, ampsPerMM2, fromC, seconds float64) float64 {
	if !(ampsPerMM2 > 0 && seconds > 0) || !(fromC > -k(m)) {
		return fromC
	}
	return (k(m)+fromC)*math.Exp(rate(m, ampsPerMM2)*seconds) - k(m)
}
