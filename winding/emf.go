package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// volts is what the winding gives with nothing connected, by E = √2·π·f·N·kw·Φ (rms,
// per phase; the 4.44·f·N·kw·Φ of the handbooks), and where charging begins.
//
// Cut-in is the speed at which the peak between two leads reaches the battery at rest
// and two diodes: √2·V_LL = V_rest + 2·V0 (one at half wave; a doubler gives twice the
// peak). It is the peak that counts, because the
// first amps are the tips of the wave; 1.35·V_LL is the mean into a load that keeps
// the current flowing, and puts cut-in 5 % too high even against that.
func volts(w *candidate, m *machine, f *flux, dc *dcSide, at *speeds) Volts {
	var v Volts
	v.PhasePerRPM = f.phasePerRPM(&w.coils)
	v.LinePerRPM = v.PhasePerRPM.Times(m.linePerPhase(w.trial.Connection))
	v.LinePer1000RPM = v.LinePerRPM.Times(1000)
	v.PeakDCPerRPM = dc.openPeak(v.LinePerRPM.Times(math.Sqrt2))
	v.LineAtTest = v.LinePerRPM.With(at.test, mul)
	v.OpenAtTopVolts = v.PeakDCPerRPM.With(at.top, mul)
	v.CutInRPM = dc.needs().Over(v.PeakDCPerRPM)
	return v
}

func mul(a, b float64) float64 { return a * b }

// phasePerRPM is volts rms of a phase for each rpm.
func (f *flux) phasePerRPM(c *coilSet) quantity.Figure {
	switch {
	case c.effective > 0 && c.relative == f.relative:
		return f.perTurn.Times(c.effective)
	case c.plan == nil && !c.relative:
		return quantity.Missing(c.why)
	case c.effective <= 0:
		return quantity.Missing("needs the turns")
	default:
		return quantity.Missing("needs the number of slots and poles")
	}
}
