package field

import (
	"errors"
	"fmt"
	"math"
)

// Magnets is a ring of surface magnets under a stator.
type Magnets struct {
	RemanenceT  float64 // Br at 20 °C, 0.05 to 1.6
	TempC       float64 // of the magnets, -60 to 250
	PerKelvin   float64 // change of Br with temperature; 0 takes that of the grade
	ThicknessMM float64 // along the flux, 0.2 to 200
	Cover       float64 // arc over pole pitch, 0 to 1
	GapMM       float64 // magnet to tooth, 0.02 to 100
	Carter      float64 // Carter factor of the slots, 1 and up; 0 is 1
	Leakage     float64 // σ, flux of the magnet over flux that crosses, 1 and up; 0 is 1.1
	RecoilMu    float64 // relative recoil permeability; 0 is 1.05
}

// Uncertainty is how far an estimate from magnets may be off, a fraction: grade,
// temperature, leakage and gap together (common practice, no source).
const Uncertainty = 0.15

// ErrMagnets is wrapped by the errors about magnets.
var ErrMagnets = errors.New("magnets")

// PerKelvinOf is the usual change of Br with temperature by grade: sintered neodymium
// −0.12 % and hard ferrite −0.20 % a kelvin (makers' sheets, from memory). Below 0.6 T
// of remanence it is taken as ferrite.
func PerKelvinOf(remanenceT float64) float64 {
	if remanenceT < 0.6 {
		return -0.0020
	}
	return -0.0012
}

// GapTesla is the flux density over the magnets and the peak of its fundamental:
//
//	Bg = Br/(σ·(Ag/Am) + μr·kC·g/hm)      B1 = (4/π)·Bg·sin(α·π/2)
//
// with Ag = Am, flat gaps, and iron that takes no magnetomotive force. Source: Hanselman,
// Brushless Permanent Magnet Motor Design, and Pyrhönen et al. (from memory).
func (m Magnets) GapTesla() (gap, fundamental float64, err error) {
	for _, v := range [...]struct {
		name            string
		value, low, top float64
	}{
		{"remanence, T", m.RemanenceT, 0.05, 1.6}, {"magnet temperature, °C", m.TempC, -60, 250},
		{"magnet thickness, mm", m.ThicknessMM, 0.2, 200}, {"cover", m.Cover, 0.05, 1}, {"gap, mm", m.GapMM, 0.02, 100},
	} {
		if !(v.value >= v.low && v.value <= v.top) {
			return 0, 0, fmt.Errorf("%w: %s: read %g, expected %g to %g", ErrMagnets, v.name, v.value, v.low, v.top)
		}
	}
	per := m.PerKelvin
	if per == 0 {
		per = PerKelvinOf(m.RemanenceT)
	}
	br := m.RemanenceT * (1 + per*(m.TempC-20))
	gap = br / (or(m.Leakage, 1.1) + or(m.RecoilMu, 1.05)*or(m.Carter, 1)*m.GapMM/m.ThicknessMM)
	return gap, 4 / math.Pi * gap * math.Sin(m.Cover*math.Pi/2), nil
}

func or(v, fallback float64) float64 {
	if v > 0 {
		return v
	}
	return fallback
}

// Carter is how much longer a gap looks because of the slots: for a slot pitch, mouth
// and gap in the same unit,
//
//	kC = t/(t − γ·g),  γ = (b/g)²/(5 + b/g)
//
// Source: Carter's factor in the approximate form of Pyrhönen et al. (from memory). 1
// without a mouth; never below 1.
func Carter(pitch, mouth, gap float64) float64 {
	if !(mouth > 0 && gap > 0 && pitch > mouth) {
		return 1
	}
	r := mouth / gap
	return pitch / (pitch - r*r/(5+r)*gap)
}
