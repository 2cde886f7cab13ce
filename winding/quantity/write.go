package quantity

import (
	"math"
	"strconv"
	"strings"
)

// # How numbers are written
//
// A number is written to a number of significant figures, and its whole digits always in full: 1234.5
// to three figures is 1234, not 1230, since a speed or a count with made-up zeros reads like a round
// one. Decimals stop where the unit's meters stop. What rounds to zero is "0" without a sign. An
// exponent is used only from a thousand million up, where no figure of a winding is.

// Style is how a number looks where it is read. The zero Style is for files.
type Style struct {
	// Minus precedes a negative number; "" is the hyphen of ASCII.
	Minus string
}

// The two places where numbers are read.
var (
	// Screen has the typographic minus, as wide as a plus.
	Screen = Style{Minus: "−"}
	// File has the hyphen, so that it can be typed and searched for.
	File = Style{Minus: "-"}
)

// AsGiven, as a number of figures, is for numbers a person gave: six at most, four where the unit is
// not the one they are stored in, without trailing zeros that nobody typed.
const AsGiven = -6

// AtMost, as a number of figures, is up to that many, without trailing zeros.
func AtMost(figures int) int { return -figures }

// Places, as a number of figures, is exactly so many decimals, as tables of the trade print factors:
// 0.9598, 1.0000.
func Places(decimals int) int { return placesFrom + decimals }

const (
	placesFrom       = 100 // numbers of figures from here up mean decimals
	convertedFigures = 4
	spreadFigures    = 2   // of a tolerance whose number gives no decimal place; more mean nothing
	finest           = 9   // decimals of any number
	exponentFrom     = 1e9 // from here up whole digits are no longer written in full
)

// mostDecimals is the finest decimal worth writing, by the unit's suffix: nobody reads a thousandth of
// an ampere off a charging meter, or a tenth of a revolution. A caliper shows 0.01 mm and a micrometer
// 0.001 mm or 0.0001 in. Common practice, no source.
var mostDecimals = map[string]int{"a": 2, "v": 2, "w": 1, "rpm": 0, "c": 1, "f": 1, "mm": 3, "in": 4}

// Number writes v to so many significant figures, for a file: [Style.Number] of [File].
func Number(v float64, digits int) string { return File.Number(v, digits) }

// Number writes v to that many significant figures, whole digits always in full. No figures (0) is a
// whole number; see [AsGiven] and [AtMost]. NaN and infinities are "?".
func (s Style) Number(v float64, digits int) string { return s.write(v, digits, finest) }

// Signed is [Style.Number] with a plus before a positive number.
func (s Style) Signed(v float64, digits int) string { return plus(v, s.Number(v, digits)) }

// Value writes a value in a unit, with no more decimals than the unit is worth. The name
// of the unit is not written.
func (s Style) Value(v float64, u Unit, digits int) string {
	switch {
	case digits == AsGiven && u.scale != 1:
		return s.Number(v, AtMost(convertedFigures))
	case digits < 0:
		return s.Number(v, digits)
	}
	return s.write(v, digits, u.decimals(v, digits))
}

// decimals is how many decimals a value in the unit is worth. From 1 up there are always two figures: a
// water wheel's 6.5 rpm is not 7.
func (u Unit) decimals(v float64, digits int) int {
	most, capped := mostDecimals[u.Suffix]
	switch {
	case !capped:
		return finest
	case math.Abs(v) >= 1:
		return max(most, decimals(v, min(digits, 2)))
	}
	return most
}

// Worth is the last decimal place written of a value in the unit to that many figures: 0.01 for 3.02 A,
// 1 for 547 rpm; 1e-9 where the unit sets no end.
func (u Unit) Worth(v float64, digits int) float64 {
	return math.Pow(10, -float64(u.decimals(v, max(digits, 1))))
}

// Difference is a difference in the base unit, signed: [Style.Value] with a plus before a positive one.
func (s Style) Difference(base float64, u Unit, digits int) string {
	v := u.FromSpan(base)
	return plus(v, s.Value(v, u, digits))
}

