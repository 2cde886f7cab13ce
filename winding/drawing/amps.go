package drawing

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// ampsView is the diagram of all trials.
type ampsView struct {
	*artist
	page   *Page
	plot   box
	x, y   axis
	labels placer
}

const (
	ampsRow    = 5.2 // height of a row of the table
	axisAside  = 16.0
	axisBelow  = 13.0
	smallMark  = 1.3
	labelsReel = 30.0 // how far a label may be from its mark, mm
)

// amps draws net amps over the alternator's speed.
func (a *artist) amps() []*Page {
	paper := a.opt.Paper.across()
	p := a.newPage(Amps, paper)
	v := ampsView{artist: a, page: p}
	if !v.fit(p.room()) {
		return a.refuse(Amps, paper, v.whyNone())
	}
	v.grid()
	for i := range a.o.Trials {
		v.curve(i)
	}
	for i := range a.o.Trials {
		v.marks(i)
	}
	v.table(p.room())
	return []*Page{p}
}

// whyNone says why no trial has a curve.
func (v *ampsView) whyNone() string {
	for _, t := range v.o.Trials {
		if t.NoCharging != "" {
			return t.NoCharging
		}
	}
	return "no trial has a curve"
}

// fit sets the axes; false when there is nothing to draw.
func (v *ampsView) fit(area box) bool {
	top, low, high := 0.0, 0.0, 0.0
	any := false
	for _, t := range v.o.Trials {
		for _, p := range v.points(&t) {
			any = true
			top, low, high = max(top, p.RPM), min(low, p.NetAmps), max(high, p.NetAmps)
		}
	}
	rows := float64(len(v.o.Trials) + 2)
	for _, c := range v.o.Machine.Conditions {
		if c.Same != "" {
			rows++
		}
	}
	v.plot = box{area.x0 + axisAside, area.y0 + 4, area.x1 - 4, area.y1 - axisBelow - rows*ampsRow}
	v.x = newAxis(0, top, 12, v.plot.x0, v.plot.x1)
	v.y = newAxis(low, high, 9, v.plot.y1, v.plot.y0)
	v.labels = placer{within: v.plot.grown(-0.5)}
	return any
}

// points is a trial's curve with its operating points, finite ones only. The curve ends where the
// winding finds no steady temperature: the amps depend on its ohms, which are undefined there.
func (v *ampsView) points(t *winding.TrialOutcome) []winding.RunPoint {
	var all []winding.RunPoint
	for _, p := range t.Curve {
		if finite(p.RPM) && finite(p.NetAmps) && !p.TooHot {
			all = append(all, p)
		}
	}
	for _, o := range t.Operating {
		if finite(o.RPM) && finite(o.NetAmps) {
			all = append(all, o.RunPoint)
		}
	}
	return all
}

// tooHot reports whether a curve ends for want of a steady temperature.
func (v *ampsView) tooHot() bool {
	for i := range v.o.Trials {
		if slices.ContainsFunc(v.o.Trials[i].Curve, func(p winding.RunPoint) bool { return p.TooHot }) {
			return true
		}
	}
	return false
}

func finite(v float64) bool { return !math.IsNaN(v) && !math.IsInf(v, 0) }

// at is a point of the diagram on the page.
func (v *ampsView) at(rpm, amps float64) point { return point{v.x.at(rpm), v.y.at(amps)} }

