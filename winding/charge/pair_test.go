package charge

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var joinings = map[string]Rectifier{"bridge": Bridge, "half-wave": HalfWave, "doubler": Doubler}

// pairOf is the circuit of a row.
func (r row) pairOf(t testing.TB) (Source, Load) {
	t.Helper()
	s := Source{EMFPeak: r.num(t, "emf_peak_v"), Hertz: r.num(t, "hertz"), Ohms: r.num(t, "ohms"), Phases: 2}
	s.Henries = r.num(t, "reactance_ohms") / (2 * math.Pi * s.Hertz)
	return s, Load{Volts: r.num(t, "load_volts"), Ohms: r.num(t, "load_ohms"), DiodeVolts: r.num(t, "diode_volts"), Rectifier: joinings[r["rectifier"]]}
}

// Time stepping, which knows nothing of pieces: the table says how it was made.
func TestTwoPhasesAgainstSmallSteps(t *testing.T) {
	rows := readTable(t, "two_phases_stepped.csv")
	require.Len(t, rows, 78)
	for _, r := range rows {
		s, l := r.pairOf(t)
		l.DiodeOhms = r.num(t, "diode_ohms")
		p := solved(t, s, l)
		assert.InEpsilon(t, r.num(t, "dc_amps"), p.DCAmps, 1e-4, "%v", r)
		assert.InEpsilon(t, r.num(t, "dc_amps_rms"), p.DCAmpsRMS, 1e-4, "%v", r)
		assert.InEpsilon(t, r.num(t, "phase_amps_rms"), p.PhaseAmpsRMS, 1e-4, "%v", r)
	}
}

// A circuit simulator, whose diodes are curved.
func TestTwoPhasesAgainstACircuitSimulator(t *testing.T) {
	for _, r := range readTable(t, "two_phases_ngspice.csv") {
		s, l := r.pairOf(t)
		l.DiodeOhms = 1e-4
		p := solved(t, s, l)
		assert.InEpsilon(t, r.num(t, "dc_amps"), p.DCAmps, 1e-3, "%v", r)
		assert.InEpsilon(t, r.num(t, "dc_amps_rms"), p.DCAmpsRMS, 1e-3, "%v", r)
		assert.InEpsilon(t, r.num(t, "phase_amps_rms"), p.PhaseAmpsRMS, 1e-3, "%v", r)
	}
}

// A lamp of 6 ohms behind a winding of little resistance, whose diodes drop 0.3 V, an exponential
// (IS=1e-7, N=1: 0.43 V at the 2 A of a phase) and 5 mΩ: ngspice 39, backwards differences of 1/1000 of
// a cycle, has 3.520 A. One phase against twice the ohms, doubled, has 2.58 A.
func TestALampOnTwoPhases(t *testing.T) {
	s := Source{EMFPeak: 27.585, Hertz: 50, Ohms: 0.47643, Henries: 1.2e-3, Phases: 2}
	l := Load{Ohms: 6, DiodeVolts: 0.73, DiodeOhms: 0.005}
	p := solved(t, s, l)
	assert.InEpsilon(t, 3.520, p.DCAmps, 1e-3)
	s.Phases, l.Ohms = 1, 12
	assert.InDelta(t, 0.73, 2*solved(t, s, l).DCAmps/p.DCAmps, 0.01)
}

// anyPair is a random circuit of two phases that conducts.
func anyPair(r *rand.Rand, way Rectifier) (Source, Load) {
	s, l := anyCircuit(r)
	s.Phases, l.Rectifier = 2, way
	s.EMFPeak = max(1, CutInEMFPeak(l, 2, false)) * (1 + spread(r, 1e-5, 1e3))
	return s, l
}

func forAnyPair(t *testing.T, n int, check func(s Source, l Load, p Point)) {
	t.Helper()
	if testing.Short() {
		n /= 10
	}
	for _, way := range []Rectifier{Bridge, HalfWave, Doubler} {
		rng := rand.New(rand.NewPCG(6, uint64(way)))
		for range n {
			s, l := anyPair(rng, way)
			p, err := Solve(s, l)
			require.NoError(t, err, "%+v %+v", s, l)
			if check(s, l, p); t.Failed() {
				t.Fatalf("%+v %+v", s, l)
			}
		}
	}
}

