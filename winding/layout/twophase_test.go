package layout

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Two phases of whole q against the closed forms kd = sin(q·α/2)/(q·sin(α/2)) with α = 90°/q
// and kp = sin(y·α/2) (Pyrhönen et al., Design of Rotating Electrical Machines, ch. 2, from
// memory); many slots spread over 90 degrees tend to 2√2/π = 0.9003.
func TestTwoPhasesAgainstClosedForm(t *testing.T) {
	for q := 1; q <= 6; q++ {
		for pairs := 1; pairs <= 5; pairs++ {
			for y := 1; y <= 2*q; y++ {
				l := must(t, Spec{Slots: 4 * q * pairs, Poles: 2 * pairs, Phases: 2, Span: y, Layers: 2})
				alpha := math.Pi / 2 / float64(q)
				kd := math.Sin(float64(q)*alpha/2) / (float64(q) * math.Sin(alpha/2))
				kp := math.Sin(float64(y) * alpha / 2)
				assert.InDelta(t, kd*kp, l.Factor(1), 1e-12, "q %d, p %d, y %d", q, pairs, y)
				assert.True(t, l.Balance().Equal)
			}
		}
	}
	assert.InDelta(t, 0.9003, must(t, Spec{Slots: 400, Poles: 2, Phases: 2, Span: 200, Layers: 2}).Factor(1), 1e-4)
}

// Sixteen slots, four poles, one side to a slot, by hand: q = 2, so U goes in at slots 1 and 2
// and comes back in 5 and 6, V at 3 and 4 and back in 7 and 8, and the same again half a turn
// on; kd = sin 45°/(2·sin 22.5°) = 0.9239.
func TestTwoPhasesInOneLayerByHand(t *testing.T) {
	l := must(t, Spec{Slots: 16, Poles: 4, Phases: 2, Span: 4, Layers: 1})
	at := func(phase int) (list [][2]int) {
		for _, c := range l.Coils() {
			if c.Phase == phase {
				list = append(list, [2]int{c.Start, c.Finish})
			}
		}
		return list
	}
	assert.Equal(t, [][2]int{{1, 5}, {2, 6}, {9, 13}, {10, 14}}, at(0))
	assert.Equal(t, [][2]int{{3, 7}, {4, 8}, {11, 15}, {12, 16}}, at(1))
	assert.InDelta(t, 0.92388, l.Factor(1), 1e-5)
	b := l.Balance()
	require.True(t, b.Equal)
	assert.InDelta(t, 90, b.Phases[1].AngleDeg, 1e-9, "V lags U by a quarter")
	w := l.Wiring(Star)
	assert.Empty(t, w.Nodes, "no star point")
	require.Len(t, w.Leads, 4)
	for i, name := range []string{"U1", "U2", "V1", "V2"} { // letters and numbers of IEC 60034-8
		assert.Equal(t, name, w.Leads[i].Name)
		assert.True(t, w.Leads[i].Out, "both ends of both phases come out")
	}
}

// Every two-phase layout is equal in both phases and a quarter period apart, one side or two to every
// slot; a layout refused as impossible in two layers has a star that does not map onto itself when
// turned by 90 degrees.
func TestTwoPhaseSweep(t *testing.T) {
	made, refused := 0, 0
	for q := 4; q <= 48; q++ {
		for poles := 2; poles <= 16; poles += 2 {
			for _, layers := range []int{1, 2} {
				for _, span := range []int{1, 2, 3, 4, max(1, q/poles)} {
					l, err := New(Spec{Slots: q, Poles: poles, Phases: 2, Span: span, Layers: layers})
					if err != nil {
						refused++
						continue
					}
					made++
					require.True(t, l.Balance().Equal, "%d slots, %d poles, span %d, %d layers", q, poles, span, layers)
					sides := map[int]int{}
					for _, c := range l.Coils() {
						sides[c.Start]++
						sides[c.Finish]++
					}
					for n := 1; n <= q; n++ {
						require.Equal(t, layers, sides[n])
					}
				}
			}
		}
	}
	assert.Greater(t, made, 300)
	assert.Greater(t, refused, 300)
	_, err := New(Spec{Slots: 18, Poles: 4, Phases: 2, Span: 4, Layers: 2})
	assert.ErrorContains(t, err, "no balanced two-phase layout")
	assert.ErrorContains(t, err, "nearest that work")
	_, err = New(Spec{Slots: 16, Poles: 4, Phases: 2, Sets: 2, Span: 4, Layers: 2})
	assert.ErrorContains(t, err, "sets: read 2 sets of 2 phase")
}
