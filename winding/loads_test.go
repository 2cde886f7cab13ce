package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/charge"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// feeding is the example, of one phase or three, into another load.
func feeding(phases float64, change func(b *job.BatterySpec)) job.Job {
	j := job.Example().Job()
	j.Machine.Phases = quantity.Known(phases)
	j.Battery.CableM = quantity.Known(0)
	change(&j.Battery)
	return j
}

// conducting are the points of a curve at which current flows.
func conducting(t *testing.T, o *winding.TrialOutcome) []winding.RunPoint {
	t.Helper()
	var list []winding.RunPoint
	for _, p := range o.Curve {
		if p.AmpsDC > 0.05 {
			list = append(list, p)
		}
	}
	require.NotEmpty(t, list)
	return list
}

// Ohm's law, and the figures that do not apply to a resistor.
func TestAResistor(t *testing.T) {
	o := winding.Evaluate(feeding(3, func(b *job.BatterySpec) { b.Load, b.ResistorOhms = "resistor", quantity.Known(1.5) }))
	for _, p := range conducting(t, &o.Trials[0]) {
		assert.InEpsilon(t, 1.5*p.AmpsDC, p.VoltsDC, 1e-9)
		assert.GreaterOrEqual(t, p.BatteryWatts, 1.5*p.AmpsDC*p.AmpsDC*(1-1e-9), "ripple heats as well")
		assert.InEpsilon(t, p.ShaftWatts, p.BatteryWatts+p.CopperWatts+p.DiodeWatts+p.IronWatts, 1e-6)
		assert.InDelta(t, p.AmpsDC-p.FieldWatts/p.VoltsDC, p.NetAmps, 1e-9)
	}
	assert.InEpsilon(t, 2*0.75/o.Trials[0].PeakDCPerRPM.Value, o.Trials[0].CutInRPM.Value, 1e-9)
	for _, no := range []quantity.Figure{o.Machine.RestVolts, o.Machine.AbsorptionVolts, o.Machine.ChargeLimitAmps, o.Machine.FuseAmps, o.Trials[0].OverChargeAmps, o.Trials[0].EmptyUsual, o.Trials[0].FullUsual} {
		assert.False(t, no.Known())
		assert.Contains(t, no.Why, "resistor")
	}
	for _, c := range o.Cautions {
		assert.NotEqual(t, "battery", c.Topic)
	}
}

// A resistor on a bridge with negligible inductance gives 3√3/π of the phase peak, less two diodes: any
// text on power electronics. At low enough speed, the example's winding does.
func TestAResistorByHand(t *testing.T) {
	j := feeding(3, func(b *job.BatterySpec) {
		b.Load, b.ResistorOhms = "resistor", quantity.Known(400)
		b.DiodeVolts, b.DiodeOhms = quantity.Known(0), quantity.Known(0)
	})
	o := winding.Evaluate(j)
	for _, p := range conducting(t, &o.Trials[0]) {
		assert.InEpsilon(t, 3/math.Pi*o.Trials[0].PeakDCPerRPM.Value*p.RPM, p.VoltsDC, 0.01)
	}
}

// A converter's input keeps its volts.
func TestAHeldBus(t *testing.T) {
	j := feeding(3, func(b *job.BatterySpec) { b.Load, b.BusVolts = "bus", quantity.Known(20) })
	o := winding.Evaluate(j)
	for _, p := range conducting(t, &o.Trials[0]) {
		assert.Equal(t, 20.0, p.VoltsDC)
		assert.InEpsilon(t, 20*p.AmpsDC, p.BatteryWatts, 1e-9)
	}
	assert.InEpsilon(t, 21.5/o.Trials[0].PeakDCPerRPM.Value, o.Trials[0].CutInRPM.Value, 1e-9)
	assert.Contains(t, o.Machine.FuseAmps.Why, "converter")
	j.Battery.BusVolts = quantity.Reading{}
	o = winding.Evaluate(j)
	assert.Contains(t, o.Trials[0].CutInRPM.Why, "converter's input holds")
	assert.Empty(t, o.Trials[0].Curve)
}

