package form

import (
	"strings"

	"slotwright/tui/kit"
)

// rowSizes are the widths of a form column's parts.
type rowSizes struct {
	label, value, unit, spare, note int
	// far is how much longer than the column the longest value is, of those that extend over empty
	// space, so that the units behind these line up too.
	far int
}

// column draws rows from..to, w cells wide.
func (f Form) column(t kit.Theme, w, from, to int) []formLine {
	s := f.sizes(t, w, from, to)
	var out []formLine
	for i := from; i < to; i++ {
		r := f.Rows[i]
		if i == from || r.Group != f.Rows[i-1].Group {
			if i > from {
				out = append(out, formLine{-1, t.Fit("", w)})
			}
			if r.Group != "" {
				out = append(out, formLine{-1, t.Fit(t.Paint(kit.Title, r.Group), w)})
			}
		}
		for _, line := range drawRow(t, r, f.Cursor, f.state(i), w, s) {
			out = append(out, formLine{i, line})
		}
	}
	return out
}

// leastNote is the fewest cells in which a note says anything: in fewer its mark is enough, and the box
// of the marked row has it whole.
const leastNote = 6

// doubtful replaces a doubt that does not fit.
const doubtful = "doubtful"

// leastValue is the minimum width of the column of values; shortGhost how much of it dim values may
// claim: longer ones extend over the empty space behind.
const leastValue, shortGhost = 12, 20

// sizes divides w cells among margin, label, value, mark, unit and note, names first.
func (f Form) sizes(t kit.Theme, w, from, to int) rowSizes {
	s := rowSizes{label: f.LabelW, value: f.ValueW, unit: f.UnitW}
	long := 0                     // what the longest dim value with a unit takes, the focus on it
	given, notes := leastValue, 0 // what is typed or said with a note behind it, and the notes
	for _, r := range f.Rows[from:to] {
		if r.Adds {
			continue
		}
		s.label = max(s.label, kit.Width(t.Text(r.Label)))
		s.unit = max(s.unit, kit.Width(t.Text(r.Unit)))
		s.value = max(s.value, kit.Width(t.Text(r.Text))+4, min(kit.Width(t.Text(r.Ghost))+3, shortGhost))
		given, notes = max(given, kit.Width(t.Text(r.Text))+4), max(notes, kit.Width(t.Text(r.Note)))
		if r.Unit != "" && r.Ghost != "" {
			long = max(long, kit.Width(t.Text(r.Ghost))+6)
		}
		if r.Note != "" {
			given = max(given, min(kit.Width(t.Text(r.Ghost))+3, shortGhost))
		}
		for _, c := range r.Choices {
			s.value = max(s.value, kit.Width(t.Text(c))+4)
		}
	}
	s.unit = min(s.unit, 10)
	s.label = max(min(s.label, w-2-1-leastValue-3-s.unit), 6)
	s.value = max(min(s.value, w*2/5, 28, w-2-s.label-1-3-s.unit), leastValue)
	s.spare = max(0, w-(2+s.label+1+s.value+3+s.unit))
	// What a note says counts for more than the empty end of the column of values.
	if give := min(notes+2-s.spare, s.value-given); give > 0 {
		s.value, s.spare = s.value-give, s.spare+give
	}
	if long = min(long-s.value, s.spare-notes-2); long > 0 { // read whole, and no unit stands elsewhere
		s.value, s.spare = s.value+long, s.spare-long
	}
	s.note = max(0, s.spare-2)
	for _, r := range f.Rows[from:to] {
		if !r.Adds && r.Note == "" && r.Unit != "" {
			s.far = max(s.far, s.long(t, r, focused)) // the longer: nothing moves with the focus
		}
	}
	return s
}

// labelRole is how a label is drawn that stands for itself.
func labelRole(is state) kit.Role {
	if is == elsewhere {
		return kit.Dim
	}
	return kit.Title
}

// long is how many cells of the empty space behind it a row's value may take, dim or typed, so that it
// is shown whole: 0 when it needs none.
func (s rowSizes) long(t kit.Theme, r Row, is state) int {
	shown, frame := r.Text, 2 // its brackets, or the blanks in their place
	switch {
	case r.Text == "" && r.Ghost == "":
		return 0
	case r.Text == "" && is == focused:
		shown, frame = r.Ghost, 6 // the brackets of both
	case r.Text == "":
		shown, frame = r.Ghost, 3 // and the blank before it
	case len(r.Choices) > 0:
		frame = 4 // arrows
	}
	want := kit.Width(t.Text(kit.Clean(shown))) + frame - s.value
	return max(0, min(want, s.unit-kit.Width(t.Text(r.Unit))+s.spare))
}

// state says whether the focus is elsewhere, on the row while keys go elsewhere, on the row, or in its
// open text.
type state int

const (
	elsewhere state = iota
	held
	focused
	open
)

func (f Form) state(i int) state {
	switch {
	case i != f.Focus:
		return elsewhere
	case f.Held:
		return held
	case f.Open:
		return open
	}
	return focused
}

