package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # The ladder
//
// Thick-few to thin-many in one table: every size of a trial's wire standard, from the thickest of
// which one turn fits to the thinnest that can still be wound by hand, each with as many turns as fill
// the slot; connection, strands and circuits are kept. It is the table that people make on paper before
// they choose. Each rung is computed like a trial, except for the curve and the ±.
//
// Cost: a torque curve and three conditions a rung, one or two milliseconds; some twenty rungs. So it
// is computed on request and is not part of the outcome.

// Rung is one winding of the ladder.
type Rung struct {
	Trial job.Trial
	TrialOutcome
	// Present marks the rung of the trial's own wire.
	Present bool
	// Meets says that it begins to charge at the slow speed or below and brings something there (in
	// wind: brings something in the mean wind), breaks no limit anywhere in the drive's range, nowhere
	// drags the drive far below its speed, does not stall or overspeed a wind rotor, legs or water
	// (unsuited), and brings the amps wanted, if any. Then none of its figures is past a limit.
	Meets bool
	// Word says in a word what no figure of the rung shows: "meets", or how it and the drive do not
	// suit each other, "stalls" or "runs away", and Where from which wind or at what speed: " from 7
	// m/s", " at 34 rpm". Both are "" for any other.
	Word, Where string
	// Holds says what limits its amps in the usual and the top condition.
	Holds string
	// BestSlow, BestUsual, BestTop and BestYear mark the most net amps in each condition
	// and the most energy in a year, among the rungs that stay within their limits.
	BestSlow, BestUsual, BestTop, BestYear bool
	// WhyBest says why the next thinner and the next thicker are worse than the best in the usual
	// condition or in a year; "" for any other.
	WhyBest string
}

// The thinnest wire of a ladder, bare, and the most rungs; thinner wire breaks in the hand (common
// practice, no source).
const (
	thinnestMM = 0.20
	mostRungs  = 40
)

// Ladder is the full slots of a trial's wire standard, thickest first. It is empty when there is no
// such trial, no wire, no measured slot, or the wire is of two sizes.
func (b *Bench) Ladder(trial int) []Rung { return b.LadderIn(trial, 0, 0) }

// LadderIn is [Bench.Ladder] with a number of strands in hand and another gauge system; 0 for either is
// the trial's own.
func (b *Bench) LadderIn(trial, strands int, sizes wiretable.System) []Rung {
	own, ok := b.trial(trial)
	if !ok {
		return nil
	}
	return ladder{workshop: b, bed: &b.bed, unsure: b.Reversed() != nil}.of(own, strands, sizes)
}

// ladder is what a ladder is made and judged from.
type ladder struct {
	workshop
	*bed
	// unsure is set where the drive is probably the wrong way round: then no rung is called the best.
	unsure bool
}

// of is the ladder of a trial, with a number of strands and sizes of a system.
func (l ladder) of(own job.Trial, strands int, sizes wiretable.System) []Rung {
	if own.Bundle().IsZero() || !own.AlsoGauge.IsZero() || len(own.CoilTurns) > 0 {
		return nil
	}
	t := own
	if strands > 0 {
		t.Strands = quantity.Known(float64(strands))
	}
	if near := t.Gauge.NearestIn(sizes, t.Build); sizes != 0 && sizes != t.Gauge.System() && !near.IsZero() {
		t.Gauge = near
	}
	present := own.Bundle().String()
	thick := t
	for range mostRungs {
		g, ok := thick.Gauge.ThickerIn(t.Build)
		if !ok || l.full(withGauge(t, g)).Turns.Value < 1 {
			break
		}
		thick.Gauge = g
	}
	var list []Rung
	for g, more := thick.Gauge, true; more && len(list) < mostRungs && g.BareMM(t.Build) >= thinnestMM; g, more = g.ThinnerIn(t.Build) {
		if full := l.full(withGauge(t, g)); full.Turns.Value >= 1 {
			r := Rung{Trial: full, TrialOutcome: l.bare(full), Present: full.Bundle().String() == present}
			r.Holds = l.holds(&r.TrialOutcome)
			list = append(list, r)
		}
	}
	if l.unsure { // which of them is best follows from the drive
		return list
	}
	l.markBest(list)
	for i := range list {
		list[i].WhyBest = l.whyBest(list, i)
	}
	return list
}

// full is a trial with as many turns as fit; none where the slot is not known.
func (l ladder) full(t job.Trial) job.Trial {
	t.Turns = quantity.Reading{Value: l.TurnsThatFit(t).Value, Origin: quantity.Derived}
	return t
}

