package curves

import (
	"math"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// part is a column of the table with its cells, and what becomes of it where room is short.
type part struct {
	kit.Column
	head, unit string // in place of the column's own where there is little room
	leaves     int    // from which squeeze on it is left out; 0: never
	cells      []kit.Cell
}

// The squeezes of the table, one after another: columns closer, short heads and marks close to their
// figures, then without what the sentences below say too.
const (
	asItIs = iota
	closer
	shorter
	withoutTest
	withoutReached
	withoutLimit
	squeezes
)

// table is the chosen quantity at the job's speeds and at the cursor, a trial a row, between where
// charging begins and where the current limit is reached; as much of this as fits without cutting a
// figure.
func (v *View) table(s *session.Session) kit.Table {
	parts := v.parts(s)
	from := asItIs
	if v.at.W < 90 {
		from = closer
	}
	tb := squeezed(s, parts, from)
	for squeeze := from + 1; squeeze < squeezes && v.at.W > 0 && tb.Width(s.Theme) > v.at.W; squeeze++ {
		tb = squeezed(s, parts, squeeze)
	}
	return tb
}

// squeezed is the table after so many squeezes.
func squeezed(s *session.Session, parts []part, squeeze int) kit.Table {
	tb := kit.Table{Margin: true, Gap: 2}
	if squeeze >= closer {
		tb.Gap = 1
	}
	for range s.Outcome().Trials {
		tb.Rows = append(tb.Rows, kit.TableRow{Focus: len(tb.Rows) == s.Trial})
	}
	for _, p := range parts {
		if p.leaves > 0 && squeeze >= p.leaves {
			continue
		}
		if squeeze >= shorter {
			p.Head, p.Unit, p.Tight = p.head, p.unit, true
			p.Min = min(p.Min, 6)
		}
		tb.Columns = append(tb.Columns, p.Column)
		for i := range tb.Rows {
			tb.Rows[i].Cells = append(tb.Rows[i].Cells, p.cells[i])
		}
	}
	return tb
}

// parts are the table's columns.
func (v *View) parts(s *session.Session) []part {
	q := v.now()
	decimals, frac := q.decimals(s), q.decimals(s)
	if frac > 0 {
		frac++ // the point
	}
	whole, in := q.whole(s), "in "+q.unit(s).Name
	list := []part{
		{Column: kit.Column{Head: q.Label, Unit: in, Role: kit.Label}, unit: in},
		{Column: kit.Column{Head: "charges", Unit: "from rpm", Align: kit.Right, Role: kit.Value}, head: "from", unit: "rpm"},
	}
	for i := range s.Outcome().Trials {
		list[0].cells = append(list[0].cells, kit.Cell{Text: trialName(s, i), Role: kit.Series(i)})
		list[1].cells = append(list[1].cells, speedCell(s, s.Outcome().Trials[i].CutInRPM))
	}
	at := func(rpm float64, head, short string, leaves int) {
		p := part{Column: kit.Column{Head: head, Unit: rpmText(rpm), Align: kit.Point, Role: kit.Value, Min: 5, Whole: whole, Frac: frac, Marks: true}, head: short, unit: rpmText(rpm), leaves: leaves}
		for i := range s.Outcome().Trials {
			p.cells = append(p.cells, v.cell(s, i, rpm, decimals))
		}
		list = append(list, p)
	}
	for _, sp := range speedsOf(s, true) {
		at(sp.rpm, sp.name, sp.short(), sp.leaves())
	}
	at(v.cursor(s), "cursor", "cursor", 0)
	cursor := &list[len(list)-1]
	cursor.Role, cursor.Min = kit.Title, 8
	return append(list, limitParts(s)...)
}

// limitParts are the columns of the current limits and of where each is reached.
func limitParts(s *session.Session) []part {
	list := []part{
		{Column: kit.Column{Head: "limit", Unit: "A", Align: kit.Point, Role: kit.Value}, head: "limit", unit: "A", leaves: withoutLimit},
		{Column: kit.Column{Head: "reached", Unit: "at rpm", Align: kit.Right, Role: kit.Value}, head: "at", unit: "rpm", leaves: withoutReached},
	}
	for i := range s.Outcome().Trials {
		t := &s.Outcome().Trials[i]
		list[0].cells = append(list[0].cells, s.Plain(t.LimitAmps, quantity.Amps, 2))
		list[1].cells = append(list[1].cells, speedCell(s, t.LimitRPM))
	}
	return list
}

// trialName is a trial with the mark of the reference.
func trialName(s *session.Session, i int) string {
	name := s.Outcome().Trials[i].Name
	if l := letters(s)[i]; l != name {
		name = l + " " + name
	}
	if i == s.Outcome().Reference && len(s.Outcome().Trials) > 1 {
		name += " ref"
	}
	return name
}

// speedCell is a speed in whole rpm.
func speedCell(s *session.Session, f quantity.Figure) kit.Cell {
	f.Value = math.Round(f.Value)
	return s.Plain(f, quantity.RPM, 0)
}

// cell is the chosen quantity of a trial at a speed.
func (v *View) cell(s *session.Session, i int, rpm float64, decimals int) kit.Cell {
	p, ok := pointAt(s, i, rpm)
	return quantityCell(s, v.now(), v.quantity == ofWinding, i, p, ok, decimals)
}

// quantityCell is a value at a point, with a mark when that is too much for the winding.
func quantityCell(s *session.Session, q plotted, warmth bool, i int, p winding.RunPoint, ok bool, decimals int) kit.Cell {
	t := &s.Outcome().Trials[i]
	if !ok || warmth && !followed(t) {
		return kit.Cell{Text: session.Dash, Role: kit.Dim}
	}
	c := kit.Cell{Text: q.text(s, p, decimals)}
	if c.Text == session.Dash {
		c.Role = kit.Dim
		return c
	}
	switch {
	case tooWarm(s, p):
		c.Mark, c.Role = kit.Broken, kit.Broken
	case overLimit(t, p):
		c.Mark, c.Role = kit.Warning, kit.Warning
	}
	switch {
	case p.TooHot && warmth:
		c.Text = "no end"
	case p.TooHot && q.charging: // it does not survive it
		c.Text, c.Word = "burns", true
	}
	return c
}

// leastValue is the width of a word in a column of values, valueFrac that of the decimals.
const leastValue, valueFrac = 8, 3

// values is every value at the cursor, a trial a column.
func (v *View) values(s *session.Session) kit.Table {
	rpm := v.cursor(s)
	tb := kit.Table{Gap: 1, Columns: []kit.Column{{Role: kit.Label}}}
	whole := widest(s)
	points := make([]winding.RunPoint, len(s.Outcome().Trials))
	known := make([]bool, len(points))
	for i, l := range letters(s) {
		points[i], known[i] = pointAt(s, i, rpm)
		head := l
		if i == s.Trial {
			head = s.Theme.Glyphs().Chosen + l
		}
		tb.Columns = append(tb.Columns, kit.Column{Head: head, Hue: kit.Series(i), Align: kit.Point, Role: kit.Value, Min: leastValue, Whole: whole, Frac: valueFrac, Marks: true})
	}
	row := func(q plotted, at int) {
		cells := []kit.Cell{{Text: q.label(s)}}
		decimals := q.decimals(s)
		for i := range s.Outcome().Trials {
			c := quantityCell(s, q, at == ofWinding, i, points[i], known[i], decimals)
			if at != ofAmps && at != ofWinding {
				c.Mark, c.Role = kit.Plain, kit.Plain
			}
			cells = append(cells, c)
		}
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: cells})
	}
	for at, q := range quantities {
		row(q, at)
		if at == ofAmps {
			row(more[0], -1) // what the bridge gives, under the net value
		}
	}
	for _, q := range more[1:] {
		row(q, -1)
	}
	return tb
}
