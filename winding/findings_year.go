package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
)

// year says by which rule a wound rotor's year in the wind is counted, and what the other rule gives.
func (a aboutRunning) year(d *doubts, t job.Trial, o *TrialOutcome) {
	on := o.YearLeftOnKWh
	if !on.Known() || !o.YearKWh.Known() {
		return
	}
	fix := ""
	if o.YearKWh.Value >= leastYear && o.BreakEvenRPM.Known() {
		fix = fmt.Sprintf("a switch by speed that puts it on from %.0f alternator rpm", o.BreakEvenRPM.Value)
	}
	d.add(Finding{Severity: Note, Path: "field.current", Trial: t.Name, Fix: fix},
		"a year's energy, %s kWh, takes the rotor's current as switched off in winds in which it takes more than comes in; left on all year it is %s kWh", whole(o.YearKWh), whole(on))
}

// yearPastSaid says how much of a year comes in winds that the winding does not withstand, unless the
// remedy is to furl before them, which states what that leaves.
func (t *TrialOutcome) yearPastSaid(better string) string {
	if better == "" || !t.YearPastKWh.Known() || t.YearPastKWh.Value < leastYear {
		return ""
	}
	return fmt.Sprintf("; %s of its %s kWh a year come in winds that it does not withstand", whole(t.YearPastKWh), whole(t.YearKWh))
}

// yearOf says which winds a year's energy counts.
func (t *TrialOutcome) yearOf() string {
	if t.yearWithout() != "" {
		return "every wind up to the furling one but those in which it burns"
	}
	return "every wind up to the furling one"
}

// yearWithout says that the year of a winding that burns in some winds leaves these out.
func (t *TrialOutcome) yearWithout() string {
	if !t.YearKWh.Known() || !slices.ContainsFunc(t.Points, func(p DrivePoint) bool { return p.TooHot }) {
		return ""
	}
	return ", and its year's energy leaves out the winds in which it does"
}
