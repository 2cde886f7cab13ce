package winding

import (
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/heat"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # Running into the battery
//
// At each speed the bridge is solved with the resistance that the winding has at the
// temperature it comes to, which depends on its loss and so on the current: a fixed
// point, found by the secant from the temperature at the speed before. As the resistance
// grows by 0.4 % a kelvin only, two or three solutions a point do it.
//
// The curve is on a grid of speeds common to all trials, which makes their crossing and
// the speeds at which something is reached a matter of one bracket and bisection.

// runner is a trial ready to run: what the solver wants, per rpm.
type runner struct {
	b        *Bench
	peak     float64 // V of a phase per rpm
	hertz    float64 // per rpm
	ohms20   float64
	henries  float64
	delta    bool
	phases   int
	sets     float64
	load     charge.Load
	inner    float64 // ohms inside the battery, part of the load's
	factor   func(fromC, toC float64) float64
	metal    heat.Metal
	perWatt  float64 // 0: temperature not followed
	openPeak float64 // V DC per rpm, unloaded
}

// runner makes a trial ready, or says what is missing.
func (b *Bench) runner(t job.Trial, o *TrialOutcome) (*runner, string) {
	load, ok := b.dc.load()
	for _, need := range []quantity.Figure{o.PhasePerRPM, o.PhaseOhms20, o.PhaseMilliHenries, b.job.Machine.Poles.Figure("needs the poles")} {
		if !need.Known() {
			return nil, need.Why
		}
	}
	if !ok {
		return nil, b.dc.why
	}
	r := &runner{
		b: b, peak: math.Sqrt2 * o.PhasePerRPM.Value, hertz: b.job.Machine.Poles.Value / 120,
		ohms20: o.PhaseOhms20.Value, henries: o.PhaseMilliHenries.Value / 1000, delta: t.Connection == layout.Delta,
		phases: b.phases, sets: float64(b.sets), load: load, inner: b.dc.inner.Value,
		factor: t.Metal.TempFactor, metal: metalOf(t.Metal), openPeak: o.PeakDCPerRPM.Value,
	}
	// Two sets feed the same battery, so each sees the sum of both currents in it.
	r.load.Ohms *= r.sets
	if b.air.perWatt.Known() {
		r.perWatt = b.air.perWatt.Value
	}
	return r, ""
}

// solve is one set at a speed with the winding at a temperature.
func (r *runner) solve(rpm, celsius float64) charge.Point {
	p, err := charge.Solve(charge.Source{
		EMFPeak: r.peak * rpm, Hertz: r.hertz * rpm, Ohms: r.ohms20 * r.factor(20, celsius),
		Henries: r.henries, Phases: r.phases, Delta: r.delta,
	}, r.load)
	if err != nil {
		return charge.Point{Mode: charge.Off}
	}
	return p
}

// at runs the trial at a speed; warm is a first idea of the winding's temperature.
func (r *runner) at(rpm, warm float64) RunPoint {
	p := r.solve(rpm, warm)
	if r.perWatt == 0 {
		return r.point(rpm, warm, false, p)
	}
	ambient := r.b.air.ambientC
	heats := balance{at: warm, low: ambient, high: hottest}
	for range 40 {
		if p.DCAmps == 0 {
			return r.point(rpm, ambient, false, p)
		}
		next, done := heats.next(ambient + r.perWatt*p.CopperWatts*r.sets)
		if done {
			break
		}
		if heats.low > hottest-1 {
			return r.point(rpm, hottest, true, p)
		}
		heats.at = next
		p = r.solve(rpm, heats.at)
	}
	return r.point(rpm, heats.at, false, p)
}

// point turns the solver's answer into what is shown.
func (r *runner) point(rpm, celsius float64, tooHot bool, p charge.Point) RunPoint {
	iron := r.b.ironWatts(rpm)
	out := RunPoint{
		RPM: rpm, AmpsDC: p.DCAmps * r.sets, VoltsDC: p.DCVolts, PhaseAmpsRMS: p.PhaseAmpsRMS,
		CopperWatts: p.CopperWatts * r.sets, DiodeWatts: p.DiodeWatts * r.sets, IronWatts: iron,
		WindingC: celsius, TooHot: tooHot, OpenVoltsDC: r.openPeak * rpm, Mode: string(p.Mode),
	}
	// The battery takes what goes in at its posts; the cable's part is lost.
	out.BatteryWatts = p.BatteryWatts*r.sets + r.inner*sq(p.DCAmpsRMS*r.sets)
	out.ShaftWatts = p.InputWatts*r.sets + iron
	if rpm > 0 {
		out.TorqueNm = out.ShaftWatts / (2 * math.Pi * rpm / 60)
	}
	if out.ShaftWatts > 0 {
		out.Efficiency = out.BatteryWatts / out.ShaftWatts
	}
	return out
}

// ironWatts is the drag at a speed: the measured one carried by the power 1.5, between
// hysteresis and friction (1) and eddy currents (2); common practice, no source.
func (b *Bench) ironWatts(rpm float64) float64 {
	m := b.job.Machine
	if !m.IronWatts.Given() || !m.IronRPM.Given() || rpm <= 0 {
		return 0
	}
	return m.IronWatts.Value * math.Pow(rpm/m.IronRPM.Value, defaultIronPower)
}

// curvePoints is how many speeds a curve has.
const curvePoints = 49

// run works out the curves of all trials and what is read off them.
func (b *Bench) run(o *Outcome) {
	runners := make([]*runner, len(o.Trials))
	for i := range o.Trials {
		t := &o.Trials[i]
		r, why := b.runner(b.job.Trials[i], t)
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

// grid is the speeds of the curves: to a tenth over the top speed, or to three times
// the highest cut-in when no speed is given.
func (b *Bench) grid(o *Outcome, runners []*runner) []float64 {
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
func (b *Bench) runTrial(r *runner, t *TrialOutcome, grid []float64) {
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
func (r *runner) reach(curve []RunPoint, amps quantity.Figure) quantity.Figure {
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
func crossing(a, ref *runner, curve, other []RunPoint) quantity.Figure {
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

// doubt is what the running calls out.
func (c *Charging) doubt(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	for _, p := range c.AtSpeeds {
		if p.TooHot {
			d.add(Broken, at("gauge"), t.Name, "thicker wire, better cooling, or less current", "steady heat balance", "at %.0f rpm the winding comes to more than %.0f °C", p.RPM, hottest-1)
			break
		}
	}
	if a, l := c.AmpsUsual, o.LimitAmps; a.Known() && l.Known() && a.Value > l.Value*1.005 {
		d.add(Doubt, at("gauge"), t.Name, "thicker wire or a current limit", o.LimitBy, "%.1f A at the usual speed is over its limit of %.1f A (%s)", a.Value, l.Value, o.LimitBy)
	} else if a := c.AmpsTop; a.Known() && l.Known() && a.Value > l.Value*1.005 {
		d.add(Doubt, at("gauge"), t.Name, "thicker wire or a current limit", o.LimitBy, "%.1f A at the top speed is over its limit of %.1f A (%s)", a.Value, l.Value, o.LimitBy)
	}
}
