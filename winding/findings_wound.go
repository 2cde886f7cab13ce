package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// doubtRecords says when a record refers to no trial, or to another winding than it names. A reading
// outside the limits around its plan is a doubt; one far from a plan whose ± is unknown, or as large,
// is worth knowing.
func doubtRecords(d *doubts, j *job.Job, records []wound.Record, magnets bool) {
	for i := range records {
		doubtWarm(d, j, i)
		r := &records[i]
		if !r.Turns.Known() && j.AsWound[i].Trial != "" && !hasTrial(j.Trials, j.AsWound[i].Trial) {
			d.add(Finding{Severity: Doubt, Path: job.PathOf("wound", i, "trial"), Fix: "name one of the trials"},
				"what was wound is called %s, and the job has no such trial", j.AsWound[i].Trial)
			continue
		}
		c := contradicting{d, r, i, magnets}
		c.wire(&j.AsWound[i])
		c.electric()
		c.uneven()
		c.warmth()
	}
}

// contradicting says where a record contradicts its plan.
type contradicting struct {
	*doubts
	r       *wound.Record
	i       int
	magnets bool
}

func (c contradicting) at(field string) string { return job.PathOf("wound", c.i, field) }

// say reports a reading that is far from its plan.
func (c contradicting) say(p wound.Proof, field, fix, format string, args ...any) {
	if !p.Far() {
		return
	}
	c.call(p, field, fix, format, args...)
}

// call reports a reading: as a doubt where it lies outside its limits.
func (c contradicting) call(p wound.Proof, field, fix, format string, args ...any) {
	rank := Note
	if p.Outside() {
		rank = Doubt
	}
	c.add(Finding{Severity: rank, Path: c.at(field), Trial: c.r.Trial, Fix: fix, Source: job.Practice}, format, args...)
}

// uneven reports pairs of leads that differ, with their mean where that is off too.
func (c contradicting) uneven() {
	for _, check := range c.r.Checks() {
		p := check.Proof
		if !p.Unlike() {
			continue
		}
		mean := ""
		if s := p.Stand(); s == wound.Low || s == wound.High {
			mean = "; their mean is " + p.OffInWords()
		}
		fix, source := "read each pair again, at one speed", job.Practice
		if check.Field == "lead" {
			fix, source = "read each pair again, the probes pressed alike", "ANSI/EASA AR100"
		}
		c.add(Finding{Severity: Doubt, Path: c.at(check.Field), Trial: c.r.Trial, Fix: fix, Source: source},
			"of the %s a pair is %.2g %% off the mean of all, where %.2g %% is allowed (%s%s): %s", check.Label, 100*p.Apart(), 100*p.Even(), check.Pairs(), mean, check.Speaks())
	}
}

// wire is about the wire used, by length and by weight.
func (c contradicting) wire(given *job.AsWound) {
	turn, by := c.r.MeanTurnMM, "wire_length"
	if !given.Metres.Given() {
		by = "wire_weight"
	}
	c.say(turn, by, "count turns and coils again, and what was left over", "by the wire used up one turn is %s mm long, the plan has %s", figures(turn.Read.Value), figures(turn.Expected.Value))
	c.say(c.r.WireKg, "wire_weight", "read the scales again, the empty spool and what is left on it taken off; the mean turn goes by the length",
		"the winding is said to have taken %.3g kg of wire, the plan has %.3g kg, and the length that was used weighs %.3g kg", c.r.WireKg.Read.Value, c.r.WireKg.Expected.Value, lengthKg(c.r))
}

// lengthKg is the weight of the wire by its length: the plan's weight times the mean turn by that
// length over the planned one.
func lengthKg(r *wound.Record) float64 {
	return r.WireKg.Expected.Value * r.MeanTurnMM.Read.Value / r.MeanTurnMM.Expected.Value
}

