package battery

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"slotwright/winding/published"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each row of testdata/battery/levels.csv names its source: our figures lie in the
// published range, and each says in words where it comes from.
func TestLevelsAgainstTheTable(t *testing.T) {
	seen := map[Chemistry]int{}
	for _, row := range published.Rows(t, "battery/levels.csv") {
		kind, err := ParseChemistry(row["chemistry"])
		require.NoError(t, err)
		low, high := row.Number(t, "low"), row.Number(t, "high")
		l, err := Levels(Spec{Chemistry: kind, Cells: 10, CapacityAh: 10})
		require.NoError(t, err)
		level := map[string]Level{"float": l.FloatVolts, "absorption": l.AbsorptionVolts, "rate": l.MaxChargeAmps}[row["item"]]
		assert.GreaterOrEqual(t, level.Value/10, low-1e-9, "%v", row)
		assert.LessOrEqual(t, level.Value/10, high+1e-9, "%v", row)
		seen[kind]++
	}
	assert.Equal(t, map[Chemistry]int{Flooded: 3, AGM: 3, Gel: 3, LFP: 3}, seen)
}

// Volts scale with cells, inner ohms with cells over capacity, the charge limit with capacity; given
// values stay as given.
func TestLevelsScale(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 9))
	for range 300 {
		kind := Chemistries()[r.IntN(4)]
		n, ah := 1+r.IntN(60), 1+500*r.Float64()
		l, err := Levels(Spec{Chemistry: kind, Cells: n, CapacityAh: ah})
		require.NoError(t, err)
		three, err := Levels(Spec{Chemistry: kind, Cells: n, CapacityAh: 3 * ah})
		require.NoError(t, err)
		assert.InEpsilon(t, 3*l.MaxChargeAmps.Value, three.MaxChargeAmps.Value, 1e-12)
		assert.InEpsilon(t, l.Ohms.Value/3, three.Ohms.Value, 1e-12)
		assert.Equal(t, l.RestVolts, three.RestVolts)
		assert.Contains(t, l.Ohms.Source, "guess")
		assert.Less(t, l.MaxChargeAmps.Value*l.Ohms.Value, 0.1*l.RestVolts.Value, "the charge limit lifts a battery by no more than a tenth")
		given, err := Levels(Spec{Chemistry: kind, Cells: n, CapacityAh: ah, Ohms: 0.5, FloatVolts: l.FloatVolts.Value * 0.99})
		require.NoError(t, err)
		assert.Equal(t, Level{0.5, sourceGiven, true}, given.Ohms)
		assert.True(t, given.FloatVolts.Given)
	}
	assert.Equal(t, 6, CellsOf12V(Gel))
	assert.Equal(t, 4, CellsOf12V(LFP))
}

func TestLevelsNeedAnOrder(t *testing.T) {
	_, err := Levels(Spec{Cells: 6, FloatVolts: 15})
	assert.ErrorIs(t, err, ErrSpec)
	assert.ErrorContains(t, err, "float voltage: read 15.00 V")
	_, err = Levels(Spec{Cells: 6, AbsorptionVolts: 12})
	assert.ErrorContains(t, err, "rest voltage")
	l, err := Levels(Spec{Chemistry: Custom, RestVolts: 24})
	require.NoError(t, err)
	assert.Zero(t, l.AbsorptionVolts.Value)
	assert.Equal(t, sourceNone, l.AbsorptionVolts.Source, "what is not known says so")
}

// The dangers of each kind are named, and so are settings above a published limit.
func TestCautions(t *testing.T) {
	for _, kind := range Chemistries() {
		all := strings.Join(Cautions(Spec{Chemistry: kind, Cells: CellsOf12V(kind), CapacityAh: 100}), "\n")
		assert.Contains(t, all, "fuse")
		assert.Equal(t, kind == LFP, strings.Contains(all, "below 0 °C") && strings.Contains(all, "management"), kind)
		assert.Equal(t, kind == Flooded, strings.Contains(all, "explodes"), kind)
		assert.Equal(t, kind != LFP && kind != Custom, strings.Contains(all, "hydrogen"), kind)
		assert.NotContains(t, all, "above the", kind)
	}
	over := strings.Join(Cautions(Spec{Chemistry: LFP, Cells: 4, CapacityAh: 100, AbsorptionVolts: 15, MaxChargeAmps: 80}), "\n")
	assert.Contains(t, over, "3.75 V a cell, above the 3.65 V that lfp takes")
	assert.Contains(t, over, "80 A is above the 50 A")
	at := strings.Join(Cautions(Spec{Chemistry: LFP, Cells: 4, CapacityAh: 100, AbsorptionVolts: 14.6, MaxChargeAmps: 50}), "\n")
	assert.NotContains(t, at, "above the", "at the limit is not above it")
}

