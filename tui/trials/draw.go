package trials

import (
	"strings"

	"slotwright/tui/curves"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// room is what a rectangle has room for.
type room int

const (
	small  room = iota // the table, or what decides of it with a picture under it
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

// Draw fills the rectangle: the slot's line on top, the table, the pictures where there is
// room, what each trial does in a sentence, what the marked row means at the foot.
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

// laySmall is the table, its foot under it; with a picture what decides of the table.
func (v *View) laySmall(s *session.Session, r kit.Rect) (grid kit.Rect, around []kit.Block) {
	_, body, _ := v.gridLines(s, r.W)
	if v.pictureNow() == onlyTable {
		grid, foot := r.SplitTop(min(len(body)+1, r.H-min(4, r.H/3)))
		return grid, []kit.Block{kit.Bare(s.Theme, foot, v.foot(s, foot.W, foot.H))}
	}
	grid, rest := r.SplitTop(min(len(body)+1, r.H/2))
	words := says(s, rest.W, s.Trial)
	rest, foot := rest.SplitBottom(min(len(words), rest.H/2))
	return grid, append(v.pictures(s, rest), kit.Bare(s.Theme, foot, words))
}

// layMiddle is the table with the verdicts beside it or under it, and a picture over the
// whole width at the foot.
func (v *View) layMiddle(s *session.Session, r kit.Rect) (grid kit.Rect, around []kit.Block) {
	_, body, _ := v.gridLines(s, r.W)
	if v.pictureNow() == onlyTable || v.flipped {
		grid, foot := r.SplitTop(min(len(body)+1, r.H-6))
		return grid, []kit.Block{kit.Bare(s.Theme, foot, v.foot(s, foot.W, foot.H))}
	}
	grid, rest := r.SplitTop(min(len(body)+1, r.H/2))
	side := r.W - naturalWidth(s) - 2
	if side >= leastWords {
		left, right := grid.SplitRight(side)
		beside, below := sharedOut(s, right.W, right.H)
		foot, under := rest.SplitTop(min(4+len(below), max(2, (rest.H-leastPicture)/2)))
		lines := append(v.meaning(s, foot.W, 2), says(s, foot.W, below...)...)
		lines = append(lines, v.calledOut(s, foot.W, foot.H-len(lines))...)
		return left, append(v.pictures(s, under), kit.Bare(s.Theme, right, says(s, right.W, beside...)), kit.Bare(s.Theme, foot, lines))
	}
	foot, under := rest.SplitTop(min(6, max(3, rest.H-leastPicture-2)))
	return grid, append(v.pictures(s, under), kit.Bare(s.Theme, foot, v.foot(s, foot.W, foot.H)))
}

// sharedOut are the trials whose verdicts stand whole beside the table, w by h cells, the
// chosen one and the reference in any case first, and those that go under it.
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

// leastWords is the width from which sentences stand beside the table, leastPicture the
// height that a picture wants.
const (
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

// ampsAndSlots are amps against speed and, where there is room beside them, the slots of the
// chosen trial and of what it is compared with: thick and few beside thin and many.
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
	return append(slotPanels(s, right), ampsBlock(s, left))
}

// ampsBlock is net amps against speed of all trials.
func ampsBlock(s *session.Session, r kit.Rect) kit.Block {
	return kit.Bare(s.Theme, r, curves.Amps(s, r.W, r.H))
}

// slotLine is slot area, room for wire and fill limit, the inputs of the whole job, and
// whether the slot is kept full.
func (v *View) slotLine(s *session.Session, w int) string {
	t, m := s.Theme, s.Outcome().Machine
	input := func(row string, fallback string) string {
		path := row
		if row == rowArea {
			path = areaPath(s)
		}
		text, u, ok := s.Document().Typed(path)
		if !ok {
			text = fallback
		}
		if v.editing && v.row == row {
			text = v.input.Draw(t, 9, true)
		} else {
			text = t.Paint(kit.Value, text)
		}
		if _, bad := s.Document().ProblemAt(path); bad {
			text += " " + t.PaintMark(kit.Broken)
		}
		mark := " "
		if v.row == row && !v.ladder.open {
			mark = t.PaintMark(kit.Focus)
		}
		if u.Name != "" {
			text += " " + t.Paint(kit.Unit, u.Name)
		}
		return mark + " " + t.Paint(kit.Label, inputLabel(s, row)) + " " + text
	}
	gross := s.Text(m.GrossMM2, areaDim(), 3)
	if flat(s) {
		gross = session.Dash
	}
	area, fill := input(rowArea, gross), input(rowFill, quantity.Screen.Number(s.FillLimit(), 2))
	line := area + "  " + t.Paint(kit.Dim, "room ") + t.Text(s.Text(m.NetMM2, areaDim(), 3)) + " " + fill
	if kit.Width(line)+roomForT > w {
		line = area + " " + fill
	}
	words := []string{"keeps it full", "full"}
	if s.Full {
		words = []string{t.Glyphs().Chosen + " kept full", t.Glyphs().Chosen + " full", t.Glyphs().Chosen}
	}
	for _, word := range words {
		role := kit.Dim
		if s.Full {
			role = kit.Chosen
		}
		if whole := line + "   " + t.Paint(kit.Key, "T") + " " + t.Paint(role, word); kit.Width(whole) <= w {
			line = whole
			break
		}
	}
	return t.Fit(line, w)
}

// roomForT is what the key that keeps the slot full takes at least: what it does is one line with
// the inputs that it goes by.
const roomForT = 9

// foot is what the marked row means, the verdicts, and what is called out: its first sentence
// and the chosen trial's verdict come first, then what is called out, then the other verdicts,
// then the rest of the explanation; each whole or not at all.
func (v *View) foot(s *session.Session, w, h int) []string {
	means := v.meaning(s, w, 1)
	verdicts := says(s, w, everyone(s)...)
	if len(means)+len(verdicts) > h || h < 6 {
		verdicts = saysIn(s, w, h-len(means), s.Trial)
	}
	calls := v.calledOut(s, w, h-len(means)-len(verdicts))
	if spare := h - len(means) - len(verdicts) - len(calls); spare > 0 {
		means = v.meaning(s, w, len(means)+spare)
	}
	return append(append(means, verdicts...), calls...)
}

// everyone is all trials, the chosen one first where it is one of many.
func everyone(s *session.Session) []int {
	list := make([]int, len(s.Outcome().Trials))
	for i := range list {
		list[i] = i
	}
	return list
}

// meaning is what the marked row means for the chosen trial: its first sentence whole, the
// others as far as h lines hold them whole.
func (v *View) meaning(s *session.Session, w, h int) []string {
	t := s.Theme
	path := v.inputPath(s)
	if p, bad := s.Document().ProblemAt(path); bad && path != "" {
		return t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+s.ProblemText(p), w)
	}
	if v.editing && v.row == rowWire && isBare(v.input.Text) {
		return t.WrapPaint(kit.Hint, v.bareSaid(s), w)
	}
	if f, ok := job.InputAt(path); ok {
		if v.offers {
			return whole(t, []string{session.OfferText(v.offer), f.Help, f.How}, w, h)
		}
		return whole(t, []string{f.Help, v.nextStep(s), f.How}, w, h)
	}
	for _, e := range v.entries(s) {
		if e.id == v.row && e.text != "" {
			list := []string{"Rows in which all trials are alike; enter or m shows them one by one.", "They are: " + strings.TrimPrefix(e.text, "alike: ") + "."}
			if e.id == rowFold {
				list = append(list[:1], "A circuit is coils in series; several beside each other share the amps.", "Strands in hand are wires wound together as one.")
			}
			return whole(t, list, w, h)
		}
	}
	if r := v.marked(s); r != nil {
		return whole(t, meaning(s, *r), w, h)
	}
	return nil
}

// nextStep is what to do where much room for wire is left, "" where there is not.
func (v *View) nextStep(s *session.Session) string {
	if (v.row == rowTurns || v.row == rowWire) && s.Outcome().Trials[s.Trial].MostlyEmpty() {
		return "Most of its room is empty: e shows every gauge with it full, ] takes thicker wire."
	}
	return ""
}

func clipped(lines []string, h int) []string { return lines[:max(0, min(h, len(lines)))] }

// calledOut is what the file and the job call out of the chosen trial in at most h lines, a
// sentence whole or not at all, with a word of those that were left out; then a caution.
func (v *View) calledOut(s *session.Session, w, h int) []string {
	t := s.Theme
	var lines []string
	left := 0
	for _, c := range called(s) {
		more := t.WrapPaint(c.role, t.Mark(c.role)+" "+c.text, w)
		if len(lines)+len(more) > h {
			left++
			continue
		}
		lines = append(lines, more...)
	}
	if left > 0 && len(lines) < h {
		text := "y shows one more that is called out"
		if left > 1 {
			text = "y shows " + quantity.Screen.Number(float64(left), 0) + " more that are called out"
		}
		return append(lines, t.Paint(kit.Hint, text))
	}
	return append(lines, caution(s, w, h-len(lines))...)
}

// call is something called out.
type call struct {
	role kit.Role
	text string
}

// called is what the file cannot be read for, then the findings, the worst first.
func called(s *session.Session) []call {
	var list, doubts []call
	for _, text := range s.Problems() {
		list = append(list, call{kit.Broken, text})
	}
	for _, f := range findingsOf(s) {
		text := f.Trial + ": " + s.Units.Words(f.Text)
		if f.Fix != "" {
			text += " → " + s.Units.Words(f.Fix)
		}
		if f.Severity == winding.Broken {
			list = append(list, call{kit.Broken, text})
		} else {
			doubts = append(doubts, call{kit.Warning, text})
		}
	}
	return append(list, doubts...)
}

// caution is the first that is about the chosen trial or about all, and that fits whole.
func caution(s *session.Session, w, h int) []string {
	for _, c := range s.Outcome().Cautions {
		if len(s.Outcome().Trials) == 0 || c.Trial != "" && c.Trial != s.Outcome().Trials[s.Trial].Name {
			continue
		}
		if lines := s.Theme.WrapPaint(kit.Dim, "Caution: "+s.Units.WordsOfRule(c.Text), w); len(lines) <= h {
			return lines
		}
	}
	return nil
}

// whole is as many of the sentences as fit h lines whole, the first in any case.
func whole(t kit.Theme, sentences []string, w, h int) []string {
	text := sentences[0]
	for _, next := range sentences[1:] {
		if more := text + " " + next; next != "" && len(t.Wrap(more, w)) <= h {
			text = more
		}
	}
	return t.WrapPaint(kit.Hint, text, w)
}

// meaning is a row explained for the chosen trial, a sentence each: what it is, why it is
// missing, what to change when it is past its limit, how sure it is.
func meaning(s *session.Session, r winding.Row) []string {
	c := r.Cells[s.Trial]
	text := []string{r.Help}
	if !c.Figure.Known() {
		text = []string{"Missing: " + c.Figure.Why + ".", r.Help}
		j := s.Job()
		if _, ok := winding.FieldFor(&j, c.Figure.Why, s.Trial); ok {
			text = []string{"Missing: " + c.Figure.Why + "; enter goes there.", r.Help}
		}
	}
	if c.Verdict == winding.Past && r.Mend != "" {
		text = append(text, "Past its limit: "+r.Mend+".")
	}
	if c.Figure.PlusMinus > 0 || c.Figure.Known() && c.Figure.Origin.Weak() {
		text = append(text, sure(s, r.Cells[s.Trial].Figure, r))
	}
	if c.Figure.Known() && c.Figure.Why != "" {
		text = append(text, "From: "+c.Figure.Why+".")
	}
	return text
}

// sure says how far a figure may be off, and whether guesses weigh in it.
func sure(s *session.Session, f quantity.Figure, r winding.Row) string {
	off := ""
	if f.PlusMinus > 0 {
		u := s.Units.For(r.Dim)
		off = "May be off by " + f.Spread(u)
		if u.Name != "" {
			off += " " + u.Name
		}
	}
	weak := f.Origin.Weak()
	switch {
	case off != "" && weak:
		return off + "; a guess or a default weighs in it."
	case off != "":
		return off + ", by the tolerances given."
	case weak:
		return "A guess or a default weighs in it."
	}
	return ""
}

// findingsOf are the findings of the chosen trial first, then those of the job.
func findingsOf(s *session.Session) []winding.Finding {
	if len(s.Outcome().Trials) == 0 {
		return nil
	}
	name := s.Outcome().Trials[s.Trial].Name
	var own, rest []winding.Finding
	for _, f := range s.Outcome().Findings {
		switch {
		case f.Severity < winding.Doubt:
		case f.Trial == name:
			own = append(own, f)
		case f.Trial == "":
			f.Trial = "job"
			rest = append(rest, f)
		}
	}
	return append(own, rest...)
}
