package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPowerCurveMakesNoBumps(t *testing.T) {
	c, err := NewCurve([]Point{{70, 120}, {40, 80}, {90, 100}, {55, 110}})
	require.NoError(t, err)
	for _, p := range c.points {
		assert.InEpsilon(t, p.Watts, c.Watts(p.RPM), 1e-12)
	}
	for rpm := 40.0; rpm < 90; rpm++ {
		assert.LessOrEqual(t, c.Watts(rpm), 120.0+1e-9)
		assert.GreaterOrEqual(t, c.Watts(rpm), 80.0-1e-9)
	}
	assert.InEpsilon(t, 40, c.Watts(20), 1e-12, "below the first point its torque stays")
	assert.Zero(t, c.Watts(c.Top()))
	for _, bad := range [][]Point{nil, {{1, 1}}, {{1, 1}, {1, 2}}, {{1, 1}, {2, math.NaN()}}, {{-1, 1}, {2, 1}}} {
		_, err := NewCurve(bad)
		assert.ErrorIs(t, err, ErrPoints)
	}
}
