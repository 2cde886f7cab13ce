package field

import (
	"math"
	"math/cmplx"
)

// # Coils laid flat between two rotors
//
// A coil of an ironless axial stator has a hole between its two sides and turns of every width from the
// hole's w to w + 2s, s being the width of a side. On the circle through the magnets' middles, of
// diameter D, a turn of width w links the fraction sin(h·w/D) of what a turn of half a wavelength links
// of a field wave with h pole pairs, and the coil the mean over its turns:
//
//	S(h) = D/(2h·s)·[cos(h·w/D) − cos(h·(w + 2s)/D)]
//
// The coils' own field crosses from one rotor's iron to the other's, G apart, with magnets counted as
// air over their recoil permeability. A current sheet half way between two iron planes, a wave of wave
// number k = 2h/D, sees at its own height
//
//	B = μ0·K/2·coth(k·G/2)
//
// (Laplace's equation with the field normal to both planes; for long waves it is the uniform gap's
// μ0·K/(k·G)). So each wave of the coil list makes x·coth(x) times what the uniform gap of G would, x =
// h·G/D, and a phase of m with balanced currents has
//
//	L = Σ 2μ0·D·L/(π·G)·(T·S(h)/h)²·x·coth(x)·(|A(h)|² + |B(h)|²)/(2m)
//
// A and B being the sums over all coils, as wound, of their position phasors for waves that run with
// the currents and against them. Terms fall with h³ and the sum is cut at 40 times slots or pole pairs:
// 1 part in 1000. The coils' thickness is neglected, which reads some per cent high; the coils' ends
// beyond the magnets are not included.

// Flat is a stator of flat coils.
type Flat struct {
	// CircleMM is D, the circle through the middles of the magnets; LengthMM the radial length of hole
	// and magnets; HoleMM and SideMM the widths of a coil's hole and of one of its sides along the
	// circle. All above 0.
	CircleMM, LengthMM, HoleMM, SideMM float64
	// IronGapMM is G, from rotor iron to rotor iron, magnets over their recoil permeability.
	IronGapMM float64
}

// FlatCoil is a coil's position, as a fraction of a revolution, its winding sense, and the electrical
// angle in radians by which its phase lags.
type FlatCoil struct {
	Place float64
	Sense int
	Lag   float64
}

// Window is S(h), the linkage of a coil with a wave of h pole pairs over that of turns of half a
// wavelength; with its sign.
func (f Flat) Window(h int) float64 {
	a := float64(h) / f.CircleMM
	return (math.Cos(a*f.HoleMM) - math.Cos(a*(f.HoleMM+2*f.SideMM))) / (2 * a * f.SideMM)
}

// Henries is the inductance of a phase with balanced currents in all of them, without the ends: turns
// is turns per coil over circuits, phases 1 to 3.
func (f Flat) Henries(coils []FlatCoil, turns float64, phases, polePairs int) float64 {
	sum := 0.0
	for h := 1; h <= 40*max(len(coils), polePairs); h++ {
		var with, against complex128
		for _, c := range coils {
			at := 2 * math.Pi * math.Mod(float64(h)*c.Place, 1)
			with += complex(float64(c.Sense), 0) * cmplx.Rect(1, at-c.Lag)
			against += complex(float64(c.Sense), 0) * cmplx.Rect(1, at+c.Lag)
		}
		x := float64(h) * f.IronGapMM / f.CircleMM
		waves := real(with*cmplx.Conj(with)+against*cmplx.Conj(against)) / (2 * float64(phases))
		part := turns * f.Window(h) / float64(h)
		sum += part * part * x / math.Tanh(x) * waves
	}
	return 2 * Mu0 * f.CircleMM * f.LengthMM * 1e-3 / (math.Pi * f.IronGapMM) * sum
}
