package slot

import (
	"math"
	"slices"
)

// Limits of a packing: no wire is thinner than 5 µm, and no picture needs more circles.
const (
	thinnestMM = 0.005
	// MostCircles is the most that Pack places; a fuller slot is not drawn whole.
	MostCircles = 20000
)

// MostThatPack is how many wires of one overall diameter (mm) the neatest pattern holds inside liner
// and wedge, with the room's separator in place: for two coil sides twice what the smaller side holds.
// It is the practical ceiling by hand: a pattern that exists (see lattice.go). PackBound is the proven
// one. An invalid diameter gives 0.
func MostThatPack(room Room, overallMM float64) int {
	if !(overallMM >= thinnestMM && overallMM <= longestMM) {
		return 0
	}
	least := math.MaxInt
	for layer := range room.Layers {
		floor, ceiling := room.wall.layer(layer, room.Layers)
		n := 0
		if s, ok := newShelf(room.wall, overallMM/2, floor, ceiling); ok {
			_, n = s.best()
		}
		least = min(least, n)
	}
	if room.Layers < 1 {
		return 0
	}
	return least * room.Layers
}

// Pack lays turns x layers conductors, each of the strands in wires, into the slot: bottom layer first,
// rows from the bottom up, a part-filled row from its middle. Circles never overlap and never leave the
// room inside liner, wedge and separator; what does not fit is left out, so Placed < Wanted means that
// the drawing is full.
//
// In a room whose sides lie beside one another each half is filled by itself from its tooth inwards,
// the left half the mirror image of the right; two sizes from the bottom up.
//
// layers is 1 or 2 (others are taken as the nearer); 2 in a room measured for one cuts it in two with
// no sheet between.
//
// Two sizes are laid approximately: the thick wires first, then the thin ones in what is left of the
// last thick row and in rows of their own above. Thin wires in the gaps between thick ones are not
// considered, so a mixed packing can fall a few wires short.
func Pack(room Room, wires [2]Wire, turns, layers int) Packing {
	layers = min(max(layers, 1), 2)
	p := Packing{Outline: room.Outline, Inner: room.Inner, Wedge: room.Wedge, Separator: room.Separator, Neck: room.Neck,
		Beside: room.Beside && layers == 2}
	order := [2]int{0, 1} // thick first
	if wires[1].OverallMM > wires[0].OverallMM {
		order = [2]int{1, 0}
	}
	var each [2]int // wires of either size in one layer
	for i, w := range wires {
		if w.Count > 0 && turns > 0 && w.OverallMM >= thinnestMM && w.OverallMM <= longestMM {
			each[i] = min(turns, math.MaxInt32) * min(w.Count, math.MaxInt32)
		}
	}
	p.Wanted = layers * (each[0] + each[1])
	p.Mixed = each[0] > 0 && each[1] > 0 && wires[0].OverallMM != wires[1].OverallMM
	p.Circles = make([]Circle, 0, min(p.Wanted, MostCircles, 512))
	for layer := range layers {
		floor, ceiling := room.wall.layer(layer, layers)
		l := laying{p: &p, w: room.wall, layer: layer, floor: floor, ceiling: ceiling, mirrored: room.Beside && layer == 0}
		for _, size := range order {
			l.lay(size, wires[size].OverallMM/2, each[size])
		}
	}
	p.Placed = len(p.Circles)
	return p
}

// laying is one layer while it is being filled: floor rises as rows are laid, and spare is the free
// places of the last row.
type laying struct {
	p              *Packing
	w              wall
	layer          int
	floor, ceiling float64
	spare          []Point
	mirrored       bool // the left half of two beside one another
}

// lay puts in n wires of one size: first at the spare places, then in rows.
func (l *laying) lay(size int, r float64, n int) {
	for _, at := range l.spare {
		if n > 0 {
			l.put(at.X, at.Y, r, size)
			n--
		}
	}
	l.spare = nil
	s, ok := newShelf(l.w, r, l.floor, l.ceiling)
	if !ok || n <= 0 {
		return
	}
	grid, _ := s.best()
	if grid.pitch == 0 {
		return
	}
	if s.w.beside && !l.p.Mixed {
		l.hug(s, grid, r, size, n)
		return
	}
	for k := range grid.rows(s) {
		if n <= 0 || len(l.p.Circles) >= MostCircles {
			return
		}
		y, off, from, to := grid.row(s, k)
		all := max(0, to-from+1)
		used := min(all, n)
		skip := (all - used) / 2
		for i := range all {
			x := off + float64(from+i)*grid.pitch
			if i >= skip && i < skip+used {
				l.put(x, y, r, size)
			} else {
				l.spare = append(l.spare, Point{x, y})
			}
		}
		if used > 0 {
			l.floor = y + r
		}
		n -= used
	}
}

// hug puts n wires at places of the lattice, those nearest to the tooth first, as a coil wound round it
// grows.
func (l *laying) hug(s shelf, grid lattice, r float64, size, n int) {
	type place struct {
		Point
		column int // half pitches from the tooth
	}
	var places []place
	for k := range grid.rows(s) {
		y, off, from, to := grid.row(s, k)
		for i := from; i <= to && len(places) < MostCircles; i++ {
			x := off + float64(i)*grid.pitch
			places = append(places, place{Point{x, y}, int(math.Round((s.reach(y) - x) / (grid.pitch / 2)))})
		}
	}
	slices.SortStableFunc(places, func(a, b place) int { return a.column - b.column })
	for _, at := range places[:min(n, len(places))] {
		l.put(at.X, at.Y, r, size)
	}
}

func (l *laying) put(x, y, r float64, size int) {
	if l.mirrored {
		x = -x
	}
	if len(l.p.Circles) < MostCircles {
		l.p.Circles = append(l.p.Circles, Circle{X: x, Y: y, R: r, Layer: l.layer, Size: size})
	}
}
