package slot

import (
	"math"
	"slices"
)

// arcSteps is the number of chords that draw one half of a round bottom. The polygon's area is about
// 0.05 % of the round short; no figure is taken from it.
const arcSteps = 24

// outline draws the wall inset by clear, from its lowest point up to ceiling, counter-clockwise from
// the bottom (left, where the bottom is flat).
func (w wall) outline(clear, ceiling float64) []Point {
	w.ceiling = ceiling
	low, high, ok := w.span(clear)
	if !ok {
		return nil
	}
	var right []Point
	add := func(y float64) { right = append(right, Point{max(0, w.reach(y, clear)), y}) }
	if r := w.straight - clear; w.round() && r > 0 {
		for i := range arcSteps {
			y := w.straight - r*math.Cos(float64(i)/arcSteps*math.Pi/2)
			if y < high {
				add(y)
			}
		}
		low = min(w.straight, high)
	}
	if low < w.shoulder || !w.crowned() {
		add(low)
	}
	if from := max(low, w.shoulder); w.crowned() && high > from && w.topHalf > clear {
		w.crownArc(from, high, w.topHalf-clear, add)
		return mirror(right)
	}
	if high > low {
		add(high)
	}
	return mirror(right)
}

// crownArc draws the round at the mouth from one height to another.
func (w wall) crownArc(from, high, r float64, add func(y float64)) {
	begin := math.Asin(min(1, (from-w.shoulder)/r))
	end := math.Asin(min(1, (high-w.shoulder)/r))
	for i := range arcSteps + 1 {
		y := w.shoulder + r*math.Sin(begin+(end-begin)*float64(i)/arcSteps)
		add(min(y, high))
	}
}

// mirror closes a right-hand side, given from the bottom up, with its left-hand image.
func mirror(right []Point) []Point {
	all := make([]Point, 0, 2*len(right))
	if p := right[0]; p.X > 0 {
		all = append(all, Point{-p.X, p.Y})
	}
	all = append(all, right...)
	for _, p := range slices.Backward(right[1:]) {
		if p.X > 0 {
			all = append(all, Point{-p.X, p.Y})
		}
	}
	return all
}

// band is the sheet between two heights inside the liner, as an outline.
func (w wall) band(low, high float64) []Point {
	if high <= low {
		return nil
	}
	a, b := max(0, w.reach(low, w.liner)), max(0, w.reach(high, w.liner))
	return []Point{{-a, low}, {a, low}, {b, high}, {-b, high}}
}

// neck is the two sides of the neck, from the body to the bore.
func neck(s Slot) []Line {
	if s.MouthMM <= 0 {
		return nil
	}
	x, low, high := s.MouthMM/2, s.DepthMM, s.DepthMM+s.MouthHeightMM
	return []Line{{Point{-x, low}, Point{-x, high}}, {Point{x, low}, Point{x, high}}}
}
