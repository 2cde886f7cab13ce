package wiretable

import (
	"strings"
	"unicode"
)

// ParseError is a wire size, build, metal or bundle that could not be read.
type ParseError struct {
	Read     string // what was read, shortened when long
	Expected string // what belongs there
	Fix      string // what to do about it
}

// Error is one sentence for the person who typed it.
func (e *ParseError) Error() string {
	return "read \"" + e.Read + "\" where " + e.Expected + " was expected: " + e.Fix
}

const clipRunes = 40

// clip keeps an error short and printable whatever was typed.
func clip(text string) string {
	clean := []rune(strings.Map(func(r rune) rune {
		if !unicode.IsPrint(r) {
			return '?'
		}
		return r
	}, text))
	if len(clean) > clipRunes {
		return string(clean[:clipRunes]) + "…"
	}
	return string(clean)
}

// squash lowers a word and drops what people put between its parts.
func squash(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || r == '-' || r == '_' {
			return -1
		}
		return unicode.ToLower(r)
	}, text)
}
