package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without residual, brushes and diodes the holding speed is the critical speed of the
// textbooks: the field line along the curve's first slope, R·I0/(k·Φ∞).
func TestCriticalSpeedOfTextbooks(t *testing.T) {
	c := Curve{Infinity: 3, Half: 2, High: 6}
	hold, build := SelfExcitation(c, Wound{Ohms20: 4, TempC: 20}, 0, 0.05, 9)
	assert.InEpsilon(t, 4*2/(0.05*3), hold, 1e-12)
	assert.True(t, math.IsInf(build, 1))
	line := Curve{Infinity: 3, Straight: true, High: 6}
	hold, _ = SelfExcitation(line, Wound{Ohms20: 4, TempC: 20}, 0, 0.05, 9)
	assert.InEpsilon(t, 4/(0.05*3), hold, 1e-12)
}

// The touching point of the formula against a search by small steps, over random rotors.
func TestSelfExcitationAgainstASearch(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 1))
	for range 200 {
		c := Curve{Infinity: 0.1 + 5*r.Float64(), Half: 0.2 + 6*r.Float64(), Residual: 0.3 * r.Float64(), High: 5, Straight: r.IntN(8) == 0}
		w := Wound{Ohms20: 1 + 9*r.Float64(), TempC: 80, BrushVolts: 2 * r.Float64()}
		const k, most, diode = 0.02, 12.0, 0.7
		hold, build := SelfExcitation(c, w, diode, k, most)
		least := math.Inf(1)
		for n := range 24001 {
			i := most * float64(n) / 24000
			if flux := c.At(i); flux > 0 {
				least = min(least, (w.Ohms()*i+w.BrushVolts+diode)/(k*flux))
			}
		}
		assert.InEpsilon(t, least, hold, 1e-5)
		assert.LessOrEqual(t, hold, least*(1+1e-12), "no step finds a lower speed")
		assert.GreaterOrEqual(t, build, hold)
		if c.Residual > 0 {
			assert.InEpsilon(t, (w.BrushVolts+diode)/(k*c.Residual), build, 1e-12)
		}
	}
}

// More diode drop, a hotter rotor or fewer turns never make it hold at a lower speed.
func TestSelfExcitationGoesTheRightWay(t *testing.T) {
	c := Curve{Infinity: 1, Half: 2, Residual: 0.05, High: 5}
	cold, hot := Wound{Ohms20: 4, TempC: 20}, Wound{Ohms20: 4, TempC: 120}
	h0, b0 := SelfExcitation(c, cold, 0.8, 0.02, 10)
	h1, b1 := SelfExcitation(c, cold, 1.6, 0.02, 10)
	h2, b2 := SelfExcitation(c, hot, 0.8, 0.02, 10)
	h3, b3 := SelfExcitation(c, cold, 0.8, 0.04, 10)
	assert.Greater(t, h1, h0)
	assert.InEpsilon(t, 2*b0, b1, 1e-12, "the drop alone decides where it begins")
	assert.Greater(t, h2, h0)
	assert.Equal(t, b0, b2)
	assert.InEpsilon(t, h0/2, h3, 1e-12)
	assert.InEpsilon(t, b0/2, b3, 1e-12)
}

func TestSelfExcitationOfNothing(t *testing.T) {
	c, w := Curve{Infinity: 1, Half: 2, Residual: 0.05}, Wound{Ohms20: 4}
	for _, got := range [][2]float64{
		pair(SelfExcitation(c, w, 0.7, 0, 10)), pair(SelfExcitation(c, w, 0.7, 0.02, 0)), pair(SelfExcitation(Curve{}, w, 0.7, 0.02, 10)),
		pair(SelfExcitation(c, Wound{}, 0.7, 0.02, 10)), pair(SelfExcitation(c, w, math.NaN(), 0.02, 10)), pair(SelfExcitation(c, w, 0.7, math.NaN(), 10)),
	} {
		assert.Equal(t, [2]float64{math.Inf(1), math.Inf(1)}, got)
	}
}

func pair(a, b float64) [2]float64 { return [2]float64{a, b} }

// The field held makes the flux wanted; what is out of reach says so.
func TestAmpsToHold(t *testing.T) {
	c := Curve{Infinity: 2, Half: 2, Residual: 0.02, High: 3}
	w := Wound{Ohms20: 4, TempC: 20, BrushVolts: 1}
	h := c.AmpsToHold(w, 13, 0.8)
	require.True(t, h.Enough)
	assert.InEpsilon(t, 0.8, c.At(h.Amps), 1e-12)
	assert.InEpsilon(t, h.Amps*(4*h.Amps+1), h.Watts, 1e-12)
	assert.InEpsilon(t, 100-h.Watts, w.NetWatts(100, h.Amps), 1e-12)
	assert.False(t, h.Extrapolated)
	assert.True(t, c.AmpsToHold(w, 25, 1.4).Extrapolated, "above 3 A nothing was read")
	short := c.AmpsToHold(w, 5, 1.9)
	assert.False(t, short.Enough)
	assert.InEpsilon(t, 1.0, short.Amps, 1e-12, "all that 5 V drive through 4 Ω and brushes")
	assert.False(t, c.AmpsToHold(w, 1000, 2.5).Enough, "above what the iron can carry")
	assert.Zero(t, c.AmpsToHold(w, 13, 0.01).Amps, "the residual is enough")
	assert.False(t, c.AmpsToHold(w, 13, math.NaN()).Enough)
}

func BenchmarkSelfExcitation(b *testing.B) {
	c, w := Curve{Infinity: 1, Half: 2, Residual: 0.02, High: 5}, Wound{Ohms20: 4, TempC: 80, BrushVolts: 1}
	for b.Loop() {
		_, _ = SelfExcitation(c, w, 0.7, 0.02, 9)
	}
}

// The mean of the highest of six pulses of √3·Ê·cos over ±30°, and of |sin|, by adding up.
func TestBridgeMean(t *testing.T) {
	three, one := 0.0, 0.0
	const steps = 100000
	for i := range steps {
		part := (float64(i) + 0.5) / steps
		three += math.Cos((part-0.5)*math.Pi/3) / steps
		one += math.Sin(part*math.Pi) / steps
	}
	assert.InEpsilon(t, three, BridgeMean(3), 1e-9)
	assert.InEpsilon(t, one, BridgeMean(1), 1e-9)
}
