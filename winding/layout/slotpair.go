package layout

// SlotPair is the two slot harmonics, the field waves with Q - p and Q + p pole pairs round the machine
// that the slotting makes of the working wave. Every winding passes them as fully as the working wave,
// since from slot to slot they advance by the same angle, so no span and no spread removes them;
// skewing by about a slot does. Source: Pyrhönen et al., Design of Rotating Electrical Machines, ch. 2
// (slot harmonics), from memory.
type SlotPair struct {
	// LowerPairs is |Q - p|, UpperPairs Q + p: pole pairs.
	LowerPairs, UpperPairs int
	// LowerOrder and UpperOrder are the same in electrical order, over p.
	LowerOrder, UpperOrder float64
	// Felt says that both orders are odd whole numbers: waves in the field of a rotor with equal poles,
	// which therefore show in the voltage.
	Felt bool
	// Kw is their winding factor, that of the working wave.
	Kw float64
}

// SlotPair is that of the layout.
func (l *Layout) SlotPair() SlotPair {
	q, p := l.Spec().Slots, l.Spec().Poles/2
	low, high := max(q-p, p-q), q+p
	return SlotPair{
		LowerPairs: low, UpperPairs: high,
		LowerOrder: float64(low) / float64(p), UpperOrder: float64(high) / float64(p),
		Felt: low%p == 0 && (low/p)%2 == 1 && (high/p)%2 == 1,
		Kw:   l.Factor(1),
	}
}
