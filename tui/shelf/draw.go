package shelf

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/quantity"
	"slotwright/winding/shelf"
)

// wide is the width from which the marked job and what the bench learns are beside the list; from
// twoUnder columns and tall lines on both are under it.
const (
	wide     = 130
	twoUnder = 96
	tall     = 27
)

// together reports whether there is room for one of the two boxes only.
func (v *View) together() bool {
	_, about, bench := v.areas()
	return about == bench
}

// areas are the rectangles of the list, and of the boxes of the marked job and of what the bench
// learns; where there is room for one box only, both are in the same place.
func (v *View) areas() (list, about, bench kit.Rect) {
	r := v.at
	switch {
	case r.W < twoUnder || r.W < wide && r.H < tall:
		list, about = r.SplitBottom(v.boxHeight(max(5, min(7, r.H/3))))
		return list, about, about
	case r.W < wide:
		list, under := r.SplitBottom(v.boxHeight(r.H * 2 / 5))
		about, bench = under.SplitLeft(under.W / 2)
		_, bench = bench.SplitLeft(1)
		return list, about, bench
	}
	list, side := r.SplitRight(min(60, r.W/3))
	list.W--
	about, bench = side.SplitTop(side.H / 2)
	return list, about, bench
}

// mostBox is the height beyond which a box under the list has nothing more to say.
const mostBox = 14

// boxHeight is that of the boxes under the list: their minimum, or what all the jobs of the folder
// leave over, so that it stays the same during a search.
func (v *View) boxHeight(least int) int {
	const heads = 2
	if len(v.shown.all) == 0 {
		return least // why there is none is said above
	}
	lines := len(v.shown.all) + len(v.shown.left)
	for _, e := range v.shown.all {
		if e.Problem != "" {
			lines += len(kit.Theme{}.Wrap(whole(e), v.at.W-2-4)) - 1
		}
	}
	return max(least, min(mostBox, v.at.H-heads-lines))
}

// listAreas are the rectangles of the list's head and of its rows.
func (v *View) listAreas() (head, body kit.Rect) {
	list, _, _ := v.areas()
	_, rest := list.SplitTop(1)
	head, body = rest.SplitTop(1)
	return head, body
}

// rows is how many jobs the list shows.
func (v *View) rows() int {
	_, body := v.listAreas()
	return body.H
}

// top is the first visible line of a list h rows high, with what was left out under the jobs: as in
// [kit.Window].
func (v *View) top(h int) int {
	return max(0, min(v.focus()-h/2, len(v.shown.list)+len(v.leftOut())-h))
}

// leftOut is what is in the folder and not listed, a line for each reason, so that a folder of many
// other things remains a shelf of jobs; a search is for jobs only.
func (v *View) leftOut() []string {
	if v.typed != "" {
		return nil
	}
	var why, lines []string
	names := map[string][]string{}
	for _, l := range v.shown.left {
		if len(names[l.Why]) == 0 {
			why = append(why, l.Why)
		}
		names[l.Why] = append(names[l.Why], kit.Clean(l.Name))
	}
	for _, w := range why {
		switch all := names[w]; {
		case len(all) == 1:
			lines = append(lines, "left out: "+all[0]+": "+w)
		default:
			lines = append(lines, fmt.Sprintf("left out, %d: %s: %s", len(all), w, strings.Join(all, ", ")))
		}
	}
	return lines
}

// Draw fills the rectangle.
func (v *View) Draw(s *session.Session) []kit.Block {
	t := s.Theme
	list, about, bench := v.areas()
	title, _ := list.SplitTop(1)
	head, body := v.listAreas()
	headLine, rows := v.lines(t, body.W-2)
	if len(rows) == 0 {
		headLine = ""
	}
	blocks := []kit.Block{
		kit.Bare(t, title, []string{v.title(t, title.W)}),
		kit.Bare(t, head, []string{headLine}),
	}
	if len(rows) == 0 {
		blocks = append(blocks, kit.Bare(t, body, v.nothing(t, body.W)))
	} else {
		left := v.leftOut()
		rows, _ = v.unfolded(t, rows, body.W-2, body.H, len(left))
		for _, l := range left {
			rows = append(rows, t.Fit(t.Paint(kit.Hint, "  "+l), body.W-2))
		}
		blocks = append(blocks, kit.Bare(t, body, kit.Window(t, rows, v.focus(), body.W, body.H)))
	}
	if about == bench && v.bench {
		return append(blocks, v.benchBox(s, bench))
	}
	blocks = append(blocks, v.jobBox(s, about))
	if about != bench {
		blocks = append(blocks, v.benchBox(s, bench))
	}
	return blocks
}

