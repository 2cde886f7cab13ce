package machine

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/job"
	"slotwright/winding/wants"
)

// wide is where the results stand beside the form.
const wide = 100

// areas are the rectangles of the form, of the marked field's explanation, and of the results. On a
// small screen the results are two lines at the foot.
func (v *View) areas() (form, help, follows kit.Rect) {
	r := v.at
	if r.W < wide {
		form, follows = r.SplitBottom(2)
		form, help = v.withHelp(form)
		return form, help, follows
	}
	form, side := r.SplitRight(sideWidth(r.W))
	form.W--
	help, follows = side.SplitTop(max(min(11, r.H/2), min(v.needed(side.W), r.H-leastFollows)))
	return form, help, follows
}

// needed is the height of a box w cells wide that explains the marked field in full.
func (v *View) needed(w int) int {
	return len(v.form.Explain(kit.Theme{}, kit.Inner(kit.Rect{W: w, H: 3}).W)) + 2
}

// leastFollows is the height of the results that an explanation beside the form leaves.
const leastFollows = 8

// leastRows are the rows of a form that an explanation never covers: the marked one and its neighbours.
const leastRows = 4

// withHelp splits the explanation's box from under a form: as high as most explanations are, higher for
// one that would be cut, down to the form's minimum rows.
func (v *View) withHelp(r kit.Rect) (form, help kit.Rect) {
	least := 6
	if r.H < 19 {
		least = 5
	}
	return r.SplitBottom(max(least, min(v.needed(r.W), r.H-leastRows)))
}

// DrawForm is the form with the marked field explained under it, and the open list over
// both.
func (v *View) DrawForm(s *session.Session) []kit.Block {
	form, help := v.withHelp(v.at)
	return v.overlay(s, []kit.Block{v.fields(s, form), v.explain(s, help)})
}

// overlay puts the open list over what is drawn.
func (v *View) overlay(s *session.Session, blocks []kit.Block) []kit.Block {
	if v.form.Picking() {
		return append(blocks, v.form.List.Draw(s.Theme, v.at))
	}
	return blocks
}

// Draw fills the rectangle: the form, and beside or under it help and results.
func (v *View) Draw(s *session.Session) []kit.Block {
	form, help, follows := v.areas()
	blocks := []kit.Block{v.fields(s, form), v.explain(s, help)}
	if v.at.W < wide {
		return v.overlay(s, append(blocks, kit.Bare(s.Theme, follows, v.strip(s, follows.W))))
	}
	in := kit.Inner(follows)
	lines := v.problems(s, in.W)
	if text := s.Reversed(); text != "" {
		lines = append(lines, s.Theme.Hang(s.Theme.Mark(kit.Broken)+" ", kit.Broken, strings.ToUpper(text[:1])+text[1:], in.W)...)
		lines = append(lines, "")
	} else if v.first && len(waiting(s)) == 0 {
		lines = append(append(lines, s.Theme.WrapPaint(kit.Hint, allSaid(s), in.W)...), "")
	}
	if v.first {
		lines = append(lines, knownLines(s, in.W)...)
	}
	lines = append(lines, v.missing(s, in.W)...)
	lines = append(lines, v.result(s, in.W)...)
	follows, picture := v.withSection(s, follows, len(lines))
	if !picture.Empty() {
		blocks = append(blocks, section(s, picture))
	}
	return v.overlay(s, append(blocks, kit.Box(s.Theme, follows, "What follows", lines)))
}

// fields is the form.
func (v *View) fields(s *session.Session, r kit.Rect) kit.Block {
	return kit.Bare(s.Theme, r, v.form.Lines(s.Theme, r.W, r.H))
}

