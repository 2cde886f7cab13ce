package charge

import "math"

// sums are means over a cycle of the circuit in its own units.
type sums struct {
	amps, square, phases, input float64 // i, i², Σ i_k², Σ e_k·i_k
}

// gauss is a Gauss-Legendre rule on [-1, 1]: the nodes on one side and their weights.
type gauss struct{ at, by []float64 }

// The rules of six, eight and ten points (Abramowitz & Stegun, Handbook of Mathematical Functions,
// table 25.4).
var (
	sixPoints = gauss{
		[]float64{0.238619186083197, 0.661209386466265, 0.932469514203152},
		[]float64{0.467913934572691, 0.360761573048139, 0.171324492379170},
	}
	eightPoints = gauss{
		[]float64{0.183434642495650, 0.525532409916329, 0.796666477413627, 0.960289856497536},
		[]float64{0.362683783378362, 0.313706645877887, 0.222381034453374, 0.101228536290376},
	}
	tenPoints = gauss{
		[]float64{0.148874338981631, 0.433395394129247, 0.679409568299024, 0.865063366688985, 0.973906528517172},
		[]float64{0.295524224714753, 0.269266719309996, 0.219086362515982, 0.149451349150581, 0.066671344308688},
	}
)

// rule is the one that integrates a panel to rounding. The integrand is made of sines of twice the
// angle and of exponentials of twice the fastest rate; n points leave the fraction (n!)⁴·s²ⁿ/((2n +
// 1)·(2n)!³) of such a term (A&S 25.4.30), s being rate times width: 2e-16 with six points at s = 1,
// 1e-16 with eight at 2.6. A pulse, whose current is a small difference of large terms, takes ten at
// any width.
func rule(width, fast float64, pulse bool) *gauss {
	switch s := 2 * width * max(1, fast); {
	case pulse || s > 2.6:
		return &tenPoints
	case s > 1:
		return &eightPoints
	}
	return &sixPoints
}

// integrate adds the piece up. Currents and EMF are known in closed form at every angle, and so are the
// integrals of their products (integrals.go), but these lose digits where a current is a small
// difference of large terms, as in a pulse. There the products are integrated by Gauss's rule, exact
// here to rounding. Where a mode decays fast the panels start at a few of its time constants and widen
// from there.
func (p *piece) integrate(pulse bool, into *sums) {
	if p.kind == idle || !pulse && p.closed(into) {
		return
	}
	slow, fast := p.main.lambda, p.main.lambda
	if p.twofold() {
		slow, fast = min(slow, p.split.lambda), max(fast, p.split.lambda)
	}
	for from := 0.0; from < p.span; {
		to := from + panel(from, slow, fast)
		if to > 0.99*p.span {
			to = p.span
		}
		p.addPanel(from, to, rule(to-from, fast, pulse), into)
		from = to
	}
}

// panel is the width of the next panel: a few time constants of the fastest mode that has not decayed
// yet, and never over 60°.
func panel(from, slow, fast float64) float64 {
	const alive = 40 // exp(-40) is below rounding
	width := float64(sixth)
	for _, lambda := range [...]float64{fast, slow} {
		if lambda*from < alive {
			return min(width, max(3*from, 3/lambda))
		}
	}
	return width
}

func (p *piece) addPanel(from, to float64, by *gauss, into *sums) {
	middle, half := (from+to)/2, (to-from)/2
	for k, at := range by.at {
		w := by.by[k] * half
		p.addAt(newArc(middle-half*at), w, into)
		p.addAt(newArc(middle+half*at), w, into)
	}
}

// addAt adds one angle. In a trio Σ e·i reduces to the two modes, since EMFs and currents each sum to
// zero: 3/2 of the lone phase's own plus 1/2 of the difference's. In a duo it is half of the sum's plus
// half of the difference's.
func (p *piece) addAt(t arc, w float64, into *sums) {
	i := p.main.value(t)
	g := p.main.drive(t)
	into.amps += w * i
	into.square += w * i * i
	switch p.kind {
	case alone, lone:
		into.phases += w * i * i
		into.input += w * g * i
	case loop:
		into.phases += w * 2 * i * i
		into.input += w * 2 * g * i
	case trio:
		d := p.split.value(t)
		into.phases += w * (1.5*i*i + 0.5*d*d)
		into.input += w * (1.5*g*i + 0.5*p.split.drive(t)*d)
	case duo:
		d := p.split.value(t)
		into.phases += w * 0.5 * (i*i + d*d)
		into.input += w * 0.5 * (g*i + p.split.drive(t)*d)
	}
}

// over divides by the angle that the sums were taken over.
func (s sums) over(angle float64) sums {
	return sums{s.amps / angle, s.square / angle, s.phases / angle, s.input / angle}
}

// point converts sums to amps and watts.
func (s sums) point(c *circuit, src Source, l Load) Point {
	amps := c.volts / c.ohms
	p := Point{
		DCAmps:    s.amps * amps,
		DCAmpsRMS: math.Sqrt(s.square) * amps,
	}
	if p.LineAmpsRMS = p.DCAmpsRMS; src.Phases > 1 {
		p.LineAmpsRMS = math.Sqrt(s.phases/float64(src.Phases)) * amps
	}
	if l.Rectifier == Doubler { // the capacitors smooth, and each takes one half wave
		p.DCAmps /= 2
		p.DCAmpsRMS = p.DCAmps
	}
	p.PhaseAmpsRMS = p.LineAmpsRMS
	if src.Phases == 3 && src.Delta {
		p.PhaseAmpsRMS /= math.Sqrt(3)
	}
	n := float64(src.Phases)
	p.DCVolts = l.Volts + l.Ohms*p.DCAmps
	p.BatteryWatts = l.Volts * p.DCAmps
	p.Watts = p.BatteryWatts + l.Ohms*p.DCAmpsRMS*p.DCAmpsRMS
	p.CopperWatts = n * src.Ohms * p.PhaseAmpsRMS * p.PhaseAmpsRMS
	p.DiodeWatts = l.Rectifier.InLoop()*l.DiodeVolts*p.DCAmps + n*l.Rectifier.inPath(src.Phases)*l.DiodeOhms*p.LineAmpsRMS*p.LineAmpsRMS
	p.InputWatts = s.input * c.volts * amps
	return p
}
