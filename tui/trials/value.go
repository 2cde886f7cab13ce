package trials

import (
	"strings"
	"unicode"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"

	tea "github.com/charmbracelet/bubbletea"
)

// words reports whether the marked row takes words, so that letters begin a value there.
func (v *View) words(s *session.Session) bool { return v.row == rowWire && v.inputPath(s) != "" }

// Editing reports whether a value is being given.
func (v *View) Editing(*session.Session) bool { return v.editing }

// withoutLetters leaves bindings only the keys that are no letters: those are text here.
func withoutLetters(list []kit.Binding) []kit.Binding {
	for i := range list {
		var keys []string
		for _, k := range list[i].Keys() {
			if r := []rune(k); len(r) > 1 || !unicode.IsLetter(r[0]) {
				keys = append(keys, k)
			}
		}
		list[i].SetKeys(keys...)
	}
	return list
}

// opens takes a key that begins a value: a letter where words stand, a paste anywhere.
func (v *View) opens(s *session.Session, msg tea.KeyMsg) bool {
	text := msg.Type == tea.KeyRunes && !msg.Alt && v.words(s)
	if v.inputPath(s) == "" || !text && !msg.Paste || kit.Garbage(msg) {
		return false
	}
	v.begin("")
	return v.typed(msg)
}

// why goes to the field that a missing figure waits for, and reports whether there is one.
func (v *View) why(s *session.Session) bool {
	rows := v.figures(s)
	i := v.row - firstFigure
	if i < 0 || i >= len(rows) || s.Trial >= len(rows[i].Cells) {
		return false
	}
	f, j := rows[i].Cells[s.Trial].Figure, s.Job()
	if f.Known() {
		return false
	}
	path, ok := winding.FieldFor(&j, f.Why, s.Trial)
	if ok {
		s.Go(path)
	}
	return ok
}

// GoTo marks a trial's field, if it is one of this screen's.
func (v *View) GoTo(s *session.Session, path string) bool {
	_, name, ok := strings.Cut(path, "].")
	if !ok || !strings.HasPrefix(path, "trial[") || len(s.Outcome().Trials) == 0 {
		return false
	}
	for row := rowTurns; row < firstFigure; row++ {
		if inputFields[row] == name || row == rowTurns && name == "coil_turns" {
			v.row, v.editing = row, false
			return true
		}
	}
	return false
}
