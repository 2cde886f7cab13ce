package winding

// # Poles of bare iron
//
// On some rotors every other pole is bare iron and returns the flux of the magnets beside it.
// Such a rotor has twice as many poles as magnets. Round the circuit of a pole pair there is
// then one magnet, h thick, against two gaps g, where two magnets usually stand:
//
//	H·h + 2·(B/μ0)·kC·g = 0,   B = Br + μr·μ0·H
//
// which gives the flux density of magnets half as thick on every pole. The same holds for
// the winding's own field, to which magnets are gap. It takes iron poles as wide as the
// magnets, and counts no flux that leaves by the shaft.

// magnetPerPole is the part of a magnet's thickness that each pole has: 1, or ½ where there
// are half as many magnets as poles.
func (c *magnetCount) magnetPerPole() float64 {
	if c.magnets > 0 && 2*c.magnets == c.poles {
		return 0.5
	}
	return 1
}

// magnetCount is what was counted on the rotor; 0 where it was not.
type magnetCount struct{ magnets, poles int }

// odd reports whether the two counts cannot be of one rotor.
func (c *magnetCount) odd() bool {
	return c.magnets > 0 && c.poles > 0 && c.magnets != c.poles && 2*c.magnets != c.poles
}
