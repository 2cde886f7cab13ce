package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// volts is what the winding gives with nothing connected, by E = √2·π·f·N·kw·Φ (rms,
// per phase; the 4.44·f·N·kw·Φ of the handbooks), and where charging begins.
//
// Cut-in is the speed at which the peak between two leads reaches the battery at rest
// and two diodes: √2·V_LL = V_rest + 2·V0. It is the peak that counts, because the
// first amps are the tips of the wave; 1.35·V_LL is the mean into a load that keeps
// the current flowing, and puts cut-in 5 % too high even against that.
func (b *Bench) volts(t job.Trial, c coilSet) Volts {
	var v Volts
	v.PhasePerRPM = b.phasePerRPM(c)
	v.LinePerRPM = v.PhasePerRPM.Times(b.linePerPhase(t.Connection))
	v.LinePer1000RPM = v.LinePerRPM.Times(1000)
	v.PeakDCPerRPM = v.LinePerRPM.Times(math.Sqrt2)
	v.LineAtTest = v.LinePerRPM.With(b.speeds.test, mul)
	v.OpenAtTopVolts = v.PeakDCPerRPM.With(b.speeds.top, mul)
	need := b.dc.rest.With(b.dc.diodeVolts, func(rest, drop float64) float64 { return rest + 2*drop })
	v.CutInRPM = need.Over(v.PeakDCPerRPM)
	return v
}

func mul(a, b float64) float64 { return a * b }

// phasePerRPM is volts rms of a phase for each rpm.
func (b *Bench) phasePerRPM(c coilSet) quantity.Figure {
	switch {
	case c.effective > 0 && c.relative == b.flux.relative:
		return b.flux.perTurn.Times(c.effective)
	case c.plan == nil && !c.relative:
		return quantity.Missing(c.why)
	case c.effective <= 0:
		return quantity.Missing("needs the turns")
	default:
		return quantity.Missing("needs the number of slots and poles")
	}
}

// linePerPhase is volts between leads over volts of a phase: star √3, delta 1.
func (b *Bench) linePerPhase(conn layout.Connection) float64 {
	if b.phases == 1 || conn == layout.Delta {
		return 1
	}
	return math.Sqrt(3)
}
