package trials

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// slotWidth is the width of a drawn slot at a maximum height, its box included.
func slotWidth(h int) int { return max(leastSlot, min(60, h*5/4+6)) }

// leastSlot is the narrowest box of a slot: as wide as its title.
const leastSlot = 22

// slotRoom is the width of a trial's slot when it is as high as its box of h lines: a cell is twice as
// high as it is wide.
func slotRoom(s *session.Session, trial, h int) int {
	pack, why := s.Bench().Picture(trial)
	if why != "" {
		return leastSlot
	}
	x0, y0, x1, y1 := bounds(pack)
	return max(leastSlot, min(slotWidth(h), int(math.Ceil(float64(2*(h-2))*(x1-x0)/(y1-y0)))+4))
}

func areaDim() quantity.Dimension { return quantity.SquareMM }

// shownFirst are the trials in order of interest: the chosen one, what it is compared with, then the
// nearest.
func shownFirst(s *session.Session) []int {
	var list []int
	for _, i := range append([]int{s.Trial, s.Outcome().Reference, compareWith(s)}, byDistance(s.Trial, len(s.Outcome().Trials))...) {
		if !slices.Contains(list, i) && i < len(s.Outcome().Trials) {
			list = append(list, i)
		}
	}
	return list
}

// slotPanels are the slots of as many trials as fit side by side, in their order; the chosen one is
// always among them.
func slotPanels(s *session.Session, r kit.Rect) []kit.Block {
	list := shownFirst(s)
	list = list[:min(len(list), max(1, r.W/leastSlot))]
	slices.Sort(list)
	n := len(list)
	w := min(r.W/n, slotWidth(r.H)+6)
	var blocks []kit.Block
	for i, trial := range list {
		blocks = append(blocks, slotPanel(s, kit.Rect{X: r.X + i*w, Y: r.Y, W: w - min(1, n-1), H: r.H}, trial))
	}
	return blocks
}

// slotPanel is the slot with a trial's wires, to scale, in a box.
func slotPanel(s *session.Session, r kit.Rect, trial int) kit.Block {
	o := s.Outcome().Trials[trial]
	pack, why := s.Bench().Picture(trial)
	return slotBox(s.Theme, r, slotTitle(&o, r.W-titleFrame), fillWords(&o), trial, trial == s.Trial, pack, why)
}

// titleFrame is what a box's border, the blanks round its title and the chosen trial's mark take.
const titleFrame = 7

// slotTitle is a trial's name with its turns and wire in at most w cells, or with its turns; neither is
// cut.
func slotTitle(o *winding.TrialOutcome, w int) string {
	if !o.Turns.Known() || o.Wire == "" {
		return o.Name
	}
	turns, wire := quantity.Screen.Number(o.Turns.Value, 0), strings.ReplaceAll(shortWire(o.Wire), " × ", "×")
	for _, title := range []string{o.Name + "  " + turns + " × " + wire, o.Name + " " + turns + "×" + wire, o.Name + "  " + turns + " turns"} {
		if kit.Width(title) <= w {
			return title
		}
	}
	return o.Name
}

// fillWords is how full a trial makes the slot.
func fillWords(o *winding.TrialOutcome) string {
	if !o.WireFill.Known() {
		return ""
	}
	return "fill " + quantity.Screen.Number(o.WireFill.Value, 2)
}

// slotBox is a slot in a box, its wires in the trial's colour, which is that of its curve; why
// says why there is none.
func slotBox(t kit.Theme, r kit.Rect, title, fill string, trial int, chosen bool, pack slot.Packing, why string) kit.Block {
	in := kit.Inner(r)
	if chosen {
		title = t.Glyphs().Chosen + title
	}
	panel := kit.Panel{Title: title}
	if why != "" {
		return panel.Draw(t, r, t.Wrap("No picture: "+why+".", in.W))
	}
	if pack.Placed < pack.Wanted {
		panel.Foot = fmt.Sprintf("only %d of %d go in", pack.Placed, pack.Wanted)
	} else {
		panel.Foot = fmt.Sprintf("%d wires", pack.Wanted)
		if fill != "" && kit.Width(panel.Foot+fill)+8 <= r.W {
			panel.Foot += ", " + fill
		}
	}
	return panel.Draw(t, r, drawSlot(t, pack, kit.Series(trial), in.W, in.H))
}

// drawSlot draws the outline, liner, wedge and wires on a canvas of w by h cells.
func drawSlot(t kit.Theme, p slot.Packing, wires kit.Role, w, h int) []string {
	c := chart.New(t, w, h)
	x0, y0, x1, y1 := bounds(p)
	c.ViewSquare(x0, y0, x1, y1)
	closed := func(points []slot.Point, role kit.Role) {
		if len(points) > 1 {
			c.Polygon(toXY(points), role)
		}
	}
	closed(p.Outline, kit.Border)
	for _, l := range p.Neck {
		c.Line(chart.XY{X: l.From.X, Y: l.From.Y}, chart.XY{X: l.To.X, Y: l.To.Y}, kit.Border, chart.Solid)
	}
	for i, from := range p.Wedge { // not its ends, which lie on the wall and would make it step
		to := p.Wedge[(i+1)%len(p.Wedge)]
		if math.Abs(to.X-from.X) > math.Abs(to.Y-from.Y) {
			c.Line(chart.XY{X: from.X, Y: from.Y}, chart.XY{X: to.X, Y: to.Y}, kit.Dim, chart.Solid)
		}
	}
	closed(p.Separator, kit.Dim)
	for _, k := range p.Circles {
		c.Disc(chart.XY{X: k.X, Y: k.Y}, k.R, wires)
	}
	return c.Lines()
}

func toXY(points []slot.Point) []chart.XY {
	out := make([]chart.XY, len(points))
	for i, p := range points {
		out[i] = chart.XY{X: p.X, Y: p.Y}
	}
	return out
}

// bounds is the drawing's rectangle with a little air round it.
func bounds(p slot.Packing) (x0, y0, x1, y1 float64) {
	first := true
	grow := func(x, y float64) {
		if first {
			x0, y0, x1, y1, first = x, y, x, y, false
			return
		}
		x0, y0, x1, y1 = min(x0, x), min(y0, y), max(x1, x), max(y1, y)
	}
	for _, q := range p.Outline {
		grow(q.X, q.Y)
	}
	for _, l := range p.Neck {
		grow(l.From.X, l.From.Y)
		grow(l.To.X, l.To.Y)
	}
	air := 0.03 * max(x1-x0, y1-y0)
	return x0 - air, y0 - air, x1 + air, y1 + air
}