// explain is the marked field in a box with its name, and under it, if there is room, what the marks of
// fields mean.
func (v *View) explain(s *session.Session, r kit.Rect) kit.Block {
	in := kit.Inner(r)
	lines := v.form.Explain(s.Theme, in.W)
	if marks := s.Theme.WrapPaint(kit.Hint, marksOf(s), in.W); v.begins && v.at.W >= wide && len(lines)+len(marks) < in.H {
		for len(lines)+len(marks) < in.H {
			lines = append(lines, "")
		}
		lines = append(lines, marks...)
	}
	title := v.form.Focused().Label
	if f, ok := job.InputAt(v.form.Focused().ID); ok && title == f.Label {
		title = f.WholeLabel()
	}
	panel := kit.Panel{Title: title, Foot: kit.FurtherLines(len(lines) - in.H)}
	return panel.Draw(s.Theme, r, lines)
}

// marksOf is what the marks of fields mean, in a line.
func marksOf(s *session.Session) string {
	t := s.Theme
	return t.PaintMark(kit.Needed) + " waited for  " + t.PaintMark(kit.Measured) + " measured  " + t.PaintMark(kit.Guessed) + " guessed"
}

// strip is the results in two lines: what is known of the chosen trial, and what comes next.
func (v *View) strip(s *session.Session, w int) []string {
	t := s.Theme
	var lines []string
	if n := v.elsewhere(s); n > 0 {
		text := t.Mark(kit.Broken) + " " + unusable(n, "elsewhere")
		lines = append(lines, t.Fit(t.Paint(kit.Broken, text), w))
	}
	if text := s.ReversedShort(); text != "" {
		lines = append(lines, t.Fit(t.Paint(kit.Broken, t.Cut(t.Mark(kit.Broken)+" "+text, w)), w))
	} else if list := waiting(s); len(list) > 0 {
		text := t.Mark(kit.Needed) + " next: " + Label(list[0].Path)
		if whole := text + ", for " + list[0].Unlocks; kit.Width(t.Text(whole)) <= w {
			text = whole
		}
		lines = append(lines, t.Fit(t.Paint(kit.Needed, text), w))
	} else if v.first {
		lines = append(lines, t.Fit(t.Paint(kit.Hint, allSaid(s)), w))
	}
	line := known(s, w)
	if line == "" && v.begins {
		line = t.Style(kit.Hint).Render(t.Cut(marksOf(s), w))
	}
	return append(lines, t.Fit(line, w))
}

// allSaid is where to continue when none of the first things is waited for.
func allSaid(s *session.Session) string {
	if len(s.Outcome().Trials) == 1 {
		return "next: tab, Trials; n there begins another. Drive has aims, cable and diodes"
	}
	return "next: tab, Trials. Drive has what is wanted, cable and diodes"
}

// missing lists what the figures wait for, a figure with its fields under it, in the order of the
// bench. The ways to volts are presented as alternatives: one of them is enough.
func (v *View) missing(s *session.Session, w int) []string {
	t := s.Theme
	var order []string
	by, ways := map[string][]string{}, map[string]bool{}
	for _, f := range waiting(s) {
		if by[f.Unlocks] == nil {
			order = append(order, f.Unlocks)
		}
		by[f.Unlocks] = append(by[f.Unlocks], Label(f.Path))
		if f.Way != "" {
			ways[f.Unlocks] = true
		}
	}
	var out []string
	for _, what := range order {
		out = append(out, t.Hang(t.PaintMark(kit.Needed)+" ", kit.Title, what, w)...)
		if open := openWays(s); ways[what] && len(open) > 1 {
			out = append(out, hung(t, kit.Label, "one of these is enough:", w)...)
			for _, way := range open {
				out = append(out, t.Hang("  "+t.Glyphs().Bullet+" ", kit.Label, way.Name+" ("+way.Note+")", w)...)
			}
			continue
		}
		out = append(out, hung(t, kit.Label, strings.Join(by[what], ", "), w)...)
	}
	if len(out) > 0 {
		out = append([]string{t.Style(kit.Title).Render(t.Cut("Waits for", w))}, append(out, "")...)
	}
	return out
}

