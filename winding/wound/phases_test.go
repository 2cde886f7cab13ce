package wound

import (
	"math"
	"math/cmplx"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The phases are recovered from the pairs of any star or delta of three resistances: the resistance
// between two leads, computed here by conductances.
func TestPhasesByPairsAreThoseOfTheNetwork(t *testing.T) {
	for _, phases := range [][3]float64{{1, 1, 1}, {1.3, 1, 1}, {1, 0.7, 1}, {1, 1.1, 2}, {0.9, 1, 1.2}} {
		u, v, w := phases[0], phases[1], phases[2]
		across := func(a, b, c float64) float64 { return 1 / (1/a + 1/(b+c)) }
		for law, each := range map[pairLaw][3]float64{ohmsStar: {u + v, v + w, w + u}, ohmsDelta: {across(u, v, w), across(v, w, u), across(w, u, v)}} {
			p := Proof{Read: quantity.Of((each[0] + each[1] + each[2]) / 3)}.ofPairs(each[:], 1, BalanceLimit, 0, law)
			got, _, ok := p.phases()
			require.True(t, ok)
			for i := range 3 {
				assert.InDelta(t, phases[i]/phases[0], got[i]/got[0], 1e-9, "%v %v", law, phases)
			}
		}
	}
}

// Volts of a delta with one differing phase: the circulating current is the sum of the three EMFs over
// three impedances, and its drop is taken off each; the first-order law finds the phase within a tenth
// of its deviation.
func TestVoltsOfADeltaFindThePhase(t *testing.T) {
	for _, k := range []float64{0.9, 0.95, 1.05} {
		e := [3]complex128{1, complex(k, 0) * cmplx.Rect(1, -2*math.Pi/3), cmplx.Rect(1, 2*math.Pi/3)}
		round := (e[0] + e[1] + e[2]) / 3
		each := make([]float64, 3)
		for i := range each {
			each[i] = cmplx.Abs(e[i] - round)
		}
		p := Proof{Read: quantity.Of((each[0] + each[1] + each[2]) / 3)}.ofPairs(each, 1, VoltsBalance, 0, voltsDelta)
		got, _, ok := p.phases()
		require.True(t, ok)
		assert.InDelta(t, k-1, got[1]-1, 0.1*math.Abs(k-1), k)
	}
}

// The effect of a coil's phasor on the pairs follows from the layout: coil by coil reversed in the
// list, and the phase's phasor summed anew, for layouts of one, two and three slots a pole and phase
// and for coils round teeth.
func TestTurnedCoilsAreThoseOfTheLayout(t *testing.T) {
	for _, spec := range []layout.Spec{{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1}, {Slots: 24, Poles: 4, Phases: 3, Span: 5, Layers: 2}, {Slots: 36, Poles: 4, Phases: 3, Span: 8, Layers: 2}, {Slots: 9, Poles: 8, Phases: 3, Span: 1, Layers: 2}} {
		plan, err := layout.New(spec)
		require.NoError(t, err)
		f := faultsOf{Winding: Winding{Phases: 3, Sets: 1, Layout: plan, Circuits: 1}}
		sum := func(phase, turned int) (e complex128) {
			for _, c := range plan.Coils() {
				if c.Phase != phase {
					continue
				}
				way := complex(float64(c.Turns*c.Sense), 0)
				if c.Number == turned {
					way = -way
				}
				at := func(slot int) complex128 {
					return cmplx.Rect(1, math.Pi*float64(spec.Poles)*float64(slot)/float64(spec.Slots))
				}
				e += way * (at(c.Start) - at(c.Finish))
			}
			return e
		}
		for _, class := range f.classes(1) {
			for _, c := range plan.Coils() {
				if c.Phase != 1 || c.Start != class.starts[0] {
					continue
				}
				u, v, was, w := sum(0, 0), sum(1, c.Number), sum(1, 0), sum(2, 0)
				each := f.eachVolts(1, 2*class.part)
				assert.InDelta(t, cmplx.Abs(u-v)/cmplx.Abs(u-was), each[0], 1e-9, "%+v", spec)
				assert.InDelta(t, cmplx.Abs(v-w)/cmplx.Abs(was-w), each[1], 1e-9)
				assert.InDelta(t, 1, each[2], 1e-9)
			}
		}
	}
}
