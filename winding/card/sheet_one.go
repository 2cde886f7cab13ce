package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// blank is the place for a figure that nobody gave.
const blank = "______"

// sheetOne is what hangs over the bench. The coil list is on it if there is room; cautions fill the
// rest, and those that do not fit go to sheet two.
func (w *writer) sheetOne(t *winding.TrialOutcome, trial int) (sheet []string, over []winding.Caution, spilled bool) {
	plan, _ := w.b.Plan(trial)
	parts := [][]string{
		w.block(func() { w.whose(t, trial) }),
		w.block(func() { w.iron(); w.purpose(); w.what(t, trial, plan) }),
		nil,
		w.block(func() { w.proof(t, plan); w.stops(t) }),
	}
	if plan != nil {
		coils := w.block(func() { w.coils(trial, plan); w.leads(t, plan) })
		if spilled = plan.Spec().Slots > mostSlots; spilled {
			coils = w.block(func() { w.entry("ORDER", "the coil list is on sheet two"); w.leads(t, plan) })
		}
		parts[2] = coils
	}
	for _, p := range parts {
		if len(sheet) > 0 && len(p) > 0 {
			sheet = append(sheet, strings.Repeat("-", w.wide))
		}
		sheet = append(sheet, p...)
	}
	sheet, over = w.withCautions(sheet, w.cautionsOf(t.Name))
	return sheet, over, spilled
}

// mostSlots is the largest stator whose coil list goes on sheet one.
const mostSlots = 36

// whose is the job, the trial, and who wound it when.
func (w *writer) whose(t *winding.TrialOutcome, trial int) {
	w.hang("", verbatim(jobName(w.o)+noteOf(t.Note)))
	w.raw("Tag ______________  Begun ______________  Done ______________  By ____________")
	if w.o.Invented {
		w.raw(invented)
	}
	w.ready(t, trial)
}

func noteOf(note string) string {
	if note == "" {
		return ""
	}
	return ". " + title(note)
}

// what is wire, turns, coils, former: what to have ready before the first turn.
func (w *writer) what(t *winding.TrialOutcome, trial int, plan *layout.Layout) {
	w.wire(t, trial)
	w.entry("TURNS", w.turnsOf(trial)+strands(t))
	coils, each := blank, ""
	if plan != nil {
		coils = fmt.Sprint(len(plan.Coils()))
		each = fmt.Sprintf(", %d in each phase", plan.CoilsPerPhase())
	}
	if w.job.Machine.Phases.Whole() == 1 {
		each = ""
	}
	w.entry("COILS", coils+each+", "+w.throw(t, plan))
	w.entry("JOINED", w.joined(t))
	w.former(t)
	w.entry("ONE COIL", onTheMean(t)+w.orBlank(t.CoilMetres, quantity.Metres, 3)+" of each strand, "+w.orBlank(t.CoilKg, quantity.Kilograms, 3)+" without enamel")
	w.buy(t)
	w.entry("FILL", w.orBlank(t.WireFill, quantity.None, 2)+" of at most "+w.orBlank(t.FillLimit, quantity.None, 2)+mouth(t))
}

// onTheMean says so where coils are not alike.
func onTheMean(t *winding.TrialOutcome) string {
	if len(t.Shapes) > 0 {
		return "on the mean "
	}
	return ""
}

func mouth(t *winding.TrialOutcome) string {
	if t.MouthText == "" {
		return ""
	}
	return "; " + t.MouthText
}

// orBlank is a figure with its unit, or a blank to write it on.
func (w *writer) orBlank(f quantity.Figure, dim quantity.Dimension, figures int) string {
	if !f.Known() {
		return strings.TrimRight(blank+" "+w.opt.Units.For(dim).Name, " ")
	}
	return w.amount(f, dim, figures)
}

// wire is each size with what a caliper should show, in both units.
func (w *writer) wire(t *winding.TrialOutcome, trial int) {
	wound := w.job.Trials[trial].Wound
	if wound.Bundle().IsZero() {
		w.entry("WIRE", blank)
		return
	}
	w.entry("WIRE", fmt.Sprintf("%s, %s enamel, %s", verbatim(t.Wire), t.Build, t.Metal))
	for _, part := range wound.Bundle().Parts() {
		over := part.Gauge.OverallMM(wound.Build)
		w.more(fmt.Sprintf("%s: bare %s; over the enamel %s", verbatim(part.Gauge.String()), bothUnits(part.Gauge.BareMM(wound.Build)), bothUnits(over.NominalMM)))
	}
}

// bothUnits is a diameter in mm and inch.
func bothUnits(mm float64) string {
	inch := quantity.Millimetres[1]
	return verbatim(fmt.Sprintf("%s mm, %s %s", quantity.File.Value(mm, quantity.Millimetres[0], 4), quantity.File.Value(inch.From(mm), inch, 3), inch.Name))
}

// turnsOf is the turns as they are to be wound.
func (w *writer) turnsOf(trial int) string {
	wound := w.job.Trials[trial].Wound
	switch {
	case !turnsGiven(wound):
		return blank + " in each coil"
	case len(wound.CoilTurns) > 0:
		words := make([]string, len(wound.CoilTurns))
		for i, n := range wound.CoilTurns {
			words[i] = fmt.Sprint(n)
		}
		return strings.Join(words, ", ") + " in the coils of a group, outermost first"
	}
	return w.amount(asFigure(wound.Turns), quantity.None, 0) + " in each coil"
}

