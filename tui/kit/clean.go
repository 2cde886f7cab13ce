package kit

import (
	"strings"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Clean makes outside text (a file, a paste, a path) safe to draw: escape
// sequences are taken out, line breaks become single spaces, a tab becomes four
// spaces, other control characters and invisible direction marks vanish, bytes that are
// not UTF-8 become U+FFFD. Text without any of these is returned as it is.
func Clean(s string) string {
	if !needsCare(s, false) {
		return s
	}
	return tidy(ansi.Strip(strings.ToValidUTF8(s, "\uFFFD")))
}

// hygiene is Clean for text that may hold styles: SGR sequences stay, anything
// else a terminal would act on goes.
func hygiene(s string) string {
	if !needsCare(s, true) {
		return s
	}
	s = strings.ToValidUTF8(s, "\uFFFD")
	var b strings.Builder
	for len(s) > 0 {
		i := strings.IndexByte(s, 0x1b)
		if i < 0 {
			b.WriteString(tidy(s))
			break
		}
		b.WriteString(tidy(s[:i]))
		n := sgrLen(s[i:])
		b.WriteString(s[i : i+n])
		s = s[i+max(n, 1):]
	}
	return b.String()
}

// needsCare is the quick look that lets nearly all text through untouched.
func needsCare(s string, sgrAllowed bool) bool {
	for i := 0; i < len(s); {
		c := s[i]
		switch {
		case c == 0x1b && sgrAllowed:
			n := sgrLen(s[i:])
			if n == 0 {
				return true
			}
			i += n
		case c < 0x20 || c == 0x7f:
			return true
		case c < 0x80:
			i++
		default:
			r, n := utf8.DecodeRuneInString(s[i:])
			if n == 1 || unwanted(r) {
				return true
			}
			i += n
		}
	}
	return false
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

// tidy handles control characters in text that holds no escape sequences.
func tidy(s string) string {
	s = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ", "\t", "    ").Replace(s)
	return strings.Map(func(r rune) rune {
		if r < 0x20 || r == 0x7f || unwanted(r) {
			return -1
		}
		return r
	}, s)
}

// unwanted are runes beyond ASCII that steer rather than show: C1 controls, line
// and paragraph separators, direction marks, joiners and variation selectors
// (terminals disagree about the width of what follows those).
func unwanted(r rune) bool {
	switch {
	case r >= 0x80 && r <= 0x9f:
		return true
	case r >= 0x200b && r <= 0x200f, r >= 0x2028 && r <= 0x202e, r >= 0x2060 && r <= 0x206f:
		return true
	case r >= 0xfe00 && r <= 0xfe0f, r == 0xfeff, r == 0x00ad:
		return true
	}
	return false
}
