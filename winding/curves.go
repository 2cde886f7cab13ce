package winding

import "slotwright/winding/quantity"

// curvePoints is how many speeds a curve has.
const curvePoints = 49

// run works out the curves of all trials and what is read off them.
func (b *Bench) run(o *Outcome) {
	runners := make([]*charger, len(o.Trials))
	for i := range o.Trials {
		t := &o.Trials[i]
		r, why := b.charger(b.job.Trials[i], t)
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
	b.drive(o, runners)
}

func notCharging(why string) Charging {
	no := quantity.Missing(why)
	return Charging{no, no, no, no, no, no, no, no, no, nil, nil, why}
}

// notRun says why a winding is neither charged with nor driven, nor held against the old.
func (t *TrialOutcome) notRun(why string) {
	no := quantity.Missing(why)
	t.Charging, t.Driven, t.OpenAtGaleVolts = notCharging(why), noDrive(why), no
	t.Against = Ratios{no, no, no, no}
}

// grid is the speeds of the curves: to a tenth over the top speed, or to three times
// the highest cut-in when no speed is given.
func (b *Bench) grid(o *Outcome, runners []*charger) []float64 {
	top := 0.0
	for _, s := range []quantity.Figure{b.speeds.top, b.speeds.usual, b.speeds.slow} {
		if s.Known() {
			top = max(top, s.Value*1.1)
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

// runTrial is the curve of one trial and the figures on it.
func (b *Bench) runTrial(r *charger, t *TrialOutcome, grid []float64) {
	t.Curve = make([]RunPoint, len(grid))
	idea := trend{ambient: b.air.ambientC}
	for i, rpm := range grid {
		t.Curve[i] = r.at(rpm, idea.next(rpm))
		idea.add(rpm, t.Curve[i].WindingC)
	}
	at := func(speed quantity.Figure) (RunPoint, quantity.Figure) {
		if !speed.Known() {
			return RunPoint{}, speed
		}
		p := r.at(speed.Value, near(t.Curve, speed.Value).WindingC)
		t.AtSpeeds = append(t.AtSpeeds, p)
		return p, quantity.Of(p.AmpsDC, t.PhasePerRPM.Origin, t.PhaseOhms20.Origin, t.PhaseMilliHenries.Origin)
	}
	_, t.AmpsSlow = at(b.speeds.slow)
	usual, amps := at(b.speeds.usual)
	t.AmpsUsual = amps
	top, amps := at(b.speeds.top)
	t.AmpsTop = amps
	t.HotUsualC, t.HotTopC, t.Efficiency = amps, amps, t.AmpsUsual
	if b.air.perWatt.Known() {
		t.HotUsualC = t.AmpsUsual.Then(func(float64) float64 { return usual.WindingC })
		t.HotTopC = t.AmpsTop.Then(func(float64) float64 { return top.WindingC })
	} else {
		t.HotUsualC, t.HotTopC = b.air.perWatt, b.air.perWatt
	}
	t.Efficiency = t.AmpsUsual.Then(func(float64) float64 { return usual.Efficiency })
	t.TargetRPM = r.reach(t.Curve, b.job.Target.Amps.Figure("needs the amps wanted"))
	t.LimitRPM = r.reach(t.Curve, t.LimitAmps)
}

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
func (r *charger) reach(curve []RunPoint, amps quantity.Figure) quantity.Figure {
	if !amps.Known() {
		return amps
	}
	for i := 1; i < len(curve); i++ {
		if curve[i].AmpsDC < amps.Value {
			continue
		}
		warm := curve[i].WindingC
		over := func(n float64) float64 { return r.at(n, warm).AmpsDC - amps.Value }
		rpm := zeroOf(over, curve[i-1].RPM, curve[i].RPM, curve[i-1].AmpsDC-amps.Value, curve[i].AmpsDC-amps.Value)
		return quantity.Of(rpm, amps.Origin)
	}
	return quantity.Missing("not reached in this range of speeds")
}

// crossing is the first speed above both cut-ins at which two curves cross.
func crossing(a, ref *charger, curve, other []RunPoint) quantity.Figure {
	last := 0.0
	for i := range curve {
		if curve[i].AmpsDC == 0 || other[i].AmpsDC == 0 {
			if d := curve[i].AmpsDC - other[i].AmpsDC; d != 0 {
				last = d
			}
			continue
		}
		d := curve[i].AmpsDC - other[i].AmpsDC
		if i > 0 && last != 0 && (d > 0) != (last > 0) {
			wa, wr := curve[i].WindingC, other[i].WindingC
			return quantity.Of(zeroOf(func(n float64) float64 { return a.at(n, wa).AmpsDC - ref.at(n, wr).AmpsDC },
				curve[i-1].RPM, curve[i].RPM, last, d))
		}
		last = d
	}
	return quantity.Missing("the curves do not cross in this range of speeds")
}