// Figure writes a figure in a unit, "~" before a guess and ± behind it where it has one. An unknown
// figure is "".
func (s Style) Figure(f Figure, u Unit, digits int) string {
	if !f.Known() {
		return ""
	}
	text, off := s.Value(u.From(f.Value), u, digits), f.Spread(u, digits)
	if digits < 0 && off != "" { // a number as typed is filled up to the decimal place of its ±
		text = padded(text, placesOf(off))
	}
	if f.Origin.Weak() {
		text = "~" + text
	}
	if off != "" {
		text += " " + off
	}
	return text
}

// Text is the figure in a unit for a file: [Style.Figure] of [File].
func (f Figure) Text(u Unit, digits int) string { return File.Figure(f, u, digits) }

// # A number and its ±
//
// Both end at the same decimal place: 10.5 ±1.0, not ±1 (Guide to the Expression of Uncertainty in
// Measurement, JCGM 100:2008, 7.2.6). The number decides which, so that it looks the same with its ± or
// without; a smaller ± is written as one of that place. Where the number is as typed the ± may ask for
// more, and the number is filled up. A number that rounds to zero has no decimal place; then the ± has
// its two figures.

// Spread is the ± of a figure, "±0.02", down to the last decimal place of the figure written to that
// many figures; "" when it was not worked out.
func (f Figure) Spread(u Unit, digits int) string {
	if !(f.PlusMinus > 0) {
		return ""
	}
	off, text := math.Abs(u.FromSpan(f.PlusMinus)), File.Value(u.From(f.Value), u, digits)
	places := placesOf(text)
	switch {
	case text == "0", strings.ContainsAny(text, "e?"), off >= exponentFrom:
		return "±" + Number(off, AtMost(spreadFigures))
	case digits < 0:
		places = max(places, placesOf(Number(off, AtMost(spreadFigures))))
	}
	return "±" + strconv.FormatFloat(max(off, math.Pow(10, -float64(places))), 'f', places, 64)
}

// placesOf is the number of decimals of a number as written.
func placesOf(text string) int {
	_, fraction, _ := strings.Cut(text, ".")
	return len(fraction)
}

// padded is a number with trailing zeros up to so many decimals.
func padded(text string, places int) string {
	has := placesOf(text)
	if has >= places || text == "0" || strings.ContainsAny(text, "e?") {
		return text
	}
	if has == 0 {
		text += "."
	}
	return text + strings.Repeat("0", places-has)
}

// write is the one place where a number becomes digits: that many significant figures, and at most so
// many decimals.
func (s Style) write(v float64, digits, most int) string {
	switch {
	case math.IsNaN(v) || math.IsInf(v, 0):
		return "?"
	case digits < 0:
		return trimNoughts(s.write(v, -digits, most))
	case math.Abs(v) >= exponentFrom:
		return s.sign(strconv.FormatFloat(v, 'g', 4, 64))
	}
	text := strconv.FormatFloat(v, 'f', min(decimals(v, digits), most), 64)
	if strings.Trim(text, "-0.") == "" {
		return "0"
	}
	return s.sign(text)
}

// decimals is how many decimals give that many significant figures of v once it is rounded: 9.96 to two
// figures is 10, which takes none.
func decimals(v float64, digits int) int {
	if digits >= placesFrom {
		return digits - placesFrom
	}
	if digits <= 0 || v == 0 {
		return 0
	}
	_, exponent, _ := strings.Cut(strconv.FormatFloat(v, 'e', digits-1, 64), "e")
	n, _ := strconv.Atoi(exponent)
	return max(0, digits-1-n)
}

func (s Style) sign(text string) string {
	if s.Minus == "" || !strings.HasPrefix(text, "-") {
		return text
	}
	return s.Minus + text[1:]
}

func plus(v float64, text string) string {
	if v > 0 && text != "0" && text != "?" {
		return "+" + text
	}
	return text
}

// trimNoughts removes the trailing zeros of a fraction.
func trimNoughts(s string) string {
	if !strings.Contains(s, ".") || strings.Contains(s, "e") {
		return s
	}
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}
