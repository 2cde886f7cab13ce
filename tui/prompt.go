package tui

import (
	"slotwright/tui/form"
	"slotwright/tui/kit"

	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// prompt is a one-line question with a typed answer, such as a file name. The line is
// edited by bubbles' text input; it is drawn by our own field, whose cursor also shows
// without colour.
type prompt struct {
	title string
	line  textinput.Model
	then  func(text string) tea.Cmd
}

// newPrompt asks, with an answer to begin from.
func newPrompt(title, text string, then func(string) tea.Cmd) *prompt {
	line := textinput.New()
	line.SetValue(text)
	line.CursorEnd()
	line.Focus()
	return &prompt{title, line, then}
}

// key edits the line.
func (p *prompt) key(msg tea.KeyMsg) { p.line, _ = p.line.Update(msg) }

// draw is the question in the middle of the screen.
func (p *prompt) draw(t kit.Theme, within kit.Rect) kit.Block {
	r := within.Centre(min(74, within.W-4), 5)
	in := kit.Inner(r)
	typed := form.TextLine{Text: p.line.Value(), Cursor: p.line.Position()}
	return kit.Panel{Title: p.title, Foot: "enter takes it, esc leaves", Focused: true}.
		Draw(t, r, []string{"", typed.Draw(t, in.W, true)})
}
