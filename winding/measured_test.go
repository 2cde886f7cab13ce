package winding_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"slotwright/winding"
	"slotwright/winding/job"
)

// load reads a job of testdata/jobs that must be free of problems.
func load(t testing.TB, name string) winding.Job {
	t.Helper()
	d, _, err := job.Load("../testdata/jobs/" + name)
	require.NoError(t, err)
	require.Empty(t, d.Problems())
	return d.Job()
}

// A car stator rewound from 13 turns of 1.2 mm to 30 of 0.75 mm, with nothing known but
// that. Source: see the head of the job file. The ratios follow from the stated turns and
// diameters: 30/13 = 2.308; ohms (30/13)·(1.2/0.75)² = 5.91; copper 30·0.75²/(13·1.2²) =
// 0.901; speed for the same volts 2000/2.308 = 867 rpm; current at the same density
// 35·(0.75/1.2)² = 13.7 A.
func TestCarStatorRewoundFrom13To30Turns(t *testing.T) {
	o := winding.Evaluate(load(t, "car-stator-13-to-30.toml"))
	require.Len(t, o.Trials, 1)
	a := o.Trials[0]
	assert.InEpsilon(t, 2.308, a.Against.Volts.Value, 0.01)
	assert.InEpsilon(t, 5.91, a.Against.Ohms.Value, 0.03)
	assert.InEpsilon(t, 0.901, a.Against.Copper.Value, 0.005)
	assert.InEpsilon(t, 867, a.CutInRPM.Value, 0.05)
	assert.Equal(t, winding.Guessed, a.CutInRPM.Origin, "2000 rpm is a general figure, and is marked so")
	for _, l := range a.Each {
		if l.Name == "old density" {
			assert.InEpsilon(t, 13.7, l.AmpsDC.Value, 0.03)
		}
	}
	for _, f := range o.Findings {
		assert.NotEqual(t, winding.Broken, f.Severity, "it was done: %s", f.Text)
	}
}

// The same with a slot, poles and a spin-up reading that are invented: the ratios must
// not depend on them.
func TestRatiosDoNotDependOnTheMachine(t *testing.T) {
	j := load(t, "car-stator-13-to-30.toml")
	j.Machine.Slots, j.Machine.Poles = winding.Known(36), winding.Known(12)
	j.Machine.BoreMM, j.Machine.StackMM = winding.Known(95), winding.Known(27)
	j.Old.CutInRPM = winding.Reading{}
	j.Spins = []winding.SpinReading{{RPM: winding.Known(1500), LineVolts: winding.Known(11)}}
	a := winding.Evaluate(j).Trials[0]
	assert.InEpsilon(t, 30.0/13, a.Against.Volts.Value, 1e-9)
	assert.InEpsilon(t, 5.9077, a.Against.Ohms.Value, 1e-4)
	assert.InEpsilon(t, 13.0/30, a.Against.CutIn.Value, 1e-9)
}
