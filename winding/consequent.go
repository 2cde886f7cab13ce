package winding

// # Poles of bare iron
//
// On some rotors (consequent pole) every other pole is bare iron and returns the flux of the magnets
// beside it. Such a rotor has twice as many poles as magnets. The circuit of a pole pair then has one
// magnet, h thick, and two gaps g, instead of two magnets:
//
//	H·h + 2·(B/μ0)·kC·g = 0,   B = Br + μr·μ0·H
//
// which gives the flux density of magnets half as thick on every pole. The same holds for the winding's
// own field, to which magnets are gap. Iron poles are taken to be as wide as the magnets; flux that
// leaves through the shaft is not counted.

// magnetPerPole is the share of a magnet's thickness per pole: 1, or ½ where there are half as many
// magnets as poles.
func (c *magnetCount) magnetPerPole() float64 {
	if c.magnets > 0 && 2*c.magnets == c.poles {
		return 0.5
	}
	return 1
}

// magnetCount is what was counted on the rotor; 0 where it was not.
type magnetCount struct{ magnets, poles int }

// odd reports whether the two counts cannot belong to one rotor.
func (c *magnetCount) odd() bool {
	return c.magnets > 0 && c.poles > 0 && c.magnets != c.poles && 2*c.magnets != c.poles
}
