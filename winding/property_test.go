package winding_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// anyJob is a random plausible machine: balanced slots and poles, a wire, a flux.
func anyJob(r *rand.Rand) job.Job {
	shapes := [][2]float64{{36, 12}, {24, 8}, {48, 16}, {36, 4}, {12, 10}, {9, 8}, {27, 6}, {42, 14}, {12, 8}}
	s := shapes[r.IntN(len(shapes))]
	j := job.Job{Name: "random"}
	known := quantity.Known
	j.Machine = job.Machine{Slots: known(s[0]), Poles: known(s[1]), Phases: known(3), Layers: known(2),
		BoreMM: known(50 + 200*r.Float64()), StackMM: known(15 + 80*r.Float64()), AirGapMM: known(0.3 + r.Float64())}
	j.Slot = job.SlotSpec{AreaMM2: known(40 + 100*r.Float64()), MouthMM: known(2 + 2*r.Float64())}
	j.Field.GapTesla = known(0.2 + 0.6*r.Float64())
	j.Battery = job.BatterySpec{Chemistry: "flooded", Cells: known(6), CapacityAh: known(50 + 200*r.Float64())}
	j.Target = job.Target{SlowRPM: known(300), UsualRPM: known(700), TopRPM: known(1500), Amps: known(5)}
	for range 2 {
		t := job.Trial{Name: string(rune('A' + len(j.Trials)))}
		t.Turns = known(float64(4 + r.IntN(30)))
		t.Gauge = wiretable.Sizes(wiretable.AWG)[18+r.IntN(8)]
		j.Trials = append(j.Trials, t)
	}
	return j
}

func forAny(t *testing.T, n int, f func(r *rand.Rand, j job.Job)) {
	r := rand.New(rand.NewPCG(11, 17))
	for range n {
		f(r, anyJob(r))
		if t.Failed() {
			return
		}
	}
}

// Scaling laws: the effect of doubling turns, strands, circuits or the flux, and of star against delta.
func TestScalingLaws(t *testing.T) {
	forAny(t, 120, func(_ *rand.Rand, j job.Job) {
		j.Machine.MeanTurnMM = quantity.Known(200) // coils round one tooth get longer as they build up
		changed := func(f func(*job.Trial)) winding.TrialOutcome {
			k := j
			k.Trials = []job.Trial{j.Trials[0]}
			f(&k.Trials[0])
			return winding.Prepare(k).Static(k.Trials[0])
		}
		one := changed(func(*job.Trial) {})
		same := func(want, got quantity.Figure, k float64, what string) {
			require.True(t, want.Known() && got.Known(), what)
			assert.InEpsilon(t, want.Value*k, got.Value, 1e-9, what)
		}
		two := changed(func(t *job.Trial) { t.Turns.Value *= 2 })
		same(one.LinePerRPM, two.LinePerRPM, 2, "volts go with turns")
		same(one.CutInRPM, two.CutInRPM, 0.5, "cut-in against turns")
		same(one.PhaseOhms20, two.PhaseOhms20, 2, "ohms with turns of one wire")
		same(one.PhaseMilliHenries, two.PhaseMilliHenries, 4, "inductance with their square")
		same(one.WireFill, two.WireFill, 2, "fill with turns")
		same(one.CopperKg, two.CopperKg, 2, "copper with turns")
		hands := changed(func(t *job.Trial) { t.Strands = quantity.Known(3) })
		same(one.PhaseOhms20, hands.PhaseOhms20, 1.0/3, "ohms against strands")
		same(one.WireFill, hands.WireFill, 3, "fill with strands")
		same(one.LinePerRPM, hands.LinePerRPM, 1, "volts do not know strands")
		same(one.DensityPerAmp, hands.DensityPerAmp, 1.0/3, "density against strands")
		delta := changed(func(t *job.Trial) { t.Connection = layout.Delta })
		same(one.LinePerRPM, delta.LinePerRPM, 1/math.Sqrt(3), "delta volts")
		same(one.LeadOhms20, delta.LeadOhms20, 1.0/3, "delta ohms between leads: 2R against 2R/3")
		same(one.CutInRPM, delta.CutInRPM, math.Sqrt(3), "delta cut-in")
		if len(one.CircuitChoices) > 1 {
			a := float64(one.CircuitChoices[1])
			split := changed(func(t *job.Trial) { t.Circuits = quantity.Known(a) })
			same(one.LinePerRPM, split.LinePerRPM, 1/a, "volts against circuits")
			same(one.PhaseOhms20, split.PhaseOhms20, 1/(a*a), "ohms against their square")
			same(one.CopperKg, split.CopperKg, 1, "copper does not know circuits")
		}
		k := j
		k.Field.GapTesla.Value *= 1.5
		strong := winding.Prepare(k).Static(k.Trials[0])
		same(one.LinePerRPM, strong.LinePerRPM, 1.5, "volts with flux")
	})
}

// A winding that fits by its own limit has no more turns than fit.
func TestTurnsThatFitIsTheLimit(t *testing.T) {
	forAny(t, 200, func(_ *rand.Rand, j job.Job) {
		b := winding.Prepare(j)
		o := b.Static(j.Trials[0])
		fits := o.TurnsThatFit.Value
		if fits < 1 {
			return
		}
		full, over := j.Trials[0], j.Trials[0]
		full.Turns, over.Turns = quantity.Known(fits), quantity.Known(fits+1)
		assert.LessOrEqual(t, b.Static(full).WireFill.Value, o.FillLimit.Value*(1+1e-9))
		assert.Greater(t, b.Static(over).WireFill.Value, o.FillLimit.Value)
		assert.Less(t, b.Static(full).CopperFill.Value, b.Static(full).RoundFill.Value)
		assert.Less(t, b.Static(full).RoundFill.Value, b.Static(full).WireFill.Value)
	})
}

