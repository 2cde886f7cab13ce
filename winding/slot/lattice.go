package slot

import "math"

// How the wires are laid
//
// Rows of wires, each row seated on the one below, the lowest on the bottom of the slot. In an
// unbounded area nothing is denser than the hexagonal lattice (pitch 2R, rows R·√3 apart, π/(2√3) =
// 0.9069 of the area covered; geometry). In a slot a few wires wide what counts is how rows meet the
// walls, so a handful of lattices are tried and the one that holds most is kept, the plain hexagonal
// one winning ties:
//
//   - hexagonal, with a wire on the centre line, with a gap there, and pushed to one wall;
//   - hexagonal opened sideways until the row touches both walls, so that rows sink
//     closer: pitch p and rows √(4R² - p²/4) apart, for p up to 2√3·R;
//   - square, wires stacked vertically, for slots two or three wires wide.
//
// A row costs the same whatever its length, so a count costs some hundred roundings. The pattern
// counted exists, so that many wires do go in: with more than 20 to a layer its wire fill is above
// 0.70, usually 0.9 to 1.1 (measured over random slots). It is no proven maximum: with few thick wires
// in an odd shape an irregular pile may beat it. Nothing can beat PackBound.

// eps forgives rounding where a wire just touches a wall, relative to the pitch.
const eps = 1e-9

// shelf is a stretch of slot for rows of one size of wire: the range of heights of the wires' centres.
// Where two sides lie beside one another it is the right-hand half, from the sheet on the centre line
// outwards; the left is its mirror image.
type shelf struct {
	w         wall
	r         float64 // wire radius
	low, high float64
}

// near is how far right of the centre line the first wire of a half slot may lie.
func (s shelf) near() float64 { return s.w.separator/2 + s.r }

// ends is the range that a wire's centre may lie in at height y; empty when from is above to.
func (s shelf) ends(y float64) (from, to float64) {
	to = s.reach(y)
	if s.w.beside {
		return s.near(), to
	}
	return -to, to
}

// newShelf is the shelf between two heights that the wire may touch; false when no wire fits.
func newShelf(w wall, r, floor, ceiling float64) (shelf, bool) {
	low, high, ok := w.span(w.liner + r)
	low, high = max(low, floor+r), min(high, ceiling-r)
	// A wire that only just fits must not be lost to rounding.
	if ok && low > high && low-high < eps*r {
		high = low
	}
	s := shelf{w, r, low, high}
	if w.beside && ok && low <= high {
		s.low, ok = w.settle(s.near()*(1-eps), w.liner+r, low, high)
	}
	return s, ok && s.low <= high
}

// reach is how far off the centre line a wire's centre may lie at height y.
func (s shelf) reach(y float64) float64 { return s.w.reach(y, s.w.liner+s.r) }

// lattice is rows at y0, y0+step, ..., wires a pitch apart, row k shifted by shift on every
// odd k, measured from first.
type lattice struct {
	y0, step, pitch, first, shift float64
}

// row is the range of wire positions in row k: X = off + i·pitch for i in [from, to].
func (l lattice) row(s shelf, k int) (y, off float64, from, to int) {
	y = l.y0 + float64(k)*l.step
	off = l.first
	if k%2 == 1 {
		off += l.shift
	}
	left, right := s.ends(y)
	if right-left < -2*eps*l.pitch {
		return y, off, 0, -1
	}
	return y, off, int(math.Ceil((left-off)/l.pitch - eps)), int(math.Floor((right-off)/l.pitch + eps))
}

// rows is the number of rows in the shelf.
func (l lattice) rows(s shelf) int {
	if l.y0 > s.high+eps*s.r {
		return 0
	}
	return 1 + int((s.high-l.y0)/l.step+eps)
}

// count is the number of wires of the lattice in the shelf.
func (l lattice) count(s shelf) int {
	n := 0
	for k := range l.rows(s) {
		_, _, from, to := l.row(s, k)
		n += max(0, to-from+1)
	}
	return n
}

// best tries the lattices and returns the one that holds most, with its count.
func (s shelf) best() (lattice, int) {
	var top lattice
	most := 0
	try := func(l lattice) {
		if n := l.count(s); n > most {
			top, most = l, n
		}
	}
	d := 2 * s.r
	if s.w.beside {
		s.plain(s.low, s.near(), try)
	} else {
		s.centred(try)
		s.start(0, func(y float64) {
			try(lattice{y, d * math.Sqrt(3) / 2, d, -max(0, s.reach(y)), s.r})
		})
	}
	for i := range openings {
		s.open(s.low+(s.high-s.low)*float64(i)/(openings-1), try)
	}
	return top, most
}

// centred tries rows with a wire on the centre line and with a gap there.
func (s shelf) centred(try func(lattice)) {
	for _, half := range [2]float64{0, s.r} {
		s.start(half, func(y float64) { s.plain(y, half, try) })
	}
}

// plain tries the hexagonal and the square lattice from a place in the lowest row.
func (s shelf) plain(y, first float64, try func(lattice)) {
	d := 2 * s.r
	try(lattice{y, d * math.Sqrt(3) / 2, d, first, s.r})
	try(lattice{y, d, d, first, 0})
}

// start finds the lowest row whose wires can lie half off the centre line.
func (s shelf) start(half float64, use func(y float64)) {
	if y, ok := s.w.settle(half*(1-eps), s.w.liner+s.r, s.low, s.high); ok {
		use(y)
	}
}

// openings is the number of heights at which opened rows are made to touch the walls.
const openings = 5

// open tries the hexagonal lattices stretched sideways until a row touches both walls at height y: the
// same number of wires in every row, or one less in every other, or rows leaning to one wall and the
// other in turn.
func (s shelf) open(y float64, try func(lattice)) {
	left, right := s.ends(y)
	wide := (right - left) / 2
	gaps := math.Floor(wide/s.r + eps)
	for _, part := range [...]float64{gaps, gaps + 0.5, gaps - 0.5} {
		pitch := 2 * wide / part
		if pitch >= 2*s.r && pitch <= 2*math.Sqrt(3)*s.r {
			try(lattice{s.low, math.Sqrt(4*s.r*s.r - pitch*pitch/4), pitch, left, pitch / 2})
		}
	}
}
