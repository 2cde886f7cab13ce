package tui

import (
	"slotwright/tui/form"
	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// prompt is a one-line question with a typed answer, such as a file name.
type prompt struct {
	title string
	why   string // why it is asked, when something went wrong; may be empty
	line  form.TextLine
	then  func(text string) tea.Cmd
}

// maxPath is how long a path may be that is typed: PATH_MAX of Linux, the longest in use.
const maxPath = 4096

// newPrompt asks, with an answer to begin from.
func newPrompt(title, text string, then func(string) tea.Cmd) *prompt {
	return &prompt{title: title, line: form.NewTextLine(text), then: then}
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
		m.prompt.line, _ = m.prompt.line.KeyWithin(msg, maxPath)
	}
	return cmd
}

// draw is the question in the middle of the screen, the reason above the line.
func (p *prompt) draw(t kit.Theme, within kit.Rect) kit.Block {
	w := min(74, within.W-4)
	lines := []string{""}
	if p.why != "" {
		lines = t.Wrap(kit.Clean(p.why), w-2)
		lines = append(lines[:min(len(lines), 6)], "")
	}
	r := within.Centre(w, len(lines)+4)
	in := kit.Inner(r)
	return kit.Panel{Title: p.title, Foot: "enter takes it, esc leaves", Focused: true}.
		Draw(t, r, append(lines, p.line.Draw(t, in.W, true)))
}
