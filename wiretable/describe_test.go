package wiretable

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 18 AWG in ASTM B258 and NBS Handbook 100: 40.3 mil, 1624 circular mils, 6.39 ohm and
// 4.92 lb per 1000 ft (testdata/wire/awg.csv).
func TestDescribe18AWG(t *testing.T) {
	g, err := Parse("18awg")
	require.NoError(t, err)
	d := Describe(g, Heavy, Copper, 20, AWG)
	assert.InDelta(t, 1.024, d.BareMM, 0.0005)
	assert.InDelta(t, 0.0403, d.BareInch, 1e-9)
	assert.InDelta(t, 1624, d.AreaCmil, 0.5)
	assert.InEpsilon(t, 20.95, d.OhmsPerKm20, 0.001)
	assert.InEpsilon(t, 6.39, d.OhmsPer1000Ft20, 0.002)
	assert.InEpsilon(t, 4.92, d.LbPer1000Ft, 0.002)
	assert.InEpsilon(t, 1000/d.KgPerKm, d.MetresPerKg, 1e-12)
	assert.Equal(t, d.OhmsPerKm20, d.OhmsPerKmTemp)
	assert.Equal(t, "17 AWG", d.Thicker)
	assert.Equal(t, "19 AWG", d.Thinner)
	assert.NotContains(t, d.Nearest, "awg")
	assert.Contains(t, d.Nearest, "swg")
	assert.Contains(t, d.Nearest, "iec")
	require.NotEmpty(t, d.Equal)
	for _, e := range d.Equal {
		assert.InDelta(t, 0, e.Percent, 4.0001, e.Bundle)
		b, err := ParseBundle(e.Bundle)
		require.NoError(t, err)
		assert.InEpsilon(t, b.AreaMM2(Heavy), e.AreaMM2, 1e-12)
	}
	hot := Describe(g, Heavy, Copper, 120, AWG)
	assert.InEpsilon(t, (234.5+120)/254.5, hot.OhmsPerKmTemp/hot.OhmsPerKm20, 1e-9)
}