// grid draws the axes with their numbers.
func (v *ampsView) grid() {
	p := v.page
	for _, t := range v.x.ticks() {
		x := v.x.at(t)
		p.line(pen{0.1, "0.4 1"}, point{x, v.plot.y0}, point{x, v.plot.y1})
		p.say(words{text: quantity.Number(t, quantity.AtMost(6)), at: point{x, v.plot.y1 + 3}, size: 2.8, anchor: centred})
	}
	for _, t := range v.y.ticks() {
		y := v.y.at(t)
		p.line(pen{0.1, "0.4 1"}, point{v.plot.x0, y}, point{v.plot.x1, y})
		p.say(words{text: quantity.Number(t, quantity.AtMost(6)), at: point{v.plot.x0 - 2.2, y}, size: 2.8, anchor: toRight})
	}
	p.area(mark{id: "plot"}, thin, "", corners(v.plot))
	p.line(thin, v.at(v.x.low, 0), v.at(v.x.high, 0))
	p.say(words{text: "alternator speed, rpm", at: point{v.plot.x1, v.plot.y1 + 7.5}, size: 3, anchor: toRight})
	p.say(words{text: "A", at: point{v.plot.x0 - 13, v.plot.y0 + 1}, size: 3.4, anchor: fromLeft, bold: true})
	p.say(words{text: "net DC amps into the battery, the rotor's part taken off, as warm as the winding gets", at: point{v.plot.x0, v.plot.y1 + 7.5}, size: 3, anchor: fromLeft})
}

// curve draws a trial's line, broken where it is not known: see points.
func (v *ampsView) curve(i int) {
	var lines [][]point
	var line []point
	for _, p := range v.o.Trials[i].Curve {
		if !finite(p.RPM) || !finite(p.NetAmps) || p.TooHot {
			lines, line = append(lines, line), nil
			continue
		}
		line = append(line, v.at(p.RPM, p.NetAmps))
	}
	lines = append(lines, line)
	v.page.strokes(mark{id: idOf("trial", i+1)}, trialPen(i), lines...)
	v.labels.lines = append(v.labels.lines, lines...)
}

// short is a trial's name where there is little room.
func (v *ampsView) short(i int) string {
	name := cleaned(v.o.Trials[i].Name, v.opt.ASCII)
	if w, told := textWidth(name, 1, true); name == "" || told || w > 3 {
		return fmt.Sprintf("no. %d", i+1)
	}
	return name
}

// marks marks where a trial begins to charge and where it really runs.
func (v *ampsView) marks(i int) {
	t := &v.o.Trials[i]
	if c := t.CutInRPM; c.Known() && c.Value >= v.x.low && c.Value <= v.x.high {
		at := v.at(c.Value, 0)
		v.page.line(bold, point{at.x, at.y - 2}, point{at.x, at.y + 2})
		v.label(v.short(i), at, 3.2)
	}
	var places []point
	for n := range t.Operating {
		o := &t.Operating[n]
		if !finite(o.RPM) || !finite(o.NetAmps) {
			continue
		}
		at := v.at(o.RPM, o.NetAmps)
		if slices.Contains(places, at) { // a drive that gives all it can in both: one mark round the other
			around := triangle(at, 2*smallMark)
			v.page.area(mark{}, thin, "", around)
			v.labels.lines = append(v.labels.lines, append(around, around[0]))
			continue
		}
		v.mark(at, o.Condition)
		places = append(places, at)
	}
	for _, at := range places {
		v.label(v.short(i), at, 3.4)
	}
}

// triangle is one lying on its side.
func triangle(at point, r float64) []point {
	return []point{{at.x, at.y - 1.3*r}, {at.x + 1.2*r, at.y + r}, {at.x - 1.2*r, at.y + r}}
}

// mark is a ring, a square or a triangle: slow, usual, top.
func (v *ampsView) mark(at point, condition string) {
	const r = smallMark
	switch condition {
	case winding.SlowCondition:
		v.page.ring(at, r, thin, "white")
	case winding.UsualCondition:
		v.page.area(mark{}, thin, "black", corners(box{at.x - r, at.y - r, at.x + r, at.y + r}))
	default:
		v.page.area(mark{}, thin, "white", triangle(at, r))
	}
	v.labels.taken = append(v.labels.taken, box{at.x - r, at.y - r, at.x + r, at.y + r})
}

// label writes beside a mark; where many lie together the table has to do.
func (v *ampsView) label(s string, at point, nearest float64) {
	w := words{text: s, size: 2.8, bold: true, plate: true}
	if placed, ok := v.labels.try(w, roundAbout(at, nearest, labelsReel)); ok {
		v.page.say(placed)
	}
}

