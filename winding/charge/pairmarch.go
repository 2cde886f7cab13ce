package charge

import "math"

const (
	// mostPairPieces bounds the pieces of a march of two phases; the usual number is 1 to 3, at half wave
	// 4 to 6.
	mostPairPieces = 16
	// pairWithin is the tolerance on the state, relative to the larger current.
	pairWithin = 1e-13
)

// pairMarch carries the currents of two phases over a quarter of a cycle, at half wave over a whole
// one, from where the first one's EMF rises past the load.
type pairMarch struct {
	c        *circuit
	oneWay   bool
	from, i  [2]float64
	cols     [2][2]float64 // of i, by the two currents at the start
	on       [2]float64    // the direction in which each conducts, 0 if it rests
	sin, cos float64       // of the angle of the first one's EMF
	gone     float64       // the angle since the start
	pieces   [mostPairPieces]piece
	n        int
}

// emf is both EMFs and their slopes.
func (m *pairMarch) emf() (e, d [2]float64) {
	return [2]float64{m.sin, -m.cos}, [2]float64{m.cos, m.sin}
}

// rails is the voltage against phase k at the other's current.
func (m *pairMarch) rails(k int) float64 { return m.c.v + m.c.rb*math.Abs(m.i[1-k]) }

// wakes is the direction in which phase k, at zero current, is driven through its bridge; 0 where it is
// not.
func (m *pairMarch) wakes(k int) float64 {
	e, _ := m.emf()
	switch w := m.rails(k); {
	case e[k] >= w:
		return 1
	case e[k] <= -w && !m.oneWay:
		return -1
	}
	return 0
}

// begin sets the march to its start.
func (m *pairMarch) begin(from [2]float64) {
	m.from, m.i, m.n, m.gone = from, from, 0, 0
	m.sin, m.cos = m.c.v, math.Sqrt((1-m.c.v)*(1+m.c.v))
	m.cols = [2][2]float64{{1, 0}, {0, 1}}
	for k, i := range from {
		if m.on[k] = math.Copysign(1, i); i == 0 {
			m.on[k] = m.wakes(k)
		}
	}
}

// period is the angle of a march.
func (m *pairMarch) period() float64 {
	if m.oneWay {
		return 2 * math.Pi
	}
	return math.Pi / 2
}

// run marches from a state; false where there are more pieces than fit.
func (m *pairMarch) run(from [2]float64) bool {
	m.begin(from)
	for left := m.period(); left > 0; {
		if m.n == len(m.pieces) {
			return false
		}
		p := &m.pieces[m.n]
		m.n++
		m.next(p)
		if p.kind == idle {
			left = m.rest(p, left)
			continue
		}
		span, event := p.firstEvent(left)
		if event == -2 {
			return false
		}
		p.span = span
		m.finish(p)
		left -= span
		if event < 0 {
			break
		}
		m.switchOver(p, event)
	}
	return true
}

// next is the piece that the present state begins.
func (m *pairMarch) next(p *piece) {
	c, on := m.c, &m.on
	e, d := m.emf()
	switch {
	case on[0] != 0 && on[1] != 0:
		a, b := on[0]*m.i[0], on[1]*m.i[1]
		ea, eb, da, db := on[0]*e[0], on[1]*e[1], on[0]*d[0], on[1]*d[1]
		*p = piece{
			kind: duo, rest: 1,
			main:  c.trios.mode(a+b, ea+eb-2*c.v, da+db, ea+eb),
			split: c.splits.mode(a-b, ea-eb, da-db, ea-eb),
		}
	case on[0] != 0 || on[1] != 0:
		k := 0
		if on[0] == 0 {
			k = 1
		}
		s := on[k]
		*p = piece{
			kind: lone, lead: k, rest: 1 - k, sign: s,
			main:    c.loops.mode(s*m.i[k], s*e[k]-c.v, s*d[k], s*e[k]),
			restSin: e[1-k], restCos: d[1-k], lever: 1, oneWay: m.oneWay, v: c.v, rb: c.rb,
		}
		if m.gone == 0 && m.i == ([2]float64{}) {
			p.main = c.loops.mode(0, 0, d[0], c.v) // its EMF has just reached the load
		}
	default:
		*p = piece{kind: idle}
	}
}

// rest advances with nothing flowing, and returns what is left of the angle: to where the second phase
// at half wave begins, else to the end.
func (m *pairMarch) rest(p *piece, left float64) float64 {
	m.i, m.cols, p.span = [2]float64{}, [2][2]float64{}, left
	if quarter := math.Pi / 2; m.oneWay && m.gone < quarter {
		p.span, m.gone, m.on = quarter-m.gone, quarter, [2]float64{0, 1}
		m.sin, m.cos = math.Sqrt((1-m.c.v)*(1+m.c.v)), -m.c.v
	}
	return left - p.span
}

