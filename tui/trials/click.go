package trials

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"

	"github.com/charmbracelet/x/ansi"
)

// Click marks what is at a cell of the frame: an input of the slot's line, a row and a trial of the
// table, a rung, an input that a figure comes from. A click on what is marked already acts like enter.
func (v *View) Click(s *session.Session, x, y int) {
	top, rest := v.at.SplitTop(1)
	switch {
	case v.picking:
		if id, ok := v.list.At(s.Theme, v.at, x, y); ok {
			v.picked(s, id)
		}
	case v.why.open:
		v.clickWhy(s, x, y)
	case v.ladder.open:
		v.ladder.click(s, rest, x, y)
	case v.editing: // what is being typed is neither taken nor lost
	case y == top.Y:
		v.mark(s, v.slotInputAt(s, top.W, x-top.X), s.Trial)
	case len(s.Outcome().Trials) > 0:
		grid, _ := v.lay(s, rest)
		if row, trial, ok := v.cellAt(s, grid, x-grid.X, y-grid.Y); ok {
			v.mark(s, row, trial)
		}
	}
}

// mark marks a row and chooses a trial, or opens the row if both are so already.
func (v *View) mark(s *session.Session, row string, trial int) {
	if row == v.row && trial == s.Trial {
		v.edit(s)
		return
	}
	v.row = row
	s.Choose(trial)
}

// slotInputAt is the input of the slot's line at a column.
func (v *View) slotInputAt(s *session.Session, w, x int) string {
	before, _, _ := strings.Cut(ansi.Strip(v.slotLine(s, w)), s.Theme.Text(inputLabel(s, rowFill)))
	if x < kit.Width(before) {
		return rowArea
	}
	return rowFill
}

// cellAt is the row and the trial at a cell of the table in a rectangle; a click beside the
// trials keeps the chosen one.
func (v *View) cellAt(s *session.Session, grid kit.Rect, x, y int) (row string, trial int, ok bool) {
	w, list := grid.W, v.entries(s)
	head, body, marked := v.gridLines(s, w)
	if len(head)+len(body) > grid.H {
		w -= barCells
		head, body, marked = v.gridLines(s, w)
	}
	i, ok := kit.LineAt(len(body), marked, grid.H-len(head), y-len(head))
	if !ok || x < 0 || x >= grid.W || list[i].id == "" {
		return "", 0, false
	}
	tb, c := v.table(s, list, w)
	trial = s.Trial
	if j, in := tb.ColumnAt(s.Theme, w, x); in {
		first := 1
		if c.old {
			first = 2
		}
		if j >= first && j < first+len(c.trials) {
			trial = c.trials[j-first]
		}
	}
	return list[i].id, trial, true
}

// click marks the rung at a cell; the one that is marked is taken.
func (l *ladder) click(s *session.Session, r kit.Rect, x, y int) {
	_, body := l.areas(r)
	list := l.rungs(s)
	tb := l.tableIn(s, list, body.W)
	head := len(tb.Head(s.Theme, body.W))
	i, ok := kit.LineAt(len(list), l.row, body.H-head, y-body.Y-head)
	switch {
	case !ok || !body.Contains(x, y) || x-body.X > tb.Width(s.Theme)+2: // the rest is the picture's
	case i == l.row:
		s.TakeRung(list[i], false)
		l.open = false
	default:
		l.row = i
	}
}

// areas are the line over the rungs and their rectangle, the foot taken off.
func (l *ladder) areas(r kit.Rect) (top, body kit.Rect) {
	top, rest := r.SplitTop(1)
	body, _ = rest.SplitBottom(footLines(r))
	return top, body
}

// clickWhy marks the input at a cell of the page, or goes to the one that is marked; beside the page it
// closes.
func (v *View) clickWhy(s *session.Session, x, y int) {
	r, lines, focus := v.whyPage(s, v.at)
	if !r.Contains(x, y) {
		v.why.open = false
		return
	}
	in, list := kit.Inner(r), v.options(s)
	i, ok := kit.LineAt(len(lines), focus, in.H, y-in.Y)
	if i -= len(lines) - len(list); !ok || i < 0 {
		return
	}
	if i == v.why.at {
		v.why.open = false
		goTo(s, list[i].path, list[i].reason())
		return
	}
	v.why.at = i
}
