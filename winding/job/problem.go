package job

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"slotwright/winding/text"
)

// Problem is something in the file that cannot be used: where it is, what was read, what was expected
// there and what to do. It is an error.
type Problem struct {
	Line     int    `json:"line"`   // from 1
	Column   int    `json:"column"` // from 1, in characters
	Path     string `json:"path,omitempty"`
	Read     string `json:"read"`
	Expected string `json:"expected"`
	Fix      string `json:"fix,omitempty"`
}

// Error is the problem as one sentence, with its place in front.
func (p Problem) Error() string {
	return fmt.Sprintf("%d:%d: %s", p.Line, p.Column, p.Text())
}

// Text is the sentence without the place.
func (p Problem) Text() string {
	var b strings.Builder
	if p.Path != "" {
		b.WriteString(p.Path + ": ")
	}
	b.WriteString(p.Sentence(p.Fix))
	return b.String()
}

// Sentence is what was read and expected, with the remedy, without the field. A remedy that is a
// sentence of its own, such as how to measure a field, stays one.
func (p Problem) Sentence(fix string) string {
	said := fmt.Sprintf("read %s, expected %s", p.Read, p.Expected)
	first, size := utf8.DecodeRuneInString(fix)
	second, _ := utf8.DecodeRuneInString(fix[size:])
	switch {
	case fix == "":
		return said
	case unicode.IsUpper(first) && !unicode.IsUpper(second):
		return said + ". " + fix
	}
	return said + "; " + fix
}

// quote shows what was read, cut when long.
func quote(s string) string {
	s = shorten(s, 400) // what is longer is cut below anyway, and splitting it takes time
	s = shorten(text.Visible(strings.Join(strings.Fields(s), " ")), 40)
	if s == "" {
		return "nothing"
	}
	return `"` + s + `"`
}
