package layout

import "fmt"

// Kind is how the coils of a group are shaped and joined.
type Kind int

const (
	// Lap is equal coils, each a slot further on than the last.
	Lap Kind = iota
	// Concentric is the same slot sides as Lap with the coils of one group nested
	// one inside the other: unequal spans, the outermost first.
	Concentric
	// Wave is a full-pitch single layer of whole-number slots per pole per phase whose wire continues
	// forward round the machine instead of doubling back.
	Wave
)

// String is the word for the kind, as a job file and a card write it.
func (k Kind) String() string {
	switch k {
	case Lap:
		return "lap"
	case Concentric:
		return "concentric"
	case Wave:
		return "wave"
	default:
		return fmt.Sprintf("kind %d", int(k))
	}
}

// Bounds of what [New] and [FromCoils] accept: far beyond any small machine, and small enough that a
// mistyped digit cannot exhaust the memory.
const (
	MaxSlots = 1200
	MaxPoles = 1200
	// MaxTurns is the most turns one coil may have.
	MaxTurns = 1_000_000
)

// Spec says which layout is wanted, or what was found.
type Spec struct {
	Slots  int // Q, 2 to MaxSlots
	Poles  int // 2p, even, 2 to MaxPoles
	Phases int // 1, 2 (90 degrees apart) or 3
	Span   int // of a coil in slots, 1 to Slots-1; a book's "1 to 8" is 7
	Layers int // coil sides in a slot, 1 or 2
	// Sets is 0 or 1 for one winding, 2 for two three-phase windings 30
	// electrical degrees apart, each with its own leads.
	Sets int
	Kind Kind
	// TwoThirds leaves a third of the slots empty (single layer) or of the coils
	// out (double layer); Phases 1 only. A full single-phase winding spreads over
	// 180 degrees, and its outer third adds 50 % of wire for 15 % of voltage:
	// sin(90°)/(π/2) against (2/3)·sin(60°)/(π/3), an even spread.
	TwoThirds bool
}

// pairs is p, the pole pairs.
func (s Spec) pairs() int { return s.Poles / 2 }

// zones is the number of phase belts in one pole pair of the star of slots.
func (s Spec) zones() int {
	switch {
	case s.Sets == 2:
		return 12
	case s.Phases == 2:
		return 4
	case s.Phases == 3 || s.TwoThirds:
		return 6
	default:
		return 2
	}
}

// thirds says that the star has to be invariant under rotation by 120 degrees.
func (s Spec) thirds() bool { return s.Phases == 3 || s.TwoThirds }

// perPole is slots per pole when whole, else 0. It is the full pitch.
func (s Spec) perPole() int {
	if s.Slots%s.Poles != 0 {
		return 0
	}
	return s.Slots / s.Poles
}

// belt is the slots per pole of one phase belt when whole, else 0.
func (s Spec) belt() int {
	m := s.Phases
	if s.Slots%(m*s.Poles) != 0 {
		return 0
	}
	return s.Slots / (m * s.Poles)
}

// checkRange tests each number by itself.
func (s Spec) checkRange() error {
	switch {
	case s.Slots < 2 || s.Slots > MaxSlots:
		return s.errorf("slots: read %d, expected 2 to %d; count the slots of the core", s.Slots, MaxSlots)
	case s.Poles < 2 || s.Poles > MaxPoles || s.Poles%2 != 0:
		return s.errorf("poles: read %d, expected an even number from 2 to %d; count the poles of the rotor, not the pairs", s.Poles, MaxPoles)
	case s.Phases < 1 || s.Phases > 3:
		return s.errorf("phases: read %d, expected 1, 2 or 3; two three-phase windings 30 degrees apart are 3 phases in 2 sets", s.Phases)
	case s.Layers != 1 && s.Layers != 2:
		return s.errorf("layers: read %d, expected 1 or 2 coil sides in a slot", s.Layers)
	case s.Sets < 0 || s.Sets > 2:
		return s.errorf("sets: read %d, expected 1 or 2", s.Sets)
	case s.Sets == 2 && s.Phases != 3:
		return s.errorf("sets: read 2 sets of %d phase, expected 3 phases for two sets", s.Phases)
	case s.Kind < Lap || s.Kind > Wave:
		return s.errorf("kind: read %d, expected lap, concentric or wave", int(s.Kind))
	case s.TwoThirds && s.Phases != 1:
		return s.errorf("two thirds wound: read %d phases, expected 1; with 3 phases every slot is wound", s.Phases)
	}
	return nil
}

