package winding

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Where the curve's rms comes to what is allowed, by hand on straight stretches.
func TestLimitIsWhereTheTrueRMSComesToIt(t *testing.T) {
	at := func(rpm float64) RunPoint { // from 100 rpm, two amps and three amps rms for 100 more
		over := max(0, rpm-100) / 100
		return RunPoint{RPM: rpm, AmpsDC: 2 * over, PhaseAmpsRMS: 3 * over}
	}
	assert.InEpsilon(t, 4, dcAt(at, 100, 500, 6, 0.8), 1e-4)
	assert.InEpsilon(t, 2.0/3*0.02, dcAt(at, 100, 500, 0.02, 0.8), 1e-12, "in proportion where it hardly begins")
	assert.InEpsilon(t, 8+8/0.8, dcAt(at, 100, 500, 20, 0.8), 1e-12, "beyond the top, 8 A rms more are 10 A DC by the form of the convention")
	assert.InEpsilon(t, 8+8/1.5, dcAt(at, 100, 500, 20, 2), 1e-12, "and by its own, 1.5 A rms of an ampere DC, where that is less")
	assert.Zero(t, dcAt(at, 100, 100, 3, 0.8), "nothing flows up to the top")
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
	k := slices.IndexFunc(a.Curve, func(p RunPoint) bool { return p.PhaseAmpsRMS >= allowed })
	require.Positive(t, k)
	assert.Greater(t, limit(&a), a.Curve[k-1].AmpsDC)
	assert.Less(t, limit(&a), a.Curve[k].AmpsDC)
	assert.InEpsilon(t, allowed/a.ConductorAreaMM2.Value, a.DensityPerAmp.Value*limit(&a), 1e-9)
}

// What a winding stands does not hang on who turns it, and thinner wire never stands more:
// not where it hardly begins within the drive's speeds, with thin pulses, either.
func TestTheLimitIsTheWindings(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/pedals-hub.toml")
	require.NoError(t, err)
	j := job.Parse(string(text)).Job()
	limits := func(top float64) map[string]float64 {
		j.Drive.TopRPM = quantity.Known(top)
		rungs := Prepare(j).LadderIn(0, 1, wiretable.IEC)
		out := map[string]float64{}
		last := math.Inf(1)
		for i := range rungs {
			r := &rungs[i]
			assert.Less(t, r.LimitAmps.Value, last, "%g rpm: %s", top, r.Wire)
			last = r.LimitAmps.Value
			out[r.Wire] = last
		}
		return out
	}
	slow, fast := limits(200), limits(400)
	require.Greater(t, len(slow), 8)
	for wire, amps := range slow {
		assert.InEpsilon(t, fast[wire], amps, 0.12, wire)
	}
}

// Where the third harmonic drives the allowed current round the delta before anything is
// charged, the limit says so; a star has none.
func TestTheLimitTellsTheCurrentRoundTheDelta(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/consequent-pole.toml")
	require.NoError(t, err)
	o := Evaluate(job.Parse(string(text)).Job())
	require.Equal(t, layout.Delta, o.Trials[0].Connection)
	assert.Contains(t, o.Trials[0].LimitAmps.Why, "round in the delta is 100 %")
	assert.NotContains(t, o.Trials[1].LimitAmps.Why, "delta")
	told := slices.ContainsFunc(o.Findings, func(f Finding) bool { return f.Trial == "A" && strings.Contains(f.Text, "round in the delta") })
	assert.True(t, told)
}