// title says which folder it is, how many jobs, how they are sorted and what is searched for.
func (v *View) title(t kit.Theme, w int) string {
	folder := v.shown.folder
	if folder == "." {
		folder = "this folder"
	}
	text := t.Paint(kit.Title, kit.Clean(folder)) + t.Paint(kit.Hint, ": "+v.count())
	search := t.Paint(kit.Dim, "type to search")
	if v.typed != "" {
		search = t.Paint(kit.Hint, "search: ") + t.Paint(kit.Key, kit.Clean(v.typed)) + t.Glyphs().Cursor
	}
	room := max(w-kit.Width(search)-2, w/2)
	if kit.Width(text) > room { // what is left out stands under the list too
		text = t.Paint(kit.Title, kit.Clean(folder)) + t.Paint(kit.Hint, fmt.Sprintf(": %d of %d jobs", len(v.shown.list), len(v.shown.all)))
	}
	return kit.Bar(t, w, t.Cut(text, room), search)
}

// count is how many jobs there are, and what they are sorted by.
func (v *View) count() string {
	if v.shown.reading && len(v.shown.all) == 0 {
		return "reading the jobs in it"
	}
	text := fmt.Sprintf("%d of %d jobs, by %s", len(v.shown.list), len(v.shown.all), v.by)
	if n := len(v.shown.left); n > 0 {
		text += fmt.Sprintf("; %d left out", n)
	}
	if v.shown.reading {
		text += "; being read again"
	}
	return text
}

// nothing says why no job is listed.
func (v *View) nothing(t kit.Theme, w int) []string {
	switch {
	case v.shown.wrong != "":
		return t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+v.shown.wrong, w)
	case v.shown.reading:
		return t.WrapPaint(kit.Hint, "Reading the jobs in it; the keys go on meanwhile.", w)
	case len(v.shown.all) == 0:
		text := "No job lies here: a job is a file that ends in .toml. ctrl+s saves the open one, f7 lists another folder."
		return t.WrapPaint(kit.Hint, strings.Join(append([]string{text}, v.leftOut()...), "\n"), w)
	}
	return t.WrapPaint(kit.Hint, fmt.Sprintf("None of %d jobs has “%s” in its name, notes, wire, date or state. esc shows all.", len(v.shown.all), kit.Clean(v.typed)), w)
}

// jobBox is the marked job.
func (v *View) jobBox(s *session.Session, r kit.Rect) kit.Block {
	e, ok := v.entry()
	if !ok {
		return kit.Box(s.Theme, r, "No job", nil)
	}
	in := kit.Inner(r)
	return kit.Box(s.Theme, r, e.File, about(s, &e, in.W, in.H))
}

// about is a job in at most h lines, each of its sentences whole or left out, except the first.
func about(s *session.Session, e *shelf.Entry, w, h int) []string {
	t := s.Theme
	if e.Problem != "" {
		return append(t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+kit.Clean(e.Problem), w),
			t.WrapPaint(kit.Hint, "enter opens it all the same: what can be read is there, the rest is named at its field.", w)...)
	}
	lines := t.Wrap(machine(e)+": "+what(e), w)
	more := func(air int, role kit.Role, text string) {
		if next := t.WrapPaint(role, text, w); len(lines)+air+len(next) <= h {
			lines = append(append(lines, make([]string, air)...), next...)
		}
	}
	more(0, kit.Plain, begins(s, e))
	for _, o := range e.Others {
		if o.Turns.Known() { // else nothing is said of it yet
			more(0, kit.Hint, other(s, &o))
		}
	}
	more(0, kit.Hint, "f6 begins the next of its kind: machine, drive, battery and trials stay, what was read on this piece is emptied.")
	more(1, kit.Dim, words)
	return lines
}

