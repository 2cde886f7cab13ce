package wiretable

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBundleAddsUp(t *testing.T) {
	g18, g20 := mustParse(t, "18"), mustParse(t, "20")
	b := OfTwo(2, g18, 1, g20)
	assert.Equal(t, "2 × 18 AWG + 1 × 20 AWG", b.String())
	assert.Equal(t, 3, b.Count())
	assert.InEpsilon(t, 2*g18.AreaMM2(Heavy)+g20.AreaMM2(Heavy), b.AreaMM2(Heavy), 1e-12)
	// MW 1000 heavy: 0.0431 and 0.0346 in over.
	want := (2*0.0431*0.0431 + 0.0346*0.0346) * mmPerInch * mmPerInch
	assert.InEpsilon(t, want, b.SquareMM2(Heavy), 1e-9)
	assert.Equal(t, g18.OverallMM(Heavy).MaxMM, b.ThickestMM(Heavy))
	assert.Equal(t, []Strand{{g18, 2}, {g20, 1}}, b.Parts())
	assert.Equal(t, OfTwo(2, g18, 1, g20), b)
}

func TestBundleKeepsItsForm(t *testing.T) {
	g := mustParse(t, "18")
	assert.Equal(t, Of(3, g), OfTwo(1, g, 2, g))
	assert.Equal(t, Of(3, g), OfTwo(0, mustParse(t, "20"), 3, g))
	assert.Equal(t, "1 × 18 AWG", Of(1, g).String())
	for _, none := range []Bundle{{}, Of(0, g), Of(-1, g), Of(1, Gauge{}), Of(100, g), OfTwo(60, g, 60, mustParse(t, "20")), Of(math.MaxInt, g), OfTwo(math.MaxInt, g, math.MaxInt, g)} {
		assert.True(t, none.IsZero())
		assert.Equal(t, Bundle{}, none)
		assert.Empty(t, none.String())
		assert.Nil(t, none.Parts())
		assert.Zero(t, none.AreaMM2(Heavy))
		assert.Zero(t, none.SquareMM2(Heavy))
	}
}

func TestParseBundle(t *testing.T) {
	for text, want := range map[string]string{
		"18 AWG": "1 × 18 AWG", "2x18": "2 × 18 AWG", "2 X 0,71 mm": "2 × 0.71 mm",
		"2 × 18 AWG + 1 × 20 AWG": "2 × 18 AWG + 1 × 20 AWG", "2*18 awg+20 awg": "2 × 18 AWG + 1 × 20 AWG",
		"1 x 18 + 2 x 18": "3 × 18 AWG",
	} {
		b, err := ParseBundle(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, b.String())
	}
	for _, text := range []string{"", "x", "0 x 18", "100 x 18", "60 x 18 + 60 x 20", "18+19+20", "2 x", "-2 x 18", "2xx18", "1.5 x 18", "18 +"} {
		_, err := ParseBundle(text)
		var parse *ParseError
		require.ErrorAs(t, err, &parse, text)
	}
}

func TestBundleInJSON(t *testing.T) {
	b := OfTwo(2, mustParse(t, "18"), 1, mustParse(t, "20"))
	text, err := json.Marshal(b)
	require.NoError(t, err)
	assert.JSONEq(t, `"2 × 18 AWG + 1 × 20 AWG"`, string(text))
	var back Bundle
	require.NoError(t, json.Unmarshal(text, &back))
	assert.Equal(t, b, back)
}
