package trials

import (
	"fmt"
	"math"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// The input rows, in order; the figures of the comparison follow.
const (
	rowArea = iota
	rowFill
	rowTurns
	rowWire
	rowStrands
	rowConnection
	rowCircuits
	firstFigure
)

// inputFields are the job's fields behind the input rows.
var inputFields = [firstFigure]string{"slot.area", "slot.fill_limit", "turns", "gauge", "strands", "connection", "circuits"}

// figures are the rows of the comparison that are shown: all, or on a small screen the
// ones a rewinder looks at first.
func (v *View) figures(s *session.Session) []winding.Row {
	all := s.Outcome().Comparison
	if !v.brief() {
		return all
	}
	var rows []winding.Row
	for _, r := range all {
		if r.Key {
			rows = append(rows, r)
		}
	}
	return rows
}

// allRows is the height from which every row is shown unasked.
const allRows = 38

// brief reports whether only the first rows are shown.
func (v *View) brief() bool { return (v.at.H < allRows) != v.flipped }

func (v *View) rowCount(s *session.Session) int { return firstFigure + len(v.figures(s)) }

// inputPath is the field that the cursor is on, "" on a figure.
func (v *View) inputPath(s *session.Session) string {
	switch {
	case v.row <= rowFill:
		return inputFields[v.row]
	case v.row < firstFigure && len(s.Outcome().Trials) > 0:
		if v.row == rowTurns && len(s.Job().Trials[s.Trial].CoilTurns) > 0 {
			return fmt.Sprintf("trial[%d].coil_turns", s.Trial)
		}
		return fmt.Sprintf("trial[%d].%s", s.Trial, inputFields[v.row])
	}
	return ""
}

// inputCell is what an input row says of a trial.
func (v *View) inputCell(s *session.Session, row, trial int) kit.Cell {
	if v.editing && row == v.row && trial == s.Trial {
		return kit.Cell{Text: v.input.Draw(s.Theme, 11, true)}
	}
	path := fmt.Sprintf("trial[%d].%s", trial, inputFields[row])
	text, _, given := s.Document().Typed(path)
	t := s.Outcome().Trials[trial]
	if !given {
		text = map[int]string{rowTurns: session.Dash, rowWire: session.Dash, rowStrands: "1", rowConnection: t.Connection.String(), rowCircuits: fmt.Sprint(t.Circuits)}[row]
	}
	if list := s.Job().Trials[trial].CoilTurns; row == rowTurns && len(list) > 0 {
		text = fmt.Sprint(list[0])
		for _, n := range list[1:] {
			text += fmt.Sprintf(",%d", n)
		}
	}
	c := kit.Cell{Text: text, Role: kit.Value}
	if _, bad := s.Document().ProblemAt(path); bad {
		c.Mark = kit.Broken
	} else if worst(s, path) {
		c.Mark = kit.Warning
	}
	return c
}

// worst reports whether the job finds something doubtful at a path.
func worst(s *session.Session, path string) bool {
	for _, f := range s.Outcome().Findings {
		if f.Path == path && f.Severity >= winding.Doubt {
			return true
		}
	}
	return false
}

// guess stands before a figure in which a guess or a default weighs.
const guess = "~"

// figureCell is one figure of the comparison. The mark behind it is the verdict's, so one in
// which a guess weighs says so in front.
func figureCell(s *session.Session, r winding.Row, trial int) kit.Cell {
	c := r.Cells[trial]
	cell := s.Figure(c.Figure, r.Dim, r.Digits)
	cell.Unit = ""
	if c.Figure.Known() && c.Figure.Origin.Weak() {
		cell.Text = guess + cell.Text
	}
	cell.Mark = session.VerdictRole(c.Verdict)
	if cell.Mark == kit.Broken || cell.Mark == kit.Better || cell.Mark == kit.Worse {
		cell.Role = cell.Mark
	}
	return cell
}

// differenceCell is how far a trial's figure is from the reference's: in percent where
// that means something, else in the row's unit.
func differenceCell(s *session.Session, r winding.Row, trial int) kit.Cell {
	c := r.Cells[trial]
	cell := kit.Cell{Role: session.VerdictRole(c.Verdict)}
	switch p := c.Percent; {
	case c.Verdict == winding.Same:
		cell.Text = "same"
	case p.Known() && math.Abs(p.Value) < 0.5:
		cell.Text = "same"
	case p.Known() && p.Value >= 300:
		cell.Text = "×" + quantity.Screen.Number(1+p.Value/100, 2)
	case p.Known():
		cell.Text = quantity.Screen.Signed(p.Value, 0) + " %"
	case c.Difference.Known():
		u := s.Units.For(r.Dim)
		cell.Text = quantity.Screen.Difference(c.Difference.Value, u, r.Digits) + " " + u.Name
	}
	return cell
}

// rowLabel is a row's name and unit.
func rowLabel(s *session.Session, label string, d quantity.Dimension) string {
	if u := s.Units.For(d).Name; u != "" {
		return label + ", " + u
	}
	return label
}

// inputLabel is the label of an input row.
func inputLabel(row int) string {
	if row <= rowFill {
		f, _ := job.InputAt(inputFields[row])
		return f.Label
	}
	f, _ := job.InputAt("trial." + inputFields[row])
	return f.Label
}