// words explain the abbreviated heads of the list, and how far a job may have come.
const words = "s/p: slots and poles. begins: rpm at which it begins to charge, ~ worked out with guesses, ◆ read. Planned; wound: put in and recorded; proved: its readings lie in their limits."

// what is a job's winding in words.
func what(e *shelf.Entry) string {
	var parts []string
	if e.Slots > 0 && e.Poles > 0 {
		parts = append(parts, fmt.Sprintf("%d slots, %d poles", e.Slots, e.Poles))
	}
	if e.Span > 0 {
		parts = append(parts, "throw "+throw(e))
	}
	if e.Turns.Known() {
		parts = append(parts, number(e.Turns, quantity.None, 0)+" turns of "+e.Wire)
	}
	text := e.State
	if e.State != shelf.Planned && e.Date != "" {
		text += " " + e.Date
	}
	return strings.Join(append(parts, text), ", ") + "."
}

// other is what was wound before, or another trial.
func other(s *session.Session, w *shelf.Winding) string {
	text := "Trial " + w.Trial + ": " + number(w.Turns, quantity.None, 0) + " turns of " + w.Wire
	if w.State != shelf.Planned {
		return text + ", " + w.State + " before, " + w.Date + "."
	}
	if w.CutInRPM.Known() {
		text += ", begins at " + s.Text(w.CutInRPM, quantity.RPM, 3)
	}
	return text + "."
}

// begins is where it begins to charge, and whether that was read.
func begins(s *session.Session, e *shelf.Entry) string {
	switch {
	case !e.CutInRPM.Known():
		return "Where it begins to charge is not known: " + e.CutInRPM.Why + "."
	case e.CutInRPM.Origin == quantity.Measured:
		return "Begins to charge at " + s.Text(e.CutInRPM, quantity.RPM, 3) + ", as it was read."
	}
	return "Begins to charge at " + s.Text(e.CutInRPM, quantity.RPM, 3) + ", as worked out."
}

// benchBox is what the records in the folder say of this bench.
func (v *View) benchBox(s *session.Session, r kit.Rect) kit.Block {
	w := kit.Inner(r).W
	var lines []string
	for _, l := range learned(s.Units, &v.shown.bench) {
		lines = append(lines, s.Theme.Wrap(l, w)...)
	}
	note := "In no job until you take it there: at the empty field on Machine it is offered."
	if lines == nil {
		note = "Nothing yet. What was wound is recorded on the Wound screen; then this says how full this hand gets a slot, and how far its mean turns are off."
	}
	return kit.Box(s.Theme, r, "What this bench learns", append(lines, s.Theme.WrapPaint(kit.Hint, note, w)...))
}

// learned is a line for each thing that the records say.
func learned(liked quantity.Choice, b *shelf.Bench) (lines []string) {
	long, rise := liked.For(quantity.Millimetres), liked.For(quantity.KelvinPerW)
	size := func(mm float64) string { return quantity.Screen.Value(long.From(mm), long, 3) }
	for _, l := range b.Fills {
		lines = append(lines, fmt.Sprintf("Slots full, wire of %s to %s %s bare: fill %s (%s).", size(l.FromMM), size(l.ToMM), long.Name, quantity.Screen.Figure(l.Fill, quantity.None[0], 2), l.Fill.Why))
	}
	if f := b.MeanTurnOff; f.Known() {
		lines = append(lines, fmt.Sprintf("Mean turn by the wire used, over the one reckoned with: %s %s %% (%s).", quantity.Screen.Signed(f.Value, 2), f.Spread(quantity.None[0], 2), f.Why))
	}
	for _, r := range b.Rises {
		lines = append(lines, fmt.Sprintf("%s: %s %s (%s).", r.Machine, quantity.Screen.Figure(r.RisePerWatt, rise, 2), rise.Name, r.RisePerWatt.Why))
	}
	return lines
}
