package layout

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The counts agree with the lists.
func TestCountsAreThoseOfTheLists(t *testing.T) {
	n := 0
	for _, spec := range []Spec{
		{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 2}, {Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1},
		{Slots: 36, Poles: 6, Phases: 3, Span: 5, Layers: 2, Kind: Wave}, {Slots: 72, Poles: 12, Phases: 3, Span: 6, Layers: 2, Sets: 2},
		{Slots: 12, Poles: 8, Phases: 3, Span: 1, Layers: 2}, {Slots: 12, Poles: 12, Phases: 1, Span: 1, Layers: 2},
	} {
		plan, err := New(spec)
		if err != nil {
			continue
		}
		for _, a := range plan.CircuitChoices() {
			wired, err := plan.WithCircuits(a)
			require.NoError(t, err)
			for _, conn := range []Connection{Star, Delta} {
				w, got, want := wired.Wiring(conn), wired.Counts(conn), Counts{}
				want.Joints = len(w.Joins) + len(w.Nodes)
				for _, l := range w.Leads {
					if l.Out {
						want.LeadsOut++
					}
				}
				for s := 1; s <= spec.Slots; s++ {
					if len(wired.Slot(s)) > 1 {
						want.SharedSlots++
					}
				}
				groups := map[[3]int]bool{}
				for _, c := range wired.Coils() {
					groups[[3]int{c.Set, c.Phase, c.Group}] = true
				}
				want.Groups = len(groups)
				assert.Equal(t, want, got, "%+v %d %v", spec, a, conn)
				n++
			}
		}
	}
	assert.Greater(t, n, 20)
}
