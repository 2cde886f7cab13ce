package winding

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The wind to furl before, found by bisection, equals the one found wind by wind: all winds below it
// are withstood with a battery nearly full, and the next is not.
func TestTheWindAFullBatteryIsStoodInIsTheLastOfAll(t *testing.T) {
	paths, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	seen := 0
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		j := job.Parse(string(text)).Job()
		if j.Drive.Kind != "wind" {
			continue
		}
		for _, times := range []float64{0.5, 0.7, 1, 1.4, 2} {
			k := j
			k.Trials = append([]job.Trial(nil), j.Trials...)
			for i := range k.Trials {
				k.Trials[i].Turns.Value = float64(int(1 + k.Trials[i].Turns.Value*times))
			}
			b := Prepare(k)
			o := b.Outcome()
			for i := range o.Trials {
				tr := &o.Trials[i]
				if !(tr.fullTo > 0) {
					continue
				}
				seen++
				r, why := b.bed.charger(k.Trials[i], tr)
				require.Empty(t, why)
				full := r.against(b.dc.absorption.Value)
				for n := range tr.Points {
					p := &tr.Points[n]
					stands := b.bed.endures(&tr.Limits, tr.Connection, full.settle(b.drive.given(p.X), p.RPM, 0, p.WindingC))
					assert.Equal(t, p.X <= tr.fullTo, stands, fmt.Sprintf("%s, turns times %g, trial %s, %g m/s, told %g m/s", filepath.Base(path), times, tr.Name, p.X, tr.fullTo))
				}
			}
		}
	}
	assert.Greater(t, seen, 5)
}
