package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A flywheel's stator of 12 teeth and 12 poles in one phase, two positions taken by the ignition: ten
// coils, wound alternately in both directions, each contributing its full voltage. The joins continue
// past the gap.
func TestFlywheelWithTwoBareTeeth(t *testing.T) {
	all := must(t, Spec{Slots: 12, Poles: 12, Phases: 1, Span: 1, Layers: 2})
	l, err := all.Without(nil, []int{3, 4})
	require.NoError(t, err)
	assert.Equal(t, 10, l.CoilsPerPhase())
	assert.InDelta(t, 1, l.Factor(1), 1e-12)
	assert.Equal(t, 12, len(all.Coils()), "the whole layout is as it was")
	var starts []int
	for i, c := range l.Coils() {
		assert.Equal(t, i+1, c.Number)
		starts = append(starts, c.Start)
	}
	assert.Equal(t, []int{1, 2, 5, 6, 7, 8, 9, 10, 11, 12}, starts)
	assert.Empty(t, l.Slot(4), "between the bare teeth")
	assert.Len(t, l.Slot(3), 1)
	w := l.Wiring(Star)
	assert.Len(t, w.Joins, 9)
	// Coil 2 is wound the other way, so the phase leaves it at its start, in slot 2, and goes in
	// at the start of coil 3, in slot 5.
	assert.Equal(t, "start of coil 2 (slot 2)", w.Joins[1].From.String())
	assert.Equal(t, "start of coil 3 (slot 5)", w.Joins[1].To.String())
}

// Three phases in 12 teeth and 8 poles: each has four coils. Without one of each, teeth 1, 2
// and 3, three stay and the phases are equal; without one of U alone they are not.
func TestThreePhasesStayEqual(t *testing.T) {
	all := must(t, Spec{Slots: 12, Poles: 8, Phases: 3, Span: 1, Layers: 2})
	l, err := all.Without(nil, []int{1, 2, 3})
	require.NoError(t, err)
	assert.Equal(t, 3, l.CoilsPerPhase())
	assert.True(t, l.Balance().Equal)
	_, err = all.Without(nil, []int{1})
	assert.ErrorContains(t, err, "leave out the same of each phase")
}

// A dead slot removes every coil with a side in it: two, for a lap winding in two layers.
func TestDeadSlots(t *testing.T) {
	all := must(t, Spec{Slots: 24, Poles: 4, Phases: 1, Span: 6, Layers: 2})
	l, err := all.Without([]int{1}, nil)
	require.NoError(t, err)
	assert.Len(t, l.Coils(), 22)
	assert.Empty(t, l.Slot(1))
	same, err := all.Without(nil, nil)
	require.NoError(t, err)
	assert.Same(t, all, same)
	for _, bad := range []struct {
		dead, bare []int
		want       string
	}{
		{[]int{25}, nil, "dead slots: read 25, expected slots from 1 to 24"},
		{nil, []int{0}, "bare teeth: read 0"},
		{nil, []int{1}, "round one tooth"},
		{[]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18}, nil, "no coil is left"},
	} {
		_, err := all.Without(bad.dead, bad.bare)
		assert.ErrorContains(t, err, bad.want)
	}
}