// What the EMFs give is what battery, ohms, copper and diodes take, each integrated by itself.
func TestPowerBalanceOfTwoPhases(t *testing.T) {
	modes := map[Mode]int{}
	forAnyPair(t, 40000, func(s Source, l Load, p Point) {
		out := p.BatteryWatts + l.Ohms*p.DCAmpsRMS*p.DCAmpsRMS + p.CopperWatts + p.DiodeWatts
		require.InDelta(t, p.InputWatts, out, 1e-9*p.InputWatts+1e-13*s.EMFPeak*p.PhaseAmpsRMS)
		require.GreaterOrEqual(t, p.DCAmpsRMS, p.DCAmps*(1-1e-12))
		modes[p.Mode]++
	})
	t.Log(modes)
	for _, m := range []Mode{Pulses, Mixed, Continuous} {
		assert.Greater(t, modes[m], 500)
	}
}

// With no ohms in the load two phases are one, twice; only the rms of their sum differs, and the march
// gives the same for negligible ohms.
func TestTwoPhasesOnALoadWithoutOhmsAreTwoAlone(t *testing.T) {
	forAnyPair(t, 4000, func(s Source, l Load, _ Point) {
		if l.Ohms = 0; s.Ohms+s.Henries+l.DiodeOhms == 0 {
			return
		}
		p, err := Solve(s, l)
		require.NoError(t, err)
		s.Phases = 1
		one, err := Solve(s, l)
		require.NoError(t, err)
		assert.InEpsilon(t, 2*one.DCAmps, p.DCAmps, 1e-9)
		assert.InEpsilon(t, one.PhaseAmpsRMS, p.PhaseAmpsRMS, 1e-9)
		assert.InDelta(t, 2*one.CopperWatts, p.CopperWatts, 1e-9*one.CopperWatts)
		assert.InDelta(t, 2*one.DiodeWatts, p.DiodeWatts, 1e-9*one.DiodeWatts)
		assert.InDelta(t, 2*one.InputWatts, p.InputWatts, 1e-9*math.Abs(one.InputWatts)+1e-13*s.EMFPeak*one.PhaseAmpsRMS) // nothing at all where nothing takes it
		assert.LessOrEqual(t, p.DCAmpsRMS, 2*one.DCAmpsRMS*(1+1e-12))
	})
	for _, way := range []Rectifier{Bridge, HalfWave} {
		for _, henries := range []float64{0, 0.001, 0.01} {
			s, l := Source{EMFPeak: 30, Hertz: 50, Ohms: 1, Henries: henries, Phases: 2}, Load{Volts: 12, DiodeVolts: 0.7, Rectifier: way}
			none := solved(t, s, l)
			l.Ohms = 1e-7
			some := solved(t, s, l)
			assert.InEpsilon(t, none.DCAmps, some.DCAmps, 1e-6)
			assert.InEpsilon(t, none.DCAmpsRMS, some.DCAmpsRMS, 1e-6, "%v %g", way, henries)
			assert.Equal(t, none.Mode, some.Mode)
		}
	}
}

// Without inductance, ohms in the winding or a voltage in the load, the larger EMF of the two takes
// all: 8 pieces of sine of 45° each side of the peak, mean (4/π)·∫cos over 45° = 2√2/π = 0.9003 of the
// peak over R, where one phase alone has 2/π = 0.6366; its rms √(1/2 + 1/π), and each phase carries
// half of the heat. Derived by hand.
func TestTwoPhasesIntoAResistorAlone(t *testing.T) {
	p := solved(t, Source{EMFPeak: 10, Hertz: 50, Phases: 2}, Load{Ohms: 2})
	assert.InEpsilon(t, 5*2*math.Sqrt2/math.Pi, p.DCAmps, 1e-6)
	assert.InEpsilon(t, 5*math.Sqrt(0.5+1/math.Pi), p.DCAmpsRMS, 1e-6)
	assert.InEpsilon(t, 5*math.Sqrt((0.5+1/math.Pi)/2), p.PhaseAmpsRMS, 1e-4)
	// Ohms in the winding and none in the load: both conduct all the time, each with 2/π of its peak.
	p = solved(t, Source{EMFPeak: 10, Hertz: 50, Ohms: 2, Phases: 2}, Load{})
	assert.InEpsilon(t, 2*5*2/math.Pi, p.DCAmps, 1e-6)
	assert.InEpsilon(t, 5*math.Sqrt(1+2/math.Pi), p.DCAmpsRMS, 1e-6, "(sin + cos)² over a quarter is 1 + 2/π")
	// At half wave the mean is that of the larger of sin and cos where it is positive: the pulses of
	// 90° and 90° meet at 45°, ∫ = 2·(1 + √2/2) over 2π.
	p = solved(t, Source{EMFPeak: 10, Hertz: 50, Phases: 2}, Load{Ohms: 2, Rectifier: HalfWave})
	assert.InEpsilon(t, 5*(1+math.Sqrt2/2)/math.Pi, p.DCAmps, 1e-6)
}

