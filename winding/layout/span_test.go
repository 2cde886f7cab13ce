package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestMeanSpan(t *testing.T) {
	lap, err := New(Spec{Slots: 36, Poles: 4, Phases: 3, Span: 7, Layers: 2})
	require.NoError(t, err)
	assert.Equal(t, 7.0, lap.MeanSpan())
	// Nested coils on the same sides: 1-12, 2-11, 3-10 span 11, 9, 7, and as a mean the 9 of equal coils.
	nested, err := New(Spec{Slots: 36, Poles: 4, Phases: 3, Span: 9, Layers: 2, Kind: Concentric})
	require.NoError(t, err)
	assert.Equal(t, 9.0, nested.MeanSpan())
	heavy, err := nested.WithGroupTurns([]int{3, 1, 1})
	require.NoError(t, err)
	assert.InDelta(t, (3*11+9+7)/5.0, heavy.MeanSpan(), 1e-12)
	long, err := New(Spec{Slots: 36, Poles: 12, Phases: 3, Span: 33, Layers: 2})
	require.NoError(t, err)
	assert.Equal(t, 3.0, long.MeanSpan(), "the shorter way round")
}
