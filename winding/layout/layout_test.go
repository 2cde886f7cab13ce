package layout

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// must builds a layout that is known to exist.
func must(t testing.TB, s Spec) *Layout {
	t.Helper()
	l, err := New(s)
	require.NoError(t, err)
	return l
}

// Whole-number windings against the closed forms kp = sin(νyπ/(2·Q/2p)) and
// kd = sin(qνα/2)/(q·sin(να/2)): Pyrhönen et al., Design of Rotating Electrical
// Machines, ch. 2, from memory.
func TestWholeNumberAgainstClosedForm(t *testing.T) {
	for q := 1; q <= 8; q++ {
		for pairs := 1; pairs <= 12; pairs++ {
			slots := 6 * q * pairs
			for y := 1; y <= 3*q; y++ {
				l := must(t, Spec{Slots: slots, Poles: 2 * pairs, Phases: 3, Span: y, Layers: 2})
				for _, h := range []int{1, 3, 5, 7, 11, 13, 17} {
					alpha := 2 * math.Pi * float64(pairs) / float64(slots)
					kp := math.Sin(float64(h*y) * alpha / 2)
					kd := math.Sin(float64(q*h)*alpha/2) / (float64(q) * math.Sin(float64(h)*alpha/2))
					name := fmt.Sprintf("q=%d p=%d y=%d h=%d", q, pairs, y, h)
					assert.InDelta(t, math.Abs(kp*kd), l.Factor(h), 1e-12, name)
					assert.InDelta(t, math.Abs(kp), l.PitchFactor(h), 1e-12, name)
					assert.InDelta(t, math.Abs(kd), l.BeltFactor(h), 1e-12, name)
				}
			}
		}
	}
}

// One phase over all slots spreads 180 degrees, over two thirds 120: the closed
// form for kd with q and 2q/3 slots (same source).
func TestOnePhaseAgainstClosedForm(t *testing.T) {
	spread := func(n int, alpha float64) float64 {
		return math.Sin(float64(n)*alpha/2) / (float64(n) * math.Sin(alpha/2))
	}
	for _, layers := range []int{1, 2} {
		full := must(t, Spec{Slots: 24, Poles: 4, Phases: 1, Span: 6, Layers: layers})
		assert.InDelta(t, spread(6, math.Pi/6), full.Factor(1), 1e-12)
		part := must(t, Spec{Slots: 24, Poles: 4, Phases: 1, Span: 6, Layers: layers, TwoThirds: true})
		assert.InDelta(t, spread(4, math.Pi/6), part.Factor(1), 1e-12)
		assert.InDelta(t, 0, part.Factor(3), 1e-12)
		assert.Len(t, full.Coils(), 12*layers)
		assert.Len(t, part.Coils(), 8*layers)
	}
	teeth := must(t, Spec{Slots: 12, Poles: 12, Phases: 1, Span: 1, Layers: 2})
	assert.InDelta(t, 1, teeth.Factor(1), 1e-12)
}

func TestUsualLayout(t *testing.T) {
	l := must(t, Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 1})
	assert.Equal(t, []Coil{
		{Number: 1, Start: 1, Finish: 4, Turns: 1, Sense: 1, Phase: 0, Group: 1, Circuit: 1},
		{Number: 2, Start: 3, Finish: 6, Turns: 1, Sense: 1, Phase: 1, Group: 2, Circuit: 1},
		{Number: 3, Start: 5, Finish: 8, Turns: 1, Sense: 1, Phase: 2, Group: 3, Circuit: 1},
	}, l.Coils()[:3])
	assert.Equal(t, 6, l.CoilsPerPhase())
	assert.InDelta(t, 60, l.SlotAngleDeg(), 1e-12)
	num, den := l.SlotsPerPolePhase()
	assert.Equal(t, [2]int{1, 1}, [2]int{num, den})
	num, den = must(t, Spec{Slots: 12, Poles: 10, Phases: 3, Span: 1, Layers: 2}).SlotsPerPolePhase()
	assert.Equal(t, [2]int{2, 5}, [2]int{num, den})
}

// Counted by hand: with nine teeth for six poles the pattern repeats every third tooth, with twelve for
// ten in the opposite tooth with reversed current; nine for eight never repeat; three a pole repeat in
// every pole of two layers, and in every pair of one layer, whose coils fill two poles.
func TestSymmetryByHand(t *testing.T) {
	for _, c := range []struct{ slots, poles, span, layers, times int }{{9, 6, 1, 2, 3}, {12, 10, 1, 2, 2}, {9, 8, 1, 2, 1}, {36, 12, 3, 2, 12}, {36, 12, 3, 1, 6}} {
		assert.Equal(t, c.times, must(t, Spec{Slots: c.slots, Poles: c.poles, Phases: 3, Span: c.span, Layers: c.layers}).Symmetry(), "%+v", c)
	}
}

