package field

import (
	"errors"
	"math"
)

// Magnets is a ring of surface magnets under a stator.
type Magnets struct {
	RemanenceT  float64 // Br at 20 °C, 0.05 to 1.6
	TempC       float64 // of the magnets, -60 to 250
	PerKelvin   float64 // change of Br with temperature, -0.004 to 0.004; 0 takes that of the grade
	ThicknessMM float64 // along the flux, 0.2 to 200
	Cover       float64 // arc over pole pitch, 0 to 1
	GapMM       float64 // magnet to tooth, 0.02 to 100
	Carter      float64 // Carter factor of the slots, 1 to 10; 0 is 1
	Leakage     float64 // σ, flux of the magnet over flux that crosses, 1 to 10; 0 is 1.1
	RecoilMu    float64 // relative recoil permeability, 1 to 5; 0 is [UsualRecoilMu]
	// Iron is the stator's iron as a load on the magnets; nil takes no mmf.
	Iron      Iron
	AreaRatio float64 // Ag/Am, area of the gap over that of the magnet, 0.05 to 20; 0 is 1
}

// UsualRecoilMu is the relative recoil permeability of neodymium and ferrite magnets (makers' sheets,
// from memory).
const UsualRecoilMu = 1.05

// UsualMagnetMM is the thickness of magnets, mm, taken for a winding's inductance where none is given: it
// counts as gap for the winding's field, and is most of it (common practice, no source).
const UsualMagnetMM = 3.0

// Uncertainty is the relative uncertainty of an estimate from magnets: grade, temperature, leakage and
// gap together (common practice, no source).
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
// with flat gaps. The first is the intersection of the magnet's straight line Bm = Br + μ0·μr·Hm with
// Bm·Am = σ·Bg·Ag and Hm·hm + Bg·kC·g/μ0 + F = 0, F being the iron's mmf; it is written above without
// F, with which B is found numerically. The second is the Fourier term of a block α of a pole wide.
// Source: Hanselman, Brushless Permanent Magnet Motor Design, and Pyrhönen et al. (from memory). An
// estimate, ±Uncertainty. The error wraps ErrMagnets and says which input is out of range.
func (m Magnets) GapTesla() (gap, fundamental float64, err error) {
	m.PerKelvin = nonzero(m.PerKelvin, PerKelvinOf(m.RemanenceT))
	m.Carter, m.Leakage = nonzero(m.Carter, 1), nonzero(m.Leakage, 1.1)
	m.RecoilMu, m.AreaRatio = nonzero(m.RecoilMu, UsualRecoilMu), nonzero(m.AreaRatio, 1)
	if err := within(ErrMagnets,
		bounds{"remanence, T", m.RemanenceT, 0.05, 1.6}, bounds{"magnet temperature, °C", m.TempC, -60, 250},
		bounds{"change of remanence a kelvin", m.PerKelvin, -0.004, 0.004}, bounds{"magnet thickness, mm", m.ThicknessMM, 0.2, 200},
		bounds{"cover", m.Cover, 0.05, 1}, bounds{"gap, mm", m.GapMM, 0.02, 100}, bounds{"Carter factor", m.Carter, 1, 10},
		bounds{"leakage factor", m.Leakage, 1, 10}, bounds{"recoil permeability", m.RecoilMu, 1, 5},
		bounds{"gap area over magnet area", m.AreaRatio, 0.05, 20}); err != nil {
		return 0, 0, err
	}
	br := m.RemanenceT * (1 + m.PerKelvin*(m.TempC-20))
	slope := m.Leakage*m.AreaRatio + m.RecoilMu*m.Carter*m.GapMM/m.ThicknessMM
	gap = br / slope
	if len(m.Iron) > 0 {
		gap = m.Iron.meet(br, slope, Mu0*m.RecoilMu/(m.ThicknessMM*1e-3))
	}
	return gap, 4 / math.Pi * gap * math.Sin(m.Cover*math.Pi/2), nil
}

// FluxPerPole is the flux per pole of the fundamental, Wb, in a bore and stack with a number of poles:
// GapTesla and FluxFromGapTesla, with their errors. ±Uncertainty.
func (m Magnets) FluxPerPole(boreMM, stackMM, poles float64) (wb float64, err error) {
	_, b1, err := m.GapTesla()
	if err != nil {
		return 0, err
	}
	return FluxFromGapTesla(b1, boreMM, stackMM, poles)
}

// nonzero is a value, or the fallback where none was given.
func nonzero(v, fallback float64) float64 {
	if v == 0 {
		return fallback
	}
	return v
}

// Carter is the factor by which slots lengthen the effective gap: for a slot pitch, mouth and gap in
// the same unit,
//
//	kC = t/(t − γ·g),  γ = (b/g)²/(5 + b/g)
//
// Source: Carter's factor in the approximate form of Pyrhönen et al. (from memory). It is within 0.02
// of a mouth of Carter's own γ·g, γ = (4/π)·(u·atan u − ln√(1+u²)), u = b/2g. 1 without a mouth; never
// below 1.
func Carter(pitch, mouth, gap float64) float64 {
	if !(mouth > 0 && gap > 0 && pitch > mouth) {
		return 1
	}
	r := mouth / gap
	return pitch / (pitch - r*r/(5+r)*gap)
}
