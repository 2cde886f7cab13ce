package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # A mend in other circuits
//
// N turns in one circuit are to battery and drive what 2N turns of wire half as thick are in
// two: a full slot is told by its turns over its circuits alone, but for the whole turns and
// the sizes there are. So the trial's own circuits are looked at first (mend.go), and others only
// where these end: where the best of them, or none, is that with the fewest or the most
// turns for a circuit. From there the walk goes on, half as many again at a step, as long as it
// gets better; at the end it looks beside the best, on the side of what brings most, or on both
// where that is the best. What full slots bring rises with the turns for a circuit to one top and
// falls from there, so every way ends where a winding brings less than the one before and less than
// is asked. For each step those circuits are
// taken, of the numbers that the layout divides its coils into evenly, in which the wire stays
// nearest the trial's own. Star and delta are left as they are: rejoin.go.
//
// Cost: some five windings where the own circuits end, none elsewhere; each is kept.

const (
	widerStep   = 1.5  // from one to the next on the way out
	widerLook   = 1.22 // beside the best, about half a step, then half of that
	widerMisses = 2    // so many in turn that are no better end the walk
	widerSteps  = 12   // at most
	widerWire   = 3.0  // times the wire's diameter, or one part in it, is another wire's work
	wholeWithin = 0.08 // of the turns for a circuit that whole turns are to come to
)

// search is one search for a mend: the best so far, and how much one more has to bring.
type search struct {
	offers
	own         job.Trial
	circuits    int     // of the trial
	choices     []int   // circuits that divide its coils evenly
	turns       float64 // of its wire that fill the slot
	best        *fullSlot
	more        float64
	least, most float64 // turns for a circuit that were tried
	// top is what brings most of all that were tried, whether it stands that or not.
	top         *fullSlot
	begin, late bool    // some begin to charge in time, some too late
	drags       bool    // some drag the engine far below its usual speed
	begins      float64 // rpm: of the trial, later than which none is taken that begins too late
	rejoined    bool    // what is asked for is more than the trial's own coils joined otherwise bring
}

// forCircuit is the turns of a full slot over its circuits.
func (f *fullSlot) forCircuit() float64 { return f.trial.Turns.Value / float64(f.circuits()) }

// circuits is how many of its circuits are in parallel.
func (f *fullSlot) circuits() int { return max(1, f.trial.Circuits.Whole()) }

// try tries one winding; better reports whether it brings more than any before and, where that is
// enough to be offered, stands it.
func (s *search) try(f *fullSlot) (better bool) {
	if s.late = s.late || f.late; f.late && (!s.anyhow || f.begins > s.begins) {
		return false
	}
	brings := s.brings(f)
	if f.r == nil {
		return false
	}
	s.begin, s.drags = true, s.drags || f.drags.Load()
	s.least, s.most = min(s.least, f.forCircuit()), max(s.most, f.forCircuit())
	if better = brings > 0 && (s.top == nil || brings > s.top.score); better {
		s.top = f
	}
	more := s.more
	if s.best != nil && f.circuits() != s.best.circuits() {
		more *= worthIt // other circuits are other joints
	}
	if !(brings > more) {
		return better
	}
	if !s.holds(f) {
		return false
	}
	s.best, s.more = f, brings
	return true
}

// past reports whether there is nothing more to find on the way that came from one winding to the
// next: both begin in time and stand what flows usually, and the next brings less, and less than
// what is asked.
func (s *search) past(f, before *fullSlot) bool {
	brings := s.brings(f)
	return brings < s.brings(before) && brings <= s.more
}

// wider goes on in other circuits where those that were tried end.
func (s *search) wider() {
	if s.turns < 1 || len(s.choices) < 2 || !s.begin {
		return
	}
	before, least, most := s.top, s.least, s.most
	tooMuch := s.best == nil && s.top != nil && s.top.score > s.more          // fewer turns bring more amps yet
	if !s.late && (s.top == nil || s.top.forCircuit() <= least && !tooMuch) { // fewer turns begin later yet
		s.walk(least, 1/widerStep)
	}
	if before == nil || before == s.top && s.top.forCircuit() >= most {
		s.walk(most, widerStep)
	}
	if s.best != nil && s.top != before {
		for _, by := range []float64{widerLook, math.Sqrt(widerLook)} {
			at := s.best.forCircuit()
			if s.top.forCircuit() <= at {
				s.step(at / by)
			}
			if s.top.forCircuit() >= at {
				s.step(at * by)
			}
		}
	}
}

