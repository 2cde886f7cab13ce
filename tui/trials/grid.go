package trials

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// Widths of the table in cells, each including the gap before it except the labels'.
const (
	labelCells      = 29 // the longest usual label, and the margin
	trialCells      = 11
	oldCells        = 10
	differenceCells = 8
	spreadCells     = 9 // a ± behind a figure
)

// barCells is the width of the scroll bar beside rows that do not all fit: labels can spare that much
// by using fewer words.
const barCells = 2

// wholeCells is what a column keeps before the decimal point: the ~ of a guess and four digits; a speed
// of five digits has no ~ or moves the column by a cell.
const wholeCells = 5

// looser is the extra cell of a column of differences where marks are set apart from figures.
func looser(tight bool) int {
	if tight {
		return 0
	}
	return 1
}

// columns are the columns that fit the table.
type columns struct {
	old        bool
	trials     []int
	more       []string // the names of trials that did not fit
	difference bool
	spread     bool // ± behind the figures
}

// columnsIn are the columns of a table w cells wide: the chosen trial and the reference first, their
// difference, then the others, then the old winding, then the ±. spared is what the labels give up for
// the old winding.
func columnsIn(s *session.Session, w, spared int) columns {
	o := s.Outcome()
	n := len(o.Trials)
	c := columns{difference: n > 1}
	left := w - labelCells
	if c.difference {
		left -= differenceCells
	}
	room := max(1, left/trialCells)
	keep := map[int]bool{s.Trial: true}
	for _, i := range append([]int{compareWith(s), o.Reference}, byDistance(s.Trial, n)...) {
		if len(keep) < room && i < n {
			keep[i] = true
		}
	}
	for i := range n {
		if keep[i] {
			c.trials = append(c.trials, i)
		} else {
			c.more = append(c.more, o.Trials[i].Name)
		}
	}
	left -= len(c.trials) * trialCells
	if c.old = o.Old != nil && left+spared >= oldCells; c.old {
		left -= oldCells
	}
	c.spread = w >= 96 && left >= len(c.trials)*(spreadWidth(s)+1)
	return c
}

// spreadWidth is the room that a ± wants behind a figure.
func spreadWidth(s *session.Session) int {
	return spreadCells + kit.Width(s.Theme.Text("±")) - 1
}

// spread is the ± of a figure; "" where it is too long for its column, and only the foot has it.
func spread(f quantity.Figure, u quantity.Unit, digits int) string {
	text := f.Spread(u, digits)
	if kit.Width(text) < spreadCells {
		return text
	}
	return ""
}

// byDistance are the trials from the nearest to the chosen one on.
func byDistance(chosen, n int) []int {
	var list []int
	for d := 1; d < n; d++ {
		for _, i := range []int{chosen - d, chosen + d} {
			if i >= 0 && i < n {
				list = append(list, i)
			}
		}
	}
	return list
}

// compareWith is the trial whose difference is shown: the chosen one, or when that is
// the reference the next one.
func compareWith(s *session.Session) int {
	o := s.Outcome()
	if s.Trial != o.Reference {
		return s.Trial
	}
	return (o.Reference + 1) % max(1, len(o.Trials))
}

func differenceHead(s *session.Session) string {
	o := s.Outcome()
	return o.Trials[compareWith(s)].Name + " vs " + o.Trials[o.Reference].Name
}

// trialHead is a trial's name with the marks of the chosen one and the reference.
func trialHead(s *session.Session, i int) string {
	t := &s.Outcome().Trials[i]
	head := t.Name
	if i == s.Outcome().Reference && len(s.Outcome().Trials) > 1 {
		head += " ref"
	}
	if i == s.Trial {
		head = s.Theme.Glyphs().Chosen + head
	}
	return head
}

// table is every row of the grid but the slot's line, for a width: with the old winding where the
// labels still fit whole.
func (v *View) table(s *session.Session, list []entry, w int) (kit.Table, columns) {
	c := columnsIn(s, w, barCells)
	for _, tight := range []bool{false, true} {
		if tb := v.tableOf(s, list, c, tight); tb.Width(s.Theme) <= w {
			return tb, c
		}
	}
	tb := v.tableOf(s, list, c, true)
	if !fitLabels(s, &tb, w) {
		c = columnsIn(s, w, 0)
		tb = v.tableOf(s, list, c, true)
		fitLabels(s, &tb, w)
	}
	return tb, c
}

