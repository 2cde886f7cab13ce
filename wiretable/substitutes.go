package wiretable

import (
	"math"
	"slices"
)

// Finding substitutes
//
// Idea: try every count of one size, and every pair of counts of two sizes of the system, and keep
// those within the tolerance on area. Two sizes are mixed only when the thicker is at most twice the
// thinner in diameter: beyond that the thin wire carries little and lies badly (common practice, no
// source).
//
// Cost: 15 pairs of counts for each pair of near sizes, some 0.02 ms for AWG and 0.1 ms for IEC. Exact
// for direct current; at high frequency thin strands do better than their area says, see SkinDepthMM.
//
// Order: each bundle gets a penalty, the smallest first: its error in units of the tolerance, plus 0.15
// for each wire beyond the first, plus 0.3 for a second size to buy, plus its slot room beyond the
// smallest found (ten per cent more is 0.1).
const (
	strandDemerit = 0.15
	mixDemerit    = 0.3
	roomDemerit   = 1.0 // per unit of extra room over the leanest
	mixRatio      = 2.0

	mostStrands      = 6
	usualTolerance   = 0.03
	widestTolerance  = 0.5
	usualSubstitutes = 24
)

// SubstituteOptions narrows the search for bundles of equal area.
type SubstituteOptions struct {
	// System to choose sizes from: AWG, SWG or IEC. MetricDiameter means IEC;
	// InchDiameter and zero mean AWG.
	System System
	// Build of the substitutes, and of a target measured over its enamel.
	Build Build
	// MaxStrands in hand, 1 to 6; outside that it is taken as 6.
	MaxStrands int
	// Tolerance is the largest error of area as a fraction (0.03 is 3 %);
	// 0 or less, or not a number, is taken as 0.03, above 0.5 as 0.5.
	Tolerance float64
	// MaxOverallMM is the largest maximum overall diameter allowed, for the
	// slot mouth; 0 or less is no limit.
	MaxOverallMM float64
	// Limit is the most substitutes wanted; below 1 it is taken as 24.
	Limit int
}

// Substitute is a bundle with nearly the area of a target.
type Substitute struct {
	Bundle  Bundle
	AreaMM2 float64
	// ErrorFraction is (area - target)/target: negative is thinner.
	ErrorFraction float64
	// SquareMM2 is the room in the slot, as Bundle.SquareMM2.
	SquareMM2 float64
}

// Substitutes finds bundles whose area of bare metal is that of the target,
// best first; the target itself is left out. Nil for the zero Bundle.
func Substitutes(target Bundle, o SubstituteOptions) []Substitute {
	o = o.settled()
	wide := o
	wide.Limit++
	found := SubstitutesForArea(target.AreaMM2(o.Build), wide)
	found = slices.DeleteFunc(found, func(s Substitute) bool { return s.Bundle.same(target) })
	return found[:min(len(found), o.Limit)]
}

// SubstitutesForArea is Substitutes for an area in mm²; nil unless it is a
// positive, finite number.
func SubstitutesForArea(targetMM2 float64, o SubstituteOptions) []Substitute {
	if !(targetMM2 > 0) || math.IsInf(targetMM2, 1) {
		return nil
	}
	o = o.settled()
	search := substituteSearch{target: targetMM2, options: o, sizes: o.candidates(targetMM2)}
	search.run()
	rank(search.found, o.Tolerance)
	return search.found[:min(len(search.found), o.Limit)]
}

// settled replaces options that make no sense by the usual values.
func (o SubstituteOptions) settled() SubstituteOptions {
	switch o.System {
	case AWG, SWG, IEC:
	case MetricDiameter:
		o.System = IEC
	default:
		o.System = AWG
	}
	if o.MaxStrands < 1 || o.MaxStrands > mostStrands {
		o.MaxStrands = mostStrands
	}
	if !(o.Tolerance > 0) {
		o.Tolerance = usualTolerance
	}
	o.Tolerance = min(o.Tolerance, widestTolerance)
	if o.Limit < 1 {
		o.Limit = usualSubstitutes
	}
	return o
}

// candidate is a size with what the search needs of it, looked up once.
type candidate struct {
	gauge  Gauge
	bare   float64 // mm
	area   float64 // mm²
	square float64 // mm², overall squared
}

// candidates are the sizes that pass the mouth and are not too thick to be in
// any substitute, thick to thin.
func (o SubstituteOptions) candidates(targetMM2 float64) []candidate {
	var list []candidate
	for _, g := range Sizes(o.System) {
		overall := g.OverallMM(o.Build)
		area := g.AreaMM2(o.Build)
		if o.MaxOverallMM > 0 && overall.MaxMM > o.MaxOverallMM || area > targetMM2*(1+o.Tolerance) {
			continue
		}
		list = append(list, candidate{g, g.BareMM(o.Build), area, overall.NominalMM * overall.NominalMM})
	}
	return list
}

// substituteSearch is one search for bundles of a target's area, mm², and what it has found.
type substituteSearch struct {
	target  float64
	options SubstituteOptions
	sizes   []candidate
	found   []Substitute
}

func (s *substituteSearch) run() {
	none := candidate{}
	for i, thick := range s.sizes {
		for count := 1; count <= s.options.MaxStrands; count++ {
			s.try(count, thick, 0, none)
		}
		for _, thin := range s.sizes[i+1:] {
			if thick.bare > mixRatio*thin.bare {
				break
			}
			s.mix(thick, thin)
		}
	}
}

// mix tries every pair of counts of two sizes.
func (s *substituteSearch) mix(thick, thin candidate) {
	for a := 1; a < s.options.MaxStrands; a++ {
		for b := 1; a+b <= s.options.MaxStrands; b++ {
			s.try(a, thick, b, thin)
		}
	}
}

func (s *substituteSearch) try(a int, thick candidate, b int, thin candidate) {
	area := float64(a)*thick.area + float64(b)*thin.area
	off := (area - s.target) / s.target
	if math.Abs(off) > s.options.Tolerance {
		return
	}
	s.found = append(s.found, Substitute{
		Bundle:        OfTwo(a, thick.gauge, b, thin.gauge),
		AreaMM2:       area,
		ErrorFraction: off,
		SquareMM2:     float64(a)*thick.square + float64(b)*thin.square,
	})
}

// rank sorts by penalty, best first; ties by room, then by the order found.
func rank(found []Substitute, tolerance float64) {
	leanest := math.Inf(1)
	for _, f := range found {
		leanest = min(leanest, f.SquareMM2)
	}
	demerit := func(f Substitute) float64 {
		d := math.Abs(f.ErrorFraction)/tolerance + strandDemerit*float64(f.Bundle.Count()-1)
		if f.Bundle.Strands[1].Count > 0 {
			d += mixDemerit
		}
		return d + roomDemerit*(f.SquareMM2/leanest-1)
	}
	slices.SortStableFunc(found, func(x, y Substitute) int {
		dx, dy := demerit(x), demerit(y)
		switch {
		case dx < dy:
			return -1
		case dx > dy:
			return 1
		}
		return 0
	})
}

// same reports two bundles with the same wires, whichever is named first.
func (b Bundle) same(other Bundle) bool {
	return b == other || b.Strands[0] == other.Strands[1] && b.Strands[1] == other.Strands[0]
}
