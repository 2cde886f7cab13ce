package layout

// sameGroup reports whether two neighbours belong to one group.
func sameGroup(a, b Coil) bool {
	return a.Set == b.Set && a.Phase == b.Phase && a.Sense == b.Sense
}

// firstOfGroup is the index of the first coil, from the front, that does not continue the group of the
// coil before it (the last coil is before the first).
func firstOfGroup(coils []Coil) int {
	for i := range coils {
		if !sameGroup(coils[wrap(i-1, len(coils))], coils[i]) {
			return i
		}
	}
	return 0
}

// setGroups numbers the runs of neighbours of one phase and sense, going up.
func setGroups(coils []Coil) {
	first := firstOfGroup(coils)
	group := 0
	for n := range coils {
		i := (first + n) % len(coils)
		if n == 0 || !sameGroup(coils[wrap(i-1, len(coils))], coils[i]) {
			group++
		}
		coils[i].Group = group
	}
}

// groupOrder is the indexes of the coils in rising order, beginning with the first coil of a group so
// that a group that passes the last slot is not split.
func groupOrder(coils []Coil) []int {
	order := make([]int, len(coils))
	first := 0
	for i := range coils {
		if coils[wrap(i-1, len(coils))].Group != coils[i].Group {
			first = i
			break
		}
	}
	for n := range order {
		order[n] = (first + n) % len(coils)
	}
	return order
}

// nest turns each group of equal coils into nested ones on the same slot sides:
// the first start with the last finish, and so on inwards.
//
//	lap    1-7  2-8  3-9        nested  1-9  2-8  3-7
func nest(spec Spec, coils []Coil) error {
	size := len(coils)
	first := firstOfGroup(coils)
	for begin := 0; begin < size; {
		end := begin + 1
		for end < size && coils[(first+end)%size].Group == coils[(first+begin)%size].Group {
			end++
		}
		if inner := spec.Span - wrap(coils[(first+end-1)%size].Start-coils[(first+begin)%size].Start, spec.Slots); inner < 1 {
			return spec.errorf("concentric with span %d: the group of %d coils is as wide as its span, so the innermost coil would have no tooth inside it; use lap or a longer span",
				spec.Span, end-begin)
		}
		for i, j := begin, end-1; i < j; i, j = i+1, j-1 {
			a, b := &coils[(first+i)%size], &coils[(first+j)%size]
			a.Finish, b.Finish = b.Finish, a.Finish
		}
		begin = end
	}
	return nil
}
