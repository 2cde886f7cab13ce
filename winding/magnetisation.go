package winding

import (
	"fmt"

	"slotwright/winding/field"
	"slotwright/winding/quantity"
)

// defaultMagnetC and defaultCover are guesses where nothing was said; common practice,
// no source. A rotor coil at work is taken as warm.
const (
	defaultMagnetC = 40.0
	defaultCover   = 0.80
	defaultLeakage = 1.10
	rotorCoilC     = 80.0
)

// rotor is the wound rotor's circuit; ok is false when its ohms are not known.
func (b *Bench) rotor() (field.Wound, bool) {
	f := b.job.Field
	return field.Wound{Ohms20: f.Ohms.Value, TempC: rotorCoilC, BrushVolts: f.Brush.Or(defaultFieldBrushV)}, f.Ohms.Given() && f.Kind == "wound"
}

// fieldCurrent is what the rotor takes when charging: as given, else what the supply
// drives through the warm coil.
func (b *Bench) fieldCurrent() quantity.Figure {
	f := b.job.Field
	if f.Amps.Given() {
		return f.Amps.Figure("")
	}
	w, ok := b.rotor()
	if !ok {
		return quantity.Missing("needs the field current, or the rotor coil's ohms")
	}
	return quantity.Of(w.Amps(f.Volts.Or(b.dc.rest.Value)), quantity.Guessed).Because("the supply through the warm coil")
}

// fluxFromCurve is the flux from spin-up readings at several field currents: the
// magnetisation curve through them, at the current the rotor will have.
func (b *Bench) fluxFromCurve(points []spinPoint) (fluxSource, bool) {
	var readings []field.Reading
	origin := b.job.Old.Turns.Origin
	fastest := 0.0
	for _, p := range points {
		fastest = max(fastest, p.weight)
	}
	for _, p := range points {
		if !p.known {
			continue
		}
		readings = append(readings, field.Reading{Amps: p.amps, Flux: p.perTurn, Weight: max(1e-6, p.weight/fastest)})
		if p.origin == quantity.Guessed {
			origin = quantity.Guessed
		}
	}
	if len(field.Currents(readings)) < 2 {
		return fluxSource{}, false
	}
	curve, err := field.Fit(readings)
	if err != nil {
		return fluxSource{}, false
	}
	amps := b.fieldCurrent()
	if !amps.Known() {
		amps = quantity.Of(curve.High, quantity.Guessed).Because("the highest one read")
	}
	return fluxSource{
		perTurn: quantity.Of(curve.At(amps.Value), origin), relative: b.old.relative, fieldAmps: amps,
		from:   fmt.Sprintf("the magnetisation curve through %d spin-up readings", len(readings)),
		spread: curve.Error, extrapolated: curve.Outside(amps.Value), at: curve.At, curve: &curve,
	}, true
}

// magnets is the flux per pole, Wb, that the magnets given make: an estimate, ±15 %.
func (b *Bench) magnets() (quantity.Figure, bool) {
	f, m := b.job.Field, b.job.Machine
	gap := f.MagnetGapMM
	if !gap.Given() {
		gap = m.AirGapMM
	}
	if !f.RemanenceTesla.Given() || !f.MagnetMM.Given() || !gap.Given() || !m.BoreMM.Given() || !m.StackMM.Given() || !m.Poles.Given() {
		return quantity.Missing("needs the magnets"), false
	}
	wb, err := field.Magnets{
		RemanenceT: f.RemanenceTesla.Value, TempC: f.MagnetC.Or(defaultMagnetC), ThicknessMM: f.MagnetMM.Value,
		Cover: f.MagnetCover.Or(defaultCover), GapMM: gap.Value, Carter: b.carter(gap.Value), Leakage: f.LeakageFactor.Or(defaultLeakage),
	}.FluxPerPole(m.BoreMM.Value, m.StackMM.Value, m.Poles.Value)
	if err != nil {
		return quantity.Missing(err.Error()), false
	}
	flux := quantity.Of(wb, quantity.Guessed)
	flux.PlusMinus = wb * field.Uncertainty
	return flux, true
}

// fluxFromMagnets is the flux of a magnet rotor, where nothing better is known.
func (b *Bench) fluxFromMagnets() (fluxSource, bool) {
	if b.job.Field.Kind != "magnets" {
		return fluxSource{}, false
	}
	flux, ok := b.magnets()
	if !ok {
		return fluxSource{}, false
	}
	s := b.fluxOf(flux, "the magnets' grade and size, an estimate ±15 %")
	s.fieldAmps = quantity.Missing("magnets need none")
	return s, true
}
