package chart

import (
	"math"
	"slices"

	"slotwright/tui/kit"
)

// Axis describes one axis of a chart. With Min and Max equal (as in the zero
// value) or not finite the range is taken from what is drawn and rounded out to
// whole ticks.
type Axis struct {
	Label, Unit string
	Shorter     []string // the label where the whole one does not fit, the longest first
	Min, Max    float64
	Zero        bool // an automatic range includes 0
}

// Series is one line of a chart. Role and texture follow from its place in
// the list, unless Role is set.
type Series struct {
	Letter string // one character, at the line's end and in the legend
	Name   string
	Short  string // the name where whole names do not fit
	Points []XY   // in the order to join them; a point not finite is a gap
	Marks  bool   // a mark at every point, as for readings
	NoLine bool   // marks only
	// Thin are the ranges of x in which only a few dots of the line are drawn. A series without points
	// has them in its legend alone.
	Thin   [][2]float64
	Role   kit.Role
	Chosen bool // marked as the chosen one in the legend
}

// Marker is a single point with a label: a crossing, a working point.
type Marker struct {
	X, Y  float64
	Label string
	Role  kit.Role // Plain: Value
}

// Limit is a line across the chart with a label.
type Limit struct {
	At    float64
	Label string
	Role  kit.Role // Plain: Dim
}

// Cursor is a vertical line the person moves.
type Cursor struct {
	X     float64
	Label string
}

// Chart is lines over two axes. Labels never collide: one that has no free place is
// left out, its line or mark stays.
type Chart struct {
	Width, Height int // in cells; readable from 60 x 14, a note below 24 x 7
	X, Y          Axis
	Series        []Series
	Markers       []Marker
	VLines        []Limit // at an x
	HLines        []Limit // at a y
	Cursor        *Cursor // nil: none
}

// minChartW and minChartH are the smallest chart that is drawn at all.
const (
	minChartW = 24
	minChartH = 7
)

// plot is a chart being drawn.
type plot struct {
	Chart
	c              *Canvas
	area           kit.Rect // inside the axes
	x0, x1, y0, y1 float64
	xStep, yStep   float64
	xTicks, yTicks []float64
	title          string // of the y axis
	legend         []legendItem
	legendRows     int
}

// Lines draws the chart: exactly Height lines of Width cells.
func (ch Chart) Lines(t kit.Theme) []string {
	if ch.Width < minChartW || ch.Height < minChartH {
		text := t.Wrap("no room for a chart", ch.Width)
		return kit.Bare(t, kit.Rect{W: ch.Width, H: ch.Height}, text).Lines
	}
	p := &plot{Chart: ch, c: New(t, ch.Width, ch.Height)}
	p.layout()
	p.drawFrame()
	p.drawLimits()
	ends := p.drawSeries()
	p.drawMarkers()
	p.drawLetters(ends)
	p.drawLimitLabels()
	return p.c.Lines()
}

// role and texture of series i.
func (p *plot) role(i int) kit.Role {
	if r := p.Series[i].Role; r != kit.Plain {
		return r
	}
	return kit.Series(i)
}

// layout works out ranges, ticks and the area inside the axes.
func (p *plot) layout() {
	p.title = p.c.theme.Text(p.Y.titleIn(p.c.theme, p.Width))
	p.legendLayout()
	top := 1 + p.legendRows
	rows := p.Height - top - 3
	xs, ys := p.extents()
	p.y0, p.y1, p.yTicks, p.yStep = p.Y.level(ys, rows, p.marksAt(ys.lo))
	gutter := 1
	for _, v := range p.yTicks {
		gutter = max(gutter, kit.Width(TickText(v, p.yStep)))
	}
	gutter = min(gutter, p.Width/3)
	p.area = kit.Rect{X: gutter + 1, Y: top, W: p.Width - gutter - 3, H: rows}
	for n := max(2, p.area.W/7); ; n-- {
		p.x0, p.x1, p.xTicks, p.xStep = p.X.scale(xs, n)
		if n <= 2 || p.xLabelsFit() {
			break
		}
	}
	p.c.Area(p.area)
	p.c.View(p.x0, p.y0, p.x1, p.y1)
}

