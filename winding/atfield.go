package winding

import (
	"slotwright/winding/field"
	"slotwright/winding/quantity"
)

// # Volts of a finished winding at another field current
//
// A wound rotor's volts are planned at the current that it will take at work. On the bench it is fed
// with what is at hand, so the plan is converted to the current of the reading:
//
//	V(I) = V(If)·Φ(I)/Φ(If)
//
// by the magnetisation curve, where readings at several currents gave one; else by the curve assumed
// through the only reading, with its uncertainty (package field). That uncertainty is taken at the
// reading's current; the plan's own, where its current differs from the one read, is not added.

// carriedVolts is planned volts at a field current, and the squared relative uncertainty of the
// conversion beside that of the plan; negative where the current is nearer to the one read than the
// plan's is. Without a current the volts are as planned.
func (f *flux) carriedVolts(planned quantity.Figure, amps quantity.Reading) (volts quantity.Figure, doubt float64) {
	now := f.fieldAmps
	switch {
	case !amps.Given() || !planned.Known() || now.Known() && now.Value == amps.Value:
		return planned, 0
	case !now.Known() || now.Value <= 0:
		return quantity.Missing("needs the field current that the old winding's volts were read at"), 0
	}
	read := now.Value
	if f.readAt > 0 {
		read = f.readAt
	}
	law := f.at
	if law == nil {
		assumed, err := field.Assumed(field.Reading{Amps: read, Flux: f.perTurn.Value})
		if err != nil {
			return quantity.Missing(err.Error()), 0
		}
		law = assumed.At
	}
	volts = planned.Times(law(amps.Value) / law(now.Value))
	if f.curve == nil {
		return volts, sq(field.AssumedDoubt(amps.Value, read)) - sq(field.AssumedDoubt(now.Value, read))
	}
	if f.curve.Outside(amps.Value) {
		volts.Origin = quantity.Guessed
	}
	return volts, 0
}
