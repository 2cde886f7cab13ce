package winding_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// edit changes one thing of a job at random, mostly of one trial, and leaves the original job
// unchanged.
func edit(r *rand.Rand, j job.Job) job.Job {
	j.Trials = append([]job.Trial(nil), j.Trials...)
	k := r.IntN(len(j.Trials))
	t := &j.Trials[k]
	switch r.IntN(12) {
	case 0, 1, 2:
		t.Turns.Value = max(1, t.Turns.Value+float64(r.IntN(5)-2))
	case 3, 4:
		if g, ok := t.Gauge.ThinnerIn(t.Build); ok {
			t.Gauge = g
		}
	case 5:
		if g, ok := t.Gauge.ThickerIn(t.Build); ok {
			t.Gauge = g
		}
	case 6:
		t.Name = fmt.Sprint("T", r.IntN(100))
	case 7:
		j.Name = "another name"
	case 8:
		if len(j.Trials) < 4 {
			j.Trials = append(j.Trials, *t)
		}
	case 9:
		if len(j.Trials) > 1 {
			j.Trials = append(j.Trials[:k], j.Trials[k+1:]...)
		}
	case 10:
		j.Target.Reference = t.Name
	case 11:
		j.Machine.StackMM = quantity.Known(j.Machine.StackMM.Or(30) + 0.5)
	}
	return j
}

// A bench that reuses the previous one's results gives the outcome of a fresh one, to the last bit,
// after any edit.
func TestNothingIsLeftOfWhatWasTypedBefore(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 14))
	edits := 40
	if testing.Short() {
		edits = 12
	}
	for _, name := range []string{"engine.toml", "wind-good.toml", "pedals-hub.toml", "no-slots-known.toml", "lamp-half-wave.toml"} {
		text, err := os.ReadFile(filepath.Join("../testdata/jobs", name))
		require.NoError(t, err)
		j := job.Parse(string(text)).Job()
		b := winding.Prepare(j)
		b.Outcome()
		for n := range edits {
			j = edit(r, j)
			b = b.With(j)
			require.True(t, asJSON(t, winding.Evaluate(j)) == asJSON(t, b.Outcome()), "%s, edit %d", name, n)
		}
	}
}

func asJSON(t *testing.T, o winding.Outcome) string {
	t.Helper()
	text, err := json.Marshal(o)
	require.NoError(t, err)
	return string(text)
}
