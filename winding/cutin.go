package winding

import "slotwright/winding/quantity"

// cutIn is the speed at which charging begins: where the peak between two leads reaches the
// battery at rest and the diodes in its way, √2·V_LL = V_rest + 2·V0 for a bridge (one diode
// at half wave; a doubler gives twice the peak). It is the peak that counts, because the
// first amps are the tips of the wave; 1.35·V_LL is the mean into a load that keeps the
// current flowing, and puts cut-in 5 % too high even against that. peakDC is volts for each
// rpm.
func cutIn(dc *dcSide, peakDC quantity.Figure) quantity.Figure { return dc.needs().Over(peakDC) }

// needs is the peak behind the rectifier, over its diodes, at which current begins.
func (d *dcSide) needs() quantity.Figure {
	return d.held.With(d.diodeVolts, func(held, drop float64) float64 { return held + d.rectifier.InLoop()*drop })
}
