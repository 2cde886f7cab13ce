package trials

import (
	"slotwright/tui/curves"
	"slotwright/tui/kit"
	"slotwright/tui/session"
)

// room is what fits a rectangle.
type room int

const (
	small  room = iota // the table, or its deciding rows with a picture under it
	middle             // the table with a picture under it
	wide               // the whole table with pictures beside it
)

// room is that of the view's rectangle.
func (v *View) room() room {
	switch {
	case v.at.W >= 150 && v.at.H >= 30:
		return wide
	case v.at.W >= 90 && v.at.H >= 24:
		return middle
	}
	return small
}

// The pictures there are. Which one comes first depends on the room.
type picture int

const (
	onlyTable picture = iota
	ampsPicture
	slotsPicture
	bothPictures
)

var picturesOf = map[room][]picture{
	small: {onlyTable, ampsPicture, slotsPicture}, middle: {ampsPicture, slotsPicture, onlyTable}, wide: {bothPictures, ampsPicture, slotsPicture, onlyTable},
}

// pictureNow is the one that is shown.
func (v *View) pictureNow() picture {
	list := picturesOf[v.room()]
	return list[v.picture%len(list)]
}

// Draw fills the rectangle: the slot's line at the top, the table, the pictures if they fit, each
// trial's verdict, the meaning of the marked row at the foot.
func (v *View) Draw(s *session.Session) []kit.Block {
	top, rest := v.at.SplitTop(1)
	blocks := []kit.Block{kit.Bare(s.Theme, top, []string{v.slotLine(s, top.W)})}
	switch {
	case len(s.Outcome().Trials) == 0:
		body, foot := rest.SplitBottom(4)
		blocks = append(blocks, kit.Bare(s.Theme, body, s.Theme.Wrap("No trial yet. Press n for the first one, then + for turns and ] or [ for its wire. What fits and what comes out shows as soon as Machine has the iron and the slot: shift+tab goes there.", body.W)),
			kit.Bare(s.Theme, foot, v.meaning(s, foot.W, foot.H)))
	case v.ladder.open:
		blocks = append(blocks, v.ladder.draw(s, rest)...)
	default:
		grid, around := v.lay(s, rest)
		blocks = append(append(blocks, around...), v.grid(s, grid))
	}
	switch {
	case v.why.open:
		blocks = append(blocks, v.drawWhy(s, v.at))
	case v.picking:
		blocks = append(blocks, v.list.Draw(s.Theme, v.at))
	}
	return blocks
}

// lay is the rectangle of the table, and what is drawn around it.
func (v *View) lay(s *session.Session, r kit.Rect) (grid kit.Rect, around []kit.Block) {
	switch v.room() {
	case wide:
		return v.layWide(s, r)
	case middle:
		return v.layMiddle(s, r)
	}
	return v.laySmall(s, r)
}

// laySmall is the table, its foot under it; with a picture the deciding rows of the table.
func (v *View) laySmall(s *session.Session, r kit.Rect) (grid kit.Rect, around []kit.Block) {
	_, body, _ := v.gridLines(s, r.W)
	if v.pictureNow() == onlyTable {
		grid, foot := r.SplitTop(min(len(body)+1, r.H-v.footCells(s, r.W, r.H)))
		return grid, []kit.Block{kit.Bare(s.Theme, foot, v.foot(s, foot.W, foot.H))}
	}
	grid, rest := r.SplitTop(min(len(body)+1, r.H/2))
	words := says(s, rest.W, s.Trial)
	if sign := heldLine(s); sign != "" {
		words = append(words, s.Theme.Paint(kit.Hint, sign+"."))
	}
	rest, foot := rest.SplitBottom(min(len(words), rest.H/2))
	return grid, append(v.pictures(s, rest), kit.Bare(s.Theme, foot, words))
}

