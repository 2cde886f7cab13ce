package winding

// magnetsAgainstWound compares rotors on one stator: the flux that the magnets given would
// make over that of the wound rotor.
func (b *Bench) magnetsAgainstWound() Figure {
	if b.job.Field.Kind != "wound" {
		return missing("only where magnets are to take a wound rotor's place")
	}
	magnets, ok := b.magnets()
	if !ok {
		return missing("needs the magnets' remanence and thickness, the gap, the bore and the stack")
	}
	return magnets.over(b.fluxWb())
}
