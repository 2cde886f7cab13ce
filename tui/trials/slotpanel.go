package trials

import (
	"fmt"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

// leastPicture is the width below which the slot is not drawn beside the table.
const leastPicture = 22

// mostPicture keeps the picture from growing wider than it is useful.
func mostPicture(h int) int { return max(leastPicture, min(60, 2*h)) }

func areaDim() quantity.Dimension { return quantity.SquareMM }

// slotPanel is the slot with the chosen trial's wires, to scale, in a box.
func slotPanel(s *session.Session, r kit.Rect) kit.Block {
	o := s.Outcome().Trials[s.Trial]
	in := kit.Inner(r)
	pack, why := s.Bench().Picture(s.Trial)
	panel := kit.Panel{Title: "Slot, trial " + o.Name}
	if why != "" {
		return panel.Draw(s.Theme, r, s.Theme.Wrap("No picture: "+why+".", in.W))
	}
	if pack.Placed < pack.Wanted {
		panel.Foot = fmt.Sprintf("only %d of %d go in", pack.Placed, pack.Wanted)
	} else {
		panel.Foot = fmt.Sprintf("%d wires", pack.Wanted)
	}
	return panel.Draw(s.Theme, r, drawSlot(s.Theme, pack, in.W, in.H))
}

// drawSlot draws the outline, liner, wedge and wires on a canvas of w by h cells.
func drawSlot(t kit.Theme, p slot.Packing, w, h int) []string {
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
	closed(p.Wedge, kit.Dim)
	closed(p.Separator, kit.Dim)
	for _, k := range p.Circles {
		c.Circle(chart.XY{X: k.X, Y: k.Y}, k.R*0.92, kit.Series(k.Layer))
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