// Pulses that never meet are those of one phase each, with all the load's ohms to itself.
func TestTwoPhasesFarApart(t *testing.T) {
	for _, way := range []Rectifier{Bridge, HalfWave} {
		s, l := Source{EMFPeak: 15, Hertz: 50, Ohms: 0.5, Henries: 0.5e-3, Phases: 1}, Load{Volts: 12, Ohms: 0.4, DiodeVolts: 0.7, Rectifier: way}
		one := solved(t, s, l)
		s.Phases = 2
		p := solved(t, s, l)
		assert.Equal(t, Pulses, p.Mode)
		assert.InEpsilon(t, 2*one.DCAmps, p.DCAmps, 1e-12)
		assert.InEpsilon(t, math.Sqrt2*one.DCAmpsRMS, p.DCAmpsRMS, 1e-12)
		assert.InEpsilon(t, 2*one.InputWatts, p.InputWatts, 1e-12)
	}
}

func TestScalingOfTwoPhases(t *testing.T) {
	forAnyPair(t, 3000, func(s Source, l Load, p Point) { scales(t, s, l, p) })
}

// Amps rise with EMF through all regimes, and the modes follow one another.
func TestTwoPhasesRiseWithEMF(t *testing.T) {
	for _, way := range []Rectifier{Bridge, HalfWave} {
		for _, x := range []float64{0, 0.3, 2, 30} {
			last, modes := 0.0, []Mode(nil)
			for kappa := 1.001; kappa < 60; kappa *= 1.003 {
				p := solved(t, Source{EMFPeak: 10 * kappa, Hertz: 1 / (2 * math.Pi), Ohms: 1, Henries: x, Phases: 2}, Load{Volts: 10, Ohms: 0.7, Rectifier: way})
				require.Greater(t, p.DCAmps, last, "κ %g x %g", kappa, x)
				if last = p.DCAmps; len(modes) == 0 || modes[len(modes)-1] != p.Mode {
					modes = append(modes, p.Mode)
				}
			}
			want := []Mode{Pulses, Mixed, Continuous}
			if way == HalfWave || x < 1 { // too little for a current to turn over before the other one's rails let it
				want = want[:2]
			}
			assert.Equal(t, want, modes, "x %g %v", x, way)
		}
	}
}

// A solver that starts from another point finds what one finds that starts from nothing.
func TestTwoPhasesFromANeighbour(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	var near Solver
	for n := range 3000 {
		s, l := anyPair(rng, []Rectifier{Bridge, HalfWave}[n%2])
		for range 3 {
			s.EMFPeak, s.Hertz, s.Ohms = s.EMFPeak*1.01, s.Hertz*1.01, s.Ohms*0.99
			warm, err := near.Solve(s, l)
			require.NoError(t, err, "%+v %+v", s, l)
			cold, err := Solve(s, l)
			require.NoError(t, err)
			same(t, cold, warm, 1, 1, 1e-7)
		}
	}
	a, b := near, near
	a.last.two, b.last.two = [2]float64{1, -2}, [2]float64{2, -1}
	a.last.pair, b.last.pair = true, true
	assert.Equal(t, [2]float64{3, -1}, Between(&a, &b, 2).last.two, "no current is drawn on past where it turns")
}

func TestTwoPhasesAllocateNothing(t *testing.T) {
	var near Solver
	s, l := Source{EMFPeak: 30, Hertz: 50, Ohms: 1, Henries: 0.002, Phases: 2}, Load{Volts: 12, Ohms: 0.5, DiodeVolts: 0.7}
	assert.Zero(t, testing.AllocsPerRun(100, func() { _, _ = near.Solve(s, l) }))
}

// BenchmarkTwoPhases goes over the rows of a table, from nothing and from a neighbour.
func BenchmarkTwoPhases(b *testing.B) {
	var near around
	for _, r := range readTable(b, "two_phases_stepped.csv") {
		if r["rectifier"] == "bridge" {
			near.add(r.pairOf(b))
		}
	}
	near.solve(b)
}
