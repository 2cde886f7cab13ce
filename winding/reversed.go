package winding

import (
	"fmt"
	"math"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # What has to be settled first
//
// A drive entered the wrong way round falsifies every figure of how a winding runs, and the search for
// better windings then finds hundreds of turns of hair-thin wire. So where a drive that slows the
// alternator down is probably reversed, that is the first thing said, and no winding is offered until
// it is settled: the wheels or the ratio are swapped, or two tachometer readings say that it is so.
//
// Three signs count, each only where the reversed drive would be much faster and no faster than
// plausible:
//   - nothing charges at the top speed, and reversed something does (turnedround.go), of a slow drive
//     also one with so many turns that the reversed drive is many times too fast for it;
//   - little comes in, with the best of the windings found too, and less than a tenth of what the job's
//     trials or its old winding bring with the drive reversed;
//   - little comes in, and less than a tenth of what a trial would bring reversed, if in both cases it
//     had the turns for the speed. That finds the job of which every winding is wound for the wrong
//     ratio already.
//
// A drive that is geared down on purpose, as of a fast engine, passes: it brings more than little, or
// the reversed drive would be too fast.
//
// Cost: nothing for a drive that speeds the alternator up; else up to one torque curve for each trial
// and the old winding.

// Reversed is the question whether a drive is the wrong way round.
type Reversed struct {
	// Path is the field to look at, as in the job file.
	Path string
	// Ratio is the ratio to type instead where Path is the ratio; "" where two wheels are to be swapped.
	Ratio string
	// Text is what is the matter, Short the same in a few words, Check what to look at and what would
	// follow, Settle how to say that it is right as it is.
	Text, Short, Check, Settle string
}

// How much a drive must gain by being reversed to be doubted; common practice, no source.
const (
	leastTimes  = 1.5  // of speed: wheels that differ by less than a fifth were meant to be alike
	paltryTimes = 10.0 // of amps, or of a year's energy in wind
	// paltryWatts is little, W: less than a small solar panel gives, and nobody belts up an engine for
	// it. fastestUsual, rpm, is the highest plausible usual speed of any alternator.
	paltryWatts, fastestUsual = 20.0, 10000.0
	// turnsFor is the part of the usual speed at which a winding with the turns for it begins to charge.
	turnsFor = 0.5
)

// Reversed is the question whether the drive is the wrong way round; nil where nothing asks it. It costs
// as much as the outcome unless that was worked out before, and nothing where the drive speeds the
// alternator up.
func (b *Bench) Reversed() *Reversed {
	if !b.slowed() {
		return nil
	}
	return b.work().reversed
}

// slowed reports whether a stage of the drive slows the alternator down, as far as it is known.
func (b *Bench) slowed() bool {
	a := turnedRound{given: &b.job.Drive, target: &b.job.Target, speeds: &b.speeds}
	_, ok := a.way()
	return ok
}

// turnedAbout asks it of what was worked out for the job.
func (b *Bench) turnedAbout(d *done) *Reversed {
	trials := make([]TrialOutcome, len(d.trials))
	for i := range d.trials {
		trials[i] = d.trials[i].outcome
	}
	a := turnedRound{&b.job.Drive, &b.job.Target, &b.speeds, cutInsOf(trials, d.old)}
	way, ok := a.way()
	usual := b.speeds.usual.Value * way.times
	if !ok || way.times < leastTimes || usual > fastestUsual {
		return nil
	}
	other, then, by := b.other(way.drive), 0.0, ""
	if other.speeds.usual.Known() {
		then, by = other.brings(b.job.Trials)
	}
	lame := a.nothingCharges() && (a.charges(way.times) || a.slowDrive() && a.speeds.top.Value*way.times >= a.begins.first)
	now := b.bringsNow(d)
	switch {
	case lame:
	case !b.speeds.usual.Known() || a.begins.first == 0 || !b.paltry(now):
		return nil
	case then >= paltryTimes*b.atLeast(now) && usual <= fastFor*a.begins.last:
	case other.bringsFitted() >= paltryTimes*b.atLeast(max(now, b.bringsFitted())):
		by = ""
	default:
		return nil
	}
	return a.question(b, way, now, then, by)
}

// other is the bench with another drive.
func (b *Bench) other(d job.DriveSpec) *Bench {
	j := *b.job
	j.Drive = d
	return b.With(j)
}

// worth is what a winding brings in the usual condition: net amps, in wind a year's kWh where known; 0
// where it cannot be wound or does not run.
func (b *Bench) worth(o *TrialOutcome) float64 {
	if !o.Fits() {
		return 0
	}
	return b.brought(o)
}

// brought is worth, whether the winding fits or not.
func (b *Bench) brought(o *TrialOutcome) float64 {
	switch {
	case b.drive.kind == job.DriveWind && o.YearKWh.Known():
		return o.YearKWh.Value
	case o.AmpsUsual.Known():
		return o.AmpsUsual.Value
	}
	return 0
}

// atLeast is what windings bring, no less than what counts as something.
func (b *Bench) atLeast(brings float64) float64 {
	if b.drive.kind == job.DriveWind {
		return max(brings, leastYear)
	}
	return max(brings, leastNet)
}

// paltry reports whether what windings bring is little.
func (b *Bench) paltry(brings float64) bool {
	if b.drive.kind == job.DriveWind {
		return 1000*brings < paltryWatts*hoursAYear
	}
	return brings*b.dc.held.Value < paltryWatts
}

// hoursAYear is the hours of a year.
const hoursAYear = 8760

// bringsNow is the most that a trial or the old winding brings, or a winding that was found for a trial.
func (b *Bench) bringsNow(d *done) (most float64) {
	of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(trying)}
	if d.old != nil {
		most = b.worth(d.old)
	}
	for _, t := range d.trials {
		most = max(most, b.worth(&t.outcome))
		for _, f := range []*fullSlot{t.mend.best, t.mend.rejoined} {
			if f != nil {
				most = max(most, of.tells(f))
			}
		}
	}
	return most
}

