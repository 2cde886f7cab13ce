package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
)

// inputs is every value that was given, as typed, and how far to trust it.
func (w *writer) inputs() {
	w.section("WHERE EACH INPUT CAME FROM")
	d := w.opt.Document
	if d == nil {
		w.say(2, "The inputs stand as typed in the job file.")
		return
	}
	for i := range job.Tables {
		t := &job.Tables[i]
		if !t.Many() {
			w.inputsOf(d, t, 0, t.Title)
			continue
		}
		for n := range d.Count(t.Name) {
			w.inputsOf(d, t, n, fmt.Sprintf("%s %d", t.Title, n+1))
		}
	}
}

// inputsOf is one table's inputs; nothing when it is empty.
func (w *writer) inputsOf(d *job.Document, t *job.Table, n int, title string) {
	said := false
	for _, f := range job.InputsOf(t.Name) {
		typed, u, ok := d.Typed(f.PathAt(n))
		if !ok || f.Name == "format" || f.Path() == "notes" {
			continue
		}
		if !said {
			w.heading(title)
			said = true
		}
		w.pair(f.Label, verbatim(typedWith(f, typed, u))+trust(d, f, typed, n))
	}
}

// typedWith is a value as typed, with its key's unit where none was typed.
func typedWith(f *job.Input, typed string, u quantity.Unit) string {
	if f.Kind != job.Number || u.Name == "" || strings.ContainsFunc(typed, isLetter) {
		return typed
	}
	return typed + " " + u.Name
}

// isLetter reports a letter of a unit typed behind a number; e and E belong to its exponent.
func isLetter(r rune) bool {
	return r != 'e' && r != 'E' && (r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r == '°' || r == 'Ω' || r == '"')
}

// trust says whether a number was measured, guessed, or is a choice; or that a value could not be used.
func trust(d *job.Document, f *job.Input, typed string, n int) string {
	if p, bad := d.ProblemAt(f.PathAt(n)); bad {
		return " (NOT USED: expected " + p.Expected + ")"
	}
	j := d.Job()
	idle := ""
	if f.Table == "drive" {
		idle = ratio.Idle(&j.Drive, f.Path())
	}
	switch {
	case f.Kind != job.Number && f.Kind != job.Whole:
		return ""
	case idle != "":
		return " (not used: " + idle + ")"
	case strings.HasPrefix(strings.TrimSpace(typed), "~"):
		return " (" + quantity.Guessed.String() + ")"
	case f.Table == "trial":
		return " (chosen)"
	case f.Table == "wound" && f.Kind == job.Whole:
		return " (counted)"
	case f.Table == "target":
		return " (wanted)"
	default:
		return " (" + quantity.Measured.String() + ")"
	}
}

// derivations is the figures that say where they came from.
func (w *writer) derivations(t *winding.TrialOutcome) {
	m := &w.o.Machine
	w.derived("Flux of a pole", m.FluxMWb, quantity.Only("mWb"), m.FluxFrom)
	w.derived("Mean turn", t.MeanTurnMM, quantity.Millimetres, t.MeanTurnFrom)
	w.derived("Inductance of a phase", t.PhaseMilliHenries, quantity.Millihenry, t.InductanceFrom)
	if w.job.Field.Kind != job.FieldMagnets {
		w.derived("Field current", m.FieldAmps, quantity.Amps, m.FieldAmps.Why)
	}
	w.derived("Drive ratio", m.Ratio, quantity.None, m.Ratio.Why)
	w.derived("Slow speed", m.SlowRPM, quantity.RPM, m.SlowRPM.Why)
	w.derived("Usual speed", m.UsualRPM, quantity.RPM, m.UsualRPM.Why)
	w.derived("Top speed", m.TopRPM, quantity.RPM, m.TopRPM.Why)
	w.derived("Test speed", m.TestRPM, quantity.RPM, m.TestRPM.Why)
	w.derived("Winding, usual speed", t.HotUsualC, quantity.Celsius, t.HotUsualC.Why)
	w.derived("Charge limit", m.ChargeLimitAmps, quantity.Amps, m.ChargeLimitAmps.Why)
	w.derived("Current limit", t.LimitAmps, quantity.Amps, t.LimitAmps.Why)
	w.flush()
	w.gap()
}

// derived is a figure, its origin and its reason.
func (w *writer) derived(label string, f quantity.Figure, dim quantity.Dimension, why string) {
	if why != "" {
		why = ": " + why
	}
	w.figureAnd(label, f, dim, 3, " ("+f.Origin.String()+why+")")
}
