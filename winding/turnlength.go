package winding

import (
	"math"

	"slotwright/winding/quantity"
)

// The mean turn, best first: measured; from the old coils' ohms; guessed; from bore, stack
// and span. Which one it was is always said, since it decides the ohms.
//
// From geometry: l = 2L + 2.4·W + 4x, W = π(D + h)·y/Q the width of a coil at half
// depth of the slot, x the straight run out of the iron at each side. With x = 25 mm
// this is 2l + 2.4W + 0.1 m of Pyrhönen, Jokinen and Hrabovcová, Design of Rotating
// Electrical Machines (from memory); a small alternator's x is 8 to 10 mm (common
// practice, no source). It errs by 10 % and more on small cores; a measured turn is
// better, and corrects every other span as well.

// turnLength is what the mean turn of any span goes by.
type turnLength struct {
	machine machine
	depthMM float64 // of the slot, 0 when not known
	// own is the mean span of the machine's own coils, on which a turn was measured.
	own float64
	// old is the turn that the old coils' ohms speak of.
	old quantity.Figure
}

// newTurnLength takes the routes there are.
func newTurnLength(m machine, room *slotRoom, own coilSet, old *oldWinding) turnLength {
	return turnLength{machine: m, depthMM: room.depthMM(), own: own.span, old: doubted(&m, own.span, oldTurnMM(&m, old))}
}

// coilWidthMM is W for a span; missing without slots, bore and span.
func (l *turnLength) coilWidthMM(span float64) quantity.Figure {
	m := &l.machine
	switch {
	case !m.BoreMM.Given():
		return quantity.Missing("needs the bore, or a measured mean turn")
	case !m.Slots.Given() || span <= 0:
		return quantity.Missing("needs the slots and the span, or a measured mean turn")
	}
	return quantity.Of(math.Pi*(m.BoreMM.Value+l.depthMM)*span/m.Slots.Value, m.BoreMM.Origin)
}

// geometric is 2L + 2.4W + 4x.
func (l *turnLength) geometric(span float64) quantity.Figure {
	m := &l.machine
	w := l.coilWidthMM(span)
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
func oldTurnMM(m *machine, o *oldWinding) quantity.Figure {
	bundle := o.Bundle()
	if !o.LeadOhms.Given() || bundle.IsZero() || o.coils.series <= 0 || o.coils.plan == nil {
		return quantity.Missing("needs the old winding's ohms, turns and wire")
	}
	phase := o.LeadOhms.Value / m.leadPerPhase(o.Connection)
	metre := phase * float64(o.coils.circuits) * bundle.AreaMM2(o.Build) * 1e-6 /
		(o.Metal.Resistivity(o.LeadOhmsC.Or(20)) * o.coils.series)
	return quantity.Of(metre*1000, o.LeadOhms.Origin, o.Turns.Origin)
}

// of is the mean turn of coils of a span and the route it came by. A turn
// measured on the machine's span is carried to another by the difference of the end
// turns, 2.4·ΔW.
func (l *turnLength) of(span float64) (quantity.Figure, string) {
	m := &l.machine
	base, from := m.MeanTurnMM.Figure(""), m.MeanTurnMM.Origin.String()
	if !base.Known() || base.Origin.Weak() && l.old.Known() && !l.old.Origin.Weak() { // a guess ranks after a measurement
		base, from = l.old, "from the old winding's ohms"
	}
	if !base.Known() {
		return l.geometric(span), "from bore, stack and span: an estimate"
	}
	if span == l.own || span <= 0 || l.own <= 0 {
		return base, from
	}
	here, there := l.coilWidthMM(span), l.coilWidthMM(l.own)
	if !here.Known() || !there.Known() {
		return quantity.Missing("another span than the machine's: needs the bore to find its mean turn"), from
	}
	return base.With(here.With(there, func(a, c float64) float64 { return 2.4 * (a - c) }),
		func(l, d float64) float64 { return l + d }), from + ", carried to this span"
}
