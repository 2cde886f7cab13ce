package kit

import (
	"slices"
	"strings"

	"slotwright/winding/text"
)

// Theme says what the terminal may be asked to draw. The zero Theme uses box
// characters and no colour at all.
type Theme struct {
	Colour bool // SGR sequences are allowed
	ASCII  bool // nothing beyond printable ASCII
	Look   Look // which colours
	// Fixed uses colours that are the same in every terminal of 256, instead of the first sixteen,
	// which each sets as it likes.
	Fixed bool
}

// WithLook is the theme with the look of that name, one of [LookNames].
func (t Theme) WithLook(name string) (Theme, bool) {
	i := slices.Index(lookNames[:], name)
	if i < 0 {
		return t, false
	}
	t.Colour = Look(i) < lookCount
	t.Look = Look(i) % lookCount
	return t, true
}

// On is the theme with the look for the background that a terminal names in COLORFGBG ("15;0": the last
// is the background's number), unchanged where that is of no use.
func (t Theme) On(colorfgbg string) Theme {
	switch colorfgbg[strings.LastIndexByte(colorfgbg, ';')+1:] {
	case "7", "15":
		t.Look = LightBackground
	case "0", "8":
		t.Look = DarkBackground
	}
	return t
}

// Next is the theme with the next look, cyclically, including no colour.
func (t Theme) Next() Theme {
	i := int(t.Look) + 1
	if !t.Colour {
		i = 0
	}
	t, _ = t.WithLook(lookNames[i])
	return t
}

// LookName is what the look is for.
func (t Theme) LookName() string {
	if !t.Colour {
		return "none"
	}
	return [lookCount]string{"for any background", "for a dark background", "for a light background", "high contrast"}[t.Look]
}

// Glyphs returns the theme's characters. The result is shared: do not change it.
func (t Theme) Glyphs() *Glyphs {
	if t.ASCII {
		return &asciiGlyphs
	}
	return &unicodeGlyphs
}

// Style returns the style of a role: the zero Style without colour, or for a
// role that does not exist.
func (t Theme) Style(r Role) Style {
	if !t.Colour || r >= roleCount || t.Look >= lookCount {
		return Style{}
	}
	if t.Fixed {
		return fixed[t.Look][r]
	}
	return styles[t.Look][r]
}

// Paint returns words in the style of a role, made fit for the theme by [Theme.Text].
func (t Theme) Paint(r Role, words string) string {
	return t.Style(r).Render(t.Text(words))
}

// Mark returns the one-cell character that identifies a role without colour, unpainted, and " " for
// roles that have none.
func (t Theme) Mark(r Role) string {
	g := t.Glyphs()
	switch r {
	case Better:
		return g.Better
	case Worse:
		return g.Worse
	case Broken:
		return g.Broken
	case Warning:
		return g.Warning
	case Chosen:
		return g.Chosen
	case Focus:
		return g.Focus
	case Measured:
		return g.Measured
	case Derived:
		return g.Derived
	case Guessed:
		return g.Guessed
	case Needed:
		return g.Needed
	}
	return " "
}

// PaintMark returns the role's mark in the role's style; the chosen one's without the underline that
// words have.
func (t Theme) PaintMark(r Role) string {
	if r == Chosen {
		return t.Style(Title).Render(t.Mark(r))
	}
	return t.Style(r).Render(t.Mark(r))
}

// MarkLegend explains the marks, one line each, for a help page.
func (t Theme) MarkLegend() []string {
	rows := []struct {
		role Role
		text string
	}{
		{Focus, "the keys go here"}, {Chosen, "the chosen one"},
		{Better, "better for this job than the reference"}, {Worse, "worse for this job than the reference"},
		{Broken, "a limit is broken, or the input cannot be read"}, {Warning, "doubtful: look again"},
		{Measured, "measured"}, {Derived, "worked out from other values"}, {Guessed, "guessed for want of a measurement"}, {Needed, "still empty, and a figure waits for it"},
	}
	lines := make([]string, len(rows))
	for i, r := range rows {
		lines[i] = t.PaintMark(r.role) + " " + r.text
	}
	return lines
}

// Text returns words as the theme can show them: unchanged, or with an ASCII theme converted by
// [text.ASCII]. It may change the width: call it before measuring. The drawing functions of this
// package do.
func (t Theme) Text(words string) string {
	if !t.ASCII {
		return words
	}
	return text.ASCII(words)
}
