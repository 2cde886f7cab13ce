package drive

import "math"

// finder is one search for equilibria.
type finder struct {
	given, taken  Torque
	xs, ys        []float64
	high          float64 // the fastest sample of the load, rpm, where xs leaves some out; else 0
	scale         float64 // the largest difference among the samples
	found, merged []Equilibrium
}

// over is the difference.
func (f *finder) over(rpm float64) float64 { return f.given(rpm) - f.taken(rpm) }

// Relative agreement of the two torques: at which refining stops, and above which a root is called a
// jump.
const (
	agreed    = 1e-9
	disagreed = 1e-6
)

// within reports whether a difference at a speed is negligible against the torques there.
func (f *finder) within(rpm, over, tolerance float64) bool {
	return f.agree(f.given(rpm), over, tolerance)
}

// agree is within where the torque given is known; the one taken, the more expensive, follows from it.
func (f *finder) agree(given, over, tolerance float64) bool {
	larger := max(math.Abs(given), math.Abs(given-over))
	return math.Abs(over) <= tolerance*(larger+1e-6*f.scale)
}

// cross adds the root between two samples of opposite sign.
func (f *finder) cross(i int) {
	if f.add(bracket{f.xs[i-1], f.xs[i], f.ys[i-1], f.ys[i], false, false}) {
		return
	}
	// The exact difference has no change of sign here: the samples were near a root.
	a, b := f.xs[max(0, i-2)], f.xs[min(len(f.xs)-1, i+1)]
	wide := bracket{a, b, f.over(a), f.over(b), true, true}
	if (wide.fa > 0) != (wide.fb > 0) {
		f.add(wide)
	}
}

// bracket is a stretch with a change of sign; its ends are exact or sampled.
type bracket struct {
	a, b, fa, fb   float64
	exactA, exactB bool
}

// add refines a bracket and keeps the root; false when there was none.
func (f *finder) add(k bracket) bool {
	falling := k.fa > k.fb
	rpm, given, over, ok := f.refine(k)
	if !ok {
		return false
	}
	f.keep(rpm, given-over, Equilibrium{Stable: falling, Jump: !f.agree(given, over, disagreed)})
	return true
}

// keep fills in all of an equilibrium but its slope. A non-finite one is dropped.
func (f *finder) keep(rpm, taken float64, e Equilibrium) {
	e.RPM, e.Torque, e.Watts = rpm, taken, taken*radPerSecond(rpm)
	if sum := e.RPM + e.Watts; !math.IsNaN(sum) && !math.IsInf(sum, 0) {
		f.found = append(f.found, e)
	}
}

// steep is the slope of the difference at a root, N·m/rpm. It costs half as much as the search for the
// root, so it is computed only where it is shown.
func (f *finder) steep(rpm float64) float64 {
	first, last := f.xs[0], max(f.high, f.xs[len(f.xs)-1])
	h := 1e-6 * (last - first)
	lo, hi := max(first, rpm-h), min(last, rpm+h)
	return (f.over(hi) - f.over(lo)) / (hi - lo)
}

// refine narrows a bracket to the root. False position needs few steps (Anderson and Björck, BIT 13
// (1973) 253-264); where it sticks, as at a jump, bisection does it.
func (f *finder) refine(k bracket) (rpm, given, over float64, ok bool) {
	const secants, most = 24, 90
	side, run := 0, 0
	for n := range most {
		m := (k.fa*k.b - k.fb*k.a) / (k.fa - k.fb)
		if !(m >= k.a && m <= k.b) || n > secants {
			m = (k.a + k.b) / 2
		}
		given := f.given(m)
		fm := given - f.taken(m)
		if f.agree(given, fm, agreed) || k.b-k.a <= 4e-16*(math.Abs(k.a)+math.Abs(k.b)) {
			return m, given, fm, k.exactA && k.exactB || f.agree(given, fm, disagreed) || f.holds(&k)
		}
		now := k.replace(m, fm, side)
		if run++; now != side {
			run = 0
		}
		if side = now; run == 3 && !f.holds(&k) {
			return 0, 0, 0, false
		}
	}
	middle := (k.a + k.b) / 2
	given = f.given(middle)
	return middle, given, given - f.taken(middle), true
}

// replace replaces the end with the point's sign, 1 the lower and -1 the upper. When the other end
// stays for the second time its value is reduced: by the factor from the parabola through the three
// points, or by half where there is none.
func (k *bracket) replace(m, fm float64, side int) int {
	if (fm > 0) == (k.fa > 0) {
		if side == 1 {
			k.fb *= counts(fm / k.fa)
		}
		k.a, k.fa, k.exactA = m, fm, true
		return 1
	}
	if side == -1 {
		k.fa *= counts(fm / k.fb)
	}
	k.b, k.fb, k.exactB = m, fm, true
	return -1
}

// counts is the factor on the value of the end that stays, from what is left of the other.
func counts(left float64) float64 {
	if left < 1 {
		return 1 - left
	}
	return 0.5
}

// holds makes the ends of a bracket exact, and reports whether there is still a change of sign between
// them.
func (f *finder) holds(k *bracket) bool {
	if !k.exactA {
		k.fa, k.exactA = f.over(k.a), true
	}
	if !k.exactB {
		k.fb, k.exactB = f.over(k.b), true
	}
	return (k.fa > 0) != (k.fb > 0)
}

// radPerSecond is an angular speed, 2π·n/60.
func radPerSecond(rpm float64) float64 { return 2 * math.Pi * rpm / 60 }
