package field

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Carter's own solution of 1901 (conformal map; from memory) against the approximate
// form: the mouth counts for b·k, and both k agree within 0.02.
func TestCarterAgainstCarter(t *testing.T) {
	for ratio := 0.02; ratio < 200; ratio *= 1.07 {
		const gap = 0.5
		mouth := ratio * gap
		pitch := 2 * mouth
		got := pitch * (1 - 1/Carter(pitch, mouth, gap)) / mouth // γ·g/b
		u := ratio / 2
		own := 4 / math.Pi * (u*math.Atan(u) - 0.5*math.Log1p(u*u)) / ratio
		assert.InDelta(t, own, got, 0.02, "mouth over gap %g", ratio)
	}
}

// The magnet's own line and the gap's line intersect where the formula says: written as two equations
// in Bm and Hm and solved by Cramer's rule.
func TestGapTeslaIsWhereTwoLinesMeet(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 8))
	for range 300 {
		m := Magnets{RemanenceT: 0.2 + 1.2*r.Float64(), TempC: 20, ThicknessMM: 1 + 10*r.Float64(), Cover: 0.3 + 0.7*r.Float64(), GapMM: 0.2 + 3*r.Float64(),
			Carter: 1 + r.Float64(), Leakage: 1 + r.Float64(), RecoilMu: 1 + 0.2*r.Float64(), AreaRatio: 0.5 + r.Float64()}
		gap, b1, err := m.GapTesla()
		require.NoError(t, err)
		// Bm − μ0μr·Hm = Br ; Bm/(σ·Ag/Am)·kC·g/μ0 + hm·Hm = 0
		a11, a12, a21, a22 := 1.0, -Mu0*m.RecoilMu, m.Carter*m.GapMM/(Mu0*m.Leakage*m.AreaRatio), m.ThicknessMM
		bm := m.RemanenceT * a22 / (a11*a22 - a12*a21)
		assert.InEpsilon(t, bm/(m.Leakage*m.AreaRatio), gap, 1e-12)
		// The fundamental of the block, by its Fourier sum.
		sum, steps := 0.0, 20000
		for n := range steps {
			x := math.Pi * (float64(n) + 0.5) / float64(steps)
			if math.Abs(x-math.Pi/2) <= m.Cover*math.Pi/2 {
				sum += gap * math.Sin(x) * 2 / float64(steps)
			}
		}
		assert.InEpsilon(t, sum, b1, 1e-3)
		wb, err := m.FluxPerPole(80, 40, 12)
		require.NoError(t, err)
		assert.InEpsilon(t, 2/math.Pi*b1*math.Pi*0.08/12*0.04, wb, 1e-12)
	}
}

// A wider gap, a hotter or thinner magnet and more leakage never make more flux.
func TestGapTeslaGoesTheRightWay(t *testing.T) {
	base := Magnets{RemanenceT: 1.2, TempC: 40, ThicknessMM: 5, Cover: 0.8, GapMM: 1}
	at := func(change func(*Magnets)) float64 {
		m := base
		change(&m)
		_, b1, err := m.GapTesla()
		require.NoError(t, err)
		return b1
	}
	whole := at(func(*Magnets) {})
	for name, change := range map[string]func(*Magnets){
		"gap": func(m *Magnets) { m.GapMM = 2 }, "hot": func(m *Magnets) { m.TempC = 80 }, "thin": func(m *Magnets) { m.ThicknessMM = 3 },
		"leak": func(m *Magnets) { m.Leakage = 1.3 }, "slots": func(m *Magnets) { m.Carter = 1.3 }, "cover": func(m *Magnets) { m.Cover = 0.6 },
		"area": func(m *Magnets) { m.AreaRatio = 1.2 },
	} {
		assert.Less(t, at(change), whole, name)
	}
	assert.Less(t, at(func(m *Magnets) { m.Cover = 1 }), 4/math.Pi*base.RemanenceT, "a pole never has more than 4/π of the remanence")
}

func TestMagnetsRefuseByName(t *testing.T) {
	good := Magnets{RemanenceT: 1.2, TempC: 40, ThicknessMM: 5, Cover: 0.8, GapMM: 1}
	for word, change := range map[string]func(*Magnets){
		"remanence":       func(m *Magnets) { m.RemanenceT = 12 },
		"temperature":     func(m *Magnets) { m.TempC = math.NaN() },
		"thickness":       func(m *Magnets) { m.ThicknessMM = 0 },
		"cover":           func(m *Magnets) { m.Cover = 1.1 },
		"gap":             func(m *Magnets) { m.GapMM = math.Inf(1) },
		"Carter":          func(m *Magnets) { m.Carter = 0.5 },
		"leakage":         func(m *Magnets) { m.Leakage = math.NaN() },
		"recoil":          func(m *Magnets) { m.RecoilMu = math.Inf(1) },
		"magnet area":     func(m *Magnets) { m.AreaRatio = -1 },
		"remanence a kel": func(m *Magnets) { m.PerKelvin = math.NaN() },
	} {
		m := good
		change(&m)
		_, _, err := m.GapTesla()
		assert.ErrorIs(t, err, ErrMagnets)
		assert.ErrorContains(t, err, word)
		_, err = m.FluxPerPole(80, 40, 12)
		assert.Error(t, err)
	}
	_, err := good.FluxPerPole(0, 40, 12)
	assert.ErrorIs(t, err, ErrFlux)
	assert.Zero(t, PolePitchMM(80, 0))
}

// The flux of a density and the density of a flux's volts are one: Φ scales with each.
func TestFluxFromEMFScales(t *testing.T) {
	star, err := FluxFromEMF(20, 100, 30, 0.9, false)
	require.NoError(t, err)
	delta, err := FluxFromEMF(20/math.Sqrt(3), 100, 30, 0.9, true)
	require.NoError(t, err)
	assert.InEpsilon(t, star, delta, 1e-12)
	twice, err := FluxFromEMF(40, 100, 60, 0.9, false)
	require.NoError(t, err)
	assert.InEpsilon(t, star, twice, 1e-12)
	// The rate of change of N·Φ·sin ωt has the peak √2·E.
	step := 1e-9
	rate := 30 * 0.9 * star * (math.Sin(2*math.Pi*100*step) - math.Sin(-2*math.Pi*100*step)) / (2 * step)
	assert.InEpsilon(t, math.Sqrt2*20/math.Sqrt(3), rate, 1e-6)
	for _, bad := range []float64{0, math.NaN(), math.Inf(1), -4} {
		_, err = FluxFromEMF(bad, 100, 30, 0.9, false)
		assert.ErrorIs(t, err, ErrFlux)
		_, err = FluxFromGapTesla(bad, 80, 40, 12)
		assert.ErrorIs(t, err, ErrFlux)
	}
}
