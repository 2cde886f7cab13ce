package trials

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// inputCell is a trial's cell in an input row, or the line being typed into it.
func (v *View) inputCell(s *session.Session, row string, trial int) kit.Cell {
	if v.editing && row == v.row && trial == s.Trial {
		return kit.Cell{Text: v.input.Draw(s.Theme, typingWidth, true), Word: true}
	}
	return inputText(s, row, trial)
}

// typingWidth is the width of a value being typed.
const typingWidth = 10

// inputText is a trial's text in an input row.
func inputText(s *session.Session, row string, trial int) kit.Cell {
	path := job.PathOf("trial", trial, row)
	text, _, given := s.Document().Typed(path)
	t, typed := s.Outcome().Trials[trial], s.Job().Trials[trial]
	_, bad := s.Document().ProblemAt(path)
	switch {
	case row == rowTurns && len(typed.CoilTurns) > 0:
		text = strings.Trim(strings.ReplaceAll(fmt.Sprint(typed.CoilTurns), " ", ","), "[]")
	case bad:
	case row == rowTurns && given && t.TurnsThatFit.Known():
		text += " of " + quantity.Screen.Number(t.TurnsThatFit.Value, 0)
	case row == rowWire && given && !typed.Gauge.IsZero():
		text = shortWire(typed.Gauge.String())
		if !typed.AlsoGauge.IsZero() {
			text = shortWire(typed.Bundle().String())
		}
	case !given:
		text = map[string]string{rowTurns: session.Dash, rowWire: session.Dash, rowStrands: "1", rowConnection: t.Connection.String(), rowCircuits: fmt.Sprint(t.Circuits)}[row]
	}
	c := kit.Cell{Text: text, Role: kit.Value, Word: true}
	if bad {
		c.Mark = kit.Broken
	} else if row == rowTurns && !t.Fits() {
		c.Mark, c.Role = kit.Broken, kit.Broken
	} else if worst(s, path) {
		c.Mark = kit.Warning
	}
	return c
}

// shortWire is a wire's name as a narrow column has it.
func shortWire(name string) string {
	return strings.Replace(strings.TrimPrefix(strings.ReplaceAll(name, " mm over", " over"), "1 × "), "IEC ", "", 1)
}

// oldInput is the old winding's text in an input row.
func oldInput(o *winding.TrialOutcome, row string) kit.Cell {
	c := kit.Cell{Text: session.Dash, Role: kit.Dim, Word: true}
	switch {
	case row == rowTurns && o.Turns.Known():
		c.Text = quantity.Screen.Number(o.Turns.Value, 0)
		if o.TurnsThatFit.Known() {
			c.Text += " of " + quantity.Screen.Number(o.TurnsThatFit.Value, 0)
		}
	case row == rowWire && o.Wire != "":
		_, wire, many := strings.Cut(o.Wire, " × ")
		if c.Text = shortWire(wire); !many {
			c.Text = shortWire(o.Wire)
		}
	case row == rowStrands && o.Strands > 0:
		c.Text = fmt.Sprint(o.Strands)
	case row == rowConnection:
		c.Text = o.Connection.String()
	case row == rowCircuits && o.Circuits > 0:
		c.Text = fmt.Sprint(o.Circuits)
	}
	return c
}

// worst reports whether the job has a finding at a path.
func worst(s *session.Session, path string) bool {
	for _, f := range s.Outcome().Findings {
		if f.Path == path && f.Severity >= winding.Doubt {
			return true
		}
	}
	return false
}

// figureCell is one figure of the comparison. The mark behind it is the verdict's, so a figure that a
// guess affects has its sign in front.
func figureCell(s *session.Session, r winding.Row, trial int) kit.Cell {
	c := r.Cells[trial]
	cell := plainCell(s, c.Figure, r)
	cell.Mark = session.VerdictRole(c.Verdict)
	if c.Burns {
		return burns
	}
	if c.Held {
		cell = asHeld(cell)
	}
	if cell.Mark == kit.Broken || cell.Mark == kit.Better || cell.Mark == kit.Worse {
		cell.Role = cell.Mark
	}
	return cell
}

// heldSign precedes amps that the regulator holds, instead of the sign of a guess: they are its
// setting.
const heldSign = "="

// asHeld is a cell of held amps.
func asHeld(c kit.Cell) kit.Cell {
	c.Text = heldSign + strings.TrimPrefix(c.Text, session.Rough)
	return c
}

// heldLine explains the sign where any amps of the table are held, "" where none are.
func heldLine(s *session.Session) string {
	o, j := s.Outcome(), s.Job()
	for _, r := range o.Comparison {
		of := winding.OutputOf(r.ID)
		if slices.ContainsFunc(r.Cells, func(c winding.Cell) bool { return c.Held && !c.Burns }) || o.Old != nil && of.Held(o.Old) {
			set := j.Battery.MostAmps.Figure("")
			return heldSign + " held at " + s.Text(set, quantity.Amps, quantity.AtMost(3)) + " by the regulator"
		}
	}
	return ""
}

// burns replaces a figure in a condition that the winding does not survive.
var burns = kit.Cell{Text: "burns", Mark: kit.Broken, Role: kit.Broken, Word: true}

// plainCell is a figure without a verdict.
func plainCell(s *session.Session, f quantity.Figure, r winding.Row) kit.Cell {
	cell := s.Plain(f, r.Dim, digitsOf(f, r))
	cell.Word = f.Known() && r.Digits >= quantity.Places(0) // a factor has its own number of places, and widens no column of figures
	return cell
}

// digitsOf is how many figures of a row's figure are written.
func digitsOf(f quantity.Figure, r winding.Row) int {
	if r.Dim[0].Name == quantity.Ohms[0].Name && f.Value >= 0.01 && f.Value < 0.1 {
		return r.Digits - 1 // three decimals, as for more ohms, so that a column stands still; the report has the fourth
	}
	return r.Digits
}

// differenceCell is the difference of a trial's figure from the reference's: in per cent where that
// means something, else in the row's unit.
func differenceCell(s *session.Session, r winding.Row, trial int) kit.Cell {
	c := r.Cells[trial]
	cell := kit.Cell{Role: session.VerdictRole(c.Verdict)}
	if c.Verdict == winding.Past { // that is the figure's own, not of the two compared
		cell.Role = kit.Plain
	}
	switch p := c.Percent; {
	case c.Burns || r.Cells[s.Outcome().Reference].Burns: // nothing to measure by
	case c.Verdict == winding.Same, c.Difference.Known() && c.Difference.Value == 0:
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

// rowLabel is a row's name and unit. Every speed says whose it is: those of the grid are the
// alternator's.
func rowLabel(s *session.Session, label string, d quantity.Dimension) string {
	label = s.Units.Words(label)
	if d[0].Name == quantity.RPM[0].Name && !strings.HasPrefix(label, "alternator") {
		return label + ", alt. rpm"
	}
	if u := s.Units.For(d).Name; u != "" {
		return label + ", " + u
	}
	return label
}
