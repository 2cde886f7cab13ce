package slot

import "math"

// wall is the body's outline as a half width over Y, together with what the insulation covers of it. A
// circle of radius R clears a liner of thickness t exactly when its centre is at least R + t from the
// wall, so one function, reach, serves the outline inside the liner and every packing.
type wall struct {
	topHalf, bottomHalf float64 // half widths at shoulder and at straight
	depth               float64
	straight            float64 // Y where the straight sides begin: 0, or the round's radius
	shoulder            float64 // Y where they end: depth, or the centre of the round at the mouth
	liner               float64
	ceiling             float64 // highest Y that wire may touch: the underside of wedge or liner
	split, separator    float64 // Y of the middle of the sheet between the layers; its thickness
	beside              bool    // the sheet is upright on the centre line instead, between two sides
}

// newWall turns a checked slot with all widths known into its wall; no insulation yet.
func newWall(s Slot) wall {
	w := wall{topHalf: s.TopMM / 2, bottomHalf: s.BottomMM / 2, depth: s.DepthMM, shoulder: s.DepthMM, ceiling: s.DepthMM}
	if s.Shape == RoundBottom || s.Shape == Pear {
		w.straight = w.bottomHalf
	}
	if s.Shape == Pear {
		w.shoulder -= s.crownMM()
	}
	return w
}

// crownMM is the height of the round at the mouth of a pear: its radius, less what the
// mouth cuts off, since the depth runs to where the neck meets the round.
func (s Slot) crownMM() float64 {
	r, open := s.TopMM/2, s.MouthMM/2
	return math.Sqrt(max(0, r*r-open*open))
}

func (w wall) round() bool { return w.straight > 0 }

// crowned says that the mouth side is round too; the round's radius is topHalf.
func (w wall) crowned() bool { return w.shoulder < w.depth }

// slope is the change of half width per mm of height along the straight sides.
func (w wall) slope() float64 {
	return (w.topHalf - w.bottomHalf) / (w.shoulder - w.straight)
}

// half is the half width of the iron at height y in [0, depth].
func (w wall) half(y float64) float64 {
	if y < w.straight {
		r := w.straight
		return math.Sqrt(max(0, y*(2*r-y)))
	}
	if up := y - w.shoulder; up > 0 {
		return math.Sqrt(max(0, w.topHalf*w.topHalf-up*up))
	}
	return w.bottomHalf + w.slope()*(y-w.straight)
}

// width is the iron's width at height y in [0, depth].
func (w wall) width(y float64) float64 { return 2 * w.half(y) }

// reach is how far from the centre line a point at height y may lie and still be at least clear from
// side walls and round; negative when no point is. The flat bottom and the ceiling are limits on y: see
// span.
//
// Where the slot narrows downwards into its round, the corner between them points into the slot: below
// it only the round counts. Above it the side's line is used although the nearest iron may be the
// corner itself, which errs on the safe side. The round at the mouth of a pear is the same upside down.
func (w wall) reach(y, clear float64) float64 {
	m := w.slope()
	side := w.bottomHalf + m*(y-w.straight) - clear*math.Sqrt(1+m*m)
	switch {
	case y < w.straight:
		return arc(w.straight-clear, w.straight-y, side, m > 0)
	case y > w.shoulder:
		return arc(w.topHalf-clear, y-w.shoulder, side, m < 0)
	}
	return side
}

// arc is the reach in a round of radius r at a distance off from its centre; inward says
// that the corner between round and side points into the slot.
func arc(r, off, side float64, inward bool) float64 {
	if r < off {
		return -1
	}
	x := math.Sqrt(r*r - off*off)
	if inward {
		return x
	}
	return min(x, side)
}

// span is the range of heights, up to the ceiling, at which a point can clear bottom, sides and round;
// ok is false when there is none.
func (w wall) span(clear float64) (low, high float64, ok bool) {
	m := w.slope()
	low, high = clear, w.ceiling
	spare := w.bottomHalf - clear*math.Sqrt(1+m*m) // reach where the straight sides begin
	if w.round() && clear > w.straight {
		low = w.straight
	}
	if w.crowned() {
		high = min(high, w.shoulder+max(0, w.topHalf-clear))
	}
	crownClear := w.crowned() && clear <= w.topHalf
	switch {
	case m > 0 && spare < 0 && (!w.round() || clear > w.straight):
		low = max(low, w.straight-spare/m)
	case m < 0 && !crownClear:
		high = min(high, w.straight-spare/m)
	case m == 0 && spare < 0:
		return 0, 0, false
	}
	return low, high, low <= high
}

// settle is the lowest height in [low, high] at which the reach is at least half; ok is false when
// there is none.
func (w wall) settle(half, clear, low, high float64) (y float64, ok bool) {
	if w.reach(low, clear) >= half {
		return low, true
	}
	top := high
	if w.crowned() {
		top = max(low, min(high, w.shoulder)) // above it the slot only narrows
	}
	if w.straight > low && w.straight < high && w.reach(w.straight, clear) >= half {
		top = w.straight
	}
	if w.reach(top, clear) < half {
		return 0, false
	}
	for range 50 {
		mid := (low + top) / 2
		if w.reach(mid, clear) >= half {
			top = mid
		} else {
			low = mid
		}
	}
	return top, true
}

// layer is the range of Y that wire of one layer may touch; for a single layer all of it.
func (w wall) layer(layer, layers int) (floor, ceiling float64) {
	if layers < 2 || w.beside {
		return 0, w.ceiling
	}
	if layer == 0 {
		return 0, w.split - w.separator/2
	}
	return w.split + w.separator/2, w.ceiling
}

// halve finds the height that divides the room inside liner and wedge into two equal areas, to about
// one part in ten thousand of the depth.
func (w wall) halve() float64 {
	low, high, ok := w.span(w.liner)
	if !ok {
		return w.ceiling / 2
	}
	const steps = 200
	var sums [steps + 1]float64
	d := (high - low) / steps
	for i := range steps {
		sums[i+1] = sums[i] + max(0, w.reach(low+(float64(i)+0.5)*d, w.liner))
	}
	want := sums[steps] / 2
	for i := range steps {
		if sums[i+1] >= want && sums[i+1] > sums[i] {
			return low + d*(float64(i)+(want-sums[i])/(sums[i+1]-sums[i]))
		}
	}
	return (low + high) / 2
}
