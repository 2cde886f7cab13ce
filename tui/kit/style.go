package kit

import "strings"

// reset ends every styled piece of text.
const reset = "\x1b[0m"

// Style is a prebuilt way to draw text. The zero Style draws it as it is.
// lipgloss is not used here: a prebuilt sequence costs a thirtieth of one of its
// Render calls and works out no profile behind our back.
type Style struct {
	on string
}

// Render returns text in this style. Styles nested inside text come back to
// this one after their own end. Empty text stays empty.
func (s Style) Render(text string) string {
	if s.on == "" || text == "" {
		return text
	}
	if strings.Contains(text, reset) {
		text = strings.ReplaceAll(text, reset, reset+s.on)
	}
	return s.on + text + reset
}

// Start returns the sequence that begins the style, for drawing that manages
// its own runs, and "" for the zero Style. End such a run with [Style.End].
func (s Style) Start() string { return s.on }

// End returns the sequence that ends the style, "" for the zero Style.
func (s Style) End() string {
	if s.on == "" {
		return ""
	}
	return reset
}

// colourStyles are the SGR sequences by role: attributes and the 16 ANSI
// colours only, so that the person's own palette decides what is readable on
// their background. Better and worse are a blue and an orange, which people who
// confuse red and green can tell apart. Faint is used instead of bright black,
// which some palettes set to the background.
var colourStyles = [roleCount]Style{
	Title:    sgr("1"),
	Label:    {},
	Value:    sgr("1"),
	Unit:     sgr("2"),
	Hint:     sgr("36"),
	Warning:  sgr("1;33"),
	Broken:   sgr("1;31"),
	Better:   sgr("1;94"),
	Worse:    sgr("33"),
	Chosen:   sgr("1;4"),
	Focus:    sgr("7"),
	Dim:      sgr("2"),
	Border:   sgr("2"),
	Key:      sgr("1;36"),
	Measured: sgr("1;32"),
	Derived:  sgr("2"),
	Guessed:  sgr("35"),
	Series1:  sgr("94"),
	Series2:  sgr("33"),
	Series3:  sgr("35"),
	Series4:  sgr("36"),
	Series5:  sgr("32"),
	Series6:  sgr("31"),
	PhaseU:   sgr("1;94"),
	PhaseV:   sgr("33"),
	PhaseW:   sgr("1;35"),
}

func sgr(params string) Style { return Style{on: "\x1b[" + params + "m"} }
