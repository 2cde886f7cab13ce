package winding_test

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Six magnets of 4 mm on twelve poles, by hand at 20 °C: the circuit of a pole pair has one magnet and
// two gaps of 1 mm, B = Br/(1 + μr·2g/h) with no leakage. Twelve magnets have B = Br/(1 + μr·g/h). With
// μr = 1.05 that is 1.2/1.525 against 1.2/1.2625 T: 0.8279 of the flux.
func TestHalfAsManyMagnetsAsPoles(t *testing.T) {
	j := plain()
	known := quantity.Known
	j.Field.GapTesla = quantity.Reading{}
	j.Field.Kind = "magnets"
	j.Field.RemanenceTesla, j.Field.MagnetMM, j.Field.MagnetGapMM = known(1.2), known(4), known(1)
	j.Field.LeakageFactor, j.Field.MagnetC = known(1), known(20)
	volts := func(magnets float64) float64 {
		j.Field.Magnets = quantity.Reading{}
		if magnets > 0 {
			j.Field.Magnets = known(magnets)
		}
		a := evaluateA(j)
		require.True(t, a.LinePerRPM.Known(), a.LinePerRPM.Why)
		return a.LinePerRPM.Value
	}
	assert.InEpsilon(t, 1.2625/1.525, volts(6)/volts(12), 1e-4)
	assert.Equal(t, volts(0), volts(12), "one to a pole unless said")
	j.Field.Magnets = known(8)
	o := winding.Evaluate(j)
	f := finding(&o, "field.magnets")
	require.NotNil(t, f)
	assert.Contains(t, f.Text, "8 magnets and 12 poles")
	j.Field.Magnets = known(6)
	o = winding.Evaluate(j)
	assert.Nil(t, finding(&o, "field.magnets"))
}

// For the winding's field magnets are gap with μr 1.05: half as many add half as much.
func TestInductanceWithPolesOfBareIron(t *testing.T) {
	gapOf := func(magnets float64) float64 {
		j := plain()
		j.Field.Kind = "magnets"
		j.Machine.AirGapMM, j.Field.MagnetMM, j.Field.Magnets = quantity.Known(1), quantity.Known(4.2), quantity.Known(magnets)
		return evaluateA(j).PhaseMilliHenries.Value
	}
	leak := func() float64 { // what does not cross the gap: from two gaps that are known
		a, b := gapOf(12), gapOf(6) // a = G/5 + leak, b = G/3 + leak
		return (5*a - 3*b) / 2
	}()
	assert.Positive(t, leak)
	// Slot and end leakage by hand: no slot is known, λ = 1: 2μ0·L·N²/(p·q); the end by its own.
	assert.Greater(t, leak, 2*4e-7*math.Pi*0.05*3600/6*1000)
	assert.Greater(t, gapOf(6), gapOf(12))
}