// layMiddle is the table with the verdicts beside it or under it, and a picture over the
// whole width at the foot.
func (v *View) layMiddle(s *session.Session, r kit.Rect) (grid kit.Rect, around []kit.Block) {
	_, body, _ := v.gridLines(s, r.W)
	if v.pictureNow() == onlyTable || v.flipped {
		grid, foot := r.SplitTop(min(len(body)+1, r.H-max(6, v.footCells(s, r.W, r.H))))
		return grid, []kit.Block{kit.Bare(s.Theme, foot, v.foot(s, foot.W, foot.H))}
	}
	grid, rest := r.SplitTop(min(len(body)+1, r.H/2))
	tb, _ := v.table(s, v.entries(s), naturalWidth(s)+len(s.Outcome().Trials))
	side := r.W - max(tb.Width(s.Theme), leastTable) - 3
	if side >= leastWords {
		table, right := grid.SplitRight(side)
		beside, below := sharedOut(s, right.W, right.H)
		words := says(s, right.W, beside...)
		foot, under := rest.SplitTop(min(4+len(below), max(2, (rest.H-leastPicture)/2)))
		lines := append(v.meaning(s, foot.W, 2), says(s, foot.W, below...)...)
		// The findings go where more of them fit.
		calls, left := v.callOut(s, right.W, right.H-len(words)-1)
		if under, without := v.callOut(s, foot.W, foot.H-len(lines)); without < left || len(calls) == 0 {
			lines = append(lines, under...)
		} else {
			words = append(append(words, ""), calls...)
		}
		foot, under = rest.SplitTop(min(foot.H, max(2, len(lines))))
		return table, append(v.pictures(s, under), kit.Bare(s.Theme, right, words), kit.Bare(s.Theme, foot, lines))
	}
	lines := v.shortFoot(s, rest.W, max(3, rest.H-leastPicture+1))
	foot, under := rest.SplitTop(len(lines))
	return grid, append(v.pictures(s, under), kit.Bare(s.Theme, foot, lines))
}

// sharedOut are the trials whose verdicts fit whole beside the table, w by h cells, the chosen one and
// the reference in any case first, and those that go under it.
func sharedOut(s *session.Session, w, h int) (beside, below []int) {
	used := 0
	taken := map[int]bool{}
	for _, i := range append([]int{s.Trial, s.Outcome().Reference}, everyone(s)...) {
		if n := len(says(s, w, i)); !taken[i] && used+n <= h {
			used, taken[i] = used+n, true
		}
	}
	for _, i := range everyone(s) {
		if taken[i] {
			beside = append(beside, i)
		} else {
			below = append(below, i)
		}
	}
	return beside, below
}

// leastWords is the width from which sentences are beside the table, leastPicture the height that a
// picture needs.
const (
	leastTable   = 60
	leastWords   = 28
	leastPicture = 9
)

// layWide is the whole table with the pictures beside it.
func (v *View) layWide(s *session.Session, r kit.Rect) (grid kit.Rect, around []kit.Block) {
	if v.pictureNow() == onlyTable {
		grid, foot := r.SplitBottom(8)
		return grid, []kit.Block{kit.Bare(s.Theme, foot, v.foot(s, foot.W, foot.H))}
	}
	w := naturalWidth(s)
	if more := len(s.Outcome().Trials) * spreadWidth(s); w+more+70 <= r.W {
		w += more
	}
	left, right := r.SplitLeft(w)
	_, right = right.SplitLeft(2)
	_, body, _ := v.gridLines(s, w)
	grid, under := left.SplitTop(min(len(body)+1, left.H-8))
	return grid, append(v.pictures(s, right), kit.Bare(s.Theme, under, v.foot(s, under.W, under.H)))
}

// pictures are the ones wanted, in a rectangle.
func (v *View) pictures(s *session.Session, r kit.Rect) []kit.Block {
	switch v.pictureNow() {
	case ampsPicture:
		return v.ampsAndSlots(s, r)
	case slotsPicture:
		return slotPanels(s, r)
	case bothPictures:
		top, bottom := r.SplitTop(r.H * 45 / 100)
		return append(slotPanels(s, bottom), ampsBlock(s, top))
	}
	return nil
}

// leastAmps is the width that amps against speed keep beside the slots.
const leastAmps = 70

// ampsAndSlots are amps against speed and, if there is room beside them, the slots of the chosen trial
// and of what it is compared with: thick and few beside thin and many.
func (v *View) ampsAndSlots(s *session.Session, r kit.Rect) []kit.Block {
	side := 0
	for i, trial := range shownFirst(s) {
		if next := side + slotRoom(s, trial, r.H); i < 2 && r.W-next >= leastAmps {
			side = next
		}
	}
	if v.room() != middle || r.H < 12 || side == 0 {
		return []kit.Block{ampsBlock(s, r)}
	}
	left, right := r.SplitRight(side)
	left.W-- // what stands over the chart ends before the box
	return append(slotPanels(s, right), ampsBlock(s, left))
}

// ampsBlock is net amps against speed of all trials.
func ampsBlock(s *session.Session, r kit.Rect) kit.Block {
	return kit.Bare(s.Theme, r, curves.Amps(s, r.W, r.H))
}
