package shelf

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/quantity"
	"slotwright/winding/shelf"

	"github.com/charmbracelet/x/ansi"
)

// column is a column of the list: its head, the width of the list from which it is shown, and its sort
// order, "" where it has none.
type column struct {
	head   string
	from   int
	order  string
	align  kit.Align
	shrink bool
	text   func(e *shelf.Entry) string
}

// columns are those of the list.
var columns = []column{
	{"machine", 0, "machine", kit.Left, true, machine},
	{"s/p", 0, "slots", kit.Left, false, pair},
	{"throw", 76, "", kit.Left, false, throw},
	{"wire", 0, "wire", kit.Left, true, func(e *shelf.Entry) string { return strings.TrimPrefix(e.Wire, "1 × ") }},
	{"turns", 0, "turns", kit.Right, false, func(e *shelf.Entry) string { return number(e.Turns, quantity.None, 0) }},
	{"begins", 66, "begins", kit.Right, false, func(e *shelf.Entry) string { return number(e.CutInRPM, quantity.RPM, 3) }},
	{"date", 74, byDate, kit.Left, false, func(e *shelf.Entry) string { return e.Date }},
	{"state", 0, "state", kit.Left, false, func(e *shelf.Entry) string { return e.State }},
	{"file", 84, "file", kit.Left, true, func(e *shelf.Entry) string { return e.File }},
}

// orders are the columns' sort orders, from left to right.
var orders = func() (list []string) {
	for _, c := range columns {
		if c.order != "" {
			list = append(list, c.order)
		}
	}
	return list
}()

// alike reports whether another listed job has the same name, which then says nothing.
func (v *View) alike(e *shelf.Entry) bool {
	return slices.ContainsFunc(v.shown.list, func(o shelf.Entry) bool { return o.File != e.File && machine(&o) == machine(e) })
}

// machine is the job's name, or its file's where it has none.
func machine(e *shelf.Entry) string {
	if e.Job == "" {
		return strings.TrimSuffix(e.File, ".toml")
	}
	return e.Job
}

// pair is slots and poles as the trade writes them.
func pair(e *shelf.Entry) string {
	if e.Slots == 0 || e.Poles == 0 {
		return session.Dash
	}
	return fmt.Sprintf("%d/%d", e.Slots, e.Poles)
}

// throw is the slots that a coil lies in, the first being 1.
func throw(e *shelf.Entry) string {
	if e.Span == 0 {
		return session.Dash
	}
	return fmt.Sprintf("1 to %d", e.Span+1)
}

func number(f quantity.Figure, dim quantity.Dimension, digits int) string {
	if !f.Known() {
		return session.Dash
	}
	return quantity.Screen.Value(f.Value, dim[0], digits)
}

// table is the list in a width, with the mark at the job that has the keys.
func (v *View) table(t kit.Theme, w int) kit.Table {
	tb := kit.Table{Margin: true}
	if w < 100 {
		tb.Gap = 1
	}
	var shown []column
	for _, c := range columns {
		if w < c.from {
			continue
		}
		head := c.head
		if c.order == v.by {
			head += v.sign(t)
		}
		shown = append(shown, c)
		tb.Columns = append(tb.Columns, kit.Column{Head: head, Align: c.align, Shrink: c.shrink})
	}
	focus := v.focus()
	for i := range v.shown.list {
		row := kit.TableRow{Focus: i == focus}
		e := &v.shown.list[i]
		for _, c := range shown {
			row.Cells = append(row.Cells, cell(c, e))
		}
		if e.Problem == "" && shown[len(shown)-1].head != "file" && v.alike(e) {
			row.Cells[0].Text = e.File
		}
		tb.Rows = append(tb.Rows, row)
	}
	return tb
}

// cell is a job's cell; a file that cannot be used has none but its name.
func cell(c column, e *shelf.Entry) kit.Cell {
	if e.Problem != "" {
		return kit.Cell{}
	}
	out := kit.Cell{Text: c.text(e), Role: roleOf(c, e)}
	if c.order == "begins" {
		out.Mark = session.MarkOf(e.CutInRPM) // read, or worked out with guesses
	}
	return out
}

