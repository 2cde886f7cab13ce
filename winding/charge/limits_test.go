package charge

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func solved(t *testing.T, s Source, l Load) Point {
	t.Helper()
	p, err := Solve(s, l)
	require.NoError(t, err)
	checkBalance(t, s, p, 1e-9)
	return p
}

// Bimbhra, Power Electronics, example 3.19: a three-phase diode bridge that gives 400 V mean
// into 10 Ω needs 418.9 V peak between lines; 41.89 A peak, 23.11 A rms in a diode, and the line,
// fed by two diodes in turn, √2 of that.
func TestIdealBridgeIntoResistor(t *testing.T) {
	p := solved(t, Source{EMFPeak: 418.879 / math.Sqrt(3), Hertz: 50, Phases: 3}, Load{Ohms: 10})
	assert.InEpsilon(t, 400, p.DCVolts, 1e-5)
	assert.InEpsilon(t, 23.11*math.Sqrt2, p.LineAmpsRMS, 5e-4)
}

// One phase into a resistor: mean 2Ê/π (any textbook of power electronics). Into a battery with
// resistance alone: I = (2Ê·cos α - V·(π - 2α))/(πR), sin α = V/Ê (Bimbhra, ch. 3, from memory).
func TestOnePhaseWithoutInductance(t *testing.T) {
	p := solved(t, Source{EMFPeak: 100, Hertz: 50, Phases: 1}, Load{Ohms: 10})
	assert.InEpsilon(t, 200/math.Pi, p.DCVolts, 1e-7)
	assert.Equal(t, Continuous, p.Mode)

	alpha := math.Asin(0.6)
	p = solved(t, Source{EMFPeak: 100, Hertz: 50, Ohms: 3, Phases: 1}, Load{Volts: 60})
	assert.InEpsilon(t, (200*math.Cos(alpha)-60*(math.Pi-2*alpha))/(3*math.Pi), p.DCAmps, 1e-7)
	assert.Equal(t, Pulses, p.Mode)
}

// A short circuit through ideal diodes is a short circuit: Ê/Z sine in every phase.
func TestShortCircuit(t *testing.T) {
	for _, delta := range []bool{false, true} {
		p := solved(t, Source{100, 50, 3, 4 / (2 * math.Pi * 50), 3, delta}, Load{})
		assert.InEpsilon(t, 100/5/math.Sqrt2, p.PhaseAmpsRMS, 1e-12)
		assert.InEpsilon(t, 3*100*20/2*3./5, p.CopperWatts, 1e-12)
	}
	p := solved(t, Source{100, 50, 3, 4 / (2 * math.Pi * 50), 1, false}, Load{})
	assert.InEpsilon(t, 20/math.Sqrt2, p.PhaseAmpsRMS, 1e-12)
}

// While every phase conducts and nothing has resistance, Idc = 3/(π·ωL)·√(Ê² - (2πV'/9)²), and
// the line rms is π/(3√2) of it where the EMF is high: derived by hand from a sixth of
// sine less a staircase.
func TestContinuousWithoutResistance(t *testing.T) {
	for _, kappa := range []float64{1.35, 2, 10} {
		s := Source{EMFPeak: kappa * 10 / math.Sqrt(3), Hertz: 1 / (2 * math.Pi), Henries: 2, Phases: 3}
		p := solved(t, s, Load{Volts: 10})
		assert.InEpsilon(t, 3/(2*math.Pi)*math.Sqrt(s.EMFPeak*s.EMFPeak-math.Pow(2*math.Pi*10/9, 2)), p.DCAmps, 1e-9)
	}
	s := Source{EMFPeak: 1000, Hertz: 1 / (2 * math.Pi), Henries: 2, Phases: 3}
	p := solved(t, s, Load{Volts: 1})
	assert.InEpsilon(t, math.Pi/(3*math.Sqrt2), p.LineAmpsRMS/p.DCAmps, 1e-5)
}

// fundamentalPhasor is the approximation Ê² = (2V'/π + R·Î)² + (ωL·Î)², Idc = 3Î/π, after
// Caliskan, Perreault, Jahns and Kassakian, IEEE Trans. Circuits Syst. I 50(9), 2003 (from
// memory); 0 where it has no current.
func fundamentalPhasor(emf, v, r, x float64) float64 {
	b, c := 2*v/math.Pi, emf*emf-math.Pow(2*v/math.Pi, 2)
	if c <= 0 {
		return 0
	}
	z2 := r*r + x*x
	return 3 / math.Pi * (-b*r + math.Sqrt(b*b*r*r+z2*c)) / z2
}

