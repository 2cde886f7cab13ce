package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// The mean turn, best first: measured; from the old coils' ohms; from bore, stack and
// span. Which one it was is always said, since it decides the ohms.
//
// From geometry: l = 2L + 2.4·W + 4x, W = π(D + h)·y/Q the width of a coil at half
// depth of the slot, x the straight run out of the iron at each side. With x = 25 mm
// this is 2l + 2.4W + 0.1 m of Pyrhönen, Jokinen and Hrabovcová, Design of Rotating
// Electrical Machines (from memory); a small alternator's x is 8 to 10 mm (common
// practice, no source). It errs by 10 % and more on small cores; a measured turn is
// better, and corrects every other span as well.

// coilWidthMM is W for a span; missing without slots, bore and span.
func (b *Bench) coilWidthMM(span float64) quantity.Figure {
	m := b.job.Machine
	switch {
	case !m.BoreMM.Given():
		return quantity.Missing("needs the bore, or a measured mean turn")
	case !m.Slots.Given() || span <= 0:
		return quantity.Missing("needs the slots and the span, or a measured mean turn")
	}
	depth := 0.0
	if b.roomWhy[0] == "" {
		depth = b.rooms[0].DepthMM
	}
	return quantity.Of(math.Pi*(m.BoreMM.Value+depth)*span/m.Slots.Value, m.BoreMM.Origin)
}

// geometricTurnMM is 2L + 2.4W + 4x.
func (b *Bench) geometricTurnMM(span float64) quantity.Figure {
	m := b.job.Machine
	w := b.coilWidthMM(span)
	if !w.Known() {
		return w
	}
	if !m.StackMM.Given() {
		return quantity.Missing("needs the stack, or a measured mean turn")
	}
	return quantity.Of(2*m.StackMM.Value+2.4*w.Value+4*m.EndRunMM.Or(defaultEndRunMM), quantity.Guessed)
}

// oldTurnMM is the mean turn that the old coils' resistance speaks of:
// l = R·a·s·A/(ρ·N).
func (b *Bench) oldTurnMM() quantity.Figure {
	o := b.job.Old
	bundle := o.Bundle()
	if !o.LeadOhms.Given() || bundle.IsZero() || b.old.series <= 0 || b.old.plan == nil {
		return quantity.Missing("needs the old winding's ohms, turns and wire")
	}
	phase := o.LeadOhms.Value / b.leadPerPhase(o.Connection)
	metre := phase * float64(b.old.circuits) * bundle.AreaMM2(o.Build) * 1e-6 /
		(o.Metal.Resistivity(o.LeadOhmsC.Or(20)) * b.old.series)
	return quantity.Of(metre*1000, o.LeadOhms.Origin, o.Turns.Origin)
}

// leadPerPhase is ohms between leads over ohms of a phase: star 2, delta 2/3 (one
// phase beside the other two in series), one phase 1.
func (b *Bench) leadPerPhase(conn layout.Connection) float64 {
	switch {
	case b.phases == 1:
		return 1
	case conn == layout.Delta:
		return 2.0 / 3
	default:
		return 2
	}
}

// meanTurn is the mean turn of coils of a span and the route it came by. A turn
// measured on the machine's span is carried to another by the difference of the end
// turns, 2.4·ΔW.
func (b *Bench) meanTurn(span float64) (quantity.Figure, string) {
	m := b.job.Machine
	base, from := m.MeanTurnMM.Figure(""), m.MeanTurnMM.Origin.String()
	if !base.Known() {
		base, from = b.oldTurnMM(), "from the old winding's ohms"
	}
	if !base.Known() {
		return b.geometricTurnMM(span), "from bore, stack and span: an estimate"
	}
	ref := b.layouts[b.keyOf(job.Trial{})].span
	if span == ref || span <= 0 || ref <= 0 {
		return base, from
	}
	here, there := b.coilWidthMM(span), b.coilWidthMM(ref)
	if !here.Known() || !there.Known() {
		return quantity.Missing("another span than the machine's: needs the bore to find its mean turn"), from
	}
	return base.With(here.With(there, func(a, c float64) float64 { return 2.4 * (a - c) }),
		func(l, d float64) float64 { return l + d }), from + ", carried to this span"
}
