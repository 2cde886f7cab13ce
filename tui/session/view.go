package session

import (
	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// View is one screen of the workbench.
type View interface {
	// Name is on the view's tab.
	Name() string
	// SetSize gives the view its rectangle. It is called whenever that or the session may have changed,
	// after every key: here, and in Key, a view brings up to date what it keeps, so that Draw changes
	// nothing.
	SetSize(s *Session, r kit.Rect)
	// Bindings are the view's own keys.
	Bindings(s *Session) []kit.Binding
	// Typing reports whether letters go into a field now.
	Typing(s *Session) bool
	// Key takes a key, does what the bindings say or gives it to a field, and reports
	// whether it meant something here.
	Key(s *Session, msg tea.KeyMsg) bool
	// Draw fills the rectangle. It changes nothing: drawn twice, it is the same.
	Draw(s *Session) []kit.Block
}
