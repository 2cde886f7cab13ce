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
// temperature.
func TestTheCurveBetweenSolvedPoints(t *testing.T) {
	forEachCharger(t, func(name string, b *Bench, r *charger) {
		top := b.bed.grid(b.cutIns)[curvePoints-1]
		if top <= r.begins() {
			return
		}
		own := *r
		c := own.over(top, b.air.ambientC, closeCurve)
		const speeds = 1000
		var dense [speeds]RunPoint
		idea, most := trend{ambient: b.air.ambientC}, RunPoint{}
		for i := range dense {
			n := top * float64(i+1) / speeds
			dense[i] = r.at(n, idea.next(n))
			idea.add(n, dense[i].WindingC)
			most.AmpsDC, most.TorqueNm = max(most.AmpsDC, dense[i].AmpsDC), max(most.TorqueNm, dense[i].TorqueNm)
		}
		amps, torque, warm, wrong := 0.0, 0.0, 0.0, 0
		for i := range dense {
			was, is := &dense[i], c.at(dense[i].RPM)
			if is.TooHot != was.TooHot {
				wrong++
				continue
			}
			amps = max(amps, math.Abs(is.AmpsDC-was.AmpsDC)/max(was.AmpsDC, leastPart*most.AmpsDC))
			torque = max(torque, math.Abs(is.TorqueNm-was.TorqueNm)/max(was.TorqueNm, leastPart*most.TorqueNm))
			warm = max(warm, math.Abs(is.WindingC-was.WindingC))
			if is.Mode != was.Mode {
				wrong++
			}
		}
		bad := 0
		for _, ok := range c.agreed {
			if !ok {
				bad++
			}
		}
		t.Logf("%-44s knots %3d rough %2d amps %.1e torque %.1e warm %.3f wrong %d", name, len(c.knots), bad, amps, torque, warm, wrong)
		assert.Less(t, amps, closeCurve, name)
	})
}
