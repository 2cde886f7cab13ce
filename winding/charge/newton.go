package charge

import "math"

// carryCols takes the derivatives of the currents by the two numbers at the start through a piece.
// Inside, each mode's own decays with it. At an event that itself moves by dt, the piece before lasts
// dt longer and the one after begins as much later: the derivative jumps by dt times the difference of
// the two slopes (the saltation of a switched system).
func (m *march) carryCols(p *piece, event int, t arc, main, split jet, mainDecay, splitDecay float64) {
	startSlopes := p.spread(p.main.slope0, p.split.slope0)
	endSlopes := p.spread(main.first, split.first)
	var h jet
	if event >= 0 {
		jets, _ := p.jetsOf(t, &main, &split)
		h = jets[event]
	}
	for col := range m.cols {
		d := m.cols[col]
		for k := range d {
			d[k] -= startSlopes[k] * m.carry[col]
		}
		dMain, dSplit := p.gather(&d)
		dMain, dSplit = dMain*mainDecay, dSplit*splitDecay
		d = p.spread(dMain, dSplit)
		m.carry[col] = 0
		if event >= 0 && h.first != 0 {
			dt := -p.eventShift(event, dMain, dSplit) / h.first
			for k := range d {
				d[k] += endSlopes[k] * dt
			}
			m.carry[col] = dt
		}
		m.cols[col] = d
	}
}

// eventShift is the derivative of an event function at a fixed angle.
func (p *piece) eventShift(event int, dMain, dSplit float64) float64 {
	switch {
	case p.kind == trio && event == 0:
		return (dMain + dSplit) / 2
	case p.kind == trio:
		return (dMain - dSplit) / 2
	case event == 0:
		return dMain
	}
	return p.rb * dMain
}

// turnBack maps currents at the end of a sixth to the phases at its start: 60° on, phase k sees the EMF
// of phase k+1 reversed.
func turnBack(i [3]float64) [3]float64 { return [3]float64{-i[2], -i[0], -i[1]} }

// mayPulse is the load, over the peak of a phase, from which pulses are to be expected: the minimum of
// the greatest line EMF.
const mayPulse = 1.5

// begin puts the start of the sixth where a pulse from a to b would begin.
func (m *march) begin() { m.start = sixth - math.Acos(min(m.c.v/math.Sqrt(3), 1)) }

// pulses marches from no current, and reports whether none is left after 60°, which is then the answer.
func (m *march) pulses() bool {
	m.begin()
	m.angle, m.i, m.cols = m.start, [3]float64{}, [2][3]float64{}
	m.marches++
	return m.run() == nil && m.i == [3]float64{}
}

// settle finds the state that repeats after 60°, for a circuit in which phases rest, and leaves its
// march in m. It starts where a pulse would begin: from no current while pulses are to be expected, and
// if the current then dies within the sixth that is already the answer; else from near the currents
// without inductance. From there it uses Newton's method on the currents at the start (one number if a
// phase rests there, two if none does), and plain marching wherever Newton's step would change which
// diodes conduct or brings no gain.
func (m *march) settle() error {
	m.begin()
	state := [3]float64{}
	if m.c.v < mayPulse {
		state = m.c.guess(m.start)
	}
	last, newton := math.Inf(1), true
	best := math.Inf(1)
	stalled := 0
	for range 4000 {
		m.angle, m.i = m.start, state
		basis := basisAt(state)
		m.cols = basis
		m.marches++
		if err := m.run(); err != nil {
			return err
		}
		next := turnBack(m.i)
		miss, size := distance(next, state)
		if miss <= 4e-15*size {
			return nil
		}
		if miss < best {
			best, stalled = miss, 0
		} else if stalled++; stalled > 6 && best <= 1e-11*size {
			return nil
		}
		newton = newton && miss < last/2 || !newton && miss < last
		last = miss
		if guess, ok := m.newtonStep(state, next, basis); ok && newton {
			next = guess
		}
		state = next
	}
	return errUnsettled
}

// guess is the currents at an angle as if reactance were resistance: exact with no inductance, and of
// the right size with any.
func (c *circuit) guess(angle float64) [3]float64 {
	e := emfsAt(angle)
	p, n := e.extremes()
	rest, z := 3-p-n, c.r+c.x
	dc := max(0, (e.sin[p]-e.sin[n]-c.v)/(2*z+c.rb))
	if 3*math.Abs(e.sin[rest]) <= c.v+c.rb*dc {
		pair := piece{kind: loop, lead: p, back: n}
		return pair.spread(dc, 0)
	}
	trio := piece{kind: trio, lead: p, back: n, rest: rest, sign: 1}
	if e.sin[rest] > 0 {
		trio.lead, trio.back, trio.sign = n, p, -1
	}
	main := (trio.sign*e.sin[trio.lead] - 2*c.v/3) / (z + 2*c.rb/3)
	split := -trio.sign * (e.sin[trio.back] - e.sin[rest]) / z
	if main <= 0 || math.Abs(split) >= main {
		return [3]float64{}
	}
	return trio.spread(main, split)
}

// distance is the largest difference between two states, and their largest size.
func distance(a, b [3]float64) (miss, size float64) {
	for k := range a {
		miss = max(miss, math.Abs(a[k]-b[k]))
		size = max(size, math.Abs(a[k]), math.Abs(b[k]))
	}
	return miss, size
}

// basisAt is the two directions in which a state can move: the loop's own if a phase rests, else any
// two.
func basisAt(state [3]float64) (cols [2][3]float64) {
	for k, i := range state {
		if i == 0 {
			x, y := (k+1)%3, (k+2)%3
			cols[0][x], cols[0][y] = 1, -1
			return cols
		}
	}
	return [2][3]float64{{1, 0, -1}, {0, 1, -1}}
}

// newtonStep solves the linearisation of state = march(state).
func (m *march) newtonStep(state, next [3]float64, basis [2][3]float64) ([3]float64, bool) {
	if !sameSigns(state, next) || state == ([3]float64{}) {
		return next, false
	}
	j0, j1 := turnBack(m.cols[0]), turnBack(m.cols[1])
	var r, d [3]float64
	for k := range r {
		r[k] = next[k] - state[k]
	}
	if basis[1] == ([3]float64{}) {
		k := 0
		for basis[0][k] != 1 {
			k++
		}
		step := r[k] / (1 - j0[k])
		d[k], d[(k+1)%3] = step, -step
	} else {
		a, b, c, e := 1-j0[0], -j1[0], -j0[1], 1-j1[1]
		det := a*e - b*c
		d[0], d[1] = (r[0]*e-b*r[1])/det, (a*r[1]-c*r[0])/det
		d[2] = -d[0] - d[1]
	}
	var guess [3]float64
	for k := range guess {
		guess[k] = state[k] + d[k]
		if math.IsNaN(guess[k]) || math.IsInf(guess[k], 0) {
			return next, false
		}
	}
	return guess, sameSigns(guess, next)
}

// sameSigns reports whether the same diodes conduct in two states.
func sameSigns(a, b [3]float64) bool {
	for k := range a {
		if (a[k] > 0) != (b[k] > 0) || (a[k] < 0) != (b[k] < 0) {
			return false
		}
	}
	return true
}
