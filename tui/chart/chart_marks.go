package chart

import (
	"cmp"
	"slices"
	"unicode"

	"slotwright/tui/kit"
)

// lineEnd is the place of a series' letter, and the dot at which the line ends.
type lineEnd struct{ col, row, series, dot int }

// drawSeries draws all lines and returns their ends inside the area.
func (p *plot) drawSeries() []lineEnd {
	var ends []lineEnd
	for i, s := range p.Series {
		if !s.NoLine {
			var end *lineEnd
			for _, piece := range s.parts() {
				texture := SeriesTexture(i)
				if piece.thin {
					texture = Sparse
				}
				if x, y, ok := p.c.polyline(piece.points, p.role(i), texture); ok {
					end = &lineEnd{x >> 1, y >> 2, i, y}
				}
			}
			if end != nil {
				ends = append(ends, *end)
			}
		}
		if s.Marks || s.NoLine {
			for _, q := range s.Points {
				if col, row, ok := p.c.CellOf(q); ok {
					p.c.Text(col, row, p.c.theme.Glyphs().Point, p.role(i))
				}
			}
		}
	}
	return ends
}

// part is a piece of a line that is all thin, or not thin at all.
type part struct {
	points []XY
	thin   bool
}

// parts are a line's pieces, divided where it becomes thin or ceases to be.
func (s *Series) parts() (list []part) {
	points := s.cut()
	if len(points) < 2 || len(s.Thin) == 0 {
		return []part{{points, len(points) == 1 && s.thinAt(points[0].X)}}
	}
	for i := 1; i < len(points); i++ {
		thin := s.thinAt((points[i-1].X + points[i].X) / 2)
		if n := len(list); n == 0 || list[n-1].thin != thin {
			list = append(list, part{[]XY{points[i-1]}, thin})
		}
		last := &list[len(list)-1]
		last.points = append(last.points, points[i])
	}
	return list
}

// thinAt reports whether the line is thin at x.
func (s *Series) thinAt(x float64) bool {
	return slices.ContainsFunc(s.Thin, func(of [2]float64) bool { return of[0] <= x && x < of[1] })
}

// cut are a line's points with an extra one wherever it becomes thin or ceases to be.
func (s *Series) cut() []XY {
	points := s.Points
	for _, of := range s.Thin {
		for _, x := range of {
			k := slices.IndexFunc(points, func(q XY) bool { return q.X > x })
			if k > 0 && points[k-1].X < x {
				a, b := points[k-1], points[k]
				points = slices.Insert(slices.Clone(points), k, XY{x, a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X)})
			}
		}
	}
	return points
}

// inOrder separates the rows in which several lines end side by side, so that their letters are in the
// order of the lines, the highest on top.
func (p *plot) inOrder(ends []lineEnd) {
	slices.SortStableFunc(ends, func(a, b lineEnd) int { return cmp.Or(cmp.Compare(a.col, b.col), cmp.Compare(a.dot, b.dot)) })
	bottom := p.area.Y + p.area.H - 1
	for i := 1; i < len(ends); i++ {
		if beside := &ends[i-1]; beside.col == ends[i].col && ends[i].row <= beside.row {
			ends[i].row = beside.row + 1
		}
	}
	for i := len(ends) - 1; i >= 0; i-- {
		ends[i].row = min(ends[i].row, bottom)
		if i+1 < len(ends) && ends[i+1].col == ends[i].col && ends[i].row >= ends[i+1].row {
			ends[i].row = ends[i+1].row - 1
		}
	}
}

// drawLetters names each line at its end: right of it, or as near as there is room.
func (p *plot) drawLetters(ends []lineEnd) {
	p.inOrder(ends)
	for _, e := range ends {
		letter := p.letter(e.series)
		if letter == "" {
			continue
		}
		if at, ok := p.letterPlace(e); ok {
			p.c.Text(at.col, at.row, letter, p.role(e.series))
		}
	}
}

// letterPlace is the free cell nearest to a line's end, preferably one that touches no other text.
func (p *plot) letterPlace(e lineEnd) (at place, ok bool) {
	for _, alone := range []bool{true, false} {
		for _, d := range [][2]int{{1, 0}, {1, -1}, {1, 1}, {2, 0}, {1, -2}, {1, 2}, {2, -1}, {2, 1}, {0, -1}, {0, 1}, {1, -3}, {1, 3}} {
			at = place{e.col + d[0], e.row + d[1]}
			if at.row >= p.area.Y && at.row < p.area.Y+p.area.H && p.c.Free(at.col, at.row, 1) && (!alone || p.apart(at, 1)) {
				return at, true
			}
		}
	}
	return at, false
}

