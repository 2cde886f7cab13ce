package charge

import "math"

// continuous solves a circuit in which every phase conducts all the time, in closed form, and reports
// whether this is such a circuit. It leaves the one piece of the sixth in m.
//
// Take the sixth in which phase a carries current main alone against b and c. It begins as the current
// of c reverses, at angle θ, so all of main then flows in b; it ends as b's reverses, when all flows in
// c, and by symmetry main is back at its value. With d = exp(-λ·60°) for each mode and E, S, C the
// responses after 60°:
//
//	main:   I·(1 - d₁) = (sin θ·(E₁ - C₁) + cos θ·S₁ - ⅔v·E₁)/x
//	split:  I·(1 + d₂) = (√3·cos θ·(C₂ - E₂) + √3·sin θ·S₂)/x
//
// Eliminating I leaves one sinusoid of θ equal to a constant. Of its two angles the one with the larger
// current is the answer, provided all diodes agree: no current reverses within the sixth, and the phase
// that has just reached zero is driven past the rail at once.
func (m *march) continuous() bool {
	c := m.c
	sixthArc := newArc(sixth)
	one, two := c.trios.mode(0, 0, 0, 0), c.splits.mode(0, 0, 0, 0)
	d1, e1, s1, c1 := one.respond(sixthArc)
	d2, e2, s2, c2 := two.respond(sixthArc)
	rt3 := math.Sqrt(3)
	ofSin := (1+d2)*(e1-c1) - rt3*(1-d1)*s2
	ofCos := (1+d2)*s1 + rt3*(1-d1)*(e2-c2)
	size := math.Hypot(ofSin, ofCos)
	want := (1 + d2) * 2 * c.v / 3 * e1
	if want > size {
		return false
	}
	lean, rise := math.Atan2(ofCos, ofSin), math.Asin(want/size)
	for _, theta := range [...]float64{math.Pi - rise - lean, rise - lean} {
		sin, cos := math.Sincos(theta)
		i := rt3 * (sin*s2 - cos*(e2-c2)) / ((1 + d2) * c.x)
		if i > 0 && m.agrees(theta, i) {
			return true
		}
	}
	return false
}

// agrees checks the diodes over a sixth that begins at theta with a carrying i against b.
func (m *march) agrees(theta, i float64) bool {
	e := emfsAt(theta)
	if -3*e.sin[2] <= m.c.v+m.c.rb*i {
		return false
	}
	p := m.c.newTrio(&e, 0, 1, &[3]float64{i, -i, 0})
	span, event := p.eventNear(sixth, sixth, 0)
	if event == -2 || sixth-span > 1e-9 {
		return false
	}
	p.span = sixth
	m.pieces[0], m.n = p, 1
	return true
}
