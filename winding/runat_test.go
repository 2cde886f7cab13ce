package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The curve goes from speed to speed with a warm start from the previous temperature; a single point
// starts cold. Both must converge to the same balance, to the 0.05 K at which the iteration stops and
// the change of current that this makes.
func TestRunAtIsOnTheCurve(t *testing.T) {
	j := job.Example().Job()
	j.Trials[1].Connection = layout.Delta // so that no two trials are alike
	b := winding.Prepare(j)
	for i, trial := range b.Outcome().Trials {
		points := trial.Curve
		require.NotEmpty(t, points)
		for _, want := range points {
			got, why := b.RunAt(i, want.RPM)
			require.Empty(t, why)
			assert.Equal(t, want.RPM, got.RPM)
			assert.InDelta(t, want.AmpsDC, got.AmpsDC, 1e-3*want.AmpsDC+1e-9, "%s at %.0f rpm", trial.Name, want.RPM)
			assert.InDelta(t, want.WindingC, got.WindingC, 0.1, "%s at %.0f rpm", trial.Name, want.RPM)
			assert.Equal(t, want.Mode, got.Mode)
		}
	}
}

func TestRunAtBetweenPoints(t *testing.T) {
	b := winding.Prepare(job.Example().Job())
	for i, trial := range b.Outcome().Trials {
		for k := 1; k < len(trial.Curve); k++ {
			low, high := trial.Curve[k-1], trial.Curve[k]
			p, why := b.RunAt(i, (low.RPM+high.RPM)/2)
			require.Empty(t, why)
			assert.GreaterOrEqual(t, p.AmpsDC, low.AmpsDC-1e-3)
			assert.LessOrEqual(t, p.AmpsDC, high.AmpsDC+1e-3)
		}
	}
}

func TestRunAtSaysWhyNot(t *testing.T) {
	b := winding.Prepare(job.Example().Job())
	for _, rpm := range []float64{math.NaN(), math.Inf(1), -1} {
		_, why := b.RunAt(0, rpm)
		assert.Contains(t, why, "rpm")
	}
	for _, trial := range []int{-1, 99} {
		_, why := b.RunAt(trial, 500)
		assert.Contains(t, why, "no such trial")
	}
	j := job.Example().Job()
	j.Machine.Poles = quantity.Reading{}
	_, why := winding.Prepare(j).RunAt(0, 500)
	assert.NotEmpty(t, why)
}

func TestClassLimit(t *testing.T) {
	// IEC 60085: class F is 155 °C.
	m := winding.Evaluate(job.Example().Job()).Machine
	assert.Equal(t, "F", m.ThermalClass)
	assert.Equal(t, 155.0, m.ClassLimitC.Value)
}