// electric is about ohms, volts and cut-in.
func (c contradicting) electric() {
	r := c.r
	if byMean(r.LeadOhms20) && r.UnitAsked() == "" {
		c.call(r.LeadOhms20, "lead", "count turns and strands, look at joints, weigh what is left of the wire",
			"the finished winding reads %s Ω at 20 °C, its turns, wire and mean turn make %s%s", figures(r.LeadOhms20.Read.Value), figures(r.LeadOhms20.Expected.Value), firstFault(r))
	}
	if byMean(r.LineVolts) {
		fix := "check the speed, the rotor's current and the polarity of each coil"
		if c.magnets {
			fix = "check the speed and each coil's way round"
		}
		if ohmsNamedIt(r) {
			fix = "mend what makes its ohms so, and read the volts again"
		}
		c.call(r.LineVolts, "line", fix,
			"the finished winding gives %.3g V at %s rpm%s, its turns make %.3g%s", r.LineVolts.Read.Value, figures(r.RPM.Value), atField(r), r.LineVolts.Expected.Value, faultOfVolts(r))
	}
	if r.CutInRPM.Outside() {
		c.say(r.CutInRPM, "cut_in", "check the tachometer; where the volts are right, battery, diodes and cable",
			"the finished winding began to charge at %s alternator rpm, worked out are %s", figures(r.CutInRPM.Read.Value), figures(r.CutInRPM.Expected.Value))
	}
}

// warmth is about a winding that gets much warmer per watt than assumed.
func (c contradicting) warmth() {
	rise := c.r.RisePerWatt
	fix, reckoned := "write it at Rise per watt, on Machine, and look at every temperature and limit again", ""
	switch {
	case rise.NoCooling() != "":
		fix = "stop; look for a coil hotter than its fellows, at each pair's ohms and volts, and at what it takes to turn it"
	case rise.Warmer() == "":
		return
	}
	if rise.Expected.Origin.Weak() {
		reckoned = "a guess of "
	}
	c.add(Finding{Severity: Doubt, Path: c.at("warm"), Trial: c.r.Trial, Fix: fix, Source: job.Practice},
		"after an hour it rose %.3g K for each watt, and the temperatures are worked out with %s%.3g%s", rise.Read.Value, reckoned, rise.Expected.Value, rise.NoCooling())
}

// byMean reports whether the mean of ohms or volts is reported by itself: it is off, or far, and its
// pairs, which say more, are alike.
func byMean(p wound.Proof) bool { return !p.Unlike() && (p.Outside() || p.Far()) }

// firstFault is the likeliest explanation of the readings.
func firstFault(r *wound.Record) string {
	if len(r.Likely) == 0 {
		return ""
	}
	words := ": likely " + r.Likely[0].Fault
	if r.Likely[0].ByOhms {
		words += ", which the volts do not confirm"
	}
	return words
}

// faultOfVolts is firstFault where the ohms have not given it already.
func faultOfVolts(r *wound.Record) string {
	switch {
	case ohmsNamedIt(r):
		return ": the same, as with its ohms"
	case r.LeadOhms20.Outside():
		return ""
	}
	return firstFault(r)
}

// ohmsNamedIt reports whether a fault that the volts bear out is named beside the ohms.
func ohmsNamedIt(r *wound.Record) bool {
	return r.LeadOhms20.Outside() && len(r.Likely) > 0 && !r.Likely[0].ByOhms
}

// atField is the field current of a record's volts, "" with magnets.
func atField(r *wound.Record) string {
	if !r.FieldAmps.Known() {
		return ""
	}
	return fmt.Sprintf(" and %.3g A of field", r.FieldAmps.Value)
}

// doubtRest asks in which unit the temperature of a winding at rest was meant.
func doubtRest(d *doubts, j *job.Job, records []wound.Record) {
	for _, path := range j.WarmAtRest {
		words := fmt.Sprintf("%.0f °C at rest, or %.0f °F? That would be %.0f °C", j.Old.LeadOhmsC.Value, j.Old.LeadOhmsC.Value, quantity.Celsius[1].Base(j.Old.LeadOhmsC.Value))
		if table, i, _ := job.SplitPath(path); table == "wound" {
			words = records[i].UnitAsked()
		}
		if words != "" {
			d.add(Finding{Severity: Doubt, Path: path, Fix: "write °F or °C behind it"}, "the lengths are in inches: %s", words)
		}
	}
}

// doubtWarm says when a winding is recorded as colder, after an hour's charging, than the air round it:
// another unit was meant.
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
