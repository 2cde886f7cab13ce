package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBeltGeometry(t *testing.T) {
	length, err := OpenBelt{100, 100, 500}.Length()
	require.NoError(t, err)
	assert.InEpsilon(t, 2*500+math.Pi*100, length, 1e-12, "equal pulleys")
	length, err = OpenBelt{100, 240, 437}.Length()
	require.NoError(t, err)
	centre, err := CentreFor(100, 240, length)
	require.NoError(t, err)
	assert.InEpsilon(t, 437.0, centre, 1e-9, "there and back")
	for _, bad := range []OpenBelt{{100, 400, 250}, {0, 1, 10}, {1, math.NaN(), 10}, {1, 1, math.Inf(1)}} {
		_, err := bad.Length()
		assert.ErrorIs(t, err, ErrTransmission)
		_, err = bad.WrapDegrees()
		assert.ErrorIs(t, err, ErrTransmission)
	}
	_, err = CentreFor(100, 400, 1200)
	assert.ErrorIs(t, err, ErrTransmission, "too short to go round both")
	ratio, slip, err := RealRatio(600, 1700, 3)
	require.NoError(t, err)
	assert.InEpsilon(t, 17.0/6, ratio, 1e-12)
	assert.InEpsilon(t, 1-17.0/18, slip, 1e-12)
	small, err := PulleyFor(AlternatorEnd, 3*(1-0.02), 180, 0.02)
	require.NoError(t, err)
	assert.InEpsilon(t, 60, small, 1e-12, "the question turned round")
	large, err := PulleyFor(DriveEnd, 3*(1-0.02), 60, 0.02)
	require.NoError(t, err)
	assert.InEpsilon(t, 180, large, 1e-12)
	stages := Transmission{Kind: Belt, Ratio: 6 * 5.714, Stages: 2, Slip: 0.02}
	turns, err := stages.Turns()
	require.NoError(t, err)
	assert.InEpsilon(t, 6*0.98*5.714*0.98, turns, 1e-12, "each belt slips")
	assert.InEpsilon(t, 0.0396, stages.SlipOfAll(), 1e-12)
	stages.Stages = 0
	turns, _ = stages.Turns()
	assert.InEpsilon(t, 6*5.714, turns, 1e-12, "as it really is")
	assert.Zero(t, stages.SlipOfAll())
	stages.Kind, stages.Stages = Chain, 2
	turns, _ = stages.Turns()
	assert.InEpsilon(t, 6*5.714, turns, 1e-12, "a chain does not")
	assert.Zero(t, Transmission{Kind: Gear, Slip: 0.02}.SlipOfAll())
	_, err = Transmission{Kind: Belt, DriverMM: 100}.Turns()
	assert.ErrorIs(t, err, ErrTransmission)
}
