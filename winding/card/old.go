package card

import (
	"cmp"
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// oldWinding is what came out of the slots, what its plate said, what it gave.
func (w *writer) oldWinding() {
	w.section("OLD WINDING")
	if w.o.Old == nil {
		w.say(2, "not known: neither its turns nor its wire are given.")
	} else {
		w.wound(w.o.Old, w.job.Old.Wound)
	}
	old := w.job.Old
	w.gap()
	w.reading("Ohms, lead to lead", old.LeadOhms, quantity.Ohms, w.at(" at ", old.LeadOhmsC, quantity.Celsius))
	w.reading("Plate", old.RatedAmps, quantity.Amps, w.at(" at ", old.RatedVolts, quantity.Volts)+w.at(", ", old.RatedRPM, quantity.RPM))
	w.reading("Began to charge at", old.CutInRPM, quantity.RPM, w.at(", with ", old.BeganAmps, quantity.Amps))
	w.inductance()
	w.spins()
	if t := w.o.Old; t != nil {
		w.gap()
		w.ofTrial(t, "volts_line_rms_per_1000rpm", " rms")
		w.ofTrial(t, "lead_ohms_20c")
		w.ofTrial(t, "cut_in_rpm")
		w.ofTrial(t, "wire_fill")
	}
	w.flush()
}

// inductance is what a bridge read, and on which leads.
func (w *writer) inductance() {
	old, label, on := &w.job.Old, "Inductance, lead to lead", ""
	if other := map[string]string{job.BridgeOneTwo: ", one lead against two", job.BridgeStar: ", lead to star point"}[old.BridgeLeads]; other != "" {
		label, on = "Inductance", other
	}
	if w.job.Machine.Sets.Or(1) == 2 {
		on += ", other set " + cmp.Or(old.OtherSet, job.OtherOpen)
	}
	w.reading(label, old.LeadMilliHenries, quantity.Millihenry, on)
}

// wound is turns, wire and connection in a few lines.
func (w *writer) wound(t *winding.TrialOutcome, wound job.Wound) {
	w.turns(t, wound)
	if t.Wire == "" || t.Strands == 0 {
		w.known.add("Wire", "no wire is given")
	} else {
		w.pair("Wire", fmt.Sprintf("%s, %s enamel, %s", verbatim(t.Wire), t.Build, t.Metal))
	}
	how := t.Connection.String() + ", "
	if w.job.Machine.Phases.Or(3) < 3 {
		how = ""
	}
	w.pair("Connection", how+text.Count(t.Circuits, "circuit"))
}

// turns is turns per coil, or coil by coil.
func (w *writer) turns(t *winding.TrialOutcome, wound job.Wound) {
	if len(wound.CoilTurns) > 0 {
		words := make([]string, len(wound.CoilTurns))
		for i, n := range wound.CoilTurns {
			words[i] = fmt.Sprint(n)
		}
		w.pair("TURNS, coil by coil", strings.Join(words, ", ")+" (outermost first)")
		return
	}
	w.ofTrial(t, "turns_per_coil")
}

// reading is a line for a reading that was given; one that was not is left out.
func (w *writer) reading(label string, r quantity.Reading, dim quantity.Dimension, more string) {
	if r.Given() {
		w.pair(label, w.amount(asFigure(r), dim, asGiven)+more)
	}
}

// at is a second reading behind a word, "" when it was not given.
func (w *writer) at(word string, r quantity.Reading, dim quantity.Dimension) string {
	if !r.Given() {
		return ""
	}
	return word + w.amount(asFigure(r), dim, asGiven)
}

// at20 is the temperature that cold ohms are for, in the unit to show.
func (w *writer) at20(word string) string {
	return word + w.amount(quantity.Figure{Value: 20, Origin: quantity.Derived}, quantity.Celsius, asGiven)
}

// spins is the readings of the old winding, and in its iron, while turning.
func (w *writer) spins() {
	for _, s := range w.job.Spins {
		how := ""
		if s.Across != "" && s.Across != job.AcrossLeads {
			how += ", " + s.Across
		}
		if s.Meter != "" && s.Meter != job.MeterRMS {
			how += ", " + s.Meter + " meter"
		}
		w.pair("Spin-up reading", w.asRead(s.LineVolts, quantity.Volts)+w.turning(s.RPM, s.Hertz)+how+w.at(", field ", s.FieldAmps, quantity.Amps))
	}
	for _, s := range w.job.Shorts {
		how := ""
		if s.Leads == job.LeadsTwo {
			how = ", two leads"
		}
		if s.Sets.Given() && s.Sets.Value < w.job.Machine.Sets.Or(1) {
			how += ", one set"
		}
		w.pair("Short-circuit reading", w.asRead(s.LineAmps, quantity.Amps)+w.turning(s.RPM, quantity.Reading{})+how+w.warm(s.FieldAmps, s.WindingC))
	}
	for _, s := range w.job.Amps {
		w.pair("Amps reading", w.asRead(s.Amps, quantity.Amps)+w.at(" at ", s.Volts, quantity.Volts)+w.at(", ", s.RPM, quantity.RPM)+w.warm(s.FieldAmps, s.WindingC))
	}
	for _, s := range w.job.Coils {
		w.pair("Trial coil", w.asRead(s.Turns, quantity.None)+" turns"+over(s.Span)+", "+w.asRead(s.Volts, quantity.Volts)+w.turning(s.RPM, quantity.Reading{})+w.at(", field ", s.FieldAmps, quantity.Amps))
	}
}

// over is the throw of a trial coil in words, "" where it was not given.
func over(span quantity.Reading) string {
	if !span.Given() {
		return ""
	}
	return " over " + text.Count(span.Whole(), "slot")
}

// asRead is a reading in its unit.
func (w *writer) asRead(r quantity.Reading, dim quantity.Dimension) string {
	return w.amount(asFigure(r), dim, asGiven)
}

// turning is a speed or, in its place, a frequency.
func (w *writer) turning(rpm, hertz quantity.Reading) string {
	if !rpm.Given() && hertz.Given() {
		return w.at(" at ", hertz, quantity.Hertz)
	}
	return w.at(" at ", rpm, quantity.RPM) + w.at(", ", hertz, quantity.Hertz)
}

// warm is the field current and the temperature of a reading.
func (w *writer) warm(field, celsius quantity.Reading) string {
	return w.at(", field ", field, quantity.Amps) + w.at(", winding at ", celsius, quantity.Celsius)
}
