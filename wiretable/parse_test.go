package wiretable

import (
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func pow10(x float64) float64 { return math.Pow(10, x) }

func TestParseReadsWhatPeopleType(t *testing.T) {
	for text, want := range map[string]string{
		"18 AWG": "18 AWG", "18awg": "18 AWG", "AWG 18": "18 AWG", "#18": "18 AWG", "18": "18 AWG",
		" awg  #18 ": "18 AWG", "18.5": "18.5 AWG", "18,5": "18.5 AWG", "2.5 awg": "2.5 AWG", "0.5 AWG": "0.5 AWG",
		"18.0 AWG": "18 AWG", "18.0": "18 AWG",
		"2/0": "2/0 AWG", "00": "2/0 AWG", "0000": "4/0 AWG", "4/0": "4/0 AWG", "0": "0 AWG", "1/0 awg": "0 AWG",
		"19 SWG": "19 SWG", "swg 19": "19 SWG", "7/0 swg": "7/0 SWG", "19swg": "19 SWG",
		"0.71 mm": "0.71 mm", "0,71mm": "0.71 mm", ".71mm": "0.71 mm", "0.710 MM": "0.71 mm",
		"0.0403 in": "0.0403 in", "40.3 mil": "0.0403 in", "40.3 thou": "0.0403 in", "40.3 mils": "0.0403 in", "0.0403 inches": "0.0403 in", "0.71 millimetres": "0.71 mm", `0.0403"`: "0.0403 in",
		"0.75 mm over": "0.75 mm over", "0.75mm over enamel": "0.75 mm over", "43.1 mil over": "0.0431 in over",
		"IEC 0.71": "IEC 0.71 mm", "iec 0,71 mm": "IEC 0.71 mm", "0.71 mm IEC": "IEC 0.71 mm",
		"0.50 ±0.02 mm": "0.5 ±0.02 mm", "0.5 mm ±0.02": "0.5 ±0.02 mm", "0.5mm+/-4%": "0.5 ±0.02 mm", "0.75 ±0.01 mm over": "0.75 ±0.01 mm over",
		"0.75 mm over ±0.01 mm": "0.75 ±0.01 mm over", "40 ±0.5 mil": "0.04 ±0.0005 in", "0,5 ±0,02 mm": "0.5 ±0.02 mm",
		"10 mm": "10 mm", "1 mm": "1 mm",
	} {
		g, err := Parse(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, g.String(), text)
		again, err := Parse(g.String())
		require.NoError(t, err)
		assert.Equal(t, g, again, text)
	}
}

func TestParseRefusesWithAdvice(t *testing.T) {
	for text, advice := range map[string]string{
		"0.71":                   `"0.71 mm"`,
		"2.5":                    `"2.5 mm"`,
		"9.0":                    `"9 mm"`,
		"18.25":                  "usual",
		"0.07 over":              `"0.07 mm over"`,
		"18 gauge":               `"18 AWG" (American) or "18 SWG" (imperial)`,
		"18ga":                   `"18 SWG"`,
		"2x0.8 mm":               `write "0.8 mm" and 2 strands`,
		"2 × 18 AWG":             `write "18 AWG" and 2 strands`,
		"18 AWG ±0.5":            "a gauge has no ±",
		"0.5 mm ±":               `"0.50 ±0.02 mm"`,
		"0.5 mm ±0.6 mm":         `"0.50 ±0.02 mm"`,
		"0.5 mm ±0.001 in":       "the same unit",
		"±0.1 mm":                "18 AWG",
		"51":                     "50",
		"5/0":                    "4/0",
		"18.25 AWG":              "half sizes",
		"19.5 SWG":               "whole sizes",
		"8/0 SWG":                "7/0",
		"51 SWG":                 "50",
		"IEC 0.72":               `"IEC 0.71 mm"`,
		"IEC 9999999":            "0.018 to 5 mm",
		"18 AWG over":            "bare wire",
		"0.001 mm":               "0.01 to 15 mm",
		"20 mm":                  "0.01 to 15 mm",
		"17 mm over":             "0.01 to 16 mm",
		"99999999 in":            "0.01 to 15 mm",
		"0 mm":                   "0.01 to 15 mm",
		"":                       "18 AWG",
		"mm":                     "18 AWG",
		"NaN mm":                 "18 AWG",
		"Inf":                    "18 AWG",
		"-18":                    "18 AWG",
		"1e3 mm":                 "18 AWG",
		"0.7.1 mm":               "18 AWG",
		"wire":                   "18 AWG",
		"AWG":                    "18 AWG",
		"#":                      "18 AWG",
		"0x10 mm":                "18 AWG",
		"1_0 mm":                 "18 AWG",
		"\x00\x80 awg":           "18 AWG",
		strings.Repeat("1", 500): "18 AWG",
	} {
		g, err := Parse(text)
		var parse *ParseError
		require.True(t, errors.As(err, &parse), "%q gave %v, %v", text, g, err)
		assert.Zero(t, g)
		if advice != "usual" {
			assert.Contains(t, err.Error(), advice, text)
		}
		assert.Less(t, len(err.Error()), 400)
		assert.Equal(t, "a wire size", parse.Expected)
	}
}

func TestEverySizeRoundTrips(t *testing.T) {
	for n := awgFirst; n <= awgLast; n++ {
		if n%2 != 0 && n < 0 {
			continue // half sizes thicker than 0 are not named
		}
		g := Gauge{system: AWG, n: int32(n)}
		assert.Equal(t, g, mustParse(t, g.String()))
	}
	for _, s := range []System{SWG, IEC} {
		for _, g := range Sizes(s) {
			assert.Equal(t, g, mustParse(t, g.String()))
			text, err := g.MarshalText()
			require.NoError(t, err)
			var back Gauge
			require.NoError(t, back.UnmarshalText(text))
			assert.Equal(t, g, back)
		}
	}
}

func TestMarshalledNothingIsZero(t *testing.T) {
	g, b, m, bundle := mustParse(t, "18"), Triple, Aluminium, Of(2, mustParse(t, "18"))
	require.NoError(t, g.UnmarshalText(nil))
	require.NoError(t, b.UnmarshalText(nil))
	require.NoError(t, m.UnmarshalText(nil))
	require.NoError(t, bundle.UnmarshalText(nil))
	assert.True(t, g.IsZero())
	assert.Equal(t, Heavy, b)
	assert.Equal(t, Copper, m)
	assert.True(t, bundle.IsZero())
	require.Error(t, g.UnmarshalText([]byte("x")))
	require.Error(t, b.UnmarshalText([]byte("x")))
	require.Error(t, m.UnmarshalText([]byte("x")))
	require.Error(t, bundle.UnmarshalText([]byte("?")))
}

func TestBuildsAndMetalsRoundTrip(t *testing.T) {
	require.Len(t, Builds(), int(buildCount))
	for _, b := range Builds() {
		text, _ := b.MarshalText()
		back, err := ParseBuild(string(text))
		require.NoError(t, err)
		assert.Equal(t, b, back)
	}
	for _, m := range Metals() {
		text, _ := m.MarshalText()
		back, err := ParseMetal(string(text))
		require.NoError(t, err)
		assert.Equal(t, m, back)
	}
	grade, err := ParseBuild(" Grade-2 ")
	require.NoError(t, err)
	assert.Equal(t, Grade2, grade)
	_, err = ParseBuild("quadruple")
	require.ErrorContains(t, err, "grade 1")
	_, err = ParseMetal("silver")
	require.ErrorContains(t, err, "aluminium")
	assert.Equal(t, "unknown build", Build(99).String())
	assert.Equal(t, "unknown metal", Metal(99).String())
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"18 AWG", "#18", "18.5", "2/0", "0000", "19 SWG", "0,71mm", "40.3 mil", "0.75 mm over", "IEC 0.71",
		"0.71", "", "NaN", "1e9 mm", "９ mm", "0.0000000001 in", "iec", "over", "/0 awg", "\xff", "İ mm", "000000/0",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		g, err := Parse(text)
		if err != nil {
			require.Zero(t, g)
			return
		}
		again, err := Parse(g.String())
		require.NoError(t, err, g.String())
		require.Equal(t, g, again)
		for _, b := range Builds() {
			d := g.BareMM(b)
			require.True(t, d > 0 && d < 17, "%s %v", g, d)
			o := g.OverallMM(b)
			require.True(t, o.NominalMM >= d*(1-1e-9) && o.MaxMM >= o.NominalMM && o.MaxMM < 20, "%s %+v", g, o)
		}
		for _, s := range Systems() {
			require.False(t, g.Nearest(s).IsZero() && g.BareMM(Heavy) >= minBareMM && g.BareMM(Heavy) <= maxBareMM, "%s %s", g, s)
		}
	})
}

