package winding

import (
	"math"
	"testing"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where the curve's rms comes to what is allowed, by hand on straight stretches.
func TestLimitIsWhereTheTrueRMSComesToIt(t *testing.T) {
	curve := []RunPoint{{AmpsDC: 2, PhaseAmpsRMS: 4}, {AmpsDC: 6, PhaseAmpsRMS: 8}}
	assert.InEpsilon(t, 1, dcAt(curve, 2), 1e-12, "in proportion below the first point")
	assert.InEpsilon(t, 4, dcAt(curve, 6), 1e-12)
	assert.InEpsilon(t, 12, dcAt(curve, 16), 1e-12, "in proportion above the last")
	assert.Zero(t, dcAt(nil, 3))
}

// With one phase the current at the limit by density makes just that density in the wire:
// 1.11 rms per ampere DC would let through more.
func TestOnePhaseIsLimitedByItsTrueRMS(t *testing.T) {
	j := deltaJob()
	j.Machine.Phases, j.Trials[0].Connection = quantity.Known(1), layout.Star
	j.Machine.Slots = quantity.Known(24)
	j.Machine.Span, j.Machine.AirGapMM = quantity.Known(2), quantity.Known(1)
	b := Prepare(j)
	static := b.Static(j.Trials[0])
	a := b.Outcome().Trials[0]
	limit := func(o *TrialOutcome) float64 {
		for _, l := range o.Each {
			if l.Name == limitDensity {
				return l.AmpsDC.Value
			}
		}
		return math.NaN()
	}
	require.Less(t, limit(&a), 0.99*limit(&static))
	allowed := limit(&static) * math.Pi / (2 * math.Sqrt2)
	low, high := a.in(usual).RunPoint, a.in(top).RunPoint
	part := (allowed - low.PhaseAmpsRMS) / (high.PhaseAmpsRMS - low.PhaseAmpsRMS)
	assert.InEpsilon(t, low.AmpsDC+part*(high.AmpsDC-low.AmpsDC), limit(&a), 1e-9, "between two points where it runs")
	assert.InEpsilon(t, allowed/a.ConductorAreaMM2.Value, a.DensityPerAmp.Value*limit(&a), 1e-9)
}
