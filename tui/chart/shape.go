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

// Circle draws an outline with a radius in data units; under a View with two scales it
// is an ellipse. One smaller than a dot is a dot; a radius that is negative or not
// finite draws nothing.
func (c *Canvas) Circle(centre XY, r float64, role kit.Role) {
	if !centre.finite() || !(r >= 0) || math.IsInf(r, 1) {
		return
	}
	dots := r * max(math.Abs(c.view.sx), math.Abs(c.view.sy))
	if dots < 0.75 {
		c.Dot(centre, role)
		return
	}
	n := int(min(max(4*dots, 12), 720))
	prev := XY{centre.X + r, centre.Y}
	for i := 1; i <= n; i++ {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		next := XY{centre.X + r*cos, centre.Y + r*sin}
		c.Line(prev, next, role, Solid)
		prev = next
	}
}

// FillCircle draws a disc; see Circle.
func (c *Canvas) FillCircle(centre XY, r float64, role kit.Role, x Texture) {
	if !centre.finite() || !(r >= 0) || math.IsInf(r, 1) {
		return
	}
	cx, cy := c.dot(centre)
	rx, ry := max(r*math.Abs(c.view.sx), 0.5), max(r*math.Abs(c.view.sy), 0.5)
	c.fillRows(cy-ry, cy+ry, func(y int) {
		d := (float64(y) - cy) / ry
		half := rx * math.Sqrt(max(0, 1-d*d))
		c.fillSpan(cx-half, cx+half, y, role, x)
	})
	if x == Solid {
		c.Dot(centre, role)
	}
}

// Polygon draws a closed outline.
func (c *Canvas) Polygon(points []XY, role kit.Role) {
	for i, p := range points {
		c.Line(p, points[(i+1)%len(points)], role, Solid)
	}
}

// FillPolygon fills a closed outline; where it crosses itself, by the even-odd
// rule. One with a point that is not finite is not drawn.
func (c *Canvas) FillPolygon(points []XY, role kit.Role, x Texture) {
	if len(points) < 3 {
		return
	}
	xs, ys := make([]float64, len(points)), make([]float64, len(points))
	top, bottom := math.Inf(1), math.Inf(-1)
	for i, p := range points {
		if !p.finite() {
			return
		}
		xs[i], ys[i] = c.dot(p)
		top, bottom = min(top, ys[i]), max(bottom, ys[i])
	}
	var cuts []float64
	c.fillRows(top, bottom, func(y int) {
		cuts = crossings(cuts[:0], xs, ys, float64(y))
		for i := 0; i+1 < len(cuts); i += 2 {
			c.fillSpan(cuts[i], cuts[i+1], y, role, x)
		}
	})
}

// crossings are where the edges of an outline cross row y, from left to right.
func crossings(cuts, xs, ys []float64, y float64) []float64 {
	for i := range xs {
		j := (i + 1) % len(xs)
		if (ys[i] <= y) != (ys[j] <= y) {
			cuts = append(cuts, xs[i]+(y-ys[i])/(ys[j]-ys[i])*(xs[j]-xs[i]))
		}
	}
	slices.Sort(cuts)
	return cuts
}

// Rect draws the outline of a rectangle given by two opposite corners.
func (c *Canvas) Rect(a, b XY, role kit.Role) { c.Polygon(corners(a, b), role) }

// FillRect fills a rectangle given by two opposite corners.
func (c *Canvas) FillRect(a, b XY, role kit.Role, x Texture) { c.FillPolygon(corners(a, b), role, x) }

func corners(a, b XY) []XY { return []XY{a, {b.X, a.Y}, b, {a.X, b.Y}} }

// fillRows calls fill for the rows of dots from top to bottom that lie in the area.
func (c *Canvas) fillRows(top, bottom float64, fill func(y int)) {
	first := max(4*c.area.Y, int(math.Ceil(max(top, -1))))
	last := min(4*(c.area.Y+c.area.H)-1, int(math.Floor(min(bottom, farAway))))
	for y := first; y <= last; y++ {
		fill(y)
	}
}

// fillSpan sets the dots of one row from left to right that lie in the area.
func (c *Canvas) fillSpan(left, right float64, y int, role kit.Role, tex Texture) {
	first := max(2*c.area.X, int(math.Ceil(max(left, -1))))
	last := min(2*(c.area.X+c.area.W)-1, int(math.Floor(min(right, farAway))))
	for x := first; x <= last; x++ {
		if tex.fills(x, y) {
			c.setDot(x, y, role)
		}
	}
}
