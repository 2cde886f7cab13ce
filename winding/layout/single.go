package layout

import "math/cmplx"

/*
Single layer: which slots start a coil

With one coil side per slot and every span y, the starts S and the finishes S+y
together must fill the slots. Starting at every second block of b slots,

	slot   0 1 2 | 3 4 5 | 6 7 8 | ...      b = 3
	       start   -----   start            finish fills the gaps when y/b is odd

does so when b divides y with y/b odd and Q/b is even. So b contains the same power of
two as y, times an odd divisor of gcd(Q,y); there is one exactly when a higher
power of two divides Q than y. Each residue within the block is a star of Q/2b
coils, which must be invariant under rotation by 120 degrees; the smallest b has as
many threes in Q/2b as in Q, so it balances whenever the double layer does.

Where several b, or several places to cut the belts, are possible, the one with the
highest winding factor is taken; on a tie the one with b the whole slots per pole
per phase, the usual winding of p groups per phase, all connected in the same sense. Cost:
the number of odd divisors times b times the coils, nothing in the usual cases.
*/

// starts says which slots start a coil, and where the belts begin.
type starts struct {
	block  int // b; 0 when every slot starts a coil (double layer)
	origin int
}

// at reports whether a coil starts at slot index k.
func (b starts) at(k int) bool { return b.block == 0 || k/b.block%2 == 0 }

// chooseStarts picks the starts for a checked spec.
func chooseStarts(s Spec) starts {
	switch {
	case s.Layers == 2:
		return starts{}
	case s.Phases == 2:
		best, _ := twoStarts(s)
		return best
	}
	if belt := s.belt(); belt > 0 && s.Span == s.perPole() && s.blockBalances(belt) {
		return starts{block: belt}
	}
	var best starts
	top := -1.0
	low := lowBit(s.Span)
	odd := gcd(s.Slots, s.Span) / low
	if odd == 1 && low == 1 {
		return starts{block: 1}
	}
	for d := 1; d <= odd; d += 2 {
		if odd%d != 0 || !s.blockBalances(low*d) {
			continue
		}
		for r := 0; r < low*d; r++ {
			try := starts{block: low * d, origin: s.pairs() * r % s.Slots}
			if v := s.strength(try); v > top+1e-9 {
				best, top = try, v
			}
		}
	}
	return best
}

// blockBalances reports whether starts in blocks of b slots give a star with three-fold symmetry, and
// one that halves for two sets.
func (s Spec) blockBalances(b int) bool {
	coils := s.Slots / (2 * b)
	if s.thirds() && coils/gcd(coils, s.pairs())%3 != 0 {
		return false
	}
	return s.Sets != 2 || s.blockHalves(b)
}

// blockHalves reports whether the spokes, folded into one 60 degree belt, are invariant under a
// rotation by 30 degrees. The spokes of one residue lie 60/n degrees apart: for even n that is so for
// each by itself, else residues must lie in pairs.
func (s Spec) blockHalves(b int) bool {
	coils := s.Slots / (2 * b)
	n := coils / gcd(coils, s.pairs()) / 3
	if n%2 == 0 {
		if n /= 2; n%2 == 0 {
			return true
		}
	}
	// In units of 1/(12·n·Q) of a revolution the spokes are 2Q apart, and 30 degrees is Q modulo 2Q (n
	// is odd).
	full := 2 * s.Slots
	at := func(r int) int { return 12 * n * s.pairs() * r % full }
	count := func(angle int) (c int) {
		for r := range b {
			if at(r) == angle {
				c++
			}
		}
		return c
	}
	for r := range b {
		if count(at(r)) != count((at(r)+s.Slots)%full) {
			return false
		}
	}
	return true
}

// splitsInTwo reports whether two equal sets 30 degrees apart are possible.
func (s Spec) splitsInTwo() bool {
	if s.Layers == 2 {
		return s.Slots%(12*gcd(s.Slots, s.pairs())) == 0
	}
	low := lowBit(s.Span)
	odd := gcd(s.Slots, s.Span) / low
	for d := 1; d <= odd; d += 2 {
		if odd%d == 0 && s.blockBalances(low*d) {
			return true
		}
	}
	return false
}

// strength is the magnitude of the sum of phase U's start spokes: the effect of the choice of starts on
// the factor, the span being the same for all.
func (s Spec) strength(b starts) float64 {
	st := newStar(s, b.origin)
	var sum complex128
	for k := range s.Slots {
		if !b.at(k) {
			continue
		}
		if pl, used := st.at(k); used && pl.set == 0 && pl.phase == 0 {
			sum += complex(float64(pl.sense), 0) * unit(s.pairs()*k, s.Slots)
		}
	}
	return cmplx.Abs(sum)
}
