package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/field"
	"slotwright/winding/quantity"
)

// cutIn is the speed at which charging begins: where the peak between two leads reaches the
// battery at rest and the diodes in its way, √2·V_LL = V_rest + 2·V0 for a bridge (one diode
// at half wave; a doubler gives twice the peak). It is the peak that counts, because the
// first amps are the tips of the wave; 1.35·V_LL is the mean into a load that keeps the
// current flowing, and puts cut-in 5 % too high even against that. peakDC is volts for each
// rpm, with the field that the battery at rest drives where that feeds the rotor (fed.go).
func cutIn(dc *dcSide, peakDC quantity.Figure) quantity.Figure { return dc.needs().Over(peakDC) }

// acBehind is the volts rms between leads whose peak, through the rectifier, holds volts DC open.
func (d *dcSide) acBehind(volts float64) float64 {
	peak := d.openPeak(quantity.Of(1)).Value
	return (volts + d.rectifier.InLoop()*d.diodeVolts.Value) / math.Sqrt2 / peak
}

// openMean is the mean behind the rectifier over its peak, nothing on it but a meter or a coil:
// half wave has half of what one phase on a bridge has, a doubler its capacitors.
func (d *dcSide) openMean(phases int) float64 {
	switch d.rectifier {
	case charge.HalfWave:
		return field.BridgeMean(1) / 2
	case charge.Doubler:
		return 1
	}
	return field.BridgeMean(phases)
}

// shortedMean is the direct current into a load of no volts over the peak of a phase's current
// without inductance: the bridge's mean, and with one diode, or each of a doubler's two in its
// own half wave, the half of that.
func (d *dcSide) shortedMean(phases int) float64 {
	if d.rectifier != charge.Bridge {
		return field.BridgeMean(1) / 2
	}
	return field.BridgeMean(phases)
}

// needs is the peak behind the rectifier, over its diodes, at which current begins.
func (d *dcSide) needs() quantity.Figure {
	return d.held.With(d.diodeVolts, func(held, drop float64) float64 { return held + d.rectifier.InLoop()*drop })
}
