package form

import (
	"unicode/utf8"

	tea "github.com/charmbracelet/bubbletea"
)

// move handles the keys that move the focus. moved is false for all others, which then
// belong to the focused row.
func (f Form) move(msg tea.KeyMsg) (next Form, used, moved bool) {
	page := f.Page
	if page <= 0 {
		page = 8
	}
	switch msg.String() {
	case "up":
		return f.by(-1), true, true
	case "down", "enter":
		return f.by(1), true, true
	case "shift+tab":
		next = f.by(-1)
		return next, next.Focus != f.Focus, true
	case "tab":
		next = f.by(1)
		return next, next.Focus != f.Focus, true
	case "pgup":
		return f.focusOn(f.nearest(f.Focus - page)), true, true
	case "pgdown":
		return f.focusOn(f.nearest(f.Focus + page)), true, true
	case "ctrl+home":
		return f.focusOn(f.nearest(0)), true, true
	case "ctrl+end":
		return f.focusOn(f.nearest(len(f.Rows) - 1)), true, true
	case "home":
		if !f.Typing() || f.Cursor <= 0 {
			return f.focusOn(f.nearest(0)), true, true
		}
	case "end":
		if !f.Typing() || f.Cursor >= utf8.RuneCountInString(f.Focused().Text) {
			return f.focusOn(f.nearest(len(f.Rows) - 1)), true, true
		}
	}
	return f, false, false
}

// by moves the focus to the next row in a direction that takes it, or not at all.
func (f Form) by(step int) Form {
	i := firstOpen(f.Rows, f.Focus+step, step)
	if i < 0 {
		return f
	}
	return f.focusOn(i)
}

// focusOn puts the focus on row i, the cursor behind its text. A row that is not
// there leaves the form as it is.
func (f Form) focusOn(i int) Form {
	if i < 0 || i >= len(f.Rows) {
		return f
	}
	f.Focus = i
	f.Cursor = utf8.RuneCountInString(f.Rows[i].Text)
	return f
}

// nearest is the row closest to i that takes the focus, -1 if none does.
func (f Form) nearest(i int) int {
	i = min(max(i, 0), len(f.Rows)-1)
	if j := firstOpen(f.Rows, i, 1); j >= 0 {
		return j
	}
	return firstOpen(f.Rows, i, -1)
}

// firstOpen is the first row from i on, in steps of 1 or -1, that takes the focus; -1 if
// there is none.
func firstOpen(rows []Row, i, step int) int {
	for ; i >= 0 && i < len(rows); i += step {
		if !rows[i].Fixed {
			return i
		}
	}
	return -1
}
