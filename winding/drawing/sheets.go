package drawing

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/parallel"
	"slotwright/winding/quantity"
)

// Sheet is one of the drawings.
type Sheet string

// The drawings, in their order of output.
const (
	Unrolled Sheet = "unrolled" // the winding laid flat
	Face     Sheet = "face"     // the stator from its connection end
	Slot     Sheet = "slot"     // one slot to scale with its wires
	Amps     Sheet = "amps"     // net amps of all trials over speed
)

// All is every sheet.
var All = []Sheet{Unrolled, Face, Slot, Amps}

// ParseSheets reads the name of a sheet, or all.
func ParseSheets(name string) ([]Sheet, error) {
	if name == "all" {
		return All, nil
	}
	if s := Sheet(name); slices.Contains(All, s) {
		return []Sheet{s}, nil
	}
	return nil, fmt.Errorf("read %q, expected unrolled, face, slot, amps or all", name)
}

// titles are the sheets' names in their title blocks.
var titles = map[Sheet]string{Unrolled: "Winding, unrolled", Face: "Stator from the connection end", Slot: "Slot with its wires", Amps: "Net amps over speed"}

// Options control how pages are made.
type Options struct {
	Paper Paper
	// Units are those of dimensions.
	Units quantity.Choice
	// ASCII writes Ω as ohm and so on.
	ASCII bool
}

// Page is one page of a drawing.
type Page struct {
	Sheet Sheet
	// Number counts the pages of the sheet from 1 to Of.
	Number, Of int
	// NotDrawn says why the page has only its title block and no drawing; "" when it has one.
	NotDrawn string

	title string
	canvas
}

// artist is what the sheets of one trial are drawn from.
type artist struct {
	b     *winding.Bench
	o     *winding.Outcome
	t     *winding.TrialOutcome
	index int
	opt   Options
}

// Pages draws the sheets asked for of one trial, counted from 0, which must exist. A sheet that lacks
// something becomes a page that says what.
func Pages(b *winding.Bench, o *winding.Outcome, trial int, sheets []Sheet, opt Options) []*Page {
	a := artist{b: b, o: o, t: &o.Trials[trial], index: trial, opt: opt}
	draw := map[Sheet]func() []*Page{Unrolled: a.unrolled, Face: a.face, Slot: a.slot, Amps: a.amps}
	drawn := make([][]*Page, len(sheets))
	parallel.Each(len(sheets), func(k int) {
		drawn[k] = draw[sheets[k]]()
		for i, p := range drawn[k] {
			p.Number, p.Of = i+1, len(drawn[k])
			a.titleBlock(p)
		}
	})
	return slices.Concat(drawn...)
}

// newPage is an empty page of a sheet.
func (a *artist) newPage(s Sheet, paper Paper) *Page {
	return &Page{Sheet: s, canvas: canvas{paper: paper, ascii: a.opt.ASCII}}
}

// refuse is a page that says why there is no drawing.
func (a *artist) refuse(s Sheet, paper Paper, why string) []*Page {
	p := a.newPage(s, paper)
	p.NotDrawn = why
	area := p.room()
	p.paragraph(point{area.x0 + 5, area.y0 + 10}, 4, area.width()-10, "Not drawn: "+cleaned(why, a.opt.ASCII)+".")
	return []*Page{p}
}

// length is a length in mm, with its unit, in the unit chosen.
func (a *artist) length(f quantity.Figure) string {
	u := a.opt.Units.For(quantity.Millimetres)
	return f.Text(u, quantity.AsGiven) + " " + u.Name
}

// figure is a figure of the table with its unit, or a dash.
func (a *artist) figure(f quantity.Figure, dim quantity.Dimension, digits int) string {
	if !f.Known() {
		return "not known"
	}
	u := a.opt.Units.For(dim)
	return strings.TrimSpace(f.Text(u, digits) + " " + u.Name)
}
