package layout

import (
	"maps"
)

/*
Two phases, 90 degrees apart

The star of slots is cut into four belts of 90 degrees, +U, +V, -U, -V. Each phase then
has spokes over less than 90 degrees, and V's are U's rotated by 90 exactly when the star is
invariant under rotation by 90 degrees: with coils starting in every slot, when the number of
its spokes Q/gcd(Q,p) is a multiple of four.

In a single layer this need not hold for each residue within the blocks of starts (see
single.go): with two slots per pole and phase U has the first two of a block of four and V
the last two. So the spokes of a choice of starts are counted, in whole numbers, and the
choices with equal counts for U and for V rotated back by 90 degrees balance. The one with the highest winding factor is taken. Cost: as in single.go.
*/

// twoStarts picks the starts of a two-phase layout; false when none balances.
func twoStarts(s Spec) (best starts, ok bool) {
	if s.Layers == 2 {
		return starts{}, Balanced(s.Slots, s.Poles, 2)
	}
	top := -1.0
	low := lowBit(s.Span)
	odd := gcd(s.Slots, s.Span) / low
	for d := 1; d <= odd; d += 2 {
		if odd%d != 0 {
			continue
		}
		for r := range low * d {
			try := starts{block: low * d, origin: s.pairs() * r % s.Slots}
			if v := s.strength(try); v > top+1e-9 && s.quarters(try) {
				best, top, ok = try, v, true
			}
		}
	}
	return best, ok
}

// quarters reports whether V's spokes are U's rotated by 90 degrees. Angles count in units of 1/4Q of
// an electrical revolution, so nothing rounds.
func (s Spec) quarters(b starts) bool {
	st := newStar(s, b.origin)
	var spokes [2]map[int]int
	for i := range spokes {
		spokes[i] = map[int]int{}
	}
	for k := range s.Slots {
		if !b.at(k) {
			continue
		}
		pl, _ := st.at(k)
		angle := 4*(s.pairs()%s.Slots)*k + s.Slots*(1-pl.sense) - s.Slots*pl.phase
		spokes[pl.phase][wrap(angle, 4*s.Slots)]++
	}
	return maps.Equal(spokes[0], spokes[1])
}
