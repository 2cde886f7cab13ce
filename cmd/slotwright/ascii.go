package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"slotwright/winding/text"
)

// folding writes text on, in ASCII when that is asked for.
type folding struct {
	to    io.Writer
	ascii *bool
}

// Write folds p, which must not begin or end within a character.
func (f folding) Write(p []byte) (int, error) {
	if !*f.ascii {
		return f.to.Write(p)
	}
	_, err := io.WriteString(f.to, text.ASCII(string(p)))
	return len(p), err
}

// escaped writes some characters of JSON as \u: nothing is spelt otherwise, only escaped.
func escaped(json string, which func(rune) bool) string {
	if !strings.ContainsFunc(json, which) {
		return json
	}
	var b strings.Builder
	for _, r := range json {
		switch {
		case !which(r):
			b.WriteRune(r)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			fmt.Fprintf(&b, `\u%04x\u%04x`, high, low)
		default:
			fmt.Fprintf(&b, `\u%04x`, r)
		}
	}
	return b.String()
}

// beyondASCII are the characters that ASCII does not have.
func beyondASCII(r rune) bool { return r >= utf8.RuneSelf }

// isASCII reports whether what is written there is to be ASCII.
func isASCII(w io.Writer) bool {
	f, ok := w.(folding)
	return ok && *f.ascii
}
