package charge

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// stepped solves the same circuit by implicit time steps and knows nothing of events, modes or
// symmetry. A backward Euler step of inductors, resistors and diodes is the minimum of a convex
// function of the currents, which is found by trying every way the diodes can conduct.
type stepped struct {
	x, r, rb, v float64
	phases      int
}

// cost is the function whose least is the step: g is EMF plus what the inductors carry
// over, rho the resistance they add to.
func (b stepped) cost(i, g [3]float64, rho float64) float64 {
	sum, dc := 0.0, 0.0
	for k := range i {
		sum += rho*i[k]*i[k]/2 - g[k]*i[k]
		dc += math.Abs(i[k]) / 2
	}
	return sum + b.v*dc + b.rb*dc*dc/2
}

// step is the currents h later.
func (b stepped) step(i [3]float64, theta, h float64) [3]float64 {
	var g [3]float64
	for k := range g {
		g[k] = b.x/h*i[k] + math.Sin(theta-2*math.Pi*float64(k)/3)
	}
	if b.phases == 1 {
		g = [3]float64{math.Sin(theta)/2 + b.x/h*i[0], -math.Sin(theta)/2 + b.x/h*i[1], 0}
	}
	rho := b.r + b.x/h
	best, least := [3]float64{}, 0.0
	try := func(i [3]float64) {
		if c := b.cost(i, g, rho); c < least {
			best, least = i, c
		}
	}
	for p := range 3 {
		for n := range 3 {
			if p == n || (b.phases == 1 && p+n != 1) {
				continue
			}
			if dc := (g[p] - g[n] - b.v) / (2*rho + b.rb); dc > 0 {
				var i [3]float64
				i[p], i[n] = dc, -dc
				try(i)
			}
		}
		for _, s := range []float64{1, -1} {
			x, y := (p+1)%3, (p+2)%3
			dc := (s*(g[p]-(g[x]+g[y])/2) - b.v) / (1.5*rho + b.rb)
			split := (g[x] - g[y]) / rho
			var i [3]float64
			i[p], i[x], i[y] = s*dc, (-s*dc+split)/2, (-s*dc-split)/2
			if b.phases == 3 && dc > 0 && s*i[x] < 0 && s*i[y] < 0 {
				try(i)
			}
		}
	}
	return best
}

// run gives mean and rms direct current, line rms, and the part of the cycle phase 0 rests,
// after some cycles.
func (b stepped) run(steps, cycles int) (mean, rms, line, rest float64) {
	h := 2 * math.Pi / float64(steps)
	var i [3]float64
	for n := range steps * cycles {
		i = b.step(i, float64(n+1)*h, h)
		if n < steps*(cycles-1) {
			continue
		}
		dc := (math.Abs(i[0]) + math.Abs(i[1]) + math.Abs(i[2])) / 2
		mean += dc / float64(steps)
		rms += dc * dc / float64(steps)
		line += i[0] * i[0] / float64(steps)
		if i[0] == 0 {
			rest += 1 / float64(steps)
		}
	}
	return mean, math.Sqrt(rms), math.Sqrt(line), rest
}

// extrapolated removes the error that is proportional to the step.
func (b stepped) extrapolated(steps, cycles int) (mean, rms, line float64) {
	m1, r1, l1, _ := b.run(steps, cycles)
	m2, r2, l2, _ := b.run(2*steps, cycles)
	return 2*m2 - m1, 2*r2 - r1, 2*l2 - l1
}

func TestAgainstTimeSteps(t *testing.T) {
	cases, steps := 24, 4800
	if testing.Short() {
		cases = 6
	}
	rng := rand.New(rand.NewPCG(1, 2))
	seen := map[Mode]int{}
	for n := range cases {
		kappa := 1.03 + math.Pow(rng.Float64(), 3)*6
		q := math.Exp(rng.Float64()*4.5 - 3)
		s := Source{EMFPeak: 1, Hertz: 1, Ohms: 1, Henries: q / (2 * math.Pi), Phases: 3}
		if n%6 == 5 {
			s.Phases = 1
		}
		rb := rng.Float64() * float64(n%2)
		l := Load{Volts: linePerPhase(s.Phases, false) / kappa, Ohms: rb}
		p, err := Solve(s, l)
		require.NoError(t, err)
		b := stepped{q, 1, rb, l.Volts, s.Phases}
		if s.Phases == 1 {
			b.x, b.r = q/2, 0.5 // half in either lead
		}
		mean, rms, line := b.extrapolated(steps, 4+int(2*q))
		assert.InEpsilon(t, mean, p.DCAmps, 5e-4, "κ %g q %g rb %g %s", kappa, q, rb, p.Mode)
		assert.InEpsilon(t, rms, p.DCAmpsRMS, 5e-4, "rms, κ %g q %g", kappa, q)
		assert.InEpsilon(t, line, p.LineAmpsRMS, 5e-4, "line, κ %g q %g", kappa, q)
		seen[p.Mode]++
	}
	t.Log(seen)
}

// Between the limits of Continuous found here and lower ones that have been given elsewhere,
// the phases do rest: time steps show it.
func TestPhasesRestJustBelowContinuous(t *testing.T) {
	const q = 0.1
	for _, c := range []struct {
		kappa float64
		want  Mode
	}{{11.2, Mixed}, {11.8, Continuous}} {
		p, err := Solve(Source{1, 1, 1, q / (2 * math.Pi), 3, false}, Load{Volts: math.Sqrt(3) / c.kappa})
		require.NoError(t, err)
		assert.Equal(t, c.want, p.Mode)
		_, _, _, rest := stepped{q, 1, 0, math.Sqrt(3) / c.kappa, 3}.run(200000, 2)
		assert.Equal(t, c.want == Mixed, rest > 1e-5, "κ %g rests %g of the cycle", c.kappa, rest)
	}
}
