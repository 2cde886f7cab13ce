package winding

import (
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/zero"
)

// curvePoints is the number of speeds of a curve.
const curvePoints = 49

// run makes the curve of one trial and reads everything off it; nil where it cannot run.
func (b *bed) run(t job.Trial, o *TrialOutcome, grid []float64) *characteristic {
	r, why := b.charger(t, o)
	if r == nil {
		o.Charging = notCharging(why)
		o.Driven = noDrive(why)
		b.highestVolts(&o.SafetyRun, o) // known without charging
		return nil
	}
	c := b.follow(r, grid)
	b.runTrial(c, o, grid)
	b.meet(c, o)
	o.readHeat(b, c)
	o.FieldRun = b.runField(c, o)
	o.SafetyRun = b.runSafety(r, o)
	o.LimitRPM, o.LimitToRPM = c.passes(o)
	return c
}

// follow is a trial at every speed that its curve or its drive asks for.
func (b *bed) follow(r *charger, grid []float64) *characteristic {
	return r.over(max(grid[len(grid)-1], b.drive.fastest), b.air.ambientC, closeCurve)
}

// cross finds where each trial's curve crosses the reference's.
func (o *Outcome) cross(runners []*characteristic) {
	for i, c := range runners {
		ref := runners[o.Reference]
		o.Trials[i].CrossRPM = quantity.Missing("there is nothing to cross")
		if c != nil && ref != nil && i != o.Reference {
			o.Trials[i].CrossRPM = crossing(c, ref, o.Trials[i].Curve, o.Trials[o.Reference].Curve)
		}
	}
}

func notCharging(why string) Charging {
	no := quantity.Missing(why)
	c := Charging{NoCharging: why, HottestC: no, ThirdAmps: no, TargetRPM: no, CrossRPM: no, LimitRPM: no}
	c.readOperating(nil, quantity.Derived, no, no)
	return c
}

// notRun says why a winding is neither charging nor driven, nor compared with the old one.
func (t *TrialOutcome) notRun(why string) {
	no := quantity.Missing(why)
	t.Charging, t.Driven, t.OpenAtGaleVolts = notCharging(why), noDrive(why), no
	t.Against, t.FuseAmps = Ratios{no, no, no, no}, no
}

// beyond is how far curves extend past the fastest speed asked for: a lightly loaded wind rotor runs
// above its best tip-speed ratio.
func (b *bed) beyond() float64 {
	if b.drive.kind == job.DriveWind {
		return 1.35
	}
	return 1.1
}

// grid is the speeds of the curves: to a tenth over the top speed, to the free speed of a drive that
// gives way (where a light winding lets it run), or to three times the highest cut-in when no speed is
// given.
func (b *bed) grid(cutIns func() []quantity.Figure) []float64 {
	top := 0.0
	for _, s := range []quantity.Figure{b.speeds.top, b.speeds.usual, b.speeds.slow} {
		if s.Known() {
			top = max(top, s.Value*b.beyond())
		}
	}
	if yields(b.drive.kind) && b.drive.source != nil {
		top = max(top, b.drive.fastest)
	}
	if top == 0 {
		for _, n := range cutIns() {
			if n.Known() {
				top = max(top, 3*n.Value)
			}
		}
	}
	grid := make([]float64, curvePoints)
	for i := range grid {
		grid[i] = top * float64(i) / (curvePoints - 1)
	}
	return grid
}

// runTrial is the curve of one trial and the figures on it, with the speed held.
func (b *bed) runTrial(c *characteristic, t *TrialOutcome, grid []float64) {
	t.Curve = make([]RunPoint, len(grid))
	for i, rpm := range grid {
		t.Curve[i] = c.at(rpm)
	}
	resting := c.r.against(b.dc.held.Value)
	for _, speed := range []quantity.Figure{b.speeds.slow, b.speeds.usual, b.speeds.top} {
		if speed.Known() {
			t.AtSpeeds = append(t.AtSpeeds, resting.at(speed.Value, c.at(speed.Value).WindingC))
		}
	}
	t.TargetRPM = c.reach(t.Curve, b.wanted.Figure("needs the amps wanted"), netAmps)
}

