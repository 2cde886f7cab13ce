package form

import (
	"strings"
	"unicode"
)

// Charset says which runes a field takes; nil is [Any]. Control characters are
// never taken, whatever it says.
type Charset func(rune) bool

// Any takes every printable rune.
func Any(r rune) bool { return unicode.IsPrint(r) }

// Number takes what a plain number is written with: digits, sign, point or comma,
// exponent.
func Number(r rune) bool { return strings.ContainsRune("0123456789.,+-eE", r) }

// Quantity takes what a number with a unit, a tolerance or a gauge system is written with:
// letters and digits, spaces and . , + - / ' " ° ± µ Ω ² ³ × · * ( ) % #. It does not take < ; [ ],
// of which mouse reports are made.
func Quantity(r rune) bool {
	return r < 0x80 && (unicode.IsLetter(r) || unicode.IsDigit(r)) || strings.ContainsRune(" .,+-/'\"°±µμΩ²³×·*()%#", r)
}

// takes combines the charset with what no field ever takes.
func (c Charset) takes(r rune) bool {
	if !unicode.IsPrint(r) || unicode.Is(unicode.Mn, r) || r == unicode.ReplacementChar {
		return false
	}
	return c == nil || c(r)
}
