package trials

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// Draw fills the rectangle: the slot's line on top, the table, the picture beside it
// where there is room, what the marked row means at the foot.
func (v *View) Draw(s *session.Session) []kit.Block {
	r := v.at
	top, rest := r.SplitTop(1)
	body, foot := rest.SplitBottom(footHeight(r))
	blocks := []kit.Block{kit.Bare(s.Theme, top, []string{v.slotLine(s, top.W)})}
	blocks = append(blocks, kit.Bare(s.Theme, foot, v.explain(s, foot.W, foot.H)))
	table := v.table(s)
	natural := tableWidth(s, table)
	if len(s.Outcome().Trials) == 0 {
		return append(blocks, kit.Bare(s.Theme, body, s.Theme.Wrap("No trial yet. Press n for the first one, then + for turns and ] or [ for its wire.", body.W)))
	}
	side := body.W - natural - 2
	if v.picture {
		return append(blocks, slotPanel(s, body))
	}
	if side >= leastPicture {
		var right kit.Rect
		body, right = body.SplitLeft(body.W - min(side, mostPicture(body.H)))
		blocks = append(blocks, slotPanel(s, right))
		body.W--
	}
	return append(blocks, kit.Bare(s.Theme, body, scrolled(s.Theme, table, v.lineOf(s), body)))
}

// scrolled is a table whose body scrolls under its head, a column kept for the bar.
func scrolled(t kit.Theme, table kit.Table, line int, r kit.Rect) []string {
	w := r.W
	if len(table.Rows)+1 > r.H {
		w -= 2
	}
	head := table.Head(t, w)
	return append(head, kit.Window(t, table.Body(t, w), line, r.W, r.H-len(head))...)
}

// footHeight is the lines that explain: more on a tall screen.
func footHeight(r kit.Rect) int {
	if r.H >= 34 {
		return 7
	}
	return 4
}

// slotLine is slot area, room for wire and fill limit, the inputs of the whole job.
func (v *View) slotLine(s *session.Session, w int) string {
	t, m := s.Theme, s.Outcome().Machine
	input := func(row int, fallback string) string {
		text, u, ok := s.Document().Typed(inputFields[row])
		if !ok {
			text = fallback
		}
		if v.editing && v.row == row {
			text = v.input.Draw(t, 9, true)
		} else {
			text = t.Paint(kit.Value, text)
		}
		mark := " "
		if v.row == row {
			mark = t.PaintMark(kit.Focus)
		}
		if u.Name != "" {
			text += " " + t.Paint(kit.Unit, u.Name)
		}
		return mark + " " + t.Paint(kit.Label, inputLabel(row)) + " " + text
	}
	line := input(rowArea, s.Text(m.GrossMM2, areaDim(), 3)) +
		"   " + t.Paint(kit.Dim, "room for wire ") + t.Text(s.Text(m.NetMM2, areaDim(), 3)) +
		"  " + input(rowFill, quantity.Screen.Number(s.FillLimit(), 2))
	return t.Fit(line, w)
}

// table is every row of the grid but the slot's line.
func (v *View) table(s *session.Session) kit.Table {
	o := s.Outcome()
	tb := kit.Table{Margin: true, Gap: 1, Columns: []kit.Column{{Role: kit.Label, Min: 20, Shrink: true}}}
	for i, t := range o.Trials {
		tb.Columns = append(tb.Columns, kit.Column{Head: trialHead(s, i, t), Align: kit.Point, Role: kit.Value, Min: 11})
	}
	compared := v.compared(s)
	if compared {
		tb.Columns = append(tb.Columns, kit.Column{Head: differenceHead(s), Align: kit.Right, Min: 8})
	}
	for row := rowTurns; row < firstFigure; row++ {
		cells := []kit.Cell{{Text: inputLabel(row)}}
		for i := range o.Trials {
			cells = append(cells, v.inputCell(s, row, i))
		}
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: cells, Focus: v.row == row})
	}
	group := ""
	for i, r := range v.figures(s) {
		if r.Group != group && !v.brief() {
			group = r.Group
			tb.Rows = append(tb.Rows, kit.TableRow{Heading: group})
		}
		cells := []kit.Cell{{Text: rowLabel(s, r.Label, r.Dim)}}
		for k := range o.Trials {
			cells = append(cells, figureCell(s, r, k))
		}
		if compared {
			cells = append(cells, differenceCell(s, r, compareWith(s)))
		}
		tb.Rows = append(tb.Rows, kit.TableRow{Cells: cells, Focus: v.row == firstFigure+i})
	}
	return tb
}

// compared reports whether there is something to compare and room for it: four trials take
// a small screen for themselves.
func (v *View) compared(s *session.Session) bool {
	n := len(s.Outcome().Trials)
	return n > 1 && 2+27+n*12+9 <= v.at.W
}

// compareWith is the trial whose difference is shown: the chosen one, or when that is
// the reference the next one.
func compareWith(s *session.Session) int {
	o := s.Outcome()
	if s.Trial != o.Reference {
		return s.Trial
	}
	return (o.Reference + 1) % len(o.Trials)
}

