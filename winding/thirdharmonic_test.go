package winding

import (
	"math"
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The third harmonic of a gap wave over its fundamental, by Fourier's integral over the wave
// itself: the trapezoid flat over two thirds, the block as wide as the magnets.
func TestThirdOfTheGapWave(t *testing.T) {
	shape := func(f func(deg float64) float64) float64 {
		var a [4]float64
		for i := range 36000 {
			deg := (float64(i) + 0.5) / 200 // a half wave
			for _, n := range []int{1, 3} {
				a[n] += f(deg) * math.Sin(float64(n)*deg*math.Pi/180)
			}
		}
		return math.Abs(a[3] / a[1])
	}
	trapezoid := shape(func(deg float64) float64 { return min(1, deg/30, (180-deg)/30) })
	assert.InEpsilon(t, trapezoid, thirdWave(&job.FieldSpec{Kind: "wound"}), 1e-6)
	for _, cover := range []float64{0.6, 0.75, 0.9} {
		block := shape(func(deg float64) float64 {
			if math.Abs(deg-90) < 90*cover {
				return 1
			}
			return 0
		})
		assert.InDelta(t, block, thirdWave(&job.FieldSpec{Kind: "magnets", MagnetCover: quantity.Known(cover)}), 1e-4)
	}
}

// deltaJob is 36 slots, 12 poles, q = 1, in delta, charging.
func deltaJob() job.Job {
	g, err := wiretable.Parse("1 mm")
	if err != nil {
		panic(err)
	}
	return job.Job{
		Machine: job.Machine{Slots: quantity.Known(36), Poles: quantity.Known(12), Layers: quantity.Known(1), Span: quantity.Known(3), BoreMM: quantity.Known(100),
			StackMM: quantity.Known(50), MeanTurnMM: quantity.Known(200), AirGapMM: quantity.Known(0.5), KelvinPerWatt: quantity.Known(0.8)},
		Field:   job.FieldSpec{Kind: "wound", GapTesla: quantity.Known(0.5)},
		Battery: job.BatterySpec{RestVolts: quantity.Known(12.6), AbsorptionVolts: quantity.Known(14.4), Ohms: quantity.Known(0.02), Chemistry: "custom"},
		Target:  job.Target{SlowRPM: quantity.Known(600), UsualRPM: quantity.Known(900), TopRPM: quantity.Known(2000)},
		Trials:  []job.Trial{{Name: "A", Wound: job.Wound{Turns: quantity.Known(10), Gauge: g}, Connection: layout.Delta}},
	}
}

// By hand: E3 = 2/9 of E with kw3 = kw1 = 1; L0 = π²/36 of the working wave's inductance,
// against π²/9 for the phase's, and the same leakage, for a slot holds one phase only.
func TestThirdHarmonicCurrentByHand(t *testing.T) {
	b := Prepare(deltaJob())
	o := b.Outcome()
	a := &o.Trials[0]
	at := a.in(usual)
	require.NotNil(t, at)
	const mu0 = 4e-7 * math.Pi
	working := 3 * mu0 * 0.1 * 0.05 * 3600 / (math.Pi * 0.0005 * saturated * 36)
	leakage := a.PhaseMilliHenries.Value/1000 - working*math.Pi*math.Pi/9
	l0 := working*math.Pi*math.Pi/36 + leakage
	ohms := a.PhaseOhms20.Value * (234.5 + at.WindingC) / 254.5
	want := 2.0 / 9 * a.PhasePerRPM.Value * at.RPM / math.Hypot(ohms, 2*math.Pi*3*at.RPM/10*l0)
	assert.InEpsilon(t, want, a.ThirdAmps.Value, 1e-9)
	require.Greater(t, want, 0.5)

	// It adds to heat and to what the shaft gives, not to the amps DC.
	r, _ := b.bed.charger(b.job.Trials[0], a)
	with := r.solve(at.RPM, 60)
	r.ring = ring{}
	without := r.solve(at.RPM, 60)
	hot := a.PhaseOhms20.Value * (234.5 + 60) / 254.5
	i3 := 2.0 / 9 * a.PhasePerRPM.Value * at.RPM / math.Hypot(hot, 2*math.Pi*3*at.RPM/10*l0)
	assert.Equal(t, without.DCAmps, with.DCAmps)
	assert.InEpsilon(t, 3*i3*i3*hot, with.CopperWatts-without.CopperWatts, 1e-9)
	assert.InEpsilon(t, 3*i3*i3*hot, with.InputWatts-without.InputWatts, 1e-9)
	assert.InEpsilon(t, math.Hypot(without.PhaseAmpsRMS, i3), with.PhaseAmpsRMS, 1e-12)

	said := ""
	for _, f := range o.Findings {
		if f.Path == "trial[0].connection" {
			said = f.Text
		}
	}
	assert.Contains(t, said, "A of it in the usual condition (the gap's flux density taken as a trapezoid")

	star := deltaJob()
	star.Trials[0].Connection = layout.Star
	assert.False(t, Evaluate(star).Trials[0].ThirdAmps.Known())
}

// Below the speed at which it charges the third harmonic circulates in the delta all the same, and warms
// the copper: 0.8 K for each watt.
func TestADeltaIsWarmBeforeItCharges(t *testing.T) {
	j := deltaJob()
	j.Machine.IronWatts, j.Machine.IronRPM, j.Machine.AmbientC = quantity.Known(0), quantity.Known(600), quantity.Known(25)
	b := Prepare(j)
	o := b.Static(j.Trials[0])
	r, why := b.bed.charger(j.Trials[0], &o)
	require.NotNil(t, r, why)
	p := r.at(0.8*o.CutInRPM.Value, 25)
	require.Zero(t, p.AmpsDC)
	require.Greater(t, p.CopperWatts, 1.0)
	assert.InDelta(t, 25+0.8*p.CopperWatts, p.WindingC, 0.02)
}

// By hand: a side sees B and the other −B a coil's width on, so a sine n comes out as 2·sin(n·β/2), and
// three coils 20° apart as sin(n·30°)/(3·sin(n·10°)) of that. The third of a full pole's coil is turned
// with its wave: −sin(270°) = 1, flat as B is. Of 140° it is −sin(210°) = 0.5, still flat, of 100°
// −sin(150°) = −0.5: pointed.
func TestThirdOfTheEMFByHand(t *testing.T) {
	f := &job.FieldSpec{Kind: "wound"}
	_, ok := thirdOfEMF(f, new(coilSet))
	assert.False(t, ok, "no layout")
	j := deltaJob()
	j.Machine.Poles, j.Machine.Layers = quantity.Known(4), quantity.Known(2)
	const deg = math.Pi / 180
	spread := 1 / (3 * math.Sin(30*deg)) * 3 * math.Sin(10*deg) / math.Sin(30*deg)
	for span, third := range map[float64]float64{9: 1, 7: 0.5 / math.Sin(70*deg), 5: -0.5 / math.Sin(50*deg)} {
		j.Machine.Span = quantity.Known(span)
		w := Prepare(j).layouts.candidate(j.Trials[0])
		part, ok := thirdOfEMF(f, &w.coils)
		require.True(t, ok)
		assert.InEpsilon(t, 2.0/9*spread*third, part, 1e-9, "%g slots", span)
	}
}

// A third harmonic that is not in the coils drives nothing.
func TestTwoThirdsPitchHasNoRingCurrent(t *testing.T) {
	j := deltaJob()
	j.Machine.Span, j.Machine.Layers = quantity.Known(2), quantity.Known(2)
	assert.InDelta(t, 0, Evaluate(j).Trials[0].ThirdAmps.Value, 1e-9)
}

// The field coil takes the mean of the bridge: the textbook's line R·I + V0 touches the
// curve k·n·Φ with k = (3/π)·√2 of the volts between leads.
func TestSelfExcitationGoesByTheMean(t *testing.T) {
	j := deltaJob()
	j.Trials[0].Connection = layout.Star
	j.Old = job.OldWinding{Wound: j.Trials[0].Wound}
	j.Field = job.FieldSpec{Kind: "wound", Ohms: quantity.Known(4), Amps: quantity.Known(2)}
	for amps, volts := range map[float64]float64{1: 10, 2: 15} {
		j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(1000), LineVolts: quantity.Known(volts), FieldAmps: quantity.Known(amps)})
	}
	a := Evaluate(j).Trials[0]
	// Through 10 V at 1 A and 15 V at 2 A: 30·I/(2 + I) volts at 1000 rpm.
	lowest := math.Inf(1)
	for i := 0.01; i < 3; i += 0.001 {
		need := i*4*(234.5+80)/254.5 + 1 + 2*0.75
		lowest = min(lowest, need/(3/math.Pi*math.Sqrt2*30*i/(2+i)/1000))
	}
	assert.InEpsilon(t, lowest, a.ExciteHoldRPM.Value, 1e-5)
}
