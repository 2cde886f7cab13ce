package charge

import (
	"math"
	"math/cmplx"
)

// # Means over a sixth of a cycle
//
// Amps and watts are means over 60°. In each piece every current is a sum of exponentials, so its mean,
// its square and its product with an EMF are integrals of exponentials: exact, nothing is sampled.

// part is a term of a quantity in a piece: Re(a·e^(p·t)).
type part struct{ a, p complex128 }

// over is ∫e^(p·t) from 0 to an angle.
func over(p complex128, t float64) complex128 {
	z := p * complex(t, 0)
	if cmplx.Abs(z) < 1e-2 {
		return complex(t, 0) * (1 + z/2*(1+z/3*(1+z/4*(1+z/5*(1+z/6)))))
	}
	return (cmplx.Exp(z) - 1) / p
}

// both is ∫ of the product of two quantities.
func both(a, b []part, t float64) float64 {
	sum := 0.0
	for _, x := range a {
		for _, y := range b {
			sum += real(x.a*y.a*over(x.p+y.p, t)+x.a*cmplx.Conj(y.a)*over(x.p+cmplx.Conj(y.p), t)) / 2
		}
	}
	return sum
}

// point converts the march to amps and watts.
func (m *starMarch) point(s StarSource, l Load) Point {
	var dc, square, phases, star, input float64
	mode := Continuous
	for n := range m.pieces {
		p := &m.pieces[n]
		mode = p.mode(mode)
		for a := range p.n {
			x := &p.modes[a]
			xs, emf := x.parts()
			for _, part := range xs {
				dc += x.dcPerUnit * real(part.a*over(part.p, p.span))
			}
			input += both(xs[:], emf[:], p.span)
			for b := range p.n {
				y := &p.modes[b]
				ys, _ := y.parts()
				j := both(xs[:], ys[:], p.span)
				square += x.dcPerUnit * y.dcPerUnit * j
				phases += dot(&x.u, &y.u) * j
				star += x.starPerOne * y.starPerOne * j
			}
		}
	}
	amps := m.c.volts / m.c.ohms
	sum := sums{dc, square, phases, input}.over(sixth)
	out := sum.point(&m.c.circuit, s.Source, l)
	out.StarAmpsRMS = math.Sqrt(max(0, star/sixth)) * amps
	out.DiodeWatts += l.DiodeOhms * out.StarAmpsRMS * out.StarAmpsRMS
	out.Mode = mode
	return out
}

// parts is the current of a mode and the EMF in it.
func (m *starMode) parts() (amps [4]part, emf [2]part) {
	return [4]part{{complex(m.constant, 0), 0}, {-1i * m.p1, 1i}, {-1i * m.p3, 3i}, {complex(m.fading, 0), complex(-m.lambda, 0)}},
		[2]part{{-1i * m.f1, 1i}, {-1i * m.f3, 3i}}
}

// mode is how current flows, with this piece.
func (p *starPiece) mode(so Mode) Mode {
	switch {
	case p.idle() || so == Pulses:
		return Pulses
	case p.sign[0] == 0 || p.sign[1] == 0 || p.sign[2] == 0:
		return Mixed
	}
	return so
}
