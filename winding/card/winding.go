package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// newWinding is what to wind.
func (w *writer) newWinding(t *winding.TrialOutcome, trial int) {
	wound := w.job.Trials[trial].Wound
	w.section("NEW WINDING, TRIAL " + t.Name)
	w.turns(t, wound)
	w.wires(t, wound)
	w.gap()
	w.pair("CONNECTION", t.Connection.String())
	w.pair("CIRCUITS", count(t.Circuits, "circuit")+" in each phase"+choices(t.CircuitChoices))
	w.pair("SPAN", spanWords(t.Span))
	w.pair("LAYERS", fmt.Sprintf("%d, %s winding", t.Layers, t.Kind))
	w.gap()
	w.fit(t)
	w.gap()
	w.figure("Coils in a phase", t.CoilsPerPhase, quantity.None, 0)
	w.figure("Turns in series", t.SeriesTurns, quantity.None, 0)
	w.figure("Winding factor kw1", t.Kw1, quantity.None, 4)
	w.figureAnd("Mean turn", t.MeanTurnMM, quantity.Millimetres, 3, from(t.MeanTurnFrom))
	w.against(t)
	w.flush()
}

func from(source string) string {
	if source == "" {
		return ""
	}
	return " (" + source + ")"
}

func choices(allowed []int) string {
	if len(allowed) == 0 {
		return ""
	}
	return " (this layout allows " + strings.Trim(strings.Join(strings.Fields(fmt.Sprint(allowed)), ", "), "[]") + ")"
}

func spanWords(span int) string {
	if span == 0 {
		return notKnown("needs the number of slots and poles")
	}
	return fmt.Sprintf("%d, from slot 1 to slot %d", span, span+1)
}

// wires is each size with what a caliper should show, in both units.
func (w *writer) wires(t *winding.TrialOutcome, wound job.Wound) {
	bundle := wound.Bundle()
	if bundle.IsZero() {
		w.known.add("Wire", t.BareMM.Why)
		return
	}
	w.pair("WIRE", fmt.Sprintf("%s, %s enamel, %s", t.Wire, t.Build, t.Metal))
	for _, part := range bundle.Parts() {
		w.wire(part, wound.Build)
	}
	w.pair("STRANDS in hand", fmt.Sprint(t.Strands))
	w.figureAnd("Conductor area", t.ConductorAreaMM2, quantity.SquareMM, 4, w.cmil(t))
}

func (w *writer) cmil(t *winding.TrialOutcome) string {
	if !t.ConductorAreaCmil.Known() {
		return ""
	}
	return ", " + w.amount(t.ConductorAreaCmil, quantity.Only("circular mils"), 4)
}

// wire is one size: strands, bare and over the enamel.
func (w *writer) wire(part wiretable.Strand, build wiretable.Build) {
	over := part.Gauge.OverallMM(build)
	w.pair("", part.Gauge.String()+": bare "+bothUnits(part.Gauge.BareMM(build)))
	w.pair("", "  over the enamel "+bothUnits(over.NominalMM))
}

// bothUnits is a diameter in mm and inch.
func bothUnits(mm float64) string {
	inch := quantity.Millimetres[1]
	return fmt.Sprintf("%s mm, %s %s", significant(mm, 4), significant(inch.From(mm), 3), inch.Name)
}

// fit is the winding in its slot.
func (w *writer) fit(t *winding.TrialOutcome) {
	w.figureAnd("Wire fill", t.WireFill, quantity.None, 2, " of at most "+w.amount(t.FillLimit, quantity.None, 2))
	w.figureAnd("Turns that fit", t.TurnsThatFit, quantity.None, 0, " per coil within that fill")
	w.figure("Wires in a slot", t.Conductors, quantity.None, 0)
	w.figure("Most wires that pack", t.MostThatPack, quantity.None, 0)
	w.figure("Copper fill, bare", t.CopperFill, quantity.None, 2)
	w.figure("Metal in a slot", t.CopperPerSlotMM2, quantity.SquareMM, 3)
	w.figure("Mouth to spare", t.MouthSpareMM, quantity.Millimetres, 2)
	if t.MouthText != "" {
		w.pair("The mouth", t.MouthText)
	}
}

// against is new over old, in four figures.
func (w *writer) against(t *winding.TrialOutcome) {
	a := t.Against
	w.gap()
	w.times("Volts against the old", a.Volts)
	w.times("Ohms against the old", a.Ohms)
	w.times("Metal against the old", a.Copper)
	w.times("Cut-in against the old", a.CutIn)
}

func (w *writer) times(label string, f quantity.Figure) {
	w.figureAnd(label, f, quantity.None, 3, " times")
}
