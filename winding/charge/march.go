package charge

import (
	"errors"
	"math"
)

const (
	sixth = math.Pi / 3
	// maxPieces bounds the pieces in 60°; the usual number is 1 to 4.
	maxPieces   = 12
	usualPieces = 4
)

// errUnsettled is a failure of the solver: no circuit is known that causes it.
var errUnsettled = errors.New("no steady state was found for these figures; please report them")

// march carries the three phase currents from one angle over 60°, piece by piece, together with their
// derivatives by the currents at the start.
type march struct {
	c     *circuit
	angle float64
	i     [3]float64
	// cols are the derivatives of i by two numbers at the start; see newton.go. carry is the derivative
	// of the angle of the event that opened the next piece.
	cols  [2][3]float64
	carry [2]float64
	// pieces is memory for them, n how many there are.
	pieces []piece
	n      int
	// marches counts the sixths it took to settle.
	marches int
	// woken is a phase that has just reached a rail, and its sign; or -1.
	woken     int
	wokenSign float64
	// start is the angle at which the sixth begins: where a pulse from a to b would.
	start float64
}

// run marches over one sixth of a cycle from the state in m.
func (m *march) run() error {
	m.n, m.woken, m.carry = 0, -1, [2]float64{}
	for left := float64(sixth); left > 0; {
		if m.n == len(m.pieces) {
			return errUnsettled
		}
		p := &m.pieces[m.n]
		m.n++
		*p = m.next()
		if p.kind == idle {
			p.span = left
			m.i, m.cols = [3]float64{}, [2][3]float64{}
			return nil
		}
		span, event := p.firstEvent(left)
		if event == -2 {
			return errUnsettled
		}
		p.span = span
		m.finish(p, event)
		left -= span
		m.angle += span
		if event < 0 {
			break
		}
	}
	return nil
}

// next is the piece that the present currents begin.
func (m *march) next() piece {
	e := emfsAt(m.angle)
	zeros, zero := 0, 0
	for k, i := range m.i {
		if i == 0 {
			zeros, zero = zeros+1, k
		}
	}
	switch {
	case zeros == 0:
		return m.trioOf(&e, m.i)
	case zeros == 1:
		return m.withResting(&e, zero)
	}
	m.i = [3]float64{}
	return m.fromNothing(&e)
}

// trioOf is the piece with three conducting, with the given signs.
func (m *march) trioOf(e *emfs, signs [3]float64) piece {
	for lead := range 3 {
		x, y := (lead+1)%3, (lead+2)%3
		if signs[lead]*signs[x] < 0 && signs[lead]*signs[y] < 0 {
			return m.c.newTrio(e, lead, math.Copysign(1, signs[lead]), &m.i)
		}
	}
	panic("charge: three currents of one sign")
}

// withResting is the piece when phase k carries nothing: it conducts if its terminal is at a rail or
// past it.
func (m *march) withResting(e *emfs, k int) piece {
	p, n := (k+1)%3, (k+2)%3
	if m.i[p] < 0 {
		p, n = n, p
	}
	signs := m.i
	if m.woken == k {
		signs[k] = m.wokenSign
		m.woken = -1
		return m.trioOf(e, signs)
	}
	rail := m.c.v + m.c.rb*m.i[p]
	if 3*math.Abs(e.sin[k]) > rail {
		signs[k] = e.sin[k]
		return m.trioOf(e, signs)
	}
	return m.c.newLoop(e, p, n, m.i[p])
}

// fromNothing is the piece when no current flows: the greatest line EMF starts it, or not. The sixth
// begins where the pulse from a to b would, so before the middle of that pulse a line EMF that rounding
// puts below the load is really at it or above.
func (m *march) fromNothing(e *emfs) piece {
	p, n := e.extremes()
	if m.c.v >= mayPulse && m.angle < sixth {
		first := m.c.newLoop(e, 0, 1, 0)
		f0 := max(first.main.f0, 0)
		if m.angle == m.start {
			f0 = 0
		}
		first.main = m.c.loops.mode(0, f0, first.main.a, first.main.b)
		return first
	}
	if e.sin[p]-e.sin[n] <= m.c.v {
		return piece{kind: idle}
	}
	rest := 3 - p - n
	if 3*math.Abs(e.sin[rest]) > m.c.v {
		var signs [3]float64
		signs[p], signs[n], signs[rest] = 1, -1, e.sin[rest]
		return m.trioOf(e, signs)
	}
	return m.c.newLoop(e, p, n, 0)
}

// finish carries currents and derivatives to the end of a piece and applies the event there.
func (m *march) finish(p *piece, event int) {
	t := newArc(p.span)
	main, mainDecay := p.main.at(t)
	var split jet
	splitDecay := 0.0
	if p.kind == trio {
		split, splitDecay = p.split.at(t)
	}
	m.carryCols(p, event, t, main, split, mainDecay, splitDecay)
	m.i = p.spread(main.value, split.value)
	switch {
	case event < 0:
	case p.kind == loop && event == 0:
		m.i = [3]float64{}
	case p.kind == loop:
		m.woken, m.wokenSign = p.rest, float64(3-2*event) // 1: upper, 2: lower
	default:
		off, on := p.back, p.rest
		if event == 1 {
			off, on = on, off
		}
		m.i[off], m.i[on] = 0, -m.i[p.lead]
	}
	if event >= 0 && p.kind == trio && main.value <= 0 {
		m.i = [3]float64{}
	}
}
