package session

import (
	"math"
	"strconv"
	"strings"

	"slotwright/tui/kit"
	"slotwright/winding"
	"slotwright/winding/quantity"
)

// Dash stands where there is no number.
const Dash = "–"

// Number writes a value with so many significant figures, without an exponent, and
// with whole figures kept: 1234.5 to 3 figures is 1235, 0.04567 is 0.0457. No figures
// at all (0) is a count: a whole number.
func Number(v float64, digits int) string {
	if v == 0 {
		return "0"
	}
	if digits == 0 {
		return strings.Replace(strconv.FormatFloat(v, 'f', 0, 64), "-", "−", 1)
	}
	decimals := digits - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	s := strconv.FormatFloat(v, 'f', max(0, min(decimals, 9)), 64)
	return strings.Replace(s, "-", "−", 1)
}

// Figure writes a figure in the unit liked: its text, its unit and the mark of how it
// came about. A missing one is a dash.
func (s *Session) Figure(f quantity.Figure, d quantity.Dimension, digits int) kit.Cell {
	u := s.Units.For(d)
	if !f.Known() {
		return kit.Cell{Text: Dash, Unit: "", Role: kit.Dim}
	}
	return kit.Cell{Text: capped(u.From(f.Value), digits, d), Unit: u.Name, Mark: MarkOf(f)}
}

// mostDecimals is how fine a unit is worth showing: nobody reads a thousandth of an ampere
// off a charging meter.
var mostDecimals = map[string]int{"a": 2, "v": 2, "w": 1, "rpm": 0, "c": 1, "mm": 3}

// capped is Number with no more decimals than the unit is worth.
func capped(v float64, digits int, d quantity.Dimension) string {
	most, ok := mostDecimals[d[0].Suffix]
	text := Number(v, digits)
	if _, after, found := strings.Cut(text, "."); ok && found && len(after) > most {
		text = strings.Replace(strconv.FormatFloat(v, 'f', most, 64), "-", "−", 1)
	}
	return text
}

// Text is a figure with its unit in one string.
func (s *Session) Text(f quantity.Figure, d quantity.Dimension, digits int) string {
	c := s.Figure(f, d, digits)
	if c.Unit == "" {
		return c.Text
	}
	return c.Text + " " + c.Unit
}

// MarkOf is the mark of how a figure came about.
func MarkOf(f quantity.Figure) kit.Role {
	switch f.Origin {
	case quantity.Measured:
		return kit.Measured
	case quantity.Guessed:
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
