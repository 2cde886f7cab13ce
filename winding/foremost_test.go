package winding_test

import (
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
)

// The trial that was proved precedes one that was wound later, that precedes the reference, and the
// first is taken where nothing is given.
func TestForemost(t *testing.T) {
	const three = "[[trial]]\nname = \"A\"\n[[trial]]\nname = \"B\"\n[[trial]]\nname = \"C\"\n"
	const wound = "[[wound]]\ntrial = \"C\"\ndate = \"2026-03-14\"\n[[wound]]\ntrial = \"A\"\ndate = \"2026-01-01\"\n"
	for text, want := range map[string]struct {
		trial int
		why   string
	}{
		"":                                      {-1, ""},
		three:                                   {0, ""},
		"[target]\nreference = \"B\"\n" + three: {1, "it is the reference"},
		"[target]\nreference = \"B\"\n" + three + wound: {2, "it is wound"},
		three + wound + "[[wound]]\ntrial = \"B\"\ndate = \"2025-01-01\"\nturns = 5\nline_v = 10\nspeed_rpm = 600\ncut_in_rpm = 500\n": {1, "it is wound and proved"},
	} {
		j := job.Parse(text).Job()
		o := winding.Evaluate(j)
		trial, why := o.Foremost(j.Target.Reference)
		assert.Equal(t, want.trial, trial, text)
		assert.Equal(t, want.why, why, text)
	}
}
