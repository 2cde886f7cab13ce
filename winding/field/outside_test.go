package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
)

// By hand: the curve 8·I/(1 + I) read up to 3 A is 6 there and rises by 8/16 = 0.5 an ampere; at 7 A
// it says 7, the flat line 6, the straight one 8: ±1. At 4 A 6.4, 6 and 6.5: ±0.4.
func TestDoubtAboveTheReadings(t *testing.T) {
	c := Curve{Infinity: 8, Half: 1, Low: 1, High: 3}
	assert.InDelta(t, 1, c.OutsideDoubt(7), 1e-12)
	assert.InDelta(t, 0.4, c.OutsideDoubt(4), 1e-12)
	assert.Zero(t, c.OutsideDoubt(3))
	assert.Zero(t, c.OutsideDoubt(0.5))
	straight := Curve{Infinity: 2, Straight: true, Low: 1, High: 3}
	assert.InDelta(t, 8, straight.OutsideDoubt(7), 1e-12, "iron that was never seen to flatten may be full at once")
	// Any curve that only flattens, agreeing with the readings up to the highest, stays within the ±.
	for _, bend := range []float64{0, 0.1, 0.5, 2, 50} {
		for _, amps := range []float64{3.1, 4, 6, 12} {
			rise := 0.5 * (amps - 3)
			if bend > 0 {
				rise = 0.5 * (1 - math.Exp(-bend*(amps-3))) / bend
			}
			assert.LessOrEqual(t, math.Abs(6+rise-c.At(amps)), c.OutsideDoubt(amps)+1e-9)
		}
	}
}
