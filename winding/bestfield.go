package winding

import (
	"fmt"
	"math"

	"slotwright/winding/quantity"
)

// # The field current that leaves the battery the most
//
// A stronger field makes more volts and costs more watts. A regulator should aim at the best field
// current, and a person sets it: so it has to be one that the winding withstands, within its limit and
// its class at its steady temperature, the battery taking charge or nearly full, and one that does not
// drag an engine below its speed. It is searched up to the highest current read, where the curve is
// known, or the one in use, but no further than the supply drives. Where the overall best is not
// withstood, the best that is withstood is given, with the remark that more would come. Where the best
// brings more than the regulator's limit, the smallest current that brings that limit is given.
//
// Watts into the battery have a single hump over the field current. The overall best is found on a row
// of currents, from the top down, and by the parabola through its highest points. Where it is not
// withstood, the best that is lies next to it: below, at the current up to which all is withstood, or
// above, where a stronger field holds the rotor so far back that less flows. The current below is the
// zero of a margin: the excess over the limit that is exceeded most. Amps, heat and the drag on an
// engine all rise with the field up to the hump, and the margin with them. False position (Illinois)
// closes in on it, in three or four field currents to a thousandth of the limit, or of the row's top
// where the margin jumps.
//
// Every field current is run once, starting from its neighbours' temperatures.
//
// Cost: two to eight settled speeds a condition; where the overall best is not withstood four to six
// more, half of them with the battery nearly full too, and up to twenty where the margin jumps, as
// where a rotor breaks free.

// fieldSearch is the search in one condition.
type fieldSearch struct {
	*bed
	r    *charger
	t    *TrialOutcome
	at   *Operating
	c    *Condition
	most float64 // A
	let  float64 // net A
	runs []*fieldRun
	not  fieldSpan // none of them is withstood, as far as was tested
}

// fieldRun is the operating point at a field current.
type fieldRun struct {
	amps float64
	RunPoint
	// past is the factor by which the run exceeds what is withstood, once tested; charged is the same
	// with the battery taking charge.
	past, charged float64
	asked         bool
}

// fieldSpan is a range of field currents, A.
type fieldSpan struct{ from, to float64 }

// holds reports whether a field current lies within it.
func (s fieldSpan) holds(amps float64) bool { return amps >= s.from && amps <= s.to }

const (
	// leastGain is the gain, in watts, from which a best field current is worth telling; our choice.
	leastGain = 0.05
	// fieldSteps is the number of steps of the row from no field current to the highest.
	fieldSteps = 6
	// fieldWithin is how close to a limit the field current is brought, relative to the limit, and to
	// the highest current where the margin jumps.
	fieldWithin = 1e-3
	// letWithin is the same for the amps that a regulator allows.
	letWithin = 1e-5
	mostTries = 60
)

// mostField is the highest field current examined, A.
func (b *bed) mostField() float64 {
	e := b.rotor
	if e.driven.Known() {
		return max(e.amps.Value, min(b.flux.curve.High, e.driven.Value))
	}
	return max(e.amps.Value, b.flux.curve.High)
}

// with is the trial at a field current.
func (s *fieldSearch) with(amps float64) *charger {
	return s.r.excited(s.flux.at(amps)/s.flux.perTurn.Value, s.rotor.coil.Watts(amps))
}

// run is the operating point then.
func (s *fieldSearch) run(amps float64) *fieldRun {
	for _, run := range s.runs {
		if run.amps == amps {
			return run
		}
	}
	run := &fieldRun{amps: amps, RunPoint: s.with(amps).settle(s.drive.given(s.at.X), s.at.RPM, s.c.asked, s.warmth(amps))}
	s.runs = append(s.runs, run)
	return run
}

