package job

import (
	"strings"

	"slotwright/winding/quantity"
)

// readOnThePiece are the fields that were read on one machine and say nothing of another of its kind:
// those of the old winding, except the plate, and what it takes to turn and heat it.
var readOnThePiece = []string{"machine.rise", "machine.drag", "machine.drag_at", "notes"}

// From begins a new job from another one: the machine, its drive and battery, the target and the trials
// stay; what was read on that piece is emptied. A mean turn stays as a guess, since it was measured on
// another machine of the kind. The comments stay. Where the text does not allow it the document is
// unchanged, with the reason in Refused.
func (d Document) From(name string) Document {
	edits := []func(Document) Document{func(d Document) Document { return d.Set("name", name, quantity.Choice{}) }}
	clear := func(path string) {
		edits = append(edits, func(d Document) Document { return d.Clear(path) })
	}
	for _, f := range InputsOf("old") {
		if !strings.HasPrefix(f.Name, "plate_") {
			clear(f.Path())
		}
	}
	for _, path := range readOnThePiece {
		clear(path)
	}
	for _, table := range []string{"spin", "short", "amps", "coil", "wound"} {
		for i := d.Count(table) - 1; i >= 0; i-- {
			edits = append(edits, func(d Document) Document { return d.Remove(table, i) })
		}
	}
	if typed, _, ok := d.Typed("machine.mean_turn"); ok && !strings.HasPrefix(strings.TrimSpace(typed), "~") {
		edits = append(edits, func(d Document) Document { return d.Set("machine.mean_turn", "~"+typed, quantity.Choice{}) })
	}
	next := d
	for _, edit := range edits {
		if next = edit(next); next.Refused() != "" {
			return d.refuse("%s", next.Refused())
		}
	}
	return next
}
