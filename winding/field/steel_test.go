package field

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// M800-50A of IEC 60404-8-4: at least 1.60, 1.70 and 1.78 T of polarisation at 2500, 5000
// and 10 000 A/m (from memory). Beyond saturation another tesla costs 1/μ0.
func TestSteelIsTheNamedGrade(t *testing.T) {
	for h, j := range map[float64]float64{2500: 1.60, 5000: 1.70, 10000: 1.78} {
		assert.InEpsilon(t, h, Steel(j+4e-7*math.Pi*h, 0), 1e-9)
	}
	assert.InEpsilon(t, 1/(4e-7*math.Pi), Steel(3.5, 0)-Steel(2.5, 0), 1e-9)
	last := 0.0
	for b := 0.01; b < 4; b += 0.01 {
		h := Steel(b, 0.7)
		assert.Greater(t, h, last)
		last = h
	}
	assert.Zero(t, Steel(0, 0))
}

// The flux out of a slot pitch goes through tooth and slot under one field strength: with the H found,
// iron and air together carry it.
func TestSlotTakesWhatTheToothCannot(t *testing.T) {
	const beside = 2.0
	for _, apparent := range []float64{1.5, 2.0, 3.0} {
		h := Steel(apparent, beside)
		inIron := apparent - 4e-7*math.Pi*h*beside
		assert.InEpsilon(t, h, Steel(inIron, 0), 1e-9)
	}
}

// A magnet, a gap and a tooth by hand: Br 1.2 T at 20 °C, 4 mm, gap 1 mm, no leakage; the
// tooth has 1.9 T for the 0.9 T it comes to. Hm·hm + B·g/μ0 + H·l = 0 closes.
func TestMagnetCircuitClosesWithIron(t *testing.T) {
	m := Magnets{RemanenceT: 1.2, TempC: 20, ThicknessMM: 4, Cover: 1, GapMM: 1, Leakage: 1, RecoilMu: 1.05, Iron: Iron{{Times: 2.1, MM: 20}}}
	gap, _, err := m.GapTesla()
	require.NoError(t, err)
	hm := (gap - 1.2) / (Mu0 * 1.05)
	assert.InDelta(t, 0, hm*0.004+gap*0.001/Mu0+Steel(2.1*gap, 0)*0.020, 1e-6)
	m.Iron = nil
	free, _, err := m.GapTesla()
	require.NoError(t, err)
	assert.Less(t, gap, free)
	m.Iron = Iron{{Times: 0.5, MM: 20}}
	easy, _, err := m.GapTesla()
	require.NoError(t, err)
	assert.InEpsilon(t, free, easy, 0.001, "iron far from full takes next to nothing")
}
