package kit

import "strings"

// reset ends every styled piece of text.
const reset = "\x1b[0m"

// Style is a prebuilt way to draw text. The zero Style draws it as it is. lipgloss is not used here: a
// prebuilt sequence costs a thirtieth of one of its Render calls and involves no hidden colour profile.
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

// Look is a set of colours, for a background or for a reader's eyes.
type Look uint8

// The looks. AnyBackground is the zero value: its colours are readable on black and on white.
const (
	AnyBackground Look = iota
	DarkBackground
	LightBackground
	HighContrast
	lookCount
)

// lookNames are the names of the looks, and last that of a theme without colour.
var lookNames = [lookCount + 1]string{"any", "dark", "light", "contrast", "none"}

// LookNames are the names that [Theme.WithLook] knows.
func LookNames() []string { return lookNames[:] }

// styles are the SGR sequences by look and role for terminals of 16 colours: attributes and these only,
// so that the person's own palette decides; see fixedHues for the others. A hue says which trial or
// phase: no trial has that of better, worse or a broken limit. Better is bolder than worse, and green,
// or bluish where that is readable; their marks say the rest. Faint is used instead of bright black for
// what is less important, since some palettes set that to the background.
var styles = [lookCount][roleCount]Style{
	AnyBackground: {
		Title: sgr("1"), Value: sgr("1"), Unit: sgr("2"),
		Warning: sgr("1;35"), Broken: sgr("1;31"), Better: sgr("1"),
		Chosen: sgr("1;4"), Focus: sgr("7"), Dim: sgr("2"), Border: sgr("2"), Key: sgr("1"),
		Measured: sgr("94"), Derived: sgr("2"), Guessed: sgr("35"), Needed: sgr("1;35"),
		Series1: sgr("94"), Series2: sgr("31"), Series3: sgr("90"), Series4: sgr("95"), Series5: sgr("35"), Series6: sgr("91"),
		PhaseU: sgr("1;94"), PhaseV: sgr("31"), PhaseW: sgr("90"),
	},
	DarkBackground: {
		Title: sgr("1"), Value: sgr("1"), Unit: sgr("2"),
		Warning: sgr("1;93"), Broken: sgr("1;91"), Better: sgr("1;92"),
		Chosen: sgr("1;4"), Focus: sgr("7"), Dim: sgr("2"), Border: sgr("2"), Key: sgr("1;36"),
		Measured: sgr("96"), Derived: sgr("2"), Guessed: sgr("95"), Needed: sgr("1;95"),
		Series1: sgr("94"), Series2: sgr("33"), Series3: sgr("97"), Series4: sgr("95"), Series5: sgr("96"), Series6: sgr("91"),
		PhaseU: sgr("1;94"), PhaseV: sgr("33"), PhaseW: sgr("97"),
	},
	LightBackground: {
		Title: sgr("1"), Value: sgr("1"), Unit: sgr("2"),
		Warning: sgr("1;35"), Broken: sgr("1;31"), Better: sgr("1"),
		Chosen: sgr("1;4"), Focus: sgr("7"), Dim: sgr("2"), Border: sgr("2"), Key: sgr("1;34"),
		Measured: sgr("34"), Derived: sgr("2"), Guessed: sgr("35"), Needed: sgr("1;35"),
		Series1: sgr("34"), Series2: sgr("31"), Series3: sgr("30"), Series4: sgr("95"), Series5: sgr("35"), Series6: sgr("91"),
		PhaseU: sgr("1;34"), PhaseV: sgr("31"), PhaseW: sgr("30"),
	},
	HighContrast: {
		Title: sgr("1"), Value: sgr("1"), Warning: sgr("1"), Broken: sgr("1"), Better: sgr("1"),
		Chosen: sgr("1;4"), Focus: sgr("7"), Key: sgr("1"), Needed: sgr("1"),
		Series1: sgr("1"), Series3: sgr("1"), Series5: sgr("1"), PhaseU: sgr("1"), PhaseW: sgr("4"),
	},
}

func sgr(params string) Style { return Style{on: "\x1b[" + params + "m"} }

// fixedHues replace the 16 colours in a terminal of 256: colours from 16 on, which are the same
// everywhere (a cube of 6 levels per primary, and greys). With them every role has a contrast of 3:1
// with black and white, and with the greys, browns and creams that people set instead, where palettes
// of 16 fall short on one or the other. Faint becomes a grey, since some terminals do not draw it and
// some draw nothing.
var fixedHues = [lookCount]map[string]string{
	AnyBackground:   {"2": "243", "94": "63", "31": "160", "90": "243", "35": "164", "95": "133", "91": "166"},
	DarkBackground:  {"92": "120", "2": "245", "36": "80", "93": "221", "91": "203", "94": "111", "33": "179", "97": "255", "95": "213", "96": "123"},
	LightBackground: {"2": "241", "34": "26", "35": "127", "31": "124", "30": "235", "95": "128", "91": "160"},
}

// fixedRoles are roles for which the 16 have no readable free colour: their green is too pale on white,
// and their red is a broken limit's.
var fixedRoles = [lookCount]map[Role]string{
	AnyBackground:   {Better: "1;38;5;65", Series2: "38;5;130", PhaseV: "38;5;130", Series3: "38;5;30", PhaseW: "38;5;30"},
	LightBackground: {Better: "1;38;5;29", Series2: "38;5;130", PhaseV: "38;5;130"},
}

// fixed are the styles in those colours.
var fixed = fixedStyles()

func fixedStyles() (out [lookCount][roleCount]Style) {
	for look := range out {
		for role, style := range styles[look] {
			if style.on == "" {
				continue
			}
			params := strings.Split(strings.Trim(style.on, "\x1b[m"), ";")
			for i, p := range params {
				if hue, ok := fixedHues[look][p]; ok {
					params[i] = "38;5;" + hue
				}
			}
			out[look][role] = sgr(strings.Join(params, ";"))
		}
		for role, params := range fixedRoles[look] {
			out[look][role] = sgr(params)
		}
	}
	return out
}