// tableOf is the table with some columns; tight leaves no cell between a figure and its mark.
func (v *View) tableOf(s *session.Session, list []entry, c columns, tight bool) (tb kit.Table) {
	o := s.Outcome()
	first := kit.Column{Role: kit.Label, Min: 20, Shrink: true}
	if len(c.more) > 0 {
		first.Head = s.Theme.Glyphs().MoreLeft + " also " + strings.Join(c.more, ", ") + " " + s.Theme.Glyphs().MoreRight
	}
	tb = kit.Table{Margin: true, Gap: 1, Columns: []kit.Column{first}}
	if c.old {
		tb.Columns = append(tb.Columns, kit.Column{Head: "old", Align: kit.Point, Role: kit.Dim, Min: oldCells - 1, Whole: wholeCells, Frac: 4})
	}
	units := 0
	if c.spread {
		units = spreadWidth(s)
	}
	for _, i := range c.trials {
		tb.Columns = append(tb.Columns, kit.Column{Head: trialHead(s, i), Hue: kit.Series(i), Align: kit.Point, Role: kit.Value, Min: trialCells - 1, Whole: wholeCells, Frac: 4, Units: units, Marks: true, Tight: tight})
	}
	if c.difference {
		tb.Columns = append(tb.Columns, kit.Column{Head: differenceHead(s), Align: kit.Right, Min: differenceCells - 1 + looser(tight)})
	}
	for _, e := range list {
		row := kit.TableRow{Heading: e.heading, Focus: e.id == v.row}
		if e.heading == "" {
			row.Cells = v.cells(s, e, c, o)
		}
		tb.Rows = append(tb.Rows, row)
	}
	return tb
}

// fitLabels shortens labels that do not fit, so that no unit of theirs is cut, and reports whether all
// fit.
func fitLabels(s *session.Session, tb *kit.Table, w int) (whole bool) {
	over := tb.Width(s.Theme) - w
	if over <= 0 {
		return true
	}
	longest := 0
	for _, row := range tb.Rows {
		if len(row.Cells) > 0 {
			longest = max(longest, kit.Width(row.Cells[0].Text))
		}
	}
	whole = true
	for _, row := range tb.Rows {
		if len(row.Cells) > 0 {
			row.Cells[0].Text = shortLabel(row.Cells[0].Text, longest-over)
			whole = whole && kit.Width(row.Cells[0].Text) <= longest-over
		}
	}
	return whole
}

// shortWords are the replacements that shorten a label, applied one after another until it fits.
var shortWords = [][2]string{{"net amps, ", "net A, "}, {"net watts, ", "net W, "}, {"charging begins", "begins"}, {"net gain from", "gains from"}, {"crosses reference", "crosses"}, {"alternator, ", "alt., "}, {"lead to lead", "leads"}, {"amps wanted from", "wanted from"}, {"most volts anywhere", "most volts"}, {"net of drive", "of drive"}, {"two leads, ", "leads, "}, {"battery ", ""}}

// shortLabel is a label in at most w cells where words can be spared; an amp named in front is not
// repeated behind.
func shortLabel(label string, w int) string {
	for _, words := range shortWords {
		if kit.Width(label) <= w {
			break
		}
		if short := strings.Replace(label, words[0], words[1], 1); short != label {
			label = short
			if unit := strings.TrimSuffix(strings.TrimPrefix(words[1], "net"), ", "); unit != words[1] && unit != "" {
				label = strings.TrimSuffix(label, ","+unit)
			}
		}
	}
	return label
}

