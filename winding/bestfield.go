package winding

import (
	"fmt"
	"math"

	"slotwright/winding/quantity"
)

// # The field current that leaves the battery the most
//
// More of it makes more volts and costs more watts. A regulator should aim at it, and a person sets it:
// so it is one that the winding stands, its limit and its class at the temperature it comes to, the
// battery taking charge or nearly full, and one that does not drag an engine below its speed. It is sought
// up to the highest current that was read, where the curve is known, or the one in use; no further than
// the supply drives. Where the best of all is not among those, the best that is takes its place, and it is
// said where more would come. Where the best is more than a regulator lets in, it is the least that brings
// what is let in.
//
// Watts into the battery have one hump over the field current. The best of all is found on a row of
// currents from above and by the parabola through its top. Where that is not stood, the best that is
// lies next to it: below, at the current up to which all is stood, or above, where a stronger field holds
// the rotor so far back that less flows. Below it is sought as the zero of a margin: by how much what is
// the furthest past its limit is past it. Amps, heat and the drag on an engine all rise with the field up
// to the hump, and the margin with them. It is closed in on by false position (Illinois), which takes
// three or four field currents to come within a thousandth of the limit, or of the row where
// the margin jumps.
//
// Every field current is run once. It begins as warm as its neighbours tell.
//
// Cost: two to eight settled speeds a condition; where the best of all is not stood four to six more, half of
// them with the battery nearly full too, and up to twenty where the margin jumps, as where a rotor comes free.

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
	not  fieldSpan // in which none is stood, as far as it was found
}

// fieldRun is where it runs at a field current.
type fieldRun struct {
	amps float64
	RunPoint
	// past is by how much that is past what is stood, once it was asked for, charged the same while the
	// battery takes charge.
	past, charged float64
	asked         bool
}

// fieldSpan is a stretch of field currents, A.
type fieldSpan struct{ from, to float64 }

// holds reports whether a field current lies in it.
func (s fieldSpan) holds(amps float64) bool { return amps >= s.from && amps <= s.to }

const (
	// leastGain is the watts that a best field current has to gain to be told; ours.
	leastGain = 0.05
	// fieldSteps is how many steps there are in the row from no field current to the most.
	fieldSteps = 6
	// fieldWithin is how near a limit the field current is brought, a part of the limit, and of the most
	// where what is past the limit jumps.
	fieldWithin = 1e-3
	// letWithin is the same of the amps that a regulator lets in.
	letWithin = 1e-5
	mostTries = 60
)

// mostField is the most field current that is looked at, A.
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

// run is where it runs then.
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

// warmth is a first idea of how warm it gets at a field current: in a straight line between the nearest
// on both sides that were run, else as the nearest.
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

// past is by how much what comes at a field current is past what winding and drive stand for long: a part
// of the limit that it is the furthest past, 0 or less where it is within all.
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

// over is by how much the net amps at a field current are more than the regulator lets in, a part of these.
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
	past := "which the winding does not stand"
	if s.worn(&run.RunPoint) <= 0 && s.drive.keepsOf(s.c, &run.RunPoint) < draggedSaid {
		past = "which drags the drive down"
	}
	stood := s.stood(run)
	s.not = s.notStood(run)
	if stood == nil {
		return quantity.Missing(fmt.Sprintf("no field current that it stands leaves the battery anything: most would come at %.2g A, %s", run.amps, past)), 0
	}
	return quantity.Of(stood.amps, quantity.Guessed).Because(fmt.Sprintf("more would come at %.2g A, %s", run.amps, past)), stood.NetWatts
}

// notStood is the stretch below the best of all that is not stood while the battery takes charge, as far as
// it was gone through; nothing where that is.
func (s *fieldSearch) notStood(top *fieldRun) (span fieldSpan) {
	for _, run := range s.runs {
		if run.asked && run.charged > 0 && run.amps <= top.amps && (span.to == 0 || run.amps < span.from) {
			span = fieldSpan{run.amps, top.amps}
		}
	}
	return span
}

// stood is the best among those that are stood where the best of all is not; nil where none of them brings
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

// within is the field current between one that is within a limit and one that is past it which is just
// within, so near; nil where none between them is. under and margin say by which part of the limit they
// are past it, below 0 within it.
func (s *fieldSearch) within(amps, under float64, past *fieldRun, margin func(*fieldRun) float64, near float64) (best *fieldRun) {
	inside, outside, over, side := amps, past.amps, margin(past), 0
	for tries := 0; math.Abs(outside-inside) > near*s.most && tries < mostTries; tries++ {
		at := inside + (outside-inside)*under/(under-over)
		if !(math.Abs(at-inside) > 0 && math.Abs(outside-at) > 0) {
			at = (inside + outside) / 2
		}
		run := s.run(at)
		m := margin(run) + near/2 // half of it within, so that it ends within
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
		*figure = quantity.Missing("needs the speeds")
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

// highest looks for the field current of the most watts: on a row of them from above until they fall, and
// then by the parabola through the best three, to about a hundredth of the most, which is more than a field
// current is worth.
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
