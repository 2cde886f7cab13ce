package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/charge"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two equal sets into one battery are two machines in parallel: one with half the ohms and half the
// inductance of a phase, behind diodes of half the slope, gives the amps of both. This does not use the
// program's division of the load between sets.
func TestTwoSetsAreTwoMachinesSideBySide(t *testing.T) {
	j := ready()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span = quantity.Known(48), quantity.Known(8), quantity.Reading{}
	j.Machine.Layers = quantity.Known(2)
	j.Machine.Sets = quantity.Known(2)
	j.Battery.Ohms = quantity.Known(0.3) // so that it matters whose current it carries
	a := evaluateA(j)
	require.Empty(t, a.NoCharging)
	require.Len(t, a.AtSpeeds, 3)
	charging := 0
	for _, p := range a.AtSpeeds {
		hot := a.PhaseOhms20.Value * (234.5 + p.WindingC) / 254.5
		both, err := charge.Solve(charge.Source{EMFPeak: math.Sqrt2 * a.PhasePerRPM.Value * p.RPM, Hertz: p.RPM * 8 / 120,
			Ohms: hot / 2, Henries: a.PhaseMilliHenries.Value / 2000, Phases: 3},
			charge.Load{Volts: 12.6, Ohms: 0.3, DiodeVolts: 0.75, DiodeOhms: 0.002})
		require.NoError(t, err)
		assert.InDelta(t, both.DCAmps, p.AmpsDC, 1e-6*both.DCAmps+1e-9, "%.0f rpm", p.RPM)
		assert.InDelta(t, both.CopperWatts, p.CopperWatts, 1e-6*both.CopperWatts+1e-9)
		assert.InDelta(t, both.DiodeWatts, p.DiodeWatts, 1e-6*both.DiodeWatts+1e-9)
		assert.InDelta(t, both.PhaseAmpsRMS/2, p.PhaseAmpsRMS, 1e-6*both.PhaseAmpsRMS+1e-9, "each set carries half")
		assert.InDelta(t, both.InputWatts, p.ShaftWatts, 1e-6*both.InputWatts+1e-9)
		if p.AmpsDC > 1 {
			charging++
		}
	}
	assert.GreaterOrEqual(t, charging, 2)
}

// Two sets share the coils of one: of 48 coils a phase of a set has 8, of one set 16. A set carries
// half of the DC, and both have to be wound.
func TestFiguresOfTwoSets(t *testing.T) {
	j := plain()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span = quantity.Known(48), quantity.Known(8), quantity.Known(6)
	j.Machine.Layers = quantity.Known(2)
	one := evaluateA(j)
	j.Machine.Sets = quantity.Known(2)
	two := evaluateA(j)
	assert.Equal(t, 160.0, one.SeriesTurns.Value)
	assert.Equal(t, 80.0, two.SeriesTurns.Value)
	// q = 2 is kd = cos 15° for one set; each of two has q = 1 of its own.
	assert.InEpsilon(t, math.Cos(math.Pi/12), one.Kw1.Value, 1e-12)
	assert.InEpsilon(t, 1, two.Kw1.Value, 1e-12)
	assert.InEpsilon(t, 80/(160*math.Cos(math.Pi/12)), two.LinePerRPM.Value/one.LinePerRPM.Value, 1e-12)
	assert.InEpsilon(t, 0.5, two.PhaseOhms20.Value/one.PhaseOhms20.Value, 1e-12)
	assert.InEpsilon(t, 1, two.CopperKg.Value/one.CopperKg.Value, 1e-12, "the same coils")
	assert.InEpsilon(t, 1, two.Buy[0].Metres.Value/one.Buy[0].Metres.Value, 1e-12)
	assert.InEpsilon(t, math.Sqrt(2.0/3)/2/(math.Pi/4), two.DensityPerAmp.Value, 1e-12, "half the DC in a set")
	limit := func(o *winding.TrialOutcome, name string) float64 {
		for _, l := range o.Each {
			if l.Name == name {
				return l.AmpsDC.Value
			}
		}
		t.Fatalf("no limit %s", name)
		return 0
	}
	assert.InEpsilon(t, 2, limit(&two, "density")/limit(&one, "density"), 1e-12)
	// Six windings of half the ohms at half the current make a quarter of the heat: twice the amps.
	assert.InEpsilon(t, 2, limit(&two, "temperature")/limit(&one, "temperature"), 1e-12)
}
