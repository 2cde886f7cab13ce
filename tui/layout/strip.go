package layout

import (
	"fmt"
	"strconv"

	"slotwright/tui/kit"
	"slotwright/winding/layout"
)

// gutter is the room for the names of the rows, left of the slots.
const gutter = 8

// strip is a run of neighbouring slots and how it is drawn:
//
//	╭─ 1▸ ─╮      arcs, one lane under the other
//	│  ╔═══│══    lines of two coils that cross do not touch
//	1  2   4      slots
//	U+ V+  U−     what lies in them, top over bottom
//	1  2   1      of which coil
//	IN ──▸ OUT    the current coil, and where the next one begins
type strip struct {
	theme kit.Theme
	plan  *layout.Layout
	first int // index of the first slot
	n     int // slots in sight
	pitch int // cells from slot to slot
	inner int // cells of a slot's text
	lanes int
	// coilRows says that the numbers of the coils are under their sides.
	coilRows bool
	// shown says of which coils the sides are written.
	shown func(c layout.Coil) bool
	step  layout.Step
	coil  layout.Coil
	turns string
}

// sideRows are the names of the rows of coil sides: top over bottom, or left beside
// right where coils lie round one tooth.
func sideRows(l *layout.Layout) []string {
	switch {
	case l.Spec().Layers == 1:
		return []string{"side"}
	case l.Beside():
		return []string{"left", "right"}
	default:
		return []string{"top", "bottom"}
	}
}

// rowOf is the row of a side.
func rowOf(s layout.Side) int {
	if s.Layer == layout.Bottom || s.Layer == layout.ClockwiseHalf {
		return 1
	}
	return 0
}

// rows is the height of a strip.
func (p *strip) rows() int {
	sides := p.plan.Spec().Layers
	if p.coilRows {
		sides *= 2
	}
	return p.lanes + 1 + sides + 1
}

// x is the first column of a slot's text.
func (p *strip) x(place int) int { return gutter + 1 + place*p.pitch + (p.pitch-p.inner)/2 }

// width is the width of the strip, with a column at each side for coils that continue.
func (p *strip) width() int { return gutter + 2 + p.n*p.pitch }

// lines draws the strip.
func (p *strip) lines(coils []layout.Coil) []string {
	g := newGrid(p.width(), p.rows())
	list, _ := arcs(coils, p.plan.Spec().Slots, p.first, p.n)
	for _, heavy := range [2]bool{false, true} {
		for _, a := range list {
			if (a.coil.Number == p.coil.Number) == heavy {
				p.across(g, a)
			}
		}
		for _, a := range list {
			if (a.coil.Number == p.coil.Number) == heavy {
				p.down(g, a)
			}
		}
	}
	for _, a := range list {
		p.label(g, a)
	}
	p.slots(g)
	p.marks(g)
	return g.lines(p.theme)
}

// look is how a coil is drawn.
func (p *strip) look(c layout.Coil) (pen, kit.Role) {
	if c.Number == p.coil.Number {
		return heavyPen(p.theme), kit.Value
	}
	return penOf(p.theme, c.Phase), lineRole(p.theme, c.Phase)
}

// ends are the columns of an arc's corners. In two layers the right corner is a column left of where
// the next coil's left corner may be.
func (p *strip) ends(a arc) (left, right int) {
	left, right = p.x(a.from), p.x(a.to)
	if p.plan.Spec().Layers == 2 {
		left++
	}
	return left, right
}

// across draws the line over the teeth, open where the coil continues out of sight.
func (p *strip) across(g *grid, a arc) {
	look, role := p.look(a.coil)
	left, right := p.ends(a)
	for x := max(left, gutter); x <= min(right, g.w-1); x++ {
		g.put(x, a.lane, cell{look.across, role, a.coil.Number})
	}
	if left < gutter+1 {
		g.put(gutter, a.lane, cell{arrow(p.theme, false), role, a.coil.Number})
	}
	if right > g.w-2 {
		g.put(g.w-1, a.lane, cell{arrow(p.theme, true), role, a.coil.Number})
	}
}

// down draws the corners and the sides going down into the slots.
func (p *strip) down(g *grid, a arc) {
	look, role := p.look(a.coil)
	left, right := p.ends(a)
	for i, x := range [2]int{left, right} {
		if x <= gutter || x >= g.w-1 {
			continue
		}
		g.put(x, a.lane, cell{[2]string{look.left, look.right}[i], role, a.coil.Number})
		for y := a.lane + 1; y < p.lanes; y++ {
			g.put(x, y, cell{look.down, role, a.coil.Number})
		}
	}
}

