package winding

import (
	"cmp"
	"math"
	"math/cmplx"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # The circulating current of a delta
//
// The third harmonics of the three phases are in phase, so in a delta they add up round the ring and
// drive a current that no lead shows:
//
//	I3 = E3/√(R² + (3ωL0)²)
//
// E3 over the working volts is B3/B1·kw3/kw1: a wave of a third of the length gives a third of the flux
// at three times the frequency. B3/B1 follows from the shape of the gap's flux density, which is
// assumed: under magnets a block as wide as their cover, else a trapezoid that is flat over two thirds
// of the pole (common practice, no source).
//
// L0 is the zero-sequence inductance, met by equal currents in all three phases: the waves of the gap
// that balanced currents leave out, plus the leakage (layout/gapwaves.go), in the proportion to the
// phase's own inductance that geometry gives. Without geometry the waves alone give it, and the current
// comes out high. It warms the copper and brakes the shaft even when nothing is charged, and both count
// it.

// flatRamp is half the part of the pole over which a trapezoid rises, in radians.
const flatRamp = math.Pi / 6

// thirdWave is B3/B1 of the gap's flux density.
func thirdWave(f *job.FieldSpec) float64 {
	if f.Kind == job.FieldMagnets {
		half := f.MagnetCover.Or(defaultCover) * math.Pi / 2
		return math.Abs(math.Sin(3*half) / (3 * math.Sin(half)))
	}
	return math.Sin(3*flatRamp) / (9 * math.Sin(flatRamp))
}

// thirdOfEMF is the third harmonic of a phase's EMF over its working volts, peak over peak: positive
// where it flattens the wave. Its sign depends on the shape of the flux and on the coils: seen from the
// zero crossing the third harmonic of a flat wave is in phase; coils shift it by the angle of their
// third-harmonic phasors less three times that of the working wave. ok is false without a layout.
func thirdOfEMF(f *job.FieldSpec, c *coilSet) (part float64, ok bool) {
	if c.plan == nil || c.kw[0] <= 0 {
		return 0, false
	}
	one, three := c.plan.PhasePhasor(0, 0, 1), c.plan.PhasePhasor(0, 0, 3)
	turned := real(three * cmplx.Conj(one*one*one))
	return math.Copysign(thirdWave(f)*c.kw[1]/c.kw[0], turned*thirdWaveSign(f)), true
}

// thirdWaveSign is -1 where the flux density is peaked: magnets that cover less than two thirds of the
// pole.
func thirdWaveSign(f *job.FieldSpec) float64 {
	if f.Kind == job.FieldMagnets && math.Sin(3*f.MagnetCover.Or(defaultCover)*math.Pi/2) > 0 {
		return -1
	}
	return 1
}

// thirdWaveText says what is assumed.
func thirdWaveText(f *job.FieldSpec) string {
	if f.Kind == job.FieldMagnets {
		return "the gap's flux density taken as a block as wide as the magnets"
	}
	return "the gap's flux density taken as a trapezoid, flat over two thirds of the pole"
}

// ring is the loop of a delta for the third harmonic; zero where there is none.
type ring struct {
	volts   float64 // third harmonic of a phase over its working volts
	henries float64 // L0
}

// ringOf is that of a winding with so many henries a phase.
func (b *inductances) ringOf(w *candidate, henries float64) ring {
	c := &w.coils
	if b.machine.phases != 3 || w.trial.Connection != layout.Delta || c.plan == nil || c.kw[0] <= 0 {
		return ring{}
	}
	share, _ := b.alikeShare(w)
	return ring{volts: thirdWave(b.rotor) * c.kw[1] / c.kw[0], henries: share * henries}
}

// alikeShare is the zero-sequence inductance over that for balanced currents; ok is false without a
// layout.
func (b *inductances) alikeShare(w *candidate) (share float64, ok bool) {
	c := &w.coils
	if c.plan == nil || c.waves.All <= 0 {
		return 0, false
	}
	if p := b.geometry(w); p.working > 0 {
		ends := p.leakage - p.slots
		return (p.gap(c.waves.Alike) + p.slots*c.waves.AlikeSlots + ends) / p.phase(c.waves.All), true
	}
	return c.waves.Alike / c.waves.All, true
}

// amps is I3, rms, for the peak of a phase's working volts, a frequency in Hz and the ohms.
func (r *ring) amps(peak, hertz, ohms float64) float64 {
	z := math.Hypot(ohms, 3*2*math.Pi*hertz*r.henries)
	if r.volts <= 0 || z <= 0 {
		return 0
	}
	return r.volts * peak / math.Sqrt2 / z
}

// third is the circulating current in the usual condition.
func (r *charger) third(t *TrialOutcome) quantity.Figure {
	at := t.in(usual)
	switch {
	case !r.delta || r.phases != 3:
		return quantity.Missing("only a delta has a ring for it")
	case at == nil:
		return quantity.Missing("needs the usual speed")
	}
	return quantity.Of(r.ring.amps(r.peak*cmp.Or(at.flux, 1)*at.RPM, r.hertz*at.RPM, r.ohms20*r.factor(20, at.WindingC)), quantity.Guessed)
}
