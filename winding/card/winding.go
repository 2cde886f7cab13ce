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
	w.ofTrial(t, "coils_per_phase")
	w.ofTrial(t, "series_turns")
	w.ofTrial(t, "kw1")
	w.ofTrial(t, "mean_turn_mm", from(t.MeanTurnFrom))
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
	w.ofTrial(t, "conductor_area_mm2", w.cmil(t))
}

func (w *writer) cmil(t *winding.TrialOutcome) string {
	if !t.ConductorAreaCmil.Known() {
		return ""
	}
	return ", " + w.trialText(t, "conductor_area_cmil")
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
	return fmt.Sprintf("%s mm, %s %s", quantity.File.Value(mm, quantity.Millimetres[0], 4), quantity.File.Value(inch.From(mm), inch, 3), inch.Name)
}

// fit is the winding in its slot.
func (w *writer) fit(t *winding.TrialOutcome) {
	w.ofTrial(t, "wire_fill", " of at most "+w.trialText(t, "fill_limit"))
	w.ofTrial(t, "turns_that_fit", " per coil within that fill")
	w.ofTrial(t, "wires_per_slot")
	w.ofTrial(t, "most_wires_that_pack")
	w.ofTrial(t, "copper_fill")
	w.ofTrial(t, "copper_per_slot_mm2")
	w.ofTrial(t, "mouth_spare_mm")
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
