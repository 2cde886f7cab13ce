package wound

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"slotwright/winding/quantity"
)

// # Pairs of leads, and the phase that is unlike
//
// Three pairs of leads, U-V, V-W and W-U, identify three phases. Ohms do so exactly. Between two leads
// of a star are two phases, so that
//
//	u = (UV + WU − VW)/2
//
// and so on cyclically. In a delta phase U is between the leads U and V, in parallel with the other two
// in series; the star with the same readings (Kennelly's theorem) has a, b and c at U, V and W by the
// line above, and u = (ab + bc + ca)/c. One phase of 1 + d times the others then moves its two pairs by
// d/2 in a star; in a delta the pair across it by 2d/3, the other two by d/6.
//
// Volts of a star are differences of phasors 120° apart, √(u² + uv + v²), which for small d behave like
// the ohms. In a delta with one deviating phase a current circulates that takes d·E/3 from each phase:
// the same 2d/3 and d/6. So
//
//	star: d = UV + WU − VW − 1    delta: d = 2·UV − 1 − mean    each over the mean of the three
//
// which is right to the first order in d; for a phase that is far off, faults.go has the exact figure.
//
// A pair is judged by its distance from the mean of all, whatever that mean is. The limit for ohms is
// [BalanceLimit], for volts [VoltsBalance]: one meter reads all pairs at one speed, so its gain error,
// the speed and the field are common factors and cancel in the ratios; what is left is its last digit,
// the waveform and how steadily the shaft is held (common practice, no source). To both the last digit
// written is added: two readings of the same thing on one range of one meter may differ by it (common
// practice, no source).

// pairLaw is what lies between two leads.
type pairLaw int

const (
	alone      pairLaw = iota // a phase by itself, or nothing known
	ohmsStar                  // two phases in series
	ohmsDelta                 // a phase in parallel with the other two
	voltsStar                 // the difference of two phasors
	voltsDelta                // a phase of a delta with a circulating current
)

// leads are the names of a winding's phases, in the order in which pairs are read: of both sets where
// there are two.
type leads []string

// pair is the two leads of pair i, as the card names them: U-V.
func (l leads) pair(i int) string {
	if len(l) < 3 {
		return l.phase(i)
	}
	set := i / 3 * 3
	return l.phase(i) + "-" + l.phase(set+(i+1)%3)
}

// phase is the name of phase i.
func (l leads) phase(i int) string {
	if i < len(l) {
		return l[i]
	}
	return fmt.Sprint(i + 1)
}

// sides is the three pairs of one set, and the index of the first among all.
type sides struct {
	each  [3]float64
	first int
}

// mean is that of the three.
func (s sides) mean() float64 { return (s.each[0] + s.each[1] + s.each[2]) / 3 }

// apart is the largest relative distance from the mean.
func (s sides) apart() (part float64) {
	for _, v := range s.each {
		part = max(part, math.Abs(v/s.mean()-1))
	}
	return part
}

// sides is the three pairs of a set, of two sets the less balanced one; ok is false where other than
// three or six were read, or a pair reads nothing.
func (p Proof) sides() (of sides, ok bool) {
	if len(p.Each) != 3 && len(p.Each) != 6 || slices.Min(p.Each) <= 0 {
		return of, false
	}
	for first := 0; first < len(p.Each); first += 3 {
		s := sides{[3]float64(p.Each[first : first+3]), first}
		if !ok || s.apart() > of.apart() {
			of, ok = s, true
		}
	}
	return of, true
}

// phases is each phase over the middle one of the three, from the three pairs of a set; ok is false
// where what lies between the leads is not known.
func (p Proof) phases() (each [3]float64, first int, ok bool) {
	s, ok := p.sides()
	if !ok || p.law == alone {
		return each, 0, false
	}
	for i := range each {
		own, next, last := s.each[i]/s.mean(), s.each[(i+1)%3]/s.mean(), s.each[(i+2)%3]/s.mean()
		switch p.law {
		case ohmsStar:
			each[i] = own + last - next
		case voltsStar:
			each[i] = own + last - next
		case voltsDelta:
			each[i] = 2*own - 1
		case ohmsDelta:
			a, b, c := own+last-next, own+next-last, next+last-own // at its two leads, and at the third
			each[i] = (a*b + b*c + c*a) / max(c, 1e-9)
		}
	}
	sorted := slices.Sorted(slices.Values(each[:]))
	for i := range each {
		each[i] /= sorted[1]
	}
	return each, s.first, sorted[0] > 0
}

// A phase off by this fraction of the furthest one is named beside it; phaseOver converts a pair's
// margin to a phase's: in star and delta a pair is d/3 from the mean. Half of that counts as seen in
// company, where the other quantity has the same phase off (common practice, no source).
const (
	besideIt  = 0.5
	phaseOver = 3.0
	company   = phaseOver / 2
)

// side is a phase that differs from the others, and by how much, relative.
type side struct {
	phase int // among the phases of all sets
	part  float64
}

// unlike is the phases that make pairs differ, the furthest first; none where the pairs are alike, or
// where they do not identify one.
func (p Proof) unlike() (list []side) {
	each, first, ok := p.phases()
	if !ok || !p.Unlike() {
		return nil
	}
	for i, v := range each {
		list = append(list, side{first + i, v - 1})
	}
	slices.SortStableFunc(list, func(a, b side) int { return -cmpAbs(a.part, b.part) })
	return slices.DeleteFunc(list, func(s side) bool { return math.Abs(s.part) < besideIt*math.Abs(list[0].part) })
}

func cmpAbs(a, b float64) int {
	switch d := math.Abs(a) - math.Abs(b); {
	case d > 0:
		return 1
	case d < 0:
		return -1
	}
	return 0
}

// of is the relative deviation of a phase, in a reading that need not be unbalanced by itself; 0 within
// what counts as seen in company. told is false where the pairs were not read.
func (p Proof) of(phase int) (part float64, told bool) {
	each, first, ok := p.phases()
	if !ok || phase < first || phase >= first+3 {
		return 0, false
	}
	if part = each[phase-first] - 1; math.Abs(part) < company*p.Even() {
		part = 0
	}
	return part, true
}

// Unlike reports whether a pair of leads is further from the mean of all than allowed.
func (p Proof) Unlike() bool { return len(p.Each) > 0 && p.Apart() > p.Even() }

// Apart is the largest relative distance of a pair of leads from the mean of all; 0 where only a mean
// was read.
func (p Proof) Apart() (part float64) {
	for _, v := range p.Each {
		part = max(part, math.Abs(v/p.Read.Value-1))
	}
	return part
}

// Even is how far a pair of leads may be from the mean of all, relative: [BalanceLimit] for ohms,
// [VoltsBalance] for volts, plus the last digit written.
func (p Proof) Even() float64 {
	if p.Read.Value <= 0 {
		return p.even
	}
	return p.even + p.step/p.Read.Value
}

// each is what the pairs read, by name: U-V 3.11, V-W 3.10, W-U 3.24.
func (r *Record) each(p Proof) string {
	var list []string
	for i, v := range p.Each {
		list = append(list, r.leads.pair(i)+" "+quantity.Number(v, 3))
	}
	return strings.Join(list, ", ")
}
