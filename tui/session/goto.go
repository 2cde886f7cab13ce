package session

import "slotwright/tui/kit"

// GoTo asks the program to go to a field of the job, on whichever screen has it. A view
// sends it as a message, or calls [Session.Go] where it has no message to send.
type GoTo struct {
	// Path is the field, as in the job file: "slot.area", "trial[1].turns".
	Path string
}

// Go is GoTo, carried out at the end of the present key.
func (s *Session) Go(path string) { s.going = path }

// Going is where to go, once.
func (s *Session) Going() (path string, ok bool) {
	path, s.going = s.going, ""
	return path, path != ""
}

// Goer is a view that has fields: it marks the one asked for, and reports whether it has it.
type Goer interface {
	GoTo(s *Session, path string) bool
}

// Follower is a view that marks the first field it shows of those that were undone or redone.
type Follower interface {
	Follow(s *Session, fields []string)
}

// Editor is a view in which letters begin a value. Editing reports whether one is being given at
// present; before that, signs such as ? are still commands.
type Editor interface {
	Editing(s *Session) bool
}

// Taker is a view in which some letters begin a value where the cursor is, while all others
// are commands there.
type Taker interface {
	Takes(s *Session, letter string) bool
}

// Commander is a view with commands by name that its keys do not reach at present, because something
// lies over it.
type Commander interface {
	Commands(s *Session) []kit.Binding
}

// Clicker is a view in which the mouse may point at something: a click at a cell of the frame. The
// mouse is never required.
type Clicker interface {
	Click(s *Session, x, y int)
}

// Empty reports whether nothing of the job's machine has been given yet.
func (s *Session) Empty() bool {
	for _, path := range []string{"machine.slots", "machine.poles", "machine.bore", "slot.area", "old.turns", "trial[0].turns"} {
		if _, _, given := s.doc.Typed(path); given {
			return false
		}
	}
	return true
}
