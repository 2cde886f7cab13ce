package winding

import (
	"fmt"
	"math"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A weaker field in place of another winding
//
// A wound rotor that passes a limit, or drags its engine down, at the field current in use may be right
// at a smaller one, which costs no copper. The field currents that leave the battery the most are known
// by now (bestfield.go); they are tried first, then a few parts of the one in use, and so is a
// regulator. Only a setting that withstands all conditions, drags nothing and still charges is named.
// For a wind rotor neither is tried: what it withstands depends on every wind.
//
// Cost: three to ten solved points for each that fails, twice as many where a regulator holds, only for a
// trial that is blamed. A condition in which one fails usually fails the next too, so it is tested first.
// What is known already is not solved: field currents that the search for the best found too strong,
// and a regulator that changes nothing where the trial runs, or leaves too little.

// calmParts are the parts of a field current, or of the highest net amps, tried in turn; our choice.
var calmParts = [...]float64{0.9, 0.8, 0.7, 0.6, 0.5, 0.4}

// calmKeeps is the part of the present current that a remedy must leave in every condition, so that
// none is named that cures by hardly charging; our choice.
const calmKeeps = 0.5

// calming is one search for a setting that brings less.
type calming struct {
	offers
	t     job.Trial
	o     *TrialOutcome
	r     *charger // as it runs now
	fails int      // the condition in which the last one tried failed
}

// blamed reports whether a trial passes a limit, gets too hot, drags or holds back its drive, or takes more for
// its rotor than comes in: what a weaker field may cure.
func (of offers) blamed(o *TrialOutcome) bool {
	hot := o.HottestC.Known() && o.HottestC.Value > of.air.meanC || o.Burns()
	return hot || o.OverLimit() || o.dragged(draggedSaid) != nil || o.stalls() != nil || o.in(usual) != nil && o.in(usual).NetAmps < 0
}

// calmer is the field current, and the regulator's setting, that cure what a trial is blamed for; ""
// where none of those tried does.
func (of offers) calmer(t job.Trial, o *TrialOutcome, c *characteristic) string {
	e := of.rotor
	if c == nil || !e.wound || of.flux.curve == nil || !e.watts.Known() || of.drive.kind == job.DriveWind || of.dc.notBattery != "" || !of.blamed(o) {
		return ""
	}
	s := calming{offers: of, t: t, o: o, r: c.r, fails: top}
	return joined(", or ", s.weaker(), s.ruled())
}

// weaker is the smaller field current that cures it and brings the most in the usual condition: one
// that is the best of a condition, else the largest part of the present one.
func (s *calming) weaker() string {
	full, best, text := s.rotor.amps.Value, 0.0, ""
	var tried []float64
	try := func(amps float64) bool {
		if amps = roundDown(amps); !(amps > 0 && amps < full*(1-fieldApart)) || slices.Contains(tried, amps) || s.notStood(amps) {
			return false
		}
		tried = append(tried, amps)
		weak := s.r.excited(s.flux.at(amps)/s.flux.perTurn.Value, s.rotor.coil.Watts(amps))
		brings, net, ok := s.calm(weak)
		if ok && net > best {
			best, text = net, fmt.Sprintf("a field current of %s A (chopped, not by a rheostat) in place of %s A: %s", figures(amps), figures(full), brings)
		}
		return ok
	}
	for _, f := range [...]quantity.Figure{s.o.BestSlow, s.o.BestUsual, s.o.BestTop} {
		try(f.Value)
	}
	for _, part := range calmParts {
		if text != "" || try(part*full) {
			break
		}
	}
	return text
}

// ruled is the regulator's setting that cures it: the amps wanted, else the largest part of what flows.
func (s *calming) ruled() string {
	most := 0.0
	for i := range s.o.Operating {
		most = max(most, s.o.Operating[i].NetAmps)
	}
	tries := []float64{s.wanted.Or(0)}
	for _, part := range calmParts {
		tries = append(tries, roundDown(part*most))
	}
	for _, amps := range tries {
		if !(amps > 0 && amps < most*(1-fieldApart)) {
			continue
		}
		held := *s.r
		held.holder = newRegulator(&job.BatterySpec{MostAmps: quantity.Known(amps)}, s.rotor, s.flux)
		if s.cannot(held.holder) {
			continue
		}
		if brings, _, ok := s.calm(&held); ok {
			return fmt.Sprintf("Most current at %s A: %s", figures(amps), brings)
		}
	}
	return ""
}

// notStood reports whether a field current is known to be too strong in one of the conditions.
func (s *calming) notStood(amps float64) bool {
	for i := range s.o.FieldRun.notStood {
		if s.asks(i) && s.o.FieldRun.notStood[i].holds(amps) {
			return true
		}
	}
	return false
}

// cannot reports whether a regulator is known to cure nothing: its setting leaves too little somewhere,
// or lets more through than flows where that is not withstood.
func (s *calming) cannot(g *regulator) bool {
	for i := range conditionCount {
		if !s.asks(i) {
			continue
		}
		at := s.o.in(i)
		if !g.stays() && g.amps < leastKept(at.NetAmps) || s.lets(at, g) && !s.withstands(i, &at.RunPoint) {
			return true
		}
	}
	return false
}

// calm is the net amps in each condition, in words, and in the usual one; ok where it withstands what
// flows, keeps the drive's speed and charges wherever it did.
func (s *calming) calm(r *charger) (words string, net float64, ok bool) {
	r = r.anew()
	var brings [conditionCount]float64
	for k := range brings {
		i := (s.fails + k) % conditionCount
		if !s.asks(i) {
			continue
		}
		if brings[i], ok = s.calmIn(i, r); !ok {
			s.fails = i
			return "", 0, false
		}
	}
	names := ""
	for i := range brings {
		if s.asks(i) {
			words, names = joined(", ", words, amps(brings[i])), joined(", ", names, s.drive.conditions[i].Name)
		}
	}
	return fmt.Sprintf("%s A net (%s)", words, names), brings[usual], brings[usual] > leastNet
}

// asks reports whether the trial runs in a condition that is not the same as another.
func (s *calming) asks(i int) bool { return s.o.in(i) != nil && s.drive.conditions[i].Same == "" }

// calmIn is the net amps in one condition; ok as in calm. A regulator changes nothing where less flows
// than it lets through.
func (s *calming) calmIn(i int, r *charger) (net float64, ok bool) {
	c, at := &s.drive.conditions[i], s.o.in(i)
	run := at.RunPoint
	if !s.lets(at, r.holder) {
		run = r.settleAbove(s.o.CutInRPM.Value, s.drive.given(c.X.Value), max(c.asked, at.RPM, 1), c.asked, s.warmth(at, r.holder))
	}
	return run.NetAmps, s.withstands(i, &run) && run.NetAmps >= leastKept(at.NetAmps)
}

// leastKept is the net amps that a remedy has to leave of those that come: where the battery is discharged
// already it must not be discharged more.
func leastKept(net float64) float64 { return min(net, calmKeeps*net) }

// lets reports whether a regulator changes nothing where the trial runs. A drive that is held back may
// keep its speed with one, and then more current flows.
func (s *calming) lets(at *Operating, g *regulator) bool {
	return g != nil && g.amps >= at.NetAmps && !at.HeldBack
}

// warmth is the starting temperature of the heat balance: where a regulator limits the amps, the
// copper's rise scales with their square.
func (s *calming) warmth(at *Operating, g *regulator) float64 {
	if g == nil || !(at.NetAmps > 0) {
		return s.air.ambientC
	}
	return min(s.air.meanC, s.air.ambientC+(at.WindingC-s.air.ambientC)*sq(g.amps/at.NetAmps))
}

// withstands reports whether winding and drive withstand what flows at a point of a condition.
func (s *calming) withstands(i int, run *RunPoint) bool {
	return s.endures(s.o.besideHeat(s.air), s.t.Connection, *run) && s.drive.keepsOf(&s.drive.conditions[i], run) >= draggedSaid
}

// keepsOf is the part of the speed asked for that an engine keeps; 1 for any other drive.
func (s *driveSide) keepsOf(c *Condition, run *RunPoint) float64 {
	if !(c.asked > 0) || yields(s.kind) {
		return 1
	}
	return run.RPM / c.asked
}

// roundDown rounds amps to what a person sets: to a tenth, below one ampere to a hundredth.
func roundDown(amps float64) float64 {
	if amps < 1 {
		return math.Floor(amps*100) / 100
	}
	return math.Floor(amps*10) / 10
}
