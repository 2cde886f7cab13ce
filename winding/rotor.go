package winding

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Where nothing was given.
var (
	defaultMagnetC = job.DefaultOf("field.magnet_at")
	defaultCover   = job.DefaultOf("field.cover")
	defaultLeakage = job.DefaultOf("field.leakage")
	defaultCoilC   = job.DefaultOf("field.coil_at")
)

// rotorCoil is the wound rotor's circuit; ok is false when its ohms are not known.
func rotorCoil(f *job.FieldSpec) (field.Wound, bool) {
	return field.Wound{Ohms20: f.Ohms.Value, TempC: f.CoilC.Or(defaultCoilC), BrushVolts: f.Brush.Or(defaultFieldBrushV)}, f.Ohms.Given() && f.Kind == job.FieldWound
}

// fieldCurrent is what the rotor takes when charging: as given, else what the supply drives through the
// warm coil.
func fieldCurrent(f *job.FieldSpec, dc *dcSide) quantity.Figure {
	if f.Amps.Given() {
		return f.Amps.Figure("")
	}
	return supplyCurrent(f, dc)
}

// supplyCurrent is what the supply drives through the warm coil; where no supply is given it is the
// battery under charge, or the bus.
func supplyCurrent(f *job.FieldSpec, dc *dcSide) quantity.Figure {
	w, ok := rotorCoil(f)
	if !ok {
		return quantity.Missing("needs the field current, or the rotor coil's ohms")
	}
	if !f.Volts.Given() && dc.works.Value <= 0 {
		return quantity.Missing("needs the field current, or the field's supply: the load holds no voltage")
	}
	return quantity.Of(w.Amps(f.Volts.Or(dc.works.Value)), quantity.Guessed).Because("the supply through the warm coil")
}

// curve is the flux from readings at several field currents: the magnetisation curve through them, at
// the current the rotor will have.
func (r *fluxRoutes) curve(points []spinPoint, kind string, origin quantity.Origin) (flux, bool) {
	var readings []field.Reading
	fastest := 0.0
	for _, p := range points {
		fastest = max(fastest, p.weight)
	}
	for _, p := range points {
		if !p.known {
			continue
		}
		readings = append(readings, field.Reading{Amps: p.amps, Flux: p.perTurn, Weight: max(1e-6, p.weight/fastest)})
	}
	if len(field.Currents(readings)) < 2 {
		return flux{}, false
	}
	curve := r.before.through(readings)
	if curve == nil {
		fitted, err := field.Fit(readings)
		if err != nil {
			return flux{}, false
		}
		curve = &fitted
	}
	amps := fieldCurrent(r.rotor, r.dc)
	if !amps.Known() {
		amps = quantity.Of(curve.High, quantity.Guessed).Because("the highest one read")
	}
	beyond := curve.Outside(amps.Value)
	if beyond {
		origin = quantity.Guessed
	}
	perTurn := quantity.Of(curve.At(amps.Value), origin)
	perTurn.PlusMinus = curve.OutsideDoubt(amps.Value)
	return flux{
		perTurn: perTurn, reach: perTurn.PlusMinus, fieldAmps: amps,
		from:   fmt.Sprintf("the magnetisation curve through %d %s", len(readings), strings.TrimSuffix(kind, " of the old winding")),
		spread: curve.Error, extrapolated: beyond, at: curve.At, curve: curve, read: readings,
	}, true
}

// through is its curve, if that goes through just these readings; nil for any other, or where there is
// no flux.
func (f *flux) through(readings []field.Reading) *field.Curve {
	if f == nil || !slices.Equal(f.read, readings) {
		return nil
	}
	return f.curve
}

// carried is a flux read at one field current only, converted to the current that the rotor will have
// by an assumed curve, with its uncertainty (package field).
func (r *fluxRoutes) carried(f flux) flux {
	read, wanted := f.fieldAmps, fieldCurrent(r.rotor, r.dc)
	if !read.Known() || !wanted.Known() || !(wanted.Value > 0) || math.Abs(wanted.Value/read.Value-1) <= fieldApart {
		return f
	}
	curve, err := field.Assumed(field.Reading{Amps: read.Value, Flux: f.perTurn.Value})
	if err != nil {
		return f
	}
	f.perTurn.Value, f.perTurn.Origin = curve.At(wanted.Value), quantity.Guessed
	f.perTurn.PlusMinus = f.perTurn.Value * field.AssumedDoubt(wanted.Value, read.Value)
	f.fieldAmps, f.at, f.readAt = wanted, curve.At, read.Value
	f.from += fmt.Sprintf(", carried from %.3g A of field to %.3g A", read.Value, wanted.Value)
	return f
}

// magnetFlux is the flux per pole, Wb, that the magnets given make: an estimate, ±15 %.
func magnetFlux(f *job.FieldSpec, m *machine, mouth quantity.Reading, iron field.Iron) (quantity.Figure, bool) {
	gap := f.MagnetGapMM
	if !gap.Given() {
		gap = m.AirGapMM
	}
	if !f.RemanenceTesla.Given() || !f.MagnetMM.Given() || !gap.Given() || !m.BoreMM.Given() || !m.StackMM.Given() || !m.Poles.Given() {
		return quantity.Missing("needs the magnets"), false
	}
	count := magnetCount{f.Magnets.Whole(), m.Poles.Whole()}
	wb, err := field.Magnets{
		RemanenceT: f.RemanenceTesla.Value, TempC: f.MagnetC.Or(defaultMagnetC), ThicknessMM: f.MagnetMM.Value * count.magnetPerPole(),
		Cover: f.MagnetCover.Or(defaultCover), GapMM: gap.Value, Carter: m.carter(mouth, gap.Value), Leakage: f.LeakageFactor.Or(defaultLeakage), Iron: iron,
	}.FluxPerPole(m.BoreMM.Value, m.StackMM.Value, m.Poles.Value)
	if err != nil {
		return quantity.Missing(err.Error()), false
	}
	flux := quantity.Of(wb, quantity.Guessed)
	flux.PlusMinus = wb * field.Uncertainty
	return flux, true
}

// magnets is the flux of a magnet rotor, where nothing better is known.
func (r *fluxRoutes) magnets() (flux, bool) {
	if r.rotor.Kind != job.FieldMagnets {
		return flux{}, false
	}
	wb, ok := r.ofMagnets()
	if !ok {
		return flux{}, false
	}
	s := r.ofWebers(wb, "the magnets' grade and size, an estimate ±15 %")
	s.fieldAmps = quantity.Missing("magnets need none")
	return s, true
}

// magnetsAgainstWound compares rotors on one stator: the flux that the given magnets would make over
// that of the wound rotor.
func magnetsAgainstWound(f *job.FieldSpec, m *machine, flux func() (quantity.Figure, bool), now *flux) quantity.Figure {
	if f.Kind != job.FieldWound {
		return quantity.Missing("only where magnets are to take a wound rotor's place")
	}
	magnets, ok := flux()
	if !ok {
		return quantity.Missing("needs the magnets' remanence and thickness, the gap, the bore and the stack")
	}
	return magnets.Over(now.webers(m.Poles))
}
