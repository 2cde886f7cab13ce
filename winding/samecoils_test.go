package winding

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
)

// An error that does not affect coils, slot and copper leaves everything of a winding that depends on
// these alone: every such error of the stored jobs, on its trials and on the old winding. The magnets
// that may replace a rotor are those that the shifted bench computes itself. Other errors do change
// something.
func TestAnErrorBesideTheCoilsLeavesThem(t *testing.T) {
	same, moved := 0, 0
	for name, j := range everyJob(t) {
		b := Prepare(j)
		for k, m := range b.mistakes() {
			shifted := b.mistaken(&m)
			said := fmt.Sprintf("%s, error %d, %s", name, k, m.part)
			own, _ := magnetFlux(&shifted.job.Field, &shifted.machine, shifted.room.mouth, shifted.iron.path)
			shared, _ := shifted.magnets()
			assert.Equal(t, own, shared, said)
			for i := range b.job.Trials {
				was, is := b.Static(b.job.Trials[i]), shifted.Static(b.job.Trials[i])
				alike := assert.ObjectsAreEqual([]any{was.Fit, was.Coils, was.Ohms, was.Purchase, was.Former}, []any{is.Fit, is.Coils, is.Ohms, is.Purchase, is.Former})
				if m.coils() {
					if !alike {
						moved++
					}
					continue
				}
				same++
				assert.True(t, alike, said)
			}
			if !m.coils() && b.old.known() {
				was, is := b.static(&b.old.candidate), shifted.static(&shifted.old.candidate)
				assert.Equal(t, []any{was.Fit, was.Coils, was.Ohms}, []any{is.Fit, is.Coils, is.Ohms}, said)
			}
		}
	}
	assert.Greater(t, same, 100)
	assert.Greater(t, moved, 20)
}
