package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # What needs no slots
//
// For two windings in one iron, with coils of one kind, the volts go with the effective turns, the ohms
// with turns over copper area (at one mean turn), the copper in a slot with turns times wire area, and
// the speed at which charging begins with one over the volts. So the old winding's ohms, volts and
// short circuit scale to any trial by the ratio of the turns alone.

// byTurns is the old winding for comparisons.
type byTurns struct {
	machine *machine
	layouts *layouts
	old     *oldWinding
	oldOhms *Ohms
}

// byRatio is a trial's ohms of a phase at 20 °C from those of the old winding, where no layout gives
// them.
func (by byTurns) byRatio(w *candidate, worked quantity.Figure) quantity.Figure {
	old := by.old
	if worked.Known() || !old.likeCoils(&w.coils) || w.coils.span != old.coils.span {
		return worked
	}
	measured := oldPhaseOhms(by.machine, old, by.oldOhms)
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

// voltsAgainst is volts between leads over the old ones, even where only turns are known.
func (by byTurns) voltsAgainst(t job.Trial, o, old *TrialOutcome) quantity.Figure {
	if r := o.LinePerRPM.Over(old.LinePerRPM); r.Known() {
		return r
	}
	w := by.layouts.candidate(t)
	if c, was := &w.coils, &by.old.coils; c.effective > 0 && was.effective > 0 && by.old.likeCoils(c) {
		r := c.effective * by.machine.linePerPhase(t.Connection) / (was.effective * by.machine.linePerPhase(by.old.Connection))
		return quantity.Of(r, t.Turns.Origin, by.old.OldWinding.Turns.Origin)
	}
	return o.LinePerRPM.Over(old.LinePerRPM)
}

// cutInAgainst is the speed at which charging begins over the old one.
func (by byTurns) cutInAgainst(t job.Trial, o, old *TrialOutcome) quantity.Figure {
	if r := o.CutInRPM.Over(old.CutInRPM); r.Known() {
		return r
	}
	return by.voltsAgainst(t, o, old).Then(func(r float64) float64 { return 1 / r })
}

// against compares a winding with the old one.
func (by byTurns) against(t job.Trial, o, old *TrialOutcome) Ratios {
	if old == nil {
		no := quantity.Missing("needs the old winding's turns and wire")
		return Ratios{no, no, no, no}
	}
	return Ratios{
		Volts:  by.voltsAgainst(t, o, old),
		Ohms:   by.ohmsAgainst(t, o, old),
		Copper: o.CopperPerSlotMM2.Over(old.CopperPerSlotMM2),
		CutIn:  by.cutInAgainst(t, o, old),
	}
}

// ohmsAgainst is ohms between leads over the old ones, even where only turns and wire are known.
func (by byTurns) ohmsAgainst(t job.Trial, o, old *TrialOutcome) quantity.Figure {
	if r := o.LeadOhms20.Over(old.LeadOhms20); r.Known() {
		return r
	}
	w := by.layouts.candidate(t)
	return by.old.relativeOhms(&w).Times(by.machine.leadPerPhase(t.Connection) / by.machine.leadPerPhase(by.old.Connection))
}
