package winding

import (
	"fmt"
	"math"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # A mend in other circuits
//
// To battery and drive, N turns in one circuit are equivalent to 2N turns of wire of half the area in
// two: what counts of a full slot is its turns per circuit, but for whole turns and the sizes that
// exist. So the trial's own circuits are tried first (mend.go), and others only where these run out:
// where the best of them has the fewest or the most turns per circuit, or none is good. From there the
// search steps on, by a factor of 1.5, as long as it improves; then it looks beside the best, on the
// side of what brings most, or on both sides where the best brings most. What full slots bring has a
// single maximum over the turns per circuit, so every walk ends where a winding brings less than the
// one before and less than is asked. At each step those circuits are taken, of the numbers into which
// the layout divides evenly, whose wire is nearest the trial's own. Star and delta stay: rejoin.go.
//
// Cost: some five windings where the own circuits run out, none elsewhere; each is kept.

const (
	widerStep   = 1.5  // factor from one step to the next
	widerLook   = 1.22 // factor beside the best, about half a step, then half of that
	widerMisses = 2    // that many in turn without a gain end the walk
	widerSteps  = 12   // at most
	widerWire   = 3.0  // a wire that many times thicker or thinner is a different job
	wholeWithin = 0.08 // relative: how near whole turns must come to the turns per circuit wanted
)

// search is one search for a mend: the best so far, and how much the next has to bring.
type search struct {
	offers
	own         job.Trial
	circuits    int     // the trial's
	choices     []int   // numbers of circuits that divide its coils evenly
	turns       float64 // turns of its wire that fill the slot
	best        *fullSlot
	more        float64
	least, most float64 // turns per circuit tried
	// top is what brings most of all that were run, whether it withstands that or not; of all that were
	// tried after highest.
	top         *fullSlot
	left        []*fullSlot // not run, and may bring more than the top
	begin, late bool        // some begin to charge in time, some too late
	drags       bool        // some drag the engine far below its usual speed
	begins      float64     // rpm: the trial's cut-in; no winding that begins both too late and later than this is taken
	rejoined    bool        // more is asked than the trial's own coils bring connected differently
}

// forCircuit is the turns of a full slot per circuit.
func (f *fullSlot) forCircuit() float64 { return f.trial.Turns.Value / float64(f.circuits()) }

// circuits is the number of its parallel circuits.
func (f *fullSlot) circuits() int { return max(1, f.trial.Circuits.Whole()) }

// try tries one winding; better reports whether it brings more than any before and, where that is
// enough for an offer, withstands it. One that cannot bring what is asked is not run (heldback.go).
func (s *search) try(f *fullSlot) (better bool) {
	if s.late = s.late || f.late; f.late && (!s.anyhow || f.begins > s.begins) {
		return false
	}
	left := s.leaves(f)
	if !left {
		s.brings(f)
	}
	if f.r == nil {
		return false
	}
	s.begin, s.drags = true, s.drags || f.drags.Load()
	s.least, s.most = min(s.least, f.forCircuit()), max(s.most, f.forCircuit())
	if left {
		return false
	}
	better = s.rises(f)
	more := s.more
	if s.best != nil && f.circuits() != s.best.circuits() {
		more *= worthIt // other circuits mean other connections
	}
	if !(f.score > more) {
		return better
	}
	if !s.holds(f) {
		return false
	}
	s.best, s.more = f, f.score
	if s.tried != nil && s.tried.whose == f { // the next candidate reuses the memory of the previous best
		if s.kept == nil {
			s.kept = new(trying)
		}
		s.tried, s.kept = s.kept, s.tried
	}
	return true
}

// rises makes a winding the top, and reports so, where it brings more than that.
func (s *search) rises(f *fullSlot) bool {
	brings := s.brings(f)
	if !(brings > 0 && (s.top == nil || brings > s.top.score)) {
		return false
	}
	s.top = f
	return true
}

// wider goes on in other circuits where those tried run out.
func (s *search) wider() {
	if s.turns < 1 || len(s.choices) < 2 || !s.begin {
		return
	}
	before, least, most := s.highest(), s.least, s.most
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

// walk multiplies the turns per circuit by a factor again and again.
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

// step tries a number of turns per circuit; nil where no such winding is near. better is that of try.
func (s *search) step(forCircuit float64) (f *fullSlot, better bool) {
	t, ok := s.with(forCircuit)
	if !ok {
		return nil, false
	}
	f = s.full(t)
	if better = s.try(f); slices.Contains(s.left, f) {
		before := s.top
		better = s.highest() == f && before != f
	}
	return f, better
}

// with is the trial in the circuits and wire that give about that many turns per circuit, the wire as
// near its own as possible.
func (s *search) with(forCircuit float64) (t job.Trial, ok bool) {
	near, circuits := math.Log(widerWire), 0
	for _, a := range s.choices {
		turns := forCircuit * float64(a)
		if whole := math.Round(turns); whole < 1 || math.Abs(whole/turns-1) > wholeWithin {
			continue
		}
		if far := math.Abs(math.Log(s.turns/turns)) / 2; far <= near { // area goes with the square of the diameter
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

// about is the size of a trial's gauge standard nearest a bare diameter, mm.
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

// Elsewhere says what other circuits bring where that is more than every rung of a trial's ladder:
// turns, wire, circuits and how much; "" where it is not. It costs a coarse look at each rung and the
// walk above.
func (b *Bench) Elsewhere(trial int, list []Rung) string {
	t, ok := b.trial(trial)
	if !ok || len(list) == 0 || b.Reversed() != nil { // with the drive in question nothing is offered
		return ""
	}
	own, far := job.Trial{}, math.Inf(1)
	for i := range list {
		if off := math.Abs(list[i].Trial.Gauge.BareMM(t.Build) - t.Gauge.BareMM(t.Build)); off < far {
			own, far = list[i].Trial, off
		}
	}
	of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(trying)}
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

// search starts a search for a trial's replacement: nothing tried yet, and anything is enough.
func (of offers) search(t job.Trial, turnsThatFit float64) *search {
	coils := of.layouts.coils(t)
	return &search{offers: of, own: t, circuits: coils.circuits, choices: coils.choices, turns: turnsThatFit, least: math.Inf(1)}
}
