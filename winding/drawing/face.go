package drawing

import (
	"fmt"
	"math"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// slotsOnFace is the most slots of a face; beyond, their letters would be unreadable.
const slotsOnFace = 120

// faceView is the stator seen from its connection end: slot 1 at the top, numbers going
// clockwise.
type faceView struct {
	page   *Page
	plan   *layout.Layout
	kind   kind
	centre point
	// scale is mm on the page per unit of the radii below.
	scale float64
}

// Radii of the face, the outermost number at 95: names of the slots, the iron's outside,
// the slots from bottom to bore, the marks in them, their letters, the pole pitches.
const (
	rNumber  = 90.0
	rOutside = 84.0
	rBottom  = 75.0
	rLow     = 69.5
	rMiddle  = 66.0
	rHigh    = 62.5
	rBore    = 57.0
	rAbove   = 79.5
	rBelow   = 52.5
	rPoles   = 44.0
	rWhole   = 95.0
	// Where the rotor turns outside: the iron's hole, the pole pitches, the numbers.
	rHub       = 47.0
	rPolesOut  = 85.5
	rNumberOut = 92.0
)

// faceText is the size of the words under the face.
const faceText = 3.2

// polesAt and numbersAt are the radii of pole pitches and numbers.
func (v *faceView) polesAt() float64 {
	if v.kind == outside {
		return rPolesOut
	}
	return rPoles
}

func (v *faceView) numbersAt() float64 {
	if v.kind == outside {
		return rNumberOut
	}
	return rNumber
}

// face draws the stator's face.
func (a *artist) face() []*Page {
	paper := a.opt.Paper
	plan, why := a.b.Plan(a.index)
	switch {
	case plan == nil:
		return a.refuse(Face, paper, why)
	case plan.Spec().Slots > slotsOnFace:
		return a.refuse(Face, paper, fmt.Sprintf("%d slots are too many to letter on one page (%d are the most); the unrolled winding and the card's slot table show them",
			plan.Spec().Slots, slotsOnFace))
	}
	p := a.newPage(Face, paper)
	area := p.room()
	r := min(area.width(), area.height()-faceFoot) / 2
	v := faceView{page: p, plan: plan, kind: a.kind(), centre: point{area.middle().x, area.y0 + r}, scale: r / rWhole}
	v.draw()
	v.legend(area)
	return []*Page{p}
}

// faceFoot is the height kept under the face for the words, mm.
const faceFoot = 30.0

// at is a place by its radius and its angle in slots, clockwise from slot 1 at the top.
func (v *faceView) at(r, slots float64) point { return v.spot(v.radius(r), slots) }

// radius is where something is drawn. With the rotor outside, everything between a slot's bottom and
// its mouth is reversed.
func (v *faceView) radius(r float64) float64 {
	if v.kind == outside && r >= rBelow && r <= rAbove {
		return rBottom + rBore - r
	}
	return r
}

// spot is at without the reversal.
func (v *faceView) spot(r, slots float64) point {
	sin, cos := math.Sincos(2 * math.Pi * slots / float64(v.plan.Spec().Slots))
	return point{v.centre.x + r*v.scale*sin, v.centre.y - r*v.scale*cos}
}

// pitch is the width of one slot pitch at a radius, mm.
func (v *faceView) pitch(r float64) float64 {
	return 2 * math.Pi * r * v.scale / float64(v.plan.Spec().Slots)
}

func (v *faceView) draw() {
	switch v.kind {
	case within:
		v.page.ring(v.centre, rOutside*v.scale, bold, "")
	case outside:
		v.page.ring(v.centre, rHub*v.scale, bold, "")
	}
	if v.kind == flat {
		v.flatCoils()
	} else {
		v.bore()
	}
	for n := 1; n <= v.plan.Spec().Slots; n++ {
		v.slot(n)
	}
	v.poles()
}

// slot draws a slot, its number and what lies in it.
func (v *faceView) slot(n int) {
	where := float64(n - 1)
	if v.kind != flat {
		const half = 0.33 // of a pitch
		v.page.area(mark{id: idOf("face-slot", n)}, thin, "", []point{
			v.at(rBore, where-half*0.9), v.at(rBottom, where-half), v.at(rBottom, where+half), v.at(rBore, where+half*0.9)})
	}
	longest, _ := textWidth(fmt.Sprint(v.plan.Spec().Slots), 1, true)
	size := min(3.2, 0.8*v.pitch(rNumber)/longest)
	v.page.say(words{text: fmt.Sprint(n), at: v.spot(v.numbersAt(), where), size: size, anchor: centred, bold: true, id: idOf("slot", n)})
	for _, s := range v.plan.Slot(n) {
		v.side(where, s)
	}
}

// side draws the mark of a coil side and writes its phase and coil beside it.
func (v *faceView) side(where float64, s layout.Side) {
	const beside, apart = 0.17, 0.22 // of a pitch: marks and letters of sides next to each other
	r, label, wide := rMiddle, rAbove, v.pitch(rBelow)
	letter, most := where, 0.6
	switch s.Layer {
	case layout.Bottom:
		r = rLow
	case layout.Top:
		r, label = rHigh, rBelow
	case layout.ClockwiseHalf:
		where, letter, wide, most = where+beside, where+apart, wide/2, 0.28
	case layout.AnticlockwiseHalf:
		where, letter, wide, most = where-beside, where-apart, wide/2, 0.28
	}
	if v.kind == flat {
		v.radial(where, s)
	} else {
		v.current(v.at(r, where), min(1.9, 0.2*wide), s)
	}
	name := v.plan.PhaseName(s.Set, s.Phase)
	if s.Turns == 0 {
		name = "-"
	}
	v.page.say(words{text: name, at: v.at(label, letter), size: min(3, most*v.pitch(v.radius(label))), anchor: centred, plate: true})
}

// current is a cross where the phase's current goes away from the viewer, a dot where it comes; a coil
// left out has neither.
func (v *faceView) current(at point, r float64, s layout.Side) {
	p := thin
	if s.Set == 1 {
		p = bold
	}
	v.page.ring(at, r, p, "white")
	switch {
	case s.Turns == 0:
	case s.Sign > 0:
		d := r * math.Sqrt2 / 2
		v.page.line(thin, point{at.x - d, at.y - d}, point{at.x + d, at.y + d})
		v.page.line(thin, point{at.x - d, at.y + d}, point{at.x + d, at.y - d})
	default:
		v.page.ring(at, 0.35*r, hairline, "black")
	}
}

// bore closes the teeth at the bore.
func (v *faceView) bore() {
	for n := range v.plan.Spec().Slots {
		var arc []point
		for i := range 9 {
			arc = append(arc, v.at(rBore, float64(n)+0.297+0.406*float64(i)/8))
		}
		v.page.line(thin, arc...)
	}
}

// poles marks the pole pitches, beginning half a slot before slot 1.
func (v *faceView) poles() {
	spec := v.plan.Spec()
	pitch := float64(spec.Slots) / float64(spec.Poles)
	v.page.ring(v.centre, v.polesAt()*v.scale, hairline, "")
	for n := range spec.Poles {
		at := float64(n)*pitch - 0.5
		v.page.strokes(mark{id: idOf("pole", n+1)}, bold, []point{v.spot(v.polesAt()-2, at), v.spot(v.polesAt()+2, at)})
		if n == 0 {
			v.arrow(at, at+pitch)
		}
	}
}

// arrow is the dimension line of the first pole pitch.
func (v *faceView) arrow(from, to float64) {
	var arc []point
	steps := max(4, int(24*(to-from)/float64(v.plan.Spec().Slots)*4))
	for i := range steps + 1 {
		arc = append(arc, v.spot(v.polesAt()-1, from+(to-from)*float64(i)/float64(steps)))
	}
	v.page.line(bold, arc...)
}

// legend says how to read the face: in the bore what is drawn, under it what the marks are.
func (v *faceView) legend(area box) {
	spec := v.plan.Spec()
	size := 3.2
	y := v.centre.y - 4*size
	pitch := float64(spec.Slots) / float64(spec.Poles)
	says := []string{
		fmt.Sprintf("%d slots, %d poles", spec.Slots, spec.Poles),
		"pole pitch " + v.kind.some(quantity.Number(pitch, quantity.AtMost(4))),
		"coil span " + spanWords(v.plan),
		fmt.Sprintf("%s, %s", spec.Kind, []string{"one layer", "two layers"}[spec.Layers-1]),
	}
	switch {
	case v.kind == flat:
		says = append([]string{fmt.Sprintf("%d flat coils, %d poles", spec.Slots, spec.Poles)}, says[1])
	case v.plan.Beside():
		says = append(says[:2], "each coil round one tooth")
	}
	for _, s := range says {
		v.page.say(words{text: s, at: point{v.centre.x, y}, size: size, anchor: centred})
		y += 1.9 * size
	}
	v.turn(y + size)
	y = v.centre.y + rWhole*v.scale + 5
	if v.kind == flat {
		v.page.paragraph(point{area.x0 + 1, y + 1}, faceText, area.width()-2, "Seen on the face before you; gaps between coils count clockwise. Arrows: the way the phase's current goes along that side of the coil, to the middle or to the rim. Numbers in the holes: coils. "+
			"Heavy ticks in the middle: pole pitches; the first is drawn out.")
		return
	}
	for i, s := range []string{"current of the phase goes away from you, into the slot", "current of the phase comes towards you, out of the slot"} {
		at := point{area.x0 + 3, y + float64(i)*5}
		v.current(at, 1.9, layout.Side{Sign: 1 - 2*i, Turns: 1})
		v.page.say(words{text: s, at: point{at.x + 4, at.y}, size: faceText, anchor: fromLeft})
	}
	v.page.paragraph(point{area.x0 + 1, y + 10.5}, faceText, area.width()-2, "Seen from the connection end; slots count clockwise. "+v.layerWords()+
		" Heavy ticks on the rotor's side: pole pitches; the first is drawn out.")
}

// turn is an arrow that says clockwise.
func (v *faceView) turn(y float64) {
	var arc []point
	for i := range 13 {
		sin, cos := math.Sincos(math.Pi * (-0.3 + 0.6*float64(i)/12))
		arc = append(arc, point{v.centre.x + 14*sin, y + 12 - 14*cos})
	}
	last := arc[len(arc)-1]
	v.page.line(thin, arc...)
	v.page.arrowHead(point{last.x + 1.2, last.y + 1.4}, math.Sqrt2/2, math.Sqrt2/2, 2.6)
	v.page.say(words{text: v.kind.place() + "s count up", at: point{v.centre.x, y + 4}, size: 2.8, anchor: centred})
}

// layerWords says which letter of a slot is which layer.
func (v *faceView) layerWords() string {
	spec := v.plan.Spec()
	switch {
	case spec.Layers == 1:
		return "One side to a slot."
	case (spec.Span == 1 || spec.Span == spec.Slots-1) && v.kind == outside:
		return "Sides lie next to each other in the slot, each with its letter inside it."
	case spec.Span == 1 || spec.Span == spec.Slots-1:
		return "Sides lie next to each other in the slot, each with its letter outside it."
	case v.kind == outside:
		return "The inner mark and letter are the bottom side, laid first; the outer ones the top side, at the mouth."
	}
	return "The outer mark and letter are the bottom side, laid first; the inner ones the top side, at the mouth."
}

// spanWords is the coils' spans in words: one, or from the least to the most.
func spanWords(plan *layout.Layout) string {
	q := plan.Spec().Slots
	least, most := q, 0
	for _, c := range plan.Coils() {
		d := (c.Finish - c.Start + q) % q
		d = min(d, q-d)
		least, most = min(least, d), max(most, d)
	}
	if least == most {
		return within.some(fmt.Sprint(most))
	}
	return fmt.Sprintf("%d to %d slots", least, most)
}
