package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// The mean turn, best first: measured; from the old coils' ohms; guessed; from bore, stack and span.
// Which one is used is always said, since it decides the ohms.
//
// From geometry: l = 2L + 2.4·W + 4x, W = π(D + h)·y/Q the width of a coil at half depth of the slot (D
// - h with the rotor outside, where slots open outwards), x the straight run out of the iron at each
// end. With x = 25 mm this is 2l + 2.4W + 0.1 m of Pyrhönen, Jokinen and Hrabovcová, Design of Rotating
// Electrical Machines (from memory); a small alternator's x is 8 to 10 mm (common practice, no source).
// It errs by 10 % and more on small cores; a measured turn is better, and corrects every other span as
// well. Coils round one tooth follow the tooth instead: see tooth.go.

// turnLength is what the mean turn of any span depends on.
type turnLength struct {
	machine machine
	slot    job.SlotSpec
	depthMM float64 // of the slot, 0 when not known
	tooth   tooth
	noTooth string // why there is no tooth to use
	// own is the machine's own coils, on which a turn was measured.
	own candidate
	// old is the turn by the old coils' ohms, was those coils.
	old quantity.Figure
	was candidate
	off float64 // relative error put on the estimate of a turn round a tooth
}

// newTurnLength collects the routes there are.
func newTurnLength(m machine, room *slotRoom, s job.SlotSpec, own candidate, old *oldWinding) turnLength {
	l := turnLength{machine: m, slot: s, depthMM: room.depthMM(), own: own, was: old.candidate}
	l.tooth, l.noTooth = newTooth(&m, room, &s)
	l.old = l.believed(oldTurnMM(&m, old))
	return l
}

// roundTooth reports whether a winding's coils lie round one tooth each.
func roundTooth(w *candidate) bool { return w.coils.span == 1 }

// coilWidthMM is W for a span; missing without slots, bore and span.
func (l *turnLength) coilWidthMM(span float64) quantity.Figure {
	m := &l.machine
	switch {
	case !m.BoreMM.Given():
		return quantity.Missing("needs the bore, or a measured mean turn")
	case !m.Slots.Given() || span <= 0:
		return quantity.Missing("needs the slots and the span, or a measured mean turn")
	}
	across := m.BoreMM.Value + m.outward()*l.depthMM
	if across <= 0 {
		return quantity.Missing("the slots are deeper than the stator: check its diameter and the slot")
	}
	return quantity.Of(math.Pi*across*span/m.Slots.Value, m.BoreMM.Origin)
}

// geometric is 2L + 2.4W + 4x, or the turn round a tooth.
func (l *turnLength) geometric(w *candidate) quantity.Figure {
	m := &l.machine
	wide := l.coilWidthMM(w.coils.span)
	switch {
	case roundTooth(w) && l.noTooth != "":
		return quantity.Missing(l.noTooth)
	case w.coils.span <= 0 && m.Slots.Given() && m.Poles.Given():
		return quantity.Missing(w.coils.why)
	case !roundTooth(w) && !wide.Known():
		return wide
	case !m.StackMM.Given():
		return quantity.Missing("needs the stack, or a measured mean turn")
	case roundTooth(w):
		return quantity.Of(l.tooth.turnMM(w, m, &l.slot)*(1+l.off), quantity.Guessed)
	}
	return quantity.Of(2*m.StackMM.Value+2.4*wide.Value+4*m.EndRunMM.Or(defaultEndRunMM), quantity.Guessed)
}

// doubted is what geometry makes of the old coils' turn, and whether the turn by their ohms is too far
// from it to be believed: a third and more, or half and more where the tooth itself had to be guessed.
// by names what geometry used.
func (l *turnLength) doubted() (geo quantity.Figure, by string, doubted bool) {
	geo, by = l.geometric(&l.was), "bore and stack"
	far := 0.35
	if roundTooth(&l.was) {
		by = "the tooth and the stack"
		if l.tooth.even {
			far = 0.5
		}
	}
	return geo, by, l.old.Known() && geo.Known() && math.Abs(l.old.Value/geo.Value-1) > far
}

// turnsApart is how far a measured turn and that of the old ohms may differ, relative (common practice,
// no source).
const turnsApart = 0.25

