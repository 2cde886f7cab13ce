package winding

import (
	"os"
	"path/filepath"
	"testing"

	"slotwright/winding/job"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What the search over sizes skips is no better than what it finds: every size near a trial's own,
// computed one by one, that brings more than the best of those tried does not withstand it.
func TestNothingIsLeftOutOnTheWay(t *testing.T) {
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	left, tried := 0, 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		j := job.Parse(string(text)).Job()
		b := Prepare(j)
		for i, o := range b.Outcome().Trials {
			if o.in(usual) == nil || o.Mend == "" && o.InTheWay == "" {
				continue
			}
			of := offers{workshop: b, bed: &b.bed, slots: new(fullSlots), tried: new(trying)}
			s := of.search(j.Trials[i], o.TurnsThatFit.Value)
			s.more = of.leastOf(&o, true)
			s.near()
			known := len(of.slots.of)
			for _, g := range reachable(&of, j.Trials[i]) {
				f := of.full(withGauge(j.Trials[i], g))
				if of.brings(f) > s.more {
					assert.False(t, of.holds(f), "%s %s: %v turns of %s bring %g, of those tried %g", file, o.Name, f.trial.Turns.Value, g, f.score, s.more)
				}
			}
			tried, left = tried+known, left+len(of.slots.of)-known
		}
	}
	assert.Greater(t, tried, 100)
	assert.Greater(t, left, 20)
}

// reachable is the sizes that the ways could come to at most.
func reachable(of *offers, t job.Trial) (list []wiretable.Gauge) {
	step := 1
	if of.drive.kind == "wind" {
		step = 3
	}
	for k, side := range []func(wiretable.Gauge, wiretable.Build) (wiretable.Gauge, bool){wiretable.Gauge.ThickerIn, wiretable.Gauge.ThinnerIn} {
		g, ok := side(t.Gauge, t.Build)
		for i := 1; ok && i <= []int{sizesThicker, sizesThinner}[k]; i++ {
			if i%step == 1%step {
				list = append(list, g)
			}
			g, ok = side(g, t.Build)
		}
	}
	return list
}
