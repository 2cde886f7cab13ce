package slot

import (
	"math"
	"sync"
)

// Slot leakage
//
// Current in a slot drives flux straight across it, from tooth to tooth. At height y the flux is driven
// by the part F(y) of the slot's current that lies below, across the width b(y), so per metre of stack
// and per conductor squared the inductance is μ0·λ with
//
//	λ = ∫ F(y)²/b(y) dy
//
// over the wire, where F rises from 0 to 1 with the area passed, and ∫ dy/b over wedge and neck above
// it, where F = 1. A parallel slot filled to height h has λ = h/3b, plus h/b for each part above
// (Pyrhönen, Jokinen, Hrabovcová, Design of Rotating Electrical Machines, ch. 4; Say, Alternating
// Current Machines; both from memory, re-derived in the tests). The phase's slot leakage inductance is
// 2·μ0·L·N²·λ/(p·q).
//
// Two sides in a slot may belong to two phases. The correlation of their currents, the mean over the
// slots of the cosine between them (the layout knows it from its coil list), scales what one side's
// flux links with the other. With the pitch of a three-phase winding of 60° belts shortened by the
// fraction ε of a pole (up to 1/3) it is 1 - 3ε/2, and a parallel slot with one side over the other
// then gives the textbook factors 1 - 9ε/16 on the h/3b term and 1 - 3ε/4 above.
//
// Two sides beside one another both rise over the whole height, so that flux straight across sees half
// of each at every height: each side links with itself and with the other like one side that fills the
// slot, and λ is that of one layer times (1 + together)/2. That neglects flux that turns between the
// two sides, which is small in slots deeper than wide.
//
// The integral is done by the midpoint rule over the shape, 400 points, good to about 1 in 10^5. It
// takes flux lines as straight and iron as ideal: good while teeth are not saturated. Flux from tooth
// tip to tooth tip across the mouth, and around the coil heads, is not slot leakage and is not
// included. The mouth's short height next to its width makes fringing worth perhaps a tenth of the
// neck's term.

// Permeance is the slot leakage permeance factor in its parts, pure numbers; Total is their sum.
type Permeance struct{ Body, Wedge, Neck, Total float64 }

// LeakageParts is λ by parts. together is the mean cosine between the currents of the two sides in a
// slot, 1 where they are of one phase and sense; it matters in two layers only, is clamped to [-1, 1],
// and NaN counts as 1. Without a known mouth the neck's part is 0 and λ a lower limit. A zero Room
// gives zeros.
func LeakageParts(room Room, layers int, together float64) Permeance {
	w := room.wall
	if !finite(w.ceiling) || !finite(w.topHalf) {
		return Permeance{}
	}
	if layers != 2 || math.IsNaN(together) {
		together = 1
	}
	together = min(max(together, -1), 1)
	above := (1 + together) / 2
	var p Permeance
	if layers == 2 && !w.beside {
		p.Body = twoLayers(w, together)
	} else {
		p.Body = above * across(w.width, w.liner, w.ceiling, [2]float64{0, 1}, [2]float64{0, 1})
	}
	p.Wedge = above * across(w.width, w.ceiling, w.depth, [2]float64{1, 1}, [2]float64{1, 1})
	if room.MouthKnown {
		p.Neck = above * room.MouthHeightMM / room.MouthMM
	}
	p.Total = p.Body + p.Wedge + p.Neck
	return p
}

// twoLayers is the body's part with half of the current in each layer: the two self
// terms and twice the mutual one.
func twoLayers(w wall, together float64) float64 {
	_, sheet := w.layer(0, 2)
	upper, _ := w.layer(1, 2)
	rise, full := [2]float64{0, 1}, [2]float64{1, 1}
	above := cut(w.width, upper, w.ceiling)
	top, mutual := above.integral(rise, rise), above.integral(full, rise)
	bottom := across(w.width, w.liner, sheet, rise, rise) + across(w.width, sheet, upper, full, full) +
		above.integral(full, full)
	return (top + bottom + 2*together*mutual) / 4
}

// across is ∫ F·G/b dy from low to high, where F and G go from their first value to their second in
// proportion to the area passed, and wide is b at a height.
func across(wide func(y float64) float64, low, high float64, f, g [2]float64) float64 {
	if high <= low {
		return 0
	}
	s := cut(wide, low, high)
	return s.integral(f, g)
}

// cells is how many strips a part of the slot is cut into.
const cells = 400

// strips is a part of the slot in strips from below upwards, with their widths and heights.
type strips struct {
	width, height [cells]float64
	area          float64
	empty         bool
}

// midAngles is sine and cosine of the angles of the midpoint rule.
var midAngles = sync.OnceValue(func() *[cells][2]float64 {
	var at [cells][2]float64
	for i := range at {
		at[i][0], at[i][1] = math.Sincos((float64(i) + 0.5) * math.Pi / cells)
	}
	return &at
})

// cut cuts the part from low to high. The midpoint rule runs over the angle θ in y = low + (high -
// low)(1 - cos θ)/2: points crowd at both ends, where a round's width goes to zero like a square root.
func cut(wide func(y float64) float64, low, high float64) (s strips) {
	if high <= low {
		return strips{empty: true}
	}
	at, half := midAngles(), (high-low)*math.Sin(math.Pi/cells/2)
	for i := range cells {
		sin, cos := at[i][0], at[i][1]
		s.width[i] = wide(low + (high-low)*(1-cos)/2)
		s.height[i] = half * sin // exact: the heights add up
		s.area += s.width[i] * s.height[i]
	}
	return s
}

// integral is ∫ F·G/b dy over the strips; see across.
func (s *strips) integral(f, g [2]float64) float64 {
	if s.empty {
		return 0
	}
	passed, sum := 0.0, 0.0
	for i := range cells {
		area := s.width[i] * s.height[i]
		part := (passed + area/2) / s.area
		passed += area
		sum += (f[0] + (f[1]-f[0])*part) * (g[0] + (g[1]-g[0])*part) * s.height[i] / s.width[i]
	}
	return sum
}
