package charge

// Integrals in closed form
//
// A mode (pieces.go) is a constant, a sinusoid and a decaying part,
//
//	i(t) = P + Q·cos t + R·sin t + D·exp(-λt)
//
//	P = (f0 - b)/ρ   Q = (ρ·b - x·a)/(ρ² + x²)   R = (ρ·a + x·b)/(ρ² + x²)   D = i(0) - P - Q
//
// so i, i² and its product with the EMF a·sin t + b·cos t have antiderivatives made of the same
// functions and of those at twice their rates. With little resistance P and D are large and nearly
// cancel: i² loses as many digits as the squares of the parts exceed it. The closed forms are used
// while that leaves twelve.

// mostLost is the largest ratio of the squares of a mode's parts to the integral of its square: 12
// digits are left of 16 less what ten roundings take.
const mostLost = 1000

// integral is the integrals of i, i² and EMF times i over a piece.
type integral struct{ amps, square, work float64 }

// over integrates the mode up to an angle; false where too many digits would be lost.
func (m *mode) over(t arc) (sum integral, ok bool) {
	decay, q2, _ := remainders(m.lambda * t.t)
	size := m.norm * m.perX
	p := (m.f0 - m.b) * m.perX / m.lambda
	q, r := (m.lambda*m.b-m.a)*size, (m.lambda*m.a+m.b)*size
	d := m.start - p - q

	sin, cos, angle := t.sin(), t.cos(), t.t
	dying := angle * (1 - q2) // (1 - exp(-λt))/λ, for vanishing λ too
	twice := dying * (1 + decay) / 2
	dyingCos := (m.lambda + decay*(sin-m.lambda*cos)) * m.norm
	dyingSin := (1 - decay*(cos+m.lambda*sin)) * m.norm
	cosCos, sinSin, sinCos := (angle+sin*cos)/2, (angle-sin*cos)/2, sin*sin/2

	sum.amps = p*angle + q*sin + r*t.c2 + d*dying
	sum.square = p*p*angle + q*q*cosCos + r*r*sinSin + d*d*twice +
		2*(p*(q*sin+r*t.c2+d*dying)+q*(r*sinCos+d*dyingCos)+r*d*dyingSin)
	sum.work = m.a*(p*t.c2+q*sinCos+r*sinSin+d*dyingSin) + m.b*(p*sin+q*cosCos+r*sinCos+d*dyingCos)
	return sum, (p*p+q*q+r*r)*angle+d*d*twice < mostLost*sum.square
}

// closed adds the piece up in closed form, and reports whether it did.
func (p *piece) closed(into *sums) bool {
	t := newArc(p.span)
	main, ok := p.main.over(t)
	var split integral
	if ok && p.twofold() {
		split, ok = p.split.over(t)
	}
	if !ok {
		return false
	}
	var phases, input float64
	switch p.kind {
	case loop:
		phases, input = 2*main.square, 2*main.work
	case trio:
		phases, input = 1.5*main.square+0.5*split.square, 1.5*main.work+0.5*split.work
	case lone:
		phases, input = main.square, main.work
	case duo:
		phases, input = 0.5*(main.square+split.square), 0.5*(main.work+split.work)
	default:
		return false
	}
	into.amps += main.amps
	into.square += main.square
	into.phases += phases
	into.input += input
	return true
}
