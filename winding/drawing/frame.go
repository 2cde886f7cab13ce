package drawing

import (
	"fmt"
	"strings"

	"slotwright/winding"
)

// The title block: two rows of cells over a line of words, at the foot of every page.
const (
	cellHigh    = 8.0
	estimateRow = 5.5
	blockHigh   = 2*cellHigh + estimateRow
	captionSize = 2.2
	valueSize   = 3.2
	// afterRoom is the space between a drawing and the block.
	afterRoom = 3.0
)

// estimate is on every page.
const estimate = "Design estimate, not a rating: prove it with a meter before it carries current."

// room is the area of the page for a drawing.
func (c *canvas) room() box {
	b := c.paper.inside()
	b.y1 -= blockHigh + afterRoom
	return b
}

// cell is one field of the title block: its name and its content, "" for a blank to be written in by
// hand, and its share of the width.
type cell struct {
	caption, value string
	share          float64
}

// titleBlock puts the block on a page.
func (a *artist) titleBlock(p *Page) {
	b := p.paper.inside()
	b.y0 = b.y1 - blockHigh
	name := cleaned(a.o.Job, a.opt.ASCII)
	if name == "" {
		name = "job without a name"
	}
	title := a.titleOf(p.Sheet)
	p.title = cleaned(fmt.Sprintf("%s, trial %s: %s", name, a.t.Name, title), a.opt.ASCII)
	p.cells(box{b.x0, b.y0, b.x1, b.y0 + cellHigh}, []cell{
		{"JOB", name, 0.40}, {"TRIAL", a.trialCell(p.Sheet), 0.16}, {"SHEET", title, 0.32},
		{"PAGE", fmt.Sprintf("%d of %d", p.Number, p.Of), 0.12},
	})
	p.cells(box{b.x0, b.y0 + cellHigh, b.x1, b.y0 + 2*cellHigh}, a.windingCells(p.Sheet))
	says := estimate
	if a.o.Invented {
		says += " The job is an invented example."
	}
	last := point{b.x0 + 1.2, b.y1 - estimateRow/2}
	p.say(words{text: says, at: last, size: 2.7, anchor: fromLeft, bold: true})
	p.say(words{text: p.paper.Name + ", print at 100 %", at: point{b.x1 - 1.2, last.y}, size: 2.6, anchor: toRight})
	p.area(mark{class: "frame"}, bold, "", corners(b))
	p.line(thin, point{b.x0, b.y1 - estimateRow}, point{b.x1, b.y1 - estimateRow})
}

// titleOf is the title of a sheet.
func (a *artist) titleOf(s Sheet) string {
	if a.kind() == flat {
		switch s {
		case Face:
			return "Coils from the face"
		case Slot:
			return "Sides of two coils with their wires"
		}
	}
	return titles[s]
}

// trialCell is the trial shown on a sheet.
func (a *artist) trialCell(s Sheet) string {
	if s == Amps {
		return "all"
	}
	return cleaned(a.t.Name, a.opt.ASCII)
}

// windingCells is the lower row: wire, turns, connection, and blanks.
func (a *artist) windingCells(s Sheet) []cell {
	wire, turns, joined := cleaned(a.t.Wire+" "+a.t.Build, a.opt.ASCII), turnsOf(a.b, a.o, a.index), connectionOf(a.b, a.o, a.index)
	if a.t.Wire == "" {
		wire = "not given"
	}
	if s == Amps {
		wire, turns, joined = "see the table", "see the table", "see the table"
	}
	return []cell{{"WIRE", wire, 0.27}, {"TURNS A COIL", turns, 0.15}, {"CONNECTION", joined, 0.20}, {"DATE", "", 0.16}, {"WOUND BY", "", 0.22}}
}

// turnsOf is the turns of a trial's coils, of each in a group where they are unequal.
func turnsOf(b *winding.Bench, o *winding.Outcome, i int) string {
	t := &o.Trials[i]
	if list := b.Job().Trials[i].CoilTurns; len(list) > 0 {
		words := make([]string, len(list))
		for i, n := range list {
			words[i] = fmt.Sprint(n)
		}
		return strings.Join(words, ", ")
	}
	if !t.Turns.Known() {
		return "not given"
	}
	return winding.OutputOf("turns_per_coil").Of(t).Text(winding.OutputOf("turns_per_coil").Dim[0], 0)
}

// connectionOf is a trial's connection: star or delta, and the circuits where there are several.
func connectionOf(b *winding.Bench, o *winding.Outcome, i int) string {
	joined := o.Trials[i].Connection.String()
	if plan, _ := b.Plan(i); plan != nil && plan.Spec().Phases < 3 {
		joined = map[int]string{1: "one phase", 2: "two phases, apart"}[plan.Spec().Phases]
	}
	if n := o.Trials[i].Circuits; n > 1 {
		joined += fmt.Sprintf(", %d circuits", n)
	}
	return joined
}

// cells draws a row of the block.
func (c *canvas) cells(row box, list []cell) {
	x := row.x0
	for _, l := range list {
		wide := l.share * row.width()
		c.say(words{text: l.caption, at: point{x + 1.2, row.y0 + 1.7}, size: captionSize, anchor: fromLeft})
		value := cutTo(l.value, valueSize, false, wide-2.4)
		c.say(words{text: value, at: point{x + 1.2, row.y0 + 5.4}, size: valueSize, anchor: fromLeft})
		c.area(mark{}, thin, "", corners(box{x, row.y0, x + wide, row.y1}))
		x += wide
	}
}

// corners is a box as an outline.
func corners(b box) []point {
	return []point{{b.x0, b.y0}, {b.x1, b.y0}, {b.x1, b.y1}, {b.x0, b.y1}}
}
