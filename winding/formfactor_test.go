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

// Where the curve's rms reaches what is allowed, by hand on straight stretches.
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

// What a winding withstands does not depend on who turns it, and thinner wire never withstands more:
// not even where it barely begins within the drive's speeds, with thin pulses.
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

// Where the third harmonic circulates the allowed current in the delta before anything is charged, the
// limit says so; a star has none.
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

// Magnets that cover 0.95 of a pole are a block whose third harmonic is sin(3·85.5°)/(3·sin 85.5°),
// 0.33 of the fundamental (Fourier). With full-pitch coils in delta it drives 13.5 A rms round the ring
// at 500 rpm (computed outside the program: 1.75 V at 150 Hz behind 0.102 Ω at 77 °C and 85 µH, the
// phase's 125 less 0.823 of the 48.6 of its gap, whose waves other than the third and its multiples
// cancel), where 1.767 mm² at 4.75 A/mm² allow 8.4 A: charging begins at 893 rpm only, and nothing is
// left for it, not a few hundredths of an ampere that some speed would exceed.
func TestARingThatTakesAllLeavesNoAmps(t *testing.T) {
	j := job.Parse(ringTakesAll).Job()
	o := Evaluate(j)
	delta, star := &o.Trials[0], &o.Trials[1]
	require.NotEmpty(t, delta.Operating)
	slowly := delta.Operating[slow]
	require.Zero(t, slowly.AmpsDC)
	require.InEpsilon(t, 13.47, slowly.PhaseAmpsRMS, 0.01)
	assert.Less(t, delta.LimitAmps.Value, 1e-3)
	assert.False(t, delta.LimitRPM.Known(), "%g rpm", delta.LimitRPM.Value)
	assert.Contains(t, delta.LimitRPM.Why, "before any amps flow")
	assert.Contains(t, delta.Verdict, "before any amps flow")
	assert.False(t, delta.DensityPerAmp.Known())
	assert.True(t, delta.OverLimit())
	assert.Greater(t, star.LimitAmps.Value, 10.0, "in star nothing goes round")
	assert.True(t, star.LimitRPM.Known())
}

const ringTakesAll = `format = 1
name = "block magnets, delta and star"
[machine]
slots = 36
poles = 12
layers = 1
span = 3
bore_mm = 92
stack_mm = 30
air_gap_mm = 0.5
mean_turn_mm = 178
rise_k_per_w = 0.9
drag_w = 15
drag_at_rpm = 1500
[slot]
shape = "pear"
top_mm = 4.4
bottom_mm = 5.6
depth_mm = 16
mouth_mm = 2.2
[field]
kind = "magnets"
remanence_t = 1.15
magnet_mm = 4
cover = 0.95
magnet_at_c = 60
[drive]
kind = "fixed"
slow_rpm = 500
usual_rpm = 1200
top_rpm = 3000
[battery]
chemistry = "gel"
cells = 6
capacity_ah = 70
diode = "schottky"
[[trial]]
name = "A"
turns = 8
gauge = "1.5 mm"
connection = "delta"
[[trial]]
name = "B"
turns = 8
gauge = "1.5 mm"
`
