package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// The cosine between the currents of the two sides of a slot, by hand. Full pitch: the sides
// are of one phase and run the same way. q = 2 with the pitch short by one slot in six: every
// other slot holds neighbouring belts, 60 degrees apart, so ½·(1 + ½) = 1 - 3/2·1/6. Short by
// two in six (two thirds pitch): all slots, ½. 12 teeth and 10 poles: neighbours of one phase
// are wound against each other, so their sides run together, and every other slot holds two
// phases: ¾. 12 teeth and 8 poles: U, V, W in turn, ½.
func TestTogetherByHand(t *testing.T) {
	tests := []struct {
		spec Spec
		want float64
	}{
		{Spec{Slots: 24, Poles: 4, Phases: 3, Span: 6, Layers: 2}, 1},
		{Spec{Slots: 24, Poles: 4, Phases: 3, Span: 5, Layers: 2}, 0.75},
		{Spec{Slots: 24, Poles: 4, Phases: 3, Span: 4, Layers: 2}, 0.5},
		{Spec{Slots: 12, Poles: 10, Phases: 3, Span: 1, Layers: 2}, 0.75},
		{Spec{Slots: 12, Poles: 8, Phases: 3, Span: 1, Layers: 2}, 0.5},
		{Spec{Slots: 12, Poles: 12, Phases: 1, Span: 1, Layers: 2}, 1},
		{Spec{Slots: 12, Poles: 10, Phases: 3, Span: 1, Layers: 1}, 1}, // one side a slot
	}
	for _, tt := range tests {
		assert.InDelta(t, tt.want, must(t, tt.spec).Together(), 1e-12, "%+v", tt.spec)
	}
}

// Coils round one tooth lie side by side, in whichever order the list gives them; any longer coil lies
// over another.
func TestBeside(t *testing.T) {
	teeth := must(t, Spec{Slots: 12, Poles: 8, Phases: 3, Span: 1, Layers: 2})
	assert.True(t, teeth.Beside())
	assert.Contains(t, teeth.SidesText(), "clockwise half")
	assert.True(t, must(t, Spec{Slots: 12, Poles: 8, Phases: 3, Span: 11, Layers: 2}).Beside())
	assert.False(t, must(t, Spec{Slots: 12, Poles: 8, Phases: 3, Span: 2, Layers: 2}).Beside())
	assert.False(t, must(t, Spec{Slots: 12, Poles: 10, Phases: 3, Span: 1, Layers: 1}).Beside())
	assert.Contains(t, must(t, Spec{Slots: 24, Poles: 4, Phases: 3, Span: 6, Layers: 2}).SidesText(), "Bottom")
}
