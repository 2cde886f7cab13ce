package tui

import (
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// wheelRows is how far one notch of the wheel goes.
const wheelRows = 3

// point takes the mouse, which is on only when asked for: the wheel moves like the arrows, a click
// takes a screen's tab, an option of a list, or what the view has at that cell.
func (m *Model) point(msg tea.MouseMsg) tea.Cmd {
	if m.tooSmall() || m.then != nil || m.prompt != nil {
		return nil
	}
	switch {
	case msg.Button == tea.MouseButtonWheelDown:
		return m.wheel(tea.KeyDown)
	case msg.Button == tea.MouseButtonWheelUp:
		return m.wheel(tea.KeyUp)
	case msg.Button == tea.MouseButtonLeft && msg.Action == tea.MouseActionPress:
		return m.click(msg.X, msg.Y)
	}
	return nil
}

// wheel presses an arrow a few times; where a value is being given it is left alone.
func (m *Model) wheel(arrow tea.KeyType) (cmd tea.Cmd) {
	for range wheelRows {
		if m.editing() && m.picked == nil && !m.helping {
			return nil
		}
		cmd = m.keys(tea.KeyMsg{Type: arrow})
	}
	return cmd
}

func (m *Model) click(x, y int) tea.Cmd {
	defer m.fit()
	if m.picked != nil {
		id, ok := m.list.At(m.s.Theme, m.body(), x, y)
		if picked := m.picked; ok {
			m.picked = nil
			return picked(id)
		}
		return nil
	}
	if m.helping {
		m.helping = false
		return nil
	}
	if y == 0 {
		if i, ok := m.tabAt(x); ok {
			m.show(i)
		}
		return nil
	}
	before := m.s.Document().Text()
	if c, ok := m.view().(session.Clicker); ok && m.body().Contains(x, y) {
		m.s.ClearMessage()
		c.Click(m.s, x, y)
		if path, ok := m.s.Going(); ok {
			m.goTo(path)
		}
	}
	if m.s.Document().Text() != before {
		return m.keepInTime(keepAfter)
	}
	return nil
}