// drawRow is the row's line, and below it what did not fit of an error.
func drawRow(t kit.Theme, r Row, cursor int, is state, w int, s rowSizes) []string {
	margin, label := "  ", t.Fit(r.Label, s.label)
	switch is {
	case held:
		margin, label = t.Mark(kit.Focus)+" ", t.Style(kit.Title).Render(label)
	case focused, open:
		margin, label = t.PaintMark(kit.Focus)+" ", t.Style(kit.Title).Render(label)
	}
	if r.Adds {
		return []string{t.Fit(margin+t.Style(labelRole(is)).Render(t.Cut("+ "+r.Label, w-2)), w)}
	}
	role, note := rowNote(t, r)
	below := role == kit.Broken && kit.Width(note) > s.note
	few := t.Text(kit.Clean(r.Few))
	if role == kit.Warning && kit.Width(note) > s.note {
		switch {
		case r.Warning == "" && few != "" && kit.Width(few) <= s.note:
			note = few
		case s.note < len(doubtful): // never cut: the row's box has it whole
			note = "" // its mark is enough
		default:
			note = doubtful
		}
	}
	if few != "" && role != kit.Broken && role != kit.Warning && kit.Width(note) > s.note {
		note = few
	}
	if r.Uncut && role == r.NoteAs && kit.Width(note) > s.note {
		note = ""
	}
	mark := r.Mark
	switch needed := r.Needed && r.Text == ""; {
	case role == kit.Broken:
		mark = role
	case needed:
		mark, note = kit.Needed, "" // a doubt about its absence is explained in its box
	case role == kit.Warning && r.Grave:
		mark = kit.Broken
	case role == kit.Warning:
		mark = role
	}
	if strings.HasPrefix(r.Unit, "= ") && kit.Width(t.Text(r.Text))+2 > s.value+s.unit-kit.Width(t.Text(r.Unit))+s.spare {
		r.Unit = "" // what was typed is shown whole before its result
	}
	value, unit := s.value, t.Fit(r.Unit, s.unit)
	switch spare := s.long(t, r, is); {
	case is == open || spare == 0:
	case note == "":
		unit = t.Cut(r.Unit, s.unit)
		value = s.value + max(spare, min(s.far, s.unit-kit.Width(unit)+s.spare))
	default: // the empty end of the column of units, so that the note stays where it is
		spare = max(0, min(spare, s.unit-kit.Width(t.Text(r.Unit))))
		unit, value = t.Fit(r.Unit, s.unit-spare), s.value+spare
	}
	line := margin + label + " " + drawValue(t, r, cursor, is, value) +
		" " + t.PaintMark(mark) + " " + t.Style(kit.Unit).Render(unit)
	if !below && s.note >= leastNote && note != "" { // blanks behind a long dim value would cost it its unit
		line += "  " + t.Style(role).Render(t.Cut(note, s.note))
	}
	lines := []string{t.Fit(line, w)}
	if below {
		for _, part := range t.WrapPaint(role, note, w-4) {
			lines = append(lines, t.Fit("    "+part, w))
		}
	}
	return lines
}

// rowNote is what is shown behind the value: the gravest remark.
func rowNote(t kit.Theme, r Row) (kit.Role, string) {
	switch {
	case r.Error != "":
		return kit.Broken, t.Text(kit.Clean(r.Error))
	case r.Warning != "":
		return kit.Warning, t.Text(kit.Clean(r.Warning))
	}
	return r.NoteAs, t.Text(kit.Clean(r.Note))
}

// ghostIn is the dim words of a row in brackets, the short ones where the whole would be cut.
func ghostIn(t kit.Theme, r Row, room int) string {
	whole := "(" + t.Text(kit.Clean(r.Ghost)) + ")"
	if kit.Width(whole) > room && r.Brief != "" {
		return "(" + t.Text(kit.Clean(r.Brief)) + ")"
	}
	return whole
}

// drawValue is the value in exactly w cells: as it is, or with the focus in brackets (a choice between
// arrows), or open with its cursor.
func drawValue(t kit.Theme, r Row, cursor int, is state, w int) string {
	text := t.Text(kit.Clean(r.Text))
	ghost := ""
	if r.Text == "" && r.Ghost != "" {
		room := w - 4
		if is <= held {
			room = w - 1
		}
		ghost = ghostIn(t, r, room)
	}
	switch {
	case is == open:
		n := min(kit.Width(ghost), max(0, w-4))
		if n == 0 {
			return TextLine{r.Text, cursor}.Draw(t, w, true)
		}
		return TextLine{}.Draw(t, w-n-1, true) + " " + t.Style(kit.Dim).Render(t.Fit(ghost, n))
	case is <= held && ghost != "":
		return t.Fit(t.Style(kit.Dim).Render(" "+ghost), w)
	case is <= held:
		return TextLine{r.Text, cursor}.Draw(t, w, false)
	case len(r.Choices) > 0:
		g := t.Glyphs()
		shown := t.Style(kit.Focus).Render(t.Cut(text, w-4))
		if ghost != "" {
			shown = t.Style(kit.Dim).Render(t.Cut(ghost, w-4))
		}
		return t.Fit(g.MoreLeft+" "+shown+" "+g.MoreRight, w)
	case ghost != "":
		return t.Fit("[ ] "+t.Style(kit.Dim).Render(t.Cut(ghost, w-4)), w)
	}
	return t.Fit("["+t.Style(kit.Focus).Render(t.Cut(text, w-2))+strings.Repeat(" ", max(0, 1-len(text)))+"]", w)
}