// Where the fundamental alone is enough, and that near cut-in it is not: there it has no current at all
// up to κ = 2√3/π = 1.103.
func TestFundamentalPhasorFormula(t *testing.T) {
	errorAt := func(kappa, q float64) float64 {
		s, l := onMap(kappa, q)
		return fundamentalPhasor(s.EMFPeak, l.Volts, 1, q)/solved(t, s, l).DCAmps - 1
	}
	for q := 1.0; q < 200; q *= 1.5 {
		for kappa := 2.0; kappa < 50; kappa *= 1.3 {
			e := errorAt(kappa, q)
			assert.Greater(t, e, 0.0, "it reads high, κ %g q %g", kappa, q)
			assert.Less(t, e, 0.075, "κ %g q %g", kappa, q)
		}
		assert.Greater(t, math.Abs(errorAt(1.25, q)), 0.08, "κ 1.25 q %g", q)
		assert.Equal(t, -1.0, errorAt(1.10, q))
		s, _ := onMap(2*math.Sqrt(3)/math.Pi*1.0001, q)
		assert.Positive(t, fundamentalPhasor(s.EMFPeak, 10, 1, q))
	}
}

func TestCutIn(t *testing.T) {
	l := Load{Volts: 12.6, Ohms: 0.3, DiodeVolts: 0.7, DiodeOhms: 0.02}
	assert.InEpsilon(t, 14/math.Sqrt(3), CutInEMFPeak(l, 3, false), 1e-15)
	assert.InEpsilon(t, 14.0, CutInEMFPeak(l, 3, true), 1e-15)
	assert.InEpsilon(t, 14.0, CutInEMFPeak(l, 1, true), 1e-15)
	assert.Zero(t, CutInEMFPeak(Load{Ohms: 5}, 3, false))
	assert.InEpsilon(t, 14.0, CutInEMFPeak(l, 2, false), 1e-15)
	assert.Zero(t, CutInEMFPeak(l, 4, false))
	assert.Zero(t, CutInEMFPeak(Load{Volts: math.NaN()}, 3, false))
	for _, s := range []Source{{Phases: 3}, {Phases: 3, Delta: true}, {Phases: 2}, {Phases: 1}} {
		s.Hertz, s.Ohms, s.Henries = 50, 1, 0.003
		s.EMFPeak = CutInEMFPeak(l, s.Phases, s.Delta)
		below := s
		below.EMFPeak *= 1 - 1e-9
		assert.Equal(t, Point{DCVolts: 12.6, Mode: Off, Kappa: solved(t, below, l).Kappa}, solved(t, below, l))
		s.EMFPeak *= 1 + 1e-9
		p := solved(t, s, l)
		assert.Equal(t, Pulses, p.Mode)
		assert.Positive(t, p.DCAmps)
		assert.Less(t, p.DCAmps, 1e-9)
	}
}

// Just above cut-in a pulse sees inductance alone. By hand: with δ = √(2(κ-1)) the EMF's excess
// is v(δ² - t²)/2 over two reactances, the current v(t+δ)²(2δ-t)/(12x), from t = -δ to 2δ, and
// its integral 9vδ⁴/(16x).
func TestPulsesJustAboveCutIn(t *testing.T) {
	for _, above := range []float64{1e-4, 1e-6, 1e-8} {
		s := Source{EMFPeak: 10 / math.Sqrt(3) * (1 + above), Hertz: 1 / (2 * math.Pi), Henries: 2, Phases: 3}
		d := math.Sqrt(2 * above)
		want := 9 * 10 * math.Pow(d, 4) / (16 * 2) / (math.Pi / 3)
		assert.InEpsilon(t, want, solved(t, s, Load{Volts: 10}).DCAmps, 3*above+1e-6)
	}
}

func TestErrorsNameTheField(t *testing.T) {
	good := Source{20, 50, 1, 0.003, 3, false}
	load := Load{Volts: 12, Ohms: 0.1, DiodeVolts: 0.7}
	for _, c := range []struct {
		change func(*Source, *Load)
		want   string
	}{
		{func(s *Source, l *Load) { s.EMFPeak = math.NaN() }, "Source.EMFPeak is NaN"},
		{func(s *Source, l *Load) { s.Hertz = math.Inf(1) }, "Source.Hertz is +Inf"},
		{func(s *Source, l *Load) { s.Ohms = -1 }, "Source.Ohms is -1 Ω: it cannot be negative"},
		{func(s *Source, l *Load) { s.Henries = 1e10 }, "Source.Henries is 1e+10 H"},
		{func(s *Source, l *Load) { s.Phases = 4 }, "Source.Phases is 4: it must be 1, 2 or 3"},
		{func(s *Source, l *Load) { l.Volts = -12 }, "Load.Volts is -12 V"},
		{func(s *Source, l *Load) { l.Ohms = math.NaN() }, "Load.Ohms is NaN"},
		{func(s *Source, l *Load) { l.DiodeVolts = math.Inf(-1) }, "Load.DiodeVolts is -Inf"},
		{func(s *Source, l *Load) { l.DiodeOhms = -1e-3 }, "Load.DiodeOhms is -0.001 Ω"},
		{func(s *Source, l *Load) { s.Ohms, s.Henries, l.Ohms = 0, 0, 0 }, "nothing limits the current"},
	} {
		s, l := good, load
		c.change(&s, &l)
		p, err := Solve(s, l)
		assert.ErrorContains(t, err, c.want)
		assert.Equal(t, Point{}, p)
	}
	// With no current to limit, nothing needs to limit it.
	p, err := Solve(Source{EMFPeak: 1, Phases: 3}, load)
	require.NoError(t, err)
	assert.Equal(t, Off, p.Mode)
}
