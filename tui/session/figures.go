package session

import (
	"slotwright/tui/kit"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// Dash is shown where there is no number.
const Dash = "–"

// Figure writes a figure in the chosen unit: its text, its unit and the mark of its origin. A missing
// one is a dash.
func (s *Session) Figure(f quantity.Figure, d quantity.Dimension, digits int) kit.Cell {
	u := s.Units.For(d)
	if !f.Known() {
		return kit.Cell{Text: Dash, Unit: "", Role: kit.Dim}
	}
	return kit.Cell{Text: quantity.Screen.Value(u.From(f.Value), u, digits), Unit: u.Name, Mark: MarkOf(f)}
}

// Rough precedes a figure that a guess or a default affects.
const Rough = "~"

// Plain is a figure for tables whose rows have the unit: the sign of a guess is in front, so that the
// mark behind is free for a verdict.
func (s *Session) Plain(f quantity.Figure, d quantity.Dimension, digits int) kit.Cell {
	cell := s.Figure(f, d, digits)
	cell.Unit, cell.Mark = "", kit.Plain
	if f.Known() && f.Origin.Weak() {
		cell.Text = Rough + cell.Text
	}
	return cell
}

// Text is a figure with its unit in one string.
func (s *Session) Text(f quantity.Figure, d quantity.Dimension, digits int) string {
	c := s.Figure(f, d, digits)
	if c.Unit == "" {
		return c.Text
	}
	return c.Text + " " + c.Unit
}

// MarkOf is the mark of a figure's origin.
func MarkOf(f quantity.Figure) kit.Role {
	switch {
	case f.Origin == quantity.Measured:
		return kit.Measured
	case f.Origin.Weak():
		return kit.Guessed
	default:
		return kit.Plain
	}
}

// VerdictRole is the role of a verdict, for its mark and colour.
func VerdictRole(v winding.Verdict) kit.Role {
	switch v {
	case winding.Better:
		return kit.Better
	case winding.Worse:
		return kit.Worse
	case winding.Past:
		return kit.Broken
	default:
		return kit.Plain
	}
}