// Running into the battery: nothing below cut-in, more amps with speed, energy that adds up, and
// consistent interpolation of each curve.
func TestRunningIntoTheBattery(t *testing.T) {
	forAny(t, 40, func(_ *rand.Rand, j job.Job) {
		o := winding.Evaluate(j)
		for _, a := range o.Trials {
			require.Empty(t, a.NoCharging)
			last := 0.0
			for _, p := range a.Curve {
				if p.RPM < a.CutInRPM.Value*(1-1e-9) {
					assert.Zero(t, p.AmpsDC)
				}
				// The curve is against a battery taking charge, cut-in against one at rest.
				m := &o.Machine
				if p.RPM > a.CutInRPM.Value*1.02*(m.ChargingVolts.Value+2*m.DiodeVolts.Value)/(m.RestVolts.Value+2*m.DiodeVolts.Value) {
					assert.Positive(t, p.AmpsDC)
				}
				if !p.TooHot {
					assert.GreaterOrEqual(t, p.AmpsDC, last*0.97, "heat may bend it, not break it")
				}
				last = p.AmpsDC
				// Energy balance: battery, cable and inner drop, copper, diodes, iron.
				assert.LessOrEqual(t, p.BatteryWatts+p.CopperWatts+p.DiodeWatts+p.IronWatts, p.ShaftWatts*(1+1e-9))
				assert.InDelta(t, p.ShaftWatts, p.TorqueNm*2*math.Pi*p.RPM/60, 1e-9*math.Max(1, p.ShaftWatts))
				assert.LessOrEqual(t, p.Efficiency, 1.0)
			}
			if a.TargetRPM.Known() {
				assert.Greater(t, a.TargetRPM.Value, a.CutInRPM.Value)
			}
		}
		if c := o.Trials[1].CrossRPM; c.Known() {
			assert.Greater(t, c.Value, math.Max(o.Trials[0].CutInRPM.Value, o.Trials[1].CutInRPM.Value)*0.99)
		}
	})
}

func TestEvaluateIsPure(t *testing.T) {
	forAny(t, 20, func(_ *rand.Rand, j job.Job) {
		before, err := json.Marshal(j)
		require.NoError(t, err)
		one, two := winding.Evaluate(j), winding.Evaluate(j)
		assert.True(t, reflect.DeepEqual(one, two), "the same job, the same outcome")
		after, err := json.Marshal(j)
		require.NoError(t, err)
		assert.Equal(t, before, after, "the job is not touched")
	})
}

// The same machine written in inches and °F.
func TestUnitsDoNotMatter(t *testing.T) {
	mm := job.Parse("[machine]\nslots = 36\npoles = 12\nbore_mm = 88.9\nstack_mm = 38.1\nambient_c = 35\n[slot]\narea_mm2 = 64.516\n[field]\ngap_flux_t = 0.5\n[[trial]]\nturns = 12\ngauge = \"1.016 mm\"\n")
	inch := job.Parse("[machine]\nslots = 36\npoles = 12\nbore_in = 3.5\nstack_in = 1.5\nambient_f = 95\n[slot]\narea_in2 = 0.1\n[field]\ngap_flux_t = 0.5\n[[trial]]\nturns = 12\ngauge = \"0.040 in\"\n")
	require.Empty(t, mm.Problems())
	require.Empty(t, inch.Problems())
	a, b := winding.Evaluate(mm.Job()), winding.Evaluate(inch.Job())
	assert.InEpsilon(t, a.Trials[0].PhaseOhms20.Value, b.Trials[0].PhaseOhms20.Value, 1e-9)
	assert.InEpsilon(t, a.Trials[0].WireFill.Value, b.Trials[0].WireFill.Value, 1e-9)
	assert.InEpsilon(t, a.Trials[0].CutInRPM.Value, b.Trials[0].CutInRPM.Value, 1e-9)
	assert.InEpsilon(t, a.Trials[0].LimitAmps.Value, b.Trials[0].LimitAmps.Value, 1e-9)
}

// An empty job has no figures, but a reason for every one that is shown.
func TestAnEmptyJobSaysWhatItNeeds(t *testing.T) {
	o := winding.Evaluate(job.Job{Trials: []job.Trial{{Name: "A"}}})
	for _, row := range o.Comparison {
		for _, c := range row.Cells {
			if !c.Figure.Known() {
				assert.NotEmpty(t, c.Figure.Why, row.Label)
			}
		}
	}
	text, err := json.Marshal(o)
	require.NoError(t, err)
	assert.NotContains(t, string(text), "NaN")
	_, err = json.Marshal(winding.Evaluate(job.Job{}))
	require.NoError(t, err)
}

// Ohms follow the copper law from 20 °C to the test temperature.
func TestOhmsAtTheTestTemperature(t *testing.T) {
	forAny(t, 20, func(r *rand.Rand, j job.Job) {
		c := -20 + 100*r.Float64()
		j.Target.TestC = quantity.Known(c)
		o := winding.Evaluate(j).Trials[0]
		assert.InEpsilon(t, (234.5+c)/254.5, o.LeadOhmsT.Value/o.LeadOhms20.Value, 1e-12)
	})
}

func BenchmarkEvaluateExample(b *testing.B) {
	j := job.Example().Job()
	for b.Loop() {
		winding.Evaluate(j)
	}
}

// BenchmarkStatic is the cost to a search of each candidate.
func BenchmarkStatic(b *testing.B) {
	j := job.Example().Job()
	bench := winding.Prepare(j)
	for b.Loop() {
		bench.Static(j.Trials[0])
	}
}

func BenchmarkPrepare(b *testing.B) {
	j := job.Example().Job()
	for b.Loop() {
		winding.Prepare(j)
	}
}
