package kit

import (
	"strings"
)

// Align says how the texts of a column are aligned.
type Align uint8

// Alignments. Point aligns numbers by their decimal point and keeps words at the right of the integer
// digits.
const (
	Left Align = iota
	Right
	Point
)

// Column describes a column of a [Table].
type Column struct {
	Head   string
	Hue    Role   // whose colour the head has, as that of a curve; Plain: none
	Unit   string // second line of the head; no such line when no column has one
	Align  Align
	Min    int  // at least this many cells wide, even when empty
	Shrink bool // gives up room, down to Min or 6 cells, when the table is too wide
	Role   Role // of cells that name none
	// Whole and Frac are the widths that a Point column reserves before the decimal point and from it
	// on, Marks that for a mark, Units that for units, so that it stays in place while its values
	// change.
	Whole, Frac, Units int
	Marks              bool
	Tight              bool // a mark stands right behind the text, no cell between
}

// Cell is one value in a table. Unit and Mark are in columns of their own behind the text, so that they
// line up too.
type Cell struct {
	Text string
	Unit string
	Mark Role // its [Theme.Mark] is shown behind the text; Plain for none
	Role Role // Plain: the column's
	Word bool // is a word in a column of numbers, although it begins with a digit
}

// TableRow is one line of a table: cells, or only a heading over what follows.
type TableRow struct {
	Heading string
	Cells   []Cell
	Focus   bool // gets the focus mark in the margin
	Follows bool // marked although the keys go elsewhere
}

// Table lines up cells under heads. Its natural width is that of its contents; in less room the columns
// marked Shrink are cut, then the line is, always visibly.
type Table struct {
	Columns []Column
	Rows    []TableRow
	Gap     int  // cells between columns; 0 means 2
	Margin  bool // two cells at the left for the focus mark
}

// columnSize is the layout of one column in cells.
type columnSize struct {
	whole, frac int // before and from the decimal point; whole alone unless Point
	mark, unit  int // width of these with the space before them; 0 without any
	total       int
}

// Lines is Head and Body together: lines of exactly w cells.
func (tb Table) Lines(t Theme, w int) []string {
	return append(tb.Head(t, w), tb.Body(t, w)...)
}

// Head is the lines of column heads: none, one, or two with units.
func (tb Table) Head(t Theme, w int) []string {
	sizes := tb.sizes(t, w)
	hasHead, hasUnit := false, false
	for _, c := range tb.Columns {
		hasHead = hasHead || c.Head != ""
		hasUnit = hasUnit || c.Unit != ""
	}
	var lines []string
	if hasHead {
		lines = append(lines, tb.headLine(t, w, sizes, Title, func(c Column) string { return c.Head }))
	}
	if hasUnit {
		lines = append(lines, tb.headLine(t, w, sizes, Unit, func(c Column) string { return c.Unit }))
	}
	return lines
}

func (tb Table) headLine(t Theme, w int, sizes []columnSize, r Role, text func(Column) string) string {
	var b strings.Builder
	b.WriteString(spaces(tb.margin()))
	for i, c := range tb.Columns {
		if i > 0 {
			b.WriteString(spaces(tb.gap()))
		}
		head, n := t.cut(text(c), sizes[i].total)
		pad := 0
		if c.Align != Left {
			pad = max(sizes[i].whole+sizes[i].frac, n) - n
		}
		b.WriteString(spaces(pad) + t.Style(r).Render(t.Style(c.Hue).Render(head)) + spaces(sizes[i].total-pad-n))
	}
	return t.Fit(b.String(), w)
}

// Body is the rows, one line each, in their order: line i is row i.
func (tb Table) Body(t Theme, w int) []string {
	sizes := tb.sizes(t, w)
	lines := make([]string, len(tb.Rows))
	for i, row := range tb.Rows {
		var b strings.Builder
		if tb.Margin {
			b.WriteString(pick(row.Focus, t.PaintMark(Focus), pick(row.Follows, t.Mark(Focus), " ")) + " ")
		}
		if row.Heading != "" {
			b.WriteString(t.Paint(Title, row.Heading))
			lines[i] = t.Fit(b.String(), w)
			continue
		}
		for j, c := range tb.Columns {
			if j > 0 {
				b.WriteString(spaces(tb.gap()))
			}
			cell := cellAt(row, j)
			if (row.Focus || row.Follows) && j == 0 && (cell.Role == Plain || cell.Role == Label) {
				cell.Role = Title // so that the eye finds the row from its name as well
			}
			b.WriteString(drawCell(t, c, cell, sizes[j]))
		}
		lines[i] = t.Fit(b.String(), w)
	}
	return lines
}

// Width is the table's natural width.
func (tb Table) Width(t Theme) int {
	w := tb.margin() + tb.gap()*max(0, len(tb.Columns)-1)
	for i, c := range tb.Columns {
		w += tb.natural(t, i, c).total
	}
	return w
}

// ColumnAt is the column at cell x of the lines that the table draws w cells wide; ok is false
// in the margin and right of the last.
func (tb Table) ColumnAt(t Theme, w, x int) (column int, ok bool) {
	at := tb.margin()
	for j, size := range tb.sizes(t, w) {
		if j > 0 {
			at += tb.gap()
		}
		if x >= at && x < at+size.total {
			return j, true
		}
		at += size.total
	}
	return 0, false
}