// label writes a coil's number and the direction in which the phase passes it on its line, as near to
// the middle as no other line is in the way; not at all when there is no room.
func (p *strip) label(g *grid, a arc) {
	left, right := p.ends(a)
	leftSlot, _ := reach(a.coil, p.plan.Spec().Slots)
	toRight := (leftSlot == a.coil.Start) == (a.coil.Sense > 0)
	text := " " + strconv.Itoa(a.coil.Number) + " "
	if toRight {
		text = text[:len(text)-1] + arrow(p.theme, true) + " "
	} else {
		text = " " + arrow(p.theme, false) + text[1:]
	}
	n := len([]rune(text))
	middle := (max(left, gutter) + min(right, g.w-1) + 1 - n) / 2
	for off := range g.w {
		for _, x := range [2]int{middle - off, middle + off} {
			if x > left && x+n <= right && p.free(g, a, x, n) {
				_, role := p.look(a.coil)
				g.write(x, a.lane, text, role)
				return
			}
		}
	}
}

// free reports whether n cells of a coil's line are its own.
func (p *strip) free(g *grid, a arc, x, n int) bool {
	for i := range n {
		c := g.at(x+i, a.lane)
		if c.coil != a.coil.Number || x+i <= gutter || x+i >= g.w-1 {
			return false
		}
	}
	return true
}

// slots writes the numbers of the slots and what lies in them.
func (p *strip) slots(g *grid) {
	names := sideRows(p.plan)
	g.write(0, p.lanes, "slot", kit.Label)
	row := func(side int) int {
		if p.coilRows {
			return p.lanes + 1 + 2*side
		}
		return p.lanes + 1 + side
	}
	for i, name := range names {
		g.write(0, row(i), name, kit.Label)
		if p.coilRows {
			g.write(0, row(i)+1, "coil", kit.Dim)
		}
	}
	for place := range p.n {
		slot := (p.first+place)%p.plan.Spec().Slots + 1
		x := p.x(place)
		role := kit.Label
		if slot == p.step.From || slot == p.step.To {
			role = kit.Value
		}
		g.write(x, p.lanes, strconv.Itoa(slot), role)
		for _, side := range p.plan.Slot(slot) {
			p.side(g, x, row(rowOf(side)), side)
		}
	}
}

// side writes one coil side: phase and sense, and its coil.
func (p *strip) side(g *grid, x, y int, side layout.Side) {
	c := layout.Coil{Number: side.Coil, Phase: side.Phase, Set: side.Set}
	if side.Turns == 0 || !p.shown(c) {
		g.write(x, y, p.theme.Text("·"), kit.Dim)
		return
	}
	role := kit.Phase(side.Phase)
	if side.Coil == p.coil.Number {
		role = kit.Focus
	}
	sense := "+"
	if side.Sign < 0 {
		sense = p.theme.Text("−")
	}
	g.write(x, y, p.plan.PhaseName(side.Set, side.Phase)+sense, role)
	if p.coilRows {
		if role == kit.Focus {
			role = kit.Value
		} else {
			role = kit.Dim
		}
		g.write(x, y+1, strconv.Itoa(side.Coil), role)
	}
}

// marks writes where the wire of the current coil goes in and comes back, and where the next one goes
// in.
func (p *strip) marks(g *grid) {
	p.way(g)
	defer p.nameMarks(g)
	place := (p.step.Next.Slot - 1 - p.first + 2*p.plan.Spec().Slots) % p.plan.Spec().Slots
	if p.step.EndLead != "" || place >= p.n {
		return
	}
	x := p.x(place)
	for i := -1; i <= len("next"); i++ {
		if g.at(x+i, g.h-1).text != "" || x+i > g.w {
			return
		}
	}
	g.write(x, g.h-1, "next", kit.Dim)
}

// nameMarks names the row of the marks, where there are any.
func (p *strip) nameMarks(g *grid) {
	for x := range g.w {
		if g.at(x, g.h-1).text != "" {
			g.write(0, g.h-1, "now", kit.Label)
			return
		}
	}
}

// way draws the path of the wire from the slot it goes in at to that it comes out of, with its turns
// where they fit.
func (p *strip) way(g *grid) {
	y := g.h - 1
	list, _ := arcs([]layout.Coil{p.coil}, p.plan.Spec().Slots, p.first, p.n)
	for _, a := range list {
		left, right := p.x(a.from), p.x(a.to)
		line := p.theme.Glyphs().Horizontal
		for x := max(left, gutter+1); x <= min(right, g.w-2); x++ {
			g.put(x, y, cell{text: line, role: kit.Value})
		}
		slot := (p.first+a.from+p.plan.Spec().Slots)%p.plan.Spec().Slots + 1
		toRight := slot == p.step.From
		words := [2]string{"IN" + line, arrow(p.theme, true) + "OUT"}
		if !toRight {
			words = [2]string{"OUT" + arrow(p.theme, false), line + "IN"}
		}
		if left > gutter {
			g.write(left, y, words[0], kit.Value)
		}
		if right < g.w-1 {
			g.write(right-1, y, words[1], kit.Value)
		}
		text := fmt.Sprintf(" %s ", p.turns)
		if room := right - left - 8; left > gutter && right < g.w-1 && len(text) <= room {
			g.write(left+4+(room-len(text))/2, y, text, kit.Value)
		}
	}
}
