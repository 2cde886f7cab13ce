package winding_test

import (
	"os"
	"path/filepath"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/wants"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whatever one field a job lacks, a figure that is missing for it leads to a field that has no value,
// never to one that was given.
func TestAMissingFigureLeadsToAnEmptyField(t *testing.T) {
	paths, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	led := 0
	for n, path := range paths {
		if testing.Short() && n%6 != 0 {
			continue
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		whole := job.Parse(string(text))
		for i := range job.Fields {
			field := job.Fields[i].PathAt(0)
			if j := whole.Job(); !j.GivenAt(field) {
				continue
			}
			j := whole.Clear(field).Job()
			o := winding.Evaluate(j)
			for _, r := range o.Comparison {
				for trial := range j.Trials {
					why := r.Cells[trial].Figure.Why
					if r.Cells[trial].Figure.Known() {
						continue
					}
					if to, ok := wants.FieldFor(&j, why, trial); ok {
						led++
						assert.False(t, j.GivenAt(to), "%s without %s: %s, %q leads to %s", filepath.Base(path), field, r.ID, why, to)
					}
				}
			}
		}
	}
	assert.Greater(t, led, 500)
}
