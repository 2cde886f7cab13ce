package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// Volts is what the winding gives with nothing connected.
type Volts struct {
	PhasePerRPM     quantity.Figure `json:"volts_phase_rms_per_rpm"`
	LinePerRPM      quantity.Figure `json:"volts_line_rms_per_rpm"`
	LinePer1000RPM  quantity.Figure `json:"volts_line_rms_per_1000rpm"`
	PeakDCPerRPM    quantity.Figure `json:"volts_dc_peak_per_rpm"`
	LineAtTest      quantity.Figure `json:"volts_line_rms_test"`
	CutInRPM        quantity.Figure `json:"cut_in_rpm"`
	OpenAtTopVolts  quantity.Figure `json:"volts_dc_open_top"`
	OpenAtGaleVolts quantity.Figure `json:"volts_dc_open_gale"`
	// restFlux is the flux with the battery at rest over that in use: 1 except for a rotor that it
	// feeds.
	restFlux float64
}

// volts is what the winding gives with nothing connected, by E = √2·π·f·N·kw·Φ (rms, per phase; the
// 4.44·f·N·kw·Φ of the handbooks), and where charging begins (cutin.go).
func volts(w *candidate, m *machine, f *flux, dc *dcSide, feed *feeding, at *speeds) Volts {
	var v Volts
	v.PhasePerRPM = f.phasePerRPM(&w.coils)
	v.LinePerRPM = v.PhasePerRPM.Times(m.linePerPhase(w.trial.Connection))
	v.LinePer1000RPM = v.LinePerRPM.Times(1000)
	v.PeakDCPerRPM = dc.openPeak(v.LinePerRPM.Times(math.Sqrt2))
	v.LineAtTest = v.LinePerRPM.With(at.test, mul)
	v.OpenAtTopVolts = v.PeakDCPerRPM.With(at.top, mul)
	rest := feed.fluxAt(dc.held)
	v.restFlux = rest.Value
	v.CutInRPM = cutIn(dc, v.PeakDCPerRPM.With(rest, mul))
	return v
}

func mul(a, b float64) float64 { return a * b }

// phasePerRPM is volts rms of a phase per rpm.
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