// apart reports whether the measured turn and the old winding's ohms contradict each other.
func (l *turnLength) apart() bool {
	m := l.machine.MeanTurnMM
	return m.Given() && l.old.Known() && math.Abs(l.old.Value/m.Value-1) > turnsApart
}

// otherMetal says that the old wire seems to be of the other metal, if its ohms then give a turn much
// closer to the known one, mm: aluminium has 1.64 times the resistivity of copper, and looks the same
// under enamel. "" if that is no better.
func (l *turnLength) otherMetal(known float64) string {
	said := l.was.trial.Metal
	for _, other := range wiretable.Metals() {
		turn := l.old.Value * said.Resistivity(20) / other.Resistivity(20)
		if other != said && math.Abs(math.Log(turn/known)) < math.Abs(math.Log(l.old.Value/known))/2 {
			return fmt.Sprintf("scrape the wire: of %s the ohms make a turn of %.0f mm; else ", other, turn)
		}
	}
	return ""
}

// impossible reports whether the old ohms make the turn shorter than the iron that it goes round.
func (l *turnLength) impossible() bool {
	least := l.shortestTurnMM(&l.was)
	return l.old.Known() && least.Known() && l.old.Value < least.Value
}

// contradicted reports whether the turn used is contradicted: a measured one by the old ohms, that of
// the ohms by the iron. A mere guess contradicts nothing.
func (l *turnLength) contradicted() bool {
	if given := l.machine.MeanTurnMM; given.Given() {
		return l.apart() && !given.Origin.Weak()
	}
	_, _, doubted := l.doubted()
	return doubted
}

// oldTurnMM is the mean turn by the old coils' resistance: l = R·a·s·A/(ρ·N).
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

// of is the mean turn of a winding's coils and the route to it. A turn measured on the machine's span
// is converted to another by the difference of the end turns, 2.4·ΔW, or, to and from coils round one
// tooth, by the difference of the geometric turns. One by the ohms of old tooth coils is converted to
// thicker and thinner coils the same way.
func (l *turnLength) of(w *candidate) (quantity.Figure, string) {
	m, span := &l.machine, w.coils.span
	base, from := m.MeanTurnMM.Figure(""), m.MeanTurnMM.Origin.String()
	own := &l.own
	if !base.Known() || base.Origin.Weak() && l.old.Known() && !l.old.Origin.Weak() { // a guess ranks after a measurement
		base, from, own = l.old, "from the old winding's ohms", &l.was
	}
	if l.contradicted() { // reported, and what follows is marked too
		base.Origin, from = quantity.Guessed, from+", which contradicts what else was read"
	}
	switch {
	case !base.Known() && roundTooth(w):
		return l.geometric(w), "from the tooth, the stack and the build of the coil: an estimate"
	case !base.Known():
		return l.geometric(w), "from bore, stack and span: an estimate"
	case roundTooth(w) && roundTooth(own):
		return l.rebuilt(base, w), from
	case span == own.coils.span || span <= 0 || own.coils.span <= 0:
		return base, from
	case roundTooth(w) || roundTooth(own):
		return l.carried(base, l.geometric(w), l.geometric(own)), from + ", carried to this span"
	}
	here, there := l.coilWidthMM(span), l.coilWidthMM(own.coils.span)
	if !here.Known() || !there.Known() {
		return l.carried(base, here, there), from
	}
	return base.With(here.With(there, func(a, c float64) float64 { return 2.4 * (a - c) }),
		func(l, d float64) float64 { return l + d }), from + ", carried to this span"
}

// carried is a turn changed by the difference of two others.
func (l *turnLength) carried(base, here, there quantity.Figure) quantity.Figure {
	if !here.Known() || !there.Known() {
		return quantity.Missing("another span than the machine's: needs the bore to find its mean turn")
	}
	return base.With(here.With(there, func(a, c float64) float64 { return a - c }), func(l, d float64) float64 { return l + d })
}

// rebuilt is the turn by the old tooth coils' ohms, in coils of another build; a measured turn stays as
// it is.
func (l *turnLength) rebuilt(base quantity.Figure, w *candidate) quantity.Figure {
	if l.machine.MeanTurnMM.Given() || l.noTooth != "" {
		return base
	}
	build := func(w *candidate) float64 { return l.tooth.buildMM(w, &l.slot) }
	return base.Then(func(turn float64) float64 { return turn + math.Pi*(build(w)-build(&l.was)) })
}
