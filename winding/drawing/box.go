package drawing

import "math"

// point is a place on the page in mm: x to the right, y down from the top left corner.
type point struct{ x, y float64 }

// box is an upright rectangle on the page, in mm.
type box struct{ x0, y0, x1, y1 float64 }

func (b box) width() float64  { return b.x1 - b.x0 }
func (b box) height() float64 { return b.y1 - b.y0 }
func (b box) middle() point   { return point{(b.x0 + b.x1) / 2, (b.y0 + b.y1) / 2} }

// meets reports whether two boxes overlap; touching edges do not count.
func (b box) meets(o box) bool {
	const hair = 1e-6
	return b.x0 < o.x1-hair && o.x0 < b.x1-hair && b.y0 < o.y1-hair && o.y0 < b.y1-hair
}

// within reports whether b lies in o.
func (b box) within(o box) bool {
	const hair = 1e-6
	return b.x0 >= o.x0-hair && b.y0 >= o.y0-hair && b.x1 <= o.x1+hair && b.y1 <= o.y1+hair
}

// grown is the box enlarged by a margin on every side.
func (b box) grown(by float64) box { return box{b.x0 - by, b.y0 - by, b.x1 + by, b.y1 + by} }

// around is the bounding box of some points.
func around(points ...point) box {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, p := range points {
		b = box{min(b.x0, p.x), min(b.y0, p.y), max(b.x1, p.x), max(b.y1, p.y)}
	}
	return b
}

// crosses reports whether the straight line from p to q goes through the box, by clipping the line at
// it side by side (Liang and Barsky, ACM Trans. Graphics 3(1), 1984, from memory).
func (b box) crosses(p, q point) bool {
	from, to := 0.0, 1.0
	cut := func(start, step, low, high float64) bool {
		if step == 0 {
			return start > low && start < high
		}
		a, c := (low-start)/step, (high-start)/step
		from, to = max(from, min(a, c)), min(to, max(a, c))
		return from < to
	}
	return cut(p.x, q.x-p.x, b.x0, b.x1) && cut(p.y, q.y-p.y, b.y0, b.y1)
}

// clipX is the part of a polyline between x0 and x1, as pieces in order.
func clipX(points []point, x0, x1 float64) [][]point {
	var pieces [][]point
	var piece []point
	end := func() {
		if len(piece) > 1 {
			pieces = append(pieces, piece)
		}
		piece = nil
	}
	for i := 1; i < len(points); i++ {
		p, q, ok := clipStep(points[i-1], points[i], x0, x1)
		if !ok {
			end()
			continue
		}
		if len(piece) == 0 || piece[len(piece)-1] != p {
			end()
			piece = []point{p}
		}
		if piece = append(piece, q); q != points[i] {
			end()
		}
	}
	end()
	return pieces
}

// clipStep is the part of one straight line between x0 and x1.
func clipStep(p, q point, x0, x1 float64) (a, b point, ok bool) {
	if p.x == q.x {
		return p, q, p.x >= x0 && p.x < x1
	}
	at := func(x float64) point { return point{x, p.y + (q.y-p.y)*(x-p.x)/(q.x-p.x)} }
	low, high := max(min(p.x, q.x), x0), min(max(p.x, q.x), x1)
	if low >= high {
		return p, q, false
	}
	held := func(e point) point {
		switch {
		case e.x < low:
			return at(low)
		case e.x > high:
			return at(high)
		}
		return e
	}
	return held(p), held(q), true
}
