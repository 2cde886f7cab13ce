package winding

import "slotwright/winding/quantity"

// magnetsAgainstWound compares rotors on one stator: the flux that the magnets given would
// make over that of the wound rotor.
func (b *Bench) magnetsAgainstWound() quantity.Figure {
	if b.job.Field.Kind != "wound" {
		return quantity.Missing("only where magnets are to take a wound rotor's place")
	}
	magnets, ok := b.magnets()
	if !ok {
		return quantity.Missing("needs the magnets' remanence and thickness, the gap, the bore and the stack")
	}
	return magnets.Over(b.fluxWb())
}
