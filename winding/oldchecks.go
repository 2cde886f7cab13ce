package winding

import (
	"fmt"
	"math"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # What the old winding confirms
//
// The old winding came out of this iron: it is the best check on what was measured of the iron. It was
// in the slot, so the slot has room for it; a turn of it went twice through the stack and across to its
// other side; its volts came from no more flux than iron carries; and the plate's amps went through its
// ohms. What contradicts this was misread or mistyped, and is reported by what it would mean.

// shortestTurnMM is less than any turn of a winding can be: twice the stack plus once the way along the
// bore to the other side, the pole pitch where the span is not known. With the rotor outside, that way
// is shortest at the bottom of the slots. A coil round one tooth crosses it twice; a tooth that is
// itself a guess is not counted.
func (l *turnLength) shortestTurnMM(w *candidate) quantity.Figure {
	m, span := &l.machine, w.coils.span
	if !m.StackMM.Given() {
		return quantity.Missing("needs the stack")
	}
	across := m.polePitchMM()
	switch {
	case roundTooth(w) && (l.noTooth != "" || l.tooth.even):
		across = quantity.Of(0)
	case roundTooth(w):
		across = quantity.Of(2*l.tooth.width, m.BoreMM.Origin)
	case m.BoreMM.Given() && m.Slots.Given() && span > 0:
		across = quantity.Of(math.Pi*m.nearestShaftMM(l.depthMM)*span/m.Slots.Value, m.BoreMM.Origin)
	}
	return across.Then(func(w float64) float64 { return 2*m.StackMM.Value + w })
}

// nearestShaftMM is the diameter of the end of the slots nearest to the shaft, mm.
func (m *machine) nearestShaftMM(depthMM float64) float64 {
	if m.outward() > 0 {
		return m.BoreMM.Value
	}
	return max(0, m.BoreMM.Value-2*depthMM)
}

// believed is the turn by the old ohms, marked as a guess where no turn can be that short, so that
// everything that follows from it is marked too.
func (l *turnLength) believed(turn quantity.Figure) quantity.Figure {
	least := l.shortestTurnMM(&l.was)
	if turn.Known() && least.Known() && turn.Value < least.Value {
		turn.Origin = quantity.Guessed
		return turn.Because("shorter than any turn on this stack can be")
	}
	return turn
}

// Limits of what an old winding can have been; common practice, no source, unless said.
const (
	// mostGapTesla is above any small machine's peak of the working wave: the teeth, about half of the
	// bore, would be past 2 T.
	mostGapTesla = 1.3
	// veryLoose is a wire fill below which turns or strands of an old winding may have been miscounted:
	// makers wind loosely, and a loose slot does not show what fits by hand.
	veryLoose = 0.25
)

// aboutOld makes the findings about the old winding.
type aboutOld struct {
	machine *machine
	slot    *job.SlotSpec
	room    *slotRoom
	layouts *layouts
	turn    *turnLength
	flux    *flux
	old     *oldWinding
	henries *inductances
}

// callOut is about what the old winding cannot have been.
func (a aboutOld) callOut(d *doubts, old *TrialOutcome) {
	if a.turn.impossible() {
		least, spoke, metal := a.turn.shortestTurnMM(&a.turn.was), a.turn.old, ""
		if geo, _, _ := a.turn.doubted(); geo.Known() {
			metal = a.turn.otherMetal(geo.Value)
		}
		d.add(Finding{Severity: Broken, Path: "old.lead", Fix: metal + "read the ohms again, and check old turns, wire, strands, circuits and connection"},
			"the old winding's ohms make its mean turn %.0f mm: twice the stack and across is %.0f mm already", spoke.Value, least.Value)
	}
	if t := a.flux.gapTesla(a.machine); t.Known() && t.Value > mostGapTesla && a.flux.fromOld {
		d.add(Finding{Severity: Doubt, Path: "spin[0].line", Fix: "check volts and speed, the old turns, circuits and connection, the poles, bore and stack", Source: job.Practice},
			"by the old winding's volts there would be %.2f T in the gap, more than iron carries", t.Value)
	}
	a.plate(d)
	a.span(d)
	if old != nil {
		a.fill(d, old)
	}
}

// fill: it was in the slot, so it went in.
func (a aboutOld) fill(d *doubts, old *TrialOutcome) {
	f := old.WireFill
	switch limit := a.room.fillLimit; {
	case !f.Known():
	case f.Value > hexagonalWireFill:
		d.add(Finding{Severity: Broken, Path: "old.turns", Fix: "measure the slot again, count turns and strands again, measure the wire again", Source: "hexagonal packing, 2/√3"},
			"%.0f turns of %s came out of a slot that they would fill to %.2f: perfect packing is 1.15, so slot, turns or wire is misread", old.Turns.Value, old.Wire, f.Value)
	case a.slot.FillLimit.Given():
	case old.Turns.Value > old.TurnsThatFit.Value && old.TurnsThatFit.Known(): // the screen shows "9 of 8"
		fix := fmt.Sprintf("a fill limit of %.2f, if whoever winds it can do the same", f.Value)
		if f.Value > mostByHand {
			fix = "measure the slot and the wire again; if they hold a machine wound it, and by hand 0.65 to 0.75 goes in"
		}
		d.add(Finding{Severity: Note, Path: "slot.fill_limit", Fix: fix, Source: "the old winding itself"},
			"the old winding filled this slot to %.2f with %.0f turns; the limit of %.2f, taken as none was given, lets only %.0f of them in", f.Value, old.Turns.Value, limit.Value, old.TurnsThatFit.Value)
	case f.Value < veryLoose:
		d.add(Finding{Severity: Note, Path: "old.turns", Fix: "count its turns and its strands in hand again, measure the slot again; if they hold, nothing is wrong", Source: job.Practice},
			"the old winding filled this slot to %.2f only: makers wind loosely, but seldom so loosely. It says nothing of what a hand can put in", f.Value)
	}
}

// plate: with its leads shorted and no inductance at all the old winding gives, through a bridge,
// (3/π)·Ê/R of a star's phase, of one phase (2/π)·Ê/R, through half wave or a doubler half of that; a
// battery can only lower it.
func (a aboutOld) plate(d *doubts) {
	most, known := plateAtMost(a.machine, a.old, a.henries.oldPhaseOhms(), a.flux, a.henries.dc)
	if known && a.old.RatedAmps.Value > most {
		d.add(Finding{Severity: Broken, Path: "old.plate_current", Fix: "check the ohms, the volts and what the plate says", Source: "Ohm's law"},
			"at %.0f rpm the old winding's volts drive %.3g A through its ohms at the very most: its plate says %.3g A", a.old.RatedRPM.Value, most, a.old.RatedAmps.Value)
	}
}

// plateAtMost is the amps DC that the old winding's volts could drive through its ohms at the plate's
// speed; known is false without plate, volts or ohms.
func plateAtMost(m *machine, old *oldWinding, ohms quantity.Figure, flux *flux, dc *dcSide) (most float64, known bool) {
	volts := flux.phasePerRPM(&old.coils)
	if !old.RatedAmps.Given() || !old.RatedRPM.Given() || !ohms.Known() || !volts.Known() || ohms.Value <= 0 {
		return 0, false
	}
	most = math.Sqrt2 * volts.Value * old.RatedRPM.Value / ohms.Value * dc.shortedMean(m.phases) * float64(m.sets)
	if old.Connection == layout.Delta && m.phases == 3 { // the equivalent star, Ê/√3 and R/3
		most *= math.Sqrt(3)
	}
	return most, true
}

// markPlate marks a plate that volts and ohms contradict, and so the limits that depend on it.
func markPlate(m *machine, old *oldWinding, ohms quantity.Figure, flux *flux, dc *dcSide) {
	if most, known := plateAtMost(m, old, ohms, flux, dc); known && old.RatedAmps.Value > most {
		old.RatedAmps.Origin = quantity.Guessed
	}
}

// span says what slots and poles alone imply where no span was given: fewer than two slots per pole put
// every coil on a tooth of its own.
func (a aboutOld) span(d *doubts) {
	m := a.machine
	if m.Span.Given() || !m.Slots.Given() || !m.Poles.Given() || a.layouts.own().plan == nil {
		return
	}
	if per := m.Slots.Value / m.Poles.Value; per < 2 {
		d.add(Finding{Severity: Note, Path: "machine.span", Fix: "count slots and poles again if coils span more than one tooth"},
			"%.0f slots on %.0f poles: nothing is said of the span, so every coil is taken to sit on one tooth and to find %.2f of its turns' volts", m.Slots.Value, m.Poles.Value, a.layouts.own().kw[0])
	}
}
