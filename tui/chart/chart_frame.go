package chart

import (
	"slotwright/tui/kit"
)

// axisTitle is "label, unit".
func (a Axis) axisTitle() string {
	switch {
	case a.Unit == "":
		return a.Label
	case a.Label == "":
		return a.Unit
	}
	return a.Label + ", " + a.Unit
}

// titleIn is the title in at most w cells: a shorter label where the long one does not fit; the label
// is cut before the unit is.
func (a Axis) titleIn(t kit.Theme, w int) string {
	title := a.axisTitle()
	for _, label := range a.Shorter {
		if kit.Width(t.Text(title)) > w {
			a.Label = label
			title = a.axisTitle()
		}
	}
	if a.Label == "" || a.Unit == "" {
		return t.Cut(title, w)
	}
	end := ", " + a.Unit
	return t.Cut(a.Label, w-kit.Width(t.Text(end))) + end
}

// drawFrame draws axes, ticks, their labels, the grid's points and the legend.
func (p *plot) drawFrame() {
	t, a := p.c.theme, p.area
	g := t.Glyphs()
	p.c.Text(0, 0, p.title, kit.Label)
	p.drawLegend()
	for row := a.Y; row < a.Y+a.H; row++ {
		p.c.Text(a.X-1, row, g.Vertical, kit.Border)
	}
	p.c.Text(a.X-1, a.Y+a.H, g.BottomLeft, kit.Border)
	for col := a.X; col < a.X+a.W; col++ {
		p.c.Text(col, a.Y+a.H, g.Horizontal, kit.Border)
	}
	rows := p.drawYTicks(g)
	cols := p.drawXTicks(g)
	dot := '·'
	if t.ASCII {
		dot = '.'
	}
	for _, row := range rows {
		for _, col := range cols {
			p.c.Back(col, row, dot, kit.Border)
		}
	}
	title := p.X.titleIn(t, p.Width)
	p.c.Text(a.X+a.W-kit.Width(title), a.Y+a.H+2, title, kit.Label)
}

// drawYTicks marks the y axis and returns the rows it marked.
func (p *plot) drawYTicks(g *kit.Glyphs) []int {
	var rows []int
	last := -1
	for _, v := range p.yTicks {
		_, row, ok := p.c.CellOf(XY{p.x0, v})
		if !ok || row == last {
			continue
		}
		last = row
		rows = append(rows, row)
		p.c.Text(p.area.X-1, row, g.TeeLeft, kit.Border)
		label := p.c.theme.Cut(TickText(v, p.yStep), p.area.X-1)
		p.c.Text(p.area.X-1-kit.Width(label), row, label, kit.Dim)
	}
	return rows
}

// drawXTicks marks the x axis and returns the columns it marked. A label that would touch the one
// before is left out.
func (p *plot) drawXTicks(g *kit.Glyphs) []int {
	var cols []int
	row := p.area.Y + p.area.H
	for _, v := range p.xTicks {
		col, _, ok := p.c.CellOf(XY{v, p.y0})
		if !ok {
			continue
		}
		cols = append(cols, col)
		p.c.Text(col, row, g.TeeDown, kit.Border)
		label := TickText(v, p.xStep)
		n := kit.Width(label)
		at := max(0, min(col-n/2, p.Width-n))
		if p.c.Free(max(0, at-1), row+1, min(n+1, p.Width-max(0, at-1))) {
			p.c.Text(at, row+1, label, kit.Dim)
		}
	}
	return cols
}

// legendItem is a series' entry: its line, letter and name.
type legendItem struct {
	col, row int
	series   int
	name     string
}

// sampleW is the width of a legend entry up to its letter: line and space.
const sampleW = 6

// How much a legend says: whole names, short ones, short ones of the lines that have a letter, the
// letters. A name is never cut: it contains the turns and the wire.
const (
	wholeNames = iota
	shortNames
	lettered
	lettersOnly
)

