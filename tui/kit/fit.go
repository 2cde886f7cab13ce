package kit

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Width is the number of cells s takes, styles not counted.
func Width(s string) int {
	for i := range len(s) {
		if c := s[i]; c < 0x20 || c >= 0x7f {
			return ansi.StringWidth(s)
		}
	}
	return len(s)
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

// cut returns s in at most w cells, and how many it takes.
func (t Theme) cut(s string, w int) (string, int) {
	if w <= 0 {
		return "", 0
	}
	s = t.Text(hygiene(s))
	n := Width(s)
	if n > w {
		s = ansi.Truncate(s, w, t.Glyphs().Ellipsis)
		n = Width(s)
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

// Wrap breaks plain text into lines of at most w cells, at spaces where it can and
// inside words where it must. Line breaks in s are kept. Paint the lines
// afterwards: a style that runs over a break is not carried on. Empty text or w <= 0
// gives no lines.
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

// WrapPaint is [Theme.Wrap] with every line in the style of a role.
func (t Theme) WrapPaint(r Role, s string, w int) []string {
	lines := t.Wrap(s, w)
	for i := range lines {
		lines[i] = t.Style(r).Render(lines[i])
	}
	return lines
}
