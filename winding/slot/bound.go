package slot

import "math"

// The bound above every packing
//
// Points no closer than d to one another in a convex region of area A and perimeter P number at most
//
//	2/√3 · A/d² + P/(2d) + 1
//
// (Oler, An inequality in the geometry of numbers, Acta Mathematica 105, 1961; from memory; it is exact
// for a hexagon of a hexagonal lattice and for a column of wires). The centres of wires of diameter d
// are such points, in the room inset by the wires' radius. Where a slot narrows into its round that
// region is not convex; its convex hull is taken, which can only raise the bound.

// boundSteps is the number of samples of the region of centres; chordSlack makes up for the chords
// lying inside its arcs.
const (
	boundSteps = 64
	chordSlack = 1 + 5e-4
)

// PackBound is a number of wires of one overall diameter (mm) that no arrangement can exceed inside
// liner and wedge, with the separator in place; for two coil sides twice the smaller side's.
// MostThatPack, a pattern that exists, is never above it; it is below it by 5 to 20 % in most slots of
// 20 wires and more, by up to 30 % in a few. An invalid diameter gives 0.
func PackBound(room Room, overallMM float64) int {
	if !(overallMM >= thinnestMM && overallMM <= longestMM) || room.Layers < 1 {
		return 0
	}
	least := math.MaxInt
	for layer := range room.Layers {
		floor, ceiling := room.wall.layer(layer, room.Layers)
		n := 0
		if s, ok := newShelf(room.wall, overallMM/2, floor, ceiling); ok {
			n = s.bound()
		}
		least = min(least, n)
	}
	return least * room.Layers
}

// bound is Oler's inequality for the shelf's wires.
func (s shelf) bound() int {
	hull := s.hull()
	area, side := 0.0, 0.0
	for i, p := range hull[1:] {
		q := hull[i]
		area += (p.X + q.X) / 2 * (p.Y - q.Y)
		side += math.Hypot(p.X-q.X, p.Y-q.Y)
	}
	perimeter := hull[0].X + hull[len(hull)-1].X + side
	if s.w.beside {
		perimeter += s.high - s.low // the straight side at the sheet
	} else {
		area, perimeter = 2*area, 2*perimeter
	}
	d := 2 * s.r
	n := (2/math.Sqrt(3)*area/(d*d)+perimeter/(2*d))*chordSlack + 1
	return int(n * (1 + eps))
}

// hull is the right-hand side of the convex hull of the places a centre can take, from the bottom up:
// the reach, with hollows bridged, from the centre line or from the first wire at the sheet.
func (s shelf) hull() []Point {
	side, inner := make([]Point, 0, boundSteps+1), 0.0
	if s.w.beside {
		inner = s.near()
	}
	for i := range boundSteps + 1 {
		y := s.low + (s.high-s.low)*(1-math.Cos(math.Pi*float64(i)/boundSteps))/2
		p := Point{max(0, s.reach(y)-inner), y}
		for n := len(side); n >= 2 && turnsOut(side[n-2], side[n-1], p); n-- {
			side = side[:n-1]
		}
		side = append(side, p)
	}
	return side
}

// turnsOut says that b lies on or inside the line from a up to c.
func turnsOut(a, b, c Point) bool {
	return (b.X-a.X)*(c.Y-a.Y) <= (c.X-a.X)*(b.Y-a.Y)
}