// Half wave begins at one diode drop less, a doubler at half the speed; every point asked for comes
// from the solver itself, and the curve passes through it.
func TestSinglePhaseRectifiers(t *testing.T) {
	for _, c := range []struct {
		word        string
		way         charge.Rectifier
		needs, open float64
	}{{"bridge", charge.Bridge, 12.6 + 1.5, 1}, {"half-wave", charge.HalfWave, 12.6 + 0.75, 1}, {"doubler", charge.Doubler, 12.6 + 1.5, 2}} {
		j := feeding(1, func(b *job.BatterySpec) {
			b.Rectifier, b.RestVolts, b.ChargingVolts, b.Ohms = c.word, quantity.Known(12.6), quantity.Known(13.5), quantity.Known(0.03)
		})
		j.Field.Volts = quantity.Known(13.5) // a separate supply, so that the battery at rest has no effect
		b := winding.Prepare(j)
		o := b.Outcome()
		a := &o.Trials[0]
		assert.InEpsilon(t, c.open*math.Sqrt2*a.LinePerRPM.Value, a.PeakDCPerRPM.Value, 1e-9, c.word)
		assert.InEpsilon(t, c.needs/a.PeakDCPerRPM.Value, a.CutInRPM.Value, 1e-9, c.word)
		for _, drawn := range conducting(t, a) {
			p, why := b.RunAt(0, drawn.RPM)
			require.Empty(t, why)
			assert.InEpsilon(t, p.AmpsDC, drawn.AmpsDC, 1e-4, "%s at %g rpm", c.word, p.RPM)
			assert.InEpsilon(t, p.PhaseAmpsRMS, drawn.PhaseAmpsRMS, 1e-4, c.word)
			q, err := charge.Solve(charge.Source{
				EMFPeak: math.Sqrt2 * a.PhasePerRPM.Value * p.RPM, Hertz: p.RPM / 10, Phases: 1,
				Ohms: a.PhaseOhms20.Value * (234.5 + p.WindingC) / 254.5, Henries: a.PhaseMilliHenries.Value / 1000,
			}, charge.Load{Volts: 13.5, Ohms: 0.03, DiodeVolts: 0.75, DiodeOhms: 0.004, Rectifier: c.way})
			require.NoError(t, err)
			assert.InEpsilon(t, q.DCAmps, p.AmpsDC, 1e-9, "%s at %g rpm", c.word, p.RPM)
			assert.InEpsilon(t, q.PhaseAmpsRMS, p.PhaseAmpsRMS, 1e-9, c.word)
		}
	}
}

// Two phases, each through its own diodes, are one circuit with any rectifier: computed as such by
// package charge.
func TestTwoPhasesByEveryRectifier(t *testing.T) {
	for word, way := range map[string]charge.Rectifier{"bridge": charge.Bridge, "half-wave": charge.HalfWave, "doubler": charge.Doubler} {
		j := load(t, "two-phase.toml")
		j.Battery = job.BatterySpec{Load: job.LoadResistor, ResistorOhms: quantity.Known(6), Rectifier: word}
		b := winding.Prepare(j)
		o := b.Outcome()
		a := &o.Trials[0]
		require.Empty(t, a.NoCharging)
		for _, rpm := range []float64{900, 1800} {
			p, why := b.RunAt(0, rpm)
			require.Empty(t, why)
			q, err := charge.Solve(charge.Source{
				EMFPeak: math.Sqrt2 * a.PhasePerRPM.Value * rpm, Hertz: rpm * 4 / 120, Phases: 2,
				Ohms: a.PhaseOhms20.Value * (234.5 + p.WindingC) / 254.5, Henries: a.PhaseMilliHenries.Value / 1000,
			}, charge.Load{Ohms: 6, DiodeVolts: 0.75, DiodeOhms: 0.004, Rectifier: way})
			require.NoError(t, err)
			assert.InEpsilon(t, q.DCAmps, p.AmpsDC, 1e-9, "%s at %g rpm", word, rpm)
			assert.InEpsilon(t, q.CopperWatts, p.CopperWatts, 1e-9, word)
			assert.InEpsilon(t, 6*q.DCAmpsRMS*q.DCAmpsRMS, p.BatteryWatts, 1e-9, word)
		}
	}
}

// Three leads take a bridge only, and every figure that needs the load says so.
func TestARectifierForOnePhase(t *testing.T) {
	o := winding.Evaluate(feeding(3, func(b *job.BatterySpec) { b.Rectifier = "doubler" }))
	assert.Contains(t, o.Trials[0].CutInRPM.Why, "takes a single phase")
	assert.Contains(t, o.Machine.ChargingVolts.Why, "takes a single phase")
	assert.Empty(t, o.Trials[0].Curve)
	assert.True(t, o.Trials[0].LinePerRPM.Known())
}

// At half wave a diode blocks the peak plus the battery: its rating has to cover both.
func TestReverseVoltsAtHalfWave(t *testing.T) {
	tight := func(way string) bool {
		j := feeding(1, func(b *job.BatterySpec) { b.Rectifier = way })
		for _, t := range winding.Evaluate(j).Trials {
			j.Battery.DiodeReverseVolts = quantity.Known(max(j.Battery.DiodeReverseVolts.Value, 2.2*t.MostVolts.Value))
		}
		for _, f := range winding.Evaluate(j).Findings {
			if f.Path == "battery.diode_reverse" {
				return true
			}
		}
		return false
	}
	assert.False(t, tight("bridge"))
	assert.True(t, tight("half-wave"))
}
