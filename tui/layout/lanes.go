package layout

import (
	"slices"

	"slotwright/winding/layout"
)

// arc is one coil as it crosses the visible part of the stator: from one place to another, counted in
// slots from the first visible one. Ends out of sight are below 0 or past the last place.
type arc struct {
	coil     layout.Coil
	from, to int
	lane     int
}

// reach is the slot at the left of a coil drawn the short way round, and the number of slots to its
// other side.
func reach(c layout.Coil, slots int) (left, length int) {
	ahead := (c.Finish - c.Start + slots) % slots
	if 2*ahead <= slots {
		return c.Start, ahead
	}
	return c.Finish, slots - ahead
}

// arcs are the coils that cross n slots from the one with index first, each in a lane where none before
// it is in the way, and the number of lanes. A coil past the last slot of a stator shown whole is
// visible at both ends.
func arcs(coils []layout.Coil, slots, first, n int) (list []arc, lanes int) {
	for _, c := range coils {
		left, length := reach(c, slots)
		at := (left - 1 - first + 2*slots) % slots
		for _, from := range [2]int{at - slots, at} {
			if from < n && from+length >= 0 {
				list = append(list, arc{coil: c, from: from, to: from + length})
			}
		}
	}
	slices.SortStableFunc(list, func(a, b arc) int {
		if a.from != b.from {
			return a.from - b.from
		}
		return b.to - a.to
	})
	var ends []int // the last place taken in each lane
	for i := range list {
		lane := slices.IndexFunc(ends, func(end int) bool { return end <= list[i].from })
		if lane < 0 {
			lane = len(ends)
			ends = append(ends, 0)
		}
		ends[lane] = list[i].to
		list[i].lane = lane
	}
	return list, len(ends)
}
