package text

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestClean(t *testing.T) {
	for in, want := range map[string]string{
		"plain Ω":               "plain Ω",
		"a\r\nb\nc\td":          "a b c    d",
		"\x1b[31mred\x1b[0m":    "red",
		"\x1b]0;own\x07title":   "title",
		"\x1b[2Jx\x00y\a":       "xy",
		"a\u202eb\u200dc\ufe0f": "abc",
		"bad\xffbyte":           "bad\ufffdbyte",
		"\x1b":                  "",
		"\u0301a b \u0301c":     "a b c",
		"e\u0301 stays":         "e\u0301 stays",
	} {
		assert.Equal(t, want, Clean(in), "%q", in)
		assert.Equal(t, want == in, IsClean(in), "%q", in)
	}
}

func TestASCII(t *testing.T) {
	assert.Equal(t, "0.17 ohm, 72 +/-2 mm2, 18 degC, 30 deg, 2 x 0.71, I*sqrt(R), 3 N.m, uH, ?", ASCII("0.17 Ω, 72 ±2 mm², 18 °C, 30°, 2 × 0.71, I·√(R), 3 N·m, µH, 線"))
	assert.Equal(t, "Mueller Angstroem cafe Lodz Zizek strasse 1 kg A", ASCII("Müller Ångström café Łódź Žižek straße 1 ㎏ Ａ"))
	assert.Equal(t, "Mueller cafe", ASCII("Mu\u0308ller cafe\u0301"), "accents set apart are accents too")
	assert.Equal(t, "? ?", ASCII("한 \ufffd"), "one question mark for one character")
}

// Widths of Unicode Standard Annex 11: East Asian wide characters 2, accents none.
func TestWidthCutFit(t *testing.T) {
	for s, want := range map[string]int{"": 0, "abc": 3, "Ω²": 2, "日本": 4, "e\u0301": 1, "🚲": 2, "Ａ": 2} {
		assert.Equal(t, want, Width(s), s)
	}
	assert.Equal(t, "日", Cut("日本", 3, ""))
	assert.Equal(t, "12…", Cut("12345", 3, "…"))
	assert.Equal(t, "日… ", Fit("日本語", 4, "…"), "a character of two columns does not stick out")
	assert.Equal(t, "ab  ", Fit("ab", 4, "…"))
	assert.Equal(t, "  日", PadLeft("日", 4))
	assert.Equal(t, "abcde", Pad("abcde", 3))
}

func TestWrap(t *testing.T) {
	assert.Equal(t, []string{"one two", "three"}, Wrap("one  two three", 8))
	assert.Equal(t, []string{"a", "bcde", "f"}, Wrap("a bcdef", 4))
	assert.Equal(t, []string{""}, Wrap(" ", 9))
}

// Whatever comes in, what goes out is harmless, the same when cleaned again, and within
// its columns.
func FuzzText(f *testing.F) {
	for _, s := range []string{"", "a", "some words to wrap here", strings.Repeat("x", 99), "長い長い長い長い", "é́́ combining", "a\tb\nc",
		"\x1b]11;?\x07", "\x1b\x1b[0m", "\u009b31m", "🇩🇪🇩", "👩‍🚀x 🏻", "\xff\xfe", "ก ำ"} {
		f.Add(s, 10)
	}
	f.Fuzz(func(t *testing.T, s string, n int) {
		n = 2 + (n%200+200)%200
		clean := Clean(s)
		require.True(t, utf8.ValidString(clean))
		require.True(t, IsClean(clean), "%q", clean)
		for _, r := range clean {
			require.False(t, r < 0x20 || r >= 0x7f && r < 0xa0, "%q", clean)
		}
		lines := Wrap(clean, n)
		for _, line := range lines {
			require.LessOrEqual(t, Width(line), n, "%q", line)
		}
		require.Equal(t, strings.Join(strings.Fields(clean), ""), strings.Join(strings.Fields(strings.Join(lines, "")), ""))
		require.Equal(t, n, Width(Fit(clean, n, "…")), "%q", clean)
		require.NotRegexp(t, `[^ -~]`, ASCII(clean))
	})
}
