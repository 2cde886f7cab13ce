package winding

import (
	"fmt"
	"math"

	"slotwright/winding/charge"
	"slotwright/winding/drive"
	"slotwright/winding/field"
	"slotwright/winding/quantity"
)

// FieldPoint is the wound rotor at one speed.
type FieldPoint struct {
	RPM float64 `json:"rpm"`
	// HoldAmps is the field current that holds the regulated (absorption) voltage while
	// the amps wanted flow, or while nothing flows when none are wanted; Enough is false
	// when full field does not do it.
	HoldAmps float64 `json:"hold_field_a"`
	Enough   bool    `json:"enough"`
	// NetWatts is into the battery at full field, less what the field takes.
	NetWatts float64 `json:"net_w"`
}

// FieldRun is what the wound rotor costs and needs.
type FieldRun struct {
	FieldWatts quantity.Figure `json:"field_w"`
	// BreakEvenRPM is the speed below which the field takes more than reaches the
	// battery.
	BreakEvenRPM quantity.Figure `json:"break_even_rpm"`
	// YearLeftOnKWh is a year's energy in wind with its current on all year.
	YearLeftOnKWh quantity.Figure `json:"year_kwh_field_left_on"`
	FieldPoints   []FieldPoint    `json:"field_points,omitempty"`
	// HoldSlow, HoldUsual and HoldTop are the field currents of those points; missing
	// where full field does not hold.
	HoldSlow  quantity.Figure `json:"hold_field_a_slow"`
	HoldUsual quantity.Figure `json:"hold_field_a_usual"`
	HoldTop   quantity.Figure `json:"hold_field_a_top"`
	// BestSlow, BestUsual and BestTop are the field currents that leave the battery the
	// most; BestGainUsual is what that gains over the current in use.
	BestSlow      quantity.Figure `json:"best_field_a_slow"`
	BestUsual     quantity.Figure `json:"best_field_a_usual"`
	BestTop       quantity.Figure `json:"best_field_a_top"`
	BestGainUsual quantity.Figure `json:"best_field_gain_w_usual"`
	// ExciteHoldRPM is the speed below which a field fed from the machine itself falls
	// back, ExciteBuildRPM that from which it builds up without a battery.
	ExciteHoldRPM  quantity.Figure `json:"self_excitation_hold_rpm"`
	ExciteBuildRPM quantity.Figure `json:"self_excitation_build_rpm"`
}

func noField(why string) FieldRun {
	no := quantity.Missing(why)
	return FieldRun{FieldWatts: no, BreakEvenRPM: no, YearLeftOnKWh: no, HoldSlow: no, HoldUsual: no, HoldTop: no, BestSlow: no, BestUsual: no, BestTop: no, BestGainUsual: no,
		ExciteHoldRPM: no, ExciteBuildRPM: no}
}

// runField works out the field's side of a trial.
func (b *bed) runField(c *characteristic, t *TrialOutcome) FieldRun {
	e, r := b.rotor, c.r
	if !e.wound {
		return noField("only for a wound rotor")
	}
	f := noField("needs spin-up readings at two field currents")
	f.FieldWatts, f.BreakEvenRPM, f.YearLeftOnKWh = e.watts, b.gainsFrom(c, t), t.leftOn(&b.drive.year, e)
	if b.flux.curve == nil || !e.watts.Known() {
		return f
	}
	b.hold(&f, r, t)
	b.bestField(&f, r, t)
	if perFlux := t.PeakDCPerRPM.Over(b.flux.perTurn); perFlux.Known() {
		mean := perFlux.Value * b.dc.openMean(b.machine.phases)
		hold, build := field.SelfExcitation(*b.flux.curve, e.coil, b.dc.rectifier.InLoop()*b.dc.diodeVolts.Value, mean, 1.5*b.flux.curve.High)
		f.ExciteHoldRPM, f.ExciteBuildRPM = quantity.Of(hold, quantity.Guessed), quantity.Of(build, quantity.Guessed)
		if !f.ExciteBuildRPM.Known() {
			f.ExciteBuildRPM = quantity.Missing("no residual flux was read: a battery must lend the first ampere")
		}
	}
	return f
}

// leftOn is a year's energy with the rotor's current on all year.
func (t *TrialOutcome) leftOn(year *drive.Weibull, e *excitation) quantity.Figure {
	switch {
	case !t.YearKWh.Known():
		return t.YearKWh
	case !e.watts.Known():
		return e.watts
	}
	return quantity.Of(t.leftOnIn(*year, e.watts.Value), quantity.Guessed)
}

// gainsFrom is the speed from which the battery gets more than the rotor takes of it.
func (b *bed) gainsFrom(c *characteristic, t *TrialOutcome) quantity.Figure {
	e := b.rotor
	switch {
	case !e.wound:
		return quantity.Missing("only for a wound rotor")
	case !e.watts.Known():
		return e.watts
	}
	if rpm := breakEven(c, t.Curve); rpm > 0 {
		return quantity.Of(rpm, e.watts.Origin, t.CutInRPM.Origin)
	}
	return quantity.Missing("it never gives more than the field takes in this range of speeds")
}

