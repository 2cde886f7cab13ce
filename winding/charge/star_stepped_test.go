package charge

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Eight diodes by Kirchhoff's laws alone, stepped by the implicit Euler method: at each step the
// five unknowns (three currents, the star point, the distance of the rails) are solved for one
// combination of diodes after another until all diodes agree. Nothing of the closed forms is in it.
type steppedStar struct {
	s    StarSource
	l    Load
	i    [3]float64
	last int
}

// solve5 is Gaussian elimination with pivots; false where there is no solution.
func solve5(a [5][6]float64) (x [5]float64, ok bool) {
	for k := range 5 {
		p := k
		for r := k + 1; r < 5; r++ {
			if math.Abs(a[r][k]) > math.Abs(a[p][k]) {
				p = r
			}
		}
		if math.Abs(a[p][k]) < 1e-14 {
			return x, false
		}
		a[k], a[p] = a[p], a[k]
		for r := range 5 {
			if f := a[r][k] / a[k][k]; r != k && f != 0 {
				for c := k; c < 6; c++ {
					a[r][c] -= f * a[k][c]
				}
			}
		}
	}
	for k := range 5 {
		x[k] = a[k][5] / a[k][k]
	}
	return x, true
}

// step advances by h to a time at which the phases have e, and returns the current into the load and
// out of the star point.
func (m *steppedStar) step(e [3]float64, h float64) (dc, star float64, ok bool) {
	mutual := (m.s.ZeroHenries - m.s.Henries) / 3
	was := m.i[0] + m.i[1] + m.i[2]
	for try := range 82 {
		state := (try + 80) % 81
		if try == 0 {
			state = m.last
		}
		s := [4]float64{float64(state%3 - 1), float64(state/3%3 - 1), float64(state/9%3 - 1), float64(state/27 - 1)}
		var a [5][6]float64 // i0 i1 i2 star rails
		for k := range 3 {
			a[k][k] = 1
			if s[k] == 0 {
				continue
			}
			a[k][k] = m.s.Henries/h + m.s.Ohms + m.l.DiodeOhms
			for n := range 3 {
				a[k][n] += mutual / h
			}
			a[k][3], a[k][4] = -1, s[k]/2
			a[k][5] = e[k] + m.s.Henries/h*m.i[k] + mutual/h*was
		}
		a[3] = [6]float64{1, 1, 1, 0, 0, 0}
		if s[3] != 0 {
			a[3] = [6]float64{m.l.DiodeOhms, m.l.DiodeOhms, m.l.DiodeOhms, 1, -s[3] / 2, 0}
		}
		a[4][4], a[4][5] = 1, m.l.Volts+2*m.l.DiodeVolts
		for k := range 3 {
			if s[k] > 0 {
				a[4][k] -= m.l.Ohms
			}
			if s[3] > 0 {
				a[4][k] += m.l.Ohms
			}
		}
		x, solved := solve5(a)
		if !solved {
			continue
		}
		sum := x[0] + x[1] + x[2]
		agrees := s[3] == 0 && math.Abs(x[3]) <= x[4]/2+1e-9 || s[3]*-sum > 0
		for k := range 3 {
			if s[k] == 0 {
				at := x[3] + e[k] + mutual/h*(was-sum) + m.s.Henries/h*m.i[k]
				agrees = agrees && math.Abs(at) <= x[4]/2+1e-9
			} else {
				agrees = agrees && s[k]*x[k] > 0
			}
		}
		if agrees {
			m.i, m.last = [3]float64{x[0], x[1], x[2]}, state
			return (math.Abs(x[0]) + math.Abs(x[1]) + math.Abs(x[2]) + math.Abs(sum)) / 2, -sum, true
		}
	}
	return 0, 0, false
}

func TestStarPointAgainstSmallSteps(t *testing.T) {
	const steps = 6000
	l := Load{Volts: 13.5, Ohms: 0.02, DiodeVolts: 0.8, DiodeOhms: 0.004}
	for _, c := range []struct{ emf, third, henries, zero float64 }{
		{45, 0.2, 2e-4, 6e-5}, {45, -0.2, 2e-4, 6e-5}, {24, 0.3, 2e-5, 1e-5}, {90, 0.12, 2e-4, 2e-4}, {90, -0.12, 3e-4, 4e-4}, {150, 0.2, 4e-4, 4e-5},
	} {
		s := StarSource{Source{EMFPeak: c.emf, Hertz: 200, Ohms: 0.1, Henries: c.henries, Phases: 3}, c.third * c.emf, c.zero}
		m := steppedStar{s: s, l: l, last: 40}
		h := 1 / s.Hertz / steps
		var dc, star, phases float64
		cycles := 4 + int(10*s.Hertz*c.henries/s.Ohms)
		for n := range cycles * steps {
			var e [3]float64
			angle := 2 * math.Pi * float64(n%steps+1) / steps
			for k := range e {
				e[k] = c.emf*math.Sin(angle-2*math.Pi*float64(k)/3) + c.third*c.emf*math.Sin(3*angle)
			}
			amps, out, ok := m.step(e, h)
			require.True(t, ok, "%+v step %d", c, n)
			if n >= (cycles-1)*steps {
				dc += amps / steps
				star += out * out / steps
				phases += (m.i[0]*m.i[0] + m.i[1]*m.i[1] + m.i[2]*m.i[2]) / 3 / steps
			}
		}
		var near StarSolver
		p, err := near.Solve(s, l)
		require.NoError(t, err)
		bridge, err := Solve(s.Source, l)
		require.NoError(t, err)
		t.Logf("%+v: stepped %.4f solved %.4f A, bridge alone %.4f; star point %.4f and %.4f", c, dc, p.DCAmps, bridge.DCAmps, math.Sqrt(star), p.StarAmpsRMS)
		assert.InEpsilon(t, dc, p.DCAmps, 1e-3, "%+v", c)
		assert.InEpsilon(t, math.Sqrt(phases), p.PhaseAmpsRMS, 1e-3, "%+v", c)
		assert.InDelta(t, math.Sqrt(star), p.StarAmpsRMS, 1e-3*p.PhaseAmpsRMS, "%+v", c)
		assert.Equal(t, c.third > 0 && c.emf > 24, p.DCAmps > bridge.DCAmps*1.001, "%+v", c)
	}
}
