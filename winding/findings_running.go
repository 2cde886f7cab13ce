package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// doubtRunning is about what a trial does when it turns.
func (b *Bench) doubtRunning(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	better, offer := b.better(t, o)
	o.Mend, o.Offer = better, offer
	if c, s := o.CutInRPM, b.speeds.slow; b.drive.kind != "wind" && c.Known() && s.Known() && c.Value > s.Value {
		d.add(Doubt, at("turns"), t.Name, better, "", "charging begins at %.0f rpm, above the slow speed of %.0f rpm", c.Value, s.Value)
	}
	if f := o.ACFactor; f.Known() && f.Value > 1.1 {
		d.add(Doubt, at("gauge"), t.Name, fmt.Sprintf("twice the strands with the same metal bring it to %.2f", o.ACFactorSplit.Value), "Dowell; flagged above 1.1", "at the top speed the wire's AC resistance is %.2f times its DC resistance", f.Value)
	}
	b.doubtOpen(d, at, t, o)
	b.doubtHeat(d, at, t, o, better)
	b.doubtNet(d, at, t, o, better)
	switch o.region {
	case drive.Stalled, drive.Runaway, drive.Idling, drive.Still, Overload:
		d.add(Doubt, at("turns"), t.Name, better, "balance of drive and alternator", "%s", o.Suits)
	}
	b.doubtCharge(d, t, o)
}

// better is the winding that would do better, worked out once for all that a trial is
// blamed for; "" when it is blamed for nothing that turns and wire could mend.
func (b *Bench) better(t job.Trial, o *TrialOutcome) (string, *Offer) {
	at := o.in(usual)
	if at == nil {
		return "", nil
	}
	limit := o.LimitAmps
	late := b.drive.kind != "wind" && o.CutInRPM.Known() && b.speeds.slow.Known() && o.CutInRPM.Value > b.speeds.slow.Value
	over := limit.Known() && o.SteadyAmps.Known() && o.SteadyAmps.Value > limit.Value*limitSlack
	hot := o.HottestC.Known() && o.HottestC.Value > b.air.meanC || at.TooHot
	clean := !late && !over && !hot && at.NetAmps > 0
	if clean && (o.region == drive.Charging || o.region == "") {
		return "", nil
	}
	return b.mendFor(t, o, clean)
}

// doubtHeat is about current and temperature where it really runs.
func (b *Bench) doubtHeat(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	fix := better
	if fix == "" {
		fix = "a current limit, better cooling"
	}
	for i := range o.Operating {
		p := &o.Operating[i]
		if l := o.LimitAmps; l.Known() && p.AmpsDC > l.Value*limitSlack {
			d.add(Doubt, at("gauge"), t.Name, fix, o.limitSource(), "%.3g A (%s) is over its limit of %.3g A (%s)", p.AmpsDC, b.drive.conditions[indexOf(p.Condition)].Label, l.Value, o.LimitBy)
			break
		}
	}
	if !b.air.still.Known() || len(o.Operating) == 0 {
		return
	}
	if wind := o.coolTo(b); b.drive.kind == "wind" && better == "" && wind > 0 {
		fix = fmt.Sprintf("furl it before %.3g m/s", wind)
	}
	switch hot, limit := o.HottestC, b.air.meanC; {
	case !hot.Known():
		d.add(Broken, at("gauge"), t.Name, fix, "steady heat balance", "the winding finds no steady temperature (%s): it burns", o.whereHot(b))
	case hot.Value > limit:
		d.add(Broken, at("gauge"), t.Name, fix, "IEC 60034-1 rise by resistance", "the winding comes to %.0f °C, its class %s stands a mean of %.0f °C", hot.Value, b.air.class, limit)
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
func (o *TrialOutcome) coolTo(b *Bench) float64 {
	wind := 0.0
	for i := range o.Points {
		if o.Points[i].TooHot || o.Points[i].WindingC > b.air.meanC {
			break
		}
		wind = o.Points[i].X
	}
	return wind
}

// whereHot names the first state in which the winding finds no steady temperature.
func (o *TrialOutcome) whereHot(b *Bench) string {
	for i := range o.Points {
		if o.Points[i].TooHot && b.drive.kind == "wind" {
			return fmt.Sprintf("wind from %.3g m/s", o.Points[i].X)
		}
	}
	for i := range o.Operating {
		if o.Operating[i].TooHot {
			return b.drive.conditions[indexOf(o.Operating[i].Condition)].Label
		}
	}
	return "drive at full power"
}

// doubtNet is about a rotor that takes more than comes in.
func (b *Bench) doubtNet(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	p := o.in(usual)
	if p == nil || p.FieldWatts == 0 || p.NetAmps > 0 || p.AmpsDC == 0 {
		return
	}
	fix := better
	if fix == "" && o.BestUsual.Known() {
		fix = fmt.Sprintf("a field current of %.2g A", o.BestUsual.Value)
	}
	d.add(Doubt, at("turns"), t.Name, fix, "", "the rotor takes %[2]s, %[3]s come in (%[1]s): the battery runs down", b.drive.conditions[usual].Label, fmt.Sprintf("%.3g W", p.FieldWatts), fmt.Sprintf("%.3g W", p.BatteryWatts))
}

// ordinaryInsulation is the volts rms between leads up to which ordinary enamel, liner and
// sleeving of a low-voltage stator are not doubted; common practice, no source.
const ordinaryInsulation = 250.0

// doubtOpen is about the highest voltage there can be.
func (b *Bench) doubtOpen(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	worst, where := o.OpenAtTopVolts, "unloaded at the top speed"
	if o.MostVolts.Known() {
		worst, where = o.MostVolts, o.MostVolts.Why
	}
	if !worst.Known() {
		return
	}
	if r := b.job.Battery.DiodeReverseVolts; r.Given() {
		fix := fmt.Sprintf("diodes of %.0f V and more", math.Ceil(worst.Value*2/50)*50)
		worst := b.dc.onDiode(worst)
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

// doubtCharge calls out charging above the battery's limit.
func (b *Bench) doubtCharge(d *doubts, t job.Trial, o *TrialOutcome) {
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
