package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The winding factor of the two waves of the slot pair equals that of the working wave.
func TestSlotPairHasTheFactorOfTheWorkingWave(t *testing.T) {
	for _, c := range []struct {
		slots, poles, span, layers int
		low, high                  int
		felt                       bool
	}{
		{36, 4, 7, 2, 34, 38, true},  // orders 17 and 19
		{36, 12, 3, 1, 30, 42, true}, // 5 and 7
		{27, 6, 4, 2, 24, 30, false}, // 8 and 10: even
		{12, 10, 1, 2, 7, 17, false}, // 7/5 and 17/5
		{12, 14, 1, 2, 5, 19, false}, // Q - p below p
		{9, 8, 1, 2, 5, 13, false},
	} {
		l, err := New(Spec{Slots: c.slots, Poles: c.poles, Phases: 3, Span: c.span, Layers: c.layers})
		require.NoError(t, err)
		p := l.SlotPair()
		assert.Equal(t, []int{c.low, c.high}, []int{p.LowerPairs, p.UpperPairs})
		assert.Equal(t, c.felt, p.Felt, "%d slots, %d poles", c.slots, c.poles)
		assert.InDelta(t, float64(c.low), p.LowerOrder*float64(c.poles)/2, 1e-9)
		if c.slots%(c.poles/2) == 0 {
			assert.InDelta(t, l.Factor(int(p.LowerOrder)), p.Kw, 1e-9)
			assert.InDelta(t, l.Factor(int(p.UpperOrder)), p.Kw, 1e-9)
		}
	}
}