// columns of the table, as parts of its width.
var ampsColumns = []struct {
	title string
	share float64
}{{"", 0.09}, {"TRIAL", 0.11}, {"WINDING", 0.27}, {"CHARGES FROM", 0.11}, {"slow", 0.14}, {"usual", 0.14}, {"top", 0.14}}

// table is the legend with the figures.
func (v *ampsView) table(area box) {
	y := v.plot.y1 + axisBelow
	x := area.x0
	for c, col := range ampsColumns {
		at := point{x, y}
		if c >= 4 {
			v.mark(point{x + 1.5, y}, col.title)
			at.x += 4.5
		}
		title, room := col.title, col.share*area.width()-1
		if c >= 4 {
			title, room = v.conditionWords(c-4), room-4.5
		}
		v.page.say(words{text: cutTo(title, 2.7, true, room), at: at, size: 2.7, anchor: fromLeft, bold: true})
		x += col.share * area.width()
	}
	for i := range v.o.Trials {
		y += ampsRow
		v.row(i, area, y)
	}
	for _, c := range v.o.Machine.Conditions {
		if c.Same != "" {
			y += ampsRow
			v.page.say(words{text: cleaned(c.SameAs(), v.opt.ASCII),
				at: point{area.x0, y}, size: 2.7, anchor: fromLeft})
		}
	}
	says := "Upright tick: charging begins, the battery at rest and the rotor's part not yet taken off. Marks: the operating points of drive and trial."
	if v.tooHot() {
		says += " No curve where a winding burns."
	}
	v.page.say(words{text: says,
		at: point{area.x0, y + ampsRow}, size: 2.7, anchor: fromLeft})
}

// conditionWords is the state of the drive in words.
func (v *ampsView) conditionWords(n int) string {
	if n < len(v.o.Machine.Conditions) {
		c := v.o.Machine.Conditions[n]
		return cleaned(v.opt.Units.Words(strings.TrimSpace(c.Name+" "+c.Label)), v.opt.ASCII)
	}
	return ampsColumns[n+4].title
}

// row is a trial's line of the table.
func (v *ampsView) row(i int, area box, y float64) {
	t := &v.o.Trials[i]
	x := area.x0
	v.page.line(trialPen(i), point{x, y}, point{x + 0.08*area.width(), y})
	name := cleaned(t.Name, v.opt.ASCII)
	if short := v.short(i); short != name {
		name = short + ": " + name
	}
	out := winding.OutputOf("cut_in_rpm")
	fields := []string{"", name, v.winding(i), v.figure(out.Of(t), out.Dim, out.Digits)}
	if t.NoCharging != "" {
		fields = append(fields, "not drawn: "+cleaned(t.NoCharging, v.opt.ASCII))
	}
	for n := range ampsColumns[4:] {
		fields = append(fields, v.running(t, n))
	}
	for c, col := range ampsColumns {
		wide := col.share * area.width()
		if c == 4 && t.NoCharging != "" {
			wide = 0.42 * area.width()
		}
		v.page.say(words{text: cutTo(fields[c], 2.6, c == 1, wide-1.5), at: point{x, y}, size: 2.6, anchor: fromLeft, bold: c == 1})
		if c == 4 && t.NoCharging != "" {
			return
		}
		x += wide
	}
}

// winding is a trial in a few words.
func (v *ampsView) winding(i int) string {
	t := &v.o.Trials[i]
	return fmt.Sprintf("%s turns of %s, %s", turnsOf(v.b, v.o, i), cleaned(t.Wire, v.opt.ASCII), connectionOf(v.b, v.o, i))
}

// running is where a trial runs in a condition: "612 rpm, 5.2 A".
func (v *ampsView) running(t *winding.TrialOutcome, n int) string {
	if n >= len(t.Operating) || !finite(t.Operating[n].NetAmps) {
		return "not known"
	}
	o := &t.Operating[n]
	if o.RPM == 0 {
		return "does not turn"
	}
	amps := winding.PointOutputOf("net_amps_dc")
	return quantity.Number(o.RPM, 0) + " rpm, " + quantity.File.Value(o.NetAmps, amps.Dim[0], amps.Digits) + " A"
}
