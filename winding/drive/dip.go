package drive

import "math"

// lowBound is the lowest that a convex curve can be between (a, ua) and (b, ub) when it has the slopes
// left before a and right after b: where the two lines meet. ±Inf stand for an unknown slope.
func lowBound(a, b, ua, ub, left, right float64) float64 {
	switch {
	case left >= 0:
		return ua
	case right <= 0:
		return ub
	case math.IsInf(left, -1) && math.IsInf(right, 1):
		return math.Inf(-1)
	case math.IsInf(left, -1):
		return ub + right*(a-b)
	case math.IsInf(right, 1):
		return ua + left*(b-a)
	}
	x := (ub - ua + left*a - right*b) / (left - right)
	x = min(b, max(a, x))
	return max(ua+left*(x-a), ub+right*(x-b))
}

// sign is the sign of a stretch whose two samples have the same one.
func (f *finder) sign(i int) float64 {
	if f.ys[i-1] > 0 {
		return 1
	}
	return -1
}

// slope is the steepness of the difference's size from sample i-1 to i.
func (f *finder) slope(i int, sign float64) float64 {
	return sign * (f.ys[i] - f.ys[i-1]) / (f.xs[i] - f.xs[i-1])
}

// around is the slopes before and after a stretch, infinite where there is no sample.
func (f *finder) around(i int, sign float64) (left, right float64) {
	left, right = math.Inf(-1), math.Inf(1)
	if i >= 2 {
		left = f.slope(i-1, sign)
	}
	if i+1 < len(f.xs) {
		right = f.slope(i+1, sign)
	}
	return left, right
}

// mayDip reports whether a convex curve through the samples around a stretch can come
// down to zero in it.
func (f *finder) mayDip(i int) bool {
	s := f.sign(i)
	if f.clear(i, s) {
		return false
	}
	left, right := f.around(i, s)
	if lowBound(f.xs[i-1], f.xs[i], s*f.ys[i-1], s*f.ys[i], left, right) > 1e-9*f.scale {
		return false
	}
	// Equality all along is not a single speed.
	return !(f.within(f.xs[i-1], f.ys[i-1], agreed) && f.within(f.xs[i], f.ys[i], agreed))
}

// clear reports whether one of the two lines alone keeps a stretch from zero, as nearly everywhere: the
// line through the two samples before it, where it still lies above zero at its end, or the one through
// the two after it at its beginning. It is lowBound without its divisions.
func (f *finder) clear(i int, sign float64) bool {
	xs, ys, least := f.xs, f.ys, 1e-9*f.scale
	ua, ub, apart := sign*ys[i-1], sign*ys[i], xs[i]-xs[i-1]
	if !(ua > least && ub > least) {
		return false
	}
	if i >= 2 {
		if run := xs[i-1] - xs[i-2]; (ua-least)*run+(ua-sign*ys[i-2])*apart > 0 {
			return true
		}
	}
	if i+1 < len(xs) {
		if run := xs[i+1] - xs[i]; (ub-least)*run+(ub-sign*ys[i+1])*apart > 0 {
			return true
		}
	}
	return false
}

// dip looks for the pair of roots, or the touch, in a stretch, by golden section.
func (f *finder) dip(i int) {
	s := f.sign(i)
	w := well{sign: s, over: f.over, a: f.xs[i-1], b: f.xs[i], ua: s * f.ys[i-1], ub: s * f.ys[i]}
	w.before, w.after = f.around(i, s)
	w.c, w.d = w.b-golden*(w.b-w.a), w.a+golden*(w.b-w.a)
	w.uc, w.ud = w.size(w.c), w.size(w.d)
	x, u := w.lowest()
	for range 44 {
		touches := f.within(x, u, agreed)
		if u < 0 && !touches {
			break // passed zero: a pair
		}
		// Stop when it cannot reach zero, or, touching, cannot get further.
		if least, none := w.bound(), f.nothing(x); least > none || touches && least >= -none {
			break
		}
		w.narrow()
		x, u = w.lowest()
	}
	if u <= 0 || f.within(x, u, agreed) {
		f.passed(i, x, s*u)
	}
}

var golden = (math.Sqrt(5) - 1) / 2

// well is a golden section search for the minimum of the difference's size: a, b the ends and c, d
// between them, and the slopes before a and after b.
type well struct {
	sign           float64
	over           Torque
	a, c, d, b     float64
	ua, uc, ud, ub float64
	before, after  float64
}

func (w *well) size(x float64) float64 { return w.sign * w.over(x) }

// lowest is the lower of the two points between the ends.
func (w *well) lowest() (x, u float64) {
	if w.ud < w.uc {
		return w.d, w.ud
	}
	return w.c, w.uc
}

// bound is how low a convex curve through the four points can be anywhere between the
// ends.
func (w *well) bound() float64 {
	ac, cd, db := (w.uc-w.ua)/(w.c-w.a), (w.ud-w.uc)/(w.d-w.c), (w.ub-w.ud)/(w.b-w.d)
	return min(
		lowBound(w.a, w.c, w.ua, w.uc, w.before, cd),
		lowBound(w.c, w.d, w.uc, w.ud, ac, db),
		lowBound(w.d, w.b, w.ud, w.ub, cd, w.after))
}

// narrow drops the end that the lowest point is not next to.
func (w *well) narrow() {
	if w.uc < w.ud {
		w.after = (w.ub - w.ud) / (w.b - w.d)
		w.b, w.ub, w.d, w.ud = w.d, w.ud, w.c, w.uc
		w.c = w.b - golden*(w.b-w.a)
		w.uc = w.size(w.c)
		return
	}
	w.before = (w.uc - w.ua) / (w.c - w.a)
	w.a, w.ua, w.c, w.uc = w.c, w.uc, w.d, w.ud
	w.d = w.a + golden*(w.b-w.a)
	w.ud = w.size(w.d)
}

// nothing is the difference that counts as zero at a speed.
func (f *finder) nothing(rpm float64) float64 {
	return agreed * (math.Abs(f.given(rpm)) + 1e-6*f.scale)
}

// passed adds what a dip that reaches zero at x contains: a touch, or a root either side.
func (f *finder) passed(i int, x, fx float64) {
	if f.within(x, fx, agreed) {
		f.keep(x, f.taken(x), Equilibrium{Tangent: true})
		return
	}
	f.add(bracket{f.xs[i-1], x, f.ys[i-1], fx, false, true})
	f.add(bracket{x, f.xs[i], fx, f.ys[i], true, false})
}
