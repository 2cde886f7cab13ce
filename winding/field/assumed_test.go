package field

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// By hand: at twice the current 4/3 of the flux, half way between no more and twice as much, is 1.5,
// and ± 0.5 of what was read is 0.375 of 4/3. A curve through two readings, of any iron between
// unsaturated and saturated by Froelich's formula, never lies outside.
func TestAssumedCurve(t *testing.T) {
	c, err := Assumed(Reading{Amps: 3, Flux: 0.6})
	require.NoError(t, err)
	assert.InDelta(t, 0.6, c.At(3), 1e-12)
	assert.InDelta(t, 0.8, c.At(6), 1e-12)
	assert.InDelta(t, 0.4, c.At(1.5), 1e-12)
	assert.InDelta(t, 0.375, AssumedDoubt(6, 3), 1e-12)
	assert.InDelta(t, 0.375, AssumedDoubt(1.5, 3), 1e-12)
	assert.Zero(t, AssumedDoubt(3, 3))
	assert.InDelta(t, 1, AssumedDoubt(300, 3), 1e-12)

	for _, half := range []float64{0.5, 1, 3, 9} { // the iron's own I0
		iron := Curve{Infinity: 1, Half: half}
		c, err := Assumed(Reading{Amps: 3, Flux: iron.At(3)})
		require.NoError(t, err)
		for _, amps := range []float64{1.5, 2, 2.5, 3.5, 4.5, 6} {
			assert.InDelta(t, iron.At(amps), c.At(amps), AssumedDoubt(amps, 3)*c.At(amps), "I0 %g A, %g A", half, amps)
		}
	}
	_, err = Assumed(Reading{Amps: 0, Flux: 1})
	require.ErrorIs(t, err, ErrReadings)
}
