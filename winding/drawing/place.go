package drawing

import (
	"iter"
	"math"
)

// placer finds room for labels: clear of each other always, clear of lines where possible.
type placer struct {
	within box
	taken  []box
	lines  [][]point
}

// clearOf is the clearance round a label, mm.
const clearOf = 0.3

// try sets the words at the first of the places at which they meet no other label and no line, else at
// the first at which they meet no label; false when there is none.
func (p *placer) try(w words, places iter.Seq[words]) (words, bool) {
	second, found := w, false
	for at := range places {
		at.text, at.size, at.bold, at.plate, at.id = w.text, w.size, w.bold, w.plate, w.id
		b := at.box().grown(clearOf)
		if !b.within(p.within) || p.meets(b) {
			continue
		}
		if !p.crossed(b) {
			p.taken = append(p.taken, b)
			return at, true
		}
		if !found {
			second, found = at, true
		}
	}
	if found {
		p.taken = append(p.taken, second.box().grown(clearOf))
	}
	return second, found
}

func (p *placer) meets(b box) bool {
	for _, t := range p.taken {
		if t.meets(b) {
			return true
		}
	}
	return false
}

func (p *placer) crossed(b box) bool {
	for _, l := range p.lines {
		for i := 1; i < len(l); i++ {
			if b.crosses(l[i-1], l[i]) {
				return true
			}
		}
	}
	return false
}

// roundAbout is places round a point, nearer ones first, beginning right above it.
func roundAbout(at point, nearest, furthest float64) iter.Seq[words] {
	return func(yield func(words) bool) {
		for d := nearest; d <= furthest; d += 1.5 {
			for _, turn := range [...]float64{-90, -45, -135, 0, 180, 45, 135, 90} {
				sin, cos := math.Sincos(turn * math.Pi / 180)
				anchor := centred
				if cos > 0.5 {
					anchor = fromLeft
				} else if cos < -0.5 {
					anchor = toRight
				}
				if !yield(words{at: point{at.x + d*cos, at.y + d*sin}, anchor: anchor}) {
					return
				}
			}
		}
	}
}
