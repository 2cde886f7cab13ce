package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

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

// Braking torque is greatest where the reactance equals the ohms: there it is half of what E²/R would
// make, m·E²/(2·X·ω).
func TestShortTorqueHasATop(t *testing.T) {
	const emf, ohms, react = 0.02, 0.5, 0.001 // at 500 rpm both are 0.5
	brake := ShortTorque(emf, ohms, react, 3)
	top := brake(500)
	assert.InEpsilon(t, 3*math.Pow(emf*500, 2)/(2*0.5)/(2*math.Pi*500/60), top, 1e-12)
	for _, n := range []float64{10, 200, 480, 520, 900, 5000} {
		assert.Less(t, brake(n), top)
	}
	assert.Zero(t, brake(0))
	// A rotor released in a gale against shorted leads: held slow, or not at all.
	s := smallRotor()
	assert.Less(t, Balance(s.Torque(8), brake, 0.01, s.FreeRPM(8), 96)[0].RPM, 100.0)
}

func TestOpenCircuit(t *testing.T) {
	o, err := OpenAt(1000, 0.05, 100, 100)
	require.NoError(t, err)
	assert.InEpsilon(t, 50, o.LineRMS, 1e-12)
	assert.InEpsilon(t, 50*math.Sqrt2, o.PeakDC, 1e-12)
	// 60 V DC is the peak of 42.4 V rms, and comes before 50 V AC.
	assert.InEpsilon(t, 60/math.Sqrt2/0.05, o.TouchRPM, 1e-12)
	assert.True(t, o.Hazardous)
	assert.True(t, o.DiodesTight)
	assert.False(t, o.DiodesBroken)
	assert.InEpsilon(t, 0.5, o.InsulationShare, 1e-12)
	quiet, err := OpenAt(800, 0.05, 200, 0)
	require.NoError(t, err)
	assert.False(t, quiet.Hazardous || quiet.DiodesTight)
	assert.Zero(t, quiet.InsulationShare)
	broken, err := OpenAt(2000, 0.05, 100, 0)
	require.NoError(t, err)
	assert.True(t, broken.DiodesBroken)
	none, err := OpenAt(0, 0, 0, 0)
	require.NoError(t, err)
	assert.Equal(t, OpenCircuit{}, none)
	for _, bad := range []float64{-1, math.NaN(), math.Inf(1)} {
		_, err := OpenAt(bad, 0.05, 0, 0)
		assert.ErrorContains(t, err, "expected")
	}
}

func TestNothingToBrakeOrDump(t *testing.T) {
	assert.Equal(t, Brake{}, ShortAll(10, 0, 0, 600, 3, false))
	assert.Equal(t, Brake{}, ShortPair(10, 1, 1, 0, true))
	ohms, watts := DumpLoad(0, 10)
	assert.Zero(t, ohms)
	assert.Zero(t, watts)
	one := ShortAll(10, 3, 4, 600, 1, false)
	assert.InEpsilon(t, 12, one.Watts, 1e-12, "one phase: I²·R once")
}
