package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// doubtRunning is about what a trial does when it turns.
func (b *Bench) doubtRunning(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	if c, s := o.CutInRPM, b.speeds.slow; b.job.Drive.Kind != "wind" && c.Known() && s.Known() && c.Value > s.Value {
		d.add(Doubt, at("turns"), t.Name, fmt.Sprintf("about %.0f turns would", math.Ceil(o.Turns.Value*c.Value/s.Value)), "", "charging begins at %.0f rpm, above the slow speed of %.0f rpm", c.Value, s.Value)
	}
	if f := o.ACFactor; f.Known() && f.Value > 1.1 {
		d.add(Doubt, at("gauge"), t.Name, fmt.Sprintf("twice the strands with the same metal bring it to %.2f", o.ACFactorSplit.Value), "Dowell; flagged above 1.1", "at the top speed the wire's AC resistance is %.2f times its DC resistance", f.Value)
	}
	b.doubtOpen(d, at, t, o)
	o.Charging.doubt(d, at, t, o)
	o.Driven.doubt(d, at, t)
}

// ordinaryInsulation is the volts rms between leads up to which ordinary enamel, liner and
// sleeving of a low-voltage stator are not doubted; common practice, no source.
const ordinaryInsulation = 250.0

// doubtOpen is about the voltage with nothing connected, at the top speed and in a gale.
func (b *Bench) doubtOpen(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	worst, where := o.OpenAtTopVolts, "at the top speed"
	if g := o.OpenAtGaleVolts; g.Known() && g.Value > worst.Value {
		worst, where = g, "in the gale"
	}
	if !worst.Known() {
		return
	}
	if r := b.job.Battery.DiodeReverseVolts; r.Given() {
		fix := fmt.Sprintf("diodes of %.0f V and more", math.Ceil(worst.Value*2/50)*50)
		switch open, err := drive.OpenAt(1, worst.Value/math.Sqrt2, r.Value, 0); {
		case err != nil:
		case open.DiodesBroken:
			d.add(Broken, "battery.diode_reverse", t.Name, fix, "", "unloaded %s the diodes see %.0f V, their rating is %.0f V", where, worst.Value, r.Value)
		case open.DiodesTight:
			d.add(Doubt, "battery.diode_reverse", t.Name, fix, "half the rating; common practice, no source", "unloaded %s the diodes see %.0f V, more than half of their %.0f V: no reserve for a battery that comes off", where, worst.Value, r.Value)
		}
	}
	if line := worst.Value / math.Sqrt2; line > ordinaryInsulation {
		d.add(Doubt, at("turns"), t.Name, "liner, sleeving and enamel rated for it, proved by someone with the proper tester; or fewer turns", "common practice, no source",
			"unloaded %s there are %.0f V rms between leads: more than the insulation of a low-voltage stator is made for", where, line)
	}
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

// doubt is what the drive calls out.
func (dr *Driven) doubt(d *doubts, at func(string) string, t job.Trial) {
	fix := ""
	if len(dr.Mends) > 0 {
		fix = dr.Mends[0]
	}
	switch dr.region {
	case drive.Stalled, drive.Runaway, drive.Idling, drive.Still, Overload:
		d.add(Doubt, at("turns"), t.Name, fix, "balance of drive and alternator", "%s", dr.Suits)
	}
	dr.SafetyRun.doubt(d, at, t)
}

// doubt calls out charging above the battery's limit.
func (s *SafetyRun) doubt(d *doubts, _ func(string) string, t job.Trial) {
	if over := s.OverChargeAmps; over.Known() && over.Value > 0 {
		d.add(Doubt, "battery.charge_limit", t.Name, "a larger battery, a current limit, or a dump load", "the battery's charge limit",
			"at the top speed it charges %.1f A above the battery's limit; a dump load for all of it is %.2f Ω and %.0f W", over.Value, s.DumpOhms.Value, s.DumpWatts.Value)
	}
}