// xLabelsFit reports whether the x ticks' labels leave two cells between neighbours.
func (p *plot) xLabelsFit() bool {
	widest := 0
	for _, v := range p.xTicks {
		widest = max(widest, kit.Width(TickText(v, p.xStep)))
	}
	return len(p.xTicks) < 2 || float64(widest+2) <= p.xStep/(p.x1-p.x0)*float64(p.area.W-1)
}

// span is a range that grows with what is put in.
type span struct{ lo, hi float64 }

func (s *span) add(v float64) {
	if !math.IsNaN(v) && !math.IsInf(v, 0) {
		s.lo, s.hi = min(s.lo, v), max(s.hi, v)
	}
}

// extents are the ranges of everything that should be visible. Points outside a fixed x range do not
// count for y.
func (p *plot) extents() (xs, ys span) {
	xs, ys = span{math.Inf(1), math.Inf(-1)}, span{math.Inf(1), math.Inf(-1)}
	point := func(q XY) {
		if q.finite() && (!p.X.fixed() || q.X >= min(p.X.Min, p.X.Max) && q.X <= max(p.X.Min, p.X.Max)) {
			xs.add(q.X)
			ys.add(q.Y)
		}
	}
	for _, s := range p.Series {
		for _, q := range s.Points {
			point(q)
		}
	}
	for _, m := range p.Markers {
		point(XY{m.X, m.Y})
	}
	for _, l := range p.VLines {
		xs.add(l.At)
	}
	for _, l := range p.HLines {
		ys.add(l.At)
	}
	return xs, ys
}

func (a Axis) fixed() bool {
	return a.Min != a.Max && !math.IsNaN(a.Max-a.Min) && !math.IsInf(a.Max-a.Min, 0)
}

// scale is the axis' range with at most n ticks.
func (a Axis) scale(s span, n int) (lo, hi float64, ticks []float64, step float64) {
	if a.fixed() {
		lo, hi = min(a.Min, a.Max), max(a.Min, a.Max)
		ticks, step = Ticks(lo, hi, n)
		return lo, hi, ticks, step
	}
	lo, hi = a.wanted(s)
	if step = niceStep(lo, hi, n); step > 0 {
		lo, hi = math.Floor(lo/step+1e-9)*step, math.Ceil(hi/step-1e-9)*step
		ticks, step = Ticks(lo, hi, n+2)
	}
	return lo, hi, ticks, step
}

// level is scale for the upright axis, of so many rows: where the range is free the ticks are a whole
// number of rows apart, so that equal steps look equal. With room for a row below the lowest point,
// names of marks there have a place.
func (a Axis) level(s span, rows int, below bool) (lo, hi float64, ticks []float64, step float64) {
	lo, hi, ticks, step = a.scale(s, max(2, rows/3+1))
	if a.fixed() {
		return lo, hi, ticks, step
	}
	least, most := a.wanted(s)
	for _, under := range []bool{below && rows >= lowRows, false} {
		if from, to, by := evenly(least, most, rows, under); by > 0 && to-from <= wider*(hi-lo) {
			return from, to, ticksAt(from, to, by), by
		}
	}
	return lo, hi, ticks, step
}

// wider is the factor by which a chart's range may exceed the whole ticks, so that these are evenly
// spaced.
const wider = 1.15

// lowRows is the number of rows from which a chart can spare one.
const lowRows = 5

// marksAt reports whether a named mark is as low as y.
func (p *plot) marksAt(y float64) bool {
	return slices.ContainsFunc(p.Markers, func(m Marker) bool { return m.Label != "" && m.Y <= y })
}

// wanted is the range that has to be visible: never empty.
func (a Axis) wanted(s span) (lo, hi float64) {
	if a.Zero {
		s.add(0)
	}
	if s.lo > s.hi {
		s = span{0, 1}
	}
	if pad := max(math.Abs(s.lo)*1e-3, 1e-9); s.hi-s.lo < pad {
		wider := max(math.Abs(s.lo)/10, 0.5)
		s.hi += wider
		if !a.Zero || s.lo < 0 {
			s.lo -= wider
		}
	}
	return s.lo, s.hi
}
