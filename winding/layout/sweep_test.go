package layout

import (
	"math/cmplx"
	"testing"
)

// eachSpec calls f with every spec of Q to 120, 2p to 60, every span: all of the
// balanced range, or one in seven of it under -short.
func eachSpec(short bool, phases, layers int, f func(Spec)) {
	n := 0
	for slots := 2; slots <= 120; slots++ {
		for poles := 2; poles <= 60; poles += 2 {
			if !Balanced(slots, poles, phases) {
				continue
			}
			for span := 1; span < slots; span++ {
				if n++; short && n%7 != 0 {
					continue
				}
				f(Spec{Slots: slots, Poles: poles, Phases: phases, Span: span, Layers: layers})
			}
		}
	}
}

// exists says from the numbers alone whether a layout is to be had: sides not in
// phase, and for a single layer slots that pair off. It is written from the cycles
// of k -> k+span, which must be even to be shared out alternately.
func exists(s Spec) bool {
	if s.Poles/2*s.Span%s.Slots == 0 {
		return false
	}
	return s.Layers == 2 || s.Slots/gcd(s.Slots, s.Span)%2 == 0
}

// sweep checks every layout of a range and returns how many there were.
func sweep(t *testing.T, phases, layers int) (built int) {
	eachSpec(testing.Short(), phases, layers, func(s Spec) {
		l, err := New(s)
		if (err == nil) != exists(s) {
			t.Fatalf("%+v: err %v, exists %v", s, err, exists(s))
		}
		if err != nil {
			return
		}
		built++
		if k := l.Factor(1); !(k > 1e-6 && k <= 1) {
			t.Fatalf("%+v: factor %v", s, k)
		}
		checkSides(t, l)
		checkPhases(t, l)
	})
	return built
}

// checkSides: every slot holds as many sides as layers, one of each layer.
func checkSides(t *testing.T, l *Layout) {
	var starts, finishes [121]int
	for _, c := range l.coils {
		starts[c.Start]++
		finishes[c.Finish]++
	}
	for n := 1; n <= l.spec.Slots; n++ {
		if starts[n]+finishes[n] != l.spec.Layers || starts[n] > 1 || finishes[n] > 1 {
			t.Fatalf("%+v: slot %d has %d starts, %d finishes", l.spec, n, starts[n], finishes[n])
		}
	}
}

// checkPhases: equal and 120 degrees apart, with as many coils each, U first.
func checkPhases(t *testing.T, l *Layout) {
	u := l.PhasePhasor(0, 0, 1)
	for phase := 1; phase < l.spec.Phases; phase++ {
		want := u * unit(phase, 3)
		if cmplx.Abs(l.PhasePhasor(0, phase, 1)-want) > 1e-9*cmplx.Abs(u) {
			t.Fatalf("%+v: phase %d is %v, want %v", l.spec, phase, l.PhasePhasor(0, phase, 1), want)
		}
		if l.PhaseTurns(0, phase) != l.PhaseTurns(0, 0) {
			t.Fatalf("%+v: unequal turns", l.spec)
		}
	}
	if c := l.coils[0]; c.Start != 1 || c.Phase != 0 || c.Sense != 1 {
		t.Fatalf("%+v: slot 1 has %+v, want the start of U", l.spec, c)
	}
}

func TestEveryLayout(t *testing.T) {
	t.Parallel()
	for _, phases := range []int{1, 3} {
		for _, layers := range []int{1, 2} {
			if n := sweep(t, phases, layers); n < 1000 {
				t.Errorf("only %d layouts of %d phases, %d layers", n, phases, layers)
			}
		}
	}
}

// Every number of circuits offered gives equal phasors and turns in each circuit,
// and with equal coils the phase's phasor is a-th of what it was.
func TestEveryCircuitChoice(t *testing.T) {
	t.Parallel()
	n := 0
	for _, layers := range []int{1, 2} {
		eachSpec(true, 3, layers, func(s Spec) {
			if n++; n%5 != 0 {
				return
			}
			l, err := New(s)
			if err != nil {
				return
			}
			for _, a := range l.CircuitChoices() {
				split, err := l.WithCircuits(a)
				if err != nil {
					t.Fatalf("%+v a=%d: %v", s, a, err)
				}
				checkCircuits(t, l, split, a)
			}
		})
	}
}

func checkCircuits(t *testing.T, l, split *Layout, a int) {
	for phase := range 3 {
		want := l.PhasePhasor(0, phase, 1) / complex(float64(a), 0)
		for c := 1; c <= a; c++ {
			got := split.CircuitPhasor(0, phase, c, 1)
			if cmplx.Abs(got-want) > 1e-9*(1+cmplx.Abs(want)) {
				t.Fatalf("%+v a=%d phase %d circuit %d: %v, want %v", l.spec, a, phase, c, got, want)
			}
			if split.CircuitTurns(0, phase, c)*a != l.PhaseTurns(0, phase) {
				t.Fatalf("%+v a=%d: unequal turns", l.spec, a)
			}
		}
		if cmplx.Abs(split.PhasePhasor(0, phase, 1)-want) > 1e-9*(1+cmplx.Abs(want)) {
			t.Fatalf("%+v a=%d: phase is %v, want %v", l.spec, a, split.PhasePhasor(0, phase, 1), want)
		}
	}
}

// Single-layer cuts: no other place to cut the belts or shift of blocks gives more.
func TestSingleLayerTakesTheStrongest(t *testing.T) {
	eachSpec(true, 3, 1, func(s Spec) {
		if s.Slots > 60 || !exists(s) {
			return
		}
		best := s.strength(chooseStarts(s))
		for b := 1; b <= s.Span; b++ {
			if s.Span%b != 0 || s.Span/b%2 == 0 || s.Slots%(2*b) != 0 || !s.blockBalances(b) {
				continue
			}
			for o := range s.Slots {
				if v := s.strength(starts{block: b, origin: o}); v > best+1e-9 {
					t.Fatalf("%+v: block %d origin %d gives %v, chosen %v", s, b, o, v, best)
				}
			}
		}
	})
}