// walk goes from so many turns for a circuit to so many times as many, and on.
func (s *search) walk(at, times float64) {
	before := s.top
	for misses, steps := 0, 0; misses < widerMisses && steps < widerSteps; steps++ {
		at *= times
		f, better := s.step(at)
		if f == nil || before != nil && s.past(f, before) {
			return
		}
		if misses++; better {
			misses = 0
		}
		before = f
	}
}

// step tries so many turns for a circuit; nil where no such winding is near.
func (s *search) step(forCircuit float64) (f *fullSlot, better bool) {
	t, ok := s.with(forCircuit)
	if !ok {
		return nil, false
	}
	f = s.full(t)
	return f, s.try(f)
}

// with is the trial in those circuits and of that wire that give about so many turns for a
// circuit, the wire as near its own as can be.
func (s *search) with(forCircuit float64) (t job.Trial, ok bool) {
	near, circuits := math.Log(widerWire), 0
	for _, a := range s.choices {
		turns := forCircuit * float64(a)
		if whole := math.Round(turns); whole < 1 || math.Abs(whole/turns-1) > wholeWithin {
			continue
		}
		if far := math.Abs(math.Log(s.turns/turns)) / 2; far <= near { // metal goes with the square of the diameter
			near, circuits = far, a
		}
	}
	if circuits == 0 {
		return t, false
	}
	t = withGauge(s.own, about(s.own, s.own.Gauge.BareMM(s.own.Build)*math.Sqrt(s.turns/(forCircuit*float64(circuits)))))
	if circuits != s.circuits {
		t.Circuits = quantity.Known(float64(circuits))
	}
	return t, t.Gauge.BareMM(t.Build) >= thinnestMM || t.Gauge == s.own.Gauge
}

// about is the size of a trial's standard that is nearest a bare diameter, mm.
func about(t job.Trial, bareMM float64) wiretable.Gauge {
	g := t.Gauge
	next := wiretable.Gauge.ThickerIn
	if bareMM < g.BareMM(t.Build) {
		next = wiretable.Gauge.ThinnerIn
	}
	for {
		n, ok := next(g, t.Build)
		if !ok || math.Abs(n.BareMM(t.Build)-bareMM) >= math.Abs(g.BareMM(t.Build)-bareMM) {
			return g
		}
		g = n
	}
}

// Elsewhere says what comes of other circuits where these bring more than every rung of a trial's
// ladder: turns, wire, circuits and how much; "" where they do not. It costs a coarse look at each
// rung and the walk above.
func (b *Bench) Elsewhere(trial int, list []Rung) string {
	t, ok := b.trial(trial)
	if !ok || len(list) == 0 {
		return ""
	}
	own, far := job.Trial{}, math.Inf(1)
	for i := range list {
		if off := math.Abs(list[i].Trial.Gauge.BareMM(t.Build) - t.Gauge.BareMM(t.Build)); off < far {
			own, far = list[i].Trial, off
		}
	}
	of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(characteristic)}
	s := of.search(own, b.TurnsThatFit(own).Value)
	for i := range list {
		s.try(of.full(list[i].Trial))
	}
	s.wider()
	if s.best == nil || s.best.circuits() == s.circuits {
		return ""
	}
	brings := fmt.Sprintf("%s A net (%s)", amps(s.best.net), s.drive.conditions[usual].Label)
	if s.drive.kind == job.DriveWind {
		brings += fmt.Sprintf(", about %.0f kWh a year", s.yearKWh(s.best))
	}
	return fmt.Sprintf("more than on this ladder: %s, %s", s.words(s.best), brings)
}

// search is a search in a trial's place, nothing tried yet and everything enough.
func (of offers) search(t job.Trial, turnsThatFit float64) *search {
	coils := of.layouts.coils(t)
	return &search{offers: of, own: t, circuits: coils.circuits, choices: coils.choices, turns: turnsThatFit, least: math.Inf(1)}
}
