package drawing

import (
	"fmt"

	"slotwright/winding/layout"
)

// view is one page of the strip: a window from its first slot to its last.
type view struct {
	*unroll
	page        *Page
	area        box
	first, last int
	// number is that of the page, of so many.
	number, pages int
	names         placer
}

// x0 and x1 are the window's ends on the strip.
func (v *view) x0() float64 { return float64(v.first-1) * v.pitch }
func (v *view) x1() float64 { return float64(v.last) * v.pitch }

// onPage is where a place on the strip, in the window, is across the page: seen from outside the strip
// runs to the left.
func (v *view) onPage(x float64) float64 {
	if v.kind == outside {
		x = v.x0() + v.x1() - x
	}
	return x + v.shift()
}

// shift is the offset from the strip to the page.
func (v *view) shift() float64 {
	return v.area.x0 + seamRoom + (v.area.width()-2*seamRoom-(v.x1()-v.x0()))/2 - v.x0()
}

// pieces is the part of a line of the strip in the window, in page coordinates.
func (v *view) pieces(line []point) [][]point {
	var all [][]point
	for _, turn := range []float64{-v.length(), 0, v.length()} {
		moved := make([]point, len(line))
		for i, p := range line {
			moved[i] = point{p.x + turn, p.y}
		}
		for _, piece := range clipX(moved, v.x0(), v.x1()) {
			for i := range piece {
				piece[i].x = v.onPage(piece[i].x)
			}
			all = append(all, piece)
		}
	}
	return all
}

// spot is where a place on the strip is on the page; false when it is on another.
func (v *view) spot(x, y float64) (point, bool) {
	x = wrapped(x, v.length())
	return point{v.onPage(x), y}, x >= v.x0() && x < v.x1()
}

// draw puts everything on the page.
func (v *view) draw() {
	v.names = placer{within: box{v.x0() + v.shift(), v.area.y0, v.x1() + v.shift(), v.tailY}}
	v.iron()
	for i := range v.coils {
		v.coil(&v.coils[i])
	}
	for i := range v.nets {
		v.net(&v.nets[i])
	}
	for i := range v.nets {
		v.namesOf(&v.nets[i])
	}
	v.labels()
	v.seam()
	v.legend()
}

// iron is the slots as long boxes.
func (v *view) iron() {
	for n := v.first; n <= v.last; n++ {
		x, wide := v.onPage(v.slotX(n)), 0.36*v.pitch
		v.page.area(mark{class: "slot"}, hairline, "", corners(box{x - wide, v.topY, x + wide, v.bottomY}))
	}
}

// named is a mark with an id where the thing's first place is in the window, so that no two pages share
// an id; elsewhere the same as a class.
func (v *view) named(id string, x float64) mark {
	if _, here := v.spot(x, 0); here {
		return mark{id: id}
	}
	return mark{class: id}
}

// coil draws a coil's line and the arrows on its sides.
func (v *view) coil(c *coilShape) {
	line := v.shape(c)
	p := phasePen(c.Set, c.Phase)
	v.page.strokes(v.named(idOf("coil", c.Number), c.side(layout.Start)), p, v.pieces(line)...)
	for _, end := range []layout.End{layout.Start, layout.Finish} {
		iron := v.bottomY - v.topY
		if at, here := v.spot(c.side(end), v.topY+0.13*iron); here {
			const long = 2.6
			if c.downward(end) {
				v.page.arrowHead(point{at.x, at.y + long/2}, 0, 1, long)
			} else {
				v.page.arrowHead(point{at.x, at.y - long/2}, 0, -1, long)
			}
		}
	}
}

// side is the x of the side that ends at one of its ends.
func (c *coilShape) side(e layout.End) float64 {
	if (e == layout.Start) == c.startsLeft {
		return c.left
	}
	return c.right
}

// downward says that the phase's current goes away from the connection end in a side.
func (c *coilShape) downward(e layout.End) bool { return (e == layout.Start) == (c.Sense > 0) }

// net draws a net's track and what rises to it.
func (v *view) net(n *net) {
	y := v.track(max(n.track, 0))
	if n.kind == joinNet {
		line := []point{{n.from, v.tailY}, {n.from, y}, {n.to, y}, {n.to, v.tailY}}
		v.keep(v.named(n.id, n.tails[0]), phasePen(n.set, n.phase), line)
		return
	}
	if n.track >= 0 {
		p := pen{width: 0.6}
		if n.kind == leadNet {
			p = phasePen(n.set, n.phase)
		}
		v.keep(v.named(n.id, n.tails[0]), p, []point{{n.from, y}, {n.to, y}})
	}
	for _, l := range n.leads {
		for i, x := range l.at {
			top := y
			if l.Out && i == 0 {
				top = v.leadY
			}
			v.keep(v.named(fmt.Sprintf("end-%s-%d", l.Name, i+1), x), phasePen(l.Set, l.Phase), []point{{x, v.tailY}, {x, top}})
			if at, here := v.spot(x, y); here && n.track >= 0 {
				v.page.ring(at, 0.75, hairline, "black")
			}
		}
	}
}

