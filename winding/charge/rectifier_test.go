package charge

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// anySinglePhase is a random single phase that conducts through a half wave or a doubler.
func anySinglePhase(r *rand.Rand, way Rectifier) (Source, Load) {
	s, l := anyCircuit(r)
	s.Phases, l.Rectifier = 1, way
	s.EMFPeak = max(1, CutInEMFPeak(l, 1, false)) * (1 + spread(r, 1e-5, 1e3))
	return s, l
}

// Without inductance the half wave is i = (ê·sin θ - v)/R while that is above nothing; its
// mean is (ê·cos α - v·(π/2 - α))/(πR), α = arcsin(v/ê), derived by hand.
func TestHalfWaveWithoutInductance(t *testing.T) {
	for _, v := range []float64{0, 3, 9, 9.99} {
		p := solved(t, Source{EMFPeak: 10, Hertz: 50, Ohms: 0.5, Phases: 1}, Load{Volts: v, Ohms: 1.5, Rectifier: HalfWave})
		alpha := math.Asin(v / 10)
		assert.InEpsilon(t, (10*math.Cos(alpha)-v*(math.Pi/2-alpha))/(2*math.Pi), p.DCAmps, 1e-7)
		assert.Equal(t, Pulses, p.Mode)
	}
}

// A resistor on one diode gives π/2 as the rms over the mean, and a coil alone on an ideal diode
// i = (ê/x)(1 - cos θ): textbook half wave, derived by hand.
func TestHalfWaveLimits(t *testing.T) {
	p := solved(t, Source{EMFPeak: 10, Hertz: 50, Ohms: 1, Phases: 1}, Load{Rectifier: HalfWave})
	assert.InEpsilon(t, 10/math.Pi, p.DCAmps, 1e-7)
	assert.InEpsilon(t, math.Pi/2, p.PhaseAmpsRMS/p.DCAmps, 1e-7)
	p = solved(t, Source{EMFPeak: 10, Hertz: 50, Henries: 0.01, Phases: 1}, Load{Rectifier: HalfWave})
	assert.InEpsilon(t, 10/(math.Pi), p.DCAmps, 1e-9)
	assert.InEpsilon(t, math.Sqrt(1.5), p.DCAmpsRMS/p.DCAmps, 1e-9)
}

// A doubler on a held voltage is a bridge of half as many diodes on half the voltage, at half the
// current: the same watts.
func TestDoublerOnAHeldVoltageIsABridgeOnHalf(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 2))
	for range 2000 {
		s, l := anySinglePhase(r, Doubler)
		l.Ohms = 0
		if s.Ohms+s.Henries+l.DiodeOhms == 0 {
			continue
		}
		p, err := Solve(s, l)
		require.NoError(t, err)
		half := Load{Volts: l.Volts / 2, DiodeVolts: l.DiodeVolts / 2, DiodeOhms: l.DiodeOhms / 2}
		q, err := Solve(s, half)
		require.NoError(t, err)
		assert.InEpsilon(t, q.DCAmps/2, p.DCAmps, 1e-12)
		assert.InDelta(t, q.Watts, p.Watts, 1e-12*q.Watts)
		assert.InEpsilon(t, q.PhaseAmpsRMS, p.PhaseAmpsRMS, 1e-12)
		assert.InDelta(t, q.Kappa, p.Kappa, 1e-12*q.Kappa)
	}
}

func TestPowerBalanceOfHalfWaveAndDoubler(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 6))
	modes := map[Mode]int{}
	for n := range 8000 {
		s, l := anySinglePhase(r, []Rectifier{HalfWave, Doubler}[n%2])
		p, err := Solve(s, l)
		require.NoError(t, err, "%+v %+v", s, l)
		out := p.Watts + p.CopperWatts + p.DiodeWatts
		require.InDelta(t, p.InputWatts, out, 1e-9*p.InputWatts+1e-13*s.EMFPeak*p.PhaseAmpsRMS, "%+v %+v %+v", s, l, p)
		require.InDelta(t, l.Volts+l.Ohms*p.DCAmps, p.DCVolts, 1e-12*p.DCVolts)
		modes[p.Mode]++
	}
	assert.Greater(t, modes[Pulses], 1000)
	assert.Greater(t, modes[Continuous], 100)
}

