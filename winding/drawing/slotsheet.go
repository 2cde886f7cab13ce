package drawing

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// scales are those a slot may be drawn at; the largest that fits is used.
var scales = []float64{50, 40, 30, 25, 20, 15, 12, 10, 8, 6, 5, 4, 3, 2.5, 2, 1.5, 1, 0.5, 0.2, 0.1}

// The space kept free round the slot for dimensions and for the words under it, mm.
const (
	dimsAside = 34.0
	dimsAbove = 22.0
	dimsBelow = 14.0
	slotWords = 48.0
	textSize  = 3.2
	checkBar  = 50.0
	inchBar   = 2 * 25.4
	dimGap    = 1.5
)

// slotView is a slot on its page.
type slotView struct {
	*artist
	page    *Page
	picture slot.Packing
	scale   float64
	// origin is where the middle of the slot's bottom is on the page.
	origin point
	// extent is the picture's own bounding box, in mm of the slot.
	extent box
}

// slot draws the slot to scale with the trial's wires in it.
func (a *artist) slot() []*Page {
	paper := a.opt.Paper
	picture, why := a.b.Picture(a.index)
	if why != "" {
		return a.refuse(Slot, paper, why)
	}
	p := a.newPage(Slot, paper)
	v := slotView{artist: a, page: p, picture: picture}
	v.fit(p.room())
	v.iron()
	v.wires()
	v.dimensions()
	v.words(p.room())
	return []*Page{p}
}

// fit chooses scale and position.
func (v *slotView) fit(area box) {
	var all []point
	for _, p := range v.picture.Outline {
		all = append(all, point{p.X, p.Y})
	}
	for _, l := range v.picture.Neck {
		all = append(all, point{l.From.X, l.From.Y}, point{l.To.X, l.To.Y})
	}
	v.extent = around(all...)
	free := box{area.x0 + dimsAside, area.y0 + dimsAbove, area.x1 - dimsAside, area.y1 - slotWords - dimsBelow}
	v.scale = scales[len(scales)-1]
	for _, s := range scales {
		if s*v.extent.width() <= free.width() && s*v.extent.height() <= free.height() {
			v.scale = s
			break
		}
	}
	v.origin = point{free.middle().x, free.middle().y + v.scale*v.extent.height()/2}
}

// at is a place of the slot on the page.
func (v *slotView) at(x, y float64) point {
	return point{v.origin.x + v.scale*x, v.origin.y - v.scale*y}
}

func (v *slotView) outline(points []slot.Point) []point {
	all := make([]point, len(points))
	for i, p := range points {
		all[i] = v.at(p.X, p.Y)
	}
	return all
}

// iron is the slot's wall and what lines it.
func (v *slotView) iron() {
	v.page.area(mark{id: "liner"}, hairline, "", v.outline(v.picture.Inner))
	if len(v.picture.Wedge) > 0 {
		v.page.area(mark{id: "wedge"}, thin, "white", v.outline(v.picture.Wedge))
	}
	if len(v.picture.Separator) > 0 {
		v.page.area(mark{id: "separator"}, thin, "white", v.outline(v.picture.Separator))
	}
	wall := v.outline(v.picture.Outline)
	neck := v.picture.Neck
	if len(neck) != 2 {
		v.page.area(mark{id: "wall"}, bold, "", wall)
		return
	}
	v.page.strokes(mark{id: "wall"}, bold, v.openWall()...)
}

// openWall is the wall with its mouth open and the neck on it: the two sides are mirror images.
func (v *slotView) openWall() [][]point {
	var left, right []point
	for _, p := range v.picture.Outline {
		if p.X >= 0 {
			right = append(right, v.at(p.X, p.Y))
			left = append(left, v.at(-p.X, p.Y))
		}
	}
	l, r := v.picture.Neck[0], v.picture.Neck[1]
	left = append(left, v.at(l.From.X, l.From.Y), v.at(l.To.X, l.To.Y))
	right = append(right, v.at(r.From.X, r.From.Y), v.at(r.To.X, r.To.Y))
	return [][]point{{left[0], right[0]}, left, right}
}

