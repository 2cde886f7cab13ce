package wound

import (
	"strconv"
	"testing"

	"slotwright/winding/published"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The limits applied to a finished winding are those of testdata/bench/limits.csv: ANSI/EASA AR100-2020
// and IEEE 43-2013 as its rows quote them.
func TestBenchLimitsArePublished(t *testing.T) {
	rows := map[string]float64{}
	for _, r := range published.Rows(t, "bench/limits.csv") {
		if v, err := strconv.ParseFloat(r["value"], 64); err == nil {
			rows[r["id"]] = v
		}
	}
	require.Len(t, rows, 5)
	assert.Equal(t, rows["BL01"], InsulationVolts)
	assert.Equal(t, rows["BL16"], BalanceLimit)
	assert.InDelta(t, rows["BL02"], InsulationMegohms(40), 1e-12)
	// The factor refers a reading to 40 °C: the minimum at 20 °C times 0.25 is that at 40.
	assert.InDelta(t, rows["BL02"], InsulationMegohms(20)*rows["BL06"], 1e-9)
	assert.InDelta(t, rows["BL02"], InsulationMegohms(50)*rows["BL07"], 1e-9)
}

// A reading may be as far off as its figure, 5 % in any case for meter, speed and hand, and 10 % if
// that is unknown (common practice, no source).
func TestWhatAReadingMustLieBetween(t *testing.T) {
	for _, c := range []struct{ value, off, low, high float64 }{
		{2, 0.4, 1.6, 2.4}, {2, 0.02, 1.9, 2.1}, {2, 0, 1.8, 2.2},
	} {
		f := quantity.Of(c.value)
		f.PlusMinus = c.off
		low, high, part, ok := Between(f)
		require.True(t, ok)
		assert.InDelta(t, c.low, low, 1e-12)
		assert.InDelta(t, c.high, high, 1e-12)
		assert.InDelta(t, (c.high-c.low)/2/c.value, part, 1e-12)
	}
	_, _, _, ok := Between(quantity.Missing("none"))
	assert.False(t, ok)
}
