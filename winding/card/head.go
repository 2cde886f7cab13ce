package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
)

// head is what stands under the title: whether it is invented, notes, how to read it.
func (w *writer) head(note string) {
	w.gap()
	if w.o.Invented {
		w.say(2, "INVENTED EXAMPLE: no such machine, person or place exists.")
		w.gap()
	}
	if note != "" {
		w.pair("Trial", note)
	}
	if w.job.Notes != "" {
		label := "Notes"
		for _, part := range strings.Split(w.job.Notes, "\n") {
			w.pair(label, part)
			label = ""
		}
	}
	w.gap()
	w.say(2, "A number with ~ rests on a guess or on a default of ours; ± is how far it may be off.")
	w.say(2, estimate)
	w.gap()
}

// settleFirst says on top what stands against winding it as it is.
func (w *writer) settleFirst(t *winding.TrialOutcome) {
	broken, doubts := 0, 0
	for _, f := range w.findingsOf(t.Name) {
		switch f.Severity {
		case winding.Broken:
			broken++
		case winding.Doubt:
			doubts++
		}
	}
	if broken+doubts == 0 {
		return
	}
	var what []string
	if broken > 0 {
		what = append(what, fmt.Sprintf("%d broken", broken))
	}
	if doubts > 0 {
		what = append(what, count(doubts, "doubt"))
	}
	w.hang("  !! ", strings.Join(what, ", ")+": read FINDINGS before you cut wire.")
	w.gap()
}
