package winding

import (
	"slotwright/winding/charge"
	"slotwright/winding/drive"
	"slotwright/winding/field"
	"slotwright/winding/quantity"
	"slotwright/winding/zero"
)

// FieldPoint is the wound rotor at one speed.
type FieldPoint struct {
	RPM float64 `json:"rpm"`
	// HoldAmps is the field current that holds the regulated (absorption) voltage while the amps wanted
	// flow, or while none flow when none are wanted; Enough is false when full field does not do it.
	HoldAmps float64 `json:"hold_field_a"`
	Enough   bool    `json:"enough"`
	// NetWatts is the power into the battery at full field, net of the field's.
	NetWatts float64 `json:"net_w"`
}

// FieldRun is what the wound rotor costs and needs.
type FieldRun struct {
	FieldWatts quantity.Figure `json:"field_w"`
	// BreakEvenRPM is the speed below which the field takes more than reaches the
	// battery.
	BreakEvenRPM quantity.Figure `json:"break_even_rpm"`
	// YearLeftOnKWh is a year's energy in wind with the field current left on all year.
	YearLeftOnKWh quantity.Figure `json:"year_kwh_field_left_on"`
	FieldPoints   []FieldPoint    `json:"field_points,omitempty"`
	// HoldSlow, HoldUsual and HoldTop are the field currents at those points; missing where full field
	// does not hold.
	HoldSlow  quantity.Figure `json:"hold_field_a_slow"`
	HoldUsual quantity.Figure `json:"hold_field_a_usual"`
	HoldTop   quantity.Figure `json:"hold_field_a_top"`
	// BestSlow, BestUsual and BestTop are the field currents that leave the battery the most;
	// BestGainUsual is the gain over the current in use.
	BestSlow      quantity.Figure `json:"best_field_a_slow"`
	BestUsual     quantity.Figure `json:"best_field_a_usual"`
	BestTop       quantity.Figure `json:"best_field_a_top"`
	BestGainUsual quantity.Figure `json:"best_field_gain_w_usual"`
	// ExciteHoldRPM is the speed below which a self-excited field collapses, ExciteBuildRPM that from
	// which it builds up without a battery.
	ExciteHoldRPM  quantity.Figure `json:"self_excitation_hold_rpm"`
	ExciteBuildRPM quantity.Figure `json:"self_excitation_build_rpm"`
	// notStood is the range of field currents that the trial does not withstand in each condition, as
	// far as the search for the best tested them.
	notStood [conditionCount]fieldSpan
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

// leftOn is a year's energy with the field current on all year.
func (t *TrialOutcome) leftOn(year *drive.Weibull, e *excitation) quantity.Figure {
	switch {
	case !t.YearKWh.Known():
		return t.YearKWh
	case !e.watts.Known():
		return e.watts
	}
	return quantity.Of(t.leftOnIn(*year, e.watts.Value), quantity.Guessed)
}

// gainsFrom is the speed from which the battery gets more than the rotor takes.
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
			return zero.Of(func(n float64) float64 { return c.at(n).NetWatts },
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
		*figure = b.noSpeed()
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
	over := func(amps float64) float64 {
		got := holding.excited(b.flux.at(amps)/b.flux.perTurn.Value, 0).solve(at.RPM, at.WindingC)
		if wanted == 0 && got.Mode == charge.Off {
			return -1
		}
		return got.DCAmps*r.sets - wanted
	}
	most := over(full)
	switch p.Enough = most >= 0; {
	case !p.Enough:
		p.HoldAmps = full
	case wanted == 0:
		p.HoldAmps = zero.Bisect(0, full, func(amps float64) bool { return over(amps) >= 0 })
	default:
		p.HoldAmps = zero.Of(over, 0, full, over(0), most)
	}
	return p
}

// At every field current the inductance is that at the current in use. A weaker field saturates the
// iron less and leaves more inductance, so a little more field is needed to hold than is shown here;
// readings at one field current do not say how much.