// check tests everything that makes a layout possible, without building it.
func (s Spec) check() error {
	if err := s.checkRange(); err != nil {
		return err
	}
	q, p := s.Slots, s.pairs()
	if s.Span < 1 || s.Span >= q {
		return s.errorf("span: read %d slots, expected 1 to %d; a book's \"1 to 8\" is a span of 7", s.Span, q-1)
	}
	if s.thirds() && !Balanced(q, s.Poles, 3) {
		return s.errorf("%d slots with %d poles have no balanced three-phase layout: over the poles the slots stand at %d different places, which three phases cannot share equally; count slots and poles again",
			q, s.Poles, q/gcd(q, p))
	}
	if s.Phases == 2 {
		if _, ok := twoStarts(s); !ok && s.canPair() {
			layers := "one layer"
			if s.Layers > 1 {
				layers = "two layers"
			}
			return s.errorf("%d slots with %d poles in %s have no balanced two-phase layout: the star of slots is not the same turned by 90 degrees (over the poles the slots stand at %d different places; a double layer needs a number that divides by 4)",
				q, s.Poles, layers, q/gcd(q, p))
		}
	}
	if (p*s.Span)%q == 0 {
		return s.errorf("span %d: both sides of a coil lie under the same place of two poles (%d × 360 electrical degrees apart), so their voltages cancel and the winding factor is 0",
			s.Span, p*s.Span/q)
	}
	if !s.canPair() {
		return s.errorf("single layer with span %d in %d slots: the slots cannot be paired off start to finish so that each holds one coil side", s.Span, q)
	}
	if s.Kind == Wave {
		if err := s.checkWave(); err != nil {
			return err
		}
	}
	if s.Sets == 2 && !s.splitsInTwo() {
		return s.errorf("%d slots with %d poles do not split into two equal three-phase sets exactly 30 degrees apart: over the poles the slots stand at %d different places, and a double layer needs a number that divides by 12",
			q, s.Poles, q/gcd(q, p))
	}
	return nil
}

// canPair reports whether the slots pair off start to finish, one side to each, as a single layer
// needs.
func (s Spec) canPair() bool { return s.Layers == 2 || lowBit(s.Slots) > lowBit(s.Span) }

// checkWave tests what a wave winding needs in addition.
func (s Spec) checkWave() error {
	switch {
	case s.Layers != 1:
		return s.errorf("wave with %d layers: only single-layer wave windings are laid out here", s.Layers)
	case s.belt() == 0:
		return s.errorf("wave with %d slots and %d poles: slots per pole per phase is not whole, so the wire cannot run on forward at an even step; use lap", s.Slots, s.Poles)
	case s.Span != s.perPole():
		return s.errorf("wave with span %d: the step forward is the pole pitch, expected span %d", s.Span, s.perPole())
	}
	return nil
}

// Balanced reports whether a winding of every slot can have equal phases: for 3 phases when
// slots/(3·gcd(slots, pole pairs)) is whole, for 2 in a double layer when slots/(4·gcd(slots, pole
// pairs)) is, for 1 phase when the slots are not all at the same position of a pole pair. False for
// numbers out of range. A layout also needs a suitable span and layers; [New] says. Source: star of
// slots, e.g. Bianchi and Dai Pre, IEE Proc. Electr. Power Appl. 153 (2006), from memory.
func Balanced(slots, poles, phases int) bool {
	if slots < 2 || slots > MaxSlots || poles < 2 || poles > MaxPoles || poles%2 != 0 {
		return false
	}
	p := poles / 2
	switch phases {
	case 1:
		return p%slots != 0
	case 2:
		return slots%(4*gcd(slots, p)) == 0
	case 3:
		return slots%(3*gcd(slots, p)) == 0
	default:
		return false
	}
}

// gcd is the greatest common divisor of positive numbers.
func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// lcm is the least common multiple of positive numbers.
func lcm(a, b int) int { return a / gcd(a, b) * b }

// lowBit is the largest power of two that divides n, for n > 0.
func lowBit(n int) int { return n & -n }

// wrap brings n into 0 to m-1.
func wrap(n, m int) int {
	if n %= m; n < 0 {
		n += m
	}
	return n
}
