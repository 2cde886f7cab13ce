package charge

import (
	"math"
	"math/cmplx"
)

// starMode is one mode of the currents: a constant, two sines and an exponential, from the
// start of its piece.
type starMode struct {
	u          [3]float64 // its shape: the phase currents of one unit of it
	mu         [3]float64 // M·u/x: its share in a unit of each phase
	x, rho     float64
	lambda     float64
	constant   float64
	f1, f3     complex128 // its EMF: Im(f·e^(jnt))
	p1, p3     complex128 // the current of that EMF
	fading     float64
	dcPerUnit  float64
	starPerOne float64
}

// starPiece is a stretch with the same legs conducting.
type starPiece struct {
	c     *starCircuit
	sign  [4]float64 // the phases' rails and the star point's; 0 rests
	modes [3]starMode
	n     int
	e     [3]complex128 // EMF of each phase at the start, Im(e·e^(jt))
	e3    complex128
	span  float64
}

// newStarPiece is the piece in which the given legs conduct; ok is false where no current could flow in
// that way.
func (c *starCircuit) newStarPiece(angle float64, sign [4]float64, i [3]float64) (p starPiece, ok bool) {
	p = starPiece{c: c, sign: sign, e3: complex(c.third, 0) * cmplx.Exp(complex(0, 3*angle))}
	up, down := 0, 0
	for _, s := range sign {
		if s > 0 {
			up++
		} else if s < 0 {
			down++
		}
	}
	for k := range p.e {
		p.e[k] = cmplx.Exp(complex(0, angle-2*math.Pi/3*float64(k)))
	}
	if up == 0 && down == 0 {
		return p, true
	}
	if up == 0 || down == 0 {
		return p, false
	}
	if sign[3] == 0 {
		p.floating()
	} else {
		p.held()
	}
	for k := range p.n {
		p.modes[k].begin(&p, &i)
	}
	return p, true
}

// floating is the modes while the star point rests: currents that sum to zero.
func (p *starPiece) floating() {
	up, down := p.group(1), p.group(-1)
	lone, pair := up, down
	if len(up) > len(down) {
		lone, pair = down, up
	}
	var u [3]float64
	for _, k := range pair {
		u[k] = -1
	}
	u[lone[0]] = float64(len(pair))
	p.add(u)
	p.differences(pair)
}

// held is the modes while the star point conducts.
func (p *starPiece) held() {
	same, other := p.group(p.sign[3]), p.group(-p.sign[3])
	p.differences(same)
	p.differences(other)
	var a, o [3]float64
	for _, k := range same {
		a[k] = 1
	}
	for _, k := range other {
		o[k] = 1
	}
	if len(same) == 0 {
		p.add(o)
		return
	}
	w := [2]float64{1, 0}
	maa, mao, moo := p.product(&a, &a), p.product(&a, &o), p.product(&o, &o)
	kaa, kao, koo := p.losses(&a, &a), p.losses(&a, &o), p.losses(&o, &o)
	b, det := kaa*moo+koo*maa-2*kao*mao, maa*moo-mao*mao
	l := (b + math.Sqrt(max(0, b*b-4*det*(kaa*koo-kao*kao)))) / 2 / det
	r1, r2, r3 := kaa-l*maa, kao-l*mao, koo-l*moo
	if math.Abs(r1)+math.Abs(r2) > math.Abs(r3)+math.Abs(r2) {
		w = [2]float64{-r2, r1}
	} else if r3 != 0 || r2 != 0 {
		w = [2]float64{-r3, r2}
	}
	p.add(mixOf(&a, &o, w[0], w[1]))
	p.add(mixOf(&a, &o, -(w[0]*mao + w[1]*moo), w[0]*maa+w[1]*mao))
}

func mixOf(a, o *[3]float64, wa, wo float64) (u [3]float64) {
	for k := range u {
		u[k] = wa*a[k] + wo*o[k]
	}
	return u
}

// group is the conducting phases on a rail.
func (p *starPiece) group(rail float64) (list []int) {
	for k := range 3 {
		if p.sign[k] == rail && rail != 0 {
			list = append(list, k)
		}
	}
	return list
}

// differences is the modes within a rail.
func (p *starPiece) differences(list []int) {
	if len(list) >= 2 {
		var u [3]float64
		u[list[0]], u[list[1]] = 1, -1
		p.add(u)
	}
	if len(list) == 3 {
		p.add([3]float64{1, 1, -2})
	}
}

func (p *starPiece) q(k int) float64 {
	if p.sign[k] == 0 {
		return 0
	}
	return p.sign[k] - p.sign[3]
}

