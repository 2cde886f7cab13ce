package kit_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	"github.com/lucasb-eyer/go-colorful"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// usual are the 16 colours as xterm sets them (XTerm-col.ad of xterm, from memory), by their
// names in tuitest.
var usual = map[string]string{
	"black": "#000000", "red": "#cd0000", "green": "#00cd00", "yellow": "#cdcd00", "blue": "#0000ee", "magenta": "#cd00cd", "cyan": "#00cdcd",
	"grey": "#7f7f7f", "bright red": "#ff0000", "bright green": "#00ff00", "bright yellow": "#ffff00", "bright blue": "#5c5cff", "bright magenta": "#ff00ff", "bright cyan": "#00ffff", "bright white": "#ffffff",
}

// looks with the backgrounds each is for. High contrast has no hue at all.
var looks = map[string][]string{"any": {"black", "bright white"}, "dark": {"black"}, "light": {"bright white"}, "contrast": {"black", "bright white"}}

// hueOf is the colour of a role in a look, ok false where the terminal's own is used.
func hueOf(t *testing.T, look string, role kit.Role) (hue colorful.Color, ok bool) {
	t.Helper()
	return hueIn(t, kit.Theme{}, usual, look, role)
}

// hueIn is hueOf in a theme, with a palette for those of its colours that are among the 16.
func hueIn(t *testing.T, th kit.Theme, palette map[string]string, look string, role kit.Role) (hue colorful.Color, ok bool) {
	t.Helper()
	th, known := th.WithLook(look)
	require.True(t, known)
	runs := tuitest.Runs(th.Paint(role, "ab"))
	if len(runs) == 0 {
		return hue, false
	}
	if _, n, ok := strings.Cut(runs[0].Style, "fixed "); ok {
		i, err := strconv.Atoi(n)
		require.NoError(t, err)
		hue, err = colorful.Hex(tuitest.Fixed(i))
		require.NoError(t, err)
		return hue, true
	}
	best := ""
	for name := range palette {
		if len(name) > len(best) && (runs[0].Style == name || len(runs[0].Style) > len(name) && runs[0].Style[len(runs[0].Style)-len(name)-1:] == " "+name) {
			best = name
		}
	}
	if best == "" {
		require.NotRegexp(t, "unknown", runs[0].Style)
		return hue, false
	}
	c, err := colorful.Hex(palette[best])
	require.NoError(t, err)
	return c, true
}

// luminance and contrast are those of WCAG 2.1 (W3C, 2018), definitions of relative luminance
// and contrast ratio.
func luminance(c colorful.Color) float64 {
	r, g, b := c.LinearRgb()
	return 0.2126*r + 0.7152*g + 0.0722*b
}

func contrast(a, b colorful.Color) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// Every colour stands out from the backgrounds it is for by 3:1, what WCAG 2.1 asks of large
// text and of the parts of a picture (1.4.3, 1.4.11).
func TestEveryColourIsSeenOnItsBackground(t *testing.T) {
	assert.InDelta(t, 21, contrast(colorful.Color{}, colorful.Color{R: 1, G: 1, B: 1}), 1e-9)
	for look, backgrounds := range looks {
		for role := kit.Plain; role <= kit.PhaseW; role++ {
			hue, ok := hueOf(t, look, role)
			if !ok {
				continue
			}
			require.NotEqual(t, "contrast", look, "high contrast is the terminal's own two colours")
			for _, b := range backgrounds {
				ground, err := colorful.Hex(usual[b])
				require.NoError(t, err)
				assert.GreaterOrEqual(t, contrast(hue, ground), 3.0, "%s, role %d on %s", look, role, b)
			}
		}
	}
}

// grounds are backgrounds in use by the kind of look they call for: black and white, and those of some
// popular colour schemes, from memory.
var grounds = map[string][]string{
	"black": {"#000000", "#1e1e1e", "#282828", "#002b36", "#300a24"}, "bright white": {"#ffffff", "#fdf6e3", "#eee8d5"},
}

// In a terminal of 256 colours every role with a colour, dim ones included, uses a fixed one with a
// contrast of 3:1 to black and white, and to popular backgrounds of 2.7:1 with the look for any, of 3:1
// with one for dark or light.
func TestFixedColoursAreSeenEverywhere(t *testing.T) {
	checked := 0
	for look, backgrounds := range looks {
		for role := kit.Plain; role <= kit.PhaseW; role++ {
			hue, ok := hueIn(t, kit.Theme{Fixed: true}, nil, look, role)
			if _, was := hueOf(t, look, role); was {
				require.True(t, ok, "%s: role %d has one of the 16 left", look, role)
			}
			if !ok {
				continue
			}
			for _, b := range backgrounds {
				for i, g := range grounds[b] {
					ground, err := colorful.Hex(g)
					require.NoError(t, err)
					least := 3.0
					if i > 0 && look == "any" {
						least = 2.7
					}
					checked++
					assert.GreaterOrEqual(t, contrast(hue, ground), least, "%s, role %d on %s", look, role, g)
				}
			}
		}
	}
	assert.Greater(t, checked, 100)
}