// The next size from 125 %, by hand: 1.25 · 25 = 31.25 asks for the 40 A fuse, 1.25 · 96 =
// 120 for 125 A.
func TestFuseIsTheNextSize(t *testing.T) {
	for amps, fuse := range map[float64]float64{0.5: 1, 6: 7.5, 6.01: 10, 8: 10, 8.1: 15, 20: 25, 24: 30, 25: 40, 32: 40,
		96: 125, 100.5: 150, 119: 150, 120: 150, 125: 175, 239: 300, 241: 400, 400: 500} {
		assert.Equal(t, fuse, FuseAmps(amps), "%g A", amps)
	}
	assert.Zero(t, FuseAmps(400.1))
}

// Copper between two temperatures, J.O. Bird's and the IEC's law, and the sheet value
// of 1 mm²: 17.241 mΩ for a metre (IEC 60028).
func TestCableOhmsLaw(t *testing.T) {
	assert.InEpsilon(t, 0.017241, CableOhms(0.5, 1, 20), 1e-12, "half a metre there is a metre of wire")
	r := rand.New(rand.NewPCG(8, 8))
	for range 200 {
		l, a, temp := 0.1+40*r.Float64(), 0.5+100*r.Float64(), -20+100*r.Float64()
		base := CableOhms(l, a, temp)
		assert.InEpsilon(t, 2*base, CableOhms(2*l, a, temp), 1e-12)
		assert.InEpsilon(t, base/2, CableOhms(l, 2*a, temp), 1e-12)
		assert.InEpsilon(t, CableOhms(l, a, 20)*(1+0.00393*(temp-20)), base, 2e-4, "0.00393 a kelvin from 20 °C (handbook)")
	}
	for _, v := range [][3]float64{{math.NaN(), 4, 20}, {1, math.NaN(), 20}, {1, 4, math.NaN()}, {math.Inf(1), 4, 20}, {1, 4, math.Inf(1)}, {1, 4, -300}, {1, 0, 20}} {
		assert.Zero(t, CableOhms(v[0], v[1], v[2]), "%v", v)
	}
}

// A parsed word is written back as it was; no spec gives a level that is not finite.
func FuzzParseChemistry(f *testing.F) {
	for _, s := range []string{"flooded", "AGM", " gel ", "LFP", "custom", "", "lead", "\xff", "agm agm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ParseChemistry(text)
		if err != nil {
			require.ErrorContains(t, err, "expected one of")
			return
		}
		again, err := ParseChemistry(c.String())
		require.NoError(t, err)
		require.Equal(t, c, again)
		require.True(t, strings.EqualFold(strings.TrimSpace(text), c.String()))
	})
}

func FuzzLevels(f *testing.F) {
	f.Add(0, 6, 100.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(4, 0, 0.0, 24.0, 28.0, 0.0, 5.0, 0.01)
	f.Add(3, 16, 1e-300, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, kind, n int, ah, rest, absorption, float, amps, ohms float64) {
		s := Spec{Chemistry: Chemistry(kind), Cells: n, CapacityAh: ah, RestVolts: rest, AbsorptionVolts: absorption, FloatVolts: float, MaxChargeAmps: amps, Ohms: ohms}
		l, err := Levels(s)
		if err != nil {
			require.ErrorIs(t, err, ErrSpec)
			return
		}
		for _, v := range []Level{l.RestVolts, l.AbsorptionVolts, l.FloatVolts, l.MaxChargeAmps, l.Ohms} {
			require.False(t, math.IsNaN(v.Value) || math.IsInf(v.Value, 0) || v.Value < 0, "%+v from %+v", l, s)
			require.NotEmpty(t, v.Source)
		}
		require.NotEmpty(t, Cautions(s))
	})
}