func total(u *[3]float64) float64 { return u[0] + u[1] + u[2] }

// dc is the direct current of phase currents.
func (p *starPiece) dc(u *[3]float64) float64 { return (p.q(0)*u[0] + p.q(1)*u[1] + p.q(2)*u[2]) / 2 }

func dot(a, b *[3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// product is aᵀ·M·b, losses aᵀ·K·b.
func (p *starPiece) product(a, b *[3]float64) float64 {
	return p.c.x*dot(a, b) + (p.c.x0-p.c.x)/3*total(a)*total(b)
}

func (p *starPiece) losses(a, b *[3]float64) float64 {
	return p.c.r*dot(a, b) + p.c.slope*total(a)*total(b) + p.c.rb*p.dc(a)*p.dc(b)
}

// add adds a mode, normalised.
func (p *starPiece) add(u [3]float64) {
	size := math.Sqrt(dot(&u, &u))
	for k := range u {
		u[k] /= size
	}
	m := &p.modes[p.n]
	p.n++
	m.u, m.x, m.rho = u, p.product(&u, &u), p.losses(&u, &u)
	m.lambda, m.dcPerUnit, m.starPerOne = m.rho/m.x, p.dc(&u), total(&u)
	for k := range u {
		if p.sign[k] != 0 {
			m.mu[k] = (p.c.x*u[k] + (p.c.x0-p.c.x)/3*m.starPerOne) / m.x
		}
	}
}

// begin starts a mode from the currents.
func (m *starMode) begin(p *starPiece, i *[3]float64) {
	for k, u := range m.u {
		m.f1 += complex(u, 0) * p.e[k]
	}
	m.f3 = complex(m.starPerOne, 0) * p.e3
	m.constant = -p.c.v * m.dcPerUnit / m.rho
	m.p1, m.p3 = m.f1/complex(m.rho, m.x), m.f3/complex(m.rho, 3*m.x)
	m.fading = dot(&m.mu, i) - m.constant - imag(m.p1) - imag(m.p3)
}

// starState is currents, their first and second slope, and the EMF with its slope.
type starState struct {
	i, first, second [3]float64
	e, eFirst        [3]float64
	e3, e3First      float64
	decay            [3]float64
}

// at is the state an angle into the piece.
func (p *starPiece) at(t float64) (s starState) {
	sin, cos := math.Sincos(t)
	one := complex(cos, sin)
	three := one * one * one
	for k, e := range p.e {
		z := e * one
		s.e[k], s.eFirst[k] = imag(z), real(z)
	}
	z3 := p.e3 * three
	s.e3, s.e3First = imag(z3), 3*real(z3)
	for a := range p.n {
		m := &p.modes[a]
		s.decay[a] = math.Exp(-m.lambda * t)
		h, p1, p3 := m.fading*s.decay[a], m.p1*one, m.p3*three
		value := m.constant + imag(p1) + imag(p3) + h
		first := real(p1) + 3*real(p3) - m.lambda*h
		second := -imag(p1) - 9*imag(p3) + m.lambda*m.lambda*h
		for k, u := range m.u {
			s.i[k] += u * value
			s.first[k] += u * first
			s.second[k] += u * second
		}
	}
	return s
}

// margins is each leg's distance from its next switching: a conducting one's current, a resting one's
// distance from the nearer rail; the eight are those of the legs from the upper and the lower rail, or
// the current twice. It is linear in its arguments.
func (p *starPiece) margins(i, first, e *[3]float64, e3, v float64) (upper, lower [4]float64) {
	w := v + p.c.rb*p.dc(i)
	star := -e3
	if p.sign[3] != 0 {
		star = p.sign[3]*w/2 - p.c.slope*total(i)
	} else {
		n, rails := 0.0, 0.0
		mean := 0.0
		for k := range 3 {
			if p.sign[k] != 0 {
				n, rails, mean = n+1, rails+p.sign[k], mean+e[k]
			}
		}
		if n > 0 {
			star += rails/n*w/2 - mean/n
		}
	}
	for k := range 4 {
		switch {
		case p.sign[k] != 0 && k < 3:
			upper[k] = p.sign[k] * i[k]
			lower[k] = upper[k]
		case p.sign[k] != 0:
			upper[k] = -p.sign[k] * total(i)
			lower[k] = upper[k]
		default:
			at := star
			if k < 3 {
				at += e[k] + e3 - (p.c.x0-p.c.x)/3*total(first)
			}
			upper[k], lower[k] = w/2-at, w/2+at
		}
	}
	return upper, lower
}
