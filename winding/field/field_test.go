package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Readings made from a known curve give that curve back.
func TestFitFindsTheCurveBehindTheReadings(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		want := Curve{Infinity: 0.1 + r.Float64()*10, Half: 0.3 + r.Float64()*8, Residual: r.Float64() * 0.2}
		var readings []Reading
		for _, amps := range []float64{0, 0.5, 1, 2, 3.5, 5} {
			readings = append(readings, Reading{Amps: amps, Flux: max(1e-9, want.At(amps))})
		}
		got, err := Fit(readings)
		require.NoError(t, err)
		assert.InEpsilon(t, want.Half, got.Half, 1e-4)
		assert.InEpsilon(t, want.Infinity, got.Infinity, 1e-4)
		assert.Less(t, got.Error, 1e-5)
		assert.False(t, got.Outside(5))
		assert.True(t, got.Outside(5.1))
		amps, ok := got.Amps(got.At(2.7))
		assert.True(t, ok)
		assert.InEpsilon(t, 2.7, amps, 1e-9, "there and back")
		_, ok = got.Amps((got.Infinity + got.Residual) * 1.0001)
		assert.False(t, ok)
	}
}

func TestTwoReadingsGiveTheCurveThroughBoth(t *testing.T) {
	c, err := Fit([]Reading{{Amps: 1, Flux: 2}, {Amps: 3, Flux: 4}})
	require.NoError(t, err)
	// 1/Φ is linear in 1/I: 1/2 = a + b, 1/4 = a + b/3, so b = 3/8, a = 1/8.
	assert.InEpsilon(t, 8.0, c.Infinity, 1e-6)
	assert.InEpsilon(t, 3.0, c.Half, 1e-6)
	assert.Zero(t, c.Residual)
	assert.InEpsilon(t, 2.0, c.At(1), 1e-7)
	assert.InEpsilon(t, 4.0, c.At(3), 1e-7)
}

func TestReadingsThatDoNotFlattenGiveALine(t *testing.T) {
	c, err := Fit([]Reading{{Amps: 1, Flux: 2}, {Amps: 2, Flux: 4}, {Amps: 3, Flux: 6}})
	require.NoError(t, err)
	assert.True(t, c.Straight)
	assert.InEpsilon(t, 5.0, c.At(2.5), 1e-6)
	amps, ok := c.Amps(10)
	assert.True(t, ok)
	assert.InEpsilon(t, 5.0, amps, 1e-6)
}

func TestFitRefuses(t *testing.T) {
	for _, bad := range [][]Reading{nil, {{Amps: 1, Flux: 1}}, {{Amps: 1, Flux: 1}, {Amps: 1, Flux: 2}},
		{{Amps: 1, Flux: math.NaN()}, {Amps: 2, Flux: 1}}, {{Amps: -1, Flux: 1}, {Amps: 2, Flux: 1}}} {
		_, err := Fit(bad)
		assert.ErrorIs(t, err, ErrReadings)
	}
}

// The load line of a surface magnet, worked by hand: Br 1.2 T, 10 mm thick, 2 mm gap,
// μr 1.05, σ 1: 1.2/(1 + 1.05·0.2) = 0.9917 T. The fundamental of a full-pitch square
// wave is 4/π of it (Fourier).
func TestMagnetsByHand(t *testing.T) {
	m := Magnets{RemanenceT: 1.2, TempC: 20, ThicknessMM: 10, Cover: 1, GapMM: 2, Leakage: 1}
	gap, b1, err := m.GapTesla()
	require.NoError(t, err)
	assert.InEpsilon(t, 1.2/1.21, gap, 1e-12)
	assert.InEpsilon(t, 4/math.Pi*1.2/1.21, b1, 1e-12)
	m.TempC = 80
	hot, _, _ := m.GapTesla()
	assert.InEpsilon(t, 1-0.0012*60, hot/gap, 1e-12)
	m.Cover = 2.0 / 3
	_, b1, _ = m.GapTesla()
	assert.InEpsilon(t, 4/math.Pi*math.Sin(math.Pi/3)*hot, b1, 1e-12)
	m.GapMM = 0
	_, _, err = m.GapTesla()
	assert.ErrorContains(t, err, "gap")
	assert.Equal(t, -0.0020, PerKelvinOf(0.4))
}

func TestCarter(t *testing.T) {
	assert.Equal(t, 1.0, Carter(8, 0, 0.5))
	// b/g = 5: γ = 25/10 = 2.5; t = 10, g = 0.5: 10/(10 − 1.25).
	assert.InEpsilon(t, 10/8.75, Carter(10, 2.5, 0.5), 1e-12)
	last := 1.0
	for mouth := 0.1; mouth < 6; mouth += 0.1 {
		k := Carter(10, mouth, 0.5)
		assert.Greater(t, k, last, "a wider mouth makes a longer gap")
		last = k
	}
	assert.InDelta(t, 1, Carter(10, 2.5, 1000), 0.001, "a wide gap does not see the slots")
}

func TestWoundRotor(t *testing.T) {
	w := Wound{Ohms20: 4, TempC: 20, BrushVolts: 1}
	assert.InEpsilon(t, 2.75, w.Amps(12), 1e-12)
	assert.InEpsilon(t, 12*2.75, w.Watts(2.75), 1e-12, "the supply's watts are volts times amps")
	assert.Zero(t, w.Amps(0.5))
	w.TempC = 274.5
	assert.InEpsilon(t, 8.0, w.Ohms(), 1e-12)
}

// At the holding speed the line of the field circuit is tangent to the curve: there is an answer a
// little above it and none below.
func TestSelfExcitationTouches(t *testing.T) {
	c := Curve{Infinity: 1, Half: 2, Residual: 0.02, High: 5}
	w := Wound{Ohms20: 4, TempC: 20, BrushVolts: 0.5}
	hold, build := SelfExcitation(c, w, 1.4, 0.02, 20)
	excess := func(n float64) float64 {
		most := math.Inf(-1)
		for amps := 0.001; amps < 20; amps += 0.001 {
			most = max(most, 0.02*n*c.At(amps)-(w.Ohms()*amps+w.BrushVolts+1.4))
		}
		return most
	}
	assert.Positive(t, excess(hold*1.001))
	assert.Negative(t, excess(hold*0.999))
	assert.Greater(t, build, hold)
	assert.InEpsilon(t, 1.9/(0.02*0.02), build, 1e-9, "the residual alone has to pass brushes and diodes")
	c.Residual = 0
	_, build = SelfExcitation(c, w, 1.4, 0.02, 20)
	assert.True(t, math.IsInf(build, 1), "without residual flux it never begins")
}
