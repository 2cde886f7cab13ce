package winding

import (
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// SpanChoice is one span that works for a trial, everything else unchanged, compared with its present
// span.
type SpanChoice struct {
	Span    int  // slots
	Present bool // the span the trial has now
	// PitchPercent is the span over the pole pitch.
	PitchPercent float64
	// Winding factors of those electrical harmonics.
	Kw1, Kw3, Kw5, Kw7 float64
	// VoltsPercent is the change of the voltage, as kw1; missing when the present span makes no layout.
	VoltsPercent quantity.Figure
	MeanTurnMM   quantity.Figure
	// WirePercent is the change of the wire's length, and so of its mass and ohms,
	// with the turns kept.
	WirePercent quantity.Figure
	// SameVoltsPercent is the change of the wire's length at the turns that restore the present
	// voltage: (1 + wire)/(1 + volts) - 1, fractional turns allowed.
	SameVoltsPercent quantity.Figure
	// Circuits is every number of parallel circuits allowed.
	Circuits []int
}

// Spans compares, in rising order, every span up to two pole pitches and half the slots that makes a
// layout with the trial's other choices, and the present span in any case. Past two pole pitches the
// coil sides lie (nearly) as before under the poles and the wire only gets longer; past half the slots
// the coils are the same seen from the other side. Nil for a trial that does not exist, or when slots
// and poles are not known.
func (b *Bench) Spans(trial int) []SpanChoice {
	t, ok := b.trial(trial)
	if !ok {
		return nil
	}
	now, slots := b.layouts.coils(t), b.job.Machine.Slots.Whole()
	if now.relative {
		return nil
	}
	present := b.layouts.key(t).span
	turn, _ := b.turn.of(&candidate{trial: t, coils: now, key: b.layouts.key(t)})
	var out []SpanChoice
	most := max(2, 2*slots/max(1, b.job.Machine.Poles.Whole()))
	for span := 1; span < slots && slots <= layout.MaxSlots; span++ {
		if (span > most || 2*span > slots) && span != present {
			continue
		}
		try := t
		try.Span = quantity.Known(float64(span))
		c := b.layouts.coils(try)
		if c.plan == nil {
			continue
		}
		choice := spanTable{&b.machine, &b.layouts, &b.turn}.choice(&candidate{trial: try, coils: c, key: b.layouts.key(try)}, span, now, turn)
		choice.Present = span == present
		out = append(out, choice)
	}
	return out
}

// spanTable is what spans are compared by.
type spanTable struct {
	machine *machine
	layouts *layouts
	turn    *turnLength
}

// choice compares a span's coils and mean turn with the present ones.
func (by spanTable) choice(w *candidate, span int, now coilSet, turn quantity.Figure) SpanChoice {
	m, c := by.machine, &w.coils
	s := SpanChoice{
		Span: span, PitchPercent: 100 * float64(span) * m.Poles.Value / m.Slots.Value,
		Kw1: c.kw[0], Kw3: c.kw[1], Kw5: c.kw[2], Kw7: c.kw[3],
		VoltsPercent: quantity.Missing("the present span makes no layout"),
		Circuits:     c.plan.CircuitChoices(),
	}
	if by.layouts.own().plan == nil {
		s.MeanTurnMM = quantity.Missing("the machine's own span makes no layout to go by")
	} else {
		s.MeanTurnMM, _ = by.turn.of(w)
	}
	s.WirePercent = s.MeanTurnMM.Over(turn).Then(toPercent)
	if now.plan == nil || now.kw[0] == 0 {
		s.WirePercent, s.SameVoltsPercent = s.VoltsPercent, s.VoltsPercent
		return s
	}
	s.VoltsPercent = quantity.Of(toPercent(c.kw[0] / now.kw[0]))
	s.SameVoltsPercent = s.WirePercent.With(s.VoltsPercent, func(wire, volts float64) float64 {
		return toPercent((100 + wire) / (100 + volts))
	})
	return s
}

// toPercent is a ratio as a change in per cent.
func toPercent(ratio float64) float64 { return 100 * (ratio - 1) }

// CircuitsChoice is one number of parallel circuits that a trial's layout allows, compared with its
// present number, turns per coil and wire unchanged.
type CircuitsChoice struct {
	Circuits int
	Present  bool
	// VoltsPercent is the change of the voltage: a/a' - 1.
	VoltsPercent float64
	// AmpsPercent is the change of the current at one current density: a'/a - 1.
	AmpsPercent float64
	// OhmsPercent is the change of a phase's resistance: (a/a')² - 1.
	OhmsPercent float64
	// SameVoltsTurns is the turns per coil that give the present voltage, N·a'/a, not rounded; missing
	// without turns.
	SameVoltsTurns quantity.Figure
	// Joins is the number of coil-to-coil joints of the whole stator.
	Joins int
}

// CircuitsChoices compares, in rising order, every number of parallel circuits that the trial's layout
// allows. Nil without a layout. The wire of all circuits together is the same for every choice.
func (b *Bench) CircuitsChoices(trial int) []CircuitsChoice {
	t, ok := b.trial(trial)
	if !ok {
		return nil
	}
	c := b.layouts.coils(t)
	if c.plan == nil {
		return nil
	}
	var out []CircuitsChoice
	for _, a := range c.plan.CircuitChoices() {
		ratio := float64(c.circuits) / float64(a)
		out = append(out, CircuitsChoice{
			Circuits: a, Present: a == c.circuits,
			VoltsPercent: toPercent(ratio), AmpsPercent: toPercent(1 / ratio), OhmsPercent: toPercent(ratio * ratio),
			SameVoltsTurns: t.Turns.Figure("needs the turns").Times(1 / ratio),
			Joins:          b.machine.phases * b.machine.sets * (c.plan.CoilsPerPhase() - a),
		})
	}
	return out
}