// brings is the most that the trials and the old winding bring, and which of them brings it.
func (b *Bench) brings(trials []job.Trial) (most float64, by string) {
	run := ladder{workshop: b, bed: &b.bed}
	take := func(o TrialOutcome, name string) {
		if w := b.worth(&o); w > most {
			most, by = w, name
		}
	}
	if b.old.known() {
		take(run.ran(b.old.trial, b.static(&b.old.candidate)), "the old winding")
	}
	for _, t := range trials {
		take(run.bare(t), "trial "+t.Name)
	}
	return most, by
}

// bringsFitted is the most that the trials bring with the turns for the usual speed, of as much of the
// same wire.
func (b *Bench) bringsFitted() (most float64) {
	run := ladder{workshop: b, bed: &b.bed}
	for _, t := range b.job.Trials {
		if begins := b.Static(t).CutInRPM; begins.Known() && t.Turns.Given() {
			fewer := t.Turns.Value * begins.Value / (turnsFor * b.speeds.usual.Value)
			t.Strands = quantity.Known(max(1, math.Round(t.Strands.Or(1)*t.Turns.Value/fewer)))
			t.Turns.Value = max(1, fewer)
			o := run.bare(t)
			most = max(most, b.brought(&o))
		}
	}
	return most
}

// question words it.
func (a turnedRound) question(b *Bench, way reversal, now, then float64, by string) *Reversed {
	r := a.speeds.ratio
	q := &Reversed{Path: way.path, Ratio: way.ratio}
	q.Short = "the drive is probably the wrong way round, which comes first"
	makes := strings.TrimSpace(fmt.Sprintf("%s %s turns of the alternator for one of the drive make", way.said, quantity.File.Number(r.Value, quantity.AtMost(3))))
	q.Text = "the drive is probably the wrong way round: " + makes
	if a.nothingCharges() {
		q.Text += fmt.Sprintf(" %.0f alternator rpm at the top, and nothing charges under %.0f", a.speeds.top.Value, a.begins.first)
	} else {
		q.Text += fmt.Sprintf(" %.0f alternator rpm at the usual speed, where next to nothing comes in", a.speeds.usual.Value)
	}
	brings := ""
	if then > 0 && by != "" && b.drive.kind != job.DriveWind {
		brings = fmt.Sprintf("; %s would then bring %s A (%s)", by, amps(then), b.drive.conditions[usual].Label)
	}
	q.Check = fmt.Sprintf("%s. %s it would be %.3g, and %.0f alternator rpm at the top%s", way.look, way.swapped, r.Value*way.times, a.speeds.top.Value*way.times, brings)
	q.Settle = "if it is right as it is, turn the drive ten times by hand, count the alternator's turns and type both at the tachometer readings; no winding is offered until this is settled"
	return q
}

// withhold takes back what was offered to replace trials: it is the best for a drive that is probably
// not the one there.
func (o *Outcome) withhold() {
	if o.Reversed == nil {
		return
	}
	for i := range o.Trials {
		d := &o.Trials[i].Driven
		d.Mend, d.Offer, d.InTheWay, d.Rejoin, d.Joints, d.Calmer, d.noneStands = "", nil, "", "", nil, "", false
	}
}

// before puts the question before other findings, and in place of what they advise for a trial.
func (q *Reversed) before(list []Finding) []Finding {
	if q == nil {
		return list
	}
	for i := range list {
		if f := &list[i]; f.Trial != "" && f.Fix != "" && (strings.HasSuffix(f.Path, ".turns") || strings.HasSuffix(f.Path, ".gauge")) {
			f.Fix = "first settle which way round the drive is"
		}
	}
	first := Finding{Severity: Broken, Path: q.Path, Text: q.Text, Fix: q.Check + "; " + q.Settle, Source: turnsSource, First: true}
	return append([]Finding{first}, list...)
}

// cutIns is where windings begin to charge, rpm: the first of them and the last; 0 where none is known.
type cutIns struct{ first, last float64 }

// cutInsOf are those of the trials, or else of the old winding, which also counts for the last.
func cutInsOf(trials []TrialOutcome, old *TrialOutcome) (c cutIns) {
	take := func(f quantity.Figure) {
		if f.Known() && (c.first == 0 || f.Value < c.first) {
			c.first = f.Value
		}
		if f.Known() {
			c.last = max(c.last, f.Value)
		}
	}
	for i := range trials {
		take(trials[i].CutInRPM)
	}
	if old != nil && old.CutInRPM.Known() {
		if c.first == 0 {
			take(old.CutInRPM)
		}
		c.last = max(c.last, old.CutInRPM.Value)
	}
	return c
}
