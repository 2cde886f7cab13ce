package winding_test

import (
	"math"
	"strings"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// says reports whether a finding at a path contains given words.
func says(o *winding.Outcome, path, words string) bool {
	for _, f := range o.Findings {
		if f.Path == path && strings.Contains(f.Text, words) {
			return true
		}
	}
	return false
}

// The thresholds of findings, by inputs just below and just above. The limits are common practice, no
// source, except hexagonal packing, 2/√3.
func TestWhatIsBelievedAndWhatIsNot(t *testing.T) {
	copper := 10 * math.Pi / 4 // ten turns of 1 mm in a side
	for _, c := range []struct {
		what, path, words string
		limit             float64
		set               func(j *job.Job, v float64)
	}{
		{"fill limit", "slot.fill_limit", "more than can be wound by hand", 0.80,
			func(j *job.Job, v float64) { j.Slot.FillLimit = quantity.Known(v) }},
		{"copper fill", "trial[0].gauge", "copper fill", 0.60, func(j *job.Job, v float64) {
			j.Slot = job.SlotSpec{AreaMM2: quantity.Known(copper / v), LinerMM: quantity.Known(0), WedgeMM: quantity.Known(0)}
		}},
		{"wire fill", "trial[0].turns", "cannot be", 1.1547, func(j *job.Job, v float64) {
			over := evaluateA(*j).OverallMM.Value
			j.Slot = job.SlotSpec{AreaMM2: quantity.Known(10 * over * over / v), LinerMM: quantity.Known(0), WedgeMM: quantity.Known(0)}
		}},
		{"hertz", "target.top", "Hz", 1000, func(j *job.Job, v float64) { j.Target.TopRPM = quantity.Known(v * 120 / 12) }},
		{"volts between leads", "trial[0].turns", "rms between leads", 250, func(j *job.Job, v float64) {
			j.Target.TopRPM = quantity.Known(v / evaluateA(*j).LinePerRPM.Value)
		}},
		{"spread of spin-up readings", "spin[0].line", "differ by", 0.10, func(j *job.Job, v float64) {
			for _, volts := range []float64{10 * (1 + v/2), 10 * (1 - v/2)} {
				j.Spins = append(j.Spins, job.SpinReading{RPM: quantity.Known(1000), LineVolts: quantity.Known(volts)})
			}
		}},
		{"air gap over bore", "machine.air_gap", "large for a bore", 0.1, func(j *job.Job, v float64) { j.Machine.AirGapMM = quantity.Known(v * 100) }},
		{"diode, half of its rating", "battery.diode_reverse", "more than half", 0.5, func(j *job.Job, v float64) {
			j.Target.TopRPM = quantity.Known(2000)
			j.Battery.DiodeReverseVolts = quantity.Known(evaluateA(*j).OpenAtTopVolts.Value / v)
		}},
		{"diode, all of it", "battery.diode_reverse", "their rating is", 1, func(j *job.Job, v float64) {
			j.Target.TopRPM = quantity.Known(2000)
			j.Battery.DiodeReverseVolts = quantity.Known(evaluateA(*j).OpenAtTopVolts.Value / v)
		}},
		{"bridge over short circuit", "old.inductance", "the bridge says", 1.33, func(j *job.Job, v float64) { bridgeAgainstShort(j, v) }},
		{"short circuit over bridge", "old.inductance", "the bridge says", 1 / 0.75, func(j *job.Job, v float64) { bridgeAgainstShort(j, 1/v) }},
	} {
		for factor, want := range map[float64]bool{0.9: false, 0.998: false, 1.002: true} {
			j := plain()
			j.Old = job.OldWinding{Wound: j.Trials[0].Wound}
			c.set(&j, c.limit*factor)
			o := winding.Evaluate(j)
			assert.Equal(t, want, says(&o, c.path, c.words), "%s: %g of its limit", c.what, factor)
		}
	}
}

// bridgeAgainstShort gives a short-circuit reading of 1 mH a phase and a bridge reading of
// some times as much.
func bridgeAgainstShort(j *job.Job, times float64) {
	a := evaluateA(*j)
	const rpm = 2000.0
	amps := a.PhasePerRPM.Value * rpm / math.Hypot(a.PhaseOhms20.Value, 2*math.Pi*rpm/10*0.001)
	j.Shorts = []job.ShortReading{{RPM: quantity.Known(rpm), LineAmps: quantity.Known(amps)}}
	j.Old.LeadMilliHenries = quantity.Known(2 * times)
}

// A wire's AC resistance is reported above 1.1 times its DC resistance (Dowell), at the top speed, and
// not below.
func TestACResistanceIsCalledOut(t *testing.T) {
	under, over := 0, 0
	for rpm := 500.0; rpm < 20000; rpm *= 1.01 {
		j := plain()
		j.Slot = job.SlotSpec{Shape: "parallel", TopMM: quantity.Known(6), DepthMM: quantity.Known(25)}
		j.Trials[0].Turns = quantity.Known(40)
		j.Target.TopRPM = quantity.Known(rpm)
		o := winding.Evaluate(j)
		f := o.Trials[0].ACFactor.Value
		require.Greater(t, f, 1.0)
		assert.Equal(t, f > 1.1, says(&o, "trial[0].gauge", "AC resistance"), "%g rpm: %g", rpm, f)
		if f > 1.097 && f <= 1.1 {
			under++
		}
		if f > 1.1 && f < 1.103 {
			over++
		}
	}
	assert.Positive(t, under, "just below")
	assert.Positive(t, over, "just above")
}

// A delta is told of its third harmonic from kw3 0.05 on. Two poles of q slots a pole and phase
// with the span 2q + 1: kw3 is sin(270°·(2q+1)/3q)·sin(90°)/(q·sin(90°/q)) = 1/q exactly.
func TestThirdHarmonicInADelta(t *testing.T) {
	for q, want := range map[float64]bool{19: true, 21: false} {
		j := plain()
		j.Machine.Slots, j.Machine.Poles, j.Machine.Span, j.Machine.Layers = quantity.Known(6*q), quantity.Known(2), quantity.Known(2*q+1), quantity.Known(2)
		o := winding.Evaluate(j)
		assert.False(t, says(&o, "trial[0].connection", "third-harmonic"), "a star has no ring for it")
		j.Trials[0].Connection = layout.Delta
		o = winding.Evaluate(j)
		assert.InEpsilon(t, 1/q, o.Trials[0].Kw3.Value, 1e-9)
		assert.Equal(t, want, says(&o, "trial[0].connection", "third-harmonic"), "q %g", q)
	}
}

// Charging above the battery's limit is reported, by how much, and with the dump load that takes all of
// it at the absorption voltage.
func TestOverChargeIsCalledOut(t *testing.T) {
	j := ready()
	top := evaluateA(j).MostAmps.Value
	j.Battery.MaxChargeAmps = quantity.Known(top * 1.001)
	o := winding.Evaluate(j)
	assert.Nil(t, finding(&o, "battery.charge_limit"))
	assert.Zero(t, o.Trials[0].OverChargeAmps.Value, "no less than none")
	assert.Contains(t, o.Trials[0].OverChargeAmps.Why, " A below it")
	j.Battery.MaxChargeAmps = quantity.Known(top - 1)
	o = winding.Evaluate(j)
	f := finding(&o, "battery.charge_limit")
	require.NotNil(t, f)
	assert.Equal(t, winding.Doubt, f.Severity)
	assert.Contains(t, f.Text, "1.0 A above the battery's limit")
	assert.InEpsilon(t, 1, o.Trials[0].OverChargeAmps.Value, 1e-9)
	cold := full(coldJob(j))
	assert.Greater(t, cold, 1.05*o.Trials[0].Operating[2].FullAmps, "by the hot winding's amps it would be too small")
	assert.InEpsilon(t, 14.4/cold, o.Trials[0].DumpOhms.Value, 1e-6)
	assert.InEpsilon(t, 14.4*cold, o.Trials[0].DumpWatts.Value, 1e-6)
}

// coldJob is a machine whose winding stays as cold as its air, whatever flows: as a gust finds it.
func coldJob(j job.Job) job.Job {
	j.Machine.KelvinPerWatt = quantity.Known(1e-9)
	return j
}

// full is the amps into a battery that absorbs in the top condition.
func full(j job.Job) float64 { return evaluateA(j).Operating[2].FullAmps }

// A wind rotor's gust finds the winding cold too: the dump load takes what an unheated winding gives at
// the absorption volts in the furling wind.
func TestTheDumpLoadTakesAGustOnAColdWinding(t *testing.T) {
	j := load(t, "wind-good.toml")
	j.Machine.KelvinPerWatt = quantity.Known(0.8)
	a := evaluateA(j)
	require.Greater(t, a.Operating[2].WindingC, 60.0)
	cold := full(coldJob(j))
	o := winding.Evaluate(j)
	absorption := o.Machine.AbsorptionVolts.Value
	assert.Greater(t, cold, 1.02*a.Operating[2].FullAmps)
	assert.InEpsilon(t, absorption*cold, a.DumpWatts.Value, 2e-3)
	assert.InEpsilon(t, absorption/cold, a.DumpOhms.Value, 2e-3)
}

// Where nothing flows into a full battery there is nothing to dump, and that is why.
func TestNoDumpLoadForWhatDoesNotCharge(t *testing.T) {
	j := ready()
	j.Trials[0].Turns = quantity.Known(1)
	a := evaluateA(j)
	require.Len(t, a.Operating, 3)
	require.Zero(t, a.Operating[2].FullAmps)
	assert.False(t, a.DumpOhms.Known())
	assert.False(t, a.DumpWatts.Known())
	assert.Contains(t, a.DumpWatts.Why, "nothing flows into a full battery")
}

// A spin-up reading good to 2 % makes every volt good to 2 %, each of them shown as such, the
// one to be proved at the test speed too.
func TestEveryVoltCarriesItsUncertainty(t *testing.T) {
	j := ready()
	j.Field.GapTesla = quantity.Reading{}
	j.Target.TestRPM = quantity.Known(700)
	j.Battery.DiodeVolts = quantity.Known(0.75)
	j.Spins = []job.SpinReading{{RPM: quantity.Known(1000), LineVolts: plusMinus(12, 0.24)}}
	a := evaluateA(j)
	for name, f := range map[string]quantity.Figure{"phase": a.PhasePerRPM, "line": a.LinePerRPM, "line at 1000": a.LinePer1000RPM,
		"peak": a.PeakDCPerRPM, "test": a.LineAtTest, "open": a.OpenAtTopVolts} {
		assert.InEpsilon(t, 0.02*f.Value, f.PlusMinus, 1e-9, name)
	}
	assert.InEpsilon(t, 12*0.7, a.LineAtTest.Value, 1e-9)
	assert.InEpsilon(t, a.CutInRPM.Value*(1-1/1.02), a.CutInRPM.PlusMinus, 1e-9)
	k := plain()
	k.Machine.MeanTurnMM = plusMinus(200, 4)
	b := evaluateA(k)
	for name, f := range map[string]quantity.Figure{"mean turn": b.MeanTurnMM, "phase": b.PhaseOhms20, "lead": b.LeadOhms20,
		"phase, test": b.PhaseOhmsT, "lead, test": b.LeadOhmsT, "copper": b.CopperKg} {
		assert.InEpsilon(t, 0.02*f.Value, f.PlusMinus, 1e-9, name)
	}
}