// wires are rings over the enamel; the second size has a black middle.
func (v *slotView) wires() {
	for _, c := range v.picture.Circles {
		r := c.R * v.scale
		v.page.ring(v.at(c.X, c.Y), r-0.1, pen{width: 0.2}, "white")
		if c.Size == 1 {
			v.page.ring(v.at(c.X, c.Y), 0.35*r, hairline, "black")
		}
	}
}

// words explain the drawing, with a scale bar to check the print by.
func (v *slotView) words(area box) {
	y := area.y1 - slotWords + 4
	p := v.page
	p.say(words{text: "Scale " + scaleWords(v.scale), at: point{area.x0 + 2, y}, size: 4, anchor: fromLeft, bold: true})
	v.bar(point{area.x1 - 4, y})
	p.paragraph(point{area.x0 + 2, y + 7}, textSize, area.width()-4, v.sayings()...)
}

// scaleWords is 10 : 1, or 1 : 2.
func scaleWords(s float64) string {
	if s < 1 {
		return "1 : " + quantity.Number(1/s, quantity.AtMost(2))
	}
	return quantity.Number(s, quantity.AtMost(3)) + " : 1"
}

// bar is a length to lay a rule on.
func (v *slotView) bar(right point) {
	long, says := checkBar, "50 mm on the rule, if printed to size"
	if v.opt.Units.Inch {
		long, says = inchBar, "2 in on the rule, if printed to size"
	}
	p, left := v.page, right.x-long
	p.line(bold, point{left, right.y}, right)
	for _, x := range []float64{left, right.x} {
		p.line(bold, point{x, right.y - 1.5}, point{x, right.y + 1.5})
	}
	p.say(words{text: says, at: point{right.x, right.y - 3.8}, size: 2.7, anchor: toRight})
}

// sayings is what is worth knowing about the slot.
func (v *slotView) sayings() []string {
	where := "go into the slot"
	if v.kind() == flat {
		where = "lie between two holes, half of them of either coil"
	}
	list := []string{fmt.Sprintf("%d wires of this trial %s; %d are drawn.", v.picture.Wanted, where, v.picture.Placed)}
	switch {
	case v.picture.Wanted == 0:
		list[0] = "No wires: the turns are not given."
	case v.picture.Placed < v.picture.Wanted:
		list[0] += " The others do not go in, laid row by row: the slot is too full."
	}
	if v.picture.Beside && v.kind() != flat {
		list = append(list, "The two sides lie side by side, each against its own tooth.")
	}
	if v.picture.Mixed {
		list = append(list, "Wires with a black middle are those of the second size.")
	}
	list = append(list, "Over the enamel "+v.of("overall_mm")+". Wire fill "+v.of("wire_fill")+", limit "+v.of("fill_limit")+".")
	const neatly = "A hand does not lay wires as neatly as this. ~ marks what was not measured."
	if v.kind() == flat {
		return append(list, "Across: the sides of two neighbours, hole to hole. Down: the coil's thickness. "+neatly)
	}
	list = append(list, v.lining())
	for _, s := range []string{v.t.MouthText, v.o.Machine.SlotNote} {
		if s != "" {
			list = append(list, strings.ToUpper(s[:1])+s[1:]+".")
		}
	}
	return append(list, "The mouth is at the top, towards the rotor. "+neatly)
}

// of is a figure of the trial with its unit.
func (v *slotView) of(id string) string {
	o := winding.OutputOf(id)
	return v.figure(o.Of(v.t), o.Dim, o.Digits)
}

// lining is the insulation in the slot, as drawn.
func (v *slotView) lining() string {
	s := v.b.Job().Slot
	says := "Liner " + v.thickness(s.LinerMM, "slot.liner") + ", wedge " + v.thickness(s.WedgeMM, "slot.wedge")
	if len(v.picture.Separator) > 0 {
		says += ", separator " + v.length(s.SeparatorMM.Figure(""))
	}
	return says + "."
}

// thickness is one as given, or the default used instead.
func (v *slotView) thickness(r quantity.Reading, path string) string {
	return v.length(r.OrReading(job.DefaultOf(path)).Figure(""))
}