// openWays are the ways to volts that are waited for.
func openWays(s *session.Session) []wants.Way {
	j := s.Job()
	var all, begun []wants.Way
	for _, w := range wants.WaysToVolts(&j) {
		if all = append(all, w); w.Begun {
			begun = append(begun, w)
		}
	}
	if len(begun) > 0 {
		return begun
	}
	return all
}

// hung is text that hangs under a line with a mark, wrapped.
func hung(t kit.Theme, role kit.Role, text string, w int) []string {
	lines := t.WrapPaint(role, text, w-2)
	for i := range lines {
		lines[i] = "  " + lines[i]
	}
	return lines
}

// knownLines are the first figures of the chosen trial that are known, one a line.
func knownLines(s *session.Session, w int) []string {
	o := s.Outcome()
	if len(o.Trials) == 0 {
		return nil
	}
	list := []line{{heading: "Known of trial " + o.Trials[s.Trial].Name}}
	for _, r := range o.Comparison {
		if r.Key && r.Cells[s.Trial].Figure.Known() {
			list = append(list, lineOf(&r, s.Trial))
		}
	}
	if len(list) == 1 {
		return nil
	}
	drawn := table(s, list, false).Lines(s.Theme, w)
	if !whole(s.Theme, drawn, list) {
		for i := range list { // the unit behind says of what
			list[i].label = strings.Replace(list[i].label, "net amps, ", "net, ", 1)
		}
		drawn = table(s, list, false).Lines(s.Theme, w)
	}
	return append(drawn, "")
}

// known is the first known figures of the chosen trial, as many as fit w cells whole.
func known(s *session.Session, w int) string {
	o := s.Outcome()
	if len(o.Trials) == 0 {
		return ""
	}
	line := ""
	for _, r := range o.Comparison {
		c := r.Cells[s.Trial]
		if !r.Key || !c.Figure.Known() {
			continue
		}
		next := line + ", "
		if line == "" {
			next = o.Trials[s.Trial].Name + ": "
		}
		next += r.Label + " " + inLine(s, lineOf(&r, s.Trial))
		if kit.Width(s.Theme.Text(next)) > w {
			break
		}
		line = next
	}
	return line
}

// inLine is a figure with its unit, marked as on Trials.
func inLine(s *session.Session, l line) string {
	text := s.Text(l.figure, l.dim, l.digits)
	if s.Figure(l.figure, l.dim, l.digits).Mark == kit.Guessed {
		text = session.Rough + text
	}
	if l.burns {
		text = burns
	}
	if l.past || l.burns {
		text += " " + s.Theme.Mark(kit.Broken)
	}
	return text
}

// elsewhere is how many things in the file cannot be used, except those at the marked field.
func (v *View) elsewhere(s *session.Session) int {
	n := len(s.Document().Problems()) + s.Document().More()
	if v.form.Focused().Error != "" {
		n--
	}
	return n
}

// unusable counts values that cannot be used, and names the key that lists them, even while letters are
// text.
func unusable(n int, where string) string {
	if n == 1 {
		return "one value " + where + " cannot be used: f3 says which"
	}
	return fmt.Sprintf("%d values %s cannot be used: f3 says which", n, where)
}

// problems is what in the file cannot be used: in full where it is no field of this screen, and counted
// where it is shown at its field.
func (v *View) problems(s *session.Session, w int) []string {
	t, out := s.Theme, []string{}
	here := v.elsewhere(s) - s.Document().More()
	for _, p := range s.Document().Problems() {
		if !slices.ContainsFunc(v.form.Rows, func(r form.Row) bool { return r.ID == p.Path }) {
			here--
			out = append(out, t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+s.ProblemText(p), w)...)
		}
	}
	if here > 0 {
		out = append(out, t.WrapPaint(kit.Broken, t.Mark(kit.Broken)+" "+unusable(here, "on this screen"), w)...)
	}
	if len(out) > 0 {
		out = append(out, "")
	}
	return out
}

func sideWidth(w int) int { return min(56, w*11/25) }
