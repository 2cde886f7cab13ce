package winding

import (
	"cmp"
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # Mends that were worked out
//
// "More turns" or "thicker wire" is cheap to say, and in a full slot each forbids the other.
// So nothing is offered here that was not wound on paper first: the neighbouring sizes of
// the trial's wire, each with as many turns as fit the slot, are run in the usual condition
// of the drive, and where the best of them is the last on one side, the walk goes on in other
// parallel circuits (wider.go). The best that breaks no limit is named, wire, turns and circuits
// together. Where none is better, none is offered, and what stands in the way is said (intheway.go).
//
// Each of these windings is worked out by itself, and once for all trials: fullslot.go. What is
// said of the one that is offered is what the grid will say of it, in a year's energy to a
// percent or two.

// Sizes looked at on either side of the trial's own.
const (
	sizesThicker = 6
	sizesThinner = 8
	worthIt      = 1.03 // a gain smaller than this is none
	worthKeeping = 0.9  // of what a winding that breaks a limit brings
	// What is less than these is nothing: amps that are shown as 0, and a year's energy in kWh.
	leastNet, leastYear = 0.005, 1.0
)

// Offer is a winding that was worked out in a trial's place: as many turns as fit.
type Offer struct {
	Turns int    `json:"turns"`
	Wire  string `json:"wire"`
	// Circuits is how many of them are in parallel in a phase: the trial's own, or others where
	// only these do better.
	Circuits int `json:"circuits"`
	// Gauge is the wire as a job has it.
	Gauge wiretable.Gauge `json:"-"`
	// lateRPM is where it begins to charge if that is too late, else 0.
	lateRPM float64
}

// workshop winds a trial on paper: the bench.
type workshop interface {
	Static(t job.Trial) TrialOutcome
	TurnsThatFit(t job.Trial) quantity.Figure
}

// offers looks for what would do better in a trial's place.
type offers struct {
	workshop
	*bed
	slots *fullSlots
	// anyhow takes those that begin too late as well.
	anyhow bool
	// tried is the curve of the winding tried last, in whose room the next is worked out.
	tried *characteristic
}

// better is the winding that would do better, worked out once for all that a trial is
// blamed for, or what stands in its way; nothing when it is blamed for nothing that turns and wire
// could mend.
func (of offers) better(t job.Trial, o *TrialOutcome) (m mend) {
	at := o.in(usual)
	if at == nil {
		return m
	}
	late := of.beginsLate(o)
	hot := o.HottestC.Known() && o.HottestC.Value > of.air.meanC || o.Burns()
	breaks := late || o.OverLimit() || hot || o.dragged(draggedFar) != nil
	if !breaks && at.NetAmps > 0 && (o.region == drive.Charging || o.region == "") {
		return m
	}
	m.rejoined = of.rejoined(t, o, of.leastOf(o, breaks), late || at.AmpsDC == 0)
	if !t.Bundle().IsZero() && t.AlsoGauge.IsZero() && len(t.CoilTurns) == 0 && o.TurnsThatFit.Known() {
		m = of.mendFor(t, o, breaks, m.rejoined)
	}
	if f := m.rejoined; f != nil {
		m.joints, m.joins = f.joints(), joinedSaid(f, &t, of.layouts.coils(t).circuits)+": "+of.comesTo(f, o)
	}
	return m
}

// mend is the winding that would do better, in a sentence and as such; or, where there is none, what
// stands in the way.
type mend struct {
	text     string
	offer    *Offer
	inTheWay string
	best     *fullSlot // that winding
	// rejoined is the trial's own coils joined otherwise, where that does better; joins says so.
	rejoined *fullSlot
	joints   *Joints
	joins    string
	// sought says that it was looked for, in the place of a trial that breaks a limit or begins too
	// late or not; least is what it had to bring more than.
	sought, breaks bool
	// noneStands says that of all windings that were looked at none that brings more than least stands
	// what the drive can do.
	noneStands bool
	least      float64
}

// mendFor is the best winding that fits in a trial's place. One that breaks a limit or begins too
// late is mended by what brings nearly as much; in the place of any other an offer has to gain.
// It has to bring more than the same coils joined otherwise do, where these do better.
func (of offers) mendFor(t job.Trial, o *TrialOutcome, breaks bool, rejoined *fullSlot) mend {
	s := of.search(t, o.TurnsThatFit.Value)
	if s.more, s.rejoined = of.leastOf(o, breaks), rejoined != nil; s.rejoined {
		s.more = max(s.more, worthIt*of.brings(rejoined))
	}
	m := mend{sought: true, breaks: breaks, least: s.more, rejoined: rejoined}
	s.near()
	s.thinner()
	s.wider()
	m.noneStands = breaks && s.best == nil
	if s.best != nil && s.best.net < 0 { // its rotor takes more than comes in where it usually runs
		s.best = nil
	}
	if s.best == nil || same(s.best.trial, t) || !breaks && s.drive.kind == job.DriveWind && s.yearKWh(s.best) < o.YearKWh.Value+leastYear {
		m.inTheWay = s.inTheWay(o)
		if s.best != nil {
			return m
		}
		if f := of.lessLate(t, o); f != nil {
			m.best, m.text, m.offer, m.inTheWay = f, s.says(f, o)+", after the slow speed too", f.offer(), ""
		}
		return m
	}
	m.best, m.text, m.offer = s.best, s.says(s.best, o), s.best.offer()
	return m
}

// beginsLate reports whether a trial begins to charge above the slow speed of a drive that has one.
func (of offers) beginsLate(o *TrialOutcome) bool {
	return of.drive.kind != job.DriveWind && o.CutInRPM.Known() && of.speeds.slow.Known() && o.CutInRPM.Value > of.speeds.slow.Value
}

// lessLate is the best of a trial's wire and its neighbours that begins no later than the trial and brings
// more, though none of them begins in time; nil where there is none.
func (of offers) lessLate(t job.Trial, o *TrialOutcome) *fullSlot {
	if !of.beginsLate(o) {
		return nil
	}
	of.anyhow = true
	s := of.search(t, o.TurnsThatFit.Value)
	s.more, s.begins = of.leastOf(o, false), o.CutInRPM.Value
	s.near()
	if s.best == nil || s.best.net < 0 || same(s.best.trial, t) {
		return nil
	}
	return s.best
}

// offer is a winding as it is offered.
func (f *fullSlot) offer() *Offer {
	o := &Offer{Turns: f.trial.Turns.Whole(), Wire: f.trial.Gauge.String(), Circuits: f.circuits(), Gauge: f.trial.Gauge}
	if f.late {
		o.lateRPM = f.begins
	}
	return o
}

// thinner goes on to more turns of thinner wire where all that were tried begin too late, until some
// begin in time and as many after them as are looked at elsewhere.
func (s *search) thinner() {
	if !s.late || s.begin {
		return
	}
	g, after := s.own.Gauge, 0
	for after < sizesThinner {
		next, ok := g.ThinnerIn(s.own.Build)
		if !ok || next.BareMM(s.own.Build) < thinnestMM {
			return
		}
		g = next
		if s.try(s.full(withGauge(s.own, g))); s.begin {
			after++
		}
	}
}

// leastOf is what an offer in a trial's place has to bring more than: a year's energy in wind, kWh,
// else net amps.
func (of offers) leastOf(o *TrialOutcome, breaks bool) float64 {
	present, least := of.present(o), leastNet
	if of.drive.kind == job.DriveWind {
		least = leastYear
	}
	switch {
	case present <= 0:
		return least
	case breaks:
		return max(least, worthKeeping*present)
	}
	return max(present+least, worthIt*present)
}

// present is what a trial brings as it is, measured as what is offered in its place.
func (of offers) present(o *TrialOutcome) float64 {
	if of.drive.kind == job.DriveWind {
		return of.coarsely(o)
	}
	return o.in(usual).NetAmps
}

// says is an offer in the place of a trial, in words.
func (s *search) says(f *fullSlot, o *TrialOutcome) string {
	return s.words(f) + " fit: " + s.comesTo(f, o)
}

// comesTo is what a winding in a trial's place comes to. In the wind the best of a year may bring fewer amps
// in the usual wind than the trial does: then both are told.
func (of offers) comesTo(f *fullSlot, o *TrialOutcome) string {
	label := of.drive.conditions[usual].Label
	brings := fmt.Sprintf("%.3g A net (%s)", f.net, label)
	if f.net < leastNet {
		brings = fmt.Sprintf("nothing comes in (%s)", label)
	}
	text := fmt.Sprintf("begins at %.0f alternator rpm, %s", f.begins, brings)
	if of.drive.kind != job.DriveWind {
		return text
	}
	text += fmt.Sprintf(", about %.0f kWh a year", of.yearKWh(f))
	if now := o.in(usual); now != nil && now.NetAmps > leastNet && f.net*worthIt < now.NetAmps {
		text += fmt.Sprintf(" in place of %s A there and %s kWh", amps(now.NetAmps), whole(o.YearKWh))
	}
	return text
}

// words are the turns and the wire of a winding, and its circuits where the trial has others.
func (s *search) words(f *fullSlot) string {
	text := fmt.Sprintf("%d turns of %s", f.trial.Turns.Whole(), wireWords(f.trial.Bundle()))
	switch a := f.circuits(); {
	case a == s.circuits:
	case a == 1:
		text += ", all coils of a phase in series,"
	default:
		text += fmt.Sprintf(" in %d parallel circuits", a)
	}
	return text
}

// wireWords is a bundle as it is said: one strand needs no number.
func wireWords(b wiretable.Bundle) string {
	if b.Count() == 1 {
		return b.Strands[0].Gauge.String()
	}
	return b.String()
}

func withGauge(t job.Trial, g wiretable.Gauge) job.Trial {
	t.Gauge = g
	return t
}

func same(a, b job.Trial) bool {
	return a.Turns.Value == b.Turns.Value && a.Gauge.String() == b.Gauge.String() && a.Circuits.Or(1) == b.Circuits.Or(1)
}

// near tries a trial's wire and its neighbours.
func (s *search) near() {
	own := s.full(s.own)
	s.try(own)
	thicker := s.side(own, wiretable.Gauge.ThickerIn, sizesThicker)
	if thicker == nil || !s.past(own, thicker) {
		s.side(own, wiretable.Gauge.ThinnerIn, sizesThinner)
	}
	if g, ok := s.filling(s.own); ok {
		s.try(s.full(withGauge(s.own, g)))
	}
}

// side tries the sizes on one side of a trial's own, so many at most, as far as there is something
// to find. It gives the first; nil where there is none.
func (s *search) side(own *fullSlot, next func(wiretable.Gauge, wiretable.Build) (wiretable.Gauge, bool), most int) (first *fullSlot) {
	step := 1
	if s.drive.kind == job.DriveWind {
		step = 3 // each costs a year
	}
	g, ok := next(s.own.Gauge, s.own.Build)
	for i, before := 1, own; ok && i <= most; i++ {
		if i%step == 1%step {
			f := s.full(withGauge(s.own, g))
			s.try(f)
			first = cmp.Or(first, f)
			if s.past(f, before) {
				break
			}
			before = f
		}
		g, ok = next(g, s.own.Build)
	}
	return first
}

// filling is the thickest wire of which the trial's own turns still go in: what a slot that is
// mostly empty asks for. ok is false where there is none, as with turns that do not fit.
func (of offers) filling(t job.Trial) (g wiretable.Gauge, ok bool) {
	for g = t.Gauge; ; ok = true {
		next, more := g.ThickerIn(t.Build)
		if !more || of.TurnsThatFit(withGauge(t, next)).Value < t.Turns.Value {
			return g, ok
		}
		g = next
	}
}
