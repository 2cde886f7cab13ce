package heat

import (
	"fmt"
	"math"
	"strings"
)

// Class is a thermal class of insulation (IEC 60085).
type Class byte

// Classes lists the classes that windings are made in.
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

// LimitC is the highest temperature allowed at the hottest spot of insulation of the class (IEC 60085:
// A 105, E 120, B 130, F 155, H 180 °C). 0 for no class.
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

// Steady is the temperature at which heat made and heat lost are equal, when the loss in the metal
// grows with its temperature:
//
//	t = amb + Rth·(P20·(k + t)/(k + 20) + other)
//
// k is the metal's inferred zero (copper 234.5), P20 its loss at 20 °C. It is linear in t. ok is false
// when the metal's loss grows faster than it is carried off, Rth·P20 ≥ k + 20: then there is no steady
// temperature. It is also false for a NaN, or a negative resistance or loss. Source: a metal's linear R
// ∝ k + t (Langsdorf, Theory of Alternating Current Machinery, chapter 1) put into a heat balance,
// worked out here.
func Steady(ambientC, kelvinPerWatt, watts20, inferredZero, otherWatts float64) (celsius float64, ok bool) {
	if !(kelvinPerWatt >= 0 && watts20 >= 0 && otherWatts >= 0 && inferredZero > 0) {
		return math.Inf(1), false
	}
	gain := kelvinPerWatt * watts20 / (inferredZero + 20)
	celsius = (ambientC + kelvinPerWatt*(watts20*inferredZero/(inferredZero+20)+otherWatts)) / (1 - gain)
	if !(gain < 1) || math.IsNaN(celsius) || math.IsInf(celsius, 0) {
		return math.Inf(1), false
	}
	return celsius, true
}

// FilmSource says where Film comes from.
const FilmSource = "a guess: convection to still air 2 to 25, blown 25 to 250 W/m²K (Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 1.1, from memory), some 7 of radiation in it"

// Film is a guess of the film coefficient of a warm surface, W/m²K, radiation included: 10 closed, 15
// open, 40 with a fan. See FilmSource.
func Film(c Cooling) float64 {
	switch c {
	case Closed:
		return 10
	case Fan:
		return 40
	default:
		return 15
	}
}

// FromSurface guesses the rise per watt of a stator of a bore, a stack and a slot depth, all in mm: its
// outside is taken as a cylinder of diameter bore + 4 slot depths and length stack + one slot depth of
// end turns at each end, with mantle and both faces giving off heat. A guess, good to a factor of 1.5;
// an error when bore or stack is not above 0 or the depth is negative.
func FromSurface(c Cooling, boreMM, stackMM, slotDepthMM float64) (kelvinPerWatt float64, err error) {
	if !(boreMM > 0 && stackMM > 0 && slotDepthMM >= 0) {
		return 0, fmt.Errorf("rise per watt from the surface: read a bore of %g mm, a stack of %g mm and slots %g mm deep, expected bore and stack above 0 and the depth not below", boreMM, stackMM, slotDepthMM)
	}
	d := (boreMM + 4*slotDepthMM) / 1000
	l := (stackMM + 2*slotDepthMM) / 1000
	inner := boreMM / 1000
	area := math.Pi*d*l + 2*math.Pi/4*(d*d-inner*inner) + math.Pi*inner*l
	return 1 / (Film(c) * area), nil
}

// InThinAir is the factor on the rise per watt at an altitude, m, relative to 1000 m and below: 1 %
// more for each 100 m above, as IEC 60034-1 corrects the permitted rise between 1000 and 4000 m (from
// memory); extrapolated to 6000 m.
func InThinAir(altitudeM float64) float64 { return 1 + max(0, altitudeM-1000)/1e4 }