// netAmps reads net amps off a point.
func netAmps(p RunPoint) float64 { return p.NetAmps }

// reach is the lowest speed at which so many amps flow.
func (c *characteristic) reach(curve []RunPoint, amps quantity.Figure, of func(RunPoint) float64) quantity.Figure {
	if !amps.Known() {
		return amps
	}
	for i := 1; i < len(curve); i++ {
		if of(curve[i]) < amps.Value {
			continue
		}
		over := func(n float64) float64 { return of(c.at(n)) - amps.Value }
		rpm := zero.Of(over, curve[i-1].RPM, curve[i].RPM, of(curve[i-1])-amps.Value, of(curve[i])-amps.Value)
		return quantity.Of(rpm, amps.Origin)
	}
	return quantity.Missing("not reached in this range of speeds")
}

// passes is the speed at which the current first passes what the winding withstands, and the one from
// which it is within its limit again up to the end of the curve: a regulator that lowers the field, or
// a fan, ends the excess. Values within the slack of a limit pass none, as everywhere.
func (c *characteristic) passes(t *TrialOutcome) (from quantity.Figure, to float64) {
	if !t.LimitAmps.Known() {
		return t.LimitAmps, 0
	}
	if t.LimitAmps.Value < leastLimit {
		return quantity.Missing("it is past its limit before any amps flow"), 0
	}
	curve := t.Curve
	passed := func(p RunPoint) bool { return t.PassedIn(&p) }
	k := slices.IndexFunc(curve, passed)
	if k < 0 {
		return quantity.Missing("not reached in this range of speeds"), 0
	}
	over := func(slack float64) func(RunPoint) float64 {
		return func(p RunPoint) float64 { return p.AmpsDC - t.LimitIn(&p)*slack }
	}
	at := func(i int, of func(RunPoint) float64) float64 {
		return zero.Of(func(n float64) float64 { return of(c.at(n)) }, curve[i-1].RPM, curve[i].RPM, of(curve[i-1]), of(curve[i]))
	}
	reached := over(1)
	for k > 1 && reached(curve[k-1]) > 0 {
		k--
	}
	for last := len(curve) - 1; !passed(curve[last]); last-- {
		if passed(curve[last-1]) {
			to = at(last, over(limitSlack))
		}
	}
	return quantity.Of(at(max(k, 1), reached), t.LimitAmps.Origin), to
}

// crossing is the first speed above both cut-ins at which two curves of net amps cross. Below both they
// coincide: nothing comes in, and the rotor takes the same.
func crossing(a, ref *characteristic, curve, other []RunPoint) quantity.Figure {
	last := 0.0
	for i := range curve {
		d := curve[i].NetAmps - other[i].NetAmps
		if curve[i].AmpsDC == 0 || other[i].AmpsDC == 0 {
			if d != 0 {
				last = d
			}
			continue
		}
		if i > 0 && last != 0 && (d > 0) != (last > 0) {
			return quantity.Of(crossed(a, ref, curve[i-1].RPM, curve[i].RPM, last, d))
		}
		last = d
	}
	return quantity.Missing("the curves do not cross in this range of speeds")
}

// crossed is where two curves cross between two speeds. Where they cross at a narrow angle the
// interpolation puts the crossing off by more than a part in ten thousand of the speed: so both are
// solved there, and the last step follows from the angle.
func crossed(a, ref *characteristic, low, high, before, after float64) float64 {
	drawn := func(n float64) float64 { return a.at(n).NetAmps - ref.at(n).NetAmps }
	n := zero.Of(drawn, low, high, before, after)
	one, other := *a.r, *ref.r
	is := one.at(n, a.at(n).WindingC).NetAmps - other.at(n, ref.at(n).WindingC).NetAmps
	h := 1e-3 * (high - low)
	if angle := (drawn(n+h) - drawn(n-h)) / (2 * h); angle != 0 {
		return max(low, min(high, n-(is-drawn(n))/angle))
	}
	return n
}
