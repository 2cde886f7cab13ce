package drawing

import (
	"encoding/xml"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hostile are names that try to break out of the page, or out of their cell.
var hostile = []string{
	`</text><script>alert(1)</script>`, `"><image href="http://example.org/x.png"/>`, "a & b < c > d 'e'", "]]>", "<!--", "&#x0;&lol;",
	"\x1b[31mred\x1b[0m", "right \u202e to left", "tower e" + strings.Repeat("\u0301", 200), strings.Repeat("W", 4000),
	strings.Repeat("long words ", 300), strings.Repeat("\ufdfd", 40), "日本語の仕事", "שלום עולם", "🚲👩‍🚀🇩🇪", "\u200b", "tab\tand\nline", "\\u0000", "{{.}}", "%s%d%!",
}

// Job, trial and note names stay in their places, whatever they contain.
func TestHostileNames(t *testing.T) {
	for _, name := range hostile {
		text := machines[0].text(t)
		text = strings.Replace(text, `name = "Hill rotor"`, "name = "+tomlString(name), 1)
		text = strings.Replace(text, `name = "A"`, "name = "+tomlString(name), 1)
		require.NotEqual(t, machines[0].text(t), text)
		b, o, _ := drawn(t, text, Options{Paper: Letter}, Slot)
		require.NotContains(t, o.Job, "Hill rotor")
		for _, ascii := range []bool{false, true} {
			for _, p := range Pages(b, o, 0, All, Options{Paper: Letter, ASCII: ascii}) {
				svg := holdsTogether(t, p)
				assert.NotContains(t, svg, "<script")
				assert.NotContains(t, svg, "<image")
				assert.NotContains(t, svg, "\x1b")
				assert.NotContains(t, svg, "\u202e")
				assert.Less(t, strings.Count(svg, "\u0301"), 20)
				if ascii {
					assert.NotRegexp(t, `[^\n -~]`, svg)
				}
			}
		}
	}
}

// tomlString is a basic string of TOML.
func tomlString(s string) string {
	var b strings.Builder
	for _, r := range s {
		if r < ' ' || r == '"' || r == '\\' || r == 0x7f {
			fmt.Fprintf(&b, `\u%04X`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return `"` + b.String() + `"`
}

// Written text is what an XML reader gets back.
func TestWordsComeBack(t *testing.T) {
	c := canvas{paper: A4}
	for _, s := range []string{`a < b & "c" > 'd'`, "]]> Ω ² ±", "x"} {
		c.say(words{text: s, at: point{20, 20}, size: 3, anchor: fromLeft})
		p := Page{canvas: c}
		svg, err := p.SVG()
		require.NoError(t, err)
		var got struct {
			Texts []string `xml:"g>text"`
		}
		require.NoError(t, xml.Unmarshal([]byte(svg), &got))
		assert.Equal(t, s, got.Texts[len(got.Texts)-1])
	}
}

// The widths are those of the tables; letters missing from them count as wide, and one that no face
// here has is fitted to its width by the viewer.
func TestTextWidth(t *testing.T) {
	for s, em := range map[string]float64{"": 0, "0": 0.637, "W": 0.989, "il": 0.556, "Ω": 1.1, "e\u0301": 0.616} {
		w, told := textWidth(s, 10, false)
		assert.InDelta(t, 10*em, w, 1e-9, s)
		assert.False(t, told, s)
	}
	w, told := textWidth("\ufdfd", 10, true)
	assert.InDelta(t, 11, w, 1e-9)
	assert.True(t, told)
	for i := range upright {
		assert.GreaterOrEqual(t, upright[i], 275)
		assert.GreaterOrEqual(t, heavy[i], upright[i]-41, "only @ is wider upright")
	}
}

// Every letter's width is the larger of the two published faces', to the next thousandth.
func TestLettersAreAsWideAsInPublishedFaces(t *testing.T) {
	rows := published.Rows(t, "drawings/advances.csv")
	require.Len(t, rows, len(upright))
	for i, row := range rows {
		require.Equal(t, fmt.Sprintf("U+%04X", ' '+i), row["letter"])
		assert.InDelta(t, max(row.Number(t, "dejavu"), row.Number(t, "liberation")), upright[i], 1, "%c", ' '+i)
		assert.InDelta(t, max(row.Number(t, "dejavu_bold"), row.Number(t, "liberation_bold")), heavy[i], 1, "%c bold", ' '+i)
	}
}

func TestCutAndWrap(t *testing.T) {
	assert.Equal(t, "abc", cutTo("abc", 3, false, 100))
	assert.Equal(t, "", cutTo("abc", 3, false, 1))
	for _, width := range []float64{5, 10, 33.3} {
		for _, s := range append(hostile, "some words to be broken into lines") {
			for _, line := range append(wrapTo(s, 3, width), cutTo(s, 3, false, width)) {
				w, _ := textWidth(line, 3, false)
				assert.LessOrEqual(t, w, width)
			}
		}
	}
	assert.Equal(t, "some words to be broken", strings.Join(wrapTo("some words to be broken", 3, 20), " "))
}

func TestBoxes(t *testing.T) {
	b := box{0, 0, 10, 10}
	assert.True(t, b.meets(box{9, 9, 20, 20}))
	assert.False(t, b.meets(box{10, 0, 20, 10}), "edges touch")
	assert.True(t, b.crosses(point{-5, 5}, point{15, 5}))
	assert.True(t, b.crosses(point{-5, -1}, point{15, 9}))
	assert.False(t, b.crosses(point{-5, 11}, point{15, 12}))
	assert.False(t, b.crosses(point{11, -5}, point{11, 15}))
	assert.True(t, b.crosses(point{4, 4}, point{5, 5}), "within")
	assert.False(t, b.crosses(point{-5, 6}, point{4.9, 16}), "past the corner")
}

// A line cut at two verticals: the pieces, and that together with the part left out they are as long as
// the line.
func TestClip(t *testing.T) {
	line := []point{{-5, 0}, {5, 10}, {15, 0}, {5, -10}}
	assert.Equal(t, [][]point{{{0, 5}, {5, 10}, {10, 5}}, {{10, -5}, {5, -10}}}, clipX(line, 0, 10))
	assert.Equal(t, [][]point{line}, clipX(line, -100, 100))
	assert.Empty(t, clipX(line, 20, 30))
	assert.Empty(t, clipX([]point{{10, 0}, {10, 5}}, 0, 10), "an upright at the end belongs to the next page")
	assert.Len(t, clipX([]point{{0, 0}, {0, 5}}, 0, 10), 1)
}

func TestAxis(t *testing.T) {
	for _, c := range []struct{ low, high, step, from, to float64 }{{0, 651, 100, 0, 700}, {0, 23.6, 5, 0, 25}, {-0.4, 3, 0.5, -0.5, 3}, {0, 0, 0.2, 0, 1}} {
		a := newAxis(c.low, c.high, 8, 0, 100)
		assert.InDelta(t, c.step, a.step, 1e-9, c)
		assert.InDelta(t, c.from, a.low, 1e-9, c)
		assert.InDelta(t, c.to, a.high, 1e-9, c)
		ticks := a.ticks()
		assert.InDelta(t, a.high, ticks[len(ticks)-1], 1e-9)
		assert.InDelta(t, 100, a.at(a.high), 1e-9)
	}
}

func TestNames(t *testing.T) {
	p, err := ParsePaper("Letter")
	require.NoError(t, err)
	assert.Equal(t, Letter, p)
	_, err = ParsePaper("a3")
	assert.ErrorContains(t, err, "expected a4 or letter")
	s, err := ParseSheets("all")
	require.NoError(t, err)
	assert.Equal(t, All, s)
	_, err = ParseSheets("side")
	assert.ErrorContains(t, err, `read "side", expected unrolled`)
	assert.Equal(t, "-0.5", mm(-0.5))
	assert.Equal(t, "0", mm(-0.001))
	assert.Equal(t, strconv.Itoa(297), mm(297))
}
