package job

import (
	"strings"

	"slotwright/winding/quantity"
)

// readOnThePiece are the fields that were read on one machine and speak of no other of its
// kind: those of the old winding, but for the plate, and what it takes to turn and heat it.
var readOnThePiece = []string{"machine.rise", "machine.drag", "machine.drag_at", "notes"}

// From begins a new job from another one: the machine, its drive and battery, what is
// wanted and the trials stay; what was read on that piece is emptied. A mean turn stays as
// a guess, for it was measured on another machine of the kind. The comments stay.
func (d Document) From(name string) Document {
	for _, f := range InputsOf("old") {
		if !strings.HasPrefix(f.Name, "plate_") {
			d = d.Clear(f.Path())
		}
	}
	for _, path := range readOnThePiece {
		d = d.Clear(path)
	}
	for _, table := range []string{"spin", "short", "wound"} {
		for d.Count(table) > 0 {
			d = d.Remove(table, d.Count(table)-1)
		}
	}
	if typed, _, ok := d.Typed("machine.mean_turn"); ok && !strings.HasPrefix(strings.TrimSpace(typed), "~") {
		d = d.Set("machine.mean_turn", "~"+typed, quantity.Choice{})
	}
	return d.Set("name", name, quantity.Choice{})
}
