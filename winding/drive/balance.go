package drive

import (
	"cmp"
	"math"
	"slices"
)

// # Where drive and alternator balance
//
// The shaft settles where the torque it is given equals the torque it has to give. There may be several
// such speeds: a wind rotor with a stiff alternator has a slow one where its blades are stalled, a fast
// one, and an unstable one between them:
//
//	torque            given by the rotor
//	  |        .-o-.  o = stable                  as speed falls, more is given than
//	  |      x'  |  `o.                           taken, and the other way round
//	  |   _.'    |    |`.   x = unstable          the two diverge at the least push
//	  |o-'  taken ...
//	  +------------------- speed
//
// All are found, including the last one at which two merge and the curves only touch: there the shaft
// is about to drop from one branch to another.
//
// # How
//
// The difference of the two torques is sampled on a grid. A change of sign brackets a root. Between two
// samples of the same sign a pair of roots can hide, where the difference dips to zero and comes back.
// Such a dip is convex near its bottom, and a convex curve cannot pass below the lines through the two
// samples either side of it:
//
//	\  .          .  /
//	 o               o        the four samples around the stretch; it is searched only
//	  \             /         where the lines meet at or below zero
//	   o           o
//	    ` .     . '
//	        ` '  the lines meet here
//
// The search is by golden section, and stops as soon as it passes zero or the same bound, now with
// nearer points, shows that it will not. Roots are refined by the secant in a bracket (Anderson and
// Björck) until the torques agree to 1e-9 of the larger, or to 1e-15 of the largest difference on the
// grid, where arithmetic ends.
//
// # Cost
//
// The samples; then five or six calls a root, two of them for the slope there, and some 13 a root for a
// pair between two samples. A stretch searched in vain costs two to seven calls, one where the curves
// really touch 16 to 20 (measured on a parabola; twice that where either happens at a sample, between
// two stretches).
//
// # Where it stops being valid
//
// A pair of roots is missed when its dip is not convex over the three steps around it, that is, when it
// is narrower than about two steps of the grid. A torque curve is smooth but for the corner at cut-in;
// with a sample on each side of the corner (Sample puts them there) and 64 steps nothing in it is that
// narrow. Samples need not be exact, as those of a winding at a slightly different temperature: each
// bracket that the exact difference does not confirm is tried again one step wider, and dropped when
// there is no root there either. Where a torque jumps, the two pass one another without being equal;
// that is returned as a Jump, and is the only case in which they disagree by more than 1e-6.

// Torque is a torque against speed, N·m and rpm. It must be finite on the range used.
type Torque func(rpm float64) float64

// Equilibrium is a speed at which torque given and taken agree.
type Equilibrium struct {
	RPM    float64 `json:"rpm"`
	Torque float64 `json:"torque_nm"` // taken there, N·m
	Watts  float64 `json:"shaft_w"`   // Torque times speed
	// Slope is the slope of given less taken, N·m/rpm. Below 0 the speed is stable; the further below,
	// the more firmly.
	Slope float64 `json:"slope_nm_per_rpm"`
	// Stable says that the shaft can stay: a little more speed leaves a deficit of torque.
	Stable bool `json:"stable"`
	// Tangent is a speed where the two torques touch and part again. It is not stable: the shaft
	// approaches it from one side and leaves it on the other.
	Tangent bool `json:"tangent,omitempty"`
	// Jump is a speed at which a torque jumps past the other.
	Jump bool `json:"jump,omitempty"`
}

// Samples is a torque evaluated once at many speeds, for use in many balances.
type Samples struct {
	RPM []float64 // going up
	Nm  []float64
}