// breakEven is the lowest speed at which the battery gets what the field takes; 0 when
// there is none.
func breakEven(c *characteristic, curve []RunPoint) float64 {
	for i := 1; i < len(curve); i++ {
		if curve[i].NetWatts >= 0 && curve[i].AmpsDC > 0 {
			return zeroOf(func(n float64) float64 { return c.at(n).NetWatts },
				curve[i-1].RPM, curve[i].RPM, curve[i-1].NetWatts, curve[i].NetWatts)
		}
	}
	return 0
}

// hold finds the field currents that hold the regulated voltage where it runs.
func (b *bed) hold(f *FieldRun, r *charger, t *TrialOutcome) {
	list := [conditionCount]*quantity.Figure{&f.HoldSlow, &f.HoldUsual, &f.HoldTop}
	full := b.rotor.amps.Value
	if b.rotor.feed != nil && b.dc.absorption.Known() {
		full, _ = b.rotor.feed.at(b.dc.absorption.Value)
	}
	for i, figure := range list {
		*figure = quantity.Missing("needs the speeds")
		at := t.in(i)
		if at == nil || at.RPM == 0 {
			continue
		}
		if !b.dc.absorption.Known() {
			*figure = b.dc.absorption
			continue
		}
		p := b.fieldPoint(r, at, full)
		f.FieldPoints = append(f.FieldPoints, p)
		if *figure = quantity.Of(p.HoldAmps, b.rotor.watts.Origin, quantity.Guessed); !p.Enough {
			*figure = quantity.Missing("full field does not hold it there")
		}
	}
}

// fieldPoint finds the field current that holds the absorption voltage where it runs.
func (b *bed) fieldPoint(r *charger, at *Operating, full float64) FieldPoint {
	p := FieldPoint{RPM: at.RPM, NetWatts: at.NetWatts}
	wanted := b.wanted.Or(0)
	holding := *r
	holding.load.Volts, holding.load.Ohms = b.dc.absorption.Value, b.dc.cable.Value*r.sets
	holds := func(amps float64) bool {
		got := holding.excited(b.flux.at(amps)/b.flux.perTurn.Value, 0).solve(at.RPM, at.WindingC)
		if wanted == 0 {
			return got.Mode != charge.Off
		}
		return got.DCAmps*r.sets >= wanted
	}
	if p.Enough = holds(full); !p.Enough {
		p.HoldAmps = full
		return p
	}
	p.HoldAmps = bisect(0, full, holds)
	return p
}

// At every field current the inductance is that at the current in use. A weaker field fills the
// iron less and leaves more of it, so that a little more field is needed to hold than is said
// here. By how much the readings at one field current do not say.

// # The field current that leaves the battery the most
//
// More of it makes more volts and costs more watts. A regulator should aim at it, and a person sets it:
// so it is one that the winding stands, its limit and its class at the temperature it comes to, the
// battery taking charge or nearly full, and one that does not drag an engine below its speed. It is sought
// up to the highest current that was read, where the curve is known, or the one in use; no further than
// the supply drives. Where the best of all is not among those, the best that is takes its place, and it is
// said where more would come. Where the best is more than a regulator lets in, it is the least that brings
// what is let in.
//
// Cost: ten settled speeds a condition, twice as many again where the best of all is not stood.

// fieldSearch is the search in one condition.
type fieldSearch struct {
	*bed
	r    *charger
	t    *TrialOutcome
	at   *Operating
	c    *Condition
	most float64 // A
	let  float64 // net A
}

// leastGain is the watts that a best field current has to gain to be told; ours.
const leastGain = 0.05

// mostField is the most field current that is looked at, A.
func (b *bed) mostField() float64 {
	e := b.rotor
	if e.driven.Known() {
		return max(e.amps.Value, min(b.flux.curve.High, e.driven.Value))
	}
	return max(e.amps.Value, b.flux.curve.High)
}

// with is the trial at a field current.
func (s *fieldSearch) with(amps float64) *charger {
	return s.r.excited(s.flux.at(amps)/s.flux.perTurn.Value, s.rotor.coil.Watts(amps))
}

// run is where it runs then.
func (s *fieldSearch) run(amps float64) RunPoint {
	return s.with(amps).settle(s.drive.given(s.at.X), s.at.RPM, s.c.asked, s.at.WindingC)
}

// stands reports whether winding and drive stand what comes at a field current for long.
func (s *fieldSearch) stands(amps float64, run *RunPoint) bool {
	if !s.endures(&s.t.Limits, s.t.Connection, *run) || s.drive.keepsOf(s.c, run) < draggedSaid || run.NetAmps > s.let*(1+1e-6) {
		return false
	}
	if !s.dc.absorption.Known() || run.RPM == 0 {
		return true
	}
	full := s.with(amps).against(s.dc.absorption.Value).settle(s.drive.given(s.at.X), run.RPM, s.c.asked, run.WindingC)
	return s.endures(&s.t.Limits, s.t.Connection, full)
}

