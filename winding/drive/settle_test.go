package drive

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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
		// From any start the shaft settles at a stable one, or stops.
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
