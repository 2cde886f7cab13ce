package curves

import (
	"math"
	"slices"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// table is the chosen quantity at the job's speeds and at the cursor, a trial a row,
// between where charging begins and where the current limit comes.
func (v *View) table(s *session.Session) kit.Table {
	q, speeds, cursor := v.now(), speedsOf(s, true), v.cursor(s)
	decimals, whole := q.decimals(s), q.whole(s)
	frac := decimals
	if frac > 0 {
		frac++ // the point
	}
	gap := 2
	if v.at.W < 90 {
		gap = 1
	}
	tb := kit.Table{Margin: true, Gap: gap, Columns: []kit.Column{
		{Head: q.Label, Unit: "in " + q.unit(s).Name, Role: kit.Label, Shrink: true, Min: 7},
		{Head: "charges", Unit: "from rpm", Align: kit.Right, Role: kit.Value},
	}}
	for _, sp := range speeds {
		tb.Columns = append(tb.Columns, kit.Column{Head: sp.name, Unit: rpmText(sp.rpm), Align: kit.Point, Role: kit.Value, Min: 5, Whole: whole, Frac: frac, Marks: true})
	}
	tb.Columns = append(tb.Columns,
		kit.Column{Head: "cursor", Unit: rpmText(cursor), Align: kit.Point, Role: kit.Title, Min: 8, Whole: whole, Frac: frac, Marks: true},
		kit.Column{Head: "limit", Unit: "A", Align: kit.Point, Role: kit.Value},
		kit.Column{Head: "reached", Unit: "at rpm", Align: kit.Right, Role: kit.Value})
	for i := range s.Outcome().Trials {
		t := &s.Outcome().Trials[i]
		cells := []kit.Cell{{Text: trialName(s, i), Role: kit.Series(i)}, speedCell(s, t.CutInRPM)}
		for _, sp := range speeds {
			cells = append(cells, v.cell(s, i, sp.rpm, decimals))
		}
		limit := s.Plain(t.LimitAmps, quantity.Amps, 2)
		cells = append(cells, v.cell(s, i, cursor, decimals), limit, speedCell(s, t.LimitRPM))
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: cells, Focus: i == s.Trial})
	}
	return tb
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
	case p.TooHot && q.charging: // it does not live through it
		c.Text, c.Word = "burns", true
	}
	return c
}

// values is every value at the cursor, a trial a column.
func (v *View) values(s *session.Session) kit.Table {
	rpm := v.cursor(s)
	tb := kit.Table{Gap: 1, Columns: []kit.Column{{Role: kit.Label, Shrink: true, Min: 9}}}
	widest := 1
	for _, q := range slices.Concat(quantities, more) {
		widest = max(widest, q.whole(s))
	}
	points := make([]winding.RunPoint, len(s.Outcome().Trials))
	known := make([]bool, len(points))
	for i, l := range letters(s) {
		points[i], known[i] = pointAt(s, i, rpm)
		head := l
		if i == s.Trial {
			head = s.Theme.Glyphs().Chosen + l
		}
		tb.Columns = append(tb.Columns, kit.Column{Head: head, Hue: kit.Series(i), Align: kit.Point, Role: kit.Value, Min: 5, Whole: widest, Frac: 3, Marks: true})
	}
	row := func(q plotted, at int) {
		cells := []kit.Cell{{Text: q.Label + ", " + q.unit(s).Name}}
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
			row(more[0], -1) // what the bridge gives, under what is left of it
		}
	}
	for _, q := range more[1:] {
		row(q, -1)
	}
	return tb
}
