package battery

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Voltages a cell: lead-acid float 2.25 to 2.30 and absorption 2.40 to 2.45 at 25 °C
// (Remco); 12.8 V lithium iron phosphate 14.2 V absorption, 13.5 V float (a maker's
// guide), 3.65 V the most a cell may see (several makers). First current at most 0.3 A
// for each Ah (Remco), lithium 0.5 (APL48-50LFP manual).
func TestLevelsLieInThePublishedRanges(t *testing.T) {
	for _, c := range []Chemistry{Flooded, AGM} {
		l, err := Levels(Spec{Chemistry: c, Cells: 6, CapacityAh: 100})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, l.FloatVolts.Value, 6*2.25)
		assert.LessOrEqual(t, l.FloatVolts.Value, 6*2.30)
		assert.GreaterOrEqual(t, l.AbsorptionVolts.Value, 6*2.40)
		assert.LessOrEqual(t, l.AbsorptionVolts.Value, 6*2.45)
		assert.LessOrEqual(t, l.MaxChargeAmps.Value, 30.0+1e-9)
	}
	l, err := Levels(Spec{Chemistry: LFP, Cells: 4, CapacityAh: 50})
	require.NoError(t, err)
	assert.InDelta(t, 14.2, l.AbsorptionVolts.Value, 1e-9)
	assert.InDelta(t, 13.5, l.FloatVolts.Value, 1e-9)
	assert.Less(t, l.AbsorptionVolts.Value, 4*3.65)
	assert.InDelta(t, 25, l.MaxChargeAmps.Value, 1e-9)
	for _, c := range Chemistries()[:4] {
		l, err := Levels(Spec{Chemistry: c, Cells: 6, CapacityAh: 80})
		require.NoError(t, err)
		assert.Less(t, l.RestVolts.Value, l.FloatVolts.Value)
		assert.Less(t, l.FloatVolts.Value, l.AbsorptionVolts.Value)
		for _, v := range []Level{l.RestVolts, l.AbsorptionVolts, l.FloatVolts, l.MaxChargeAmps, l.Ohms} {
			assert.NotEmpty(t, v.Source)
			assert.False(t, v.Given)
			assert.Positive(t, v.Value)
		}
		twice, err := Levels(Spec{Chemistry: c, Cells: 12, CapacityAh: 80})
		require.NoError(t, err)
		assert.InEpsilon(t, 2*l.RestVolts.Value, twice.RestVolts.Value, 1e-12, "volts go with cells")
		assert.InEpsilon(t, 2*l.Ohms.Value, twice.Ohms.Value, 1e-12)
	}
}

func TestWhatIsGivenGoesFirst(t *testing.T) {
	l, err := Levels(Spec{Chemistry: Custom, RestVolts: 24.5, AbsorptionVolts: 28, MaxChargeAmps: 7, Ohms: 0.02})
	require.NoError(t, err)
	assert.Equal(t, Level{24.5, sourceGiven, true}, l.RestVolts)
	assert.Equal(t, 7.0, l.MaxChargeAmps.Value)
	assert.Zero(t, l.FloatVolts.Value, "not known, not made up")
	l, err = Levels(Spec{Chemistry: Custom, RestVolts: 24.5, AbsorptionVolts: 28, FloatVolts: 28})
	require.NoError(t, err, "one voltage for both, as many chargers have it")
	assert.Equal(t, 28.0, l.FloatVolts.Value)
}

func TestRefusals(t *testing.T) {
	for _, s := range []Spec{{Chemistry: Custom}, {Chemistry: 9, Cells: 6}, {Cells: 0}, {Cells: 201}, {Cells: 6, CapacityAh: math.NaN()},
		{Cells: 6, RestVolts: 15}, {Cells: 6, FloatVolts: 15}, {Cells: 6, RestVolts: 14, AbsorptionVolts: 14}, {Cells: 6, Ohms: -1}, {Cells: 6, MaxChargeAmps: math.Inf(1)}} {
		_, err := Levels(s)
		assert.ErrorIs(t, err, ErrSpec, "%+v", s)
	}
	for _, c := range Chemistries() {
		got, err := ParseChemistry(" " + c.String())
		require.NoError(t, err)
		assert.Equal(t, c, got)
	}
	_, err := ParseChemistry("potato")
	assert.Error(t, err)
}

func TestCableAndFuse(t *testing.T) {
	// 10 m there and 10 m back of 1.7241 mm²: 20·1.7241e-8/1.7241e-6 = 0.2 ohm at 20 °C.
	assert.InEpsilon(t, 0.2, CableOhms(10, 1.7241, 20), 1e-12)
	assert.InEpsilon(t, 0.2*274.5/254.5, CableOhms(10, 1.7241, 40), 1e-12)
	assert.Zero(t, CableOhms(0, 16, 20))
	// 2.5 mm² carry 27 A and 4 mm² 36 A (IEC 60364-5-52, table B.52.4, method C; from memory).
	for mm2, amps := range map[float64]float64{0.4: 0, 2.5: 27, 3.9: 27, 4: 36, 500: 299} {
		assert.Equal(t, amps, CableAmps(mm2), "%g mm²", mm2)
	}
	for amps, mm2 := range map[float64]float64{1: 0.5, 27: 2.5, 27.1: 4, 36: 4, 300: 0} {
		assert.Equal(t, mm2, CableFor(amps), "%g A", amps)
	}
	assert.Equal(t, 15.0, FuseAmps(12))
	assert.Equal(t, 20.0, FuseAmps(12.1))
	assert.Zero(t, FuseAmps(1000))
	assert.Zero(t, FuseAmps(math.NaN()))
}
