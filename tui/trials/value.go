package trials

import (
	"slices"
	"strings"
	"unicode"

	"slotwright/tui/kit"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// words reports whether the marked row takes words, so that letters begin a value there.
func (v *View) words(s *session.Session) bool {
	return v.row == rowWire && !v.why.open && !v.ladder.open && v.inputPath(s) != ""
}

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
	if v.why.open || v.ladder.open || v.inputPath(s) == "" || !text && !msg.Paste || kit.Garbage(msg) {
		return false
	}
	v.begin("")
	return v.typed(msg)
}

// GoTo marks a trial's field, if it is one of this screen's.
func (v *View) GoTo(s *session.Session, path string) bool {
	_, name, ok := strings.Cut(path, "].")
	if !ok || !strings.HasPrefix(path, "trial[") || len(s.Outcome().Trials) == 0 {
		return false
	}
	if name == "coil_turns" {
		name = rowTurns
	}
	if !slices.Contains(inputRows, name) {
		return false
	}
	v.editing, v.why.open, v.ladder.open = false, false, false
	v.flipped = v.flipped || slices.Contains(v.folded(s), name)
	v.row = name
	return true
}
