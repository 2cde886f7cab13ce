package card

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
)

// turnsGiven reports whether a person said how many turns to wind.
func turnsGiven(wound job.Wound) bool { return wound.Turns.Given() || len(wound.CoilTurns) > 0 }

// missing is what a winder needs and the job does not say, each with what it would take.
func (w *writer) missing(t *winding.TrialOutcome, trial int) []string {
	wound := w.job.Trials[trial].Wound
	var list []string
	add := func(what, why string) {
		words := what
		if why != "" {
			words += " (" + why + ")"
		}
		if !slices.Contains(list, words) {
			list = append(list, words)
		}
	}
	if !turnsGiven(wound) {
		add("turns", "")
	}
	if wound.Bundle().IsZero() {
		add("wire", "")
	}
	if plan, why := w.b.Plan(trial); plan == nil {
		add("coil list", why)
	}
	if f := w.o.Machine.NetMM2; !f.Known() {
		add("room in the slot", f.Why)
	}
	switch {
	case !t.MeanTurnMM.Known():
		add("mean turn", t.MeanTurnMM.Why)
	case !t.RadiusMM.Known() && t.Span != 1 && !w.flat():
		add("former", t.RadiusMM.Why)
	}
	return list
}

// ready says on top whether to wind it, and what stands against it. Not ready is what lacks
// something, breaks a limit, or brings nothing where it runs most of the time: it could be
// wound, and the evening and the copper would be lost. A lesser doubt stands behind a READY,
// for the person at the bench to weigh.
func (w *writer) ready(t *winding.TrialOutcome, trial int) {
	missing := w.missing(t, trial)
	worst, more := w.worst(t.Name)
	const no = "NOT READY TO WIND"
	switch {
	case len(missing) > 0:
		w.hang("", no+". Missing: "+strings.Join(missing, "; ")+".")
		if worst != nil {
			w.hang("", inWords(worst, more))
		}
	case worst != nil && (worst.NoUse || worst.Severity == winding.Broken):
		w.hang("", no+". "+inWords(worst, more))
	case worst == nil:
		w.hang("", "READY TO WIND."+w.brings(t))
	default:
		w.hang("", "READY TO WIND, BUT: "+inWords(worst, more)+w.brings(t))
	}
}

// brings says of a winding that can be wound that it brings less than was wanted, or nothing at
// the slow speed. In a light wind none needs to charge.
func (w *writer) brings(t *winding.TrialOutcome) string {
	words := ""
	for _, f := range w.findingsOf(t.Name) {
		if f.Short {
			words += " It " + f.Text + "."
		}
	}
	if a := t.AmpsSlow; !w.windy() && a.Known() && a.Value <= 0 && len(w.o.Machine.Conditions) > 0 {
		words += " Nothing comes in at " + w.o.Machine.Conditions[0].Label + "."
	}
	return words
}

// worst is the finding of the trial that weighs most, one that makes it no use before a broken
// one, that before a doubt, its own limit of current before other doubts, and how many more there
// are.
func (w *writer) worst(trial string) (worst *winding.Finding, more int) {
	for _, f := range w.findingsOf(trial) {
		if f.Severity < winding.Doubt {
			continue
		}
		if worst == nil || weighs(&f) > weighs(worst) {
			worst = &f
		}
		more++
	}
	return worst, max(0, more-1)
}

// weighs is how much a finding weighs beside others.
func weighs(f *winding.Finding) int {
	w := 2 * int(f.Severity)
	if f.NoUse {
		w += 100
	}
	if f.Past {
		w++
	}
	return w
}

// inWords is a finding and what would mend it.
func inWords(f *winding.Finding, more int) string {
	words := title(f.Text)
	if f.Fix != "" {
		words += ". To mend it: " + f.Fix
	}
	words += "."
	if more > 0 {
		words += " And " + fmt.Sprint(more) + " more" + ": see the report."
	}
	return words
}
