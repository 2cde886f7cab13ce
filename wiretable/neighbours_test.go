package wiretable

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSizesAreWholeAndFallFromThickToThin(t *testing.T) {
	counts := map[System]int{AWG: 54, SWG: 57, IEC: len(iecRows), MetricDiameter: 0, InchDiameter: 0}
	for s, want := range counts {
		sizes := Sizes(s)
		require.Len(t, sizes, want, s.String())
		for i := 1; i < len(sizes); i++ {
			assert.Greater(t, sizes[i-1].BareMM(Heavy), sizes[i].BareMM(Heavy), sizes[i].String())
		}
	}
	assert.Equal(t, "4/0 AWG", Sizes(AWG)[0].String())
	assert.Equal(t, "50 AWG", Sizes(AWG)[53].String())
	assert.Equal(t, "7/0 SWG", Sizes(SWG)[0].String())
	assert.Equal(t, "IEC 5 mm", Sizes(IEC)[0].String())
}

func TestNeighboursStepOneSize(t *testing.T) {
	for _, s := range []System{AWG, SWG, IEC} {
		sizes := Sizes(s)
		for i := 1; i < len(sizes); i++ {
			up, ok := sizes[i].Thicker()
			require.True(t, ok)
			assert.Equal(t, sizes[i-1], up)
			down, ok := sizes[i-1].Thinner()
			require.True(t, ok)
			assert.Equal(t, sizes[i], down)
		}
		_, ok := sizes[0].Thicker()
		assert.False(t, ok)
		_, ok = sizes[len(sizes)-1].Thinner()
		assert.False(t, ok)
	}
	_, ok := Gauge{}.Thicker()
	assert.False(t, ok)
	_, ok = Gauge{}.Thinner()
	assert.False(t, ok)
}

func TestNeighboursOfMeasuredAndHalfSizes(t *testing.T) {
	for _, c := range []struct{ size, thicker, thinner string }{
		{"18.5", "18 AWG", "19 AWG"},
		{"0.72 mm", "IEC 0.75 mm", "IEC 0.71 mm"},
		{"0.71 mm", "IEC 0.75 mm", "IEC 0.67 mm"},
		{"0.0403 in", "17 AWG", "19 AWG"},
		{"0.0431 in over", "17 AWG", "19 AWG"},
	} {
		up, ok := mustParse(t, c.size).Thicker()
		require.True(t, ok)
		assert.Equal(t, c.thicker, up.String())
		down, ok := mustParse(t, c.size).Thinner()
		require.True(t, ok)
		assert.Equal(t, c.thinner, down.String())
	}
}

func TestNearest(t *testing.T) {
	for _, c := range []struct {
		size   string
		system System
		want   string
	}{
		{"18 AWG", SWG, "19 SWG"}, // 1.024 mm against 1.016
		{"18 AWG", IEC, "IEC 1 mm"},
		{"18 AWG", MetricDiameter, "1.024 mm"},
		{"18 AWG", InchDiameter, "0.0403 in"},
		{"18 AWG", AWG, "18 AWG"},
		{"0.0431 in over", AWG, "18 AWG"},
		{"0.0431 in over", InchDiameter, "0.0403 in"},
		{"22 SWG", IEC, "IEC 0.71 mm"},
		{"0.079 mm", AWG, "40 AWG"},
		{"15 mm", SWG, "7/0 SWG"},
	} {
		assert.Equal(t, c.want, mustParse(t, c.size).Nearest(c.system).String(), "%s in %s", c.size, c.system)
	}
	assert.True(t, Gauge{}.Nearest(AWG).IsZero())
	assert.True(t, mustParse(t, "18").Nearest(0).IsZero())
	assert.True(t, NearestToMM(math.NaN(), AWG).IsZero())
	assert.True(t, NearestToMM(math.Inf(1), IEC).IsZero())
}
