package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # What needs no slots
//
// Of two windings in one iron, with coils of one kind, the volts go as the effective turns,
// the ohms as turns over copper (at one mean turn), the copper in a slot as turns times wire,
// and the speed at which charging begins as one over the volts. So the old winding's ohms,
// volts and short circuit carry to any trial by the ratio of the turns alone.

// byRatio is a trial's ohms of a phase at 20 °C by those of the old winding, where no layout
// gives them.
func (b *Bench) byRatio(w *candidate, worked quantity.Figure) quantity.Figure {
	old := &b.old
	if worked.Known() || !old.likeCoils(&w.coils) || w.coils.span != old.coils.span {
		return worked
	}
	measured := oldPhaseOhms(&b.machine, old, &b.oldOhms)
	if !measured.Known() {
		return worked
	}
	if w == &old.candidate {
		return measured
	}
	ratio := old.relativeOhms(w)
	if !ratio.Known() && w.trial.Bundle().IsZero() && old.OldWinding.Bundle().IsZero() && w.coils.series > 0 && old.coils.series > 0 {
		ratio = quantity.Of(sq(w.coils.series/old.coils.series), quantity.Guessed) // equal copper
	}
	if !ratio.Known() {
		return worked
	}
	return measured.With(ratio, mul)
}

// voltsAgainst is volts between leads over the old ones, also where only turns are known.
func (b *Bench) voltsAgainst(t job.Trial, o, old *TrialOutcome) quantity.Figure {
	if r := o.LinePerRPM.Over(old.LinePerRPM); r.Known() {
		return r
	}
	w := b.layouts.candidate(t)
	if c, was := &w.coils, &b.old.coils; c.effective > 0 && was.effective > 0 && b.old.likeCoils(c) {
		r := c.effective * b.machine.linePerPhase(t.Connection) / (was.effective * b.machine.linePerPhase(b.old.Connection))
		return quantity.Of(r, t.Turns.Origin, b.old.OldWinding.Turns.Origin)
	}
	return o.LinePerRPM.Over(old.LinePerRPM)
}

// cutInAgainst is the speed at which charging begins over the old one.
func (b *Bench) cutInAgainst(t job.Trial, o, old *TrialOutcome) quantity.Figure {
	if r := o.CutInRPM.Over(old.CutInRPM); r.Known() {
		return r
	}
	return b.voltsAgainst(t, o, old).Then(func(r float64) float64 { return 1 / r })
}
