package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
)

// NotesOf is what to know of a layout before winding it, for a rotor ("magnets", "wound", "" where none
// was given) and a connection: cogging comes from magnets, so a wound rotor has none to speak of, and
// it is a caution only where there are magnets; a third harmonic circulates in a delta only.
func NotesOf(plan *layout.Layout, rotor string, connected layout.Connection) []layout.Note {
	var list []layout.Note
	for _, n := range plan.Notes() {
		switch n.Topic {
		case layout.Cogging:
			if rotor == job.FieldWound {
				continue
			}
			n.Caution = n.Caution && rotor == job.FieldMagnets
		case layout.ThirdHarmonic:
			n.Caution = connected == layout.Delta
		}
		list = append(list, n)
	}
	return list
}
