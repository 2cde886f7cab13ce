package tui

import (
	"path/filepath"

	"slotwright/tui/kit"
)

// body is where the view draws.
func (m *Model) body() kit.Rect {
	r := kit.Rect{W: m.w, H: m.h}
	_, r = r.SplitTop(2)
	r, _ = r.SplitBottom(1)
	return r
}

// View draws the screen.
func (m *Model) View() string {
	t := m.s.Theme
	if m.w == 0 || m.h == 0 {
		return ""
	}
	if m.w < needW || m.h < needH {
		return kit.TooSmall(t, m.w, m.h, needW, needH)
	}
	screen := kit.NewScreen(t, m.w, m.h)
	top, rest := screen.Rect().SplitTop(2)
	_, foot := rest.SplitBottom(1)
	screen.Put(kit.Bare(t, top, []string{m.titleLine(), kit.Tabs(t, m.w, m.tabNames(), m.active)}))
	if m.helping {
		screen.Put(m.helpBlock())
	} else {
		for _, b := range m.view().Draw(m.s) {
			screen.Put(b)
		}
	}
	screen.Put(kit.Bare(t, foot, []string{m.footLine()}))
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

// titleLine names the job and says whether it is saved.
func (m *Model) titleLine() string {
	t := m.s.Theme
	name := m.s.Job().Name
	if name == "" {
		name = "no name"
	}
	left := t.Paint(kit.Title, "Slotwright  "+name)
	if m.s.Invented {
		left += t.Paint(kit.Hint, "  (invented example)")
	}
	right := "no file yet"
	if m.s.Path != "" {
		right = filepath.Base(m.s.Path)
	}
	if m.s.Dirty() {
		right += " " + t.Glyphs().Bullet + " not saved"
	}
	return kit.Bar(t, m.w, left, t.Paint(kit.Dim, right))
}

// footLine is the message, or the keys.
func (m *Model) footLine() string {
	t := m.s.Theme
	msg := m.s.Message()
	text := ""
	if msg.Text != "" {
		role := kit.Hint
		if msg.Bad {
			role = kit.Broken
		}
		text = t.Paint(role, msg.Text)
	}
	return kit.StatusLine(t, m.w, text, m.statusBindings())
}

// helpLines is the help page: the keys of this screen and the marks.
func (m *Model) helpLines(w int) []string {
	t := m.s.Theme
	lines := kit.HelpLines(t, w, m.helpBindings())
	lines = append(lines, t.Fit("", w), t.Fit(t.Paint(kit.Title, "Marks"), w))
	for _, l := range t.MarkLegend() {
		lines = append(lines, t.Fit("  "+l, w))
	}
	lines = append(lines, t.Fit("", w), t.Fit(t.Paint(kit.Title, "Cautions for this job"), w))
	for _, c := range m.s.Outcome().Cautions {
		for _, l := range t.Wrap(c.Text, w-2) {
			lines = append(lines, t.Fit("  "+l, w))
		}
	}
	return lines
}

func (m *Model) helpBlock() kit.Block {
	r := m.body()
	in := kit.Inner(r)
	panel := kit.Panel{Title: "Help: " + m.view().Name(), Note: "any other key closes", Focused: true}
	return panel.Draw(m.s.Theme, r, m.scroll.Window(m.s.Theme, m.helpLines(in.W-2), in.W, in.H))
}