// keep draws a line and records it as one that names should avoid.
func (v *view) keep(m mark, p pen, line []point) {
	pieces := v.pieces(line)
	v.page.strokes(m, p, pieces...)
	v.names.lines = append(v.names.lines, pieces...)
}

// labels are the numbers of slots and coils and the letters of phases.
func (v *view) labels() {
	iron := v.bottomY - v.topY
	for n := v.first; n <= v.last; n++ {
		w := words{text: fmt.Sprint(n), at: point{v.onPage(v.slotX(n)), v.topY + 0.5*iron}, size: 3.2,
			anchor: centred, bold: true, plate: true, id: idOf("slot", n)}
		if w.box().width() > 2*v.side-3 {
			w.cover = 2*v.side + 1.2 // a line close by would read as a stroke of the number
		}
		v.page.say(w)
	}
	for i := range v.coils {
		c := &v.coils[i]
		if at, here := v.spot(c.side(layout.Start), v.topY+0.3*iron); here {
			v.page.say(words{text: fmt.Sprint(c.Number), at: at, size: 2.4, anchor: centred, plate: true, framed: true, id: idOf("number", c.Number)})
		}
		for _, end := range []layout.End{layout.Start, layout.Finish} {
			row := 0.7
			if end == layout.Finish {
				row = 0.84
			}
			if at, here := v.spot(c.side(end), v.topY+row*iron); here {
				v.page.say(words{text: v.plan.PhaseName(c.Set, c.Phase), at: at, size: 2.5, anchor: centred, plate: true})
			}
		}
	}
}

// seam marks where the strip was cut.
func (v *view) seam() {
	for i, x := range []float64{v.x0() + v.shift(), v.x1() + v.shift()} {
		v.page.strokes(mark{class: "seam"}, dotted, []point{{x, v.leadY}, {x, v.footY}})
		edge := i
		if v.kind == outside {
			edge = 1 - i
		}
		v.page.say(words{text: v.seamWords(edge), at: point{x, v.footY + 2}, size: 2.6, anchor: []string{fromLeft, toRight}[i]})
	}
}

// seamWords says where it continues before the window's first slot (0) or behind its last (1).
func (v *view) seamWords(edge int) string {
	next, page, cut := v.before(), v.number-1, v.first > 1
	if edge == 1 {
		next, page, cut = v.after(), v.number+1, v.last < v.slots
	}
	switch {
	case v.pages == 1:
		return fmt.Sprintf("SEAM: joins on at %s %d", v.kind.place(), next)
	case cut:
		return fmt.Sprintf("CUT: goes on at %s %d, page %d", v.kind.place(), next, page)
	}
	return fmt.Sprintf("SEAM: joins on at %s %d, page %d", v.kind.place(), next, (page+v.pages-1)%v.pages+1)
}

// before and after are the slots beyond the window's ends.
func (v *view) before() int {
	if v.first == 1 {
		return v.slots
	}
	return v.first - 1
}

func (v *view) after() int { return v.last%v.slots + 1 }

// legend says how to read the page.
func (v *view) legend() {
	spec := v.plan.Spec()
	x, y := v.area.x0, v.footY+6
	for set := range spec.Sets {
		for phase := range spec.Phases {
			v.page.line(phasePen(set, phase), point{x, y}, point{x + 16, y})
			v.page.say(words{text: "phase " + v.plan.PhaseName(set, phase), at: point{x + 18, y}, size: 2.6, anchor: fromLeft})
			x += 42
		}
	}
	lines := []string{
		v.kind.seen() + " Bold numbers: " + v.kind.places() + ". Framed numbers: coils, on the side where the coil starts. " +
			"Arrows: the way of the phase's current. Dots join; lines that cross do not. " + v.layerWords() + v.leftOut(),
	}
	v.page.paragraph(point{v.area.x0, y + 4}, 2.7, v.area.width(), lines...)
}

// layerWords says which side in a slot is which.
func (v *view) layerWords() string {
	spec := v.plan.Spec()
	switch {
	case spec.Layers == 1:
		return "One side to a slot."
	case v.kind == flat:
		return ""
	case spec.Span == 1 || spec.Span == spec.Slots-1:
		return "Sides lie next to each other in the slot, as drawn."
	}
	if v.kind == outside {
		return "In a slot the right side is laid first, at the bottom; the left one lies at the mouth."
	}
	return "In a slot the left side is laid first, at the bottom; the right one lies at the mouth."
}

// leftOut names coils that are not wound.
func (v *view) leftOut() string {
	n := len(v.plan.Coils()) - len(v.coils)
	if n == 0 {
		return ""
	}
	return fmt.Sprintf(" %d coils of the list are left out.", n)
}
