package card

import (
	"strings"
)

// invented is on every paper of the built-in example.
const invented = "INVENTED EXAMPLE: no such machine, person or place exists."

// preface is under the title: whether the job is invented, notes, how to read the paper.
func (w *writer) preface() {
	w.gap()
	if w.o.Invented {
		w.say(2, invented)
		w.gap()
	}
	if w.job.Notes != "" {
		label := "Notes"
		for _, part := range strings.Split(w.job.Notes, "\n") {
			w.pair(label, verbatim(part))
			label = ""
		}
	}
	w.gap()
	w.say(2, "A number with ~ rests on a guess or on a default of ours; ± is how far it may be off by the tolerances that were typed, by what is guessed, and where volts with their speed, old ohms or a mean turn were read without one, by what is usual of the instrument. Sizes typed without one count as exact. A speed of which nothing else is said is the alternator's.")
	w.gap()
}
