package layout

import (
	"fmt"

	"slotwright/tui/kit"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/text"
)

// notesFrom is the height from which the words of the facts are explained under the lists; on a smaller
// screen, and on one that shows every list, they are at the end of the remarks.
const notesFrom = 24

// notes are the words in at most two lines under the lists.
func (v *View) notes(t kit.Theme, d *sheet, w int) []string {
	if v.at.H < notesFrom || v.allLists() {
		return nil
	}
	text := ""
	for _, next := range wordsOf(d) {
		if more := text + " " + next; text == "" || len(t.Wrap(more, w)) <= 2 {
			text = more
		}
	}
	return t.WrapPaint(kit.Hint, text[1:], w)
}

// wordsOf is what the words of the facts and of the picture mean, a sentence each.
func wordsOf(d *sheet) []string {
	sp := d.plan.Spec()
	list := []string{"q: slots of one phase under one pole.", "kw1: the part of the turns that the working wave finds, kw3 that of the third harmonic."}
	if sp.Kind != layout.Concentric {
		list = append([]string{fmt.Sprintf("Span %d: the two sides of a coil lie %s apart, its throw is 1 to %d.", sp.Span, text.Count(sp.Span, "slot"), sp.Span+1)}, list...)
	}
	if d.bench.Job().Machine.Stator == job.StatorFlat {
		list = append([]string{"Slot: here the gap between two flat coils, as the card calls it."}, list...)
	}
	if sp.Phases == 1 {
		list = append(list, "U1 begins the winding, U2 ends it.")
	} else {
		list = append(list, "U, V, W: the phases; U1 begins one, U2 ends it.")
	}
	if sp.Layers == 2 {
		list = append(list, "Double layer: two coil sides share a slot.")
	} else {
		list = append(list, "Single layer: one coil side fills a slot.")
	}
	if d.plan.Circuits() > 1 {
		list = append(list, "A circuit: coils in series; several beside each other share the amps.")
	}
	return list
}
