package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// # Where no winding does better
//
// A mend that brings no more is none. Then the bench says instead what stands in the way, from what the
// search found: windings that bring more but do not withstand it; iron and drag, which hold a wind
// rotor before any amps flow, whatever is wound; or what the best of all that were tried brings.

// heavyDrag is the part of the wind's power at the rotor's best speed from which iron and drag stand in
// the way of every winding; common practice, no source.
const heavyDrag = 0.5

// inTheWay says what keeps every winding that fits from doing better than a trial.
func (s *search) inTheWay(o *TrialOutcome) string {
	why := ""
	switch f := s.highest(); {
	case s.best != nil && !s.rejoined:
		why = "this is as good as any"
	case f != nil && f.score > s.more && !same(f.trial, s.own):
		why = s.words(f) + " would bring more and does not withstand it"
		if f.drags.Load() {
			why = s.words(f) + " would bring more and drags the engine far below its speed"
		}
	case f != nil && f.score > s.more:
		why = "every other that fits brings less, and this one does not withstand what flows"
	case s.drive.kind == job.DriveWind:
		why = joined("; ", s.dragHolds(o), s.bestHolds())
	case f == nil && s.begin && s.drags:
		why = "what begins in time drags the engine far below its speed, does not withstand what flows then, or brings nothing"
	case f == nil && s.begin:
		why = "those that begin to charge in time are overloaded or bring nothing"
	case f == nil && s.late:
		why = fmt.Sprintf("too slow: every winding that fits begins after the slow speed, %s alternator rpm", whole(s.speeds.slow))
	case f == nil:
	default:
		why = fmt.Sprintf("the best, %s, brings %s A net (%s)", s.words(f), amps(f.net), s.drive.conditions[usual].Label)
	}
	head := "no winding that fits does better"
	if s.rejoined {
		head = "no other winding that fits does better than these coils in another connection"
	}
	return joined(": ", head, why)
}

// dragHolds says how much of the mean wind goes into iron and drag, where that is what stands in the
// way; "" where it is not.
func (s *search) dragHolds(o *TrialOutcome) string {
	c := &s.drive.conditions[usual]
	rotor := s.drive.shaft.Rotor
	slow := rotor.RPM(c.X.Value, rotor.PeakLambda)
	best := s.drive.shaft.Turns * slow
	given := s.drive.shaft.Efficiency * rotor.Watts(c.X.Value, slow, s.drive.shaft.Density)
	takes := s.drag.at(best)
	at := o.in(usual)
	switch {
	case takes >= heavyDrag*given:
		return fmt.Sprintf("iron and drag take %s W of the %s W that the rotor gives at its best (%s)", figures(takes), figures(given), c.Label)
	case at.AmpsDC == 0 && (at.Region == drive.Still || at.Region == drive.Idling) && at.RPM < best/2:
		return fmt.Sprintf("iron and drag hold the rotor to %.0f alternator rpm before any amps flow, its best is %.0f (%s)", at.RPM, best, c.Label)
	}
	return ""
}

// bestHolds says what the best of those tried brings in the mean wind.
func (s *search) bestHolds() string {
	f := s.top
	if f == nil || f.score < leastYear {
		return "none brings a kilowatt-hour in a year"
	}
	text, p := fmt.Sprintf("the best, %s, brings about %s kWh a year", s.words(f), figures(s.yearKWh(f))), f.usually
	switch p.Region {
	case drive.Stalled:
		text += ", it stalls the rotor too"
	case drive.Idling, drive.Still:
		text += fmt.Sprintf(", in the mean wind it is too slow: turns at %.0f alternator rpm, charging begins at %.0f", p.RPM, f.begins)
	}
	return text
}
