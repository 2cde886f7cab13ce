// Package drive is the Drive screen: what turns the machine and what it charges, and
// how each trial comes to terms with it: a curve over wind or drive speed, a plain
// sentence a trial, the year's energy, and what happens at the worst.
package drive

import (
	"slotwright/tui/kit"
	"slotwright/tui/machine"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the Drive screen. On a small terminal inputs and answers take turns.
type View struct {
	form    *machine.View
	answers bool // answers shown where there is no room for both
	watts   bool // watts on the curve instead of amps
	scroll  kit.Scroll
	bodyH   int
}

// New is the screen.
func New() *View { return &View{form: machine.NewDrive()} }

// Name stands on the tab.
func (v *View) Name() string { return "Drive" }

// Typing reports whether letters go into a field.
func (v *View) Typing(s *session.Session) bool { return !v.answers && v.form.Typing(s) }

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	own := []kit.Binding{
		{ID: "flip", Keys: []string{"ctrl+g"}, Label: "inputs/answers", Help: "Inputs, or what each trial makes of the drive.", Group: "Drive"},
		{ID: "watts", Keys: []string{"ctrl+w"}, Label: "amps/watts", Help: "Amps or watts on the curve.", Group: "Drive"},
	}
	if v.answers {
		return append(own, kit.Binding{ID: "scroll", Keys: []string{"down", "up", "pgdown", "pgup"}, Help: "Scroll the answers.", Group: "Drive"})
	}
	return append(own, v.form.Bindings(s)...)
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	switch msg.String() {
	case "ctrl+g":
		v.answers = !v.answers
		return true
	case "ctrl+w":
		v.watts = !v.watts
		return true
	}
	if v.answers {
		next, used := v.scroll.Key(msg.String(), v.bodyH, 400)
		v.scroll = next
		return used
	}
	return v.form.Key(s, msg)
}

// Draw fills the rectangle.
func (v *View) Draw(s *session.Session, r kit.Rect) []kit.Block {
	if r.W >= wide {
		left, right := r.SplitRight(r.W * 11 / 20)
		left.W--
		return append(v.form.DrawForm(s, left), v.drawAnswers(s, right)...)
	}
	if v.answers {
		return v.drawAnswers(s, r)
	}
	top, foot := r.SplitBottom(1 + lines(s))
	return append(v.form.DrawForm(s, top), kit.Bare(s.Theme, foot, v.summary(s, foot.W, foot.H)))
}

// wide is where inputs and answers stand side by side.
const wide = 110

// lines is one line a trial for the summary on a small screen.
func lines(s *session.Session) int { return max(1, len(s.Outcome().Trials)) }

// summary is each trial's sentence cut to a line, and how to see more.
func (v *View) summary(s *session.Session, w, h int) []string {
	t := s.Theme
	out := []string{t.Fit(t.Paint(kit.Hint, "ctrl+g shows curve, year and the worst cases"), w)}
	for i := range s.Outcome().Trials {
		o := &s.Outcome().Trials[i]
		out = append(out, t.Fit(t.Paint(kit.Label, o.Name+": ")+sentence(o), w))
	}
	return out[:min(len(out), h)]
}