func FuzzParseWords(f *testing.F) {
	for _, seed := range []string{"grade 2", "G1", "heavy", "cu", "aluminium", "2 x 18 AWG + 1 x 20 AWG", "3×0.5 mm over", "x", "+", "99 x 18", "2xx18", "1*0.71mm+IEC 0.5"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if b, err := ParseBuild(text); err == nil {
			back, err := ParseBuild(b.String())
			require.NoError(t, err)
			require.Equal(t, b, back)
		}
		if m, err := ParseMetal(text); err == nil {
			require.NotContains(t, m.String(), "unknown")
		}
		if bundle, err := ParseBundle(text); err == nil {
			require.Positive(t, bundle.Count())
			back, err := ParseBundle(bundle.String())
			require.NoError(t, err, bundle.String())
			require.Equal(t, bundle, back)
		}
	})
}

// A system by its first letter, before the number or behind it, is the system; a bare number
// over the enamel is in millimetres.
func TestParseTakesFirstLetters(t *testing.T) {
	for typed, whole := range map[string]string{
		"a18": "18 AWG", "19a": "19 AWG", "S21": "21 SWG", "21 s": "21 SWG", "i0.71": "IEC 0.71", "A4/0": "4/0 AWG", "i0,71": "IEC 0.71", "0.75 over": "0.75 mm over",
	} {
		got, err := Parse(typed)
		require.NoError(t, err, typed)
		want, err := Parse(whole)
		require.NoError(t, err, whole)
		assert.Equal(t, want, got, typed)
	}
	for _, text := range []string{"x18", "a", "i", "s", "x 0.75 over"} {
		_, err := Parse(text)
		assert.Error(t, err, text)
	}
}