// TurnsThatFit is how many turns of a trial's wire fill the slot to the fill limit; missing,
// with its reason, where slot or wire is not known.
func (b *Bench) TurnsThatFit(t job.Trial) quantity.Figure {
	w := b.layouts.candidate(t)
	return b.room.fit(&w).TurnsThatFit
}

// Split is a trial's wire replaced by twice the strands of a thinner size of its standard with about
// the same area; ok is false where there is none within a tenth of it. More strands fill a slot with
// more enamel, and pass a narrower mouth.
func Split(t job.Trial) (thin wiretable.Gauge, strands int, ok bool) {
	n := int(t.Strands.Or(1))
	if t.Bundle().IsZero() || !t.AlsoGauge.IsZero() {
		return thin, 0, false
	}
	sizes := t.Gauge.System()
	list := wiretable.SubstitutesForArea(t.Gauge.AreaMM2(t.Build), wiretable.SubstituteOptions{
		System: sizes, Build: t.Build, MaxStrands: 2, Tolerance: splitWithin, Limit: 200,
	})
	for _, s := range list {
		if parts := s.Bundle.Parts(); len(parts) == 1 && parts[0].Count == 2 {
			return parts[0].Gauge, 2 * n, true
		}
	}
	return thin, 0, false
}

// splitWithin is how far the area of split strands may be from that of the wire they replace.
const splitWithin = 0.10

// bare is a trial worked out without its curve and without ±.
func (l ladder) bare(t job.Trial) TrialOutcome { return l.ran(t, l.Static(t)) }

// ran is a trial's static figures with where it runs added.
func (l ladder) ran(t job.Trial, o TrialOutcome) TrialOutcome {
	r, why := l.charger(t, &o)
	if r == nil {
		o.notRun(why)
		return o
	}
	c := l.follow(r, l.grid(func() []quantity.Figure { return []quantity.Figure{o.CutInRPM} }))
	l.meet(c, &o)
	o.readHeat(l.bed, c)
	return o
}

// markBest marks what meets the job and what is best for each aim.
func (l ladder) markBest(list []Rung) {
	within := func(r *Rung) bool {
		cool := !l.air.still.Known() || r.HottestC.Known() && r.HottestC.Value <= l.air.meanC
		return cool && !r.OverLimit() && r.Fits()
	}
	nothing := func(r *Rung) bool { return nothingAt(slow)(nil, &r.TrialOutcome) }
	for i := range list {
		r := &list[i]
		late := l.drive.kind == job.DriveWind && (r.region == drive.Idling || r.region == drive.Still) || l.drive.kind != job.DriveWind && l.speeds.slow.Known() && r.CutInRPM.Known() && r.CutInRPM.Value > l.speeds.slow.Value
		r.Word, r.Where = r.unsuited()
		r.Meets = within(r) && !late && r.dragged(draggedFar) == nil && r.Word == "" && !nothing(r) && r.AmpsUsual.Known() && r.AmpsUsual.Value >= max(leastNet, l.wanted.Or(0))
		if r.Meets {
			r.Word = "meets"
		}
	}
	best := func(useful func(*Rung) bool, of func(*Rung) quantity.Figure, mark func(*Rung) *bool) {
		top := -1
		for i := range list {
			if f := of(&list[i]); useful(&list[i]) && f.Known() && f.Value > 0 && (top < 0 || f.Value > of(&list[top]).Value) {
				top = i
			}
		}
		if top >= 0 {
			*mark(&list[top]) = true
		}
	}
	// A rung that brings nothing in the usual condition is best of nothing, except for a year, which is
	// made of all winds and seldom has the mean one.
	useful := func(r *Rung) bool { return within(r) && !(r.AmpsUsual.Known() && r.AmpsUsual.Value <= 0) }
	ofYear := func(r *Rung) bool { return within(r) && r.YearKWh.Value >= leastYear }
	best(useful, func(r *Rung) quantity.Figure { return r.AmpsSlow }, func(r *Rung) *bool { return &r.BestSlow })
	best(useful, func(r *Rung) quantity.Figure { return r.AmpsUsual }, func(r *Rung) *bool { return &r.BestUsual })
	best(useful, func(r *Rung) quantity.Figure { return r.AmpsTop }, func(r *Rung) *bool { return &r.BestTop })
	best(ofYear, func(r *Rung) quantity.Figure { return r.YearKWh }, func(r *Rung) *bool { return &r.BestYear })
}
