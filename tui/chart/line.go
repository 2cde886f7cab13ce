package chart

import (
	"math"

	"slotwright/tui/kit"
)

// Texture distinguishes lines without colour.
type Texture uint8

// Textures of lines.
const (
	Solid Texture = iota
	Dashed
	Dotted
	DashDot
	Sparse // what is left of any of them where a line is thin
)

// SeriesTexture is the texture of the i-th series, counted from 0.
func SeriesTexture(i int) Texture { return Texture(max(i, 0) % 4) }

// on reports whether the n-th dot along a line of this texture is set.
func (x Texture) on(n int) bool {
	switch x {
	case Dashed:
		return n%8 < 5
	case Dotted:
		return n%3 == 0
	case Sparse:
		return n%5 == 0
	case DashDot:
		n %= 10
		return n < 5 || n == 7
	}
	return true
}

// Line draws a straight line between two points.
func (c *Canvas) Line(a, b XY, role kit.Role, x Texture) {
	c.segment(a, b, role, x, 0)
}

// polyline draws lines from point to point; a point that is not finite is a gap, and an isolated one a
// dot. The texture runs on through the points. It returns the last dot drawn.
func (c *Canvas) polyline(points []XY, role kit.Role, x Texture) (endX, endY int, drawn bool) {
	phase := 0
	for i, p := range points {
		if !p.finite() {
			continue
		}
		from := p
		if i > 0 && points[i-1].finite() {
			from = points[i-1]
		} else if i+1 < len(points) && points[i+1].finite() {
			continue
		}
		ex, ey, n, ok := c.segment(from, p, role, x, phase)
		phase += n
		if ok {
			endX, endY, drawn = ex, ey, true
		}
	}
	return endX, endY, drawn
}

// segment draws the part of a line that lies in the area, its texture begun at phase. It returns the
// last dot, the number of steps, and whether any part was inside.
func (c *Canvas) segment(a, b XY, role kit.Role, tex Texture, phase int) (x, y, steps int, ok bool) {
	if !a.finite() || !b.finite() || c.area.Empty() {
		return 0, 0, 0, false
	}
	ax, ay := c.dot(a)
	bx, by := c.dot(b)
	if !c.clip(&ax, &ay, &bx, &by) {
		return 0, 0, 0, false
	}
	x, y = int(math.Round(ax)), int(math.Round(ay))
	ex, ey := int(math.Round(bx)), int(math.Round(by))
	dx, dy := absInt(ex-x), -absInt(ey-y)
	stepX, stepY := sign(ex-x), sign(ey-y)
	for e := dx + dy; ; steps++ {
		if tex.on(phase + steps) {
			c.setDot(x, y, role)
		}
		if x == ex && y == ey {
			return x, y, steps, true
		}
		e2 := 2 * e
		if e2 >= dy {
			e += dy
			x += stepX
		}
		if e2 <= dx {
			e += dx
			y += stepY
		}
	}
}

// clip cuts a line in dots to the area (Liang and Barsky's method) and reports whether
// anything is left.
func (c *Canvas) clip(ax, ay, bx, by *float64) bool {
	left, top := float64(2*c.area.X)-0.49, float64(4*c.area.Y)-0.49
	right, bottom := left+float64(2*c.area.W)-0.02, top+float64(4*c.area.H)-0.02
	dx, dy := *bx-*ax, *by-*ay
	t0, t1 := 0.0, 1.0
	for _, edge := range [4][2]float64{{-dx, *ax - left}, {dx, right - *ax}, {-dy, *ay - top}, {dy, bottom - *ay}} {
		p, q := edge[0], edge[1]
		if p == 0 {
			if q < 0 {
				return false
			}
			continue
		}
		t := q / p
		if p < 0 {
			t0 = max(t0, t)
		} else {
			t1 = min(t1, t)
		}
	}
	if t0 > t1 {
		return false
	}
	*bx, *by = *ax+t1*dx, *ay+t1*dy
	*ax, *ay = *ax+t0*dx, *ay+t0*dy
	return true
}

func absInt(n int) int { return max(n, -n) }

func sign(n int) int {
	switch {
	case n > 0:
		return 1
	case n < 0:
		return -1
	}
	return 0
}
