package card

import (
	"cmp"
	"maps"
	"slices"
	"strings"
)

// reason is why figures are not known, and for which trials; "" means all that the section is about.
type reason struct{ trials, why string }

// missingList collects a section's unknown figures, by reason.
type missingList map[reason][]string

// add adds a figure of all that the section is about.
func (m *missingList) add(label, why string) { m.addFor("", label, why) }

// addFor adds a figure of some trials.
func (m *missingList) addFor(trials, label, why string) {
	if *m == nil {
		*m = missingList{}
	}
	r := reason{trials, why}
	(*m)[r] = append((*m)[r], label)
}

// flush names the unknown figures of the section, those with the same reason together.
func (w *writer) flush() {
	reasons := slices.SortedFunc(maps.Keys(w.known), func(a, b reason) int {
		return cmp.Or(cmp.Compare(a.trials, b.trials), cmp.Compare(a.why, b.why))
	})
	if len(reasons) > 0 {
		w.gap()
	}
	for _, r := range reasons {
		labels := strings.Join(w.known[r], ", ")
		if r.why != "" {
			labels += ": " + r.why
		}
		if r.trials != "" {
			labels = "(" + r.trials + ") " + labels
		}
		w.hang("  not known: ", labels)
	}
	w.known = nil
}

// absent is the trials without a row's figure, with each one's reason.
type absent struct{ names, whys []string }

func (a *absent) add(name, why string) {
	a.names, a.whys = append(a.names, name), append(a.whys, why)
}

// note keeps a row's missing figures for [writer.flush]: the trials are named where
// others have the figure.
func (w *writer) note(label string, no absent) {
	done := map[string]bool{}
	for i, why := range no.whys {
		if done[why] {
			continue
		}
		done[why] = true
		var names []string
		for k := i; k < len(no.whys); k++ {
			if no.whys[k] == why {
				names = append(names, no.names[k])
			}
		}
		if len(names) == len(w.o.Trials) {
			w.known.add(label, why)
		} else {
			w.known.addFor(strings.Join(names, ", "), label, why)
		}
	}
}
