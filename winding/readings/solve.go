package readings

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// # A machine from its readings
//
// There are three unknowns: k, the EMF of a phase per rpm, L, its inductance, and a, how the inductance
// changes with current (model.go). Every reading is one equation in them. Spin-up volts determine k
// alone; the short circuit k/L; amps just above cut-in k and little else; amps far above it k/L again;
// and amps between, a. None is turned into an inductance by a formula of its own: the model is asked
// what each would have shown,
//
//	sum of ((shown - read)/σ)² + ((a - usual)/doubt)²  →  least
//
// with σ from each meter's ± and, behind the bridge, from speed, battery volts and diode drop, which
// count by the slope of the amps in the EMF there (some 5 at 1.25 times cut-in). So a reading is
// weighted by its information, no route is preferred by its name, and two facts are enough: a then has
// its usual value, and its uncertainty is in the ±. A fourth unknown does not pay.
//
// The method is Levenberg-Marquardt: the Gauss-Newton step with slopes by differences, damped until the
// sum falls (least.go; gonum's optimize has nothing for sums of squares, nor bounds, and its linear
// algebra does the rest). k is kept where every loaded reading has some current, since below that
// nothing has a slope; a between -2.5 and 0.8. It starts from the spin-up volts or, without, from
// several cut-in speeds below the slowest load, with the best of twenty inductances. The weights depend
// on slopes and so on the solution; three rounds settle them.
//
// The ±. The inverse of JᵀJ at the solution is the covariance of the three; where there are more facts
// than unknowns and they disagree by more than their σ, it is widened accordingly. For a predicted
// current the error of the lumped model itself is added: see modelDoubt.
//
// Cost: 5 to 30 ms, nearly all of it in some thousand solutions of the bridge.
//
// Accuracy on simulated machines that saturate (testdata/readings: 140 of seven families, and 70 with
// another law of saturation, which were used to choose modelDoubt only), with exact readings and from
// 1.5 times cut-in up, at 95 %: accuracy_test.go checks it route by route. Three good facts give 4 % on
// the winding that was read and 6 % on one of 0.6 to 3.5 times the turns, amps at two speeds 5.5 and 6
// %, the plate with the speed charging began 11 %. The worst are machines whose field alone saturates
// the iron; the next reading asked for (next.go) is then amps between.
//
// Limits. Amps within a tenth of cut-in are known to a third at best. All readings are at one winding
// temperature unless they give their own ohms, and at one field current unless spin-up volts at several
// tie them together; that a stronger field also saturates the iron more is not modelled. The ohms are
// not fitted: k and L could trade against them, and a meter reads ohms better.

// The bounds of a.
const leastFall, mostFall = -2.5, 0.8

// highest is the upper bounds of all three.
var highest = point{30, 30, mostFall}

// usualFall is the value of a assumed until a reading determines it, and one standard deviation of
// that. Magnets hardly saturate the iron. With a field coil both signs occur, and about equally far:
// -0.1 to -0.4 where the armature saturates leakage paths and iron that the field leaves unsaturated (a
// measured claw pole is such, readings_test.go), up to the bound where the field alone saturates the
// iron they share and the armature relieves it. Two facts cannot tell which, so neither sign is
// preferred: the middle has the smallest worst-case error.
func (m Machine) usualFall() (a, doubt float64) {
	if m.Wound {
		return 0, 0.55
	}
	return -0.03, 0.2
}

// Solve finds a machine's EMF and inductance from its readings. The error wraps ErrReadings and says
// which input is out of range, or what is missing: something that determines the volts and something
// that determines the inductance.
func Solve(m Machine, given []Reading) (Fit, error) {
	if err := m.check(); err != nil {
		return Fit{}, err
	}
	for n, r := range given {
		if err := r.check(n); err != nil {
			return Fit{}, err
		}
	}
	p, err := prepare(m, given)
	if err != nil {
		return Fit{}, err
	}
	x := p.start()
	l := least{residuals: p.residuals, low: p.low(), high: highest}
	for range 3 {
		p.weigh(x)
		x, _ = l.minimise(x)
	}
	f := Fit{p: p, x: x, rows: l.slopes(x)}
	f.spread = p.disagreement(l.residuals(x))
	f.cov = covariance(f.rows, f.spread)
	return f, f.enough()
}

