package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/unit"
)

// wireToBuy is each size: length, weight, spools.
func (w *writer) wireToBuy(t *winding.TrialOutcome) {
	w.section("WIRE TO BUY")
	if len(t.Buy) == 0 {
		w.say(2, notKnown("needs the wire, the turns and the layout"))
		return
	}
	for i := range t.Buy {
		w.size(t, &t.Buy[i])
		w.gap()
	}
	w.figureAnd("Metal wound in", t.CopperKg, unit.Kilograms, 3, " without the allowance")
	w.pair("Allowance", significant(100*t.Allowance, asGiven)+" % is in the amounts above, for leads, joints and a coil gone wrong")
	w.flush()
}

// size is one wire to buy.
func (w *writer) size(t *winding.TrialOutcome, s *winding.Spools) {
	w.tick("", fmt.Sprintf("%s, %s enamel, %s", s.Gauge, t.Build, t.Metal))
	if !s.Metres.Known() {
		w.pair("", notKnown(s.Metres.Why))
		return
	}
	w.pair("    length", w.inBoth(s.Metres, "m", s.Feet, "ft"))
	w.pair("    weight", w.inBoth(s.Kg, "kg", s.Pounds, "lb"))
	spool := winding.Figure{Value: s.SpoolKg, Origin: winding.Derived}
	w.pair("    spools", w.amount(s.Spools, unit.None, 0)+", each of "+w.amount(spool, unit.Kilograms, asGiven))
}

// inBoth is an amount in its two units.
func (w *writer) inBoth(a winding.Figure, aName string, b winding.Figure, bName string) string {
	return w.amount(a, unit.Only(aName), 3) + ", " + w.amount(b, unit.Only(bName), 3)
}
