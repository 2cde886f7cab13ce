package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
)

// farOff is how far in percent a finished winding's ohms or volts may be from what was worked
// out before that is called out (common practice, no source).
const farOff = 10.0

// muchWarmer is how much more in percent a finished winding may rise for each watt than was guessed
// (common practice, no source).
const muchWarmer = 25.0

// doubtRecords says when a record speaks of no trial, or of another winding than it names.
func doubtRecords(d *doubts, j *job.Job, wound []WoundOutcome) {
	for i := range wound {
		doubtWarm(d, j, i)
		r := &wound[i]
		at := func(name string) string { return fmt.Sprintf("wound[%d].%s", i, name) }
		if !r.Turns.Known() && j.AsWound[i].Trial != "" && !hasTrial(j.Trials, j.AsWound[i].Trial) {
			d.add(Doubt, at("trial"), "", "name one of the trials", "", "what was wound is called %s, and the job has no such trial", j.AsWound[i].Trial)
			continue
		}
		if off := r.LeadOhms20.Off; off.Known() && (off.Value > farOff || off.Value < -farOff) {
			d.add(Note, at("lead"), r.Trial, "count turns and strands, look at joints, weigh what is left of the wire", "common practice, no source",
				"the finished winding reads %s Ω at 20 °C, its turns, wire and mean turn make %s%s", figures(r.LeadOhms20.Read.Value), figures(r.LeadOhms20.Expected.Value), r.firstFault())
		}
		if rise := r.RisePerWatt; rise.Off.Known() && rise.Expected.Origin.Weak() && rise.Off.Value > muchWarmer {
			d.add(Doubt, at("warm"), r.Trial, "write it at Rise per watt, on Machine, and look at every temperature and limit again", "common practice, no source",
				"after an hour it rose %.3g K for each watt, and the temperatures are worked out with a guess of %.3g", rise.Read.Value, rise.Expected.Value)
		}
		if off := r.LineVolts.Off; off.Known() && (off.Value > farOff || off.Value < -farOff) {
			d.add(Note, at("line"), r.Trial, "check the speed, the rotor's current and each coil's way round", "common practice, no source",
				"the finished winding gives %.3g V at %s rpm%s, its turns make %.3g%s", r.LineVolts.Read.Value, figures(r.RPM.Value), r.atField(), r.LineVolts.Expected.Value, r.faultOfVolts())
		}
	}
}

// firstFault is the likeliest fault, behind what was read.
func (r *WoundOutcome) firstFault() string {
	if len(r.Likely) == 0 {
		return ""
	}
	return ": likely " + r.Likely[0].Fault
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
		fahrenheit := func(c float64) float64 { return c*1.8 + 32 }
		d.add(Doubt, fmt.Sprintf("wound[%d].warm", i), "", "write °C or °F behind it", "",
			"after an hour %.0f °C (%.0f °F) is colder than its air, %.0f °C (%.0f °F)", r.WarmC.Value, fahrenheit(r.WarmC.Value), air.Value, fahrenheit(air.Value))
	}
}

func hasTrial(trials []job.Trial, name string) bool {
	return slices.ContainsFunc(trials, func(t job.Trial) bool { return t.Name == name })
}
