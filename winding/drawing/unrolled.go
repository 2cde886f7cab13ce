package drawing

import (
	"fmt"
	"math"

	"slotwright/winding/layout"
)

/*
The winding unrolled

The stator is cut between the last slot and the first and laid flat, seen from the bore
with the connection end at the top; slot numbers then rise to the right. With the rotor
outside it is seen from there, and they rise to the left. A coil is one
line: up a slot, over at either end, down another. Its ends are the two tails above its
peak at the connection end, the left one from its left side; the joins run in tracks
above, the leads leave at the top.

All coils' ends have one slope. So the ends of two coils that lean the same way are
parallel lines from different places: they cross others, but no two ever coincide,
whatever the spans. The tails of coils with a common peak, as nested coils have, are
nested too, so that no tail crosses its own group.

A wave has no ends of its own at the connection end: its tails are on its slots and the
wire continues by the joins.

What is joined is a net. A net with two ends or more gets a track of its own height (see
nets.go), and rises to it at its tails, no two of which are at the same place. Lines
that cross are not joined; a dot is a joint of more than two.

Pages are windows on the strip: everything is drawn at its place on the strip and again a
whole revolution to either side, and clipped at the window's edges. A line that passes the
seam thus continues at the same height at the other edge.
*/
type unroll struct {
	plan   *layout.Layout
	kind   kind
	wiring layout.Wiring
	coils  []coilShape
	byCoil map[int]int // coil number to index in coils
	nets   []net
	tracks int

	slots int
	// pitch is mm from slot to slot, side the distance of each of two coil sides from the middle of
	// their slot, slope the rise of the coils' ends over their run.
	pitch, side, slope float64
	// The heights of the page, from the top: names of leads, the first track and the track spacing,
	// where the tails begin, the upper and the lower end of the iron.
	leadY, trackY, trackStep, tailY, topY, bottomY float64
	footY                                          float64
}

// coilShape is a coil's place on the strip.
type coilShape struct {
	layout.Coil
	// left and right are the x of its sides, right beyond the strip when it passes the seam.
	left, right float64
	// startsLeft says that its start is its left side.
	startsLeft bool
	// gap is the distance of its tails from its peak.
	gap float64
	// flat says that it has no peak at the connection end.
	flat bool
}

func (c *coilShape) peak() float64 { return (c.left + c.right) / 2 }
func (c *coilShape) half() float64 { return (c.right - c.left) / 2 }

// tail is the x of one of its ends.
func (c *coilShape) tail(e layout.End) float64 {
	left := (e == layout.Start) == c.startsLeft
	switch {
	case c.flat && left:
		return c.left
	case c.flat:
		return c.right
	case left:
		return c.peak() - c.gap
	}
	return c.peak() + c.gap
}

const (
	// slotsOnPage is the most slots of one page; more need several.
	slotsOnPage = 36
	// seamRoom is kept at either edge of a page for the seam's mark.
	seamRoom = 5.0
	// tailShare is the distance of tails from the peak, in slot pitches, and widestTail the most in mm.
	tailShare  = 0.22
	widestTail = 2.2
	// sideShare is the distance of the two sides in a slot from its middle, in slot pitches.
	sideShare = 0.2
)

// unrolled draws the winding laid flat, as many pages as it takes.
func (a *artist) unrolled() []*Page {
	paper := a.opt.Paper.across()
	plan, why := a.b.Plan(a.index)
	if plan == nil {
		return a.refuse(Unrolled, paper, why)
	}
	area := (&canvas{paper: paper}).room()
	u := newUnroll(plan, a.t.Connection, area)
	u.kind = a.kind()
	pages := (u.slots + slotsOnPage - 1) / slotsOnPage
	each := (u.slots + pages - 1) / pages
	var all []*Page
	for first := 1; first <= u.slots; first += each {
		p := a.newPage(Unrolled, paper)
		v := view{unroll: u, page: p, area: area, first: first, last: min(first+each-1, u.slots), number: len(all) + 1, pages: pages}
		v.draw()
		all = append(all, p)
	}
	return all
}

// newUnroll lays out the strip for pages with so much room.
func newUnroll(plan *layout.Layout, conn layout.Connection, area box) *unroll {
	u := &unroll{plan: plan, wiring: plan.Wiring(conn), slots: plan.Spec().Slots, byCoil: map[int]int{}}
	pages := (u.slots + slotsOnPage - 1) / slotsOnPage
	u.pitch = (area.width() - 2*seamRoom) / float64((u.slots+pages-1)/pages)
	u.side = sideShare * u.pitch
	u.placeCoils()
	u.makeNets()
	u.setHeights(area)
	return u
}

// length is that of the strip.
func (u *unroll) length() float64 { return float64(u.slots) * u.pitch }

