package card

import (
	"fmt"

	"slotwright/winding/layout"
)

// everyRows is after how many rows of a long table a blank line rests the eye.
const everyRows = 6

// slotTable is what lies in each slot, to check against when the coils are in.
func (w *writer) slotTable(trial int) {
	w.section("SLOT TABLE")
	plan, why := w.b.Plan(trial)
	if plan == nil {
		w.say(2, notKnown(why))
		return
	}
	w.say(2, "Slots count clockwise as seen from the connection end. + the phase goes away from the connection end, - it comes back. "+plan.SidesText())
	w.gap()
	w.raw(fmt.Sprintf("  %3s %5s  %-18s %-6s %4s  %-7s %6s", "", "slot", "layer", "phase", "coil", "side", "turns"))
	w.gap()
	for n := 1; n <= plan.Spec().Slots; n++ {
		w.slot(plan, n)
		if n%everyRows == 0 {
			w.gap()
		}
	}
}

// slot is a row for each coil side in a slot.
func (w *writer) slot(plan *layout.Layout, n int) {
	box, name := "[ ]", fmt.Sprint(n)
	sides := plan.Slot(n)
	if len(sides) == 0 {
		w.raw(fmt.Sprintf("  %3s %5s  empty", box, name))
	}
	for _, s := range sides {
		sign := "+"
		if s.Sign < 0 {
			sign = "-"
		}
		w.raw(fmt.Sprintf("  %3s %5s  %-18s %-6s %4d  %-7s %6d", box, name, s.Layer, sign+plan.PhaseName(s.Set, s.Phase), s.Coil, s.End, s.Turns))
		box, name = "", ""
	}
}
