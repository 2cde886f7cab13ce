package drive

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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

// Worked by hand from the published formulas (1/Λ = 0.165 and 0.197 at λ = 5).
func TestPublishedCurvesByHand(t *testing.T) {
	assert.InEpsilon(t, 0.5176*(116*0.165-5)*math.Exp(-21*0.165)+0.0068*5, Heier.raw(5), 1e-12)
	assert.InEpsilon(t, 0.26287, Heier.raw(5), 1e-3)
	assert.InEpsilon(t, 0.32172, Slootweg.raw(5), 1e-3)
}

// Far beyond the free rotor no curve rises again, and at rest nothing divides by zero.
func TestCurvesAtTheEnds(t *testing.T) {
	for _, s := range []Shape{Heier, Slootweg} {
		r := Rotor{DiameterM: 2, Shape: s, PeakCp: 0.35, PeakLambda: 6}
		last := r.Cp(r.Runaway() * 1.01)
		for lambda := r.Runaway() * 1.02; lambda < 1e6; lambda *= 1.02 {
			cp := r.Cp(lambda)
			require.Less(t, cp, last)
			last = cp
		}
		rest := r.Torque(5, 0, 1.2)
		assert.GreaterOrEqual(t, rest, 0.0)
		assert.InDelta(t, rest, r.Torque(5, 1e-3, 1.2), 1e-3*rest+1e-12)
		assert.Zero(t, r.Torque(0, 100, 1.2))
		assert.Zero(t, r.Lambda(0, 100))
		word, err := ParseShape(" " + s.String() + " ")
		require.NoError(t, err)
		assert.Equal(t, s, word)
	}
	_, err := ParseShape("other")
	assert.ErrorContains(t, err, "other")
}

// A Cp over Betz's bound is clamped, though Check was not called.
func TestBetzHoldsForAnyScaling(t *testing.T) {
	for _, peak := range []float64{0.6, 1, 50} {
		r := Rotor{DiameterM: 2, PeakCp: peak, PeakLambda: 6}
		assert.Error(t, r.Check())
		for lambda := 0.0; lambda < 30; lambda += 0.05 {
			assert.LessOrEqual(t, r.Cp(lambda), Betz)
		}
	}
}
