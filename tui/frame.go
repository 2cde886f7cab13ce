package tui

import (
	"slotwright/tui/kit"
)

// body is where the view draws.
func (m *Model) body() kit.Rect {
	r := kit.Rect{W: m.w, H: m.h}
	_, r = r.SplitTop(1)
	r, _ = r.SplitBottom(max(1, len(m.said())))
	return r
}

// View draws the screen.
func (m *Model) View() string {
	t := m.s.Theme
	if m.w == 0 || m.h == 0 {
		return ""
	}
	if m.tooSmall() {
		return m.smallFrame()
	}
	screen := kit.NewScreen(t, m.w, m.h)
	top, rest := screen.Rect().SplitTop(1)
	said := m.said()
	_, foot := rest.SplitBottom(max(1, len(said)))
	screen.Put(kit.Bare(t, top, []string{m.bar()}))
	if m.helping {
		screen.Put(m.helpBlock())
	} else {
		for _, b := range m.view().Draw(m.s) {
			screen.Put(b)
		}
	}
	screen.Put(kit.Bare(t, foot, m.footLines(said)))
	if m.picked != nil {
		screen.Put(m.list.Draw(t, m.body()))
	}
	if m.then != nil {
		screen.Put(m.question.Draw(t, screen.Rect()))
	}
	if m.prompt != nil {
		screen.Put(m.prompt.draw(t, screen.Rect()))
	}
	return screen.String()
}

func (m *Model) tabNames() []string {
	names := make([]string, len(m.views))
	for i, v := range m.views {
		names[i] = v.Name()
	}
	return names
}

// smallFrame is what a terminal shows that has no room for a screen: the size it takes, or
// the question or the line that waits for an answer.
func (m *Model) smallFrame() string {
	t := m.s.Theme
	screen := kit.NewScreen(t, m.w, m.h)
	switch {
	case m.then != nil:
		screen.Put(m.question.DrawSmall(t, screen.Rect()))
	case m.prompt != nil:
		lines := t.Wrap(m.prompt.title, m.w)
		lines = append(lines[:min(len(lines), max(0, m.h-1))], m.prompt.line.Draw(t, m.w, true))
		screen.Put(kit.Bare(t, screen.Rect(), lines))
	default:
		return kit.TooSmall(t, m.w, m.h, needW, needH)
	}
	return screen.String()
}

// giving is how a value is given, on every screen.
const giving = "Typing or pasting puts a new value in place of the old one; enter opens the old one to be changed. Enter takes it, esc leaves it as it was. A field with choices lists them, and typing picks one. While a value is given, letters and signs are its text; the keys with ctrl go on being commands."

// helpLines is the help page: the keys of this screen and the marks.
func (m *Model) helpLines(w int) []string {
	t := m.s.Theme
	lines := kit.HelpLines(t, w, m.helpBindings())
	lines = append(lines, t.Fit("", w), t.Fit(t.Paint(kit.Title, "Giving a value"), w))
	for _, l := range t.Wrap(giving, w-2) {
		lines = append(lines, t.Fit("  "+l, w))
	}
	lines = append(lines, t.Fit("", w), t.Fit(t.Paint(kit.Title, "Marks"), w))
	for _, l := range t.MarkLegend() {
		lines = append(lines, t.Fit("  "+l, w))
	}
	lines = append(lines, t.Fit("", w), t.Fit(t.Paint(kit.Title, "Cautions for this job"), w))
	for _, c := range m.s.Outcome().Cautions {
		for _, l := range t.Wrap(m.s.Units.WordsOfRule(c.Text), w-2) {
			lines = append(lines, t.Fit("  "+l, w))
		}
	}
	return lines
}

func (m *Model) helpBlock() kit.Block {
	r := m.body()
	in := kit.Inner(r)
	panel := kit.Panel{Title: "Help: " + m.view().Name(), Note: "any other key closes", Foot: kit.FurtherLines(m.scroll.Below()), Focused: true}
	return panel.Draw(m.s.Theme, r, m.scroll.Window(m.s.Theme, m.helpLines(in.W-2), in.W, in.H))
}
