package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
)

// NotesOf is what to know of a layout before winding it, for a rotor ("magnets", "wound", ""
// where nothing was said) and a connection: cogging comes of magnets, so a wound rotor has
// none to speak of, and only magnets that are there make a caution of it; a third harmonic
// goes round a delta only.
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
