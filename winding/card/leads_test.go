package card

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// With many circuits a lead gathers many ends: each lead then stands in a line of its own, to tick.
// 72 slots over 24 poles, one slot a pole and phase: the phase begins in every sixth slot.
func TestLeadsOfManyCircuitsStandOneByOne(t *testing.T) {
	text := func(circuits, connection string) string {
		b := winding.Prepare(job.Parse("[machine]\nslots = 72\npoles = 24\n[[trial]]\nname = \"A\"\nturns = 10\ngauge = \"16 AWG\"\ncircuits = " + circuits + "\nconnection = \"" + connection + "\"\n").Job())
		o := b.Outcome()
		return Text(b, &o, 0, Options{})
	}
	star := text("12", "star")
	for _, want := range []string{
		"\n          [ ] U1, 12 ends: slots 1, 7, 13, 19, 25, 31, 37, 43, 49, 55, 61, 67\n",
		"\n          [ ] V1, 12 ends: slots 3, 9,", "\n          [ ] W1, 12 ends: slots 5, 11,",
		"\n          star point: join U2 + V2 + W2, insulate\n          [ ] U2, 12 ends: slots 4, 10,",
	} {
		assert.Contains(t, star, want)
	}
	assert.Contains(t, text("12", "delta"), "delta U1-W2: join U1 + W2, insulate\n          [ ] W2, 12 ends: slots 8,")
	assert.Contains(t, text("2", "star"), "U1 slot 1+")
}
