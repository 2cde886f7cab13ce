package wound

import (
	"slotwright/winding/quantity"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A reading is off only where neither its own ± nor that of the computed value explains it; with no ±
// known a tenth is assumed, and never less than a twentieth.
func TestStand(t *testing.T) {
	read := func(v, off float64) Proof {
		f, e := quantity.Of(v), quantity.Of(100)
		f.PlusMinus, e.PlusMinus = off, 8
		return Compare(f, e)
	}
	for _, c := range []struct {
		read, off float64
		want      Stand
	}{{100, 0, Good}, {92, 0, Good}, {108, 0, Good}, {91.9, 0, Low}, {108.1, 0, High}, {91, 1.1, Good}, {91, 0.9, Low}, {110, 2.1, Good}, {110, 1.9, High}} {
		assert.Equal(t, c.want, read(c.read, c.off).Stand(), "%+v", c)
	}
	no := quantity.Missing("no")
	assert.Equal(t, NotRead, Compare(no, quantity.Of(1)).Stand())
	assert.Equal(t, NotRead, Compare(no, no).Stand())
	assert.Equal(t, NotHeld, Compare(quantity.Of(1), no).Stand())
	assert.Equal(t, []Stand{Good, High}, []Stand{Compare(quantity.Of(109), quantity.Of(100)).Stand(), Compare(quantity.Of(111), quantity.Of(100)).Stand()})
	guess := quantity.Of(100, quantity.Guessed)
	assert.Equal(t, NotHeld, Compare(quantity.Of(140), guess).Stand(), "a guess of which no ± is known is no measure")
	guess.PlusMinus = 20
	assert.Equal(t, High, Compare(quantity.Of(140), guess).Stand())
	low, high, ok := read(1, 0).Limits()
	assert.Equal(t, []any{92.0, 108.0, true}, []any{low, high, ok})
	_, _, ok = Compare(no, no).Limits()
	assert.False(t, ok)
}

// Screen and card apply the same limits to a reading: a figure accurate to 0.7 % is still read with a
// meter at a speed, and has the card's twentieth each way.
func TestScreenAndCardHoldToTheSameLimits(t *testing.T) {
	for _, off := range []float64{0, 0.7, 4, 12} {
		e := quantity.Of(100)
		e.PlusMinus = off
		low, high, _, ok := Between(e)
		require.True(t, ok)
		l, h, ok := Compare(quantity.Of(100), e).Limits()
		assert.Equal(t, []any{low, high, true}, []any{l, h, ok}, "±%g", off)
		assert.GreaterOrEqual(t, h-100, 100*ProofLeast-1e-9)
	}
}
