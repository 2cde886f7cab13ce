package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A weaker field in place of another winding
//
// A wound rotor that passes a limit, or drags its engine down, at the field current in use may be
// right at a smaller one, which costs no copper. The field currents that leave the battery the most
// are known by then (fieldcost.go); they are tried first, then a few parts of the one in use, and so
// is a regulator. Only what stands all conditions, drags nothing and still charges is named. At a
// wind rotor neither is tried: what it stands is a matter of every wind.
//
// Cost: some ten settled speeds for each that fails, only for a trial that is blamed.

// calmParts are the parts of a field current, or of the most net amps, that are tried in turn; ours.
var calmParts = [...]float64{0.9, 0.8, 0.7, 0.6, 0.5, 0.4}

// calmKeeps is the part of what flows now that a remedy leaves in every condition, so that none is
// named which mends by hardly charging; ours.
const calmKeeps = 0.5

// blamed reports whether a trial passes a limit, gets too hot or drags its drive: what a weaker field
// may mend.
func (of offers) blamed(o *TrialOutcome) bool {
	hot := o.HottestC.Known() && o.HottestC.Value > of.air.meanC || o.Burns()
	return hot || o.OverLimit() || o.dragged(draggedSaid) != nil
}

// calmer is the field current, and the regulator's setting, that mend what a trial is blamed for; ""
// where none of those tried does.
func (of offers) calmer(t job.Trial, o *TrialOutcome, c *characteristic) string {
	e := of.rotor
	if c == nil || !e.wound || of.flux.curve == nil || !e.watts.Known() || of.drive.kind == "wind" || of.dc.notBattery != "" || !of.blamed(o) {
		return ""
	}
	return joined(", or ", of.weaker(t, o, c.r), of.ruled(t, o, c.r))
}

// weaker is the smaller field current that mends it and brings the most in the usual condition: one of
// those that are the best of a condition, else the largest of its parts.
func (of offers) weaker(t job.Trial, o *TrialOutcome, r *charger) string {
	full, best, text := of.rotor.amps.Value, 0.0, ""
	try := func(amps float64) bool {
		if amps = roundDown(amps); !(amps > 0 && amps < full*(1-fieldApart)) {
			return false
		}
		weak := r.excited(of.flux.at(amps)/of.flux.perTurn.Value, of.rotor.coil.Watts(amps))
		brings, net, ok := of.calm(t, o, weak)
		if ok && net > best {
			best, text = net, fmt.Sprintf("a field current of %s A in place of %s A: %s", figures(amps), figures(full), brings)
		}
		return ok
	}
	for _, f := range []quantity.Figure{o.BestSlow, o.BestUsual, o.BestTop} {
		try(f.Value)
	}
	for _, part := range calmParts {
		if text != "" || try(part*full) {
			break
		}
	}
	return text
}

// ruled is the regulator's setting that mends it: the amps wanted, else the largest part of what flows.
func (of offers) ruled(t job.Trial, o *TrialOutcome, r *charger) string {
	most := 0.0
	for i := range o.Operating {
		most = max(most, o.Operating[i].NetAmps)
	}
	tries := []float64{of.wanted.Or(0)}
	for _, part := range calmParts {
		tries = append(tries, roundDown(part*most))
	}
	for _, amps := range tries {
		if !(amps > 0 && amps < most*(1-fieldApart)) {
			continue
		}
		held := *r
		held.holder = newRegulator(&job.BatterySpec{MostAmps: quantity.Known(amps)}, of.rotor, of.flux)
		if brings, _, ok := of.calm(t, o, &held); ok {
			return fmt.Sprintf("a Most current of %s A: %s", figures(amps), brings)
		}
	}
	return ""
}

// calm is the net amps in each condition, in words and in the usual one; ok where it stands what
// flows, keeps the drive's speed and charges wherever it did.
func (of offers) calm(t job.Trial, o *TrialOutcome, r *charger) (words string, net float64, ok bool) {
	r, names := r.anew(), ""
	for i := range of.drive.conditions {
		c, at := &of.drive.conditions[i], o.in(i)
		if at == nil || c.Same != "" {
			continue
		}
		run := r.settleAbove(o.CutInRPM.Value, of.drive.given(c.X.Value), max(c.asked, at.RPM, 1), c.asked, of.air.ambientC)
		hot := run.TooHot || of.air.still.Known() && run.WindingC > of.air.meanC
		brings := run.NetAmps
		if hot || o.Limits.over(run, t.Connection, of.machine) || of.drive.keepsOf(c, &run) < draggedSaid || brings < calmKeeps*at.NetAmps {
			return "", 0, false
		}
		if i == usual {
			net = brings
		}
		words, names = joined(", ", words, amps(brings)), joined(", ", names, c.Name)
	}
	return fmt.Sprintf("%s A net (%s)", words, names), net, net > leastNet
}

// keepsOf is the part of the speed asked for that an engine keeps; 1 of any other drive.
func (s *driveSide) keepsOf(c *Condition, run *RunPoint) float64 {
	if !(c.asked > 0) || yields(s.kind) {
		return 1
	}
	return run.RPM / c.asked
}

// roundDown is amps as a person sets them: to a tenth, below one ampere to a hundredth.
func roundDown(amps float64) float64 {
	if amps < 1 {
		return math.Floor(amps*100) / 100
	}
	return math.Floor(amps*10) / 10
}
