package job

import (
	"fmt"
	"strings"

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
	fmt.Fprintf(&b, "read %s, expected %s", p.Read, p.Expected)
	if p.Fix != "" {
		b.WriteString("; " + p.Fix)
	}
	return b.String()
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
