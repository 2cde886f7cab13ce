package card

import (
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"
)

// findingsOf is the findings about the job and one trial; all of them for no name.
func (w *writer) findingsOf(trial string) []winding.Finding {
	var list []winding.Finding
	for _, f := range w.o.Findings {
		if trial == "" || f.Trial == "" || f.Trial == trial {
			list = append(list, f)
		}
	}
	return list
}

// findings lists what is worth telling, the worst first.
func (w *writer) findings(trial string) {
	w.section("FINDINGS")
	list := w.findingsOf(trial)
	if len(list) == 0 {
		w.say(2, "None.")
		return
	}
	for s := winding.Broken; s >= winding.Note; s-- {
		for _, f := range list {
			if f.Severity == s {
				w.finding(f)
			}
		}
	}
}

// finding is one finding: what, where, what to change, by which rule.
func (w *writer) finding(f winding.Finding) {
	about := ""
	if f.Trial != "" {
		about = "trial " + f.Trial + ": "
	}
	w.hang("  "+text.Pad(strings.ToUpper(f.Severity.String()), 7)+" ", about+f.Text)
	if f.Fix != "" {
		w.say(10, "to mend it: "+f.Fix)
	}
	if f.Path != "" {
		w.say(10, "where: "+job.Place(f.Path))
	}
	if f.Source != "" {
		w.say(10, "rule: "+f.Source)
	}
	w.gap()
}

// cautions is what can hurt a person in this job.
func (w *writer) cautions() {
	w.section("CAUTIONS")
	for _, c := range w.o.Cautions {
		w.hang("  "+text.Pad(strings.ToUpper(w.clean(c.Topic)), 9)+" ", verbatim(w.opt.Units.WordsOfRule(c.Text)))
		w.gap()
	}
}
