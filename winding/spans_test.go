package winding_test

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/published"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// withTrial is the job with one trial, changed.
func withTrial(j job.Job, f func(*job.Trial)) (*winding.Bench, winding.TrialOutcome) {
	j.Trials = []job.Trial{j.Trials[0]}
	f(&j.Trials[0])
	b := winding.Prepare(j)
	return b, b.Static(j.Trials[0])
}

// A compared span predicts what the trial gives when wound on that span: volts, mean turn, ohms and
// metal, computed in full.
func TestSpansPromiseWhatTheTrialGives(t *testing.T) {
	t.Parallel()
	seen := 0
	forAny(t, 40, func(r *rand.Rand, j job.Job) {
		j.Machine.MeanTurnMM = quantity.Known(150 + 200*r.Float64())
		b, now := withTrial(j, func(*job.Trial) {})
		for _, s := range b.Spans(0) {
			_, then := withTrial(j, func(t *job.Trial) { t.Span = quantity.Known(float64(s.Span)) })
			assert.Equal(t, s.Present, s.Span == now.Span)
			close := func(change float64, a, b quantity.Figure, what string) {
				require.True(t, a.Known() && b.Known(), what)
				assert.InDelta(t, 1+change/100, b.Value/a.Value, 1e-9, "%s, span %d", what, s.Span)
			}
			close(s.VoltsPercent.Value, now.LinePerRPM, then.LinePerRPM, "volts")
			close(s.WirePercent.Value, now.PhaseOhms20, then.PhaseOhms20, "ohms")
			close(s.WirePercent.Value, now.CopperKg, then.CopperKg, "metal")
			assert.InDelta(t, then.MeanTurnMM.Value, s.MeanTurnMM.Value, 1e-9)
			assert.InDelta(t, then.Kw3.Value, s.Kw3, 1e-12)
			// Turns scaled to equal volts: the wire scales with them.
			turns := now.LinePerRPM.Value / then.LinePerRPM.Value
			assert.InDelta(t, then.CopperKg.Value*turns/now.CopperKg.Value, 1+s.SameVoltsPercent.Value/100, 1e-9)
			assert.Equal(t, then.CircuitChoices, s.Circuits)
			seen++
		}
	})
	assert.Greater(t, seen, 100)
}

// A compared number of circuits predicts what the trial gives with it.
func TestCircuitsPromiseWhatTheTrialGives(t *testing.T) {
	t.Parallel()
	forAny(t, 40, func(_ *rand.Rand, j job.Job) {
		b, now := withTrial(j, func(*job.Trial) {})
		choices := b.CircuitsChoices(0)
		require.Len(t, choices, len(now.CircuitChoices))
		for _, c := range choices {
			other, then := withTrial(j, func(t *job.Trial) { t.Circuits = quantity.Known(float64(c.Circuits)) })
			assert.InDelta(t, 1+c.VoltsPercent/100, then.LinePerRPM.Value/now.LinePerRPM.Value, 1e-9)
			assert.InDelta(t, 1+c.OhmsPercent/100, then.PhaseOhms20.Value/now.PhaseOhms20.Value, 1e-9)
			assert.InDelta(t, 1+c.AmpsPercent/100, now.DensityPerAmp.Value/then.DensityPerAmp.Value, 1e-9)
			plan, why := other.Plan(0)
			require.Empty(t, why)
			assert.Len(t, plan.Wiring(layout.Star).Joins, c.Joins)
			_, back := withTrial(j, func(t *job.Trial) {
				t.Circuits, t.Turns = quantity.Known(float64(c.Circuits)), quantity.Known(c.SameVoltsTurns.Value)
			})
			assert.InEpsilon(t, now.LinePerRPM.Value, back.LinePerRPM.Value, 1e-9, "turns for the same volts")
		}
	})
}

// Every double-layer three-phase row of the table of winding factors (sources in its column source),
// derived from full pitch by the comparison: volts are proportional to kp1.
func TestSpansAgainstPublishedPitchFactors(t *testing.T) {
	checked := 0
	for _, row := range published.Rows(t, "layout/winding_factors.csv") {
		number := func(name string) float64 { v, _ := strconv.ParseFloat(row[name], 64); return v }
		q, poles, pitch := number("Q"), number("poles"), number("pitch")
		if number("phases") != 3 || number("layers") != 2 || math.Mod(q, 3*poles) != 0 || pitch > q/poles {
			continue
		}
		j := job.Job{Trials: []job.Trial{{Name: "A"}}}
		j.Machine = job.Machine{Slots: quantity.Known(q), Poles: quantity.Known(poles), Phases: quantity.Known(3), Layers: quantity.Known(2)}
		for _, s := range winding.Prepare(j).Spans(0) {
			if s.Span == int(pitch) {
				assert.InDelta(t, number("kp1"), 1+s.VoltsPercent.Value/100, 0.6e-5, row["id"])
				assert.InDelta(t, number("kw5"), s.Kw5, 0.6e-5, row["id"])
				checked++
			}
		}
	}
	assert.Greater(t, checked, 20)
}

// A pitch a third shorter than the pole removes the third harmonic: sin(3·60°) = 0 (Pyrhönen et al.,
// Design of Rotating Electrical Machines, ch. 2, from memory).
func TestTwoThirdsPitchHasNoThirdHarmonic(t *testing.T) {
	j := job.Job{Trials: []job.Trial{{Name: "A"}}}
	j.Machine = job.Machine{Slots: quantity.Known(36), Poles: quantity.Known(4), Layers: quantity.Known(2)}
	b := winding.Prepare(j)
	var spans []int
	for _, s := range b.Spans(0) {
		spans = append(spans, s.Span)
		assert.Equal(t, s.Span == 6 || s.Span == 12, s.Kw3 < 1e-9, "span %d", s.Span)
		assert.False(t, s.WirePercent.Known(), "no bore, no mean turn")
		if s.Span == 6 {
			assert.InDelta(t, 100*(math.Sqrt(3)/2-1), s.VoltsPercent.Value, 1e-9)
			assert.InDelta(t, 200.0/3, s.PitchPercent, 1e-9)
		}
	}
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17}, spans, "18 is two pole pitches: no voltage")
	assert.Nil(t, b.Spans(1))
	assert.Nil(t, b.CircuitsChoices(-1))
	assert.Nil(t, winding.Prepare(job.Job{Trials: j.Trials}).Spans(0), "no slots")
}
