package winding

import (
	"math"

	"slotwright/winding/field"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// fluxSource is what makes the volts: rms volts of a phase for each rpm and each
// effective turn N·kw. Everything that is asked of the flux goes by this one number,
// so a reading of the old winding carries to any other without the flux itself being
// known, and without slots and poles when the coils stay of the same kind.
type fluxSource struct {
	perTurn   quantity.Figure
	relative  bool // the effective turns are relative ones, see coilSet
	from      string
	fieldAmps quantity.Figure
	// spread is how far the readings differ, a fraction.
	spread       float64
	extrapolated bool
	// at is volts per rpm and turn at a field current; nil with one reading.
	at func(amps float64) float64
	// curve is the magnetisation curve of a wound rotor, in the same unit.
	curve *field.Curve
}

// findFlux takes the best source there is:
//
//  1. spin-up readings of the old winding,
//  2. the speed at which the old winding began to charge,
//  3. a gap flux density that was typed,
//  4. magnets, from their size and grade, ±15 %.
//
// A typed density comes before the magnets' because somebody put it there knowing of
// them.
func (b *Bench) findFlux() fluxSource {
	for _, route := range []func() (fluxSource, bool){b.fluxFromSpins, b.fluxFromOldCutIn, b.fluxFromGap, b.fluxFromMagnets} {
		if f, ok := route(); ok {
			return f
		}
	}
	no := "needs a spin-up reading of the old winding (with its turns), or a gap flux density, or the magnets"
	return fluxSource{perTurn: quantity.Missing(no), relative: b.old.relative, from: "", fieldAmps: quantity.Missing("no field current given")}
}

// phaseOfLine is volts of a phase from volts between leads.
func (b *Bench) phaseOfLine(conn layout.Connection) float64 { return 1 / b.linePerPhase(conn) }

// fluxFromOldCutIn: at that speed √2·V_LL was the battery at rest and two diodes.
func (b *Bench) fluxFromOldCutIn() (fluxSource, bool) {
	o := b.job.Old
	if !o.CutInRPM.Given() || b.old.effective <= 0 || !b.dc.rest.Known() {
		return fluxSource{}, false
	}
	line := (b.dc.rest.Value + 2*b.dc.diodeVolts.Value) / math.Sqrt2
	per := line * b.phaseOfLine(o.Connection) / o.CutInRPM.Value / b.old.effective
	return fluxSource{
		perTurn: quantity.Of(per, o.CutInRPM.Origin, o.Turns.Origin), relative: b.old.relative,
		from: "the speed at which the old winding began to charge", fieldAmps: b.job.Field.Amps.Figure("no field current given"),
	}, true
}

// fluxFromGap: Φ = (2/π)·B1·τp·L.
func (b *Bench) fluxFromGap() (fluxSource, bool) {
	g, m := b.job.Field.GapTesla, b.job.Machine
	if !g.Given() || !m.BoreMM.Given() || !m.StackMM.Given() || !m.Poles.Given() {
		return fluxSource{}, false
	}
	wb, err := field.FluxFromGapTesla(g.Value, m.BoreMM.Value, m.StackMM.Value, m.Poles.Value)
	if err != nil {
		return fluxSource{}, false
	}
	return b.fluxOf(quantity.Of(wb, g.Origin, m.BoreMM.Origin, m.StackMM.Origin), "the gap flux density that was typed"), true
}

// fluxOf is the source for a flux per pole in webers.
func (b *Bench) fluxOf(wb quantity.Figure, from string) fluxSource {
	p := b.job.Machine.Poles.Value / 2
	return fluxSource{
		perTurn: wb.Times(math.Sqrt2 * math.Pi * p / 60), from: from,
		fieldAmps: b.job.Field.Amps.Figure("no field current given"),
	}
}

// fluxWb is the flux per pole behind the volts, Φ = k·60/(√2·π·p).
func (b *Bench) fluxWb() quantity.Figure {
	poles := b.job.Machine.Poles
	switch {
	case !poles.Given():
		return quantity.Missing("needs the poles")
	case b.flux.relative:
		return quantity.Missing("needs the number of slots and poles")
	}
	return b.flux.perTurn.Times(60 / (math.Sqrt2 * math.Pi * poles.Value / 2))
}

// gapTesla is the peak of the fundamental gap flux density behind the flux,
// B1 = Φ·π/(2·τp·L).
func (b *Bench) gapTesla() quantity.Figure {
	pitch, stack := b.polePitchMM(), b.job.Machine.StackMM
	if !stack.Given() {
		return quantity.Missing("needs the stack")
	}
	return b.fluxWb().With(pitch, func(wb, tau float64) float64 {
		return wb * math.Pi / (2 * tau * stack.Value * 1e-6)
	})
}

// polePitchMM is τp = πD/2p.
func (b *Bench) polePitchMM() quantity.Figure {
	m := b.job.Machine
	if !m.BoreMM.Given() || !m.Poles.Given() {
		return quantity.Missing("needs the bore and the poles")
	}
	return quantity.Of(field.PolePitchMM(m.BoreMM.Value, m.Poles.Value), m.BoreMM.Origin)
}
