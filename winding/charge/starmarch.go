package charge

import (
	"math"
	"slotwright/winding/zero"
)

const (
	// starAngle is where the sixth begins.
	starAngle = 0.1
	// starGrid is the step on which switchings are looked for, 2°.
	starGrid = math.Pi / 90
	// starRounding is the size of a negative margin that is taken as rounding: a leg that has just
	// woken begins with no current and no slope.
	starRounding = 1e-14
	// mostStarPieces bounds the pieces in 60°; the usual number is 2 to 6.
	mostStarPieces = 40
)

// starMarch carries the currents over 60° together with their derivatives by those at the start.
type starMarch struct {
	c      *starCircuit
	from   [3]float64
	i      [3]float64
	cols   [3][3]float64 // by the three currents at the start
	pieces []starPiece
}

// starEvent is a switching: the leg, the rail it woke at or 0, and the angle.
type starEvent struct {
	leg  int
	rail float64
	at   float64
}

// idle is whether no leg conducts.
func (p *starPiece) idle() bool { return p.sign == [4]float64{} }

// gap is, while nothing conducts, by how much the load exceeds the greatest EMF between legs; and those
// two legs.
func (p *starPiece) gap(s *starState) (left float64, high, low int) {
	pots := [4]float64{s.e[0] + s.e3, s.e[1] + s.e3, s.e[2] + s.e3, 0}
	for k, v := range pots {
		if v > pots[high] {
			high = k
		}
		if v < pots[low] {
			low = k
		}
	}
	return p.c.v - pots[high] + pots[low], high, low
}

// least is the smallest margin at an angle, and the leg it belongs to.
func (p *starPiece) least(t float64) (float64, starEvent) {
	s := p.at(t)
	if p.idle() {
		left, high, _ := p.gap(&s)
		return left, starEvent{high, 1, t}
	}
	upper, lower := p.margins(&s.i, &s.first, &s.e, s.e3, p.c.v)
	best, ev := math.Inf(1), starEvent{}
	for k := range 4 {
		woken := 0.0
		if p.sign[k] == 0 {
			woken = 1
		}
		if upper[k] < best {
			best, ev = upper[k], starEvent{k, woken, t}
		}
		if lower[k] < best {
			best, ev = lower[k], starEvent{k, -woken, t}
		}
	}
	return best, ev
}

// next is the first switching within an angle; ok is false where there is none.
func (p *starPiece) next(limit float64) (starEvent, bool) {
	low := 0.0
	for _, step := range [...]float64{1e-5, 1e-3, 1e-2, 0.2} {
		if t := step * starGrid; t < limit {
			if v, _ := p.least(t); v < -starRounding {
				return p.between(low, t), true
			}
			low = t
		}
	}
	for low < limit {
		t := min(low+starGrid, limit)
		if v, _ := p.least(t); v < -starRounding {
			return p.between(low, t), true
		}
		low = t
	}
	return starEvent{}, false
}

// between closes in on the first switching in a bracket, from above, on the smallest of the smooth
// functions, by false position.
func (p *starPiece) between(a, b float64) starEvent {
	fa, _ := p.least(a)
	fb, ev := p.least(b)
	if fa <= 0 { // already there, within rounding
		ev.at = a
		return ev
	}
	z := zero.Bracket{A: a, B: b, AtA: fa, AtB: fb}
	for range 80 {
		if z.B-z.A <= 1e-15 {
			break
		}
		m := z.Next()
		fm, em := p.least(m)
		if math.Abs(fm) < 1e-16 {
			z.B, ev = m, em
			break
		}
		if _, upper := z.Put(m, fm); upper {
			ev = em
		}
	}
	ev.at = z.B
	return ev
}

// choose is the piece that starts from the currents; woken is a leg that has just reached a rail.
func (m *starMarch) choose(angle float64, woken *starEvent) (starPiece, bool) {
	var sign [4]float64
	var free [4]int
	zeros, size := 0, math.Abs(m.i[0])+math.Abs(m.i[1])+math.Abs(m.i[2])
	for k := range 4 {
		amps := -total(&m.i)
		if k < 3 {
			amps = m.i[k]
		}
		switch {
		case math.Abs(amps) > 1e-13*size:
			sign[k] = math.Copysign(1, amps)
		case woken != nil && woken.leg == k:
			sign[k] = woken.rail
		default:
			free[zeros], zeros = k, zeros+1
		}
	}
	ways := 1
	for range zeros {
		ways *= 3
	}
	best, found := math.Inf(1), false
	var piece starPiece
	for way := range ways {
		for k, w := 0, way; k < zeros; k, w = k+1, w/3 {
			sign[free[k]] = [3]float64{0, 1, -1}[w%3]
		}
		p, ok := m.c.newStarPiece(angle, sign, m.i)
		if !ok {
			continue
		}
		if wrong := p.wrong(free[:zeros]); wrong < best-1e-13 {
			best, piece, found = wrong, p, true
		}
	}
	return piece, found
}

// wrong is by how much the state of the legs without current violates their diodes' laws.
func (p *starPiece) wrong(legs []int) float64 {
	s := p.at(0)
	if p.idle() {
		left, _, _ := p.gap(&s)
		return max(0, -left)
	}
	upper, lower := p.margins(&s.i, &s.first, &s.e, s.e3, p.c.v)
	sum := 0.0
	for _, k := range legs {
		switch {
		case p.sign[k] == 0:
			sum += max(0, -upper[k]) + max(0, -lower[k])
		case k < 3:
			sum += max(0, -p.sign[k]*s.first[k])
		default:
			sum += max(0, p.sign[k]*total(&s.first))
		}
	}
	return sum
}

