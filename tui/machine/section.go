package machine

import (
	"math"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// A slot to scale fits from this height of its box on; above mostSection it gets no larger.
const (
	leastSection = 14
	mostSection  = 30
)

// withSection splits the slot's box from under the results, where that leaves them so many lines and
// the slot is known.
func (v *View) withSection(s *session.Session, r kit.Rect, lines int) (follows, picture kit.Rect) {
	left := r.H - lines - 3 // its border, and a line of air
	if !v.begins || left < leastSection {
		return r, kit.Rect{}
	}
	cut, why := s.Bench().Section()
	if why != "" {
		return r, kit.Rect{}
	}
	x, low, high := extent(&cut)
	full := int(float64(kit.Inner(r).W-deepW)*(high-low)/(4*x)) + 4 // a cell is twice as high as wide; border, mouth and air
	return r.SplitBottom(max(leastSection, min(left, full, mostSection)))
}

// extent is the horizontal and vertical extent of the picture.
func extent(cut *winding.Section) (x, low, high float64) {
	half := widest(cut.Wall)
	if low = cut.BackMM; low == 0 { // nobody knows how far it goes: some of it, without an end
		low = -cut.GapMM / 6
	}
	return max(2*half, widest(cut.Next)) + half/3, low, cut.GapMM
}

func widest(points []slot.Point) (x float64) {
	for _, p := range points {
		x = max(x, p.X)
	}
	return x
}

// section is the slot to scale with its sizes on it, tooth and iron beside it, in a box.
func section(s *session.Session, r kit.Rect) kit.Block {
	cut, _ := s.Bench().Section()
	in := kit.Inner(r)
	return kit.Panel{Title: "The slot, to scale", Foot: "sizes in " + s.Units.For(quantity.Millimetres).Name}.
		Draw(s.Theme, r, sectionLines(s, &cut, in.W, in.H))
}

// deepW is the width for the depth beside the slot, when the tooth has no size.
const deepW = 8

// sectionLines draw the slot in w by h cells. The gap is above.
func sectionLines(s *session.Session, cut *winding.Section, w, h int) []string {
	c := chart.New(s.Theme, w, h)
	c.Area(kit.Rect{X: deepW, Y: 1, W: w - deepW, H: h - 1})
	edge, back, _ := extent(cut)
	c.ViewSquare(-edge, back, edge, cut.GapMM)
	for _, side := range []float64{1, -1} {
		wall, next := mirrored(cut.Wall, side), mirrored(cut.Next, side)
		c.Hatch(ironOf(wall, next, side*edge, back), kit.Border)
		strokes(c, wall)
		strokes(c, next)
		if tip := wall[len(wall)-1]; len(next) > 0 {
			strokes(c, []chart.XY{tip, next[0]})
			strokes(c, []chart.XY{next[len(next)-1], {X: side * edge, Y: next[len(next)-1].Y}})
		} else {
			strokes(c, []chart.XY{tip, {X: side * edge, Y: cut.GapMM}})
		}
		if cut.BackMM != 0 {
			strokes(c, []chart.XY{{X: 0, Y: back}, {X: side * edge, Y: back}})
		}
	}
	written{s, c, cut, back}.sizes()
	return c.Lines()
}

// mirrored is an outline on the right side, or its mirror image on the left.
func mirrored(points []slot.Point, side float64) []chart.XY {
	out := make([]chart.XY, len(points))
	for i, p := range points {
		out[i] = chart.XY{X: side * p.X, Y: p.Y}
	}
	return out
}

// ironOf is the iron on one side: round the slot's wall, over the tooth, down the next slot's wall and
// along its bottom and the back.
func ironOf(wall, next []chart.XY, edge, back float64) []chart.XY {
	all := append([]chart.XY{{X: 0, Y: back}}, wall...)
	if all = append(all, next...); len(next) > 0 {
		all = append(all, chart.XY{X: edge, Y: next[len(next)-1].Y})
	} else {
		all = append(all, chart.XY{X: edge, Y: wall[len(wall)-1].Y})
	}
	return append(all, chart.XY{X: edge, Y: back})
}

func strokes(c *chart.Canvas, points []chart.XY) {
	for i := 1; i < len(points); i++ {
		c.Line(points[i-1], points[i], kit.Value, chart.Solid)
	}
}

// written are the sizes as written on the picture.
type written struct {
	s    *session.Session
	c    *chart.Canvas
	cut  *winding.Section
	back float64 // how low the picture goes, in mm
}

// sizes writes each where it is measured: the mouth over it, widths in the slot, its depth beside it, the
// tooth on the tooth and the iron under the slot.
func (p written) sizes() {
	cut := p.cut
	body := cut.GapMM - cut.MouthHigh.Value
	mouth := p.number(cut.Mouth)
	if high := p.number(cut.MouthHigh); mouth != "" && high != "" {
		mouth = "mouth " + mouth + ", " + high + " high"
	}
	if _, row, ok := p.c.CellOf(chart.XY{X: 0, Y: cut.GapMM}); ok && mouth != "" {
		p.middle(0, row-1, mouth)
	}
	slot := 2 * widest(cut.Wall)
	p.at(0, body*0.75, slot, "wide", p.number(cut.Wide))
	if low := p.number(cut.Bottom); low != "" {
		p.at(0, body*0.3, slot, low)
	}
	if n := len(cut.Next); n > 0 {
		beside, y := cut.Next[n-1], 0.15*body
		if top := cut.Next[n/4]; top.X < beside.X { // it is narrowest towards the gap
			beside, y = top, 0.75*body
		}
		p.at((widest(cut.Wall)+beside.X)/2, y, beside.X-widest(cut.Wall), "tooth", p.number(cut.Tooth))
	}
	p.deep(body)
	iron := p.number(cut.Back)
	if iron == "" {
		iron = "iron"
	} else {
		iron = "iron " + iron
	}
	p.at(0, p.back/2, math.Inf(1), iron)
}

// deep writes the body's depth left of the picture, beside a line of that length.
func (p written) deep(body float64) {
	deep := p.number(p.cut.Deep)
	_, from, above := p.c.CellOf(chart.XY{X: 0, Y: body})
	_, to, below := p.c.CellOf(chart.XY{X: 0, Y: 0})
	if deep == "" || !above || !below {
		return
	}
	rule := '│'
	if p.s.Theme.ASCII {
		rule = '|'
	}
	for row := from; row <= to; row++ {
		p.c.Back(deepW-1, row, rule, kit.Dim)
	}
	p.c.Text(0, (from+to)/2-1, "deep", kit.Value)
	p.c.Text(0, (from+to)/2, deep, kit.Value)
}

// number is a size in the chosen unit, ~ before one that a guess affects; "" where it is missing.
func (p written) number(f quantity.Figure) string {
	if !f.Known() {
		return ""
	}
	cell := p.s.Figure(f, quantity.Millimetres, 3)
	if cell.Mark == kit.Guessed {
		return session.Rough + cell.Text
	}
	return cell.Text
}

// at writes a size about a place, in mm, under its name where both fit within so many mm and under the
// gap's face; nothing where there is no size.
func (p written) at(x, y, room float64, lines ...string) {
	size := lines[len(lines)-1]
	_, row, ok := p.c.CellOf(chart.XY{X: x, Y: y})
	if size == "" || !ok {
		return
	}
	if what := lines[0]; len(lines) > 1 {
		from, _, _ := p.c.CellOf(chart.XY{X: x, Y: y})
		to, _, within := p.c.CellOf(chart.XY{X: x + room, Y: y})
		_, top, _ := p.c.CellOf(chart.XY{X: 0, Y: p.cut.GapMM - p.cut.MouthHigh.Value})
		if (!within || to-from > kit.Width(what)) && row-1 > top {
			p.middle(x, row-1, what)
		}
	}
	p.middle(x, row, size)
}

// middle writes a text in a row with its middle at x.
func (p written) middle(x float64, row int, text string) {
	if col, _, ok := p.c.CellOf(chart.XY{X: x, Y: p.cut.GapMM / 2}); ok {
		p.c.Text(col-kit.Width(text)/2, row, text, kit.Value)
	}
}
