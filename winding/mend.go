package winding

import (
	"cmp"
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # Offers that were computed
//
// "More turns" or "thicker wire" is cheap to say, and in a full slot each forbids the other. So nothing
// is offered here that was not first computed as a winding: the neighbouring sizes of the trial's wire,
// each with as many turns as fit the slot, are run in the drive's usual condition. Where the best of
// them is the last on one side, the search goes on in other parallel circuits (wider.go), and from the
// best of all on to thicker and thinner wire as long as that is better still. The best that breaks no
// limit is named with its wire, turns and circuits. Where none is better, none is offered, and what
// stands in the way is said (intheway.go); before that every size is tried. So it does not matter how
// far a trial's own wire is from the one that is wanted.
//
// Each of these windings is computed independently, and once for all trials: fullslot.go. What is said
// of an offer is what the grid will say of it, its energy in a year to a per cent or two.

// Sizes tried on either side of the trial's own.
const (
	sizesThicker = 6
	sizesThinner = 8
	worthIt      = 1.03 // a smaller gain is none
	worthKeeping = 0.9  // of what a winding that breaks a limit brings
	// Less than these counts as nothing: amps that are shown as 0, and a year's energy in kWh.
	leastNet, leastYear = 0.005, 1.0
)

// Offer is a winding that was worked out to replace a trial: as many turns as fit.
type Offer struct {
	Turns int    `json:"turns"`
	Wire  string `json:"wire"`
	// Circuits is the number of parallel circuits of a phase: the trial's own, or another where only
	// that does better.
	Circuits int `json:"circuits"`
	// Gauge is the wire as a job has it.
	Gauge wiretable.Gauge `json:"-"`
	// lateRPM is where it begins to charge if that is too late, else 0.
	lateRPM float64
}

// workshop lays out and computes a trial: the bench.
type workshop interface {
	Static(t job.Trial) TrialOutcome
	TurnsThatFit(t job.Trial) quantity.Figure
}

// offers looks for better windings to replace a trial.
type offers struct {
	workshop
	*bed
	slots *fullSlots
	// anyhow also takes windings that begin to charge too late.
	anyhow bool
	// tried is the winding evaluated last, whose memory the next reuses; kept is that of the best, nil
	// if it is not available.
	tried, kept *trying
}

// better finds the winding that cures, all at once, what a trial is blamed for, or says what stands in
// the way; the zero mend where it is blamed for nothing that turns and wire could cure.
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

// mend is the better winding, in a sentence and as such; or, where there is none, what stands in the
// way.
type mend struct {
	text     string
	offer    *Offer
	inTheWay string
	best     *fullSlot // of offer
	// rejoined is the trial's own coils connected differently, where that does better; joins says so.
	rejoined *fullSlot
	joints   *Joints
	joins    string
	// sought says that a winding was searched for; breaks that the trial breaks a limit or begins too
	// late; least is what the winding had to exceed.
	sought, breaks bool
	// noneStands says that of all windings tried, none that brings more than least withstands what the
	// drive can do.
	noneStands bool
	least      float64
}

// mendFor is the best winding that fits in a trial's place. For a trial that breaks a limit or begins
// too late, nearly as much is enough; for any other, an offer has to bring more. Where the trial's own
// coils do better connected differently, it has to beat those.
func (of offers) mendFor(t job.Trial, o *TrialOutcome, breaks bool, rejoined *fullSlot) mend {
	s := of.search(t, o.TurnsThatFit.Value)
	if s.more, s.rejoined = of.leastOf(o, breaks), rejoined != nil; s.rejoined {
		s.more = max(s.more, worthIt*of.brings(rejoined))
	}
	m := mend{sought: true, breaks: breaks, least: s.more, rejoined: rejoined}
	s.near()
	s.thinner()
	s.wider()
	s.further()
	if s.best == nil || same(s.best.trial, t) {
		s.every()
	}
	m.noneStands = breaks && s.best == nil
	if s.best != nil && s.best.net < 0 { // in the usual condition its rotor takes more than comes in
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

// lessLate is the best of a trial's wire, its neighbours and those beyond that begins no later than the
// trial and brings more, though none of them begins in time; nil where there is none.
func (of offers) lessLate(t job.Trial, o *TrialOutcome) *fullSlot {
	if !of.beginsLate(o) {
		return nil
	}
	of.anyhow = true
	s := of.search(t, o.TurnsThatFit.Value)
	s.more, s.begins = of.leastOf(o, false), o.CutInRPM.Value
	s.near()
	s.further()
	if s.best == nil || s.best.net < 0 || same(s.best.trial, t) {
		return nil
	}
	return s.best
}

// offer is the winding as an Offer.
func (f *fullSlot) offer() *Offer {
	o := &Offer{Turns: f.trial.Turns.Whole(), Wire: f.trial.Gauge.String(), Circuits: f.circuits(), Gauge: f.trial.Gauge}
	if f.late {
		o.lateRPM = f.begins
	}
	return o
}

// thinner goes on to more turns of thinner wire where all that were tried begin too late, until some
// begin in time, and then as many further as are tried elsewhere.
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

// further goes on from the best, size by size while the next is better: the trial's own wire may be
// farther from the best than the sizes nearby reach, of which in the wind every third is tried.
func (s *search) further() {
	for _, next := range [...]func(wiretable.Gauge, wiretable.Build) (wiretable.Gauge, bool){wiretable.Gauge.ThickerIn, wiretable.Gauge.ThinnerIn} {
		for was := (*fullSlot)(nil); s.best != was; {
			was = s.best
			if g, ok := next(was.trial.Gauge, was.trial.Build); ok && g.BareMM(was.trial.Build) >= thinnestMM {
				s.try(s.full(withGauge(was.trial, g)))
			}
		}
	}
}

// leastOf is what a replacement has to exceed: a year's energy in wind, kWh, else net amps.
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

// present is what a trial brings as it is, measured like its replacements.
func (of offers) present(o *TrialOutcome) float64 {
	if of.drive.kind == job.DriveWind {
		return of.coarsely(o)
	}
	return o.in(usual).NetAmps
}

// says is a trial's replacement in words.
func (s *search) says(f *fullSlot, o *TrialOutcome) string {
	return s.words(f) + " fit: " + s.comesTo(f, o)
}

// comesTo is what a replacement brings, in words. In wind the best of a year may bring fewer amps in
// the usual wind than the trial: then both are given.
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

// wireWords is a bundle in words: a single strand needs no number.
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

// side tries the sizes on one side of the trial's own, at most so many, while they can still improve.
// It returns the first; nil where there is none.
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

// every evaluates all sizes of a trial's standard where none of those nearby does better, of which in
// the wind only every third was tried, so that "no winding does better" covers them all. Thinner ones
// that load a wind rotor ever more are left out.
func (s *search) every() {
	for side, next := range [...]func(wiretable.Gauge, wiretable.Build) (wiretable.Gauge, bool){wiretable.Gauge.ThickerIn, wiretable.Gauge.ThinnerIn} {
		g, ok := next(s.own.Gauge, s.own.Build)
		down := descent{before: math.Inf(-1), asked: s.more}
		for n := 0; ok && n < mostRungs && g.BareMM(s.own.Build) >= thinnestMM && !down.over(); n++ {
			f := s.full(withGauge(s.own, g))
			if f.trial.Turns.Value < 1 || side == 0 && f.tooThick { // nor does any thicker
				break
			}
			s.try(f)
			down.take(s.atMost(f), s.passed(f))
			g, ok = next(g, s.own.Build)
		}
	}
}

// everyFalls is how many sizes in a row that bring no more than the previous one, and less than half of
// what is asked, end a direction in which more turns only begin earlier and load the rotor more.
const everyFalls = 3

// descent is a direction of sizes that is being tried.
type descent struct {
	before float64 // what the last one brings
	asked  float64 // what one has to bring
	falls  int     // how many in a row ended it, so far
}

// take adds the next size by what it brings; passed says that it is past the best ([search.passed]).
func (d *descent) take(brings float64, passed bool) {
	if d.falls++; !passed || !(brings <= d.before && brings < d.asked/2) {
		d.falls = 0
	}
	d.before = brings
}

// over reports whether what follows is left out.
func (d *descent) over() bool { return d.falls >= everyFalls }

// passed reports whether a winding has more turns than the one that brings the most, and begins to charge
// below the rotor's best speed in the usual wind: with still more turns it brings less (wider.go).
func (s *search) passed(f *fullSlot) bool {
	top := s.highest()
	return top != nil && f.forCircuit() > top.forCircuit() && f.begins > 0 && f.begins < s.drive.bestRPM(&s.drive.conditions[usual])
}

// filling is the thickest wire of which the trial's own turns still fit: what a mostly empty slot asks
// for. ok is false where there is none, as with turns that do not fit.
func (of offers) filling(t job.Trial) (g wiretable.Gauge, ok bool) {
	for g = t.Gauge; ; ok = true {
		next, more := g.ThickerIn(t.Build)
		if !more || of.TurnsThatFit(withGauge(t, next)).Value < t.Turns.Value {
			return g, ok
		}
		g = next
	}
}
