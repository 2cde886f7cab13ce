package winding

import (
	"strconv"
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The limits that a finished winding is held to are those of testdata/bench/limits.csv:
// ANSI/EASA AR100-2020 and IEEE 43-2013 as its rows quote them.
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
	// The factor brings a reading to 40 °C: the least at 20 °C times 0.25 is that at 40.
	assert.InDelta(t, rows["BL02"], InsulationMegohms(20)*rows["BL06"], 1e-9)
	assert.InDelta(t, rows["BL02"], InsulationMegohms(50)*rows["BL07"], 1e-9)
}