// More load volts, fewer amps; none at cut-in.
func TestHalfWaveAndDoublerCutIn(t *testing.T) {
	for _, way := range []Rectifier{HalfWave, Doubler} {
		l := Load{Volts: 12, Ohms: 0.1, DiodeVolts: 0.7, Rectifier: way}
		cut := map[Rectifier]float64{HalfWave: 12.7, Doubler: 6.7}[way]
		assert.InDelta(t, cut, CutInEMFPeak(l, 1, false), 1e-12)
		s := Source{EMFPeak: cut, Hertz: 50, Ohms: 1, Henries: 0.001, Phases: 1}
		assert.Equal(t, Off, solved(t, s, l).Mode)
		last := 0.0
		for k := range 40 {
			s.EMFPeak = cut * (1 + 1e-6*math.Pow(1.6, float64(k)))
			p := solved(t, s, l)
			assert.Greater(t, p.DCAmps, last)
			last = p.DCAmps
		}
	}
}

func TestARectifierThatDoesNotFit(t *testing.T) {
	for _, way := range []Rectifier{HalfWave, Doubler, 9} {
		s, l := Source{EMFPeak: 30, Hertz: 50, Ohms: 1, Phases: 3}, Load{Volts: 12, Rectifier: way}
		_, err := Solve(s, l)
		var unfit UnfitError
		require.ErrorAs(t, err, &unfit)
		assert.Equal(t, UnfitError{way, 3}, unfit)
		assert.ErrorContains(t, err, way.String())
		assert.Zero(t, CutInEMFPeak(l, 3, false))
	}
	assert.Equal(t, "half wave", HalfWave.String())
}

// steppedHalfWave is backward Euler on one diode: it knows nothing of pulses.
func steppedHalfWave(x, rho, v float64, steps, cycles int) (mean, rms float64) {
	h, i := 2*math.Pi/float64(steps), 0.0
	for n := range steps * cycles {
		i = max(0, (x/h*i+math.Sin(float64(n+1)*h)-v)/(rho+x/h))
		if n >= steps*(cycles-1) {
			mean += i / float64(steps)
			rms += i * i / float64(steps)
		}
	}
	return mean, math.Sqrt(rms)
}

func TestHalfWaveAgainstTimeSteps(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	for range 30 {
		x, rb, v := spread(r, 0.05, 20), r.Float64(), r.Float64()*0.9
		s := Source{EMFPeak: 1, Hertz: 1, Ohms: 1, Henries: x / (2 * math.Pi), Phases: 1}
		p := solved(t, s, Load{Volts: v, Ohms: rb, Rectifier: HalfWave})
		m1, r1 := steppedHalfWave(x, 1+rb, v, 20000, 3)
		m2, r2 := steppedHalfWave(x, 1+rb, v, 40000, 3)
		assert.InEpsilon(t, 2*m2-m1, p.DCAmps, 5e-4, "x %g rb %g v %g", x, rb, v)
		assert.InEpsilon(t, 2*r2-r1, p.DCAmpsRMS, 5e-4, "x %g rb %g v %g", x, rb, v)
	}
}

// steppedDoubler is small steps of a doubler with capacitors of a susceptance b (per radian) each: winding
// current, two voltages, load v behind rb.
func steppedDoubler(x, r, v, rb, drop, b float64, steps, cycles int) (mean, rms float64) {
	h, i := 2*math.Pi/float64(steps), 0.0
	up, down := v/2, v/2
	for n := range steps * cycles {
		e := math.Sin((float64(n) + 0.5) * h)
		// One way, the other, or not at all; the winding's current implicitly.
		if a := (x/h*i + e - up - drop) / (r + x/h); a > 0 && i >= 0 {
			i = a
		} else if a := (x/h*i + e + down + drop) / (r + x/h); a < 0 && i <= 0 {
			i = a
		} else {
			i = 0
		}
		load := (up + down - v) / rb
		up += h / b * (max(i, 0) - load)
		down += h / b * (max(-i, 0) - load)
		if n >= steps*(cycles-1) {
			mean += load / float64(steps)
			rms += i * i / float64(steps)
		}
	}
	return mean, math.Sqrt(rms)
}

func TestDoublerAgainstTimeSteps(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 2))
	for range 12 {
		x, rb, v, drop := spread(r, 0.05, 3), 0.5+r.Float64(), r.Float64()*1.4, r.Float64()*0.1
		s := Source{EMFPeak: 1, Hertz: 1, Ohms: 1, Henries: x / (2 * math.Pi), Phases: 1}
		p := solved(t, s, Load{Volts: v, Ohms: rb, DiodeVolts: drop, Rectifier: Doubler})
		mean, rms := steppedDoubler(x, 1, v, rb, drop, 400, 4000, 1000)
		assert.InEpsilon(t, mean, p.DCAmps, 2e-3, "x %g rb %g v %g", x, rb, v)
		assert.InEpsilon(t, rms, p.PhaseAmpsRMS, 2e-3, "x %g rb %g v %g", x, rb, v)
	}
}
