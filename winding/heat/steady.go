package heat

import (
	"fmt"
	"math"
	"strings"
)

// Class is a thermal class of insulation (IEC 60085).
type Class byte

// Classes lists the classes that a winding is made in.
func Classes() []Class { return []Class{'A', 'E', 'B', 'F', 'H'} }

// String is the letter.
func (c Class) String() string { return string(rune(c)) }

// ParseClass reads the letter.
func ParseClass(text string) (Class, error) {
	t := strings.ToUpper(strings.TrimSpace(text))
	for _, c := range Classes() {
		if t == c.String() {
			return c, nil
		}
	}
	return 'B', fmt.Errorf("thermal class: read %q, expected A, E, B, F or H", text)
}

// LimitC is the hottest that insulation of the class may get, at its hottest spot
// (IEC 60085: A 105, E 120, B 130, F 155, H 180 °C). 0 for no class.
func (c Class) LimitC() float64 {
	switch c {
	case 'A':
		return 105
	case 'E':
		return 120
	case 'B':
		return 130
	case 'F':
		return 155
	case 'H':
		return 180
	}
	return 0
}

// Steady is the temperature at which heat made and heat lost are equal, when the loss
// in the metal grows with its temperature:
//
//	t = amb + Rth·(P20·(k + t)/(k + 20) + other)
//
// k is the metal's inferred zero (copper 234.5), P20 the loss it would have at 20 °C. It
// is linear in t. ok is false when the metal's loss grows faster than it is carried off,
// Rth·P20 ≥ k + 20: then there is no steady temperature.
func Steady(ambientC, kelvinPerWatt, watts20, inferredZero, otherWatts float64) (celsius float64, ok bool) {
	gain := kelvinPerWatt * watts20 / (inferredZero + 20)
	if !(gain < 1) {
		return math.Inf(1), false
	}
	return (ambientC + kelvinPerWatt*(watts20*inferredZero/(inferredZero+20)+otherWatts)) / (1 - gain), true
}

// film is a guess of the heat a warm surface gives off, W/m²K, radiation included
// (common practice, no source; textbooks have 10 to 15 for still air, 25 to 60 blown).
func film(c Cooling) float64 {
	switch c {
	case Closed:
		return 10
	case Fan:
		return 40
	default:
		return 15
	}
}

// FromSurface guesses the rise per watt of a stator of a bore, a stack and a slot depth,
// all in mm: its outside is taken as bore + 4 slot depths across and the stack and one
// slot depth of end turns at each side long, mantle and both faces giving off heat. A
// guess, good to a factor of 1.5; NaN when a length is not above 0.
func FromSurface(c Cooling, boreMM, stackMM, slotDepthMM float64) float64 {
	if !(boreMM > 0 && stackMM > 0 && slotDepthMM >= 0) {
		return math.NaN()
	}
	d := (boreMM + 4*slotDepthMM) / 1000
	l := (stackMM + 2*slotDepthMM) / 1000
	inner := boreMM / 1000
	area := math.Pi*d*l + 2*math.Pi/4*(d*d-inner*inner) + math.Pi*inner*l
	return 1 / (film(c) * area)
}

// Metal is what a conductor is made of, for its heating.
type Metal struct {
	Resistivity20 float64 // Ω·m at 20 °C
	InferredZero  float64 // °C below zero where it would have none
	Density       float64 // kg/m³
	Specific      float64 // J/kgK
}

// The metals. Specific heats: copper 385, aluminium 897 J/kgK (handbook values at 25 °C,
// from memory).
var (
	Copper    = Metal{1.7241e-8, 234.5, 8890, 385}
	Aluminium = Metal{1.7241e-8 / 0.61, 228.1, 2703, 897}
)

// Seconds is how long a current density, A/mm², takes to heat a metal from one
// temperature to another when no heat is carried off:
//
//	c·γ·dT/dτ = J²·ρ20·(k + T)/(k + 20)  →  τ = c·γ·(k + 20)/(J²·ρ20)·ln((k+T2)/(k+T1))
//
// (the adiabatic equation of IEC 60949, from memory). +Inf without current; 0 when it is
// there already.
func Seconds(m Metal, ampsPerMM2, fromC, toC float64) float64 {
	if !(ampsPerMM2 > 0) {
		return math.Inf(1)
	}
	if toC <= fromC {
		return 0
	}
	j := ampsPerMM2 * 1e6
	return m.Specific * m.Density * (m.InferredZero + 20) / (j * j * m.Resistivity20) *
		math.Log((m.InferredZero+toC)/(m.InferredZero+fromC))
}
