package charge

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// spread is a random number between low and high, even in its logarithm.
func spread(rng *rand.Rand, low, high float64) float64 {
	return low * math.Pow(high/low, rng.Float64())
}

// anyCircuit is a random circuit that conducts, from just above cut-in to deep saturation, and
// with any of its ohms, henries and volts 0 now and then.
func anyCircuit(rng *rand.Rand) (Source, Load) {
	maybe := func(v float64) float64 {
		if rng.IntN(5) == 0 {
			return 0
		}
		return v
	}
	l := Load{
		Volts: maybe(spread(rng, 0.1, 400)), Ohms: maybe(spread(rng, 1e-4, 1e2)),
		DiodeVolts: maybe(spread(rng, 0.1, 1)), DiodeOhms: maybe(spread(rng, 1e-4, 1)),
	}
	s := Source{
		Hertz: spread(rng, 1, 1000), Ohms: maybe(spread(rng, 1e-4, 1e2)),
		Henries: maybe(spread(rng, 1e-7, 1)), Phases: 3, Delta: rng.IntN(2) == 0,
	}
	if rng.IntN(4) == 0 {
		s.Phases = 1
	}
	if s.Ohms+s.Henries+l.Ohms+l.DiodeOhms == 0 {
		s.Ohms = 1
	}
	s.EMFPeak = CutInEMFPeak(l, s.Phases, s.Delta) * (1 + spread(rng, 1e-6, 1e3))
	if s.EMFPeak == 0 {
		s.EMFPeak = spread(rng, 1, 100)
	}
	return s, l
}

func forAny(t *testing.T, n int, check func(t *testing.T, s Source, l Load, p Point)) {
	t.Helper()
	if testing.Short() {
		n /= 10
	}
	rng := rand.New(rand.NewPCG(3, 4))
	for range n {
		s, l := anyCircuit(rng)
		p, err := Solve(s, l)
		require.NoError(t, err, "%+v %+v", s, l)
		check(t, s, l, p)
		if t.Failed() {
			t.Fatalf("%+v %+v", s, l)
		}
	}
}

func same(t *testing.T, want, got Point, scaleAmps, scaleWatts, relative float64) {
	t.Helper()
	near := func(name string, a, b float64) {
		assert.InDelta(t, a, b, relative*math.Abs(a)+1e-300, name)
	}
	near("DC amps", want.DCAmps*scaleAmps, got.DCAmps)
	near("DC rms", want.DCAmpsRMS*scaleAmps, got.DCAmpsRMS)
	near("line amps", want.LineAmpsRMS*scaleAmps, got.LineAmpsRMS)
	near("watts", want.Watts*scaleWatts, got.Watts)
	near("input", want.InputWatts*scaleWatts, got.InputWatts)
	near("copper", want.CopperWatts*scaleWatts, got.CopperWatts)
	near("diodes", want.DiodeWatts*scaleWatts, got.DiodeWatts)
}

func TestPowerBalanceAnywhere(t *testing.T) {
	modes := map[Mode]int{}
	forAny(t, 50000, func(t *testing.T, s Source, l Load, p Point) {
		checkBalance(t, s, p, 1e-9)
		assert.Positive(t, p.DCAmps)
		assert.GreaterOrEqual(t, p.DCAmpsRMS, p.DCAmps*(1-1e-12))
		assert.NotEqual(t, Off, p.Mode)
		modes[p.Mode]++
	})
	t.Log(modes)
}

func TestScaling(t *testing.T) {
	forAny(t, 3000, scales)
}

// scales compares a point with what it becomes when all volts, all speeds or all ohms are scaled.
func scales(t *testing.T, s Source, l Load, p Point) {
	volts, loads := s, l
	volts.EMFPeak, loads.Volts, loads.DiodeVolts = 7*s.EMFPeak, 7*l.Volts, 7*l.DiodeVolts
	got, err := Solve(volts, loads)
	require.NoError(t, err)
	same(t, p, got, 7, 49, 1e-6)

	faster := s
	faster.Hertz, faster.Henries = s.Hertz*16, s.Henries/16
	got, err = Solve(faster, l)
	require.NoError(t, err)
	same(t, p, got, 1, 1, 1e-9)

	bigger, behind := s, l
	bigger.Ohms, bigger.Henries = s.Ohms*8, s.Henries*8
	behind.Ohms, behind.DiodeOhms = l.Ohms*8, l.DiodeOhms*8
	got, err = Solve(bigger, behind)
	require.NoError(t, err)
	same(t, p, got, 1./8, 1./8, 1e-9)
}