// console are the 16 colours of the kernel's own text screen (default_red and its fellows of
// the kernel's vt.c, from memory), which is black and has no more than these.
var console = map[string]string{
	"black": "#000000", "red": "#aa0000", "green": "#00aa00", "yellow": "#aa5500", "blue": "#0000aa", "magenta": "#aa00aa", "cyan": "#00aaaa",
	"grey": "#555555", "bright red": "#ff5555", "bright green": "#55ff55", "bright yellow": "#ffff55", "bright blue": "#5555ff", "bright magenta": "#ff55ff", "bright cyan": "#55ffff", "bright white": "#ffffff",
}

// On such a screen, where the look for a dark background is chosen by default, every colour is visible.
func TestColoursOfTheConsoleAreSeen(t *testing.T) {
	for role := kit.Plain; role <= kit.PhaseW; role++ {
		if hue, ok := hueIn(t, kit.Theme{}, console, "dark", role); ok {
			assert.GreaterOrEqual(t, contrast(hue, colorful.Color{}), 3.0, "role %d", role)
		}
	}
}

// blindness are the matrices, on linear RGB, of people who lack one kind of cone: Machado,
// Oliveira and Fernandes, A Physiologically-based Model for Simulation of Color Vision
// Deficiency (IEEE TVCG 15, 2009), severity 1.0, from memory.
var blindness = map[string][3][3]float64{
	"no long cones":   {{0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}},
	"no middle cones": {{0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}},
	"no short cones":  {{1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}},
	"all cones":       {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}},
}

// seenWith is a colour as such eyes perceive it.
func seenWith(m [3][3]float64, c colorful.Color) colorful.Color {
	r, g, b := c.LinearRgb()
	var out [3]float64
	for i := range m {
		out[i] = math.Min(1, math.Max(0, m[i][0]*r+m[i][1]*g+m[i][2]*b))
	}
	return colorful.LinearRgb(out[0], out[1], out[2])
}

// Colours that must be distinguished are distinct for each kind of vision: better from a broken limit,
// each of the first three curves from the others.
func TestColoursAreToldApartByAllEyes(t *testing.T) {
	pairs := [][2]kit.Role{{kit.Better, kit.Broken}, {kit.Series1, kit.Series2}, {kit.Series1, kit.Series3}, {kit.Series2, kit.Series3}, {kit.PhaseU, kit.PhaseV}, {kit.PhaseU, kit.PhaseW}, {kit.PhaseV, kit.PhaseW}}
	for eyes, m := range blindness {
		for i := range m {
			assert.InDelta(t, 1, m[i][0]+m[i][1]+m[i][2], 1e-5, "white stays white: %s", eyes)
		}
		for look := range looks {
			for _, p := range pairs {
				for _, th := range []kit.Theme{{}, {Fixed: true}} {
					a, ok := hueIn(t, th, usual, look, p[0])
					b, other := hueIn(t, th, usual, look, p[1])
					if !ok || !other {
						continue
					}
					// 0.2 is a difference of 20 in CIELAB, some eight times the just noticeable one.
					assert.Greater(t, seenWith(m, a).DistanceLab(seenWith(m, b)), 0.2, "%s, roles %v, %s, fixed %t", look, p, eyes, th.Fixed)
				}
			}
		}
	}
	red, green := seenWith(blindness["no middle cones"], colorful.Color{R: 0.6}), seenWith(blindness["no middle cones"], colorful.Color{R: 0.33, G: 0.33})
	assert.Less(t, red.DistanceLab(green), 0.2, "the check can fail")
}

// A curve is thin: its contrast to black and white is 4:1, more than text needs, and it is not the grey
// of the axes.
func TestCurvesAreSeen(t *testing.T) {
	for look, backgrounds := range looks {
		dim, _ := hueIn(t, kit.Theme{Fixed: true}, nil, look, kit.Border)
		for i := range 3 {
			hue, ok := hueIn(t, kit.Theme{Fixed: true}, nil, look, kit.Series(i))
			if !ok {
				require.Equal(t, "contrast", look)
				continue
			}
			assert.Greater(t, hue.DistanceLab(dim), 0.2, "%s: curve %d is not an axis", look, i)
			for _, b := range backgrounds {
				ground, err := colorful.Hex(usual[b])
				require.NoError(t, err)
				assert.GreaterOrEqual(t, contrast(hue, ground), 4.0, "%s: curve %d on %s", look, i, b)
			}
		}
	}
}

// Whole sentences have neither a bar behind them nor an underline, except for a broken limit where
// there is no hue at all; explanations have the weight of plain text.
func TestSentencesAreQuiet(t *testing.T) {
	for look := range looks {
		th, _ := kit.Theme{}.WithLook(look)
		for _, role := range []kit.Role{kit.Hint, kit.Warning, kit.Better, kit.Worse, kit.Guessed, kit.Title} {
			for _, run := range tuitest.Runs(th.Paint(role, "ab")) {
				assert.NotRegexp(t, "reversed|underlined", run.Style, "%s, role %d", look, role)
			}
		}
		assert.Empty(t, tuitest.Runs(th.Paint(kit.Hint, "ab")), look)
	}
}

