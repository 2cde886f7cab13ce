package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/field"
	"slotwright/winding/quantity"
)

// cutIn is the speed at which charging begins: where the peak between two leads reaches the battery at
// rest plus the diodes in its way, √2·V_LL = V_rest + 2·V0 for a bridge (one diode for half wave; a
// doubler gives twice the peak). The peak counts because the first amps are the tips of the wave;
// 1.35·V_LL is the mean into a load that keeps the current flowing, and puts cut-in 5 % too high.
// peakDC is volts per rpm, with the field that the battery at rest drives where that feeds the rotor
// (fed.go).
func cutIn(dc *dcSide, peakDC quantity.Figure) quantity.Figure { return dc.needs().Over(peakDC) }

// acBehind is the volts rms between leads whose peak, rectified, is an open-circuit DC voltage.
func (d *dcSide) acBehind(volts float64) float64 {
	peak := d.openPeak(quantity.Of(1)).Value
	return (volts + d.rectifier.InLoop()*d.diodeVolts.Value) / math.Sqrt2 / peak
}

// openMean is the mean behind the rectifier over its peak, with nothing on it but a meter or a coil:
// half wave has half of what one phase on a bridge has; a doubler has its capacitors.
func (d *dcSide) openMean(phases int) float64 {
	switch d.rectifier {
	case charge.HalfWave:
		return field.BridgeMean(1) / 2
	case charge.Doubler:
		return 1
	}
	return field.BridgeMean(phases)
}

// shortedMean is the direct current into a short circuit over the peak of a phase's current, without
// inductance: the bridge's mean, or half of that with one diode, or with each of a doubler's two in its
// own half wave.
func (d *dcSide) shortedMean(phases int) float64 {
	if d.rectifier != charge.Bridge {
		return field.BridgeMean(1) / 2
	}
	return field.BridgeMean(phases)
}

// needs is the open-circuit peak, over battery and diodes, at which current begins.
func (d *dcSide) needs() quantity.Figure {
	return d.held.With(d.diodeVolts, func(held, drop float64) float64 { return held + d.rectifier.InLoop()*drop })
}
