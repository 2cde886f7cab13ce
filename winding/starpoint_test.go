package winding_test

import (
	"fmt"
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Full-pitch coils, one slot per pole and phase: kw3 = kw1 = 1. Magnets that cover 0.8 of the pole
// have B3/B1 = |sin(3·72°)|/(3·sin 72°) = 0.2060. With 7.5 V and 0.75 V diodes V is 9 V, so the
// star point's diodes begin where the phase's peak is 3 V/0.2060 = 14.56 V.
func TestDiodesAtTheStarPoint(t *testing.T) {
	j := ready()
	j.Machine.Slots, j.Machine.Poles, j.Machine.Span = quantity.Known(36), quantity.Known(12), quantity.Known(3)
	j.Machine.Sets = quantity.Reading{}
	j.Field.Kind, j.Field.MagnetCover = "magnets", quantity.Known(0.8)
	j.Battery = job.BatterySpec{Load: "bus", BusVolts: quantity.Known(7.5), DiodeVolts: quantity.Known(0.75), StarDiodes: "yes"}
	begins := 3 / (math.Sin(36*math.Pi/180) / (3 * math.Sin(72*math.Pi/180))) / (math.Sqrt2 * evaluateA(j).PhasePerRPM.Value)

	said := func(top float64) string {
		j.Target.TopRPM = quantity.Known(top)
		o := winding.Evaluate(j)
		return fmt.Sprint(o.Findings)
	}
	assert.Contains(t, said(begins*0.99), "add nothing up to the top speed")
	assert.Contains(t, said(begins*1.01), "what they add is counted")
	// What they add is nothing before that speed, and shows in amps, in the windings and as heat well above.
	at := func(times float64) winding.RunPoint {
		p, why := winding.Prepare(j).RunAt(0, times*begins)
		require.Empty(t, why)
		return p
	}
	with, high := at(0.99), at(4)
	j.Battery.StarDiodes = ""
	assert.Equal(t, at(0.99), with)
	plain := at(4)
	assert.Greater(t, high.AmpsDC, 1.02*plain.AmpsDC)
	assert.Greater(t, high.PhaseAmpsRMS, plain.PhaseAmpsRMS)
	assert.InEpsilon(t, high.ShaftWatts, high.BatteryWatts+high.CopperWatts+high.DiodeWatts+high.IronWatts+high.CableWatts, 1e-6)
	j.Battery.StarDiodes = "yes"
	j.Trials[0].Connection = layout.Delta
	assert.Contains(t, said(300), "a delta has none")
}

// With sine EMFs behind ohms and inductance the star point stays within a sixth of the bridge's
// volts from its middle, in steps so small that nothing of the program's solution is in it.
func TestTheStarPointOfABridge(t *testing.T) {
	for _, emf := range []float64{0.62, 0.8, 1.5, 4} { // peak of a phase over the bridge's volts
		const ohms, henries, steps = 0.2, 0.6, 20000
		i := [3]float64{}
		far, flows := 0.0, false
		for n := range 12 * steps {
			e, b := [3]float64{}, [3]float64{}
			h := 2 * math.Pi / steps
			for k := range e {
				e[k] = emf * math.Sin(float64(n)*h-2*math.Pi*float64(k)/3)
				b[k] = e[k] + henries/h*i[k]
			}
			star, next := bridged(b, ohms+henries/h)
			i = next
			if n > 10*steps && next != [3]float64{} {
				far, flows = max(far, math.Abs(star)), true
			}
		}
		require.True(t, flows)
		assert.LessOrEqual(t, far, 1.0/6+1e-3, "%g", emf)
	}
}

// bridged is one implicit step of three phases b behind a on a bridge of 1 V: the potential of the
// star point from the middle, and the currents.
func bridged(b [3]float64, a float64) (star float64, amps [3]float64) {
	for state := range 27 {
		s := [3]float64{float64(state%3 - 1), float64(state/3%3 - 1), float64(state/9 - 1)}
		sum, n := 0.0, 0.0
		for k := range s {
			if s[k] != 0 {
				sum, n = sum+s[k]/2-b[k], n+1
			}
		}
		if n < 2 {
			continue
		}
		star, amps = sum/n, [3]float64{}
		agrees := true
		for k := range s {
			if s[k] == 0 {
				agrees = agrees && math.Abs(b[k]+star) <= 0.5+1e-9
				continue
			}
			amps[k] = (b[k] + star - s[k]/2) / a
			agrees = agrees && amps[k]*s[k] >= -1e-12
		}
		if agrees {
			return star, amps
		}
	}
	return 0, [3]float64{}
}
