package drive

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// dragged is an alternator whose drag holds blades that turn slowly, as hysteresis does (torque with
// the root of the speed), and which is stiff once it charges.
func dragged(drag, cutIn, top, width float64) Load {
	stiff := stiff(cutIn, top, width)
	return Load{CutInRPM: cutIn, Taken: func(n float64) float64 { return drag*math.Sqrt(n) + stiff.Taken(n) }}
}

// A shaft released in falling wind from its speed in the stronger wind, by small time steps, settles at
// the balance shown; above the wind in which it charges by itself, the one from rest is shown.
func TestRunAgainstAShaftLetLooseInFallingWind(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 71))
	gusts, charging, vanished, never := 0, 0, 0, 0
	for range 80 {
		s := WindShaft{Rotor: Rotor{DiameterM: 1.2 + 0.6*r.Float64(), PeakCp: 0.2 + 0.2*r.Float64(), PeakLambda: 3 + 4*r.Float64()},
			Turns: 1, Efficiency: 1, Density: 1.2, StartNm: 0.3 * r.Float64() * float64(r.IntN(2))}
		load := dragged(0.05*r.Float64(), s.FreeRPM(1.5+3*r.Float64()), 1+6*r.Float64(), 50+300*r.Float64())
		up, err := NewAscent(s, winds(14, 0.5), climbSteps)
		require.NoError(t, err)
		rest, err := up.Climb(load)
		require.NoError(t, err)
		points, err := up.Run(load)
		require.NoError(t, err)
		first := len(points)
		for i := range points {
			require.Equal(t, rest[i].RPM, points[i].FromRest)
			if first == len(points) && rest[i].RPM >= load.CutInRPM {
				first = i
			}
			if i >= first {
				require.Equal(t, rest[i].RPM, points[i].RPM)
				require.False(t, points[i].Gust)
			}
		}
		if first == len(points) {
			never++
			require.Equal(t, rest, points, "nothing starts it")
			continue
		}
		for i := first - 1; i >= 0; i-- {
			p := points[i]
			given := s.Torque(p.WindMPS)
			want := simulate(given, load.Taken, points[i+1].RPM, s.FreeRPM(14))
			if !p.Gust {
				if points[i+1].Gust {
					vanished++
					if given(0) > s.StartNm+load.Taken(0) {
						require.InDelta(t, want, p.RPM, 1e-3*s.FreeRPM(14)+1e-2, "it slows down to where rest has it")
					}
				}
				continue
			}
			gusts++
			require.True(t, points[i+1].Gust || i+1 == first, "one stretch of winds")
			require.InDelta(t, want, p.RPM, 1e-3*s.FreeRPM(14)+1e-2, "wind %g", p.WindMPS)
			require.Greater(t, p.RPM, p.FromRest)
			assert.InEpsilon(t, given(p.RPM), load.Taken(p.RPM), 1e-6)
			assert.InEpsilon(t, p.RotorWatts, p.ShaftWatts, 1e-6)
			assert.Equal(t, p.RPM < load.CutInRPM, p.Region == Idling)
			assert.NotEqual(t, Still, p.Region)
			for _, o := range p.Others {
				assert.NotEqual(t, p.RPM, o.RPM)
			}
			count(&charging, p.Region != Idling)
		}
		v, err := Judge(s, load, points, Rayleigh(5))
		require.NoError(t, err)
		assert.Equal(t, points[first].WindMPS, v.StartsFrom)
		assert.LessOrEqual(t, v.ChargesFrom, v.StartsFrom)
	}
	assert.Greater(t, gusts, 40, "the cases hold some of each")
	assert.Greater(t, charging, 20)
	assert.Greater(t, vanished, 5)
	assert.Positive(t, never)
}