func TestTurns(t *testing.T) {
	l := must(t, Spec{Slots: 36, Poles: 4, Phases: 3, Span: 8, Layers: 2})
	many, err := l.WithTurns(11)
	require.NoError(t, err)
	assert.Equal(t, l.Factor(1), many.Factor(1))
	assert.InDelta(t, 11*cmplx.Abs(l.PhasePhasor(0, 1, 1)), cmplx.Abs(many.PhasePhasor(0, 1, 1)), 1e-9)
	assert.Equal(t, 11*12, many.CircuitTurns(0, 2, 1))
	assert.Equal(t, 1, l.Coils()[0].Turns, "the first layout is untouched")
	_, err = l.WithTurns(MaxTurns)
	assert.NoError(t, err)
	for _, bad := range []int{0, -3, MaxTurns + 1} {
		_, err = l.WithTurns(bad)
		assert.ErrorIs(t, err, ErrSpec)
	}
	uneven, err := l.WithGroupTurns([]int{9, 11, 13})
	require.NoError(t, err)
	assert.Equal(t, 33*4, uneven.PhaseTurns(0, 0))
	assert.True(t, uneven.Balance().Equal, "every group alike keeps the balance")
	assert.Equal(t, []int{1, 2, 4}, uneven.CircuitChoices())
	_, err = l.WithGroupTurns([]int{9, 11})
	assert.ErrorContains(t, err, "more coils")
	_, err = l.WithGroupTurns([]int{9, 11, 12, 13})
	assert.ErrorContains(t, err, "has 3 coils")
}

// The errors quote what was read and suggest a way out, which must itself work.
func TestRefusals(t *testing.T) {
	base := Spec{Slots: 36, Poles: 12, Phases: 3, Span: 3, Layers: 2}
	for name, c := range map[string]struct {
		change func(*Spec)
		says   string
	}{
		"unbalanced":        {func(s *Spec) { s.Slots = 32 }, "no balanced three-phase layout"},
		"zero slots":        {func(s *Spec) { s.Slots = 0 }, "slots: read 0"},
		"odd poles":         {func(s *Spec) { s.Poles = 7 }, "even number"},
		"four phases":       {func(s *Spec) { s.Phases = 4 }, "phases: read 4"},
		"three layers":      {func(s *Spec) { s.Layers = 3 }, "layers: read 3"},
		"span too long":     {func(s *Spec) { s.Span = 36 }, "span: read 36"},
		"span of two poles": {func(s *Spec) { s.Span = 6 }, "winding factor is 0"},
		"single layer":      {func(s *Spec) { s.Layers, s.Span = 1, 4 }, "single layer"},
		"odd single layer":  {func(s *Spec) { s.Slots, s.Poles, s.Layers, s.Span = 9, 8, 1, 1 }, "single layer"},
		"wave":              {func(s *Spec) { s.Layers, s.Span, s.Kind = 1, 5, Wave }, "expected span 3"},
		"wave of two":       {func(s *Spec) { s.Kind = Wave }, "single-layer wave"},
		"concentric":        {func(s *Spec) { s.Poles, s.Span, s.Kind = 4, 2, Concentric }, "innermost"},
		"two sets":          {func(s *Spec) { s.Sets = 2 }, "30 degrees"},
		"two sets, 1 phase": {func(s *Spec) { s.Sets, s.Phases = 2, 1 }, "expected 3 phases"},
	} {
		t.Run(name, func(t *testing.T) {
			spec := base
			c.change(&spec)
			_, err := New(spec)
			require.ErrorContains(t, err, c.says)
			var se *SpecError
			require.ErrorAs(t, err, &se)
			if spec.Slots > 0 {
				assert.ErrorContains(t, err, "nearest that work: ")
			}
			for _, near := range se.Nearest() {
				_, err := New(near)
				assert.NoError(t, err, "%+v", near)
			}
		})
	}
}

// Dual sets: both balanced, set 2 shifted by exactly 30 degrees, 12 phases of equal size. 12 and 24
// slots with 10 and 22 poles are the usual tooth-coil cases.
func TestDualSets(t *testing.T) {
	count := 0
	for slots := 12; slots <= 96; slots += 6 {
		for poles := 2; poles <= 40; poles += 2 {
			for span := 1; span <= slots/2; span++ {
				for _, layers := range []int{1, 2} {
					l, err := New(Spec{Slots: slots, Poles: poles, Phases: 3, Span: span, Layers: layers, Sets: 2})
					if err != nil {
						continue
					}
					count++
					b := l.Balance()
					assert.True(t, b.Equal, "%+v %+v", l.Spec(), b)
					require.Len(t, b.Phases, 6)
					for i, want := range []float64{0, 120, 240, 30, 150, 270} {
						assert.InDelta(t, want, b.Phases[i].AngleDeg, 1e-6)
					}
					whole, err := New(Spec{Slots: slots, Poles: poles, Phases: 3, Span: span, Layers: layers})
					require.NoError(t, err)
					assert.InDelta(t, whole.Factor(1)/math.Cos(math.Pi/12), l.Factor(1), 1e-9, "%+v", l.Spec())
				}
			}
		}
	}
	assert.Greater(t, count, 500)
	l := must(t, Spec{Slots: 24, Poles: 22, Phases: 3, Span: 1, Layers: 2, Sets: 2})
	assert.Equal(t, "1U", l.PhaseName(0, 0))
	assert.Equal(t, "2W2", l.Wiring(Star).Leads[11].Name)
	assert.Len(t, l.Wiring(Star).Nodes, 2, "two star points, kept apart")
}
