package layout

import "slices"

// Coil is one coil of the winding.
type Coil struct {
	Number int // from 1, in the order of the start slots
	Start  int // slot, 1 to Q
	Finish int // slot, 1 to Q
	Turns  int // 0 for a coil that is left out
	Sense  int // +1: the phase enters at the start; -1: at the finish
	Phase  int // 0, 1, 2: U, V, W
	Set    int // 0, or 1 in the second of two sets
	// Group is the number, from 1, of the coil group: neighbours of one phase
	// and sense, joined in series as they lie.
	Group int
	// Circuit is the parallel path of its phase, from 1.
	Circuit int
}

// Layout is a winding as a list of coils. It does not change once made: the With methods return a new
// one.
type Layout struct {
	spec     Spec
	coils    []Coil
	circuits int
	found    bool // from a list: phases may differ
}

// New lays out the winding asked for, with one turn per coil and one circuit. The error is a
// [*SpecError] that says why there is none and what is near.
func New(spec Spec) (*Layout, error) {
	if err := spec.check(); err != nil {
		return nil, err
	}
	spec.Sets = max(spec.Sets, 1)
	begin := chooseStarts(spec)
	st := newStar(spec, begin.origin)
	coils := make([]Coil, 0, spec.mostCoils())
	for k := range spec.Slots {
		if !begin.at(k) {
			continue
		}
		pl, used := st.at(k)
		if !used {
			continue
		}
		coils = append(coils, Coil{
			Number: len(coils) + 1, Start: k + 1, Finish: (k+spec.Span)%spec.Slots + 1, Turns: 1,
			Sense: pl.sense, Phase: pl.phase, Set: pl.set, Circuit: 1,
		})
	}
	setGroups(coils)
	if spec.Kind == Concentric {
		if err := nest(spec, coils); err != nil {
			return nil, err
		}
	}
	return &Layout{spec: spec, coils: coils, circuits: 1}, nil
}

// mostCoils is the capacity of the coil list.
func (s Spec) mostCoils() int { return s.Slots * s.Layers / 2 }

// Spec is what the layout was made from, with Sets 1 in place of 0.
func (l *Layout) Spec() Spec { return l.spec }

// Coils is a copy of the coil list.
func (l *Layout) Coils() []Coil { return slices.Clone(l.coils) }

// Circuits is the number of parallel paths of each phase, a.
func (l *Layout) Circuits() int { return l.circuits }

// CoilsPerPhase is the number of coils of one phase of one set, in all its circuits. In a list as found
// it is that of the phase with most.
func (l *Layout) CoilsPerPhase() int {
	var n [6]int
	for i := range l.coils {
		n[l.coils[i].Set*3+l.coils[i].Phase]++
	}
	return slices.Max(n[:])
}

// SlotAngleDeg is the electrical angle from one slot to the next: 360·p/Q.
func (l *Layout) SlotAngleDeg() float64 {
	return 360 * float64(l.spec.pairs()) / float64(l.spec.Slots)
}

// SlotsPerPolePhase is q = Q/(2p·m) as a fraction in lowest terms, m counting the
// phases of all sets.
func (l *Layout) SlotsPerPolePhase() (num, den int) {
	den = l.spec.Poles * l.spec.Phases * l.spec.Sets
	g := gcd(l.spec.Slots, den)
	return l.spec.Slots / g, den / g
}

// PhaseName is the letter of a phase, with the set in front when there are two:
// U, V, W or 1U to 2W.
func (l *Layout) PhaseName(set, phase int) string { return PhaseName(l.spec.Sets, set, phase) }

// PhaseName is the letter of a phase of a winding of so many sets, 1 or 2.
func PhaseName(sets, set, phase int) string {
	letter := string("UVW"[phase])
	if sets == 2 {
		return string("12"[set]) + letter
	}
	return letter
}

// copied is the same layout with a coil list of its own.
func (l *Layout) copied() *Layout {
	next := *l
	next.coils = l.Coils()
	return &next
}

// WithTurns is the layout with t turns in every coil, 1 to MaxTurns. Coils that
// are left out (0 turns) stay out.
func (l *Layout) WithTurns(t int) (*Layout, error) {
	if t < 1 || t > MaxTurns {
		return nil, problemf("turns per coil: read %d, expected 1 to %d", t, MaxTurns)
	}
	next := l.copied()
	for i := range next.coils {
		if next.coils[i].Turns != 0 {
			next.coils[i].Turns = t
		}
	}
	return next, nil
}

// WithGroupTurns is the layout with the given turns coil by coil within each
// group, in the order of the start slots (concentric: the outermost first). Every
// group must have that many coils.
func (l *Layout) WithGroupTurns(turns []int) (*Layout, error) {
	next := l.copied()
	next.found = true // groups of unequal turns can make the phases differ
	at := map[int]int{}
	for _, i := range groupOrder(next.coils) {
		c := &next.coils[i]
		n := at[c.Group]
		if n >= len(turns) {
			return nil, problemf("turns within a group: read %d numbers, but group %d has more coils; give one for each", len(turns), c.Group)
		}
		if turns[n] < 1 || turns[n] > MaxTurns {
			return nil, problemf("turns of coil %d of a group: read %d, expected 1 to %d", n+1, turns[n], MaxTurns)
		}
		c.Turns = turns[n]
		at[c.Group] = n + 1
	}
	for g, n := range at {
		if n != len(turns) {
			return nil, problemf("turns within a group: read %d numbers, but group %d has %d coils", len(turns), g, n)
		}
	}
	return next, nil
}