func strands(t *winding.TrialOutcome) string {
	n := blank
	if t.Strands > 0 {
		n = fmt.Sprint(t.Strands)
	}
	return ", STRANDS in hand " + n
}

// throw is a span as winders say it; for nested coils that of each in the first group, the outermost
// first.
func (w *writer) throw(t *winding.TrialOutcome, plan *layout.Layout) string {
	switch {
	case w.flat():
		return "each lies by itself"
	case t.Span == 0:
		return "throw slot 1 to " + blank
	case t.Span == 1:
		return "throw slot 1 to 2: each round one tooth"
	case plan != nil && plan.Spec().Kind == layout.Concentric:
		return "throws slot " + nested(plan)
	}
	return fmt.Sprintf("throw slot 1 to %d", t.Span+1)
}

// nested is the slots of the first group's coils: "1 to 8, 2 to 7".
func nested(plan *layout.Layout) string {
	var throws []string
	coils := plan.Coils()
	for _, c := range coils {
		if first := coils[0]; c.Set == first.Set && c.Phase == first.Phase && c.Group == first.Group {
			throws = append(throws, fmt.Sprintf("%d to %d", c.Start, c.Finish))
		}
	}
	return strings.Join(throws, ", ")
}

// joined is connection, circuits and how coils share slots.
func (w *writer) joined(t *winding.TrialOutcome) string {
	how := t.Connection.String() + ", "
	if w.job.Machine.Phases.Given() && w.job.Machine.Phases.Whole() < 3 {
		how = ""
	}
	circuits := fmt.Sprintf("%s%s in each phase", how, text.Count(t.Circuits, "circuit"))
	switch {
	case w.flat():
		return circuits
	case t.Span == 1 && t.Layers == 2:
		return circuits + ", two coils side by side in a slot"
	}
	return fmt.Sprintf("%s, %s, %s winding", circuits, text.Count(t.Layers, "layer"), t.Kind)
}

// flat reports whether the coils are laid flat and cast, without iron.
func (w *writer) flat() bool { return w.job.Machine.Stator == job.StatorFlat }

// former is what the coils are wound on.
func (w *writer) former(t *winding.TrialOutcome) {
	once := "once round " + w.orBlank(t.MeanTurnMM, quantity.Millimetres, 3)
	m, mm := &w.job.Machine, func(r quantity.Reading) string { return w.orBlank(asFigure(r), quantity.Millimetres, asGiven) }
	if w.flat() {
		w.entry("FORMER", fmt.Sprintf("hole %s by %s, between cheeks %s apart, the sides at most %s wide; %s", mm(m.StackMM), mm(m.HoleMM), mm(m.ThickMM), mm(m.SideMM), once))
		return
	}
	if t.Span == 1 {
		w.entry("FORMER", "none: each coil is wound round its tooth, "+once)
		return
	}
	if len(t.Shapes) > 0 {
		w.formers(t)
		return
	}
	w.entry("FORMER", w.rounded(t.StraightMM, t.WidthMM, t.RadiusMM)+" to the coil's middle: block smaller by half its build; "+once)
	if t.StraightMM.Known() && strings.HasPrefix(t.StraightMM.Why, winding.EndRunNotGiven) {
		w.more(w.clean(w.opt.Units.Words(title(t.StraightMM.Why))) + ".")
	}
}

// rounded is the sizes of one former, a rectangle with rounded corners.
func (w *writer) rounded(straight, width, radius quantity.Figure) string {
	mm := func(f quantity.Figure) string { return w.expected(f, quantity.Millimetres) }
	return fmt.Sprintf("straight %s, width %s, corner radius %s", mm(straight), mm(width), mm(radius))
}

// formers is one for each kind of coil, where they are nested or of unequal turns.
func (w *writer) formers(t *winding.TrialOutcome) {
	w.entry("FORMER", "one for each kind of coil, to the coil's middle: block smaller by half its build. Inner ends lie lower: try one of each in the slots")
	for i := range t.Shapes {
		s := &t.Shapes[i]
		wire := ""
		if s.Turns > 0 {
			wire = fmt.Sprintf("; %d turns, %s of each strand", s.Turns, w.orBlank(s.Metres, quantity.Metres, 3))
		}
		w.more(fmt.Sprintf("%d coils, throw slot 1 to %d: %s; once round %s%s", s.Count, s.Span+1, w.rounded(s.StraightMM, s.WidthMM, s.RadiusMM), w.orBlank(s.TurnMM, quantity.Millimetres, 3), wire))
	}
}

// buy is the wire to buy.
func (w *writer) buy(t *winding.TrialOutcome) {
	if len(t.Buy) == 0 {
		w.entry("BUY", blank+" m, "+blank+" kg")
	}
	label := "BUY"
	for i := range t.Buy {
		s := &t.Buy[i]
		long, heavy := w.expected(s.Metres, quantity.Metres), w.expected(s.Kg, quantity.Kilograms)
		spool := w.amount(quantity.Figure{Value: s.SpoolKg, Origin: quantity.Derived}, quantity.Kilograms, asGiven)
		w.entry(label, fmt.Sprintf("[ ] %s: %s, %s bare, spools of %s: %s, %s %% to spare", verbatim(s.Gauge), long, heavy, spool, w.orBlank(s.Spools, quantity.None, 0), quantity.Number(100*t.Allowance, asGiven)))
		label = ""
	}
}