// finish carries currents, their derivatives and the EMFs to the end of a piece.
func (m *pairMarch) finish(p *piece) {
	t := newArc(p.span)
	main, decay := p.main.carried(t)
	if p.kind == lone {
		k := p.lead
		m.i[k], m.i[1-k] = m.on[k]*max(main, 0), 0
		for col := range m.cols {
			m.cols[col][k] *= decay
			m.cols[col][1-k] = 0
		}
	} else {
		split, fading := p.split.carried(t)
		m.i[0], m.i[1] = m.on[0]*max((main+split)/2, 0), m.on[1]*max((main-split)/2, 0)
		for col := range m.cols {
			a, b := m.on[0]*m.cols[col][0], m.on[1]*m.cols[col][1]
			sum, diff := (a+b)*decay, (a-b)*fading
			m.cols[col] = [2]float64{m.on[0] * (sum + diff) / 2, m.on[1] * (sum - diff) / 2}
		}
	}
	sin, cos := t.sin(), t.cos()
	m.sin, m.cos = m.sin*cos+m.cos*sin, m.cos*cos-m.sin*sin
	m.gone += p.span
}

// switchOver applies the event at the end of a piece.
func (m *pairMarch) switchOver(p *piece, event int) {
	k := event
	if p.kind == lone {
		k = p.lead
		if event > 0 {
			m.on[p.rest] = float64(3 - 2*event) // 1: upper, 2: lower
			return
		}
	}
	m.i[k] = 0
	was, ratio := m.on[k], 0.0
	if m.on[k] = m.wakes(k); m.on[k] == was { // it only touches zero
		m.on[k] = 0
	}
	if m.on[k] != 0 {
		// Reversed: its slope is (u - w)/(u + w) of what it was, u its EMF's size and w the rails.
		e, _ := m.emf()
		u, w := math.Abs(e[k]), m.rails(k)
		ratio = (u - w) / (u + w)
	}
	for col := range m.cols {
		m.cols[col][k] *= ratio
	}
	if p.kind == lone && m.on[k] == 0 {
		m.on[p.rest] = m.wakes(p.rest)
	}
}

// turned maps the state at the end of the march to one at its start.
func (m *pairMarch) turned(i [2]float64) [2]float64 {
	if m.oneWay {
		return i
	}
	return [2]float64{i[1], -i[0]}
}

// guess is sines behind the impedance, less what the load takes.
func (m *pairMarch) guess() [2]float64 {
	c := m.c
	rho := c.r + c.rb
	size := (1 - c.v) / (rho*rho + c.x*c.x)
	cos := math.Sqrt((1 - c.v) * (1 + c.v))
	i := [2]float64{size * (rho*c.v - c.x*cos), -size * (rho*cos + c.x*c.v)}
	if m.oneWay {
		i = [2]float64{max(i[0], 0), max(i[1], 0)}
	}
	return i
}

// settle finds the state that repeats, by Newton's method, and by plain marching where that brings no
// gain.
func (m *pairMarch) settle(state [2]float64) error {
	best, stalled, wait := math.Inf(1), 0, 0
	usual := 0.1 * (1 - m.c.v) / (m.c.r + m.c.rb + m.c.x) // the current at the start may be negligible beside it
	for range 4000 {
		if !m.run(state) {
			return errUnsettled
		}
		next := m.turned(m.i)
		off := [2]float64{next[0] - state[0], next[1] - state[1]}
		miss, size := largest(off), max(largest(next), largest(state), usual)
		step, ok := m.newton(off)
		if miss <= 4e-15*size || ok && miss <= 1e-9*size && largest(step) <= pairWithin*size {
			return nil
		}
		if miss < best/2 {
			best, stalled = miss, 0
		} else if stalled++; stalled > 6 && best <= 1e-11*size {
			return nil
		} else if wait == 0 {
			wait = 3
		}
		if wait > 0 {
			wait, ok = wait-1, false
		}
		if !ok {
			state = next
			continue
		}
		for k := range state {
			if state[k] += step[k]; m.oneWay {
				state[k] = max(state[k], 0)
			}
		}
	}
	return errUnsettled
}

func largest(v [2]float64) float64 { return max(math.Abs(v[0]), math.Abs(v[1])) }

// newton is the step that closes the linearised march.
func (m *pairMarch) newton(off [2]float64) (step [2]float64, ok bool) {
	j0, j1 := m.turned(m.cols[0]), m.turned(m.cols[1])
	a, b, c, d := 1-j0[0], -j1[0], -j0[1], 1-j1[1]
	det := a*d - b*c
	step = [2]float64{(off[0]*d - b*off[1]) / det, (a*off[1] - c*off[0]) / det}
	sum := step[0] + step[1]
	return step, !math.IsNaN(sum) && !math.IsInf(sum, 0)
}

// sums are the means over the march, and the mode.
func (m *pairMarch) sums() (sums, Mode) {
	var sum sums
	mode := Continuous
	for k := range m.n {
		p := &m.pieces[k]
		p.integrate(false, &sum)
		if p.kind != duo {
			mode = Mixed
		}
	}
	return sum.over(m.period()), mode
}
