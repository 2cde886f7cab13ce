package heat

import (
	"math"
	"math/rand/v2"
	"testing"

	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Conversions: 650 circular mils per ampere is 3.04 A/mm² (Sullivan and Zhang, Simplified
// Design Method for Litz Wire, appendix B), 500 is 3.95 and 750 is 2.63.
func TestCircularMilsPerAmpere(t *testing.T) {
	for cmil, amps := range map[float64]float64{650: 3.04, 500: 3.95, 750: 2.63, 700: 2.82} {
		assert.InDelta(t, amps, CmilPerMM2/cmil, 0.005)
		assert.InEpsilon(t, cmil, CmilPerAmp(CmilPerMM2/cmil), 1e-12)
	}
	assert.InEpsilon(t, 1973.525, CmilPerMM2, 1e-6)
	assert.Zero(t, CmilPerAmp(0))
}

// IEC 60085 classes.
func TestClasses(t *testing.T) {
	want := map[string]float64{"A": 105, "E": 120, "B": 130, "F": 155, "H": 180}
	for letter, limit := range want {
		c, err := ParseClass(" " + letter)
		require.NoError(t, err)
		assert.Equal(t, limit, c.LimitC())
		assert.Equal(t, letter, c.String())
	}
	assert.Len(t, Classes(), len(want))
	_, err := ParseClass("Q")
	assert.Error(t, err)
	assert.Zero(t, Class('x').LimitC())
}

// The steady temperature is where loss and cooling are equal.
func TestSteadyBalances(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 500 {
		amb, rth, p, other := -20+60*r.Float64(), 0.1+3*r.Float64(), 200*r.Float64(), 50*r.Float64()
		temp, ok := Steady(amb, rth, p, 234.5, other)
		if rth*p >= 254.5 {
			assert.False(t, ok, "the metal's loss grows faster than it is carried off")
			continue
		}
		require.True(t, ok)
		made := p*(234.5+temp)/254.5 + other
		assert.InEpsilon(t, made*rth, temp-amb, 1e-9)
	}
}

// P = 504 W at 20 °C is 613 W at 75 °C: testdata/winding/emf_examples.csv, EX060.
func TestSteadyAgainstALoss(t *testing.T) {
	temp, ok := Steady(20, 55/612.919, 504, 234.5, 0)
	require.True(t, ok)
	assert.InDelta(t, 75, temp, 0.01)
}

// Adiabatic heating against small steps of the same law, and the constant of IEC 60949
// for copper, K = 226 A·s½/mm² (from memory) with β = 234.5: I²t = K²S²·ln((θf+β)/(θi+β)).
func TestSecondsWithoutCooling(t *testing.T) {
	for _, j := range []float64{5, 20, 100} {
		want := math.Pow(226/j, 2) * math.Log((155+234.5)/(25+234.5))
		assert.InEpsilon(t, want, Seconds(wiretable.Copper, j, 25, 155), 0.02)
		temp, dt, steps := 25.0, Seconds(wiretable.Copper, j, 25, 155)/20000, 20000
		for range steps {
			rho := wiretable.Copper.Resistivity(temp)
			temp += dt * j * j * 1e12 * rho / (wiretable.Copper.SpecificHeat() * wiretable.Copper.DensityKgM3())
		}
		assert.InDelta(t, 155, temp, 0.05)
	}
	assert.True(t, math.IsInf(Seconds(wiretable.Copper, 0, 20, 100), 1))
	assert.Zero(t, Seconds(wiretable.Copper, 5, 100, 90))
	assert.Less(t, Seconds(wiretable.Aluminium, 10, 25, 155), Seconds(wiretable.Copper, 10, 25, 155))
}

func TestSameHeatAndDensity(t *testing.T) {
	i := SameHeat(35, 1, 5.91)
	assert.InEpsilon(t, 35*35*1.0, i*i*5.91, 1e-12)
	assert.Zero(t, SameHeat(0, 1, 1))
	for _, c := range []Cooling{Open, Closed, Fan} {
		d := DensityOf(c)
		assert.Less(t, d.Low, d.High)
		assert.Contains(t, d.Source, "memory", "no table by cooling was read in a copy, and it says so")
		got, err := ParseCooling(c.String())
		require.NoError(t, err)
		assert.Equal(t, c, got)
		assert.InEpsilon(t, 2*LimitAmps(c, wiretable.Copper, 1), LimitAmps(c, wiretable.Copper, 2), 1e-12)
	}
	assert.Less(t, LimitAmps(Closed, wiretable.Copper, 1), LimitAmps(Open, wiretable.Copper, 1))
	assert.Less(t, LimitAmps(Open, wiretable.Copper, 1), LimitAmps(Fan, wiretable.Copper, 1))
}

func TestSurfaceGuess(t *testing.T) {
	of := func(c Cooling, bore, stack, depth float64) float64 {
		perWatt, err := FromSurface(c, bore, stack, depth)
		require.NoError(t, err)
		return perWatt
	}
	small, large := of(Open, 60, 30, 12), of(Open, 120, 60, 24)
	assert.InEpsilon(t, small/4, large, 1e-9, "twice the size, four times the surface")
	assert.Less(t, of(Fan, 60, 30, 12), small)
	assert.Greater(t, of(Closed, 60, 30, 12), small)
	_, err := FromSurface(Open, 0, 30, 12)
	assert.ErrorContains(t, err, "bore of 0 mm")
}

// IEC 60034-1 reduces the rise by 1 % for each 100 m above 1000 m (from memory).
func TestThinAirCoolsLess(t *testing.T) {
	for metres, times := range map[float64]float64{-400: 1, 0: 1, 1000: 1, 1100: 1.01, 2500: 1.15, 4000: 1.3} {
		assert.InDelta(t, times, InThinAir(metres), 1e-12, "%g m", metres)
	}
}
