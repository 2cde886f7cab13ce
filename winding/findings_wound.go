package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
)

// farOff is how far in percent a finished winding's ohms or volts may be from what was worked
// out before that is called out (common practice, no source).
const farOff = 10.0

// doubtRecords says when a record speaks of no trial, or of another winding than it names.
func doubtRecords(d *doubts, j *job.Job, wound []WoundOutcome) {
	for i := range wound {
		r := &wound[i]
		at := func(name string) string { return fmt.Sprintf("wound[%d].%s", i, name) }
		if !r.Turns.Known() && j.AsWound[i].Trial != "" && !hasTrial(j.Trials, j.AsWound[i].Trial) {
			d.add(Doubt, at("trial"), "", "name one of the trials", "", "what was wound is called %s, and the job has no such trial", j.AsWound[i].Trial)
			continue
		}
		if off := r.LeadOhms20.Off; off.Known() && (off.Value > farOff || off.Value < -farOff) {
			d.add(Note, at("lead"), r.Trial, "count turns and strands, look at joints, weigh what is left of the wire", "common practice, no source",
				"the finished winding reads %.3g Ω at 20 °C, its turns, wire and mean turn make %.3g", r.LeadOhms20.Read.Value, r.LeadOhms20.Expected.Value)
		}
		if off := r.LineVolts.Off; off.Known() && (off.Value > farOff || off.Value < -farOff) {
			d.add(Note, at("line"), r.Trial, "check the speed, the rotor's current and each coil's way round", "common practice, no source",
				"the finished winding gives %.3g V at %.3g rpm, its turns make %.3g", r.LineVolts.Read.Value, r.RPM.Value, r.LineVolts.Expected.Value)
		}
	}
}

func hasTrial(trials []job.Trial, name string) bool {
	return slices.ContainsFunc(trials, func(t job.Trial) bool { return t.Name == name })
}
