package field

import (
	"errors"
	"fmt"
	"math"
)

// ErrFlux is wrapped by the errors about working out a flux.
var ErrFlux = errors.New("flux")

// bounds is one input with the range it may have.
type bounds struct {
	name             string
	value, low, high float64
}

// within refuses the first input outside its range. NaN and infinities are outside any.
func within(base error, list ...bounds) error {
	for _, b := range list {
		if !(b.value >= b.low && b.value <= b.high) {
			return fmt.Errorf("%w: %s: read %g, expected %g to %g", base, b.name, b.value, b.low, b.high)
		}
	}
	return nil
}

// PolePitchMM is the length of bore per pole, τp = π·D/2p, in mm. 0 when the bore or the number of
// poles is not above 0.
func PolePitchMM(boreMM, poles float64) float64 {
	if !(boreMM > 0 && poles > 0) {
		return 0
	}
	return math.Pi * boreMM / poles
}

// FluxFromGapTesla is the flux per pole, Wb, of a sinusoidal gap flux density of peak b1 (T, above 0 to
// 3):
//
//	Φ = (2/π)·B1·τp·L,  τp = π·D/2p
//
// The mean of a sine's half wave is 2/π of its peak. boreMM and stackMM are above 0 to 10 000, poles 1
// to 400 (the whole number 2p; an odd one is not refused here). Source: Fitzgerald, Kingsley and Umans,
// Electric Machinery, example 4.5, as solved in a public collection.
func FluxFromGapTesla(b1, boreMM, stackMM, poles float64) (wb float64, err error) {
	if err := within(ErrFlux, bounds{"peak gap flux density, T", b1, 1e-6, 3}, bounds{"bore, mm", boreMM, 0.1, 1e4},
		bounds{"stack, mm", stackMM, 0.1, 1e4}, bounds{"poles", poles, 1, 400}); err != nil {
		return 0, err
	}
	return 2 / math.Pi * b1 * PolePitchMM(boreMM, poles) * stackMM * 1e-6, nil
}

// FluxFromEMF is the flux per pole, Wb, behind a winding's open-circuit volts:
//
//	Φ = E/(√2·π·f·N·kw),  E = V/√3 in star, V in delta
//
// lineVolts is rms between two leads, above 0 to 1e6; hertz electrical, above 0 to 1e5; seriesTurns in
// series in a phase, above 0 to 1e6; kw the winding factor, above 0 to 1. The volts are those of the
// fundamental; a meter reading that includes the third harmonic of a delta or of a phase is high.
// Source: E = 4.44·f·N·kw·Φ, any machines text; 4.44 is √2·π rounded.
func FluxFromEMF(lineVolts, hertz, seriesTurns, kw float64, delta bool) (wb float64, err error) {
	if err := within(ErrFlux, bounds{"volts between leads", lineVolts, 1e-6, 1e6}, bounds{"frequency, Hz", hertz, 1e-3, 1e5},
		bounds{"turns in series", seriesTurns, 0.5, 1e6}, bounds{"winding factor", kw, 1e-3, 1}); err != nil {
		return 0, err
	}
	phase := lineVolts
	if !delta {
		phase /= math.Sqrt(3)
	}
	return phase / (math.Sqrt2 * math.Pi * hertz * seriesTurns * kw), nil
}
