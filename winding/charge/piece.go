package charge

import "math"

// pieceKind says which diodes conduct.
type pieceKind uint8

const (
	idle  pieceKind = iota // none
	loop                   // two phases in series: one mode
	trio                   // all three: two modes
	alone                  // a single phase on four diodes: one mode
	lone                   // one of two phases on bridges of their own: one mode
	duo                    // both of these: two modes
)

// piece is a stretch between events.
//
// In a loop, current main flows out of phase lead and back into phase back, and phase rest carries
// none. In a trio, phase lead carries main one way (sign) and back and rest share it the other way;
// split is the size of the current in back less that in rest.
//
// In a lone, phase lead of two carries main and phase rest carries none; in a duo main is the sum of
// the sizes of both currents and split the first less the second.
type piece struct {
	kind             pieceKind
	span             float64
	lead, back, rest int
	sign             float64
	main, split      mode
	// A loop and a lone watch the resting phase: its EMF is restSin·cos t + restCos·sin t, and lever
	// times that is compared with the rails.
	restSin, restCos float64
	lever            float64
	// oneWay says that the resting phase can reach the upper rail only.
	oneWay bool
	v, rb  float64
}

// emfs holds sine and cosine of the three phase EMFs' angles at the start of a piece.
type emfs struct{ sin, cos [3]float64 }

func emfsAt(angle float64) emfs { return emfsOf(math.Sincos(angle)) }

// emfsOf gives the EMFs from the sine and cosine of phase a's.
func emfsOf(s, c float64) emfs {
	const half, rt = 0.5, 0.8660254037844386467637231707529362
	return emfs{
		sin: [3]float64{s, -half*s - rt*c, -half*s + rt*c},
		cos: [3]float64{c, -half*c + rt*s, -half*c - rt*s},
	}
}

// from renames the phases so that phase k becomes a.
func (e emfs) from(k int) (named emfs) {
	for i := range 3 {
		named.sin[(i+k)%3], named.cos[(i+k)%3] = e.sin[i], e.cos[i]
	}
	return named
}

// turned is the EMFs an angle later.
func (e *emfs) turned(t arc) emfs {
	sin, cos := t.sin(), t.cos()
	return emfsOf(e.sin[0]*cos+e.cos[0]*sin, e.cos[0]*cos-e.sin[0]*sin)
}

// extremes is the phases of greatest and of least EMF.
func (e *emfs) extremes() (greatest, least int) {
	for k := range 3 {
		if e.sin[k] > e.sin[greatest] {
			greatest = k
		}
		if e.sin[k] < e.sin[least] {
			least = k
		}
	}
	return greatest, least
}

// newLoop is a piece with current start from phase p back through phase n. In a loop the two phases
// share everything but the load: x·i' + (r + rb/2)·i = (e_p - e_n)/2 - v/2.
func (c *circuit) newLoop(e *emfs, p, n int, start float64) piece {
	k := 3 - p - n
	a, b := (e.cos[p]-e.cos[n])/2, (e.sin[p]-e.sin[n])/2
	return piece{
		kind: loop, lead: p, back: n, rest: k, sign: 1,
		main:    c.loops.mode(start, b-c.v/2, a, b),
		restSin: e.sin[k], restCos: e.cos[k], lever: 3, v: c.v, rb: c.rb,
	}
}

// newTrio is a piece with phase lead against the other two. The three EMFs and currents sum to zero, so
// two thirds of the load act on the lone phase, and none on the difference of the other two.
func (c *circuit) newTrio(e *emfs, lead int, sign float64, i *[3]float64) piece {
	x, y := (lead+1)%3, (lead+2)%3
	b := sign * e.sin[lead]
	p := piece{
		kind: trio, lead: lead, back: x, rest: y, sign: sign,
		main: c.trios.mode(sign*i[lead], b-2*c.v/3, sign*e.cos[lead], b),
	}
	b = -sign * (e.sin[x] - e.sin[y])
	p.split = c.splits.mode(-sign*(i[x]-i[y]), b, -sign*(e.cos[x]-e.cos[y]), b)
	return p
}

// twofold reports whether two modes flow.
func (p *piece) twofold() bool { return p.kind == trio || p.kind == duo }

// jets evaluates the piece's event functions; see firstEvent.
//
//	alone, loop, lone  0: the current
//	loop, lone         1, 2: the resting phase's margin to the upper, lower rail
//	trio               0, 1: the currents of back and rest, as sizes
//	duo                0, 1: those of the first and the second phase
func (p *piece) jets(t arc) (j [3]jet, n int) {
	main, _ := p.main.at(t)
	var split jet
	if p.twofold() {
		split, _ = p.split.at(t)
	}
	return p.jetsOf(t, &main, &split)
}

// jetsAtStart is jets at angle zero, where nothing has decayed yet.
func (p *piece) jetsAtStart() (j [3]jet, n int) {
	main, split := p.main.atStart(), p.split.atStart()
	return p.jetsOf(arc{}, &main, &split)
}

// jetsOf is jets from the currents at an angle.
func (p *piece) jetsOf(t arc, main, split *jet) (j [3]jet, n int) {
	switch p.kind {
	case alone:
		j[0] = *main
		return j, 1
	case loop, lone:
		j[0] = *main
		j[1], j[2] = p.railMargins(t, main)
		if p.oneWay {
			return j, 2
		}
		return j, 3
	}
	third := (main.third + split.third) / 2
	j[0] = jet{(main.value + split.value) / 2, (main.first + split.first) / 2, (main.second + split.second) / 2, third}
	j[1] = jet{(main.value - split.value) / 2, (main.first - split.first) / 2, (main.second - split.second) / 2, third}
	return j, 2
}

// railMargins is v + rb·i ∓ 3e for the resting phase of three, ∓ e for one with a bridge of its own.
// The neutral of a conducting pair is half the resting EMF from the middle of the rails, so the resting
// terminal is at 3/2 of it, and the rails at half of v + rb·i.
func (p *piece) railMargins(t arc, i *jet) (upper, lower jet) {
	sin, cos := t.sin(), t.cos()
	e := p.lever * (p.restSin*cos + p.restCos*sin)
	d := p.lever * (p.restCos*cos - p.restSin*sin)
	h := jet{p.v + p.rb*i.value, p.rb * i.first, p.rb * i.second, p.rb*i.third + p.lever}
	upper = jet{h.value - e, h.first - d, h.second + e, h.third}
	lower = jet{h.value + e, h.first + d, h.second - e, h.third}
	return upper, lower
}

// spread distributes main and split to the three phases.
func (p *piece) spread(main, split float64) (i [3]float64) {
	switch p.kind {
	case loop:
		i[p.lead], i[p.back] = main, -main
	case trio:
		i[p.lead] = p.sign * main
		i[p.back] = -p.sign * (main + split) / 2
		i[p.rest] = -p.sign * (main - split) / 2
	}
	return i
}

// gather is the inverse of spread.
func (p *piece) gather(i *[3]float64) (main, split float64) {
	if p.kind == loop {
		return i[p.lead], 0
	}
	return p.sign * i[p.lead], -p.sign * (i[p.back] - i[p.rest])
}