// run marches over a sixth from a state.
func (m *starMarch) run(from [3]float64) bool {
	m.from, m.i, m.pieces = from, from, m.pieces[:0]
	m.cols = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	angle, left := starAngle, float64(sixth)
	var shift [3]float64
	var woken *starEvent
	for len(m.pieces) < mostStarPieces {
		p, ok := m.choose(angle, woken)
		if !ok {
			return false
		}
		begin := p.at(0)
		for col := range m.cols { // the piece begins as much later as the one before lasts longer
			for k := range 3 {
				m.cols[col][k] -= begin.first[k] * shift[col]
			}
		}
		ev, more := p.next(left)
		p.span = left
		if more {
			p.span = ev.at
		}
		s := p.at(p.span)
		shift = p.carry(&m.cols, &s, ev, more)
		m.i = s.i
		m.pieces = append(m.pieces, p)
		angle, left = angle+p.span, left-p.span
		if !more || left <= 0 {
			m.still(&p, -1)
			return true
		}
		woken = nil
		if ev.rail != 0 && !p.idle() {
			woken = &ev
		}
		off := -1
		if ev.rail == 0 {
			off = ev.leg
		}
		m.still(&p, off)
		if p.idle() {
			angle, left = angle+1e-9, left-1e-9
		}
	}
	return false
}

// still removes rounding residues in resting legs, and in one that has just stopped.
func (m *starMarch) still(p *starPiece, off int) {
	n, sum := 0.0, 0.0
	for k := range 3 {
		if p.sign[k] == 0 || k == off {
			m.i[k] = 0
			continue
		}
		n, sum = n+1, sum+m.i[k]
	}
	if p.sign[3] != 0 && off != 3 || n == 0 {
		return
	}
	for k := range 3 {
		if p.sign[k] != 0 && k != off {
			m.i[k] -= sum / n
		}
	}
}

// carry takes the derivatives through a piece, and returns the derivatives of the angle of its end.
func (p *starPiece) carry(cols *[3][3]float64, s *starState, ev starEvent, more bool) (shift [3]float64) {
	var none [3]float64
	pick := func(upper, lower [4]float64) float64 {
		if ev.rail < 0 {
			return lower[ev.leg]
		}
		return upper[ev.leg]
	}
	slope := 0.0
	if more && !p.idle() {
		slope = pick(p.margins(&s.first, &s.second, &s.eFirst, s.e3First, 0))
	}
	for col := range cols {
		var d, dFirst [3]float64
		for a := range p.n {
			m := &p.modes[a]
			amount := dot(&m.mu, &cols[col]) * s.decay[a]
			for k, u := range m.u {
				d[k] += u * amount
				dFirst[k] -= u * amount * m.lambda
			}
		}
		if slope != 0 {
			shift[col] = -pick(p.margins(&d, &dFirst, &none, 0, 0)) / slope
			for k := range 3 {
				d[k] += s.first[k] * shift[col]
			}
		}
		cols[col] = d
	}
	return shift
}

// settle finds the state that repeats, by Newton's method, and by plain marching where that brings no
// gain.
func (m *starMarch) settle(state [3]float64) error {
	best, stalled, wait := math.Inf(1), 0, 0
	for range 3000 {
		if !m.run(state) {
			return errUnsettled
		}
		next := turnBack(m.i)
		miss, size := distance(next, state)
		if miss <= 1e-13*size {
			return nil
		}
		if miss < best/2 {
			best, stalled = miss, 0
		} else if stalled++; stalled > 8 && best <= 1e-9*size && miss <= 1e-9*size {
			return nil
		} else if wait == 0 {
			wait = 3
		}
		guess, ok := m.newton(state, next)
		if wait > 0 {
			wait, ok = wait-1, false
		}
		if state = next; ok {
			state = guess
		}
	}
	return errUnsettled
}

// newton solves the linearisation of state = march(state): Gaussian elimination on three equations.
func (m *starMarch) newton(state, next [3]float64) ([3]float64, bool) {
	var a [3][4]float64
	for col := range 3 {
		turned := turnBack(m.cols[col])
		for k := range 3 {
			a[k][col] = -turned[k]
		}
		a[col][col]++
	}
	for k := range 3 {
		a[k][3] = next[k] - state[k]
	}
	for k := range 3 {
		p := k
		for r := k + 1; r < 3; r++ {
			if math.Abs(a[r][k]) > math.Abs(a[p][k]) {
				p = r
			}
		}
		a[k], a[p] = a[p], a[k]
		for r := range 3 {
			if f := a[r][k] / a[k][k]; r != k {
				for c := k; c < 4; c++ {
					a[r][c] -= f * a[k][c]
				}
			}
		}
	}
	var guess [3]float64
	for k := range 3 {
		guess[k] = state[k] + a[k][3]/a[k][k]
		if math.IsNaN(guess[k]) || math.IsInf(guess[k], 0) {
			return next, false
		}
		if next[k] == 0 {
			guess[k] = 0
		}
	}
	if math.Abs(total(&next)) < 1e-13 { // the star point rests
		n := 0.0
		for k := range 3 {
			if next[k] != 0 {
				n++
			}
		}
		sum := total(&guess)
		for k := range 3 {
			if next[k] != 0 {
				guess[k] -= sum / n
			}
		}
	}
	return guess, sameSigns(guess, next)
}
