package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// excitation is what the rotor takes: the current that the flux is for, and its watts.
// Magnets take nothing.
type excitation struct {
	wound bool
	amps  quantity.Figure
	watts quantity.Figure
	coil  field.Wound
	// driven is the current that the supply drives through the warm coil.
	driven quantity.Figure
	// unmatched says why flux and current may not belong together.
	unmatched string
}

// fieldApart is how far two field currents may be apart and still count as one.
const fieldApart = 0.03

// newExcitation goes by the current that the flux is for: flux, short circuit and watts
// must all speak of the same one.
func newExcitation(f *job.FieldSpec, dc *dcSide, now *flux) excitation {
	e := excitation{wound: f.Kind == "wound", driven: supplyCurrent(f, dc)}
	if !e.wound {
		no := quantity.Missing("only for a wound rotor")
		e.amps, e.watts = no, no
		return e
	}
	coil, ok := rotorCoil(f)
	e.coil = coil
	e.amps = now.fieldAmps
	wanted := fieldCurrent(f, dc)
	if !e.amps.Known() {
		e.amps = wanted
	}
	if now.at == nil && wanted.Known() && e.amps.Known() && e.amps.Value > 0 && math.Abs(wanted.Value/e.amps.Value-1) > fieldApart {
		e.unmatched = "the flux was read at another field current than the rotor will take"
	}
	switch {
	case !ok:
		e.watts = quantity.Missing("needs the rotor coil's ohms")
	default:
		e.watts = e.amps.Then(coil.Watts)
	}
	return e
}

// takes is the watts, 0 where there are none or none are known.
func (e *excitation) takes() float64 {
	if e.watts.Known() {
		return e.watts.Value
	}
	return 0
}
