package kit

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
)

// Clean makes outside text (a file, a paste, a path) safe to draw: escape
// sequences are taken out, line breaks become single spaces, a tab becomes four
// spaces, other control characters and invisible direction marks vanish, as do accents at
// its beginning that have no letter to stand on, and bytes that are not UTF-8 become
// U+FFFD. Text without any of these is returned as it is.
func Clean(s string) string {
	if !needsCare(s, false) {
		return s
	}
	return strings.TrimLeftFunc(tidy(ansi.Strip(strings.ToValidUTF8(s, "\uFFFD"))), clinging)
}

// hygiene is Clean for text that may hold styles: SGR sequences stay, anything
// else a terminal would act on goes.
func hygiene(s string) string {
	if !needsCare(s, true) {
		return s
	}
	s = strings.ToValidUTF8(s, "\uFFFD")
	var b strings.Builder
	begun := false
	text := func(part string) {
		if part = tidy(part); !begun {
			part = strings.TrimLeftFunc(part, clinging)
		}
		begun = begun || part != ""
		b.WriteString(part)
	}
	for len(s) > 0 {
		i := strings.IndexByte(s, 0x1b)
		if i < 0 {
			text(s)
			break
		}
		text(s[:i])
		n := sgrLen(s[i:])
		b.WriteString(s[i : i+n])
		s = s[i+max(n, 1):]
	}
	return b.String()
}

// needsCare is the quick look that lets nearly all text through untouched.
func needsCare(s string, sgrAllowed bool) bool {
	begun := false
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
			begun = true
			i++
		default:
			r, n := utf8.DecodeRuneInString(s[i:])
			if n == 1 || unwanted(r) || (!begun && clinging(r)) {
				return true
			}
			begun = true
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

// clinging are runes that join with the character before them: at the beginning of a text
// they would join with whatever it is put behind, and neither would have its width.
func clinging(r rune) bool {
	return unicode.Is(unicode.M, r) || r == 0x0e33 || r == 0x0eb3 || r == 0xff9e || r == 0xff9f || (r >= 0x1f3fb && r <= 0x1f3ff)
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

// unwanted are runes beyond ASCII that steer rather than show: C1 controls, line and
// paragraph separators, format characters (direction marks, joiners, signs that take in
// what follows them) and variation selectors. Terminals disagree about their width and
// that of their neighbours.
func unwanted(r rune) bool {
	switch {
	case r >= 0x80 && r <= 0x9f:
		return true
	case r == 0x2028, r == 0x2029, r >= 0xfe00 && r <= 0xfe0f:
		return true
	}
	return unicode.Is(unicode.Cf, r) || unicode.Is(prepending, r)
}

// prepending are the letters that join with the character after them, whatever it is
// (Grapheme_Cluster_Break=Prepend in Unicode Standard Annex 29, those that are not format
// characters; from memory).
var prepending = &unicode.RangeTable{
	R16: []unicode.Range16{{Lo: 0x0d4e, Hi: 0x0d4e, Stride: 1}},
	R32: []unicode.Range32{
		{Lo: 0x111c2, Hi: 0x111c3, Stride: 1}, {Lo: 0x113d1, Hi: 0x113d1, Stride: 1}, {Lo: 0x1193f, Hi: 0x1193f, Stride: 1},
		{Lo: 0x11941, Hi: 0x11941, Stride: 1}, {Lo: 0x11a3a, Hi: 0x11a3a, Stride: 1}, {Lo: 0x11a84, Hi: 0x11a89, Stride: 1},
		{Lo: 0x11d46, Hi: 0x11d46, Stride: 1}, {Lo: 0x11f02, Hi: 0x11f02, Stride: 1},
	},
}
