package kit

import (
	"strings"

	"slotwright/winding/text"
)

// Clean makes outside text safe to draw: see [text.Clean].
func Clean(s string) string { return text.Clean(s) }

// hygiene is Clean for text that may hold styles: SGR sequences stay, anything else a terminal would
// act on goes.
func hygiene(s string) string {
	if isHygienic(s) {
		return s
	}
	var b strings.Builder
	for s != "" {
		style, plain, rest := nextPart(s)
		b.WriteString(style)
		b.WriteString(text.Clean(plain))
		s = rest
	}
	return b.String()
}

// isHygienic is the fast check that passes nearly all text untouched.
func isHygienic(s string) bool {
	for s != "" {
		_, plain, rest := nextPart(s)
		if !text.IsClean(plain) {
			return false
		}
		s = rest
	}
	return true
}

// nextPart splits off the SGR sequence that s begins with, if it does, and the text up
// to the next one.
func nextPart(s string) (style, plain, rest string) {
	n := sgrLen(s)
	end := n
	for end < len(s) {
		i := strings.IndexByte(s[end:], 0x1b)
		if i < 0 {
			return s[:n], s[n:], ""
		}
		if end += i; sgrLen(s[end:]) > 0 {
			break
		}
		end++
	}
	return s[:n], s[n:end], s[end:]
}

// sgrLen is the length of the SGR sequence s begins with, 0 if it does not.
func sgrLen(s string) int {
	if len(s) < 3 || s[0] != 0x1b || s[1] != '[' {
		return 0
	}
	for i := 2; i < len(s); i++ {
		c := s[i]
		if c == 'm' {
			return i + 1
		}
		if (c < '0' || c > '9') && c != ';' && c != ':' {
			return 0
		}
	}
	return 0
}
