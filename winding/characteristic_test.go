package winding

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding/job"
)

// forEachCharger goes over the trials of the jobs in testdata that charge.
func forEachCharger(t *testing.T, do func(name string, b *Bench, r *charger)) {
	files, err := filepath.Glob("../testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		b := Prepare(job.Parse(string(text)).Job())
		for _, trial := range b.job.Trials {
			o := b.Static(trial)
			if r, _ := b.bed.charger(trial, &o); r != nil {
				do(filepath.Base(file)+" "+trial.Name, b, r)
			}
		}
	}
}

// The curve between the knots against the trial solved at a thousand speeds: amps, torque and
// temperature are those of the solver to the agreement required of the knots, and a missing steady
// temperature is found at the same speeds.
func TestTheCurveBetweenSolvedPoints(t *testing.T) {
	trials, knots := 0, 0
	forEachCharger(t, func(name string, b *Bench, r *charger) {
		top := max(b.bed.grid(b.cutIns)[curvePoints-1], b.drive.fastest)
		if top <= r.begins() {
			return
		}
		own := *r
		c := own.over(top, b.air.ambientC, closeCurve)
		trials, knots = trials+1, knots+len(c.knots)
		const speeds = 1000
		var dense [speeds]RunPoint
		idea, mostAmps, mostNm := trend{ambient: b.air.ambientC}, 0.0, 0.0
		for i := range dense {
			n := top * float64(i+1) / speeds
			dense[i] = r.at(n, idea.next(n))
			idea.add(n, dense[i].WindingC)
			mostAmps, mostNm = max(mostAmps, dense[i].AmpsDC), max(mostNm, dense[i].TorqueNm)
		}
		amps, torque, warm, wrong := 0.0, 0.0, 0.0, 0
		for i := range dense {
			was, is := &dense[i], c.at(dense[i].RPM)
			if is.TooHot != was.TooHot || is.Mode != was.Mode {
				wrong++ // next to where it changes, where a hair decides
				continue
			}
			amps = max(amps, math.Abs(is.AmpsDC-was.AmpsDC)/max(was.AmpsDC, leastPart*mostAmps))
			torque = max(torque, math.Abs(is.TorqueNm-was.TorqueNm)/max(was.TorqueNm, leastPart*mostNm))
			warm = max(warm, math.Abs(is.WindingC-was.WindingC))
		}
		t.Logf("%-36s %3d solved points: amps %.1e, torque %.1e, %.3f K", name, len(c.knots), amps, torque, warm)
		assert.LessOrEqual(t, amps, closeCurve, name)
		assert.LessOrEqual(t, torque, closeCurve, name)
		assert.LessOrEqual(t, warm, closeKelvin*closeCurve, name)
		assert.LessOrEqual(t, wrong, 4, name)
	})
	assert.Greater(t, trials, 30)
	assert.Less(t, knots, 70*trials, "solved points a trial")
}