// slotX is the middle of a slot.
func (u *unroll) slotX(n int) float64 { return (float64(n) - 0.5) * u.pitch }

// sideX is the place of a coil side in a slot.
func (u *unroll) sideX(n, coil int, end layout.End) float64 {
	for _, s := range u.plan.Slot(n) {
		if s.Coil == coil && s.End == end {
			return u.slotX(n) + u.sideOffset(s.Layer)
		}
	}
	return u.slotX(n)
}

// sideOffset is how far from the slot's middle a side is drawn: what is laid first on the left, what
// lies at the mouth on the right; sides next to each other as they lie.
func (u *unroll) sideOffset(l layout.Layer) float64 {
	switch l {
	case layout.Bottom, layout.AnticlockwiseHalf:
		return -u.side
	case layout.Top, layout.ClockwiseHalf:
		return u.side
	}
	return 0
}

// placeCoils finds the place of every coil. Coils left out have none.
func (u *unroll) placeCoils() {
	nested := map[int]int{} // number of coils so far by their peak, in half slots
	byWidth := make([][]int, u.slots)
	for _, c := range u.plan.Coils() {
		if c.Turns == 0 {
			continue
		}
		s := coilShape{Coil: c, startsLeft: true, flat: u.plan.Spec().Kind == layout.Wave}
		width := (c.Finish - c.Start + u.slots) % u.slots
		from, to, end, far := c.Start, c.Finish, layout.Start, layout.Finish
		if 2*width > u.slots {
			width, from, to, end, far, s.startsLeft = u.slots-width, to, from, far, end, false
		}
		s.left, s.right = u.sideX(from, c.Number, end), u.sideX(to, c.Number, far)
		if s.right < s.left {
			s.right += u.length()
		}
		u.byCoil[c.Number] = len(u.coils)
		byWidth[width] = append(byWidth[width], len(u.coils))
		u.coils = append(u.coils, s)
	}
	for _, list := range byWidth {
		for _, i := range list {
			c := &u.coils[i]
			at := int(math.Round(2*c.peak()/u.pitch)) % (2 * u.slots)
			c.gap = min(tailShare*u.pitch, widestTail) * float64(1+2*nested[at])
			nested[at]++
		}
	}
}

// endsHigh is the height of the highest coil end above the iron.
func (u *unroll) endsHigh() float64 {
	widest := 0.0
	for i := range u.coils {
		widest = max(widest, u.coils[i].half())
	}
	return u.slope * widest
}

// setHeights divides the page's height.
func (u *unroll) setHeights(area box) {
	const (
		highest, steepest          = 25.0, 0.9
		foot                       = 18.0
		leads                      = 14.0
		leastIron, mostIron        = 38.0, 100.0
		widestTrack, aboveTheTails = 6.5, 2.5
	)
	u.slope = 1
	u.slope = min(steepest, highest/u.endsHigh())
	ends := u.endsHigh()
	if len(u.coils) > 0 && u.coils[0].flat {
		ends = 4
	}
	left := area.height() - foot - leads - ends - u.endsHigh() - aboveTheTails
	wanted := widestTrack * float64(u.tracks+1)
	iron := min(max(left-wanted, leastIron), mostIron)
	u.trackStep = min(widestTrack, (left-iron)/float64(u.tracks+1))
	u.footY = area.y1 - foot
	u.bottomY = u.footY - u.endsHigh() - 1
	u.topY = u.bottomY - iron
	u.tailY = u.topY - ends - 1
	u.trackY = u.tailY - aboveTheTails
	u.leadY = u.trackY - u.trackStep*float64(u.tracks) - 2
}

// track is the height of a track, 0 the lowest.
func (u *unroll) track(n int) float64 { return u.trackY - u.trackStep*float64(n) }

// shape is a coil's line on the strip, from its left tail round to its right one.
func (u *unroll) shape(c *coilShape) []point {
	low := u.bottomY + u.slope*c.half()
	body := []point{{c.left, u.topY}, {c.left, u.bottomY}, {c.peak(), low}, {c.right, u.bottomY}, {c.right, u.topY}}
	left, right := c.tail(layout.Start), c.tail(layout.Finish)
	if !c.startsLeft {
		left, right = right, left
	}
	if c.flat {
		return append(append([]point{{left, u.tailY}}, body...), point{right, u.tailY})
	}
	bend := u.topY - u.slope*(c.half()-c.gap)
	return append(append([]point{{left, u.tailY}, {left, bend}}, body...), point{right, bend}, point{right, u.tailY})
}

// idOf is the id of something drawn once.
func idOf(kind string, n int) string { return fmt.Sprintf("%s-%d", kind, n) }
