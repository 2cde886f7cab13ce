package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// flux is what makes the volts: rms volts of a phase per rpm and per effective turn N·kw. Everything
// that needs the flux uses this one number, so a reading of the old winding converts to any other
// without the flux itself being known, and without slots and poles as long as the coils stay of the
// same kind.
type flux struct {
	perTurn   quantity.Figure
	relative  bool // the effective turns are relative ones, see coilSet
	from      string
	fieldAmps quantity.Figure
	// spread is the relative difference of the readings.
	spread float64
	// extrapolated is set where the field current is above all that were read: the curve there is a
	// guess, and results from it are marked so.
	extrapolated bool
	// reach is the uncertainty of perTurn by that guess, in its unit.
	reach float64
	// fromOld is set where it comes from readings of the old winding, which can be wrong.
	fromOld bool
	// at is volts per rpm and turn at a field current; nil with one reading.
	at func(amps float64) float64
	// readAt is the only field current read, where the flux is for another, fieldAmps, and was
	// converted to it by an assumed curve; else 0.
	readAt float64
	// curve is the magnetisation curve of a wound rotor, in the same unit, where it was read.
	curve *field.Curve
	// read is the readings that the curve goes through.
	read []field.Reading
}

// fluxRoutes is everything that the flux can be found from.
type fluxRoutes struct {
	machine *machine
	rotor   *job.FieldSpec
	spins   []job.SpinReading // as heardSpins has them
	coils   []job.CoilReading
	old     *oldWinding
	dc      *dcSide
	// ofMagnets is the magnets' own, Wb.
	ofMagnets func() (webers quantity.Figure, ok bool)
	// before is the previous bench's flux, whose curve is reused if its readings are the same.
	before *flux
}

// newFlux takes the best source there is:
//
//  1. spin-up readings of the old winding,
//  2. trial coils,
//  3. the speed at which the old winding began to charge,
//  4. a gap flux density that was typed,
//  5. magnets, from their size and grade, ±15 %.
//
// Where amps into a battery or the plate allow it, all readings of the old winding are solved jointly
// instead (jointfit.go); that result precedes these.
//
// A typed density precedes the magnets' because somebody typed it knowing of them.
func newFlux(from fluxRoutes) flux {
	for i, route := range []func() (flux, bool){from.spinUp, from.trialCoil, from.oldCutIn, from.typedGap, from.magnets} {
		if f, ok := route(); ok {
			f.fromOld = i == 0 || i == 2
			return f
		}
	}
	return flux{perTurn: quantity.Missing(from.needed()), relative: from.old.coils.relative, from: "", fieldAmps: quantity.Missing("no field current given")}
}

// needed is what the flux waits for: a reading, or the sizes with which a density or magnets that are
// given say it.
func (r *fluxRoutes) needed() string {
	switch {
	case r.rotor.GapTesla.Given():
		return "needs the bore, the stack and the poles"
	case r.rotor.Kind == job.FieldMagnets && r.rotor.RemanenceTesla.Given() && r.rotor.MagnetMM.Given():
		return "needs the gap, the bore, the stack and the poles"
	}
	return "needs a spin-up reading of the old winding or the speed at which it began to charge (with its turns), or a trial coil, or a gap flux density, or the magnets"
}

// oldCutIn: at that speed √2·V_LL, rectified, equalled the battery at rest plus the diodes in its way.
func (r *fluxRoutes) oldCutIn() (flux, bool) {
	o := r.old
	if !o.CutInRPM.Given() || o.coils.effective <= 0 || !r.dc.rest.Known() {
		return flux{}, false
	}
	line := r.dc.acBehind(r.dc.rest.Value)
	per := quantity.Of(line*r.machine.phaseOfLine(o.Connection)/o.CutInRPM.Value/o.coils.effective, o.CutInRPM.Origin, o.Turns.Origin)
	if o.CutInRPM.PlusMinus == 0 && !o.CutInRPM.Origin.Weak() {
		per.PlusMinus = per.Value * usualBeganOff
	}
	return flux{
		perTurn: per, relative: o.coils.relative,
		from: "the speed at which the old winding began to charge", fieldAmps: r.rotor.Amps.Figure("no field current given"),
	}, true
}

// typedGap: Φ = (2/π)·B1·τp·L.
func (r *fluxRoutes) typedGap() (flux, bool) {
	g, m := r.rotor.GapTesla, r.machine
	if !g.Given() || !m.BoreMM.Given() || !m.StackMM.Given() || !m.Poles.Given() {
		return flux{}, false
	}
	wb, err := field.FluxFromGapTesla(g.Value, m.BoreMM.Value, m.StackMM.Value, m.Poles.Value)
	if err != nil {
		return flux{}, false
	}
	return r.ofWebers(quantity.Of(wb, g.Origin, m.BoreMM.Origin, m.StackMM.Origin), "the gap flux density that was typed"), true
}

// ofWebers is the source for a flux per pole in webers.
func (r *fluxRoutes) ofWebers(wb quantity.Figure, from string) flux {
	p := r.machine.Poles.Value / 2
	return flux{
		perTurn: wb.Times(math.Sqrt2 * math.Pi * p / 60), from: from,
		fieldAmps: r.rotor.Amps.Figure("no field current given"),
	}
}

// webers is the flux per pole behind the volts, Φ = k·60/(√2·π·p).
func (f *flux) webers(poles quantity.Reading) quantity.Figure {
	switch {
	case !poles.Given():
		return quantity.Missing("needs the poles")
	case f.relative:
		return quantity.Missing("needs the number of slots and poles")
	}
	return f.perTurn.Times(60 / (math.Sqrt2 * math.Pi * poles.Value / 2))
}

// gapTesla is the peak of the fundamental gap flux density behind the flux,
// B1 = Φ·π/(2·τp·L).
func (f *flux) gapTesla(m *machine) quantity.Figure {
	pitch, stack := m.polePitchMM(), m.StackMM
	if !stack.Given() {
		return quantity.Missing("needs the stack")
	}
	return f.webers(m.Poles).With(pitch, func(wb, tau float64) float64 {
		return wb * math.Pi / (2 * tau * stack.Value * 1e-6)
	})
}
