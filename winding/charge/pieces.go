package charge

import "math"

// Pieces in closed form
//
// Between events every current of the circuit is made of modes, each a current i with
//
//	x·di/dt + ρ·i = f(t),   f(t) = f0 + a·sin t - b·(1 - cos t)
//
// t being an angle from the start of the piece. With λ = ρ/x the answer is
//
//	i(t) = i(0)·exp(-λt) + (f0·E(t) + a·S(t) - b·C(t))/x
//
// where E, S, C are the responses from rest to 1, sin t and 1 - cos t. Written in sines and
// exponentials they are differences of nearly equal numbers when the piece is short, as it is just
// above cut-in: i is then of order t³ and all digits are lost. So they are composed of remainders that
// each start at their own leading power of t:
//
//	c2 = 1 - cos t     c3 = t - sin t     c4 = t²/2 - (1 - cos t)
//	p2 = exp(-λt) - 1 + λt                p3 = (λt)²/2 - p2
//	E = (λt - p2)/λ    S = (c2 + p2 - λ·c3)/(1 + λ²)    C = (p3/λ + c3 - λ·c4)/(1 + λ²)
//
// which lose nothing down to t = 0, and hold for λ = 0 (no resistance) as they stand. The remainders
// come from their series in short pieces, which costs less than a sine, and from the library's sine and
// exponential in long ones.

// arc holds the remainders of sine and cosine at an angle.
type arc struct {
	t          float64
	c2, c3, c4 float64
}

// newArc is an arc of t radians. The series are summed in pairs, and pairs of pairs, which a processor
// does in parallel; a plain sum would wait for each term. Coefficients are 1/n!, exact to rounding.
func newArc(t float64) arc {
	if t > 1.1 {
		sin, cos := math.Sincos(t)
		return arc{t, 1 - cos, t - sin, t*t/2 - (1 - cos)}
	}
	u := t * t
	w := u * u
	c3 := t * u * ((1./6 - u*(1./120) + w*(1./5040-u*(1./362880))) +
		w*w*((1./39916800-u*(1./6227020800))+w*(1./1307674368000-u*(1./355687428096000))))
	c4 := w * ((1./24 - u*(1./720) + w*(1./40320-u*(1./3628800))) +
		w*w*((1./479001600-u*(1./87178291200))+w*(1./20922789888000-u*(1./6402373705728000))))
	return arc{t, u/2 - c4, c3, c4}
}

func (a arc) sin() float64 { return a.t - a.c3 }
func (a arc) cos() float64 { return 1 - a.c2 }

// remainders gives exp(-x), p2/x and p3/x, each to full relative precision, at x ≥ 0.
func remainders(x float64) (decay, q2, q3 float64) {
	if x > 1 {
		decay = math.Exp(-x)
		p2 := decay - 1 + x
		return decay, p2 / x, x/2 - p2/x
	}
	u := x * x
	w := u * u
	q3 = u * ((1./6 - x*(1./24) + u*(1./120-x*(1./720))) +
		w*((1./5040-x*(1./40320))+u*(1./362880-x*(1./3628800))) +
		w*w*((1./39916800-x*(1./479001600))+u*(1./6227020800-x*(1./87178291200))+
			w*((1./1307674368000-x*(1./20922789888000))+u*(1./355687428096000))))
	q2 = x/2 - q3
	return 1 - x + x*q2, q2, q3
}

// rate is the decay and gain of currents of one kind, the same for every piece of a circuit.
type rate struct {
	lambda, perX float64 // ρ/x and 1/x
	norm         float64 // 1/(1 + λ²)
}

func newRate(rho, x float64) rate {
	r := rate{lambda: rho / x, perX: 1 / x}
	r.norm = 1 / (1 + r.lambda*r.lambda)
	return r
}

// mode is one current through a piece.
type mode struct {
	rate
	start    float64 // i at the start
	f0, a, b float64
	slope0   float64 // di/dt at the start
	// third and thirdDecaying bound the third derivative, once bound was called: third +
	// thirdDecaying·exp(-λt).
	third, thirdDecaying float64
}

func newMode(rho, x, start, f0, a, b float64) mode { return newRate(rho, x).mode(start, f0, a, b) }

func (r rate) mode(start, f0, a, b float64) mode {
	return mode{rate: r, start: start, f0: f0, a: a, b: b, slope0: f0*r.perX - r.lambda*start}
}

// bound computes the bound on the third derivative, which only a search for events needs.
func (m *mode) bound() {
	// The decaying part of di/dt is what the steady sinusoid's slope does not account for.
	decaying := math.Abs((m.lambda*m.a+m.b)*m.norm*m.perX - m.slope0)
	m.third = math.Sqrt((m.a*m.a+m.b*m.b)*m.norm) * m.perX
	m.thirdDecaying = decaying * m.lambda * m.lambda
}

// jet is a function's value and first two derivatives at an angle, and a bound on its
// third derivative from there on.
type jet struct {
	value, first, second, third float64
}

// respond gives exp(-λt), E, S and C.
func (m *mode) respond(t arc) (decay, e, s, c float64) {
	x := m.lambda * t.t
	decay, q2, q3 := remainders(x)
	if x > 1 {
		e = (1 - decay) / m.lambda
	} else {
		e = t.t * (1 - q2)
	}
	s = (t.c2 + x*q2 - m.lambda*t.c3) * m.norm
	c = (t.t*q3 + t.c3 - m.lambda*t.c4) * m.norm
	return decay, e, s, c
}

// at gives the current and its derivatives, and exp(-λt). The derivatives follow from
// E' = exp(-λt), S' = E - C, C' = S.
func (m *mode) at(t arc) (j jet, decay float64) {
	decay, e, s, c := m.respond(t)
	k := e - c
	j.value = m.start*decay + (m.f0*e+m.a*s-m.b*c)*m.perX
	j.first = m.slope0*decay + (m.a*k-m.b*s)*m.perX
	j.second = -m.lambda*m.slope0*decay + (m.a*(decay-s)-m.b*k)*m.perX
	j.third = m.third + m.thirdDecaying*decay
	return j, decay
}

// atStart is at for angle zero.
func (m *mode) atStart() jet {
	return jet{m.start, m.slope0, m.a*m.perX - m.lambda*m.slope0, m.third + m.thirdDecaying}
}

// value gives the current alone.
func (m *mode) value(t arc) float64 {
	i, _ := m.carried(t)
	return i
}

// carried gives the current, and exp(-λt).
func (m *mode) carried(t arc) (i, decay float64) {
	decay, e, s, c := m.respond(t)
	return m.start*decay + (m.f0*e+m.a*s-m.b*c)*m.perX, decay
}

// drive is the EMF of the mode, the sinusoid in f.
func (m *mode) drive(t arc) float64 { return m.a*t.sin() + m.b*t.cos() }
