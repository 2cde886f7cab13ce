package winding

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// "No winding withstands it unfurled" is said where furling is the remedy and every examined full slot
// of the trial's wires that brings nine tenths as much, computed as a trial of its own, exceeds a
// limit; it is never said where one of them withstands every wind.
func TestNoWindingStandsItUnfurledIsSaidWhereThatIsSo(t *testing.T) {
	paths, err := filepath.Glob("../testdata/jobs/*wind*.toml")
	require.NoError(t, err)
	said, rungs := 0, 0
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, furl := range []float64{10, 14, 20} {
			j := job.Parse(string(text)).Job()
			j.Drive.CutOutMS = quantity.Known(furl)
			b := Prepare(j)
			o := b.Outcome()
			for i := range o.Trials {
				says := false
				for _, f := range o.Findings {
					says = says || f.Trial == o.Trials[i].Name && strings.Contains(f.Fix, "furl it before") && strings.Contains(f.Fix, "of the windings examined that bring")
				}
				if !says {
					continue
				}
				said++
				looked := map[string]bool{}
				for _, f := range b.slots.of {
					looked[f.trial.Bundle().String()] = true
				}
				for _, r := range b.Ladder(i) {
					if !looked[r.Trial.Bundle().String()] {
						continue
					}
					rungs++
					stands := r.freed == 0 && !r.OverLimit() && !r.Burns() && r.HottestC.Known() && r.HottestC.Value <= o.Machine.MeanLimitC.Value && r.Fits()
					near := r.YearKWh.Known() && r.YearKWh.Value > 1.05*max(leastYear, o.Trials[i].YearKWh.Value*worthKeeping)
					assert.False(t, stands && near, "%s, furls at %g: %s of %s stands it", filepath.Base(path), furl, r.Wire, o.Trials[i].Name)
				}
			}
		}
	}
	assert.Positive(t, said)
	assert.Greater(t, rungs, 10)
}
