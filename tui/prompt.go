package tui

import (
	"slotwright/tui/form"
	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// prompt is a one-line question with a typed answer, such as a file name.
type prompt struct {
	title string
	line  form.TextLine
	then  func(text string) tea.Cmd
}

// newPrompt asks, with an answer to begin from.
func newPrompt(title, text string, then func(string) tea.Cmd) *prompt {
	return &prompt{title, form.NewTextLine(text), then}
}

// promptBindings are the keys while a line is asked for.
func (m *Model) promptBindings() []kit.Binding {
	const group = "A line to type"
	p := m.prompt
	return append([]kit.Binding{
		kit.Command(group, "enter", "take it", "Take what is typed.", func(tea.KeyMsg) tea.Cmd {
			m.prompt = nil
			return p.then(p.line.Text)
		}),
		kit.Bind(group, "esc ctrl+c", "leave it", "Leave without it.", func() { m.prompt = nil }),
	}, form.LineBindings()...)
}

// fill gives a key to the line being typed.
func (m *Model) fill(msg tea.KeyMsg) tea.Cmd {
	cmd, used := kit.Press(m.promptBindings(), msg)
	if !used {
		m.prompt.line, _ = m.prompt.line.Key(msg)
	}
	return cmd
}

// draw is the question in the middle of the screen.
func (p *prompt) draw(t kit.Theme, within kit.Rect) kit.Block {
	r := within.Centre(min(74, within.W-4), 5)
	in := kit.Inner(r)
	return kit.Panel{Title: p.title, Foot: "enter takes it, esc leaves", Focused: true}.
		Draw(t, r, []string{"", p.line.Draw(t, in.W, true)})
}