func cellAt(row TableRow, j int) Cell {
	if j < len(row.Cells) {
		return row.Cells[j]
	}
	return Cell{}
}

// drawCell is the cell in exactly size.total cells.
func drawCell(t Theme, c Column, cell Cell, size columnSize) string {
	role := cell.Role
	if role == Plain {
		role = c.Role
	}
	textW := size.whole + size.frac
	if c.Align == Point && cell.isWord() {
		return drawWord(t, cell, role, size)
	}
	var text string
	switch c.Align {
	case Left:
		text = t.Fit(cell.Text, textW)
	case Right:
		text = t.FitRight(cell.Text, textW)
	case Point:
		whole, frac := splitPoint(t, cell.Text)
		text = t.Fit(t.FitRight(whole, size.whole)+frac, textW)
	}
	if size.mark > 0 && cell.Mark == role {
		text = t.Style(role).Render(text + spaces(size.mark-1) + t.Mark(role)) // one band, not two
	} else {
		text = t.Style(role).Render(text)
		if size.mark > 0 {
			text += spaces(size.mark-1) + t.PaintMark(cell.Mark)
		}
	}
	if size.unit > 0 {
		text += " " + t.Style(Unit).Render(t.Fit(cell.Unit, size.unit-1))
	}
	return text + spaces(size.total-textW-size.mark-size.unit)
}

// isWord reports whether a cell of a number column says something instead, like "does
// not fit".
func (c Cell) isWord() bool { return c.Unit == "" && (c.Word || !isNumber(c.Text)) }

// drawWord puts a word in place of a number; a longer one extends over the columns of marks and units.
func drawWord(t Theme, cell Cell, role Role, size columnSize) string {
	mark, room, markW := "", size.total, 0
	if cell.Mark != Plain {
		mark, markW = spaces(size.mark-1)+t.PaintMark(cell.Mark), size.mark
		room -= size.mark
	}
	text, n := t.cut(cell.Text, room)
	left := max(0, size.whole-n)
	if cell.Word {
		left = max(0, size.whole+size.frac-n)
	}
	gap := max(0, size.whole+size.frac-left-n) // keeps the mark in its column
	return spaces(left) + t.Style(role).Render(text) + spaces(gap) + mark + spaces(size.total-left-n-gap-markW)
}

// splitPoint splits a number before its decimal point; anything that does not begin like a number is
// all integer part.
func splitPoint(t Theme, s string) (whole, frac string) {
	s = t.Text(hygiene(s))
	i := strings.IndexByte(s, '.')
	if i < 0 || !isNumber(s) {
		return s, ""
	}
	return s[:i], s[i:]
}

func (tb Table) gap() int {
	if tb.Gap <= 0 {
		return 2
	}
	return tb.Gap
}

func (tb Table) margin() int {
	if tb.Margin {
		return 2
	}
	return 0
}

// sizes works out the columns' widths for a table of w cells.
func (tb Table) sizes(t Theme, w int) []columnSize {
	sizes := make([]columnSize, len(tb.Columns))
	over := tb.margin() - w
	for i, c := range tb.Columns {
		sizes[i] = tb.natural(t, i, c)
		over += sizes[i].total
		if i > 0 {
			over += tb.gap()
		}
	}
	for over > 0 {
		widest := -1
		for i, c := range tb.Columns {
			if c.Shrink && sizes[i].total > max(c.Min, 6) && sizes[i].whole > 1 && (widest < 0 || sizes[i].total > sizes[widest].total) {
				widest = i
			}
		}
		if widest < 0 {
			break
		}
		sizes[widest].whole--
		sizes[widest].total--
		over--
	}
	return sizes
}

// natural is the width column i would like to have.
func (tb Table) natural(t Theme, i int, c Column) columnSize {
	var s columnSize
	mark := pickInt(c.Tight, 1, 2)
	if s.whole, s.frac, s.unit = c.Whole, c.Frac, c.Units; c.Marks {
		s.mark = mark
	}
	words := max(c.Min, Width(t.Text(c.Head)), Width(t.Text(c.Unit)))
	for _, row := range tb.Rows {
		if row.Heading != "" {
			continue
		}
		cell := cellAt(row, i)
		if cell.Mark != Plain {
			s.mark = mark
		}
		if cell.Unit != "" {
			s.unit = max(s.unit, 1+Width(t.Text(hygiene(cell.Unit))))
		}
		text := Width(t.Text(hygiene(cell.Text)))
		switch {
		case c.Align != Point:
			s.whole = max(s.whole, text)
		case cell.isWord():
			words = max(words, text+pickInt(cell.Mark != Plain, mark, 0))
		default:
			whole, frac := splitPoint(t, cell.Text)
			s.whole, s.frac = max(s.whole, Width(whole)), max(s.frac, Width(frac))
		}
	}
	if extra := words - (s.whole + s.frac + s.mark + s.unit); extra > 0 {
		s.whole += extra
	}
	s.total = s.whole + s.frac + s.mark + s.unit
	return s
}

// isNumber reports whether s begins with a digit, signs aside.
func isNumber(s string) bool {
	s = strings.TrimLeft(s, "+-−±~= ")
	return s != "" && s[0] >= '0' && s[0] <= '9'
}
