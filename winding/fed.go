package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A rotor fed from the battery that it charges
//
// Where neither a field current nor a separate supply was typed, the battery drives the field with (V −
// brushes)/R: less at rest than when taking charge, more when it is nearly full. So each figure at
// another voltage has the field of that voltage: charging begins with the field of the battery at rest,
// which is what a meter sees then; an empty battery is charged with less flux than a full one. The flux
// follows the field by the magnetisation curve that was read, else by the one assumed through the
// reading (package field); iron loss goes with the flux squared, as where a regulator lowers it. A
// regulator's full field is that of the same voltage.
//
// Where a current or a supply was typed, nothing follows; nor where the flux is for another field
// current than the battery drives, or where the coil's ohms are not known. The battery's own ohms,
// which raise its post voltage while it charges, are left out, as they are in the field current shown.

// feeding is how the field follows the volts of the battery that feeds it; nil where it does not.
type feeding struct {
	volts, amps float64 // at which the flux in use is taken
	coil        field.Wound
	law         func(amps float64) float64 // flux
	assumed     bool                       // the law is assumed, so what follows from it is uncertain
}

// newFeeding is for a rotor whose flux is that of the current e.amps.
func newFeeding(f *job.FieldSpec, dc *dcSide, now *flux, e *excitation) *feeding {
	drives := e.driven.Known() && e.amps.Known() && e.driven.Value > 0 && math.Abs(e.amps.Value/e.driven.Value-1) <= fieldApart
	if !e.wound || f.Amps.Given() || f.Volts.Given() || !f.Ohms.Given() || !drives || !dc.rest.Known() || !now.fieldAmps.Known() {
		return nil
	}
	law := now.at
	if law == nil {
		assumed, err := field.Assumed(field.Reading{Amps: e.amps.Value, Flux: now.perTurn.Value})
		if err != nil {
			return nil
		}
		law = assumed.At
	}
	return &feeding{volts: dc.works.Value, amps: e.amps.Value, coil: e.coil, law: law, assumed: now.at == nil}
}

// at is the field current, A, that the battery drives at some volts, and the flux over that in use.
func (f *feeding) at(volts float64) (amps, flux float64) {
	amps = f.amps * f.coil.Amps(volts) / f.coil.Amps(f.volts)
	return amps, f.law(amps) / f.law(f.amps)
}

// fluxAt is the flux with the battery at some volts over that in use: a guess where the curve is
// assumed.
func (f *feeding) fluxAt(volts quantity.Figure) quantity.Figure {
	if f == nil || !volts.Known() {
		return quantity.Of(1)
	}
	_, part := f.at(volts.Value)
	if f.assumed {
		return quantity.Of(part, quantity.Guessed)
	}
	return quantity.Of(part)
}

// fed makes r what it is with the battery at other volts.
func (r *charger) fed(volts float64) {
	f := r.feed
	if f == nil || volts == r.load.Volts {
		return
	}
	_, before := f.at(r.load.Volts)
	amps, flux := f.at(volts)
	flux /= before
	r.peak, r.openPeak, r.field, r.drag = r.peak*flux, r.openPeak*flux, f.coil.Watts(amps), r.drag.atFlux(flux)
	r.holder = r.holder.under(amps)
}

// under is the regulator with another full field current.
func (g *regulator) under(amps float64) *regulator {
	if g == nil || !g.wound || !(g.field > 0) {
		return g
	}
	part := amps / g.field
	full := g.flux(part)
	if !(full > 0) {
		return g
	}
	return &regulator{amps: g.amps, wound: true, field: amps,
		flux:  func(share float64) float64 { return g.flux(share*part) / full },
		watts: func(share float64) float64 { return g.watts(share * part) },
	}
}