// warmth is a first guess of the temperature at a field current: linear between the nearest on both
// sides that were run, else that of the nearest.
func (s *fieldSearch) warmth(amps float64) float64 {
	var low, high *fieldRun
	for _, run := range s.runs {
		switch {
		case run.amps < amps && (low == nil || run.amps > low.amps):
			low = run
		case run.amps > amps && (high == nil || run.amps < high.amps):
			high = run
		}
	}
	switch {
	case low != nil && high != nil:
		return low.WindingC + (high.WindingC-low.WindingC)*(amps-low.amps)/(high.amps-low.amps)
	case low != nil:
		return low.WindingC
	case high != nil:
		return high.WindingC
	}
	return s.at.WindingC
}

// past is the margin at a field current: the excess over what winding and drive withstand for long,
// relative to the limit that is exceeded most; 0 or less where it is within all.
func (s *fieldSearch) past(run *fieldRun) float64 {
	if run.asked {
		return run.past
	}
	run.asked = true
	run.charged = max(s.worn(&run.RunPoint), draggedSaid/s.drive.keepsOf(s.c, &run.RunPoint)-1)
	run.past = max(run.charged, s.over(run)-1e-6)
	if run.past > 0 || !s.dc.absorption.Known() || run.RPM == 0 {
		return run.past
	}
	full := s.with(run.amps).against(s.dc.absorption.Value).settle(s.drive.given(s.at.X), run.RPM, s.c.asked, run.WindingC)
	run.past = max(run.past, s.worn(&full))
	return run.past
}

// worn is past for the winding alone, at one point.
func (s *fieldSearch) worn(run *RunPoint) float64 {
	past := s.t.besideHeat(s.air).part(run, s.t.Connection, s.machine)/limitSlack - 1
	if s.air.still.Known() {
		past = max(past, (run.WindingC-s.air.meanC)/(s.air.meanC-s.air.ambientC))
	}
	if run.TooHot {
		past = max(past, 1)
	}
	return past
}

// over is the relative excess of the net amps at a field current over the regulator's limit.
func (s *fieldSearch) over(run *fieldRun) float64 { return run.NetAmps/s.let - 1 }

// find is the best field current and the watts that it leaves the battery.
func (s *fieldSearch) find() (best quantity.Figure, watts float64) {
	run := s.highest()
	if run.NetWatts > 0 && s.over(run) > 0 {
		run = s.within(0, -1, run, s.over, letWithin)
	}
	if run == nil || run.NetWatts <= 0 {
		return quantity.Missing("no field current leaves the battery anything: switch the field off"), 0
	}
	if s.past(run) <= 0 {
		return quantity.Of(run.amps, quantity.Guessed), run.NetWatts
	}
	past := "which the winding does not withstand"
	if s.worn(&run.RunPoint) <= 0 && s.drive.keepsOf(s.c, &run.RunPoint) < draggedSaid {
		past = "which drags the drive down"
	}
	stood := s.stood(run)
	s.not = s.notStood(run)
	if stood == nil {
		return quantity.Missing(fmt.Sprintf("no field current that it withstands leaves the battery anything: most would come at %.2g A, %s", run.amps, past)), 0
	}
	return quantity.Of(stood.amps, quantity.Guessed).Because(fmt.Sprintf("more would come at %.2g A, %s", run.amps, past)), stood.NetWatts
}

// notStood is the range around the overall best that is not withstood with the battery taking charge, as
// far as it was tested; empty if that best itself is withstood.
func (s *fieldSearch) notStood(top *fieldRun) (span fieldSpan) {
	span = fieldSpan{top.amps, top.amps}
	for _, run := range s.runs {
		if run.asked && run.charged > 0 {
			span = fieldSpan{min(span.from, run.amps), max(span.to, run.amps)}
		}
	}
	if top.charged <= 0 {
		return fieldSpan{}
	}
	return span
}

