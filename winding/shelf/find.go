package shelf

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"slotwright/winding/quantity"
)

// Find is the entries that have every word of a text somewhere about them, ignoring case: in file,
// name, notes, wire, date or state of any winding, or as slots/poles.
func Find(list []Entry, text string) []Entry {
	words := strings.Fields(strings.ToLower(text))
	return slices.DeleteFunc(slices.Clone(list), func(e Entry) bool {
		about := e.about()
		return slices.ContainsFunc(words, func(word string) bool { return !strings.Contains(about, word) })
	})
}

// about is every word that an entry is found by, in lower case.
func (e *Entry) about() string {
	parts := []string{e.File, e.Job, e.notes, e.Problem, fmt.Sprintf("%d/%d", e.Slots, e.Poles)}
	for _, w := range e.Windings() {
		parts = append(parts, w.Wire, w.State, w.Date)
	}
	return strings.ToLower(strings.Join(parts, "\n"))
}

// Windings is all windings of an entry, its own first.
func (e *Entry) Windings() []Winding { return append([]Winding{e.Winding}, e.Others...) }

// In is the entries of a state; all of them for "".
func In(list []Entry, state string) []Entry {
	return slices.DeleteFunc(slices.Clone(list), func(e Entry) bool { return state != "" && (e.State != state || e.Problem != "") })
}

// orders is what a shelf can be sorted by.
var orders = []struct {
	name string
	less func(a, b *Entry) int
}{
	{"file", func(a, b *Entry) int { return cmp.Compare(a.File, b.File) }},
	{"machine", func(a, b *Entry) int { return cmp.Compare(strings.ToLower(a.Job), strings.ToLower(b.Job)) }},
	{"slots", func(a, b *Entry) int { return cmp.Or(cmp.Compare(a.Slots, b.Slots), cmp.Compare(a.Poles, b.Poles)) }},
	{"throw", func(a, b *Entry) int { return cmp.Compare(a.Span, b.Span) }},
	{"wire", func(a, b *Entry) int { return cmp.Compare(a.bareMM, b.bareMM) }},
	{"turns", func(a, b *Entry) int { return known(a.Turns, b.Turns) }},
	{"begins", func(a, b *Entry) int { return known(a.CutInRPM, b.CutInRPM) }},
	{"date", func(a, b *Entry) int { return cmp.Compare(a.Date, b.Date) }},
	{"state", func(a, b *Entry) int {
		return cmp.Compare(slices.Index(States(), a.State), slices.Index(States(), b.State))
	}},
}

// known compares figures; an unknown one comes last.
func known(a, b quantity.Figure) int {
	if a.Known() != b.Known() {
		if a.Known() {
			return -1
		}
		return 1
	}
	return cmp.Compare(a.Value, b.Value)
}

// Orders is what [Sort] can sort by.
func Orders() []string {
	names := make([]string, len(orders))
	for i, o := range orders {
		names[i] = o.name
	}
	return names
}

// Sort is the entries by one of [Orders], the smallest first; equal ones stay by file. An unknown name
// leaves them as they are.
func Sort(list []Entry, by string) []Entry {
	list = slices.Clone(list)
	for _, o := range orders {
		if o.name == by {
			slices.SortStableFunc(list, func(a, b Entry) int { return o.less(&a, &b) })
		}
	}
	return list
}