func differenceHead(s *session.Session) string {
	o := s.Outcome()
	return o.Trials[compareWith(s)].Name + " vs " + o.Trials[o.Reference].Name
}

// trialHead is a trial's name with the marks of the chosen one and the reference.
func trialHead(s *session.Session, i int, t winding.TrialOutcome) string {
	head := t.Name
	if i == s.Outcome().Reference {
		head += " ref"
	}
	if i == s.Trial {
		head = s.Theme.Glyphs().Chosen + head
	}
	return head
}

// lineOf is the table line, below its head, that the cursor is on.
func (v *View) lineOf(s *session.Session) int {
	if v.row < firstFigure {
		return max(0, v.row-rowTurns)
	}
	line, group := firstFigure-rowTurns, ""
	for i, r := range v.figures(s) {
		if r.Group != group && !v.brief() {
			group = r.Group
			line++
		}
		if firstFigure+i == v.row {
			return line
		}
		line++
	}
	return line
}

// tableWidth is the room that the table wants, so that no label is cut for the picture.
func tableWidth(s *session.Session, table kit.Table) int {
	label := 26
	for _, row := range table.Rows {
		if len(row.Cells) > 0 {
			label = max(label, kit.Width(s.Theme.Text(row.Cells[0].Text)))
		}
	}
	n := len(s.Outcome().Trials)
	w := 2 + label + n*13
	if n > 1 {
		w += 10
	}
	return w
}

// explain is what the marked row means and what the job calls out of the chosen trial.
func (v *View) explain(s *session.Session, w, h int) []string {
	t := s.Theme
	var lines []string
	if v.row < firstFigure {
		path := v.inputPath(s)
		if f, ok := job.InputAt(path); ok {
			lines = t.WrapPaint(kit.Hint, f.Help+" "+f.How, w)
		}
		if p, bad := s.Document().ProblemAt(path); bad {
			lines = t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+p.Text(), w)
		}
	} else if rows := v.figures(s); v.row-firstFigure < len(rows) {
		lines = whole(t, meaning(s, rows[v.row-firstFigure]), w, max(2, h/2))
	}
	lines = lines[:min(len(lines), max(2, h/2))]
	for _, text := range s.Problems() {
		lines = append(lines, t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+text, w)...)
	}
	for _, f := range findingsOf(s) {
		role := kit.Warning
		if f.Severity == winding.Broken {
			role = kit.Broken
		}
		text := t.Mark(role) + " " + f.Trial + ": " + f.Text
		if f.Fix != "" {
			text += " → " + f.Fix
		}
		lines = append(lines, t.WrapPaint(role, text, w)...)
	}
	if len(lines) > h {
		lines = lines[:h]
	}
	return append(lines, caution(s, w, h-len(lines))...)
}

// caution is the first that is about the chosen trial or about all, and that fits whole.
func caution(s *session.Session, w, h int) []string {
	for _, c := range s.Outcome().Cautions {
		if c.Trial != "" && c.Trial != s.Outcome().Trials[s.Trial].Name {
			continue
		}
		if lines := s.Theme.WrapPaint(kit.Dim, "Caution: "+c.Text, w); len(lines) <= h {
			return lines
		}
	}
	return nil
}

// whole is as many of the sentences as fit whole, the first in any case.
func whole(t kit.Theme, sentences []string, w, h int) []string {
	text := sentences[0]
	for _, next := range sentences[1:] {
		if more := text + " " + next; len(t.Wrap(more, w)) <= h {
			text = more
		}
	}
	return t.WrapPaint(kit.Hint, text, w)
}

// meaning is a row explained for the chosen trial, a sentence each: what it is, what to
// change when it is past its limit, or why it is missing.
func meaning(s *session.Session, r winding.Row) []string {
	c := r.Cells[s.Trial]
	text := []string{r.Help}
	if c.Verdict == winding.Past && r.Mend != "" {
		text = append(text, "Past its limit: "+r.Mend+".")
	}
	switch {
	case !c.Figure.Known():
		text = append(text, "Missing: "+c.Figure.Why+".")
	case c.Figure.Why != "":
		text = append(text, "From: "+c.Figure.Why+".")
	}
	if c.Figure.PlusMinus > 0 {
		u := s.Units.For(r.Dim)
		text = append(text, strings.TrimRight("May be off by "+c.Figure.Spread(u)+" "+u.Name, " ")+", by the tolerances given.")
	}
	if c.Figure.Origin.Weak() {
		text = append(text, "A guess or a default weighs in it.")
	}
	return text
}

// findingsOf are the findings of the chosen trial first, then those of the job.
func findingsOf(s *session.Session) []winding.Finding {
	if len(s.Outcome().Trials) == 0 {
		return nil
	}
	name := s.Outcome().Trials[s.Trial].Name
	var own, rest []winding.Finding
	for _, f := range s.Outcome().Findings {
		switch {
		case f.Severity < winding.Doubt:
		case f.Trial == name:
			own = append(own, f)
		case f.Trial == "":
			f.Trial = "job"
			rest = append(rest, f)
		}
	}
	return append(own, rest...)
}
