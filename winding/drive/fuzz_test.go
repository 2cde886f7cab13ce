package drive

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func FuzzParseShape(f *testing.F) {
	for _, s := range []string{"heier", " Slootweg", "", "heier slootweg", "HEIER\n"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := ParseShape(text)
		if err == nil {
			again, err := ParseShape(s.String())
			assert.NoError(t, err)
			assert.Equal(t, s, again)
		}
	})
}

// Whatever is typed: an error, or numbers.
func FuzzCurve(f *testing.F) {
	f.Add(40.0, 80.0, 70.0, 120.0, 90.0, 100.0, 33.0)
	f.Add(0.0, 0.0, 1.0, 1.0, 1e-300, 2.0, 0.5)
	f.Add(0.0, 5.0, 1.0, math.NaN(), 3.0, math.Inf(1), -1.0)
	f.Fuzz(func(t *testing.T, a, pa, b, pb, c, pc, at float64) {
		curve, err := NewCurve([]Point{{a, pa}, {b, pb}, {c, pc}})
		if err != nil || !(math.Abs(at) < 1e6) {
			return
		}
		w := curve.Watts(at)
		assert.True(t, w >= 0 && w <= max(pa, pb, pc)*(1+1e-9), "%g W", w)
		assert.True(t, finite(curve.Top()))
		if min(a, b, c) > 1e-3 {
			assert.True(t, finite(curve.Torque(at)), "%g", curve.Torque(at))
		}
	})
}

func FuzzTransmission(f *testing.F) {
	f.Add(1, 180.0, 60.0, 0.02, 0.95, 0.0)
	f.Add(3, 44.0, 11.0, 0.0, 0.0, 0.0)
	f.Add(0, 0.0, 0.0, 0.0, 1.0, -2.0)
	f.Fuzz(func(t *testing.T, kind int, a, b, slip, eff, ratio float64) {
		tr := Transmission{Kind: Kind(kind), DriverMM: a, DrivenMM: b, DriverTeeth: a, DrivenTeeth: b, Slip: slip, Efficiency: eff, Ratio: ratio}
		turns, err := tr.Turns()
		if err != nil {
			assert.ErrorIs(t, err, ErrTransmission)
			return
		}
		assert.True(t, turns > 0 && finite(turns))
		up, err := tr.Up(100)
		require.NoError(t, err)
		down, err := tr.Down(up)
		require.NoError(t, err)
		assert.InEpsilon(t, 100, down, 1e-12)
	})
}

// A rotor against any load of the usual shape: every point balances and is a number.
func FuzzClimb(f *testing.F) {
	f.Add(2.0, 0.35, 6.0, 1.0, 150.0, 5.0, 100.0, 0.0)
	f.Add(0.6, 0.1, 1.0, 4.0, 900.0, 0.1, 10.0, 0.02)
	f.Add(5.0, 0.59, 9.0, 8.0, 10.0, 900.0, 5.0, 1.0)
	f.Add(192.0, 0.59, 1.5, 1.0, 707.0, 5400.0, 1.25, 1.0) // found by the fuzzer
	f.Fuzz(func(t *testing.T, d, cp, lambda, turns, cutIn, top, width, start float64) {
		s := WindShaft{Rotor{d, Heier, cp, lambda}, turns, 0.95, 1.2, start}
		if s.Check() != nil || !(cutIn >= 0 && cutIn < 1e5) || !(top >= 0 && top < 1e5) || !(width > 1 && width < 1e5) {
			return
		}
		load := stiff(cutIn, top, width)
		points, err := Climb(s, load, winds(12, 1))
		require.NoError(t, err)
		for _, p := range points {
			require.True(t, finite(p.RPM, p.Lambda, p.Cp, p.RotorWatts, p.TorqueNm, p.ShaftWatts))
			if p.RPM > 0 {
				given, taken := s.Torque(p.WindMPS)(p.RPM), load.Taken(p.RPM)
				// A great rotor held by next to nothing: arithmetic ends at 1e-15 of its torques,
				// which near the free speed go with the fall of Cp.
				noise := 1e-12 * s.Torque(p.WindMPS)(s.Turns*s.Rotor.RPM(p.WindMPS, s.Rotor.PeakLambda))
				require.InDelta(t, given, taken, 1e-6*max(given, taken)+noise)
			}
		}
		_, err = Judge(s, load, points, Rayleigh(5))
		require.NoError(t, err)
	})
}

func BenchmarkClimb(b *testing.B) {
	s, load := smallRotor(), stiff(180, 6, 200)
	calls := 0
	inner := load.Taken
	load.Taken = func(n float64) float64 { calls++; return inner(n) }
	for b.Loop() {
		if _, err := Climb(s, load, winds(14, 0.5)); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(calls)/float64(b.N), "calls/op")
}

func BenchmarkBalance(b *testing.B) {
	s, load := smallRotor(), stiff(180, 6, 200)
	samples := Sample(load.Taken, s.FreeRPM(8), 96, load.CutInRPM)
	given := s.Torque(8)
	calls := 0
	taken := func(n float64) float64 { calls++; return load.Taken(n) }
	for b.Loop() {
		samples.Balance(given, taken)
	}
	b.ReportMetric(float64(calls)/float64(b.N), "calls/op")
}
