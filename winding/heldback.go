package winding

import (
	"cmp"
	"math"
	"slices"

	"slotwright/winding/job"
)

// # Windings that cannot bring what is asked
//
// In the wind most of a search goes into windings with too many turns: they charge early, hold the blades
// far below their best speed, and bring a small part of what is asked. That they cannot bring it follows
// from one solved point. Where a winding takes more torque somewhat above its cut-in than the rotor gives
// there in any wind, the rotor never passes that speed, and in each wind brings at most what the blades
// give up to it, less drag and field (package drive, held.go). With that for every wind of a coarse year
// the year is bounded, and a winding whose bound is no more than what is asked is not run.
//
// So nothing is left out that could be offered, or called the best of those tried: one whose bound lies above
// the best of those run is run before that is named (highest).
//
// Cost: on average seven solutions of the bridge, in place of some 36 and a climb through all winds; a tenth
// of the time. Accuracy: it is a bound, a fifth to a half above what the winding brings, and some times as
// much where that is a few kilowatt-hours.

// heldAt are the speeds tried, over that of cut-in; our choice.
var heldAt = [...]float64{1.2, 1.4, 2, 4}

// heldSurely is the margin on torque and year of what is only compared: curves agree to 3 parts in 1,000
// there.
const heldSurely = 1.01

// atBest is a bound of what a winding brings, kWh in a year of wind; +Inf where nothing bounds it.
func (of offers) atBest(f *fullSlot) float64 {
	f.bounded.Do(func() {
		f.most = math.Inf(1)
		if of.drive.kind == job.DriveWind && f.r != nil {
			f.most = of.heldYear(f)
		}
	})
	return f.most
}

// heldYear is the bound of a winding's year; +Inf where it does not hold the rotor at any of the speeds
// tried.
func (of offers) heldYear(f *fullSlot) float64 {
	up := of.drive.up(of.drive.coarse)
	if up == nil {
		return math.Inf(1)
	}
	r := f.r.anew()
	r.onTheWay, r.compared = true, true
	begins := r.begins()
	idle, takes := r.at(begins, of.air.ambientC), 0.0
	if !r.holder.bends() {
		takes = r.drag.at(begins) + r.field // at least, wherever it charges
	}
	for _, times := range heldAt {
		p := r.at(times*begins, idle.WindingC)
		if !up.Holds(p.RPM, p.TorqueNm/heldSurely) {
			continue
		}
		watts := up.MostWatts(begins, idle.TorqueNm*heldSurely, p.RPM, of.pushed())
		year := 0.0
		for i, part := range up.perWatt {
			year += part * max(0, watts[i]-takes)
		}
		return heldSurely * year
	}
	return math.Inf(1)
}

// leaves reports whether a winding need not be run, and notes it where it may bring more than the top.
func (s *search) leaves(f *fullSlot) bool {
	most := s.atBest(f)
	if !(most <= s.more) {
		return false
	}
	if s.top == nil || most > s.top.score {
		s.left = append(s.left, f)
	}
	return true
}

// highest is the top of all that were tried: those left that may bring more are run.
func (s *search) highest() *fullSlot {
	slices.SortFunc(s.left, func(a, b *fullSlot) int { return cmp.Compare(s.atBest(b), s.atBest(a)) })
	for _, f := range s.left {
		if s.top == nil || s.atBest(f) > s.top.score {
			s.rises(f)
		}
	}
	s.left = s.left[:0]
	return s.top
}

// atMost is what a winding brings, or its bound where that is no more than is asked.
func (s *search) atMost(f *fullSlot) float64 {
	if most := s.atBest(f); most <= s.more {
		return most
	}
	return s.brings(f)
}

// past reports whether there is nothing more to find in the direction from one winding to the next: the
// next brings less than the one before, and no more than is asked. Of two that hold the rotor back and
// bring no more than is asked, the one with more turns brings less.
func (s *search) past(f, before *fullSlot) bool {
	brings, least := s.atMost(f), s.atBest(before)
	switch {
	case !(brings <= s.more):
		return false
	case s.atBest(f) <= s.more && least <= s.more:
		return f.forCircuit() > before.forCircuit()
	case brings >= least:
		return false
	case brings < s.atMost(before) && least > s.more:
		return true
	}
	return s.brings(f) < s.brings(before)
}
