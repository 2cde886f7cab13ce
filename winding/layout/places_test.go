package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An impossible winding is explained in slots and poles, not in terms of a gcd.
func TestUnbalancedIsSaidInSlotsAndPoles(t *testing.T) {
	for _, c := range []struct {
		slots, poles int
		places       string
	}{{36, 18, "4 different places"}, {16, 4, "8 different places"}, {20, 6, "20 different places"}} {
		_, err := New(Spec{Slots: c.slots, Poles: c.poles, Phases: 3, Layers: 2, Span: 2})
		require.Error(t, err)
		assert.Contains(t, err.Error(), c.places)
		assert.NotContains(t, err.Error(), "gcd")
	}
}

// The cogging between poles and slots is given in pulses and pairs.
func TestCoggingIsSaidInPairs(t *testing.T) {
	for _, c := range []struct {
		slots, poles int
		text         string
	}{{12, 8, "24 cogging pulses a turn, 4 pairs of a pole and a slot at once"}, {9, 8, "72 cogging pulses a turn, one pair of a pole and a slot at once"}} {
		l, err := New(Spec{Slots: c.slots, Poles: c.poles, Phases: 3, Layers: 2, Span: 1})
		require.NoError(t, err)
		n := l.coggingNote()
		assert.Contains(t, n.Text, c.text)
		assert.NotContains(t, n.Text, "gcd")
	}
}
