package chart

import (
	"math"

	"slotwright/tui/kit"
)

// Dot draws one dot.
func (c *Canvas) Dot(p XY, role kit.Role) {
	if p.finite() {
		x, y := c.dot(p)
		c.setDot(int(math.Round(x)), int(math.Round(y)), role)
	}
}

// Polygon draws a closed outline.
func (c *Canvas) Polygon(points []XY, role kit.Role) {
	for i, p := range points {
		c.Line(p, points[(i+1)%len(points)], role, Solid)
	}
}

// Disc fills a circle, about a dot less than its radius, so that two that touch are seen apart; one
// too small for that is a dot.
func (c *Canvas) Disc(centre XY, r float64, role kit.Role) {
	if !centre.finite() || !(r >= 0) || math.IsInf(r, 1) {
		return
	}
	dots := r*min(math.Abs(c.view.sx), math.Abs(c.view.sy)) - 0.5
	x, y := c.dot(centre)
	if dots < 0.75 {
		c.Dot(centre, role)
		return
	}
	dots = min(dots, mostDots)
	for row := math.Ceil(y - dots); row <= y+dots; row++ {
		half := math.Sqrt(max(0, dots*dots-(row-y)*(row-y)))
		for col := math.Ceil(x - half); col <= x+half; col++ {
			c.setDot(int(col), int(row), role)
		}
	}
}

// mostDots bounds the radius of a disc: no terminal is as wide.
const mostDots = 2000
