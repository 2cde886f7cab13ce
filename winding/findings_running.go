package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// aboutRunning is what is called out of a trial that turns.
type aboutRunning struct {
	drive   *driveSide
	speeds  *speeds
	air     *thermal
	dc      *dcSide
	reverse quantity.Reading // of the diodes
}

// callOut is about what a trial does when it turns; what would do better was looked for
// before (offers).
func (a aboutRunning) callOut(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	better := o.Mend
	if c, s := o.CutInRPM, a.speeds.slow; a.drive.kind != "wind" && c.Known() && s.Known() && c.Value > s.Value {
		d.add(Doubt, at("turns"), t.Name, better, "", "charging begins at %.0f rpm, above the slow speed of %.0f rpm", c.Value, s.Value)
	}
	if f := o.ACFactor; f.Known() && f.Value > 1.1 {
		d.add(Doubt, at("gauge"), t.Name, fmt.Sprintf("twice the strands with the same metal bring it to %.2f", o.ACFactorSplit.Value), "Dowell; flagged above 1.1", "at the top speed the wire's AC resistance is %.2f times its DC resistance", f.Value)
	}
	a.open(d, at, t, o)
	a.heat(d, at, t, o, better)
	a.net(d, at, t, o, better)
	switch o.region {
	case drive.Stalled, drive.Runaway, drive.Idling, drive.Still, Overload:
		d.add(Doubt, at("turns"), t.Name, better, "balance of drive and alternator", "%s", o.Suits)
	}
	a.charge(d, t, o)
}

// heat is about current and temperature where it really runs.
func (a aboutRunning) heat(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	fix := better
	if fix == "" {
		fix = "a current limit, better cooling"
	}
	for i := range o.Operating {
		p := &o.Operating[i]
		if l := o.LimitAmps; l.Known() && p.AmpsDC > l.Value*limitSlack {
			d.add(Doubt, at("gauge"), t.Name, fix, o.limitSource(), "%.3g A (%s) is over its limit of %.3g A (%s)", p.AmpsDC, a.drive.conditions[indexOf(p.Condition)].Label, l.Value, o.LimitBy)
			break
		}
	}
	if !a.air.still.Known() || len(o.Operating) == 0 {
		return
	}
	if wind := o.coolTo(a.air); a.drive.kind == "wind" && better == "" && wind > 0 {
		fix = fmt.Sprintf("furl it before %.3g m/s", wind)
	}
	switch hot, limit := o.HottestC, a.air.meanC; {
	case !hot.Known():
		d.add(Broken, at("gauge"), t.Name, fix, "steady heat balance", "the winding finds no steady temperature (%s): it burns", o.whereHot(a.drive))
	case hot.Value > limit:
		d.add(Broken, at("gauge"), t.Name, fix, "IEC 60034-1 rise by resistance", "the winding comes to %.0f °C, its class %s stands a mean of %.0f °C", hot.Value, a.air.class, limit)
	}
}

// limitSource is where the rule of the governing limit is from.
func (o *TrialOutcome) limitSource() string {
	if len(o.Each) == 0 {
		return ""
	}
	return o.Each[0].Source
}

// coolTo is the strongest wind of those gone through in which the winding still keeps to
// its class; 0 when there is none.
func (o *TrialOutcome) coolTo(air *thermal) float64 {
	wind := 0.0
	for i := range o.Points {
		if o.Points[i].TooHot || o.Points[i].WindingC > air.meanC {
			break
		}
		wind = o.Points[i].X
	}
	return wind
}

// whereHot names the first state in which the winding finds no steady temperature.
func (o *TrialOutcome) whereHot(d *driveSide) string {
	for i := range o.Points {
		if o.Points[i].TooHot && d.kind == "wind" {
			return fmt.Sprintf("wind from %.3g m/s", o.Points[i].X)
		}
	}
	for i := range o.Operating {
		if o.Operating[i].TooHot {
			return d.conditions[indexOf(o.Operating[i].Condition)].Label
		}
	}
	return "drive at full power"
}

// net is about a rotor that takes more than comes in.
func (a aboutRunning) net(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	p := o.in(usual)
	if p == nil || p.FieldWatts == 0 || p.NetAmps > 0 || p.AmpsDC == 0 {
		return
	}
	fix := better
	if fix == "" && o.BestUsual.Known() {
		fix = fmt.Sprintf("a field current of %.2g A", o.BestUsual.Value)
	}
	d.add(Doubt, at("turns"), t.Name, fix, "", "the rotor takes %[2]s, %[3]s come in (%[1]s): the battery runs down", a.drive.conditions[usual].Label, fmt.Sprintf("%.3g W", p.FieldWatts), fmt.Sprintf("%.3g W", p.BatteryWatts))
}

// ordinaryInsulation is the volts rms between leads up to which ordinary enamel, liner and
// sleeving of a low-voltage stator are not doubted; common practice, no source.
const ordinaryInsulation = 250.0

// open is about the highest voltage there can be.
func (a aboutRunning) open(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	worst, where := o.OpenAtTopVolts, "unloaded at the top speed"
	if o.MostVolts.Known() {
		worst, where = o.MostVolts, o.MostVolts.Why
	}
	if !worst.Known() {
		return
	}
	if r := a.reverse; r.Given() {
		fix := fmt.Sprintf("diodes of %.0f V and more", math.Ceil(worst.Value*2/50)*50)
		worst := a.dc.onDiode(worst)
		switch open, err := drive.OpenAt(1, worst.Value/math.Sqrt2, r.Value, 0); {
		case err != nil:
		case open.DiodesBroken:
			d.add(Broken, "battery.diode_reverse", t.Name, fix, "", "%s the diodes see %.0f V, their rating is %.0f V", where, worst.Value, r.Value)
		case open.DiodesTight:
			d.add(Doubt, "battery.diode_reverse", t.Name, fix, "half the rating; common practice, no source", "%s the diodes see %.0f V, more than half of their %.0f V: no reserve for a battery that comes off", where, worst.Value, r.Value)
		}
	}
	if line := worst.Value / math.Sqrt2; line > ordinaryInsulation {
		d.add(Doubt, at("turns"), t.Name, "liner, sleeving and enamel rated for it, proved by someone with the proper tester; or fewer turns", "common practice, no source",
			"%s there are %.0f V rms between leads: more than the insulation of a low-voltage stator is made for", where, line)
	}
}

// charge calls out charging above the battery's limit.
func (a aboutRunning) charge(d *doubts, t job.Trial, o *TrialOutcome) {
	over := o.OverChargeAmps
	if !over.Known() || over.Value <= 0 {
		return
	}
	fix, load := "a larger battery, or a regulator that holds the field back", ""
	if o.DumpOhms.Known() {
		fix = "a larger battery, a current limit, or a dump load"
		load = fmt.Sprintf("; a dump load for all of it is %.2f Ω and %.0f W", o.DumpOhms.Value, o.DumpWatts.Value)
	}
	d.add(Doubt, "battery.charge_limit", t.Name, fix, "the battery's charge limit", "the most that it charges is %.1f A above the battery's limit%s", over.Value, load)
}
