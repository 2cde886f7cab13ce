package chart

import (
	"math"
	"slices"

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

// Disc fills a circle, about a dot less than its radius, so that two that touch remain distinct; one
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

// Hatch fills a closed outline with spaced dots, so that solid is distinguished from empty without a
// colour.
func (c *Canvas) Hatch(points []XY, role kit.Role) {
	if slices.ContainsFunc(points, func(p XY) bool { return !p.finite() }) {
		return
	}
	top, bottom := 4*c.area.Y, 4*(c.area.Y+c.area.H)
	for y := top; y < bottom; y++ {
		var at []float64
		for i, p := range points {
			ax, ay := c.dot(p)
			bx, by := c.dot(points[(i+1)%len(points)])
			if row := float64(y); (ay <= row) != (by <= row) {
				at = append(at, ax+(bx-ax)*(row-ay)/(by-ay))
			}
		}
		slices.Sort(at)
		for i := 0; i+1 < len(at); i += 2 {
			from, to := max(at[i], float64(2*c.area.X)), min(at[i+1], float64(2*(c.area.X+c.area.W)-1))
			for x := int(math.Ceil(from)); float64(x) <= to; x++ {
				if y%2 == 0 && (x+y)%hatchApart == 0 {
					c.setDot(x, y, role)
				}
			}
		}
	}
}

// hatchApart is the spacing of hatch dots in a row.
const hatchApart = 4
