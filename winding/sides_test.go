package winding_test

import (
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A file whose slot's area is width × depth gives the same results as one with shape, width and depth,
// and says that it was taken so. An edit of a trial reuses the slot.
func TestASlotByItsSidesIsAParallelOne(t *testing.T) {
	d := job.Example().Set("slot.depth_per_width", "", quantity.Choice{}).Set("slot.area", "6.2 x 11.5 mm", quantity.Choice{})
	require.Empty(t, d.Problems())
	typed, _, _, ok := d.Shaped()
	require.True(t, ok)
	a, b := winding.Evaluate(d.Job()), winding.Evaluate(typed.Job())
	for _, f := range winding.Outputs() {
		for i := range a.Trials {
			assert.Equal(t, f.Of(&b.Trials[i]), f.Of(&a.Trials[i]), f.ID)
		}
	}
	for _, f := range winding.MachineOutputs() {
		assert.Equal(t, f.OfMachine(&b.Machine), f.OfMachine(&a.Machine), f.ID)
	}
	said := 0
	for _, f := range a.Findings {
		if strings.Contains(f.Text, "a parallel slot 6.2 mm wide below its mouth and 11.5 mm deep") {
			said++
		}
	}
	assert.Equal(t, 1, said)
	bench := winding.Prepare(d.Job())
	more := d.Set("trial[0].turns", "9", quantity.Choice{}).Job()
	assert.Equal(t, winding.Evaluate(more), bench.With(more).Outcome())
}
