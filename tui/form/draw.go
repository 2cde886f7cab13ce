package form

import (
	"strings"

	"slotwright/tui/kit"
)

// twoColumns is the width from which a form with several groups is drawn in two columns, gapW the space
// between them.
const (
	twoColumns = 104
	gapW       = 3
)

// formLine is a drawn line and the row it belongs to, -1 for headings and blank lines.
type formLine struct {
	row  int
	text string
}

// Lines draws the form as exactly h lines of w cells: label, value, mark, unit and note in aligned
// columns, the focus marked in the margin, scrolled so that the focused row is visible. From 104 cells
// up, several groups are in two columns; the order of focus stays that of the list.
func (f Form) Lines(t kit.Theme, w, h int) []string {
	inner := f.innerWidth(t, w, h)
	left, right, at := f.columns(t, inner)
	lines := make([]string, max(len(left), len(right)))
	colW := columnWidth(inner)
	for i := range lines {
		if right == nil {
			lines[i] = left[i].text
			continue
		}
		lines[i] = t.Fit(textAt(left, i), colW) + strings.Repeat(" ", gapW) + textAt(right, i)
	}
	return kit.Window(t, lines, at, w, h)
}

// RowAt is the row at a cell of the form as [Form.Lines] draws it.
func (f Form) RowAt(t kit.Theme, w, h, x, y int) (row int, ok bool) {
	inner := f.innerWidth(t, w, h)
	left, right, at := f.columns(t, inner)
	total := max(len(left), len(right))
	i := y + min(max(at-h/2, 0), max(0, total-h))
	lines := left
	if right != nil && x > columnWidth(inner)+gapW/2 {
		lines = right
	}
	if x < 0 || x >= w || y < 0 || y >= h || i >= len(lines) || lines[i].row < 0 {
		return 0, false
	}
	return lines[i].row, true
}

// innerWidth is w, less the scroll bar's column and its space when one is needed.
func (f Form) innerWidth(t kit.Theme, w, h int) int {
	if f.Height(t, w) > h {
		return max(0, w-2)
	}
	return w
}

// Height is how many lines the form takes when it is w cells wide and not scrolled.
func (f Form) Height(t kit.Theme, w int) int {
	left, right, _ := f.columns(t, w)
	return max(len(left), len(right))
}

// HelpLines explains the focused row in lines of at most w cells: its label, what is doubtful about its
// text, its help. The doubt comes first, so that a short box shows it.
func (f Form) HelpLines(t kit.Theme, w int) []string {
	return append(t.WrapPaint(kit.Title, f.Focused().Label, w), f.Explain(t, w)...)
}

// Explain is HelpLines without the label, for a box that has it as its title. What is wrong with the
// text is in full at the row itself, and is not repeated.
func (f Form) Explain(t kit.Theme, w int) []string {
	r := f.Focused()
	var lines []string
	if r.Warning != "" {
		role := kit.Warning
		if r.Grave { // as its row is marked
			role = kit.Broken
		}
		lines = append(lines, t.WrapPaint(role, t.Mark(role)+" "+r.Warning, w)...)
	}
	lines = append(lines, t.Wrap(r.Help, w)...)
	if len(r.Choices) > 0 && !f.picking {
		lines = append(lines, t.WrapPaint(kit.Hint, "Space lists the choices, enter goes on.", w)...)
	}
	return lines
}

func textAt(lines []formLine, i int) string {
	if i < len(lines) {
		return lines[i].text
	}
	return ""
}

func columnWidth(w int) int { return (w - gapW) / 2 }

// columns lays the rows out in one column (right is nil) or two, and says in which
// line the focus is.
func (f Form) columns(t kit.Theme, w int) (left, right []formLine, focusLine int) {
	starts := f.groupStarts()
	if w < twoColumns || len(starts) < 2 {
		left = f.column(t, w, 0, len(f.Rows))
		return left, nil, lineOf(left, f.Focus)
	}
	split, best := 0, len(f.Rows)*4+len(starts)*4
	for _, s := range starts[1:] {
		if d := abs(s + 2*groupsIn(starts, 0, s) - (len(f.Rows) - s) - 2*groupsIn(starts, s, len(f.Rows))); d < best {
			split, best = s, d
		}
	}
	colW := columnWidth(w)
	left, right = f.column(t, colW, 0, split), f.column(t, colW, split, len(f.Rows))
	if f.Focus >= split {
		return left, right, lineOf(right, f.Focus)
	}
	return left, right, lineOf(left, f.Focus)
}

// groupStarts are the indexes of the rows that begin a group.
func (f Form) groupStarts() []int {
	var out []int
	for i, r := range f.Rows {
		if i == 0 || r.Group != f.Rows[i-1].Group {
			out = append(out, i)
		}
	}
	return out
}

func groupsIn(starts []int, from, to int) int {
	n := 0
	for _, s := range starts {
		if s >= from && s < to {
			n++
		}
	}
	return n
}

func lineOf(lines []formLine, row int) int {
	for i, l := range lines {
		if l.row == row {
			return i
		}
	}
	return 0
}

func abs(n int) int { return max(n, -n) }
