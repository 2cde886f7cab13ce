package winding

import (
	"fmt"
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// excitation is what the rotor takes: the current that the flux is for, and its watts. Magnets take
// nothing.
type excitation struct {
	wound bool
	amps  quantity.Figure
	watts quantity.Figure
	coil  field.Wound
	// driven is the current that the supply drives through the warm coil.
	driven quantity.Figure
	// guessed is set where the coil's ohms were not given, and the current read is taken as what the
	// full supply drives.
	guessed bool
	// unmatched says why flux and current may not belong together.
	unmatched string
	// readAt is the only field current read, where the flux was scaled from it.
	readAt float64
	// feed is how the field follows the battery's volts.
	feed *feeding
}

// fieldApart is how far two field currents may differ, relative, and still count as one.
const fieldApart = 0.03

// overfed reports whether the rotor's supply was not given, and the battery drives more through it than
// it was read with.
func (e *excitation) overfed(f *job.FieldSpec) bool {
	return !f.Amps.Given() && !f.Volts.Given() && e.readAt > 0 && e.amps.Value > e.readAt*(1+fieldApart)
}

// newExcitation takes the current that the flux is for: flux, short circuit and watts must all be at
// the same one.
func newExcitation(f *job.FieldSpec, dc *dcSide, now *flux) excitation {
	e := excitation{wound: f.Kind == job.FieldWound, driven: supplyCurrent(f, dc), readAt: now.readAt}
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
	switch {
	case now.readAt > 0:
		e.unmatched = fmt.Sprintf("the flux was read at %.3g A of field and the rotor will take %.3g A: what it is there is estimated for iron half saturated, ±%.0f %%",
			now.readAt, now.fieldAmps.Value, 100*field.AssumedDoubt(now.fieldAmps.Value, now.readAt))
	case now.at == nil && wanted.Known() && e.amps.Known() && e.amps.Value > 0 && math.Abs(wanted.Value/e.amps.Value-1) > fieldApart:
		e.unmatched = fmt.Sprintf("the flux is for %.3g A of field, the rotor will take %.3g A: flux, short circuit and watts are those of the reading", e.amps.Value, wanted.Value)
	}
	if !ok {
		e.coil, e.guessed = coilDrawing(e.amps, f.Volts.Or(dc.works.Value), coil)
	}
	if !ok && !e.guessed {
		e.watts = quantity.Missing("needs the field current, or the rotor coil's ohms")
		return e
	}
	e.watts = e.amps.Then(e.coil.Watts)
	e.feed = newFeeding(f, dc, now, &e)
	if e.guessed {
		e.watts = e.watts.Because("all of the supply at the field current read, while the coil's ohms are not given")
		e.watts.Origin = quantity.Guessed
	}
	return e
}

// coilDrawing is the coil that draws a current from the full supply when warm; ok is false where there
// is none. It takes as much as any coil of that current can, and a slow rotor is mostly run at full
// supply.
func coilDrawing(amps quantity.Figure, supply float64, coil field.Wound) (field.Wound, bool) {
	if !amps.Known() || !(amps.Value > 0) || !(supply > coil.BrushVolts) {
		return coil, false
	}
	coil.Ohms20 = 1
	coil.Ohms20 = (supply - coil.BrushVolts) / amps.Value / coil.Ohms()
	return coil, true
}

// takes is the watts; 0 where there are none or none are known.
func (e *excitation) takes() float64 {
	if e.watts.Known() {
		return e.watts.Value
	}
	return 0
}
