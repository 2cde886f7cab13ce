package trials

import (
	"slices"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// named are the letters that a wire's name may begin with: AWG, SWG, IEC. On the row of the wire they
// begin one; every other letter is the same command as on the other rows.
const named = "aAsSiI"

// wire reports whether the cursor is on the wire, with nothing over the table.
func (v *View) wire(s *session.Session) bool {
	return v.row == rowWire && !v.over() && v.inputPath(s) != ""
}

// over reports whether something lies over the table, or takes its place.
func (v *View) over() bool { return v.why.open || v.ladder.open || v.picking }

// Editing reports whether a value is being given.
func (v *View) Editing(*session.Session) bool { return v.editing }

// withoutNames leaves bindings only the keys that begin no wire's name.
func withoutNames(list []kit.Binding) []kit.Binding {
	for i := range list {
		var keys []string
		for _, k := range list[i].Keys() {
			if len(k) > 1 || !strings.Contains(named, k) {
				keys = append(keys, k)
			}
		}
		list[i].SetKeys(keys...)
	}
	return list
}

// Takes reports whether a letter begins a value where the cursor is.
func (v *View) Takes(s *session.Session, letter string) bool {
	return v.wire(s) && len(letter) == 1 && strings.Contains(named, letter)
}

// opens takes a paste as the beginning of a value.
func (v *View) opens(s *session.Session, msg tea.KeyMsg) bool {
	if v.over() || v.inputPath(s) == "" || !msg.Paste || kit.Garbage(msg) {
		return false
	}
	v.begin("")
	return v.typed(msg)
}

// take puts the value typed into the job and goes on to the next input, as on every screen; what is
// wrong with it is reported, and it stays in its row with its mark. For a bare number as a wire it says
// what it was taken for, or asks where other sizes are in use.
func (v *View) take(s *session.Session) {
	path := v.inputPath(s)
	bare, asks := s.BareWire(path, v.input.Text)
	if asks {
		v.asked = true
		s.Warn(bare)
		return
	}
	v.editing = false
	s.Type(path, v.input.Text)
	s.Settle()
	if p, bad := s.Document().ProblemAt(path); bad {
		s.Warn(s.ProblemText(p))
	} else if bare != "" {
		s.Say(bare)
	}
	v.next(s)
}

// next goes on to the input below; from the last to the row under it.
func (v *View) next(s *session.Session) {
	shown := v.ids(s)
	inputs := append([]string{rowArea, rowFill}, inputRows...)
	for _, id := range inputs[slices.Index(inputs, v.row)+1:] {
		if slices.Contains(shown, id) {
			v.row = id
			return
		}
	}
	if i := slices.Index(shown, v.row); i >= 0 && i+1 < len(shown) {
		v.row = shown[i+1]
	}
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
	v.editing, v.why.open, v.ladder.open, v.picking = false, false, false, false
	v.flipped = v.flipped || slices.Contains(v.folded(s), name)
	v.row = name
	return true
}
