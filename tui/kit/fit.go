package kit

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Width is the number of cells s takes, styles not counted.
func Width(s string) int {
	if n, ok := plainWidth(s); ok {
		return n
	}
	return ansi.StringWidth(s)
}

// boxes says that box-drawing lines take one cell, as they do unless the environment asks for East
// Asian widths.
var boxes = ansi.StringWidth("─") == 1

// plainWidth is the fast Width of what the screen is mostly made of: ASCII, styles, box-drawing lines,
// braille dots and the signs of the trade. ok is false where there is anything else.
func plainWidth(s string) (n int, ok bool) {
	for i := 0; i < len(s); n++ {
		switch c := s[i]; {
		case c >= 0x20 && c < 0x7f:
			i++
		case c == 0x1b:
			end := styleEnd(s[i:])
			if end == 0 {
				return 0, false
			}
			i += end
			n-- // takes no cell
		case c == 0xe2 && i+2 < len(s) && oneCell3(s[i+1], s[i+2]):
			i += 3
		case boxes && i+1 < len(s) && oneCell2(c, s[i+1]):
			i += 2
		default:
			return 0, false
		}
	}
	return n, true
}

// oneCell3 reports whether 0xe2 and two more bytes are a one-cell character: braille, box-drawing
// lines, blocks, dashes and dots, small digits, arrows, mathematical signs.
func oneCell3(a, b byte) bool {
	switch {
	case b&^0x3f != 0x80:
		return false
	case a&^3 == 0xa0: // U+2800 to 28FF
		return true
	case !boxes:
		return false
	}
	switch a {
	case 0x94, 0x95, 0x88, 0x89: // U+2500 to 257F, 2200 to 227F
		return true
	case 0x80: // U+2010 to 2027
		return b >= 0x90 && b <= 0xa7
	case 0x82: // U+2080 to 208E
		return b <= 0x8e
	case 0x86: // U+2190 to 2193
		return b >= 0x90 && b <= 0x93
	case 0x96: // U+2580 to 25BF
		return true
	case 0x97: // U+25C0 to 25FC
		return b <= 0xbc
	case 0x9c: // U+2713 to 2718
		return b >= 0x93 && b <= 0x98
	}
	return false
}

// oneCell2 is the same for two bytes: U+00A1 to 00FF except the soft hyphen, and Greek.
func oneCell2(a, b byte) bool {
	switch {
	case b&^0x3f != 0x80:
		return false
	case a == 0xc2:
		return b > 0xa0 && b != 0xad
	case a == 0xce:
		return b >= 0x91 && b != 0xa2
	}
	return a == 0xc3 || a == 0xcf && b <= 0x8e
}

// styleEnd is the length of the style that s begins with, ESC [ digits and ; m; 0 for anything else.
func styleEnd(s string) int {
	for i := 2; len(s) > 1 && s[1] == '[' && i < len(s); i++ {
		switch c := s[i]; {
		case c == 'm':
			return i + 1
		case c != ';' && (c < '0' || c > '9'):
			return 0
		}
	}
	return 0
}

// Fit returns s as exactly w cells: padded with spaces on the right, or cut with
// the theme's ellipsis, so that a cut number never looks like a whole one. Styles
// are kept and closed. No line break or control character gets out. w <= 0
// gives "".
func (t Theme) Fit(s string, w int) string {
	s, n := t.cut(s, w)
	return s + spaces(w-n)
}

// FitRight is [Theme.Fit] with the padding on the left.
func (t Theme) FitRight(s string, w int) string {
	s, n := t.cut(s, w)
	return spaces(w-n) + s
}

// FitCentre is [Theme.Fit] with the padding shared between both sides.
func (t Theme) FitCentre(s string, w int) string {
	s, n := t.cut(s, w)
	left := (w - n) / 2
	return spaces(left) + s + spaces(w-n-left)
}

// Cut returns s in at most w cells, cut like [Theme.Fit] but not padded.
func (t Theme) Cut(s string, w int) string {
	s, _ = t.cut(s, w)
	return s
}

// OnCut, where set, is called with every text that is cut and what is left of it: tests of screens
// check what was lost.
var OnCut func(whole, left string)

// cut returns s in at most w cells, and how many it takes.
func (t Theme) cut(s string, w int) (string, int) {
	if w <= 0 {
		return "", 0
	}
	s = t.Text(hygiene(s))
	n := Width(s)
	if n > w { // trailing blanks are no loss
		s = strings.TrimRight(s, " ")
		n = Width(s)
	}
	if n > w {
		whole := s
		s = ansi.Truncate(s, w, t.Glyphs().Ellipsis)
		n = Width(s)
		if OnCut != nil {
			OnCut(whole, s)
		}
	}
	return closeStyle(s), n
}

// closeStyle ends a style that s leaves open, so that it cannot run into what
// stands to its right.
func closeStyle(s string) string {
	i := strings.LastIndexByte(s, 0x1b)
	if i < 0 || strings.HasPrefix(s[i:], reset) || strings.HasPrefix(s[i:], "\x1b[m") {
		return s
	}
	return s + reset
}

const blank = "                                                                                                    " +
	"                                                                                                    "

func spaces(n int) string {
	switch {
	case n <= 0:
		return ""
	case n <= len(blank):
		return blank[:n]
	}
	return strings.Repeat(" ", n)
}

// Wrap breaks plain text into lines of at most w cells, at spaces where it can and inside words where
// it must. Line breaks in s are kept. Paint the lines afterwards: a style that spans a break is not
// carried on. Empty text or w <= 0 gives no lines.
func (t Theme) Wrap(s string, w int) []string {
	if w <= 0 || s == "" {
		return nil
	}
	var lines []string
	for _, para := range strings.Split(strings.ReplaceAll(s, "\r\n", "\n"), "\n") {
		para = t.Text(hygiene(para))
		for _, line := range strings.Split(ansi.Wrap(para, w, ""), "\n") {
			lines = append(lines, t.Cut(strings.TrimRight(line, " "), w))
		}
	}
	return lines
}

// WrapPaint is [Theme.Wrap] with every line in the style of a role, as sentences have it.
func (t Theme) WrapPaint(r Role, s string, w int) []string {
	lines, style := t.Wrap(s, w), t.sentence(r)
	for i := range lines {
		lines[i] = style.Render(lines[i])
	}
	return lines
}

// Hang is [Theme.WrapPaint] behind a lead that is painted already, the later lines under the first.
func (t Theme) Hang(lead string, r Role, s string, w int) []string {
	in := Width(lead)
	lines := t.WrapPaint(r, s, w-in)
	for i := range lines {
		lines[i] = lead + lines[i]
		lead = spaces(in)
	}
	return lines
}

// sentence is a role's style for whole sentences: bars over several lines, as high contrast has for
// broken limits, would dominate a screen; their mark says what they are.
func (t Theme) sentence(r Role) Style {
	if r == Broken && t.Look == HighContrast {
		r = Title
	}
	return t.Style(r)
}
