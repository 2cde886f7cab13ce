package drive

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// The published peaks: Heier 0.48 at 8.1 with the blades not pitched; Slootweg about 0.44
// near 7.2 (both from memory of their figures).
func TestPublishedPeaks(t *testing.T) {
	assert.InDelta(t, 8.1, peaks[Heier][0], 0.05)
	assert.InDelta(t, 0.48, peaks[Heier][1], 0.002)
	assert.InDelta(t, 7.2, peaks[Slootweg][0], 0.3)
	assert.InDelta(t, 0.44, peaks[Slootweg][1], 0.01)
}

func TestRotorNeverPassesBetz(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 400 {
		rotor := Rotor{DiameterM: 0.5 + r.Float64()*10, Shape: Shape(r.IntN(2)), PeakCp: 0.05 + r.Float64()*(Betz-0.05), PeakLambda: 1 + r.Float64()*9}
		require.NoError(t, rotor.Check())
		assert.InEpsilon(t, rotor.PeakCp, rotor.Cp(rotor.PeakLambda), 1e-9)
		for lambda := 0.0; lambda < 40; lambda += 0.1 {
			assert.LessOrEqual(t, rotor.Cp(lambda), Betz)
			assert.LessOrEqual(t, rotor.Cp(lambda), rotor.PeakCp)
		}
		v := 1 + r.Float64()*15
		rpm := rotor.RPM(v, rotor.PeakLambda)
		assert.InEpsilon(t, rotor.PeakLambda, rotor.Lambda(v, rpm), 1e-12)
		assert.InEpsilon(t, 8*rotor.Watts(v, rpm, 1.2), rotor.Watts(2*v, 2*rpm, 1.2), 1e-9, "power goes with the cube of the wind")
		assert.InEpsilon(t, rotor.Watts(v, rpm, 1.2), rotor.Torque(v, rpm, 1.2)*2*math.Pi*rpm/60, 1e-9)
		run := rotor.Runaway()
		assert.Greater(t, run, rotor.PeakLambda)
		assert.InDelta(t, 0, rotor.Cp(run), 1e-6)
		assert.Negative(t, rotor.Cp(run*1.1))
		assert.GreaterOrEqual(t, rotor.Torque(v, 0, 1.2), 0.0)
	}
	assert.Error(t, Rotor{DiameterM: 2, PeakCp: 0.6, PeakLambda: 6}.Check())
	assert.Error(t, Rotor{DiameterM: math.NaN(), PeakCp: 0.3, PeakLambda: 6}.Check())
}

// A year's energy against gonum's own Weibull distribution and a much finer rule.
func TestEnergyAgainstAReferenceLibrary(t *testing.T) {
	for _, w := range []Weibull{{3, 2}, {5, 2}, {6.5, 2}, {5, 1.5}, {7, 3}} {
		d := distuv.Weibull{K: w.K, Lambda: w.Scale()}
		assert.InEpsilon(t, d.Mean(), w.Mean, 1e-12)
		assert.InEpsilon(t, d.Prob(4), w.Density(4), 1e-12)
		assert.InEpsilon(t, d.Survival(4), w.Above(4), 1e-12)
		watts := func(v float64) float64 { // starts, rises with the cube, furls level
			return 3 * math.Pow(min(v, 12), 3)
		}
		want := 0.0
		for i := range 400 {
			a, b := 3+17*float64(i)/400, 3+17*float64(i+1)/400
			want += quad.Fixed(func(v float64) float64 { return watts(v) * d.Prob(v) }, a, b, 10, quad.Legendre{}, 0)
		}
		assert.InEpsilon(t, want*8.760, w.EnergyKWh(watts, 3, 7, 12, 16, 20), 1e-6)
	}
}

func TestBeltGeometry(t *testing.T) {
	assert.InEpsilon(t, 2*500+math.Pi*100, BeltLength(100, 100, 500), 1e-12, "equal pulleys")
	assert.InEpsilon(t, 437.0, CentreFor(100, 240, BeltLength(100, 240, 437)), 1e-9, "there and back")
	assert.True(t, math.IsNaN(BeltLength(100, 400, 100)))
	assert.True(t, math.IsNaN(CentreFor(100, 400, 200)))
	ratio, slip, err := RealRatio(600, 1700, 3)
	require.NoError(t, err)
	assert.InEpsilon(t, 17.0/6, ratio, 1e-12)
	assert.InEpsilon(t, 1-17.0/18, slip, 1e-12)
	assert.InEpsilon(t, 60, DrivenFor(3*(1-0.02), 180, 0.02), 1e-12, "the question turned round")
	assert.InEpsilon(t, 180, DriverFor(3*(1-0.02), 60, 0.02), 1e-12)
	_, err = Transmission{Kind: Belt, DriverMM: 100}.Turns()
	assert.ErrorIs(t, err, ErrTransmission)
}