// Sample evaluates a torque at steps+1 speeds from almost rest to a speed, closer together when slow
// (quadratically: the equilibria of light winds all lie there), and on both sides of each corner, such
// as the cut-in speed. Fewer than 8 steps count as 8. No samples when high is not above 0.
func Sample(torque Torque, high float64, steps int, corners ...float64) Samples {
	if !(high > 0) || math.IsInf(high, 0) {
		return Samples{}
	}
	s := Samples{RPM: speedsTo(high, steps)}
	for _, c := range corners {
		if c > s.RPM[0] && c < high {
			s.RPM = append(s.RPM, c*(1-1e-6), c*(1+1e-6))
		}
	}
	slices.Sort(s.RPM)
	s.RPM = slices.Compact(s.RPM)
	s.Nm = make([]float64, len(s.RPM))
	for i, rpm := range s.RPM {
		s.Nm[i] = torque(rpm)
	}
	return s
}

// speedsTo is the speeds of samples up to a speed, without those at corners.
func speedsTo(high float64, steps int) []float64 {
	steps = max(8, steps)
	list := make([]float64, steps+1, steps+3) // with room for one corner
	for i := range list {
		x := (float64(i) + 1e-2) / (float64(steps) + 1e-2)
		list[i] = high * x * x
	}
	return list
}

// Balance finds every equilibrium on the samples of the torque taken.
func (s Samples) Balance(given, taken Torque) []Equilibrium {
	ys := make([]float64, len(s.RPM))
	for i, rpm := range s.RPM {
		ys[i] = given(rpm) - s.Nm[i]
	}
	f := finder{given: given, taken: taken, xs: s.RPM, ys: ys}
	return f.all()
}

// Balance finds every equilibrium from low to high, going up, on a grid of equal steps;
// fewer than 8 count as 8. None when high is not above low.
func Balance(given, taken Torque, low, high float64, steps int) []Equilibrium {
	if !(high > low) || math.IsInf(high-low, 0) {
		return nil
	}
	steps = max(8, steps)
	f := finder{given: given, taken: taken}
	xs, ys := make([]float64, steps+1), make([]float64, steps+1)
	for i := range xs {
		xs[i] = low + (high-low)*float64(i)/float64(steps)
		ys[i] = f.over(xs[i])
	}
	f.xs, f.ys = xs, ys
	return f.all()
}

// all is roots with their slopes.
func (f *finder) all() []Equilibrium {
	list := f.roots()
	for i := range list {
		list[i].Slope = f.steep(list[i].RPM)
	}
	return list
}

// roots is every equilibrium on samples of the difference, which may only approximate the exact one.
// The speeds must go up. The list is valid until the finder is used again.
func (f *finder) roots() []Equilibrium {
	xs, ys := f.xs, f.ys
	f.scale, f.found, f.merged = 0, f.found[:0], f.merged[:0]
	for _, y := range ys {
		f.scale = max(f.scale, math.Abs(y))
	}
	for i := 1; i < len(xs); i++ {
		switch {
		case (ys[i-1] > 0) != (ys[i] > 0):
			f.cross(i)
		case f.mayDip(i):
			f.dip(i)
		}
	}
	slices.SortStableFunc(f.found, func(a, b Equilibrium) int { return cmp.Compare(a.RPM, b.RPM) })
	f.merge()
	return f.merged
}

// alike is the relative distance below which two roots are one.
const alike = 1e-7

// merge joins roots that coincide: the same root found twice, or a pair with nothing between, which is
// a touch.
func (f *finder) merge() {
	for _, e := range f.found {
		last := len(f.merged) - 1
		if last < 0 || !f.same(f.merged[last], e) {
			f.merged = append(f.merged, e)
			continue
		}
		if before := &f.merged[last]; before.Stable != e.Stable && !before.Jump && !e.Jump {
			before.Stable, before.Tangent = false, true
		}
	}
}

// same reports whether two equilibria are one. Two touches are one when the torques agree between them
// too.
func (f *finder) same(a, b Equilibrium) bool {
	if b.RPM-a.RPM <= alike*b.RPM {
		return true
	}
	middle := (a.RPM + b.RPM) / 2
	return a.Tangent && b.Tangent && f.within(middle, f.over(middle), agreed)
}
