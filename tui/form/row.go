package form

import (
	"strings"

	"slotwright/tui/kit"
)

// rowSizes are the widths of a form column's parts.
type rowSizes struct{ label, value, unit, note int }

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
		for _, line := range drawRow(t, r, f.Cursor, i == f.Focus, w, s) {
			out = append(out, formLine{i, line})
		}
	}
	return out
}

// sizes shares w cells among margin, label, value, mark, unit and note.
func (f Form) sizes(t kit.Theme, w, from, to int) rowSizes {
	var s rowSizes
	for _, r := range f.Rows[from:to] {
		s.label = max(s.label, kit.Width(t.Text(r.Label)))
		s.unit = max(s.unit, kit.Width(t.Text(r.Unit)))
		s.value = max(s.value, kit.Width(t.Text(r.Text))+4, kit.Width(t.Text(r.Ghost))+3)
		for _, c := range r.Choices {
			s.value = max(s.value, kit.Width(t.Text(c))+4)
		}
	}
	s.value = max(min(s.value, w/3, 28), 12)
	s.unit = min(s.unit, 10)
	s.label = max(min(s.label, w-2-1-s.value-3-s.unit), 6)
	s.note = max(0, w-(2+s.label+1+s.value+3+s.unit+2))
	return s
}

// drawRow is the row's line, and below it what did not fit of an error.
func drawRow(t kit.Theme, r Row, cursor int, focused bool, w int, s rowSizes) []string {
	margin, label := "  ", t.Fit(r.Label, s.label)
	if focused {
		margin, label = t.PaintMark(kit.Focus)+" ", t.Style(kit.Title).Render(label)
	}
	role, note := rowNote(t, r)
	below := role == kit.Broken && kit.Width(note) > s.note
	mark := r.Mark
	if role == kit.Broken || role == kit.Warning {
		mark = role
	}
	line := margin + label + " " + drawValue(t, r, cursor, focused, s.value) +
		" " + t.PaintMark(mark) + " " + t.Style(kit.Unit).Render(t.Fit(r.Unit, s.unit))
	if !below {
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

// rowNote is what is said behind the value: the gravest thing there is.
func rowNote(t kit.Theme, r Row) (kit.Role, string) {
	switch {
	case r.Error != "":
		return kit.Broken, t.Text(kit.Clean(r.Error))
	case r.Warning != "":
		return kit.Warning, t.Text(kit.Clean(r.Warning))
	}
	return kit.Plain, ""
}

// drawValue is the value in exactly w cells: a field, or a choice between arrows.
func drawValue(t kit.Theme, r Row, cursor int, focused bool, w int) string {
	text := t.Text(kit.Clean(r.Text))
	if len(r.Choices) > 0 && focused {
		g := t.Glyphs()
		return t.Fit(g.MoreLeft+t.Style(kit.Focus).Render(" "+t.Cut(text, w-4)+" ")+g.MoreRight, w)
	}
	if r.Text == "" && r.Ghost != "" {
		ghost := "(" + t.Text(kit.Clean(r.Ghost)) + ")"
		if !focused {
			return t.Fit(t.Style(kit.Dim).Render(" "+ghost), w)
		}
		n := min(kit.Width(ghost), max(0, w-4))
		return TextLine{}.Draw(t, w-n-1, true) + strings.Repeat(" ", 1) + t.Style(kit.Dim).Render(t.Fit(ghost, n))
	}
	return TextLine{r.Text, cursor}.Draw(t, w, focused)
}
