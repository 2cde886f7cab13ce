package layout

import "slices"

// Without is the layout with some coils left out: those with a side in one of the dead slots, and those
// round one of the bare teeth; tooth n lies between slots n and n + 1. This describes a flywheel's
// stator with unwound stations, or one with slots left empty so that the rest balances. The remaining
// coils are renumbered, and joined across the gap.
//
// The error says which number is out of range, that teeth were named but coils do not lie round one,
// that nothing is left, or that the phases would no longer be equal.
func (l *Layout) Without(deadSlots, bareTeeth []int) (*Layout, error) {
	if len(deadSlots) == 0 && len(bareTeeth) == 0 {
		return l, nil
	}
	if err := l.checkWithout(deadSlots, bareTeeth); err != nil {
		return nil, err
	}
	next := l.copied()
	next.found = true // the spec alone no longer says what is wound
	next.coils = slices.DeleteFunc(next.coils, func(c Coil) bool {
		tooth := c.Start
		if wrap(c.Finish-c.Start, l.spec.Slots) != 1 {
			tooth = c.Finish
		}
		return slices.Contains(deadSlots, c.Start) || slices.Contains(deadSlots, c.Finish) || slices.Contains(bareTeeth, tooth)
	})
	if len(next.coils) == 0 {
		return nil, problemf("dead slots and bare teeth: no coil is left; name only those that hold none")
	}
	groups := map[int]int{}
	for i := range next.coils {
		c := &next.coils[i]
		if _, seen := groups[c.Group]; !seen {
			groups[c.Group] = len(groups) + 1
		}
		c.Number, c.Group = i+1, groups[c.Group]
	}
	if b := next.Balance(); !b.Equal {
		return nil, problemf("dead slots and bare teeth: without their coils the phases differ by %.2g %% in voltage and %.2g degrees in angle; leave out the same of each phase",
			b.WorstSizePercent, b.WorstAngleDeg)
	}
	return next, nil
}

// checkWithout tests the numbers by themselves.
func (l *Layout) checkWithout(deadSlots, bareTeeth []int) error {
	for _, n := range deadSlots {
		if n < 1 || n > l.spec.Slots {
			return problemf("dead slots: read %d, expected slots from 1 to %d", n, l.spec.Slots)
		}
	}
	for _, n := range bareTeeth {
		if n < 1 || n > l.spec.Slots {
			return problemf("bare teeth: read %d, expected 1 to %d; tooth 1 lies between slots 1 and 2", n, l.spec.Slots)
		}
	}
	if len(bareTeeth) > 0 && l.spec.Span != 1 && l.spec.Span != l.spec.Slots-1 {
		return problemf("bare teeth: the coils span %d slots, expected coils round one tooth (span 1); name dead slots instead", l.spec.Span)
	}
	return nil
}