func TestPowerCurveMakesNoBumps(t *testing.T) {
	c, err := NewCurve([]Point{{70, 120}, {40, 80}, {90, 100}, {55, 110}})
	require.NoError(t, err)
	for _, p := range c.points {
		assert.InEpsilon(t, p.Watts, c.Watts(p.RPM), 1e-12)
	}
	for rpm := 40.0; rpm < 90; rpm++ {
		assert.LessOrEqual(t, c.Watts(rpm), 120.0+1e-9)
		assert.GreaterOrEqual(t, c.Watts(rpm), 80.0-1e-9)
	}
	assert.InEpsilon(t, 40, c.Watts(20), 1e-12, "below the first point its torque stays")
	assert.Zero(t, c.Watts(c.Top()))
	for _, bad := range [][]Point{nil, {{1, 1}}, {{1, 1}, {1, 2}}, {{1, 1}, {2, math.NaN()}}, {{-1, 1}, {2, 1}}} {
		_, err := NewCurve(bad)
		assert.ErrorIs(t, err, ErrPoints)
	}
}

// Cases whose crossings are known: a line against a parabola that it meets 0, 1 (touching)
// or 2 times, and a cubic met three times.
func TestBalanceFindsAllCrossings(t *testing.T) {
	flat := func(v float64) Torque { return func(float64) float64 { return v } }
	hill := func(rpm float64) float64 { return 10 - (rpm-50)*(rpm-50)/100 }
	two := Balance(flat(6), hill, 0, 100, 48)
	require.Len(t, two, 2)
	assert.InEpsilon(t, 30, two[0].RPM, 1e-6)
	assert.InEpsilon(t, 70, two[1].RPM, 1e-6)
	assert.True(t, two[0].Stable)
	assert.False(t, two[1].Stable)
	assert.Empty(t, Balance(flat(10.001), hill, 0, 100, 48))
	near := Balance(flat(9.9999), hill, 0, 100, 48) // both within a step of the grid
	require.Len(t, near, 2)
	assert.InEpsilon(t, 49.9, near[0].RPM, 1e-6)
	three := Balance(func(n float64) float64 { return 40 - (n-20)*(n-50)*(n-80)/1000 }, flat(40), 0, 100, 96)
	require.Len(t, three, 3)
	for i, want := range []float64{20, 50, 80} {
		assert.InEpsilon(t, want, three[i].RPM, 1e-6)
		assert.Equal(t, i != 1, three[i].Stable)
	}
}

func TestEquilibriaBalanceAndAreReachedFromAnywhere(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 9))
	for range 60 {
		rotor := Rotor{DiameterM: 1 + 2*r.Float64(), Shape: Shape(r.IntN(2)), PeakCp: 0.2 + 0.3*r.Float64(), PeakLambda: 3 + 5*r.Float64()}
		wind, cut, stiff := 3+8*r.Float64(), 50+200*r.Float64(), 0.01+0.3*r.Float64()
		given := func(n float64) float64 { return rotor.Torque(wind, n, 1.225) }
		taken := func(n float64) float64 { return 0.1 + 0.001*n + stiff*math.Max(0, n-cut) }
		high := rotor.RPM(wind, rotor.Runaway()*1.05)
		list := Balance(given, taken, 0.01, high, 96)
		for i, e := range list {
			assert.InEpsilon(t, given(e.RPM), taken(e.RPM), 1e-6)
			if i > 0 {
				assert.NotEqual(t, list[i-1].Stable, e.Stable, "they take turns")
			}
		}
		// From any start the shaft comes to one of those that are stable, or stops.
		for range 4 {
			start := high * r.Float64()
			e, ok := Settle(list, start, given(start)-taken(start))
			if ok {
				assert.True(t, e.Stable)
				simulated := start
				for range 12000 {
					simulated = max(0, simulated+0.2*high/2000*sign(given(simulated)-taken(simulated)))
				}
				assert.InDelta(t, e.RPM, simulated, 0.002*high)
			}
		}
	}
}

func sign(v float64) float64 { return math.Copysign(1, v) }

func TestShortCircuitBrake(t *testing.T) {
	b := ShortAll(10, 3, 4, 600, 3, false)
	assert.InEpsilon(t, 2, b.CoilAmps, 1e-12)
	assert.InEpsilon(t, 36, b.Watts, 1e-12)
	assert.InEpsilon(t, 36, b.TorqueNm*2*math.Pi*10, 1e-12)
	delta := ShortAll(10, 3, 4, 600, 3, true)
	assert.InEpsilon(t, 2*math.Sqrt(3), delta.LeadAmps, 1e-12)
	pair := ShortPair(10, 3, 4, 600, false)
	assert.InEpsilon(t, math.Sqrt(3)*10/10, pair.CoilAmps, 1e-12)
	assert.Less(t, pair.Watts, b.Watts)
	// A delta between two leads is its star: R/3 and E/√3 each.
	star := ShortPair(10/math.Sqrt(3), 1, 4.0/3, 600, false)
	assert.InEpsilon(t, star.Watts, ShortPair(10, 3, 4, 600, true).Watts, 1e-12)
	assert.InEpsilon(t, star.LeadAmps, ShortPair(10, 3, 4, 600, true).LeadAmps, 1e-12)
	ohms, watts := DumpLoad(14.4, 10)
	assert.InEpsilon(t, 1.44, ohms, 1e-12)
	assert.InEpsilon(t, 144, watts, 1e-12)
}
