package session

import (
	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// View is one screen of the workbench.
type View interface {
	// Name stands on the view's tab.
	Name() string
	// Bindings are the view's own keys.
	Bindings(s *Session) []kit.Binding
	// Typing reports whether letters go into a field now.
	Typing(s *Session) bool
	// Key takes a key and reports whether it meant something here.
	Key(s *Session, msg tea.KeyMsg) bool
	// Draw fills the rectangle.
	Draw(s *Session, r kit.Rect) []kit.Block
}
