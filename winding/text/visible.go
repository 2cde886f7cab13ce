package text

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Steers reports whether a character acts on a terminal, or on the order in which text
// is shown, instead of being shown: controls, escape, direction marks and the other
// invisible format characters, line and paragraph separators (Unicode categories Cc, Cf,
// Zl, Zp). The two joiners are let through: they shape letters and emoji, and move nothing.
func Steers(r rune) bool {
	if r < 0x7f {
		return r < ' '
	}
	return r != '\u200c' && r != '\u200d' && unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp)
}

// Visible is text from outside (a file, a name, a flag) that may be written to a terminal:
// each character that steers is written out as the job file would write it, \u001b, and
// each byte that is not UTF-8 as \xff. Nothing vanishes, so a person can find it.
func Visible(s string) string {
	if utf8.ValidString(s) && !strings.ContainsFunc(s, Steers) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); {
		r, n := utf8.DecodeRuneInString(s[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&b, `\x%02x`, s[i])
		case Steers(r):
			b.WriteString(Escaped(r))
		default:
			b.WriteRune(r)
		}
		i += n
	}
	return b.String()
}

// Escaped is a character as TOML and JSON write what may not stand in a text.
func Escaped(r rune) string {
	if r > 0xffff {
		return fmt.Sprintf(`\U%08x`, r)
	}
	return fmt.Sprintf(`\u%04x`, r)
}
