package layout

import "slices"

// Counts are the numbers that insulation is cut for. They are what [Layout.Wiring] and [Layout.Slot]
// list, without the lists.
type Counts struct {
	Joints      int // coil to coil, star points and corners of deltas
	LeadsOut    int // leads that come out
	SharedSlots int // slots in which two coil sides lie
	Groups      int // groups of coils, each of one phase
}

// Counts counts the winding in star or delta.
func (l *Layout) Counts(conn Connection) (n Counts) {
	sides := make([]int, l.spec.Slots+1)
	var groups, paths []int // by phase and number
	for i := range l.coils {
		c := &l.coils[i]
		phase := c.Set*3 + c.Phase
		for _, slot := range [...]int{c.Start, c.Finish} {
			if sides[slot]++; sides[slot] == 2 {
				n.SharedSlots++
			}
		}
		if group := 6*c.Group + phase; !slices.Contains(groups, group) {
			groups = append(groups, group)
		}
		if path := 6*c.Circuit + phase; c.Turns > 0 && !slices.Contains(paths, path) {
			paths = append(paths, path)
		} else if c.Turns > 0 {
			n.Joints++ // to the one before it
		}
	}
	n.Groups = len(groups)
	n.LeadsOut = l.spec.Sets * l.spec.Phases
	if l.spec.Phases != 3 {
		n.LeadsOut *= 2 // no nodes: both ends come out
		return n
	}
	n.Joints += l.spec.Sets * len(l.nodes(0, conn))
	return n
}
