package machine

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
)

// wide is where the results stand beside the form.
const wide = 100

// areas are the rectangles of the form, of the marked field's explanation, and of what
// follows. On a small screen what follows is two lines at the foot.
func (v *View) areas() (form, help, follows kit.Rect) {
	r := v.at
	if r.W < wide {
		form, follows = r.SplitBottom(2)
		form, help = v.withHelp(form)
		return form, help, follows
	}
	form, side := r.SplitRight(sideWidth(r.W))
	form.W--
	help, follows = side.SplitTop(min(11, r.H/2))
	return form, help, follows
}

// withHelp splits the explanation's box from under a form: as high as most explanations
// are, higher for one that would be cut, half of the room at most.
func (v *View) withHelp(r kit.Rect) (form, help kit.Rect) {
	least := 6
	if r.H < 19 {
		least = 5
	}
	need := len(v.form.Explain(kit.Theme{}, kit.Inner(kit.Rect{W: r.W, H: least}).W)) + 2
	return r.SplitBottom(max(least, min(need, r.H/2)))
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
	lines := append(problems(s, in.W), v.missing(s, in.W)...)
	if v.first && len(waiting(s)) == 0 {
		lines = append(append(lines, s.Theme.WrapPaint(kit.Hint, allSaid, in.W)...), "")
	}
	if v.first {
		lines = append(lines, s.Theme.Wrap(known(s, 0), in.W)...)
	}
	lines = append(lines, v.result(s, in.W)...)
	return v.overlay(s, append(blocks, kit.Box(s.Theme, follows, "What follows", lines)))
}

// fields is the form.
func (v *View) fields(s *session.Session, r kit.Rect) kit.Block {
	return kit.Bare(s.Theme, r, v.form.Lines(s.Theme, r.W, r.H))
}

// explain is the marked field in a box with its name.
func (v *View) explain(s *session.Session, r kit.Rect) kit.Block {
	return kit.Box(s.Theme, r, v.form.Focused().Label, v.form.Explain(s.Theme, kit.Inner(r).W))
}

// strip is what follows in two lines: what is known of the chosen trial, and what comes
// next.
func (v *View) strip(s *session.Session, w int) []string {
	t := s.Theme
	var lines []string
	if p := s.Document().Problems(); len(p) > 0 {
		text := fmt.Sprintf("%s %d in the file cannot be used: ! tells", t.Mark(kit.Broken), len(p)+s.Document().More())
		lines = append(lines, t.Fit(t.Paint(kit.Broken, text), w))
	}
	if list := waiting(s); len(list) > 0 {
		text := t.Mark(kit.Needed) + " next: " + label(list[0].Path)
		if whole := text + ", for " + list[0].Unlocks; kit.Width(t.Text(whole)) <= w {
			text = whole
		}
		lines = append(lines, t.Fit(t.Paint(kit.Needed, text), w))
	} else if v.first {
		lines = append(lines, t.Fit(t.Paint(kit.Hint, allSaid), w))
	}
	return append(lines, t.Fit(known(s, w), w))
}

// allSaid is where to go on when none of the first things is waited for.
const allSaid = "next: tab, Trials. Drive has what is wanted, cable and diodes"

// missing lists what the figures wait for, by what it would unlock.
func (v *View) missing(s *session.Session, w int) []string {
	t := s.Theme
	var order []string
	by := map[string][]string{}
	for _, f := range waiting(s) {
		if by[f.Unlocks] == nil {
			order = append(order, f.Unlocks)
		}
		by[f.Unlocks] = append(by[f.Unlocks], label(f.Path))
	}
	var out []string
	for _, what := range order {
		out = append(out, t.WrapPaint(kit.Needed, t.Mark(kit.Needed)+" "+strings.Join(by[what], ", ")+": for "+what, w)...)
	}
	if len(out) > 0 {
		out = append(out, "")
	}
	return out
}

// known is the first figures of the chosen trial that are known, in a line: all, or as many
// as w cells hold whole.
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
		next += r.Label + " " + s.Text(c.Figure, r.Dim, r.Digits)
		if w > 0 && kit.Width(s.Theme.Text(next)) > w {
			break
		}
		line = next
	}
	return line
}

// problems is what in the file cannot be used.
func problems(s *session.Session, w int) []string {
	var out []string
	for _, text := range s.Problems() {
		out = append(out, s.Theme.WrapPaint(kit.Broken, s.Theme.Mark(kit.Broken)+" "+text, w)...)
	}
	return out
}

func sideWidth(w int) int { return min(56, w*9/20) }
