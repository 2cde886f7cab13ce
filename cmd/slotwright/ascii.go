package main

import (
	"fmt"
	"io"
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

// appendEscaped appends a JSON string with some characters as \u: nothing changes its meaning. JSON's
// own rule has already escaped everything below 0x7f that steers.
func appendEscaped(out, s []byte, which func(rune) bool) []byte {
	for len(s) > 0 {
		n := 0
		for n < len(s) && s[n] < 0x7f {
			n++
		}
		out, s = append(out, s[:n]...), s[n:]
		if len(s) == 0 {
			break
		}
		r, size := utf8.DecodeRune(s)
		switch {
		case !which(r):
			out = append(out, s[:size]...)
		case r > 0xffff:
			high, low := utf16.EncodeRune(r)
			out = fmt.Appendf(out, `\u%04x\u%04x`, high, low)
		default:
			out = fmt.Appendf(out, `\u%04x`, r)
		}
		s = s[size:]
	}
	return out
}

// beyondASCII reports a character that ASCII does not have.
func beyondASCII(r rune) bool { return r >= utf8.RuneSelf }

// isASCII reports whether what is written there is to be ASCII.
func isASCII(w io.Writer) bool {
	f, ok := w.(folding)
	return ok && *f.ascii
}
