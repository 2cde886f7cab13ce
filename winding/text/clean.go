// Package text makes words fit to be shown: cleaned of what a terminal or a printer would act on,
// measured in columns, cut, padded and wrapped to them, and converted to ASCII.
//
// Everything here takes and returns plain text. Colours are the screen's business.
package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/clipperhouse/uax29/v2/graphemes"
)

// Clean makes outside text (a file, a paste, a path) safe to show: escape sequences are removed, line
// breaks become single spaces, a tab becomes four spaces, other control characters and invisible
// direction marks vanish, as do accents without a letter to combine with, and bytes that are not UTF-8
// become U+FFFD. Text without any of these is returned as it is.
func Clean(s string) string {
	if IsClean(s) {
		return s
	}
	return grounded(tidy(unescape(strings.ToValidUTF8(s, "\uFFFD"))))
}

// IsClean reports whether [Clean] would leave text as it is: the fast check that passes nearly all of
// it.
func IsClean(s string) bool {
	stands := false // there is a letter for an accent to combine with
	for i := 0; i < len(s); {
		c := s[i]
		if c < utf8.RuneSelf {
			if c < ' ' || c == 0x7f {
				return false
			}
			stands = c != ' '
			i++
			continue
		}
		r, n := utf8.DecodeRuneInString(s[i:])
		if n == 1 || unwanted(r) || !stands && clinging(r) {
			return false
		}
		stands = true
		i += n
	}
	return true
}

// unescape removes whole escape sequences: CSI, OSC and the others of ECMA-48.
func unescape(s string) string {
	if strings.IndexByte(s, 0x1b) < 0 {
		return s
	}
	var b strings.Builder
	clusters := graphemes.FromString(s)
	clusters.AnsiEscapeSequences = true
	for clusters.Next() {
		if v := clusters.Value(); v[0] != 0x1b {
			b.WriteString(v)
		}
	}
	return b.String()
}

var breaks = strings.NewReplacer("\r\n", " ", "\n", " ", "\r", " ", "\t", "    ")

// tidy handles control characters in text that holds no escape sequences.
func tidy(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || unwanted(r) {
			return -1
		}
		return r
	}, breaks.Replace(s))
}

// grounded is text without the accents that begin it or follow a blank.
func grounded(s string) string {
	stands := false
	return strings.Map(func(r rune) rune {
		if !stands && clinging(r) {
			return -1
		}
		stands = r != ' '
		return r
	}, s)
}

// clinging are runes that combine with the character before them: at the beginning of a text they would
// combine with whatever it is appended to, and neither would have its width.
func clinging(r rune) bool {
	return unicode.Is(unicode.M, r) || r == 0x0e33 || r == 0x0eb3 || r == 0xff9e || r == 0xff9f || (r >= 0x1f3fb && r <= 0x1f3ff)
}

// unwanted are runes beyond ASCII that steer rather than show: C1 controls, line and paragraph
// separators, format characters (direction marks, joiners, signs that enclose what follows them) and
// variation selectors. Terminals disagree about their width and that of their neighbours.
func unwanted(r rune) bool {
	switch {
	case r < 0x80:
		return false
	case r <= 0x9f, r == 0x2028, r == 0x2029, r >= 0xfe00 && r <= 0xfe0f:
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