// legendLayout places the entries: beside the y axis' title if they fit there, else in a row of their
// own, or two when the chart is high enough, with as much detail as fits.
func (p *plot) legendLayout() {
	if len(p.Series) == 0 {
		return
	}
	if p.tryLegend(kit.Width(p.title)+3, 0, 1, wholeNames) || p.Height < rowsEnough && p.besideShorter() {
		return
	}
	p.legendRows = 1
	for says := wholeNames; says <= lettersOnly; says++ {
		if p.tryLegend(0, 1, 1, says) {
			return
		}
		if says < lettersOnly && p.Height >= 12 && (p.Height >= rowsEnough || says > wholeNames) && p.tryLegend(0, 1, 2, says) {
			p.legendRows = 2
			return
		}
	}
}

// besideShorter puts the legend beside a shorter title, though not beside the shortest, so that a low
// chart keeps a row more for its lines; it reports whether it fitted.
func (p *plot) besideShorter() bool {
	for i := range max(0, len(p.Y.Shorter)-1) {
		short := p.Y
		short.Label = p.Y.Shorter[i]
		title := p.c.theme.Text(short.axisTitle())
		for says := wholeNames; says <= lettered; says++ {
			if p.tryLegend(kit.Width(title)+3, 0, 1, says) {
				p.title = title
				return true
			}
		}
	}
	return false
}

// rowsEnough is the height from which two rows of whole names are preferred to one of short ones.
const rowsEnough = 16

// legendName is what the legend calls a series, "" where it has only its letter; ok is false where it
// is left out.
func (s *Series) legendName(says int) (name string, ok bool) {
	switch {
	case s.Name == "" && s.Letter == "":
		return "", false // it only keeps its place in the list
	case says == lettersOnly:
		return "", s.Letter != ""
	case says == lettered && s.Letter == "":
		return "", false
	case says > wholeNames && s.Short != "":
		return s.Short, true
	}
	return s.Name, true
}

// tryLegend places entries in rows from a given column and row on, and reports whether all fit.
func (p *plot) tryLegend(start, row, rows, says int) bool {
	p.legend = p.legend[:0]
	col := start
	for i := range p.Series {
		s := &p.Series[i]
		name, ok := s.legendName(says)
		if !ok {
			continue
		}
		name = p.c.theme.Text(kit.Clean(name))
		n := sampleW + kit.Width(name)
		if s.Letter != "" {
			n++ // the letter
			if s.Chosen {
				n++ // and its mark
			}
			if name != "" {
				n++ // and a blank
			}
		}
		if col+n > p.Width && col > start {
			row, col, rows = row+1, start, rows-1
		}
		if col+n > p.Width || rows == 0 {
			return false
		}
		p.legend = append(p.legend, legendItem{col, row, i, name})
		col += n + 3
	}
	return true
}

// drawLegend draws each entry's line with the line's own dots.
func (p *plot) drawLegend() {
	for _, it := range p.legend {
		s, role := p.Series[it.series], p.role(it.series)
		p.c.area = kit.Rect{X: it.col, Y: it.row, W: 5, H: 1}
		texture := SeriesTexture(it.series)
		if len(s.Thin) > 0 && len(s.Points) == 0 {
			texture = Sparse
		}
		for n := 0; n < 10 && !s.NoLine; n++ {
			if texture.on(n) {
				p.c.setDot(2*it.col+n, 4*it.row+2, role)
			}
		}
		if s.Marks || s.NoLine {
			p.c.Text(it.col+2, it.row, p.c.theme.Glyphs().Point, role)
		}
		at := it.col + sampleW
		if letter := p.letter(it.series); letter != "" {
			if s.Chosen {
				p.c.Text(at, it.row, p.c.theme.Glyphs().Chosen, role)
				at++
			}
			p.c.Text(at, it.row, letter, role)
			at += 2
		}
		p.c.Text(at, it.row, it.name, kit.Plain)
	}
	p.c.area = p.area
}

// letter is the first character of a series' letter.
func (p *plot) letter(i int) string {
	for _, r := range p.c.theme.Text(kit.Clean(p.Series[i].Letter)) {
		return string(r)
	}
	return ""
}
