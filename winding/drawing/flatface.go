package drawing

import (
	"fmt"
	"math"

	"slotwright/winding/layout"
)

// Flat coils on the face: each is a frame round its hole, from the gap before it to the one after it,
// as fractions of the way from gap to gap.
const (
	flatEdge = 0.03 // from the middle of a gap to a coil
	flatHole = 0.36 // to its hole
	flatEnd  = 5.0  // of the coil, at rim and middle
)

// flatCoils draws the coils, with their numbers in their holes.
func (v *faceView) flatCoils() {
	for _, c := range v.plan.Coils() {
		first := c.Start
		if c.Finish%v.plan.Spec().Slots+1 == c.Start {
			first = c.Finish
		}
		from := float64(first - 1)
		frame := func(edge, end float64) []point {
			var all []point
			for i := range 9 {
				all = append(all, v.at(rBottom-end, from+edge+(1-2*edge)*float64(i)/8))
			}
			for i := range 9 {
				all = append(all, v.at(rBore+end, from+1-edge-(1-2*edge)*float64(i)/8))
			}
			return all
		}
		v.page.area(mark{id: idOf("face-coil", c.Number)}, thin, "", frame(flatEdge, 0))
		v.page.area(mark{id: idOf("face-hole", c.Number)}, thin, "", frame(flatHole, flatEnd))
		size := min(3.0, 0.18*v.pitch(rMiddle))
		v.page.say(words{text: fmt.Sprint(c.Number), at: v.at(rMiddle, from+0.5), size: size, anchor: centred})
	}
}

// radial is an arrow along the side of a flat coil: towards the middle where the phase's current goes
// away from the rim.
func (v *faceView) radial(where float64, s layout.Side) {
	if s.Turns == 0 {
		return
	}
	from, to := v.at(rHigh-1.5, where), v.at(rLow+1.5, where)
	if s.Sign > 0 {
		from, to = to, from
	}
	long := math.Hypot(to.x-from.x, to.y-from.y)
	v.page.line(thin, from, to)
	v.page.arrowHead(to, (to.x-from.x)/long, (to.y-from.y)/long, min(2.6, long/2))
}
