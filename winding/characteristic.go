package winding

import (
	"math"
	"slices"

	"slotwright/winding/charge"
)

// # A trial at every speed
//
// Curve, drive and offers all ask the same trial for its amps and torque at hundreds of speeds. Few
// of these are solved; the rest are interpolated.
//
// Idea. Current begins at a sharp corner, as the power 3/2 of the speed above it (limited by
// resistance) or the square (by reactance). In s = √(n - n₀) both are smooth, s³ and s⁴, so the
// knots lie in s, eight stretches to begin with. The trial is solved in the middle of each,
// temperature included, and compared with the polynomial through up to six nearby knots. Where they
// agree the stretch is done, and the solved middle becomes a knot too; where not, both halves are
// tested again. No polynomial spans a corner: where pulses run together, where each phase begins to
// conduct all the time, where the winding begins to overheat without end, only the stretch with the
// corner in it is halved, and the polynomials on both sides end there.
//
// Only currents and powers of the bridge are interpolated. What follows from these (sum of watts,
// drag, torque) is computed as at a solved point, so that the energy balance holds.
//
// Accuracy. A stretch that agreed in its middle to 3 parts in 10,000 is good to about a tenth of
// that: against the solver at 1000 speeds, amps and torque of the jobs in testdata are off by at
// most 14 parts in 100,000, the temperature by 0.025 K, a few times its own tolerance. A stretch
// that does not agree after the last halving is never interpolated: there each speed is solved. So
// is every operating point of a condition.
//
// Cost. 25 to 70 solved points, most of them with one solution of the bridge, since the curve so
// far predicts the temperature; a tenth of a microsecond a speed after that.
type characteristic struct {
	r         *charger
	from, top float64 // rpm: cut-in, and the last knot
	warm      float64 // °C, a first guess of the temperature; the temperature itself where that is held
	within    float64
	knots     []knot
	fresh     []knot // solved in one halving, not yet put in
	// agreed says, for the stretch after each knot, that the polynomial went through its middle.
	agreed []bool
	drawn  []stretch
}

// stretch is the polynomial from one knot to the next: through the knots at both ends and two on
// either side, each at least the stretch's own length from the next, which keeps errors from
// growing.
type stretch struct {
	n    int8 // how many knots
	by   [points]int16
	over [points]float64 // 1 over the product of each knot's distances from the others
}

// points is the most knots that a stretch's polynomial goes through.
const points = 6

// knot is a solved speed.
type knot struct {
	s      float64 // √((n - from)/(top - from))
	v      [channels]float64
	mode   charge.Mode
	tooHot bool
	ruling ruling // where the regulator holds, its lever's position replaces the amps
	agrees bool   // of a middle: the polynomial went through it
	state  charge.Solver
}

// channels are the interpolated values: amps, their rms, phase amps, watts in copper and diodes,
// and the temperature.
const channels = electric + 1

// How the knots are laid.
const (
	firstStretches = 8
	mostHalvings   = 5
	offerHalvings  = 2    // of what is only compared
	closeCurve     = 3e-4 // relative agreement asked of what is shown
	closeOffer     = 3e-3 // of what is only compared
	leastPart      = 5e-2 // of the largest value: smaller values need no closer agreement than at this
	usualKnots     = 72   // capacity; more are seldom needed
	closeKelvin    = 150  // K for a relative agreement of 1
)

// over solves the trial up to a speed; warm is as in [charger.at].
func (r *charger) over(top, warm, within float64) *characteristic {
	c := new(characteristic)
	c.over(r, top, warm, within)
	return c
}

// over rebuilds c for the trial, reusing the previous trial's memory.
func (c *characteristic) over(r *charger, top, warm, within float64) {
	*c = characteristic{r: r, top: top, warm: warm, within: within, knots: c.knots[:0], fresh: c.fresh[:0], agreed: c.agreed[:0], drawn: c.drawn[:0]}
	c.from = r.begins()
	if !(top > c.from) {
		return
	}
	if c.knots == nil {
		c.knots, c.agreed = make([]knot, 0, usualKnots), make([]bool, 0, usualKnots)
		c.fresh, c.drawn = make([]knot, 0, usualKnots/2), make([]stretch, 0, usualKnots)
	}
	r.onTheWay, r.compared = true, within >= closeOffer
	defer func() { r.onTheWay, r.compared = false, false }()
	idea := trend{ambient: warm}
	for i := range firstStretches + 1 {
		s := float64(i) / firstStretches
		if i > 1 {
			c.r.near = charge.Between(&c.knots[i-2].state, &c.knots[i-1].state, 2)
		}
		k := c.solve(s, idea.next(c.rpm(s)))
		idea.add(c.rpm(s), k.v[channels-1])
		c.knots = append(c.knots, k)
	}
	c.knots[0].mode = c.knots[1].mode // the mode it is about to have
	c.agreed = append(c.agreed, make([]bool, firstStretches)...)
	halvings := mostHalvings
	if within >= closeOffer {
		halvings = offerHalvings
	}
	for range halvings {
		c.sight(false)
		if !c.halve() {
			break
		}
	}
	c.sight(true)
	if within >= closeOffer {
		c.bridge()
	}
}