// cells are a row's cells under the columns.
func (v *View) cells(s *session.Session, e entry, c columns, o *winding.Outcome) []kit.Cell {
	if e.text != "" {
		return nil // drawn over the whole line
	}
	if e.figure == nil {
		cells := []kit.Cell{{Text: inputLabel(s, e.id)}}
		if c.old {
			cells = append(cells, oldInput(o.Old, e.id))
		}
		for _, i := range c.trials {
			cells = append(cells, v.inputCell(s, e.id, i))
		}
		return cells
	}
	r := *e.figure
	cells := []kit.Cell{{Text: rowLabel(s, r.Label, r.Dim)}}
	if c.old {
		of := winding.OutputOf(r.ID)
		old := plainCell(s, of.Of(o.Old), r)
		if of.Burns(o.Old) {
			old = kit.Cell{Text: burns.Text, Word: true}
		} else if of.Held(o.Old) {
			old = asHeld(old)
		}
		old.Role = kit.Dim
		cells = append(cells, old)
	}
	for _, i := range c.trials {
		cell := figureCell(s, r, i)
		if c.spread && cell.Text != burns.Text {
			f := r.Cells[i].Figure
			cell.Unit = spread(f, s.Units.For(r.Dim), digitsOf(f, r))
		}
		cells = append(cells, cell)
	}
	if c.difference {
		cells = append(cells, differenceCell(s, r, compareWith(s)))
	}
	return cells
}

// gridLines are the table's head and body in w cells; line is the body's line with the cursor.
func (v *View) gridLines(s *session.Session, w int) (head, body []string, line int) {
	t, list := s.Theme, v.entries(s)
	tb, _ := v.table(s, list, w)
	head, body = tb.Head(t, w), tb.Body(t, w)
	for i, e := range list {
		if e.id == v.row {
			line = i
		}
		if e.text != "" {
			mark := " "
			if e.id == v.row {
				mark = t.PaintMark(kit.Focus)
			}
			body[i] = t.Fit(mark+" "+t.Paint(kit.Label, e.told(w-2)), w)
		}
	}
	return head, body, line
}

// grid is the table in a rectangle: it scrolls under its head, a column kept for the bar.
func (v *View) grid(s *session.Session, r kit.Rect) kit.Block {
	w := r.W
	head, body, line := v.gridLines(s, w)
	if len(head)+len(body) > r.H {
		w -= barCells
		head, body, line = v.gridLines(s, w)
	}
	return kit.Bare(s.Theme, r, append(head, kit.Window(s.Theme, body, line, r.W, max(0, r.H-len(head)))...))
}

// naturalWidth is the width of the table without the ±.
func naturalWidth(s *session.Session) int {
	finer := 0
	if s.Units.Inch {
		finer = 1 // a decimal more, of square inches
	}
	w := labelCells + 4 + len(s.Outcome().Trials)*(trialCells+1+finer)
	if len(s.Outcome().Trials) > 1 {
		w += differenceCells
	}
	if s.Outcome().Old != nil {
		w += oldCells + finer
	}
	return w
}

// saysIn is a trial's verdict in at most h lines: the least decisive part, which is last, is left out
// where not all of it fits; nil where not even the first does.
func saysIn(s *session.Session, w, h, trial int) []string {
	t, o := s.Theme, &s.Outcome().Trials[trial]
	parts := strings.Split(s.Units.Words(o.Verdict), "; ")
	for n := len(parts); n > 0; n-- {
		if lines := verdictLines(t, o, trial == s.Trial, strings.Join(parts[:n], "; "), w); len(lines) <= h {
			return lines
		}
	}
	return nil
}

// verdictLines are a verdict, or the beginning of one, the chosen trial's marked.
func verdictLines(t kit.Theme, o *winding.TrialOutcome, chosen bool, text string, w int) []string {
	if text == "" {
		return nil
	}
	role, name := kit.Plain, o.Name
	if !o.Fits() {
		role = kit.Broken
	}
	if chosen {
		name = t.Glyphs().Chosen + name
	}
	return t.WrapPaint(role, fmt.Sprintf("%s %s.", name, text), w)
}

// says are the verdicts of the trials, one after another, the chosen one's marked.
func says(s *session.Session, w int, which ...int) []string {
	var lines []string
	for _, i := range which {
		o := &s.Outcome().Trials[i]
		lines = append(lines, verdictLines(s.Theme, o, i == s.Trial, s.Units.Words(o.Verdict), w)...)
	}
	return lines
}
