package layout

import (
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/dsp/fourier"
)

// waveOf is the peak of the part of a list with h periods round it, by gonum's Fourier
// transform.
func waveOf(values []float64, h int) float64 {
	coefficients := fourier.NewFFT(len(values)).Coefficients(nil, values)
	k := 2.0
	if 2*h == len(values) {
		k = 1
	}
	return k * cmplx.Abs(coefficients[h]) / float64(len(values))
}

// One ampere in phase U makes ampere-conductors whose wave of ν·p periods is 2·kw(ν)·N/Q·2, by the
// definition of the factor as a sum of slot phasors: the transform of the slots, computed without
// factors, must agree.
func TestSlotWavesAgreeWithTheFactors(t *testing.T) {
	n := 0
	for _, layers := range []int{1, 2} {
		eachSpec(true, 3, layers, func(s Spec) {
			if s.Slots > 72 {
				return
			}
			l, err := New(s)
			if err != nil {
				return
			}
			slots := l.SlotAmpTurns([]float64{1})
			for _, harmonic := range []int{1, 3, 5, 7} {
				h := harmonic * s.Poles / 2
				if h <= 0 || 2*h > s.Slots {
					continue
				}
				k := 4.0
				if 2*h == s.Slots {
					k = 2
				}
				want := k * l.Factor(harmonic) * float64(l.PhaseTurns(0, 0)) / float64(s.Slots)
				require.InDelta(t, want, waveOf(slots, h), 1e-9, "%+v harmonic %d", s, harmonic)
				n++
			}
		})
	}
	assert.Greater(t, n, 1000)
}

// Balanced three-phase currents make a wave of the teeth's magnetomotive force whose
// fundamental, once the staircase is taken as one (a factor of sin(x)/x, x = π·p/Q), is
// (3/2)·(4/π)·(kw·N/2p)·Î (Pyrhönen et al., Design of Rotating Electrical Machines, ch. 2,
// from memory).
func TestToothMMFOfBalancedCurrents(t *testing.T) {
	for _, s := range []Spec{{Slots: 36, Poles: 4, Phases: 3, Span: 9, Layers: 2}, {Slots: 36, Poles: 4, Phases: 3, Span: 7, Layers: 2},
		{Slots: 48, Poles: 4, Phases: 3, Span: 10, Layers: 2}, {Slots: 24, Poles: 2, Phases: 3, Span: 12, Layers: 1}, {Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1}} {
		l, err := New(s)
		require.NoError(t, err)
		l, err = l.WithTurns(7)
		require.NoError(t, err)
		for _, angle := range []float64{0, 0.3, 1.1} {
			amps := []float64{math.Cos(angle), math.Cos(angle - 2*math.Pi/3), math.Cos(angle + 2*math.Pi/3)}
			teeth := l.ToothMMF(amps)
			p := s.Poles / 2
			x := math.Pi * float64(p) / float64(s.Slots)
			want := 1.5 * 4 / math.Pi * l.Factor(1) * float64(l.PhaseTurns(0, 0)) / float64(s.Poles)
			assert.InEpsilon(t, want, waveOf(teeth, p)*math.Sin(x)/x, 1e-9, "%+v at %g", s, angle)
			sum := 0.0
			for _, v := range teeth {
				sum += v
			}
			assert.InDelta(t, 0, sum, 1e-9, "no flux leaves the machine")
		}
	}
}

// BenchmarkNew lays out the whole range of Q to 120, 2p to 60, every span, three phases, two layers: ns
// and allocations per layout.
func BenchmarkNew(b *testing.B) {
	var specs []Spec
	eachSpec(false, 3, 2, func(s Spec) {
		if exists(s) {
			specs = append(specs, s)
		}
	})
	b.ReportAllocs()
	b.ResetTimer()
	for i := range b.N {
		if _, err := New(specs[i%len(specs)]); err != nil {
			b.Fatal(err)
		}
	}
}