// roleOf distinguishes proved from only planned by weight, besides the word.
func roleOf(c column, e *shelf.Entry) kit.Role {
	switch {
	case c.head == "machine":
		return kit.Label
	case c.order == "turns" || c.order == "begins":
		return kit.Value
	case c.head != "state":
		return kit.Plain
	case e.State == shelf.Proved:
		return kit.Better
	case e.State == shelf.Planned:
		return kit.Dim
	}
	return kit.Plain
}

// sign says which way the list is sorted.
func (v *View) sign(t kit.Theme) string {
	if v.least {
		return t.Glyphs().MoreUp
	}
	return t.Glyphs().MoreDown
}

// lines are the head of the list and its rows, w cells wide.
func (v *View) lines(t kit.Theme, w int) (head string, rows []string) {
	tb := v.table(t, w)
	rows = tb.Body(t, w)
	for i, e := range v.shown.list {
		if e.Problem == "" {
			continue
		}
		rows[i] = v.problemLine(t, i, inShort(t, whole(e), w-4), w)
	}
	if list := tb.Head(t, w); len(list) > 0 {
		head = list[0]
	}
	return head, rows
}

// whole is what is wrong with a file, with its name.
func whole(e shelf.Entry) string { return e.File + ": " + kit.Clean(e.Problem) }

// problemLine is the first line of what is wrong with job i.
func (v *View) problemLine(t kit.Theme, i int, text string, w int) string {
	mark := "  "
	if i == v.focus() {
		mark = t.PaintMark(kit.Focus) + " "
	}
	return t.Fit(mark+t.Paint(kit.Broken, t.Mark(kit.Broken)+" "+text), w)
}

// unfolded are the rows of the list, with what is wrong with a file in full if h lines have room for it
// beside all rows and what was left out, and the job that each line belongs to; left lines are kept for
// the latter.
func (v *View) unfolded(t kit.Theme, rows []string, w, h, left int) (lines []string, of []int) {
	spare := h - left - len(rows)
	for i, e := range v.shown.list {
		lines, of = append(lines, rows[i]), append(of, i)
		if e.Problem == "" {
			continue
		}
		parts := t.Wrap(whole(e), w-4)
		if spare -= len(parts) - 1; spare < 0 || len(parts) < 2 {
			spare += len(parts) - 1
			continue
		}
		lines[len(lines)-1] = v.problemLine(t, i, parts[0], w)
		for _, part := range parts[1:] {
			lines, of = append(lines, t.Fit("    "+t.Paint(kit.Broken, part), w)), append(of, i)
		}
	}
	return lines, of
}

// inShort is a problem in at most w cells; if it is too long, its beginning up to a whole word that is
// no number: the box of the marked job has all of it.
func inShort(t kit.Theme, text string, w int) string {
	text = t.Text(text)
	if kit.Width(text) <= w {
		return text
	}
	ellipsis := " " + t.Glyphs().Ellipsis
	words := strings.Fields(text)
	for n := len(words) - 1; n > 0; n-- {
		short := strings.Join(words[:n], " ")
		if kit.Width(short)+kit.Width(ellipsis) <= w && !strings.ContainsFunc(words[n-1], unicode.IsDigit) {
			return short + ellipsis
		}
	}
	return t.Cut(text, w)
}

// clickHead sorts by the head nearest to column x, and reverses the order of the present one.
func (v *View) clickHead(s *session.Session, x int) {
	_, body := v.listAreas()
	head, _ := v.lines(s.Theme, body.W-2)
	head = ansi.Strip(head)
	best, order := 1<<30, ""
	for _, c := range columns {
		before, _, found := strings.Cut(head, c.head)
		if c.order == "" || !found {
			continue
		}
		middle := kit.Width(before) + kit.Width(c.head)/2
		if d := max(middle-x, x-middle); d < best {
			best, order = d, c.order
		}
	}
	if order == v.by {
		v.least = !v.least
		return
	}
	v.sortBy(order)
}
