package chart

import (
	"math"

	"slotwright/tui/kit"
)

// XY is a point in data coordinates: x to the right, y up. A point with a NaN or
// infinite coordinate is a gap in a line and is not drawn.
type XY struct{ X, Y float64 }

func (p XY) finite() bool {
	return !math.IsNaN(p.X) && !math.IsInf(p.X, 0) && !math.IsNaN(p.Y) && !math.IsInf(p.Y, 0)
}

// cell holds three layers, the later hiding the earlier: a back rune (grid, limit lines), dots, text.
// Where dots of two roles share a cell the later role is used.
type cell struct {
	back, text                   rune
	dots                         uint8
	backRole, dotsRole, textRole kit.Role
}

// Canvas is a picture of fixed size. Anything outside it, or outside of the area set, is clipped.
type Canvas struct {
	theme kit.Theme
	w, h  int
	cells []cell
	area  kit.Rect // in cells; drawing in data coordinates stays inside
	view  view
}

// view maps data coordinates to dots: dot = origin + scale·data.
type view struct{ ox, sx, oy, sy float64 }

// New is an empty canvas of w x h cells; negative sizes count as 0. Its view is
// 0..1 in both directions over the whole.
func New(t kit.Theme, w, h int) *Canvas {
	w, h = max(0, w), max(0, h)
	c := &Canvas{theme: t, w: w, h: h, cells: make([]cell, w*h)}
	c.Area(kit.Rect{W: w, H: h})
	return c
}

// Area limits drawing in data coordinates to a rectangle of cells, to which the next View
// refers, and resets the view to 0..1.
func (c *Canvas) Area(r kit.Rect) {
	x0, y0 := min(max(r.X, 0), c.w), min(max(r.Y, 0), c.h)
	x1, y1 := min(max(r.X+r.W, x0), c.w), min(max(r.Y+r.H, y0), c.h)
	c.area = kit.Rect{X: x0, Y: y0, W: x1 - x0, H: y1 - y0}
	c.View(0, 0, 1, 1)
}

// View stretches the data rectangle x0, y0 (bottom left) to x1, y1 (top right) over the area. A side of
// zero or infinite length is mapped to the middle.
func (c *Canvas) View(x0, y0, x1, y1 float64) {
	var v view
	v.ox, v.sx = axisMap(x0, x1, float64(2*c.area.X), float64(2*c.area.W-1))
	v.oy, v.sy = axisMap(y1, y0, float64(4*c.area.Y), float64(4*c.area.H-1))
	c.view = v
}

// ViewSquare shows the whole data rectangle in the middle of the area with the same scale
// in both directions, so that a circle is round.
func (c *Canvas) ViewSquare(x0, y0, x1, y1 float64) {
	c.View(x0, y0, x1, y1)
	scale := min(math.Abs(c.view.sx), math.Abs(c.view.sy))
	midX := float64(2*c.area.X) + float64(2*c.area.W-1)/2
	midY := float64(4*c.area.Y) + float64(4*c.area.H-1)/2
	c.view = view{midX - scale*(x0+x1)/2, scale, midY + scale*(y0+y1)/2, -scale}
}

// axisMap maps from..to on first..first+n.
func axisMap(from, to, first, n float64) (origin, scale float64) {
	scale = n / (to - from)
	if n <= 0 || math.IsNaN(scale) || math.IsInf(scale, 0) || scale == 0 {
		return first + max(n, 0)/2, 0
	}
	return first - scale*from, scale
}

// farAway bounds dot coordinates, so that a wild value cannot overflow.
const farAway = 1e7

// dot is where a finite point lies, in dots.
func (c *Canvas) dot(p XY) (x, y float64) {
	x = c.view.ox + c.view.sx*p.X
	y = c.view.oy + c.view.sy*p.Y
	return max(-farAway, min(x, farAway)), max(-farAway, min(y, farAway))
}

// CellOf is the cell a point lies in; ok is false outside of the area.
func (c *Canvas) CellOf(p XY) (col, row int, ok bool) {
	if !p.finite() {
		return 0, 0, false
	}
	fx, fy := c.dot(p)
	x, y := int(math.Round(fx)), int(math.Round(fy))
	col, row = floorDiv(x, 2), floorDiv(y, 4)
	return col, row, c.area.Contains(col, row)
}

func floorDiv(a, b int) int {
	if a < 0 {
		return -((b - 1 - a) / b)
	}
	return a / b
}

// Text writes s from a cell to the right, over the dots, anywhere on the canvas; what lies outside is
// cut off.
func (c *Canvas) Text(col, row int, s string, role kit.Role) {
	if row < 0 || row >= c.h {
		return
	}
	for _, r := range c.theme.Text(kit.Clean(s)) {
		if r >= 0x80 && kit.Width(string(r)) != 1 {
			r = '?'
		}
		if col >= 0 && col < c.w {
			k := &c.cells[row*c.w+col]
			k.text, k.textRole = r, role
		}
		col++
	}
}

// Back puts a rune behind dots and text: grid points, limit lines.
func (c *Canvas) Back(col, row int, r rune, role kit.Role) {
	if col >= 0 && col < c.w && row >= 0 && row < c.h {
		k := &c.cells[row*c.w+col]
		k.back, k.backRole = r, role
	}
}

// Free reports whether n cells from col on lie on the canvas and hold no text.
func (c *Canvas) Free(col, row, n int) bool { return c.free(col, row, n, false) }

// free is Free; with dotless it asks for no dots either.
func (c *Canvas) free(col, row, n int, dotless bool) bool {
	if row < 0 || row >= c.h || col < 0 || col+n > c.w {
		return false
	}
	for _, k := range c.cells[row*c.w+col : row*c.w+col+n] {
		if k.text != 0 || dotless && k.dots != 0 {
			return false
		}
	}
	return true
}