// drawMarkers draws the marks first, so that no label takes another mark's place.
func (p *plot) drawMarkers() {
	for _, m := range p.Markers {
		if col, row, ok := p.c.CellOf(XY{m.X, m.Y}); ok {
			p.c.Text(col, row, p.c.theme.Glyphs().Point, orRole(m.Role, kit.Value))
		}
	}
	for _, m := range p.Markers {
		col, row, ok := p.c.CellOf(XY{m.X, m.Y})
		if !ok || m.Label == "" {
			continue
		}
		n := p.labelWidth(m.Label)
		p.place(m.Label, orRole(m.Role, kit.Value), []place{
			{col + 2, row}, {col - 1 - n, row}, {col + 1, row - 1}, {col + 1, row + 1},
			{col - n, row - 1}, {col - n, row + 1}, {col - n/2, row - 1}, {col - n/2, row + 1}, {col + 2, row - 2}, {col + 2, row + 2},
		})
	}
}

// drawLimits draws the limit lines and the cursor behind everything else.
func (p *plot) drawLimits() {
	across, down, cursor := '┄', '┊', '│'
	if p.c.theme.ASCII {
		across, down, cursor = '-', ':', '|'
	}
	a := p.area
	for _, l := range p.HLines {
		if _, row, ok := p.c.CellOf(XY{p.x0, l.At}); ok {
			for col := a.X; col < a.X+a.W; col++ {
				p.c.Back(col, row, across, orRole(l.Role, kit.Dim))
			}
		}
	}
	for _, l := range p.VLines {
		p.upright(l.At, down, orRole(l.Role, kit.Dim))
	}
	if p.Cursor != nil {
		p.upright(p.Cursor.X, cursor, kit.Title)
	}
}

// upright draws a vertical line at x.
func (p *plot) upright(x float64, r rune, role kit.Role) {
	if col, _, ok := p.c.CellOf(XY{x, p.y0}); ok {
		for row := p.area.Y; row < p.area.Y+p.area.H; row++ {
			p.c.Back(col, row, r, role)
		}
	}
}

// drawLimitLabels names the limit lines: upright ones beside their top, the cursor beside its foot,
// level ones on the line.
func (p *plot) drawLimitLabels() {
	a := p.area
	for _, l := range p.VLines {
		if col, _, ok := p.c.CellOf(XY{l.At, p.y0}); ok && l.Label != "" {
			p.place(l.Label, orRole(l.Role, kit.Dim), beside(col, p.labelWidth(l.Label), a.Y, 1, a.H))
		}
	}
	if p.Cursor != nil && p.Cursor.Label != "" {
		if col, _, ok := p.c.CellOf(XY{p.Cursor.X, p.y0}); ok {
			p.place(p.Cursor.Label, kit.Title, beside(col, p.labelWidth(p.Cursor.Label), a.Y+a.H-1, -1, a.H))
		}
	}
	for _, l := range p.HLines {
		_, row, ok := p.c.CellOf(XY{p.x0, l.At})
		if !ok || l.Label == "" {
			continue
		}
		right := a.X + a.W - p.labelWidth(l.Label) - 1
		p.place(l.Label, orRole(l.Role, kit.Dim), []place{
			{a.X + 2, row}, {right, row}, {a.X + 2, row - 1}, {a.X + 2, row + 1}, {right, row - 1}, {right, row + 1},
		})
	}
}

// beside are places right and left of a column, from a row on.
func beside(col, n, row, step, rows int) []place {
	var out []place
	for i := range min(rows, 6) {
		out = append(out, place{col + 1, row + i*step}, place{col - n, row + i*step})
	}
	return out
}

type place struct{ col, row int }

func (p *plot) labelWidth(s string) int { return kit.Width(p.c.theme.Text(kit.Clean(s))) }

// place writes a label in the first place inside the axes that covers and touches no text and no line,
// else the first that covers none, else the first that covers no text, else nowhere.
func (p *plot) place(s string, role kit.Role, places []place) {
	n, a := p.labelWidth(s), p.area
	for _, pass := range []struct {
		air     int
		dotless bool
	}{{1, true}, {0, true}, {0, false}} {
		for _, q := range places {
			inside := q.col >= a.X && q.col+n <= a.X+a.W && q.row >= a.Y && q.row < a.Y+a.H
			from, to := max(q.col-pass.air, a.X), min(q.col+n+pass.air, a.X+a.W)
			if inside && p.c.free(from, q.row, to-from, pass.dotless) && p.apart(q, n) {
				p.c.Text(q.col, q.row, s, role)
				return
			}
		}
	}
}

// apart reports whether there is a free cell between a label and the text beside it, and another one
// before words, which would otherwise read as one text.
func (p *plot) apart(q place, n int) bool {
	from, to := max(q.col-1, p.area.X), min(q.col+n+1, p.area.X+p.area.W)
	return p.c.Free(from, q.row, to-from) && (n == 1 || !p.word(q.col-2, q.row) && !p.word(q.col+n+1, q.row))
}

// word reports whether a cell has a letter or a figure of a label.
func (p *plot) word(col, row int) bool {
	if col < p.area.X || col >= p.area.X+p.area.W {
		return false // a line's letter beside the area stands by itself
	}
	r := p.c.cells[row*p.c.w+col].text
	return unicode.IsLetter(r) || unicode.IsDigit(r)
}

func orRole(r, other kit.Role) kit.Role {
	if r == kit.Plain {
		return other
	}
	return r
}
