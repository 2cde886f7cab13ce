package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"
)

// findingsOf is those about the job and about a trial; all of them for no name.
func (w *writer) findingsOf(trial string) []winding.Finding {
	var list []winding.Finding
	for _, f := range w.o.Findings {
		if trial == "" || f.Trial == "" || f.Trial == trial {
			list = append(list, f)
		}
	}
	return list
}

// findings is what the job calls out, the worst first.
func (w *writer) findings(trial string) {
	w.section("FINDINGS")
	list := w.findingsOf(trial)
	if len(list) == 0 {
		w.say(2, "None: nothing is called out.")
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

// finding is one: what, where, what to change, by which rule.
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
		w.say(10, "where: "+place(f.Path))
	}
	if f.Source != "" {
		w.say(10, "rule: "+f.Source)
	}
	w.gap()
}

// place is a path of the job file in words: "Trial winding 1, Wire".
func place(path string) string {
	field, ok := job.InputAt(path)
	if !ok {
		return path
	}
	table, known := job.TableOf(field.Table)
	if !known {
		return field.Label
	}
	var n int
	if _, err := fmt.Sscanf(path, field.Table+"[%d]", &n); err == nil {
		return fmt.Sprintf("%s %d, %s", table.Title, n+1, field.Label)
	}
	return table.Title + ", " + field.Label
}

// cautions is what can hurt a person in this job.
func (w *writer) cautions() {
	w.section("CAUTIONS")
	for _, c := range w.o.Cautions {
		w.hang("  "+text.Pad(strings.ToUpper(w.clean(c.Topic)), 9)+" ", c.Text)
		w.gap()
	}
}