// stood is the best of those withstood where the overall best is not; nil if none of them brings
// anything.
func (s *fieldSearch) stood(top *fieldRun) (best *fieldRun) {
	if below := s.within(0, -1, top, s.past, fieldWithin); below != nil && below.NetWatts > 0 {
		best = below
	}
	before := top
	for i := 1; i <= 2*fieldSteps; i++ {
		amps := s.most * float64(i) / (2 * fieldSteps)
		if amps <= top.amps {
			continue
		}
		run := s.run(amps)
		if run.NetWatts <= 0 || best != nil && run.NetWatts <= best.NetWatts {
			break
		}
		if past := s.past(run); past <= 0 {
			if best = s.within(amps, past, before, s.past, fieldWithin); best == nil {
				best = run
			}
			break
		}
		before = run
	}
	return best
}

// within is the field current just within a limit, between one within it and one past it, to a
// tolerance; nil where there is none. under and margin are the relative excess over the limit, negative
// within it.
func (s *fieldSearch) within(amps, under float64, past *fieldRun, margin func(*fieldRun) float64, near float64) (best *fieldRun) {
	inside, outside, over, side := amps, past.amps, margin(past), 0
	for tries := 0; math.Abs(outside-inside) > near*s.most && tries < mostTries; tries++ {
		at := inside + (outside-inside)*under/(under-over)
		if !(math.Abs(at-inside) > 0 && math.Abs(outside-at) > 0) {
			at = (inside + outside) / 2
		}
		run := s.run(at)
		m := margin(run) + near/2 // aim at half the tolerance, so that it ends within
		if m <= near/2 {
			best = run
			if m >= -near/2 {
				break
			}
			if inside, under = at, m; side == -1 {
				over /= 2
			}
			side = -1
			continue
		}
		if outside, over = at, m; side == 1 {
			under /= 2
		}
		side = 1
	}
	return best
}

// bestField is the best field current in each condition.
func (b *bed) bestField(f *FieldRun, r *charger, t *TrialOutcome) {
	list := [conditionCount]*quantity.Figure{&f.BestSlow, &f.BestUsual, &f.BestTop}
	for i, figure := range list {
		*figure = b.noSpeed()
		at, c := t.in(i), &b.drive.conditions[i]
		if at == nil || at.RPM == 0 || c.Same != "" {
			continue
		}
		best, watts := quantity.Figure{}, at.NetWatts
		if at.Spent || at.Held && b.endures(&t.Limits, t.Connection, at.RunPoint) {
			best = quantity.Of(at.HeldFieldAmps, quantity.Guessed).Because(r.holder.fieldSaid(at))
		} else {
			s := fieldSearch{bed: b, r: r, t: t, at: at, c: c, most: b.mostField(), let: r.holder.least(math.Inf(1))}
			best, watts = s.find()
			f.notStood[i] = s.not
		}
		if *figure = best; i == usual && best.Known() {
			f.BestGainUsual = quantity.Of(0, quantity.Guessed)
			if gain := watts - at.NetWatts; gain > leastGain {
				f.BestGainUsual.Value = gain
			}
		}
	}
	for i, figure := range list {
		if b.drive.conditions[i].Same != "" && t.in(i) != nil {
			*figure = *list[usual]
		}
	}
}

// highest looks for the field current of the most watts: on a row of currents from the top down until
// the watts fall, and then by the parabola through the best three, to about a hundredth of the highest
// current, which is more precision than a field current is worth.
func (s *fieldSearch) highest() *fieldRun {
	h := s.most / fieldSteps
	best, i := s.run(s.most), fieldSteps
	for i > 0 {
		next := s.run(float64(i-1) * h)
		if next.NetWatts < best.NetWatts {
			break
		}
		best, i = next, i-1
	}
	if i == 0 || i == fieldSteps {
		return best
	}
	less, more := s.run(float64(i-1)*h).NetWatts, s.run(float64(i+1)*h).NetWatts
	bend := less - 2*best.NetWatts + more
	if bend >= 0 {
		return best
	}
	if top := s.run(best.amps + h*(less-more)/(2*bend)); top.NetWatts > best.NetWatts {
		return top
	}
	return best
}
