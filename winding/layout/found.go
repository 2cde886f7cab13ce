package layout

import "slices"

// FromCoils is a layout from a list: an old stator as found, or a planned one with something changed (a
// coil reversed, left out, short of turns). The phases need not balance; [Layout.Balance] says by how
// much they differ.
//
// The spec gives slots, poles, phases, layers and sets; its span may be 0, which takes that of the
// first coil. Circuit 0 is read as 1, and when every group is 0 groups are found from the list. Coils
// keep their order. The error says which coil has what out of range.
func FromCoils(spec Spec, coils []Coil) (*Layout, error) {
	if err := spec.checkRange(); err != nil {
		return nil, err
	}
	if spec.Span < 0 || spec.Span >= spec.Slots {
		return nil, problemf("span: read %d slots, expected 0 (not said) to %d", spec.Span, spec.Slots-1)
	}
	if len(coils) == 0 || len(coils) > 2*MaxSlots {
		return nil, problemf("coil list: read %d coils, expected 1 to %d", len(coils), 2*MaxSlots)
	}
	spec.Sets = max(spec.Sets, 1)
	l := &Layout{spec: spec, coils: slices.Clone(coils), circuits: 1, found: true}
	seen := make(map[int]bool, len(coils))
	grouped := false
	for i := range l.coils {
		c := &l.coils[i]
		if c.Circuit == 0 {
			c.Circuit = 1
		}
		if err := spec.checkCoil(*c); err != nil {
			return nil, err
		}
		if seen[c.Number] {
			return nil, problemf("coil %d is in the list twice; number each coil once", c.Number)
		}
		seen[c.Number] = true
		grouped = grouped || c.Group != 0
		l.circuits = max(l.circuits, c.Circuit)
	}
	if !grouped {
		setGroups(l.coils)
	}
	if spec.Span == 0 {
		l.spec.Span = wrap(l.coils[0].Finish-l.coils[0].Start, spec.Slots)
	}
	return l, nil
}

// checkCoil tests the numbers of one coil by themselves.
func (s Spec) checkCoil(c Coil) error {
	sets := max(s.Sets, 1)
	switch {
	case c.Number < 1:
		return problemf("coil number: read %d, expected 1 or more", c.Number)
	case c.Start < 1 || c.Start > s.Slots:
		return problemf("coil %d, start slot: read %d, expected 1 to %d", c.Number, c.Start, s.Slots)
	case c.Finish < 1 || c.Finish > s.Slots:
		return problemf("coil %d, finish slot: read %d, expected 1 to %d", c.Number, c.Finish, s.Slots)
	case c.Start == c.Finish:
		return problemf("coil %d: read start and finish both in slot %d, expected two slots", c.Number, c.Start)
	case c.Turns < 0 || c.Turns > MaxTurns:
		return problemf("coil %d, turns: read %d, expected 0 (left out) to %d", c.Number, c.Turns, MaxTurns)
	case c.Sense != 1 && c.Sense != -1:
		return problemf("coil %d, sense: read %d, expected 1 or -1", c.Number, c.Sense)
	case c.Phase < 0 || c.Phase >= s.Phases:
		return problemf("coil %d, phase: read %d, expected 0 to %d", c.Number, c.Phase, s.Phases-1)
	case c.Set < 0 || c.Set >= sets:
		return problemf("coil %d, set: read %d, expected 0 to %d", c.Number, c.Set, sets-1)
	case c.Group < 0:
		return problemf("coil %d, group: read %d, expected 0 (not said) or more", c.Number, c.Group)
	case c.Circuit < 1 || c.Circuit > s.Slots:
		return problemf("coil %d, circuit: read %d, expected 1 to %d", c.Number, c.Circuit, s.Slots)
	}
	return nil
}
