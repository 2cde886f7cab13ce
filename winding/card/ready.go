package card

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
)

// turnsGiven reports whether a person said how many turns to wind.
func turnsGiven(wound job.Wound) bool { return wound.Turns.Given() || len(wound.CoilTurns) > 0 }

// missing is what a winder needs and the job does not say, with what each would take.
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

// ready says at the top whether to wind it, and what speaks against it. Not ready is a winding that
// lacks something, breaks a limit, or brings nothing where it runs most of the time: it could be wound,
// but time and copper would be wasted. Nor is one whose drive is in question: that comes before what it
// lacks. A lesser doubt follows READY, for the person at the bench to weigh.
func (w *writer) ready(t *winding.TrialOutcome, trial int) {
	missing := w.missing(t, trial)
	stand := w.against(t.Name)
	const no = "NOT READY TO WIND"
	switch {
	case len(missing) > 0:
		lacks := "Missing: " + strings.Join(missing, "; ") + "."
		if len(stand) > 0 && stand[0].First {
			w.hang("", no+". "+w.inWords(stand))
			w.hang("", lacks)
			return
		}
		w.hang("", no+". "+lacks)
		if len(stand) > 0 {
			w.hang("", w.inWords(stand))
		}
	case len(stand) == 0 && t.AmpsUsual.Known():
		w.hang("", "READY TO WIND."+w.brings(t))
	case len(stand) == 0:
		w.hang("", "READY TO WIND, BUT:"+untold(t)+w.brings(t))
	case stand[0].NoUse || stand[0].Severity == winding.Broken:
		w.hang("", no+". "+w.inWords(stand))
	default:
		w.hang("", "READY TO WIND, BUT: "+w.inWords(stand)+untold(t)+w.brings(t))
	}
}

// untold says that what a winding brings is not known, and why.
func untold(t *winding.TrialOutcome) string {
	if t.AmpsUsual.Known() {
		return ""
	}
	return " What it brings is not known: " + t.AmpsUsual.Why + "."
}

// brings says of a winding that can be wound that it brings less than was wanted, or nothing at the
// slow speed. In a light wind none needs to charge.
func (w *writer) brings(t *winding.TrialOutcome) string {
	words := ""
	for _, f := range w.findingsOf(t.Name) {
		if f.Short {
			words += " It " + f.Text + "."
		}
	}
	if a, c := t.AmpsSlow, w.o.Machine.Condition(winding.SlowCondition); !w.windy() && a.Known() && a.Value <= 0 && c != nil {
		words += " Nothing comes in at " + c.Label + "."
	}
	return words
}

// against is what speaks against winding a trial, of its own and of the job, the weightiest first: what
// has to be settled before anything else, what makes it no use, what is broken, its own current limit and what can hurt, other doubts; of two equal
// ones the trial's own first.
func (w *writer) against(trial string) []winding.Finding {
	list := slices.DeleteFunc(w.findingsOf(trial), func(f winding.Finding) bool { return f.Severity < winding.Doubt })
	slices.SortStableFunc(list, func(a, b winding.Finding) int {
		return cmp.Or(weighs(&b)-weighs(&a), strings.Compare(b.Trial, a.Trial))
	})
	return list
}

// weighs is the weight of a finding.
func weighs(f *winding.Finding) int {
	w := 2 * int(f.Severity)
	if f.First {
		w += 1000
	}
	if f.NoUse {
		w += 100
	}
	if f.Past || f.Danger {
		w++
	}
	return w
}

// inWords is the first of some findings, its remedy, how many more there are, and where to read them.
// What is said of a remedy's reason or extent is left to the report: cautions need the room.
func (w *writer) inWords(list []winding.Finding) string {
	words := withRemedy(&list[0])
	if more := len(list) - 1; more > 0 {
		where := "in the report, under findings"
		if w.most > 0 {
			where = "on the last sheet"
		}
		words += fmt.Sprintf(" And %d more: %s.", more, where)
	}
	return words
}

// withRemedy is a finding and its remedy.
func withRemedy(f *winding.Finding) string {
	words := title(f.Text)
	if fix, _, _ := strings.Cut(f.Fix, "; "); fix != "" {
		words += ". To mend it: " + fix
	}
	return words + "."
}

// calledOut puts what speaks against the trial, besides the first of it, under the last sheet: at most
// so many as it may, and as many of these as there is room for, which is then how many it lists. Those
// left out are counted, with the command that prints them. It reports false where not one has room.
func (w *writer) calledOut(t *winding.TrialOutcome, rest [][]string) bool {
	list, last := w.against(t.Name)[1:], len(rest)-1
	room := w.sheetLines() - 2 - len(rest[last]) - 1
	for n := w.most; n > 0; n-- {
		lines := w.block(func() {
			w.entry("ALSO", "called out:")
			for i := range list[:n] {
				w.hang("        - ", withRemedy(&list[i]))
			}
			if left := len(list) - n; left > 0 {
				w.hang("        - ", fmt.Sprintf("%d more: slotwright report, with --section findings.", left))
			}
		})
		if len(lines) <= room {
			rest[last], w.most = append(append(rest[last], ""), lines...), n
			return true
		}
	}
	return false
}
