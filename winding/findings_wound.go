package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// farOff is how far in percent a finished winding's ohms or volts may be from what was worked
// out before that is called out (common practice, no source).
const farOff = 10.0

// muchWarmer is how much more in percent a finished winding may rise for each watt than was guessed
// (common practice, no source).
const muchWarmer = 25.0

// doubtRecords says when a record speaks of no trial, or of another winding than it names: what reads
// outside the limits round its plan, and far from it, is a doubt, what is far from a plan that nobody knows the ±
// of, or that may be as far off itself, worth knowing.
func doubtRecords(d *doubts, j *job.Job, wound []WoundOutcome) {
	for i := range wound {
		doubtWarm(d, j, i)
		r := &wound[i]
		if !r.Turns.Known() && j.AsWound[i].Trial != "" && !hasTrial(j.Trials, j.AsWound[i].Trial) {
			d.add(Finding{Severity: Doubt, Path: job.PathOf("wound", i, "trial"), Fix: "name one of the trials"},
				"what was wound is called %s, and the job has no such trial", j.AsWound[i].Trial)
			continue
		}
		c := contradicting{d, r, i}
		c.wire(&j.AsWound[i])
		c.electric()
		c.uneven()
		if rise := r.RisePerWatt; rise.Off.Known() && rise.Expected.Origin.Weak() && rise.Off.Value > muchWarmer {
			d.add(Finding{Severity: Doubt, Path: c.at("warm"), Trial: r.Trial, Fix: "write it at Rise per watt, on Machine, and look at every temperature and limit again", Source: job.Practice},
				"after an hour it rose %.3g K for each watt, and the temperatures are worked out with a guess of %.3g", rise.Read.Value, rise.Expected.Value)
		}
	}
}

// contradicting says where a record contradicts its plan.
type contradicting struct {
	*doubts
	r *WoundOutcome
	i int
}

func (c contradicting) at(field string) string { return job.PathOf("wound", c.i, field) }

// say calls a reading out that is far from its plan.
func (c contradicting) say(p Proof, field, fix, format string, args ...any) {
	if !p.far() {
		return
	}
	rank := Note
	if p.off() {
		rank = Doubt
	}
	c.add(Finding{Severity: rank, Path: c.at(field), Trial: c.r.Trial, Fix: fix, Source: job.Practice}, format, args...)
}

// uneven calls out pairs of leads that are unlike each other while their mean is good.
func (c contradicting) uneven() {
	for _, check := range c.r.Checks() {
		if p := check.Proof; p.Stand() == Uneven {
			c.add(Finding{Severity: Doubt, Path: c.at(check.Field), Trial: c.r.Trial, Fix: "read each pair again, then look at the joints and strands of the phase that is unlike", Source: "ohms: ANSI/EASA AR100; volts: " + job.Practice},
				"of the %s a pair is %.2g %% off the mean of all, and %.2g %% may be: %s", check.Label, 100*p.Apart(), 100*p.Even(), check.Speaks())
		}
	}
}

// wire is about what was used up of it, by length and by weight.
func (c contradicting) wire(given *job.AsWound) {
	turn, by := c.r.MeanTurnMM, "wire_length"
	if !given.Metres.Given() {
		by = "wire_weight"
	}
	c.say(turn, by, "count turns and coils again, and what was left over", "by the wire used up one turn is %s mm long, the plan has %s", figures(turn.Read.Value), figures(turn.Expected.Value))
	c.say(c.r.WireKg, "wire_weight", "read the scales again, the empty spool and what is left on it taken off; the mean turn goes by the length",
		"the winding is said to have taken %.3g kg of wire, the plan has %.3g kg, and the length that was used weighs %.3g kg", c.r.WireKg.Read.Value, c.r.WireKg.Expected.Value, c.r.lengthKg())
}

// lengthKg is what the wire used by its length weighs: the plan's weight, as many times as the mean
// turn by that length is the planned one.
func (r *WoundOutcome) lengthKg() float64 {
	return r.WireKg.Expected.Value * r.MeanTurnMM.Read.Value / r.MeanTurnMM.Expected.Value
}

// electric is about ohms, volts and where it begins to charge.
func (c contradicting) electric() {
	r := c.r
	c.say(r.LeadOhms20, "lead", "count turns and strands, look at joints, weigh what is left of the wire",
		"the finished winding reads %s Ω at 20 °C, its turns, wire and mean turn make %s%s", figures(r.LeadOhms20.Read.Value), figures(r.LeadOhms20.Expected.Value), r.firstFault())
	c.say(r.LineVolts, "line", "check the speed, the rotor's current and each coil's way round",
		"the finished winding gives %.3g V at %s rpm%s, its turns make %.3g%s", r.LineVolts.Read.Value, figures(r.RPM.Value), r.atField(), r.LineVolts.Expected.Value, r.faultOfVolts())
	if r.CutInRPM.off() {
		c.say(r.CutInRPM, "cut_in", "check the tachometer; where the volts are right, battery, diodes and cable",
			"the finished winding began to charge at %s alternator rpm, worked out are %s", figures(r.CutInRPM.Read.Value), figures(r.CutInRPM.Expected.Value))
	}
}

// firstFault is the likeliest fault, behind what was read.
func (r *WoundOutcome) firstFault() string {
	if len(r.Likely) == 0 {
		return ""
	}
	words := ": likely " + r.Likely[0].Fault
	if r.Likely[0].ByOhms {
		words += ", which the volts do not bear out"
	}
	return words
}

// faultOfVolts is firstFault where the ohms have not said it.
func (r *WoundOutcome) faultOfVolts() string {
	if r.LeadOhms20.off() {
		return ""
	}
	return r.firstFault()
}

// atField is the field current that a record's volts go by, "" with magnets.
func (r *WoundOutcome) atField() string {
	if !r.FieldAmps.Known() {
		return ""
	}
	return fmt.Sprintf(" and %.3g A of field", r.FieldAmps.Value)
}

// doubtWarm says when a winding is said to be colder, after an hour's charging, than the air
// round it: the unit is another than was meant.
func doubtWarm(d *doubts, j *job.Job, i int) {
	r := &j.AsWound[i]
	air := r.WarmAirC
	if !air.Given() {
		air = j.Machine.AmbientC
	}
	if r.WarmC.Given() && air.Given() && r.WarmC.Value < air.Value {
		fahrenheit := quantity.Celsius[1].From
		d.add(Finding{Severity: Doubt, Path: job.PathOf("wound", i, "warm"), Fix: "write °C or °F behind it"},
			"after an hour %.0f °C (%.0f °F) is colder than its air, %.0f °C (%.0f °F)", r.WarmC.Value, fahrenheit(r.WarmC.Value), air.Value, fahrenheit(air.Value))
	}
}

func hasTrial(trials []job.Trial, name string) bool {
	return slices.ContainsFunc(trials, func(t job.Trial) bool { return t.Name == name })
}
