package layout

import (
	"math"
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

// exists decides from the numbers alone whether a layout exists: sides not in phase, and for a single
// layer slots that pair off. It uses the cycles of k -> k+span, which must be even to be shared out
// alternately.
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

// Every number of circuits offered gives equal phasors and turns in each circuit, and with equal coils
// the phase's phasor is 1/a of the original.
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

// Single-layer cuts: no other place to cut the belts and no other blocks give more. The stars are
// constructed here independently of the program, except for its factor: of the coils that start in
// every second block of b slots, a phase has those whose phasors lie in a belt of 60 degrees, and the
// opposite ones reversed.
func TestSingleLayerTakesTheStrongest(t *testing.T) {
	n := 0
	eachSpec(true, 3, 1, func(s Spec) {
		if s.Slots > 60 || !exists(s) {
			return
		}
		l, err := New(s)
		if err != nil {
			t.Fatal(err)
		}
		have := l.Factor(1) / l.PitchFactor(1)
		best := 0.0
		for b := 1; b <= s.Span; b++ {
			if s.Span%b == 0 && s.Span/b%2 == 1 && s.Slots%(2*b) == 0 {
				best = max(best, strongestBelt(s, b))
			}
		}
		if math.Abs(have-best) > 1e-9 {
			t.Fatalf("%+v: the strongest belt has %v, chosen %v", s, best, have)
		}
		n++
	})
	if n < 100 {
		t.Fatalf("only %d layouts", n)
	}
}

// strongestBelt is the highest distribution factor with starts in every second block of b slots, 0 if
// their star does not map onto itself when turned by 120 degrees. Angles are whole multiples of a 6Q-th
// of a turn.
func strongestBelt(s Spec, b int) float64 {
	turn := 6 * s.Slots
	spokes := make([]int, turn)
	coils := 0
	for k := range s.Slots {
		if k/b%2 == 0 {
			spokes[6*(s.Poles/2*k%s.Slots)]++
			coils++
		}
	}
	for a, n := range spokes {
		if n != spokes[(a+turn/3)%turn] {
			return 0
		}
	}
	best := 0.0
	for cut := range turn {
		var sum complex128
		for a, n := range spokes {
			if n == 0 {
				continue
			}
			switch from := (a - cut + turn) % turn; {
			case from < turn/6:
				sum += complex(float64(n), 0) * cmplx.Rect(1, 2*math.Pi*float64(a)/float64(turn))
			case from >= turn/2 && from < turn*2/3:
				sum -= complex(float64(n), 0) * cmplx.Rect(1, 2*math.Pi*float64(a)/float64(turn))
			}
		}
		best = max(best, 3*cmplx.Abs(sum)/float64(coils))
	}
	return best
}
