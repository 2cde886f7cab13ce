package drive

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A shaft whose load takes more at some speed than the rotor gives there in any wind never passes it,
// however it was started, and gets no more in any wind than the bound; close to the bound in many.
func TestAHeldRotorGivesNoMoreThanItsBound(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 5))
	held, pushed, near, free := 0, 0, 0, 0
	for range 400 {
		s := WindShaft{Rotor: Rotor{DiameterM: 1.2 + r.Float64(), Shape: Shape(r.IntN(2)), PeakCp: 0.2 + 0.2*r.Float64(), PeakLambda: 3 + 4*r.Float64()},
			Turns: 1 + 2*r.Float64(), Efficiency: 0.8 + 0.2*r.Float64(), Density: 1.2}
		load := dragged(0.03*r.Float64()*float64(r.IntN(2)), s.FreeRPM(1+3*r.Float64()), 1+30*r.Float64(), 50+300*r.Float64())
		load.Pushed = r.IntN(2) == 1
		up, err := NewAscent(s, winds(14, 0.5), climbSteps)
		require.NoError(t, err)
		at := load.CutInRPM * (1.1 + r.Float64())
		if !up.Holds(at, load.Taken(at)) {
			free++
			continue
		}
		points, err := up.Run(load)
		require.NoError(t, err)
		most := up.MostWatts(load.CutInRPM, load.Taken(load.CutInRPM), at, load.Pushed)
		for i, p := range points {
			if p.RPM < load.CutInRPM {
				continue
			}
			held++
			require.LessOrEqual(t, p.ShaftWatts, most[i]*(1+1e-9), "%g m/s", p.WindMPS)
			if p.RPM > at {
				pushed++
				require.True(t, p.Pushed, "%g rpm, held at %g", p.RPM, at)
			}
			if p.ShaftWatts > most[i]/1.5 {
				near++
			}
		}
	}
	assert.Greater(t, held, 1000)
	assert.Greater(t, pushed, 3)
	assert.Greater(t, near, held/4)
	assert.Greater(t, free, 50)
}

// The bound rests on this: blades give ever more up to their best speed, and ever less above.
func TestPowerHasOneMaximum(t *testing.T) {
	for _, shape := range []Shape{Heier, Slootweg} {
		r := Rotor{DiameterM: 2, Shape: shape, PeakCp: 0.4, PeakLambda: 6}
		for lambda := 0.01; lambda < 2*r.Runaway(); lambda += 0.01 {
			more := r.Cp(lambda+0.01) - r.Cp(lambda)
			if lambda+0.01 < r.PeakLambda {
				assert.GreaterOrEqual(t, more, 0.0, "%v at %g", shape, lambda)
			} else if lambda > r.PeakLambda {
				assert.LessOrEqual(t, more, 0.0, "%v at %g", shape, lambda)
			}
		}
	}
}

// A stretch that one line alone clears is one that both lines together clear.
func TestWhatOneLineClearsTheBoundClears(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 44))
	cleared := 0
	for range 20000 {
		f := finder{xs: make([]float64, 4), ys: make([]float64, 4), scale: 1}
		at := 0.0
		for i := range f.xs {
			at += 0.1 + r.Float64()
			f.xs[i], f.ys[i] = at, r.NormFloat64()*math.Pow(10, -2*r.Float64())
		}
		for i := 1; i < 4; i++ {
			s := f.sign(i)
			if (f.ys[i-1] > 0) != (f.ys[i] > 0) || !f.clear(i, s) {
				continue
			}
			cleared++
			left, right := f.around(i, s)
			require.Greater(t, lowBound(f.xs[i-1], f.xs[i], s*f.ys[i-1], s*f.ys[i], left, right), 0.99e-9)
		}
	}
	assert.Greater(t, cleared, 5000)
}