// bridge builds the polynomial of every stretch, a straight line across a corner; none across the
// corner at which a regulator begins to hold or no longer can.
func (c *characteristic) bridge() {
	for i := range c.agreed {
		if c.knots[i].ruling != c.knots[i+1].ruling {
			continue
		}
		c.agreed[i] = true
		if d := &c.drawn[i]; d.n == 0 {
			apart := c.knots[i+1].s - c.knots[i].s
			d.n, d.by, d.over = 2, [points]int16{int16(i), int16(i + 1)}, [points]float64{-1 / apart, 1 / apart}
		}
	}
}

// begins is the speed from which current flows.
func (r *charger) begins() float64 {
	p := r.solve(1, 20)
	if p.Kappa <= 0 {
		return 0
	}
	return 1 / p.Kappa
}

func (c *characteristic) rpm(s float64) float64 { return c.from + (c.top-c.from)*s*s }

// solve makes a knot.
func (c *characteristic) solve(s, warm float64) knot {
	if c.r.holdsHeat() {
		warm = c.warm
	}
	var p charge.Point
	var celsius, lever float64
	var tooHot bool
	var does ruling
	if c.r.holder.bends() {
		var h heldRun
		h, celsius, tooHot = c.r.steadyHeld(c.rpm(s), warm)
		p, lever, does = h.point, h.lever, h.ruling
	} else {
		p, celsius, tooHot = c.r.steady(c.rpm(s), warm)
	}
	var v [channels]float64
	for j, figure := range electricOf(&p) {
		v[j] = figure
	}
	v[electric] = celsius
	if does == holds {
		v[0] = lever
	}
	return knot{s, v, p.Mode, tooHot, does, false, c.r.near}
}

// halve solves the middle of each stretch that has not agreed yet; false when all have.
func (c *characteristic) halve() bool {
	var most [channels]float64
	for i := range c.knots {
		for j, v := range c.knots[i].v {
			most[j] = max(most[j], math.Abs(v))
		}
	}
	c.fresh = c.fresh[:0]
	for i, ok := range c.agreed {
		if ok {
			continue
		}
		if c.within >= closeOffer && c.knots[i].tooHot && c.knots[i].like(&c.knots[i+1]) && c.drawn[i].n > 2 {
			// points without a steady temperature are not refined further
			c.agreed[i] = true
			continue
		}
		s := (c.knots[i].s + c.knots[i+1].s) / 2
		drawn, warm := c.draw(i, s), c.warmth(i, s)
		c.r.near = charge.Between(&c.knots[i].state, &c.knots[i+1].state, 0.5)
		if c.drawn[i].n > 0 {
			warm = drawn[channels-1]
		}
		k := c.solve(s, warm)
		k.agrees = c.knots[i].like(&k) && k.like(&c.knots[i+1]) && c.alike(&k, &drawn, &most)
		c.fresh = append(c.fresh, k)
	}
	c.putIn()
	return len(c.fresh) > 0
}

// warmth is a first guess of the temperature at a place in the stretch after knot i: it goes over most
// corners smoothly, so by the four knots around, but for one where it goes on getting hotter.
func (c *characteristic) warmth(i int, s float64) float64 {
	first, last := max(0, i-1), min(i+2, len(c.knots)-1)
	for first < i && c.knots[first].tooHot != c.knots[i].tooHot {
		first++
	}
	for last > i+1 && c.knots[last].tooHot != c.knots[i+1].tooHot {
		last--
	}
	if c.knots[i].tooHot != c.knots[i+1].tooHot {
		first, last = i, i+1
	}
	sum := 0.0
	for a := first; a <= last; a++ {
		w := 1.0
		for b := first; b <= last; b++ {
			if b != a {
				w *= (s - c.knots[b].s) / (c.knots[a].s - c.knots[b].s)
			}
		}
		sum += w * c.knots[a].v[channels-1]
	}
	return max(c.r.air.ambientC, sum)
}

