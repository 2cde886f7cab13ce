package charge

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Without a third harmonic the march with eight diodes must find the bridge's own answer, which is
// held against tables elsewhere.
func TestStarPointWithoutThirdHarmonicIsTheBridge(t *testing.T) {
	for _, emf := range []float64{9, 10, 13, 20, 40, 120} {
		for _, henries := range []float64{1e-6, 2e-5, 2e-4, 2e-3} {
			for _, rb := range []float64{0, 0.02, 0.5} {
				s := Source{EMFPeak: emf, Hertz: 200, Ohms: 0.1, Henries: henries, Phases: 3}
				l := Load{Volts: 13, Ohms: rb, DiodeVolts: 0.8, DiodeOhms: 0.005}
				want, err := Solve(s, l)
				require.NoError(t, err)
				if want.Mode == Off {
					continue
				}
				var near StarSolver
				got, err := near.march(StarSource{Source: s, ZeroHenries: henries / 5}, l)
				require.NoError(t, err, "%g V %g H %g Ω", emf, henries, rb)
				assert.InEpsilon(t, want.DCAmps, got.DCAmps, 1e-8, "%g V %g H %g Ω", emf, henries, rb)
				assert.InEpsilon(t, want.PhaseAmpsRMS, got.PhaseAmpsRMS, 1e-8)
				assert.InEpsilon(t, want.InputWatts, got.InputWatts, 1e-8)
				assert.Equal(t, want.Mode, got.Mode)
				assert.InDelta(t, 0, got.StarAmpsRMS, 1e-8)
			}
		}
	}
}

// What goes in comes out, each watt integrated separately.
func TestStarPointBalance(t *testing.T) {
	worst := 0.0
	for _, third := range []float64{-0.3, -0.1, 0.05, 0.12, 0.3} {
		for _, emf := range []float64{12, 20, 40, 120, 400} {
			for _, henries := range []float64{0, 1e-6, 2e-5, 2e-4, 2e-3} {
				for _, zero := range []float64{0.05, 0.3, 1, 1.5} {
					s := StarSource{Source{EMFPeak: emf, Hertz: 200, Ohms: 0.1, Henries: henries, Phases: 3}, third * emf, zero * henries}
					l := Load{Volts: 13, Ohms: 0.02, DiodeVolts: 0.8, DiodeOhms: 0.005}
					var near StarSolver
					p, err := near.Solve(s, l)
					require.NoError(t, err, "%+v", s)
					off := math.Abs(p.InputWatts/(p.Watts+p.CopperWatts+p.DiodeWatts) - 1)
					worst = max(worst, off)
					assert.Less(t, off, 1e-8, "%+v %+v", s, p)
					warm, err := near.Solve(s, l)
					require.NoError(t, err)
					assert.InEpsilon(t, p.DCAmps, warm.DCAmps, 1e-8)
				}
			}
		}
	}
	t.Log("worst", worst)
}

func BenchmarkStarPoint(b *testing.B) {
	var near StarSolver
	n := 0
	for b.Loop() {
		n++
		emf := 60 + float64(n%10)
		s := StarSource{Source{EMFPeak: emf, Hertz: 200, Ohms: 0.1, Henries: 2e-4, Phases: 3}, 0.15 * emf, 5e-5}
		if _, err := near.Solve(s, Load{Volts: 13, Ohms: 0.02, DiodeVolts: 0.8}); err != nil {
			b.Fatal(err)
		}
	}
}
