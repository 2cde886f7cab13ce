package layout

/*
The star of slots

A coil's voltage is a phasor at the electrical angle of its start slot, turned
and scaled by the effect of the span, the same for every coil. So the coils alone at
their start slots, k·360·p/Q degrees, make a star of Q/gcd(Q,p) different spokes.
Cut the star into six belts of 60 degrees and give each to a phase:

	          +V   -W
	       -U   \ | /  +U      belt 0 is +U, from 0 to below 60 degrees,
	          --- * ---        then -W, +V, -U, +W, -V
	       +W   / | \  -V

A spoke in -U is connected in reverse, which moves it among the spokes of +U. Whatever
the star, each phase then has spokes spread evenly over less than 60 degrees,
which gives the highest voltage of any balanced distribution. One phase has two
belts of 180 degrees, two phases four of 90; two sets have twelve of 30, set 1 and
set 2 in turn.

Everything is counted in whole slots and Q-ths of a revolution, so no spoke can fall on
the wrong side of a border by rounding. Cost: one division a slot.

It is not valid where the star is not invariant under rotation by 120 degrees (the
caller has refused those), nor for rotor poles that are not evenly
spaced. Source: the method is common to books on winding design; e.g. Bianchi
and Dai Pre, IEE Proc. Electr. Power Appl. 153 (2006), from memory.
*/

// star gives the belt of any slot.
type star struct {
	slots, pairs int
	origin       int // where belt 0 begins, in Q-ths of an electrical turn
	zones        int // 2, 4, 6 or 12 belts
	first        int // belt number, uncorrected, of slot 1
	twoThirds    bool
}

// place is what the star assigns to a coil.
type place struct {
	set, phase, sense int
}

// newStar cuts the star at origin, and numbers the belts from that of slot 1.
func newStar(s Spec, origin int) star {
	st := star{slots: s.Slots, pairs: s.pairs() % s.Slots, origin: origin, zones: s.zones(), twoThirds: s.TwoThirds}
	st.first = st.zone(0)
	return st
}

// zone is the belt of the slot with index k (slot number less one).
func (st star) zone(k int) int {
	angle := wrap(st.pairs*k-st.origin, st.slots)
	return wrap(st.zones*angle/st.slots-st.first, st.zones)
}

// Belt by belt round one pole pair of three phases.
var (
	beltPhase = [6]int{0, 2, 1, 0, 2, 1}
	beltSense = [6]int{1, -1, 1, -1, 1, -1}
)

// at is the place of the coil that starts at slot index k; false when that coil is left out (two thirds
// wound).
func (st star) at(k int) (place, bool) {
	z := st.zone(k)
	switch {
	case st.zones == 2:
		return place{sense: 1 - 2*z}, true
	case st.zones == 4:
		return place{phase: z % 2, sense: 1 - z/2*2}, true
	case st.twoThirds:
		return place{sense: 1 - z/3*2}, z%3 != 2
	case st.zones == 12:
		return place{set: z % 2, phase: beltPhase[z/2], sense: beltSense[z/2]}, true
	default:
		return place{phase: beltPhase[z], sense: beltSense[z]}, true
	}
}
