package layout

import (
	"fmt"
	"math"
	"slices"
)

// Connection is how the three phases of a set are joined.
type Connection int

const (
	// Star joins U2, V2 and W2 in one point.
	Star Connection = iota
	// Delta joins U1 with W2, V1 with U2 and W1 with V2.
	Delta
)

// String is the word for the connection.
func (c Connection) String() string {
	if c == Delta {
		return "delta"
	}
	return "star"
}

// MarshalText makes JSON carry the word.
func (c Connection) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// LinePerPhase is volts between leads over volts of a phase, balanced: star √3, delta 1, a winding of one
// phase 1.
func (c Connection) LinePerPhase(phases int) float64 {
	if phases == 1 || c == Delta {
		return 1
	}
	return math.Sqrt(3)
}

// LeadPerPhase is ohms between leads over ohms of a phase: star 2, delta 2/3 (one phase in parallel
// with the other two in series), a winding of one phase 1.
func (c Connection) LeadPerPhase(phases int) float64 {
	switch {
	case phases == 1:
		return 1
	case c == Delta:
		return 2.0 / 3
	default:
		return 2
	}
}

// End is one of the two wire ends of a coil.
type End string

const (
	Start  End = "start"  // the end in the coil's start slot
	Finish End = "finish" // the end in the coil's finish slot
)

// EndRef is one end of one coil, and the slot it comes out of.
type EndRef struct {
	Coil int // number
	End  End
	Slot int
}

// String is "start of coil 5 (slot 9)".
func (e EndRef) String() string { return fmt.Sprintf("%s of coil %d (slot %d)", e.End, e.Coil, e.Slot) }

// Join is two coil ends joined in series.
type Join struct{ From, To EndRef }

// Lead is one end of a phase, all its circuits together.
type Lead struct {
	// Name is U1, V2 and so on (IEC 60034-8: 1 where the phase begins, 2 where it
	// ends), with the set in front when there are two: 1U1, 2W2.
	Name       string
	Set, Phase int
	Ends       []EndRef // one for each circuit
	// Out says that a cable comes out here; false for the three that meet in a star point and for the
	// second names of delta corners.
	Out bool
}

// Node is leads joined with each other.
type Node struct {
	Name  string // "star point", "delta U1-W2"
	Set   int
	Leads []string
}

// Wiring is every joint of the winding.
type Wiring struct {
	Connection Connection
	Joins      []Join // coil to coil, in the order of winding
	Leads      []Lead
	Nodes      []Node // none with one phase or two
	Order      []int  // coil numbers in the order of winding
}

// ends is where the phase enters and leaves a coil.
func (c Coil) ends() (enter, leave EndRef) {
	enter = EndRef{c.Number, Start, c.Start}
	leave = EndRef{c.Number, Finish, c.Finish}
	if c.Sense < 0 {
		enter, leave = leave, enter
	}
	return enter, leave
}

// path is the coils of one circuit in series order, without those left out. They go up round the
// machine; a circuit that has the machine to itself begins with its first coil of sense +1, so that the
// leads of a usual winding start in slots 1, 1+2q and 1+4q. A wave goes once round before it takes the
// next slot of a group.
func (l *Layout) path(set, phase, circuit int, order []int) []Coil {
	var coils []Coil
	for _, i := range order {
		if c := l.coils[i]; c.Set == set && c.Phase == phase && c.Circuit == circuit && c.Turns > 0 {
			coils = append(coils, c)
		}
	}
	if l.spec.Kind == Wave {
		inGroup := map[int]int{}
		rank := map[int]int{}
		for _, c := range coils {
			rank[c.Number] = inGroup[c.Group]
			inGroup[c.Group]++
		}
		slices.SortStableFunc(coils, func(a, b Coil) int { return rank[a.Number] - rank[b.Number] })
		return coils
	}
	first := slices.IndexFunc(coils, func(c Coil) bool { return c.Sense > 0 })
	if l.circuits == 1 && first > 0 {
		coils = append(slices.Clone(coils[first:]), coils[:first]...)
	}
	return coils
}

// eachPath calls f with every circuit of every phase that has coils.
func (l *Layout) eachPath(f func(set, phase, circuit int, coils []Coil)) {
	order := groupOrder(l.coils)
	for set := range l.spec.Sets {
		for phase := range l.spec.Phases {
			for circuit := 1; circuit <= l.circuits; circuit++ {
				if coils := l.path(set, phase, circuit, order); len(coils) > 0 {
					f(set, phase, circuit, coils)
				}
			}
		}
	}
}

// Wiring is the joins, leads and nodes of the winding in star or delta. With one phase or two the
// connection is not used: both ends of each come out. Coils left out (0 turns) are in no join.
func (l *Layout) Wiring(conn Connection) Wiring {
	w := Wiring{Connection: conn}
	var heads, tails [6][]EndRef
	l.eachPath(func(set, phase, _ int, coils []Coil) {
		at := set*3 + phase
		var last EndRef
		for n, c := range coils {
			enter, leave := c.ends()
			if n == 0 {
				heads[at] = append(heads[at], enter)
			} else {
				w.Joins = append(w.Joins, Join{last, enter})
			}
			last = leave
			w.Order = append(w.Order, c.Number)
		}
		tails[at] = append(tails[at], last)
	})
	for set := range l.spec.Sets {
		for phase := range l.spec.Phases {
			at, name := set*3+phase, l.PhaseName(set, phase)
			w.Leads = append(w.Leads,
				Lead{Name: name + "1", Set: set, Phase: phase, Ends: heads[at], Out: true},
				Lead{Name: name + "2", Set: set, Phase: phase, Ends: tails[at], Out: l.spec.Phases != 3})
		}
		if l.spec.Phases == 3 {
			w.Nodes = append(w.Nodes, l.nodes(set, conn)...)
		}
	}
	return w
}

// nodes is the star point or the three delta corners of a set.
func (l *Layout) nodes(set int, conn Connection) []Node {
	u, v, w := l.PhaseName(set, 0), l.PhaseName(set, 1), l.PhaseName(set, 2)
	if conn == Star {
		return []Node{{Name: "star point", Set: set, Leads: []string{u + "2", v + "2", w + "2"}}}
	}
	corner := func(one, two string) Node {
		return Node{Name: "delta " + one + "-" + two, Set: set, Leads: []string{one, two}}
	}
	return []Node{corner(u+"1", w+"2"), corner(v+"1", u+"2"), corner(w+"1", v+"2")}
}
