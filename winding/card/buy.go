package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
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
	w.ofTrial(t, "metal_kg", " without the allowance")
	w.pair("Allowance", quantity.Number(100*t.Allowance, asGiven)+" % is in the amounts above, for leads, joints and a coil gone wrong")
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
	spool := quantity.Figure{Value: s.SpoolKg, Origin: quantity.Derived}
	w.pair("    spools", w.amount(s.Spools, quantity.None, 0)+", each of "+w.amount(spool, quantity.Kilograms, asGiven))
}

// inBoth is an amount in its two units.
func (w *writer) inBoth(a quantity.Figure, aName string, b quantity.Figure, bName string) string {
	return w.amount(a, quantity.Only(aName), 3) + ", " + w.amount(b, quantity.Only(bName), 3)
}