// The marked row of a table is recognised by its mark, and its name has the weight of a heading.
func TestTheMarkedRow(t *testing.T) {
	tb := kit.Table{Margin: true, Columns: []kit.Column{{Role: kit.Label}, {Align: kit.Right}}, Rows: []kit.TableRow{
		{Focus: true, Cells: []kit.Cell{{Text: "turns"}, {Text: "17"}}}, {Cells: []kit.Cell{{Text: "wire"}, {Text: "15"}}},
	}}
	lines := tb.Body(kit.Theme{Colour: true}, 20)
	runs := tuitest.Runs(lines[0])
	require.Len(t, runs, 2, "%q", lines[0])
	assert.Equal(t, "bold", runs[1].Style)
	assert.Empty(t, tuitest.Runs(lines[1]))
}

// A hue says which trial: better, worse and a broken limit have none of the trials', so that
// what is better in B does not look like A. (In 16 colours for any background there is no
// other than red that can be read.)
func TestVerdictsHaveNoTrialsColour(t *testing.T) {
	compared := 0
	for look := range looks {
		for _, verdict := range []kit.Role{kit.Better, kit.Worse, kit.Broken} {
			a, ok := hueIn(t, kit.Theme{Fixed: true}, usual, look, verdict)
			for trial := 0; ok && trial < 4; trial++ {
				b, _ := hueIn(t, kit.Theme{Fixed: true}, usual, look, kit.Series(trial))
				assert.Greater(t, a.DistanceLab(b), 0.2, "%s: role %d and trial %d", look, verdict, trial)
				compared++
			}
		}
	}
	assert.GreaterOrEqual(t, compared, 3*2*4)
}

// Nothing is conveyed by colour alone: every coloured meaning has its own mark.
func TestEveryColouredMeaningHasItsMark(t *testing.T) {
	for _, th := range []kit.Theme{{}, {ASCII: true}} {
		seen := map[string]kit.Role{}
		for _, role := range []kit.Role{kit.Better, kit.Worse, kit.Broken, kit.Warning, kit.Chosen, kit.Focus, kit.Measured, kit.Derived, kit.Guessed, kit.Needed} {
			mark := th.Mark(role)
			other, twice := seen[mark]
			require.False(t, twice, "%q is both %d and %d", mark, role, other)
			require.NotEqual(t, " ", mark)
			seen[mark] = role
		}
	}
}

// The looks cycle, including none, and each is found by its name.
func TestLooksGoRound(t *testing.T) {
	th, seen := kit.Theme{Colour: true}, map[string]bool{}
	for range kit.LookNames() {
		seen[th.LookName()] = true
		th = th.Next()
	}
	assert.Equal(t, kit.Theme{Colour: true}, th)
	assert.Len(t, seen, len(kit.LookNames()))
	for _, name := range kit.LookNames() {
		th, ok := kit.Theme{}.WithLook(name)
		assert.True(t, ok)
		assert.Equal(t, name != "none", th.Colour, name)
	}
	for says, look := range map[string]kit.Look{"": kit.AnyBackground, "15;0": kit.DarkBackground, "0;default;15": kit.LightBackground, "12;4": kit.AnyBackground, "0": kit.DarkBackground} {
		assert.Equal(t, look, kit.Theme{}.On(says).Look, says)
	}
	_, ok := kit.Theme{}.WithLook("mauve")
	assert.False(t, ok)
}

// With a look for the terminal's background and its own colours, every role is legible as small text:
// 4.5:1 (WCAG 2.1, 1.4.3).
func TestFixedColoursOfALookAreReadAsSmallText(t *testing.T) {
	for look, b := range map[string]string{"dark": "black", "light": "bright white"} {
		ground, err := colorful.Hex(usual[b])
		require.NoError(t, err)
		for role := kit.Plain; role <= kit.PhaseW; role++ {
			if hue, ok := hueIn(t, kit.Theme{Fixed: true}, nil, look, role); ok {
				assert.GreaterOrEqual(t, contrast(hue, ground), 4.5, "%s, role %d: %s", look, role, hue.Hex())
			}
		}
	}
}

// Only what has the focus is drawn in reverse, in every look, so that nothing else looks like it.
func TestOnlyTheFocusIsReversed(t *testing.T) {
	for _, name := range kit.LookNames() {
		for _, fixed := range []bool{false, true} {
			th, _ := kit.Theme{Fixed: fixed}.WithLook(name)
			for role := kit.Role(0); role < 100; role++ {
				params := strings.Split(strings.TrimSuffix(strings.TrimPrefix(th.Style(role).Start(), "\x1b["), "m"), ";")
				assert.Equal(t, role == kit.Focus && th.Colour, slices.Contains(params, "7"), "%s: role %d", name, role)
			}
		}
	}
}