// putIn puts the middles just solved between the knots, from the top down, so that none is
// overwritten before it has been moved.
func (c *characteristic) putIn() {
	n, f := len(c.agreed), len(c.fresh)
	c.knots, c.agreed = slices.Grow(c.knots, f)[:n+1+f], slices.Grow(c.agreed, f)[:n+f]
	c.knots[n+f] = c.knots[n]
	for i := n - 1; f > 0; i-- {
		if c.agreed[i] {
			c.knots[i+f], c.agreed[i+f] = c.knots[i], true
			continue
		}
		f--
		k := c.fresh[f]
		c.knots[i+f+1], c.knots[i+f] = k, c.knots[i]
		c.agreed[i+f+1], c.agreed[i+f] = k.agrees, k.agrees
	}
}

// alike reports whether a solved point lies on the curve.
func (c *characteristic) alike(k *knot, drawn, most *[channels]float64) bool {
	for j := range channels - 1 {
		if math.Abs(k.v[j]-drawn[j]) > c.within*max(math.Abs(k.v[j]), leastPart*most[j]) {
			return false
		}
	}
	return math.Abs(k.v[channels-1]-drawn[channels-1]) <= closeKelvin*c.within
}

// sight finds the knots of each stretch's polynomial, on the way only of those that have not agreed yet.
func (c *characteristic) sight(all bool) {
	c.drawn = slices.Grow(c.drawn[:0], len(c.agreed))[:len(c.agreed)]
	clear(c.drawn)
	for low := 0; low < len(c.agreed); {
		high := low
		for high+1 < len(c.knots) && c.knots[low].like(&c.knots[high+1]) {
			high++
		}
		for i := low; i < high; i++ {
			if all || !c.agreed[i] {
				c.drawn[i] = c.around(i, low, high)
			}
		}
		low = high + 1
	}
}

// like reports whether no corner lies between two neighbouring knots.
func (k *knot) like(next *knot) bool {
	return k.mode == next.mode && k.tooHot == next.tooHot && k.ruling == next.ruling
}

// around finds the knots of a stretch among those of one mode, taken from both sides in turn as far
// as there are any.
func (c *characteristic) around(i, first, last int) (d stretch) {
	length := c.knots[i+1].s - c.knots[i].s
	low, high := i, i+1
	d.by[0], d.by[1], d.n = int16(low), int16(high), 2
	for more := true; more && d.n < points; {
		more = false
		for _, way := range [...]int{-1, 1} {
			end, limit := &low, first
			if way > 0 {
				end, limit = &high, last
			}
			if k, ok := c.beside(*end, way, limit, length); ok && d.n < points {
				*end, d.by[d.n], more = k, int16(k), true
				d.n++
			}
		}
	}
	for a, k := range d.by[:d.n] {
		product := 1.0
		for b, l := range d.by[:d.n] {
			if b != a {
				product *= c.knots[k].s - c.knots[l].s
			}
		}
		d.over[a] = 1 / product
	}
	return d
}

// beside is the next knot up or down that is at least a length away, or the last one if nearly so.
func (c *characteristic) beside(i, way, limit int, length float64) (int, bool) {
	for k := i; k != limit; {
		k += way
		if apart := math.Abs(c.knots[k].s - c.knots[i].s); apart >= length*(1-1e-9) || k == limit && apart >= length/3 {
			return k, true
		}
	}
	return i, false
}

// draw evaluates the polynomial of the stretch after knot i (Lagrange's form).
func (c *characteristic) draw(i int, s float64) (v [channels]float64) {
	d := &c.drawn[i]
	var off, weight [points]float64
	for a, k := range d.by[:d.n] {
		off[a] = s - c.knots[k].s
	}
	before := 1.0
	for a := range d.n {
		weight[a] = before * d.over[a]
		before *= off[a]
	}
	after := 1.0
	for a := d.n - 1; a >= 0; a-- {
		weight[a] *= after
		after *= off[a]
	}
	for a, k := range d.by[:d.n] {
		w, at := weight[a], &c.knots[k].v
		for j := range v {
			v[j] += w * at[j]
		}
	}
	return v
}
