package trials

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wants"
)

// foot is the meaning of the marked row, the verdicts, and the findings: the first sentence and the
// verdicts come first, whole or shared out, then the findings, then the rest of the explanation; each
// whole or left out.
func (v *View) foot(s *session.Session, w, h int) []string {
	means := v.meaning(s, w, 1)
	verdicts := says(s, w, everyone(s)...)
	if len(means)+len(verdicts)+furtherLine(s) > h {
		verdicts = shared(s, w, h-len(means))
	}
	calls := v.calledOut(s, w, h-len(means)-len(verdicts))
	if spare := h - len(means) - len(verdicts) - len(calls); spare > 0 {
		means = v.meaning(s, w, len(means)+spare)
	}
	return append(append(means, verdicts...), calls...)
}

// footCells is the height of a foot under a table that has more rows than h cells show. The rows that
// are looked at first take what they can; where all rows are shown, which scroll anyway, the foot takes
// what all verdicts need, a line or two for the meaning of the marked row and one for findings, three
// tenths at most. It is the same whatever row is marked.
func (v *View) footCells(s *session.Session, w, h int) int {
	if v.brief() {
		return min(4, h/3)
	}
	want := 2 + len(says(s, w, everyone(s)...)) + furtherLine(s)
	return max(min(4, h/3), min(want, h*3/10))
}

// furtherLine is 1 where a line is kept for findings, or for the sign of held amps.
func furtherLine(s *session.Session) int {
	if len(called(s)) > 0 || heldLine(s) != "" {
		return 1
	}
	return 0
}

// shared are the verdicts in at most h lines: the chosen trial's as whole as possible and the first
// words of every other one, as far as there are lines; one is kept for findings.
func shared(s *session.Session, w, h int) (lines []string) {
	first := shownFirst(s)
	if h > len(first) {
		h -= furtherLine(s)
	}
	said := map[int][]string{}
	for n, i := range first { // a line is kept for each that is still to come
		if said[i] = saysIn(s, w, h-(len(first)-1-n), i); said[i] == nil {
			said[i] = saysIn(s, w, h, i)
		}
		h -= len(said[i])
	}
	for _, i := range everyone(s) {
		lines = append(lines, said[i]...)
	}
	return lines
}

// shortFoot is the foot over a picture, in at most h lines: the meaning of the marked row, all
// verdicts, shared out, then findings.
func (v *View) shortFoot(s *session.Session, w, h int) []string {
	lines := v.meaning(s, w, 1)
	lines = append(lines, shared(s, w, h-len(lines))...)
	return clipped(append(lines, v.calledOut(s, w, h-len(lines))...), h)
}

// everyone is all trials, the chosen one first where it is one of many.
func everyone(s *session.Session) []int {
	list := make([]int, len(s.Outcome().Trials))
	for i := range list {
		list[i] = i
	}
	return list
}

// meaning is the meaning of the marked row for the chosen trial: its first sentence whole, the others
// as far as they fit h lines whole.
func (v *View) meaning(s *session.Session, w, h int) []string {
	t := s.Theme
	path := v.inputPath(s)
	if p, bad := s.Document().ProblemAt(path); bad && path != "" {
		return t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+s.ProblemText(p), w)
	}
	if bare, _ := s.BareWire(path, v.input.Text); v.editing && bare != "" {
		return t.WrapPaint(kit.Hint, bare, w)
	}
	if f, ok := job.InputAt(path); ok {
		if v.offers {
			return whole(t, []string{session.OfferText(v.offer), s.Units.Words(f.Help), s.Units.Words(f.How)}, w, h)
		}
		return whole(t, []string{s.Units.Words(f.Help), v.nextStep(s), s.Units.Words(f.How)}, w, h)
	}
	for _, e := range v.entries(s) {
		if e.id == v.row && e.text != "" {
			list := []string{"Rows in which all trials are alike; enter or m shows them one by one.", "They are: " + strings.TrimPrefix(e.text, "alike: ") + "."}
			if e.id == rowFold {
				list = append(list[:1], "A circuit is coils in series; several beside each other share the amps.", "Strands in hand are wires wound together as one.")
			}
			return whole(t, list, w, h)
		}
	}
	if r := v.marked(s); r != nil {
		return whole(t, meaning(s, *r), w, h)
	}
	return nil
}

// nextStep is what to do where much room for wire is left, "" where there is not.
func (v *View) nextStep(s *session.Session) string {
	if (v.row == rowTurns || v.row == rowWire) && s.Outcome().Trials[s.Trial].MostlyEmpty() {
		return "Most of its room is empty: e shows every gauge with it full, ] takes thicker wire."
	}
	return ""
}

func clipped(lines []string, h int) []string { return lines[:max(0, min(h, len(lines)))] }

// whole is as many of the sentences as fit h lines whole, the first in any case.
func whole(t kit.Theme, sentences []string, w, h int) []string {
	text := sentences[0]
	for _, next := range sentences[1:] {
		if more := text + " " + next; next != "" && len(t.Wrap(more, w)) <= h {
			text = more
		}
	}
	return t.WrapPaint(kit.Hint, text, w)
}

// meaning is a row explained for the chosen trial, a sentence each: what it is, why it is missing, what
// to change when it is past its limit, how certain it is.
func meaning(s *session.Session, r winding.Row) []string {
	c := r.Cells[s.Trial]
	help, why := s.Units.Words(r.Help), s.Units.Words(c.Figure.Why)
	text := []string{help}
	if !c.Figure.Known() {
		text = []string{"Missing: " + why + ".", help}
		j := s.Job()
		if _, ok := wants.FieldFor(&j, c.Figure.Why, s.Trial); ok {
			text = []string{"Missing: " + why + "; enter goes there.", help}
		}
	}
	switch {
	case c.Verdict == winding.Past && c.Unwound != "":
		text = append([]string{"Not to be had: this winding cannot be wound. It " + s.Units.Words(c.Unwound) + "."}, text...)
	case c.Verdict == winding.Past && r.Mend != "":
		text = append(text, "Past its limit: "+s.Units.Words(r.Mend)+".")
	}
	if c.Figure.PlusMinus > 0 || c.Figure.Known() && c.Figure.Origin.Weak() {
		text = append(text, sure(s, r.Cells[s.Trial].Figure, r))
	}
	if c.Figure.Known() && c.Figure.Why != "" {
		text = append(text, "From: "+why+".")
	}
	return text
}

// sure says how uncertain a figure is, and whether guesses affect it.
func sure(s *session.Session, f quantity.Figure, r winding.Row) string {
	off := ""
	if f.PlusMinus > 0 {
		u := s.Units.For(r.Dim)
		off = "May be off by " + f.Spread(u, digitsOf(f, r))
		if u.Name != "" {
			off += " " + u.Name
		}
	}
	weak := f.Origin.Weak()
	switch {
	case off != "" && weak:
		return off + "; a guess or a default weighs in it."
	case off != "":
		return off + ", by the tolerances given."
	case weak:
		return "It depends on a guess or a default."
	}
	return ""
}