// find is the best field current and the watts that it leaves the battery.
func (s *fieldSearch) find() (best quantity.Figure, watts float64) {
	net := func(amps float64) float64 { run := s.run(amps); return run.NetWatts }
	amps, watts := highest(net, 0, s.most)
	if watts > 0 && s.run(amps).NetAmps > s.let {
		amps = bisect(0, amps, func(amps float64) bool { return s.run(amps).NetAmps >= s.let })
		watts = net(amps)
	}
	if watts <= 0 {
		return quantity.Missing("no field current leaves the battery anything: switch the field off"), 0
	}
	run := s.run(amps)
	if s.stands(amps, &run) {
		return quantity.Of(amps, quantity.Guessed), watts
	}
	past := "which the winding does not stand"
	if s.endures(&s.t.Limits, s.t.Connection, run) && s.drive.keepsOf(s.c, &run) < draggedSaid {
		past = "which drags the drive down"
	}
	stood, kept := s.stood()
	if kept <= 0 {
		return quantity.Missing(fmt.Sprintf("no field current that it stands leaves the battery anything: most would come at %.2g A, %s", amps, past)), 0
	}
	return quantity.Of(stood, quantity.Guessed).Because(fmt.Sprintf("more would come at %.2g A, %s", amps, past)), kept
}

// stood is the best among those that are stood: the best of a row of them, and from there towards the
// next that brings more until it is no longer stood; 0 watts where none brings anything.
func (s *fieldSearch) stood() (amps, watts float64) {
	const steps = 12
	step := s.most / steps
	for i := 1; i <= steps; i++ {
		if run := s.run(float64(i) * step); run.NetWatts > watts && s.stands(float64(i)*step, &run) {
			amps, watts = float64(i)*step, run.NetWatts
		}
	}
	from := amps
	for _, to := range [...]float64{min(from+step, s.most), max(from-step, 0)} {
		amps, watts = s.towards(to, amps, watts)
	}
	return amps, watts
}

// towards goes by halves towards a field current that is not stood or brings less, as long as it brings more.
func (s *fieldSearch) towards(to, amps, watts float64) (float64, float64) {
	for range 6 {
		middle := (amps + to) / 2
		if run := s.run(middle); run.NetWatts > watts && s.stands(middle, &run) {
			amps, watts = middle, run.NetWatts
			continue
		}
		to = middle
	}
	return amps, watts
}

// bestField is the best field current in each condition.
func (b *bed) bestField(f *FieldRun, r *charger, t *TrialOutcome) {
	list := [conditionCount]*quantity.Figure{&f.BestSlow, &f.BestUsual, &f.BestTop}
	for i, figure := range list {
		*figure = quantity.Missing("needs the speeds")
		at, c := t.in(i), &b.drive.conditions[i]
		if at == nil || at.RPM == 0 || c.Same != "" {
			continue
		}
		best, watts := quantity.Figure{}, at.NetWatts
		if at.Spent || at.Held && b.endures(&t.Limits, t.Connection, at.RunPoint) {
			best = quantity.Of(at.HeldFieldAmps, quantity.Guessed).Because(r.holder.fieldSaid(at))
		} else {
			s := fieldSearch{bed: b, r: r, t: t, at: at, c: c, most: b.mostField(), let: r.holder.least(math.Inf(1))}
			best, watts = s.find()
		}
		if *figure = best; i == usual && best.Known() {
			f.BestGainUsual = quantity.Of(0, quantity.Guessed)
			if gain := watts - at.NetWatts; gain > leastGain {
				f.BestGainUsual.Value = gain
			}
		}
	}
	for i, figure := range list {
		if b.drive.conditions[i].Same != "" && t.in(i) != nil {
			*figure = *list[usual]
		}
	}
}

// highest looks for the highest value of a function with one hump in a stretch, on a grid
// from above until it falls, and then by the parabola through the best three: to about a hundredth of
// the stretch, which is more than a field current is worth.
func highest(f func(float64) float64, low, high float64) (at, value float64) {
	const steps = 6
	h := (high - low) / steps
	var v [steps + 1]float64
	best := steps
	for i := steps; i >= 0; i-- {
		if v[i] = f(low + float64(i)*h); v[i] < v[best] {
			break
		}
		best = i
	}
	at, value = low+float64(best)*h, v[best]
	if best == 0 || best == steps {
		return at, value
	}
	bend := v[best-1] - 2*v[best] + v[best+1]
	if bend >= 0 {
		return at, value
	}
	top := at + h*(v[best-1]-v[best+1])/(2*bend)
	if w := f(top); w > value && !math.IsNaN(w) {
		return top, w
	}
	return at, value
}
