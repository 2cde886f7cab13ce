package charge

import (
	"math"
	"testing"
)

// Whatever the numbers, an answer with finite figures and balanced power, or an error.
func FuzzSolve(f *testing.F) {
	f.Add(10.0, 50.0, 1.0, 0.003, 3, false, 12.0, 0.1, 0.7, 0.01)
	f.Add(1e9, 1e9, 0.0, 1e-9, 3, true, 0.0, 0.0, 0.0, 0.0)
	f.Add(1e-300, 1e-300, 1e-300, 1e-300, 1, true, 1e-301, 0.0, 0.0, 0.0)
	f.Add(1e9, 0.0, 1e9, 1e9, 3, false, 1e-9, 1e-9, 0.0, 1e9)
	f.Add(math.Inf(1), math.NaN(), -1.0, 0.0, 2, false, 1.0, 0.0, 0.0, 0.0)
	f.Add(12.0, 1.0, 0.0, 0.0, 3, false, 1.0, 1.0, 0.0, 0.0)
	f.Add(math.Nextafter(1, 2), 1.0, 1.0, 1.0, 1, false, 1.0, 0.0, 0.0, 0.0)
	f.Add(100.0, 50.0, 1e-6, 1.0, 3, false, 129.26, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, emf, hertz, ohms, henries float64, phases int, delta bool, volts, loadOhms, diodeVolts, diodeOhms float64) {
		s := Source{emf, hertz, ohms, henries, phases, delta}
		for _, way := range [...]Rectifier{Bridge, HalfWave, Doubler} {
			checkAnswer(t, s, Load{volts, loadOhms, diodeVolts, diodeOhms, way})
		}
	})
}

// checkAnswer checks what is true of any answer.
func checkAnswer(t *testing.T, s Source, l Load) {
	t.Helper()
	p, err := Solve(s, l)
	if err != nil {
		if p != (Point{}) {
			t.Fatalf("an error, %v, and a point %+v", err, p)
		}
		return
	}
	if !p.finite() || p.Mode == "" || p.DCAmps < 0 || p.Watts < 0 {
		t.Fatalf("%+v %+v gave %+v", s, l, p)
	}
	out := p.Watts + p.CopperWatts + p.DiodeWatts
	rounding := 1e-14*3*s.EMFPeak*p.PhaseAmpsRMS + 1e-290
	if math.Abs(p.InputWatts-out) > 1e-6*p.InputWatts+rounding {
		t.Fatalf("power in %g out %g: %+v %+v gave %+v", p.InputWatts, out, s, l, p)
	}
	if cut := CutInEMFPeak(l, s.Phases, s.Delta); (s.EMFPeak > cut*(1+1e-12)) != (p.Mode != Off) && math.Abs(s.EMFPeak-cut) > 1e-12*cut {
		t.Fatalf("cut-in at %g, EMF %g, mode %s", cut, s.EMFPeak, p.Mode)
	}
}

// The same for a diode by its law.
func FuzzSolveDiode(f *testing.F) {
	f.Add(10.0, 12.0, 0.1, 1e-8, 1.8, 0.003, 27.0, 1.0, 0.7, 10.0, 0.9)
	f.Add(1e9, 0.0, 0.0, 1e-30, 0.1, 0.0, -100.0, 0.0, 0.0, 1e-9, 0.0)
	f.Add(math.NaN(), 1.0, 1.0, math.Inf(1), 1.0, 1.0, 1.0, 0.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, emf, volts, ohms, saturation, ideality, series, celsius, a1, v1, a2, v2 float64) {
		s := Source{emf, 50, 0.5, 0.002, 3, false}
		for _, d := range []Diode{Shockley{saturation, ideality, series, celsius}, DiodeTable{{a1, v1}, {a2, v2}}} {
			p, err := SolveDiode(s, Load{Volts: volts, Ohms: ohms}, d)
			if err == nil && (!p.finite() || p.Mode == "" || p.DCAmps < 0) {
				t.Fatalf("%+v %+v gave %+v", s, d, p)
			}
		}
	})
}