// low is the lower bounds.
func (p *problem) low() point {
	k := -30.0
	for n, r := range p.reads {
		if r.loaded() {
			k = max(k, math.Log(p.m.cutIn(r.Volts)/r.RPM/p.share[n])+1e-4)
		}
	}
	return point{k, -30, leastFall}
}

// start is a point not far from the solution.
func (p *problem) start() point {
	p.sigma = make([]float64, len(p.reads))
	top := 1.0
	for n, r := range p.reads {
		p.sigma[n] = 0.05
		if r.Kind == Short || r.Kind == Loaded || r.Kind == Plate {
			top = max(top, r.RPM)
		}
	}
	usual, _ := p.m.usualFall()
	best, least := point{}, math.Inf(1)
	for _, k := range p.startK() {
		z := math.Exp(k) * top / p.ref / (2 * math.Pi * p.m.hertz(top))
		for s := 0.02; s < 3; s *= 1.3 {
			x := point{k, math.Log(z * s), usual}
			m, c := p.at(x), 0.0
			m.fall = 0 // for a first estimate
			for _, r := range p.residualsOf(m) {
				c += min(sq(r), 400) // one reading that is far off must not decide
			}
			if c < least {
				best, least = x, c
			}
		}
	}
	return best
}

// startK is the starting EMFs, in logarithm.
func (p *problem) startK() []float64 {
	low, sum, n := p.low()[0], 0.0, 0.0
	for i, r := range p.reads {
		if r.spin() {
			sum, n = sum+math.Log(r.emf(p.m)/r.RPM/p.share[i]), n+1
		}
	}
	if n > 0 {
		return []float64{max(low, sum/n)}
	}
	var ks []float64
	for _, s := range []float64{1.01, 1.05, 1.15, 1.3, 1.6, 2.2, 3} {
		ks = append(ks, low+math.Log(s))
	}
	return ks
}

// disagreement is the ratio by which the readings scatter more than their ± allows, 1 or more.
func (p *problem) disagreement(rs []float64) float64 {
	more, sum := len(p.reads)-unknowns, 0.0
	if more <= 0 {
		return 1
	}
	for _, r := range rs[:len(p.reads)] {
		sum += sq(r)
	}
	return math.Sqrt(max(1, sum/float64(more)))
}

// covariance is the inverse of JᵀJ, times the square of a spread. What no reading determines comes out
// very large.
func covariance(rows [][unknowns]float64, spread float64) *mat.SymDense {
	jtj, _ := normal(rows, nil)
	for k := range unknowns {
		jtj.SetSym(k, k, jtj.At(k, k)+1e-6)
	}
	var chol mat.Cholesky
	cov := mat.NewSymDense(unknowns, nil)
	if !chol.Factorize(jtj) || chol.InverseTo(cov) != nil {
		for k := range unknowns {
			cov.SetSym(k, k, 1e6)
		}
		return cov
	}
	cov.ScaleSym(spread*spread, cov)
	return cov
}

// furthest names the reading that lies furthest from the answer.
func (f Fit) furthest() string {
	all := f.Readings()
	return string(slices.MaxFunc(all, func(a, b Checked) int { return cmp.Compare(a.Off, b.Off) }).Kind)
}

// enough says what the readings leave undetermined, or nil.
func (f Fit) enough() error {
	const open = 0.5 // of a logarithm, one standard deviation
	switch worst := max(f.deviation(0), f.deviation(1)); {
	case worst > open && worst/f.spread <= open: // enough of them, but not of one machine
		return fmt.Errorf("%w: they contradict each other, %s the most; check each one's speed, meter, leads and sets", ErrReadings, f.furthest())
	case f.deviation(0) > open:
		return fmt.Errorf("%w: they do not fix the volts that it makes; add spin-up volts, or amps into a battery at 1.25 times the speed at which it begins to charge", ErrReadings)
	case f.deviation(1) > open:
		return fmt.Errorf("%w: they do not fix the inductance; add a fast short circuit, or amps into a battery as fast as it goes", ErrReadings)
	}
	return nil
}
