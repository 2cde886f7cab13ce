package tui

import (
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// prompt is a one-line question with a typed answer, such as a file name.
type prompt struct {
	title string
	why   string // why it is asked again after a failure; may be empty
	note  string // the effect of the answer, where that is not plain; may be empty
	line  form.TextLine
	then  func(text string) tea.Cmd
	// files says which files complete what is typed, nil when it is no file; recent are those offered
	// before anything is typed.
	files  func(name string) bool
	recent []string
	// fresh is set until the line is edited: what is typed then replaces the present answer. at is the
	// index of the offer taken last.
	fresh bool
	at    int
}

// maxPath is the longest path that may be typed: PATH_MAX of Linux, the longest in use.
const maxPath = 4096

// newPrompt asks, with an answer to begin from.
func newPrompt(title, text string, then func(string) tea.Cmd) *prompt {
	return &prompt{title: title, line: form.NewTextLine(text), then: then, fresh: true, at: -1}
}

// with is the prompt with a previous answer, to be corrected.
func (p *prompt) with(text string) *prompt {
	p.line, p.fresh = form.NewTextLine(text), text == ""
	return p
}

// promptBindings are the keys while a line is asked for.
func (m *Model) promptBindings() []kit.Binding {
	const group = "A line to type"
	p := m.prompt
	file := p.files != nil
	return append([]kit.Binding{
		kit.Command(group, "enter", "take it", "Take what is typed.", func(tea.KeyMsg) tea.Cmd {
			m.prompt = nil
			return p.then(p.line.Text)
		}),
		kit.Bind(group, "esc ctrl+c", "leave it", "Leave without it.", func() { m.prompt = nil }),
		kit.Bind(group, "tab", "complete", "Go on as the files there do.", p.complete).When(file),
		kit.Bind(group, "down", "", "The next of the files listed.", func() { p.offer(1) }).When(file),
		kit.Bind(group, "up", "", "The one before.", func() { p.offer(-1) }).When(file),
	}, form.LineBindings()...)
}

// fill gives a key to the line being typed.
func (m *Model) fill(msg tea.KeyMsg) tea.Cmd {
	cmd, used := kit.Press(m.promptBindings(), msg)
	if !used {
		p := m.prompt
		if p.replaced() && (msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace || msg.Paste) && !kit.Garbage(msg) {
			p.line = form.NewTextLine("")
		}
		line, edits := p.line.KeyWithin(msg, maxPath)
		if p.line = line; edits {
			p.fresh, p.at = false, -1
		}
	}
	return cmd
}

// offers are the files that what is typed may become.
func (p *prompt) offers() []string {
	switch {
	case p.files == nil:
		return nil
	case p.fresh && p.line.Text == "" || p.at >= 0 && p.fresh:
		return p.recent
	}
	return filesLike(p.line.Text, p.files)
}

// replaced reports whether typing now replaces the present answer; one that failed is there to be
// corrected.
func (p *prompt) replaced() bool { return p.fresh && p.at < 0 && p.why == "" && p.line.Text != "" }

// offer takes the next of the files offered into the line.
func (p *prompt) offer(by int) {
	list := p.offers()
	if !p.fresh && p.at < 0 || len(list) == 0 {
		if len(list) > 0 {
			p.line = form.NewTextLine(list[0])
		}
		return
	}
	n := len(list)
	p.at = ((max(p.at, -1)+by)%n + n) % n
	if p.at < 0 {
		p.at = 0
	}
	p.line = form.NewTextLine(list[p.at])
}

// complete extends what is typed as far as all files that begin with it agree.
func (p *prompt) complete() {
	p.fresh, p.at = false, -1
	if list := filesLike(p.line.Text, p.files); len(list) > 0 {
		if to := common(list); len(to) > len(p.line.Text) || len(list) == 1 {
			p.line = form.NewTextLine(to)
		}
	}
}

// maxOffers is how many files are listed under the line.
const maxOffers = 8

// draw is the question in the middle of the screen, the reason above the line, the files that it may
// become below.
func (p *prompt) draw(t kit.Theme, within kit.Rect) kit.Block {
	w := 74
	if within.W < w+16 { // a rim of what lies under it would only be in the way
		w = within.W
	}
	lines := []string{""}
	if why := kit.Either(p.why != "", p.why, p.note); why != "" {
		lines = t.Wrap(kit.Clean(why), w-2)
		lines = append(lines[:min(len(lines), 6)], "")
	}
	offers := p.offers()
	under := min(len(offers), maxOffers)
	foot := "enter takes it, esc leaves"
	switch replaced := p.replaced(); {
	case replaced:
		foot = "typing replaces it, ← edits it, " + foot
	case len(offers) > 0:
		foot = "↓ goes through them, tab completes, " + foot
	case p.files != nil:
		foot = "tab completes, " + foot
	}
	r := within.Centre(w, len(lines)+4+under)
	in := kit.Inner(r)
	if p.replaced() {
		lines = append(lines, t.Fit("["+t.Style(kit.Focus).Render(t.Cut(t.Text(kit.Clean(p.line.Text)), in.W-2))+"]", in.W))
	} else {
		lines = append(lines, p.line.Draw(t, in.W, true))
	}
	for i := range under {
		text := strings.ReplaceAll(kit.Clean(offers[i]), "\n", " ")
		mark := " "
		if p.at == i {
			mark = t.Mark(kit.Focus)
		}
		if i == maxOffers-1 && len(offers) > maxOffers {
			text = "and more"
		}
		lines = append(lines, t.Paint(kit.Hint, mark+" "+text))
	}
	return kit.Panel{Title: p.title, Foot: foot, Focused: true}.Draw(t, r, lines)
}
