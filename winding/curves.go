package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// curvePoints is how many speeds a curve has.
const curvePoints = 49

// run works out the curves of all trials and what is read off them.
func (b *bed) run(o *Outcome, trials []job.Trial) {
	runners := make([]*charger, len(o.Trials))
	for i := range o.Trials {
		t := &o.Trials[i]
		r, why := b.charger(trials[i], t)
		if r == nil {
			t.Charging = notCharging(why)
			continue
		}
		runners[i] = r
	}
	grid := b.grid(o, runners)
	for i, r := range runners {
		if r != nil {
			b.runTrial(r, &o.Trials[i], grid)
		}
	}
	for i, r := range runners {
		ref := runners[min(o.Reference, max(0, len(runners)-1))]
		o.Trials[i].CrossRPM = quantity.Missing("there is nothing to cross")
		if r != nil && ref != nil && i != o.Reference {
			o.Trials[i].CrossRPM = crossing(r, ref, o.Trials[i].Curve, o.Trials[o.Reference].Curve)
		}
	}
	b.meetAll(o, runners)
	for i, r := range runners {
		if r != nil {
			t := &o.Trials[i]
			t.LimitRPM = r.reach(t.Curve, t.LimitAmps, bridgeAmps)
		}
	}
}

func notCharging(why string) Charging {
	no := quantity.Missing(why)
	c := Charging{NoCharging: why, HottestC: no, ThirdAmps: no, TargetRPM: no, CrossRPM: no, LimitRPM: no}
	c.readOperating(nil, quantity.Derived, no, no)
	return c
}

// notRun says why a winding is neither charged with nor driven, nor held against the old.
func (t *TrialOutcome) notRun(why string) {
	no := quantity.Missing(why)
	t.Charging, t.Driven, t.OpenAtGaleVolts = notCharging(why), noDrive(why), no
	t.Against, t.FuseAmps = Ratios{no, no, no, no}, no
}

// beyond is how far curves go over the fastest speed asked for: a rotor in wind runs above
// its best tip-speed ratio where it is loaded little.
func (b *bed) beyond() float64 {
	if b.drive.kind == "wind" {
		return 1.35
	}
	return 1.1
}

// grid is the speeds of the curves: to a tenth over the top speed, or to three times
// the highest cut-in when no speed is given.
func (b *bed) grid(o *Outcome, runners []*charger) []float64 {
	top := 0.0
	for _, s := range []quantity.Figure{b.speeds.top, b.speeds.usual, b.speeds.slow} {
		if s.Known() {
			top = max(top, s.Value*b.beyond())
		}
	}
	if top == 0 {
		for i, r := range runners {
			if r != nil && o.Trials[i].CutInRPM.Known() {
				top = max(top, 3*o.Trials[i].CutInRPM.Value)
			}
		}
	}
	grid := make([]float64, curvePoints)
	for i := range grid {
		grid[i] = top * float64(i) / (curvePoints - 1)
	}
	return grid
}

// runTrial is the curve of one trial and the figures on it, as if something held the speed.
func (b *bed) runTrial(r *charger, t *TrialOutcome, grid []float64) {
	t.Curve = make([]RunPoint, len(grid))
	idea := trend{ambient: b.air.ambientC}
	for i, rpm := range grid {
		t.Curve[i] = r.at(rpm, idea.next(rpm))
		idea.add(rpm, t.Curve[i].WindingC)
	}
	resting := r.against(b.dc.held.Value)
	for _, speed := range []quantity.Figure{b.speeds.slow, b.speeds.usual, b.speeds.top} {
		if speed.Known() {
			t.AtSpeeds = append(t.AtSpeeds, resting.at(speed.Value, near(t.Curve, speed.Value).WindingC))
		}
	}
	t.TargetRPM = r.reach(t.Curve, b.wanted.Figure("needs the amps wanted"), netAmps)
}

// netAmps and bridgeAmps are what a curve may be read by.
func netAmps(p RunPoint) float64    { return p.NetAmps }
func bridgeAmps(p RunPoint) float64 { return p.AmpsDC }

// near is the curve's point at or below a speed.
func near(curve []RunPoint, rpm float64) RunPoint {
	best := RunPoint{}
	for _, p := range curve {
		if p.RPM <= rpm {
			best = p
		}
	}
	return best
}

// reach is the lowest speed at which so many amps flow.
func (r *charger) reach(curve []RunPoint, amps quantity.Figure, of func(RunPoint) float64) quantity.Figure {
	if !amps.Known() {
		return amps
	}
	for i := 1; i < len(curve); i++ {
		if of(curve[i]) < amps.Value {
			continue
		}
		warm := curve[i].WindingC
		over := func(n float64) float64 { return of(r.at(n, warm)) - amps.Value }
		rpm := zeroOf(over, curve[i-1].RPM, curve[i].RPM, of(curve[i-1])-amps.Value, of(curve[i])-amps.Value)
		return quantity.Of(rpm, amps.Origin)
	}
	return quantity.Missing("not reached in this range of speeds")
}

// crossing is the first speed above both cut-ins at which two curves of net amps cross.
// Below both they are one: nothing comes in, and the rotor takes the same.
func crossing(a, ref *charger, curve, other []RunPoint) quantity.Figure {
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
			wa, wr := curve[i].WindingC, other[i].WindingC
			return quantity.Of(zeroOf(func(n float64) float64 { return a.at(n, wa).NetAmps - ref.at(n, wr).NetAmps },
				curve[i-1].RPM, curve[i].RPM, last, d))
		}
		last = d
	}
	return quantity.Missing("the curves do not cross in this range of speeds")
}
