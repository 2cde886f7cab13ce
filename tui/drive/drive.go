// Package drive is the Drive screen: what turns the machine and what it charges, and where each trial
// and its drive balance: a curve over wind or drive speed, a plain sentence per trial, the year's
// energy, and the worst cases.
package drive

import (
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/machine"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the Drive screen. On a small terminal inputs and answers take turns.
type View struct {
	form    *machine.View
	answers bool // answers shown where there is no room for both
	drawn   int  // which of the pictures there are
	at      kit.Rect
	text    []string // the answers
	scroll  kit.Scroll
}

// New is the screen.
func New() *View { return &View{form: machine.NewDrive()} }

// Name is on the tab.
func (v *View) Name() string { return "Drive" }

// Typing reports whether letters go into a field.
func (v *View) Typing(s *session.Session) bool { return !v.answers && v.form.Typing(s) }

// Editing reports whether a value is being given.
func (v *View) Editing(s *session.Session) bool { return !v.answers && v.form.Editing(s) }

// GoTo marks a field, if it is one of this screen's.
func (v *View) GoTo(s *session.Session, path string) bool {
	if !v.form.GoTo(s, path) {
		return false
	}
	v.answers = false
	return true
}

// Follow marks the first of some fields that is shown.
func (v *View) Follow(s *session.Session, fields []string) { v.form.Follow(s, fields) }

// Click marks the field at a cell of the frame.
func (v *View) Click(s *session.Session, x, y int) {
	if !v.answers || v.at.W >= wide {
		v.answers = false
		v.form.Click(s, x, y)
	}
}

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	const group = "Drive"
	own := []kit.Binding{
		kit.Bind(group, "ctrl+g", "inputs/answers", "Inputs, or what each trial makes of the drive.", func() { v.answers = !v.answers }),
		kit.Bind(group, "ctrl+w", "amps/watts", "What is drawn: what each trial takes and the drive gives, net amps, net watts.", func() { v.drawn++ }),
	}
	if trial, to, ok := s.Rejoined(); ok && !v.Editing(s) {
		name := s.Outcome().Trials[trial].Name
		own = append([]kit.Binding{kit.Bind(group, "f6", "try "+name+" in "+session.JointsText(to), "A new trial of trial "+name+"'s coils in "+session.JointsText(to)+", which would do better; undo takes it out.", s.TakeJoints)}, own...)
	}
	if v.answers {
		return append(own, v.scroll.Bindings("Answers", "read on")...)
	}
	return append(own, v.form.Bindings(s)...)
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	_, used := kit.Press(v.Bindings(s), msg)
	if used || v.answers {
		return used
	}
	return v.form.Key(s, msg)
}

// SetSize divides the rectangle among inputs and answers and makes the answers' text.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	inputs, answers, _ := v.areas(s)
	v.form.SetSize(s, inputs)
	v.form.Hold(v.answers)
	_, box := answerAreas(answers)
	in := kit.Inner(box)
	v.text = v.words(s, in.W-2)
	v.scroll.SetSize(in.H, len(v.text))
}

// areas are the rectangles of inputs, answers and summary: side by side where they fit, the summary
// under a picture if there is one, else the inputs over the summary, or the answers alone.
func (v *View) areas(s *session.Session) (inputs, answers, summary kit.Rect) {
	r := v.at
	if v.pictured() {
		inputs, summary = r.SplitLeft(inputCells)
		_, summary = summary.SplitLeft(2)
		return inputs, r, summary
	}
	if r.W >= wide {
		inputs, answers = r.SplitRight(r.W * 11 / 20)
		inputs.W--
		return inputs, answers, kit.Rect{}
	}
	inputs, summary = r.SplitBottom(len(v.summary(s, r.W, r.H/3)))
	return inputs, r, summary
}

// Draw fills the rectangle.
func (v *View) Draw(s *session.Session) []kit.Block {
	_, answers, summary := v.areas(s)
	switch {
	case v.at.W >= wide:
		return append(v.form.DrawForm(s), v.drawAnswers(s, answers)...)
	case v.answers:
		return v.drawAnswers(s, answers)
	case v.pictured():
		words := v.summary(s, summary.W, summary.H/2)
		top, foot := summary.SplitBottom(len(words))
		return append(v.form.DrawForm(s), kit.Bare(s.Theme, top, v.picture(s, v.drawn, top.W, top.H-1)), kit.Bare(s.Theme, foot, words))
	}
	return append(v.form.DrawForm(s), kit.Bare(s.Theme, summary, v.summary(s, summary.W, summary.H)))
}

// wide is the width from which inputs and answers are side by side.
const wide = 110

// The size from which a picture fits beside the inputs alone; the width of inputs beside one.
const (
	picturedW, picturedH = 96, 24
	inputCells           = 53
)

// pictured reports whether a picture is beside the inputs, with the sentences under it.
func (v *View) pictured() bool {
	return !v.answers && v.at.W < wide && v.at.W >= picturedW && v.at.H >= picturedH
}

// summary is each trial's sentence, whole, in about h lines: of all trials, else of the chosen one; and
// how to see more.
func (v *View) summary(s *session.Session, w, h int) []string {
	t := s.Theme
	if text := s.ReversedShort(); text != "" { // nothing else counts until then
		return t.Hang(t.Mark(kit.Broken)+" ", kit.Broken, strings.ToUpper(text[:1])+text[1:]+".", w)
	}
	head := t.WrapPaint(kit.Dim, "ctrl+g shows what it takes and gives, the year and the worst cases", w)
	of := func(i int) []string {
		return t.Hang(named(s, i), kit.Plain, s.Units.Words(sentence(&s.Outcome().Trials[i]))+".", w)
	}
	var all []string
	for i := range s.Outcome().Trials {
		all = append(all, of(i)...)
	}
	if len(head)+len(all) > h && len(s.Outcome().Trials) > 1 {
		all = of(s.Trial)
	}
	return append(head, all...)
}