func TestDeltaIsStar(t *testing.T) {
	forAny(t, 3000, func(t *testing.T, s Source, l Load, p Point) {
		if s.Phases == 1 || !s.Delta {
			return
		}
		star := Source{s.EMFPeak / math.Sqrt(3), s.Hertz, s.Ohms / 3, s.Henries / 3, 3, false}
		got, err := Solve(star, l)
		require.NoError(t, err)
		same(t, p, got, 1, 1, 1e-6)
		assert.InEpsilon(t, got.PhaseAmpsRMS/math.Sqrt(3), p.PhaseAmpsRMS, 1e-6)
	})
}

// What is in series is in series: diode volts with load volts, diode ohms with phase ohms (in
// star one diode, in a single phase two; in delta three sides' worth).
func TestSeries(t *testing.T) {
	forAny(t, 3000, func(t *testing.T, s Source, l Load, p Point) {
		s.Ohms += map[bool]float64{true: 3, false: map[int]float64{1: 2, 3: 1}[s.Phases]}[s.Delta && s.Phases == 3] * l.DiodeOhms
		moved := Load{Volts: l.Volts + 2*l.DiodeVolts, Ohms: l.Ohms}
		got, err := Solve(s, moved)
		require.NoError(t, err)
		assert.InEpsilon(t, p.DCAmps, got.DCAmps, 1e-6)
		assert.InDelta(t, p.InputWatts, got.InputWatts, 1e-6*p.InputWatts+1e-12*s.EMFPeak*p.LineAmpsRMS)
		assert.InDelta(t, p.CopperWatts+p.DiodeWatts+p.Watts, got.CopperWatts+got.Watts, 1e-6*p.InputWatts+1e-12*s.EMFPeak*p.LineAmpsRMS)
	})
}

// Amps rise with EMF without a jump, and fall as the load's voltage rises.
func TestMonotonicAndContinuous(t *testing.T) {
	for _, q := range []float64{0, 0.01, 0.3, 1, 5, 100, math.Inf(1)} {
		for _, rb := range []float64{0, 0.5} {
			for _, phases := range []int{1, 3} {
				climb(t, q, rb, phases)
			}
		}
	}
}

func climb(t *testing.T, q, rb float64, phases int) {
	t.Helper()
	s := Source{Hertz: 1 / (2 * math.Pi), Ohms: 1, Henries: q, Phases: phases}
	if math.IsInf(q, 1) {
		s.Ohms, s.Henries = 0, 1
	}
	last := Point{}
	lastEMF := 0.0
	for kappa := 0.9; kappa < 20; kappa *= 1.0005 {
		s.EMFPeak = 10 * kappa / linePerPhase(phases, false)
		p, err := Solve(s, Load{Volts: 10, Ohms: rb})
		require.NoError(t, err, "κ %g q %g rb %g phases %d", kappa, q, rb, phases)
		if !assert.GreaterOrEqual(t, p.DCAmps, last.DCAmps, "κ %g q %g", kappa, q) {
			return
		}
		// No more amps than the EMF's rise could drive through what the least of the
		// circuit's impedance is, twice over.
		most := 4 * (s.EMFPeak - lastEMF) / max(s.Ohms, min(s.Henries, 1)/2)
		if lastEMF > 0 {
			assert.LessOrEqual(t, p.DCAmps-last.DCAmps, most, "κ %g q %g rb %g", kappa, q, rb)
		}
		last, lastEMF = p, s.EMFPeak
	}
}

// The limits of no inductance and no resistance are reached smoothly.
func TestLimits(t *testing.T) {
	for _, kappa := range []float64{1.001, 1.1, 1.5, 3, 30} {
		s := Source{EMFPeak: 10 * kappa / math.Sqrt(3), Hertz: 1 / (2 * math.Pi), Ohms: 1, Phases: 3}
		at := func(r, x, rb float64) float64 {
			s.Ohms, s.Henries = r, x
			p, err := Solve(s, Load{Volts: 10, Ohms: rb})
			require.NoError(t, err)
			checkBalance(t, s, p, 1e-9)
			return p.DCAmps
		}
		for _, rb := range []float64{0, 1} {
			assert.InEpsilon(t, at(1, 0, rb), at(1, 1e-6, rb), 1e-4, "no L, κ %g", kappa)
			assert.InEpsilon(t, at(0, 1, rb), at(1e-6, 1, rb), 1e-4, "no R, κ %g", kappa)
		}
		assert.InEpsilon(t, at(0, 0, 1), at(1e-7, 1e-7, 1), 1e-4, "neither, κ %g", kappa)
		assert.InEpsilon(t, at(1, 1, 0), at(1, 1, 1e-8), 1e-6, "no load ohms, κ %g", kappa)
	}
}

func TestNoAllocation(t *testing.T) {
	s, l := onMap(1.5, 1)
	assert.Zero(t, testing.AllocsPerRun(100, func() { _, _ = Solve(s, l) }))
}
