// Package layout is the layout screen: the stator unrolled with its coils, the walk along the wire coil
// by coil, joins and leads, and what another span would give.
package layout

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/wants"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the layout screen.
type View struct {
	// step is the index of the current coil in the order of winding.
	step int
	// phase is the phase shown alone, from 1; 0 is all.
	phase int
	panel panel
	// row is the marked row of the comparison of spans.
	row int
	// scroll is the scroll position of the chosen panel.
	scroll kit.Scroll
	// left is the first visible slot, from 0, where not all slots are.
	left int

	at   kit.Rect
	kept sheet
	// drawn is the picture, and omitted what had to be left out of it.
	drawn   []string
	omitted string
}

// New is the screen on the first coil.
func New() *View { return &View{row: -1} }

// Name is on the tab.
func (v *View) Name() string { return "Layout" }

// Typing is always false: nothing is typed here.
func (v *View) Typing(*session.Session) bool { return false }

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	list := append(v.walks(), v.moves()...)
	list = append(append(list, v.phases(s)...), v.lists()...)
	list = append(list,
		kit.Bind("Trials", "[", "", "The trial before.", func() { s.Choose(s.Trial - 1) }),
		kit.Bind("Trials", "]", "next trial", "The next trial.", func() { s.Choose(s.Trial + 1) }))
	if path, ok := v.waitsFor(s); ok {
		return append([]kit.Binding{kit.Bind("Layout", "enter", "to the field", "Go to the field that the layout waits for.", func() { s.Go(path) })}, list...)
	}
	if v.panel == spansPanel {
		list = append(list, kit.Bind("Spans and circuits", "enter", "take it", "Give the chosen trial the marked span or number of circuits.", func() { v.set(s, &v.kept) }))
	}
	return list
}

// waitsFor is the field that the layout waits for, where there is none.
func (v *View) waitsFor(s *session.Session) (path string, ok bool) {
	if v.kept.plan != nil {
		return "", false
	}
	j := s.Job()
	return wants.FieldFor(&j, v.kept.why, s.Trial)
}

// walks are the keys that walk along the wire.
func (v *View) walks() []kit.Binding {
	const group = "Walking along the wire"
	last := len(v.kept.steps)
	walk := func(from, by int) func() { return func() { v.walk(&v.kept, from, by) } }
	return []kit.Binding{
		kit.Bind(group, "right n", "next coil", "The next coil along the wire.", walk(v.step, 1)),
		kit.Bind(group, "left p", "before", "The coil before.", walk(v.step, -1)),
		kit.Bind(group, "home", "", "The first coil of what is shown.", walk(-1, 1)),
		kit.Bind(group, "end", "", "The last coil of what is shown.", walk(last, -1)),
	}
}

// page is how far pgup and pgdown go.
const page = 10

// moves are the keys that move in the list that is marked, and from list to list.
func (v *View) moves() []kit.Binding {
	const group = "Lists"
	by := func(rows int) func() { return func() { v.list(&v.kept, rows) } }
	return []kit.Binding{
		kit.Bind(group, "up", "", "Up in the list that is marked.", by(-1)),
		kit.Bind(group, "down", "", "Down in the list that is marked.", by(1)),
		kit.Bind(group, "pgup", "", "Ten lines up.", by(-page)),
		kit.Bind(group, "pgdown", "", "Ten lines down.", by(page)),
		kit.Bind(group, "v", "next list", "Mark the next list: coils, leads, joins, spans, factors, remarks.", func() { v.choose((v.panel + 1) % panelCount) }),
		kit.Bind(group, "V", "", "Mark the list before.", func() { v.choose((v.panel + panelCount - 1) % panelCount) }),
	}
}

// lists are the keys that mark a list, each its first letter.
func (v *View) lists() []kit.Binding {
	const group = "Lists"
	var list []kit.Binding
	for p, what := range panelHelp {
		name := panel(p).String()
		label, _, _ := strings.Cut(strings.ToLower(name), " ")
		list = append(list, kit.Bind(group, label[:1], label, name+": "+what, func() { v.choose(panel(p)) }))
	}
	return list
}

// phases are the keys that show one phase alone.
func (v *View) phases(s *session.Session) []kit.Binding {
	const group = "Phases"
	show := func(phase int) func() { return func() { v.show(s, &v.kept, phase) } }
	list := []kit.Binding{kit.Bind(group, "0", "all", "Show all phases.", show(0))}
	names := []string{"U", "V", "W"}
	if plan := v.kept.plan; plan != nil {
		names = names[:min(len(names), plan.Spec().Phases)]
	}
	if len(names) == 1 {
		return nil
	}
	for i, name := range names {
		list = append(list, kit.Bind(group, fmt.Sprint(i+1), name, "Show phase "+name+" alone and walk in it.", show(i+1)))
	}
	return list
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	_, used := kit.Press(v.Bindings(s), msg)
	return used
}

// SetSize gathers what is shown of the chosen trial, draws the picture that follows the walk, and keeps
// the scroll position of the list within its length.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	d := v.sheet(s)
	if d.plan == nil {
		v.panel = spansPanel // the only list there is
		return
	}
	h := r.H - factsHeight - len(v.sentence(s.Theme, d, r.W)) - v.leastPanels(r.H) - len(v.notes(s.Theme, d, r.W))
	v.drawn, v.omitted = v.picture(s.Theme, d, r.W, max(leastPicture, h))
	for _, p := range v.arranged(v.areas(s.Theme, d).lists) {
		if p.panel == v.panel {
			v.scroll.SetSize(v.reading(s.Theme, d, kit.Inner(p.at)))
		}
	}
}

// choose marks a list, from its top.
func (v *View) choose(p panel) {
	v.panel, v.scroll, v.row = p, kit.Scroll{}, -1
}

// show shows one phase alone, or all; the walk goes to the nearest coil of it.
func (v *View) show(s *session.Session, d *sheet, phase int) {
	if d.plan != nil && phase > d.plan.Spec().Phases {
		s.Say("this stator has one phase")
		return
	}
	v.phase = phase
	if len(d.steps) > 0 && !v.shown(d.steps[v.step].Phase) {
		v.walk(d, -1, 1)
	}
}

// shown reports whether a phase, from 0, is shown.
func (v *View) shown(phase int) bool { return v.phase == 0 || v.phase == phase+1 }

// walk goes along the wire from a step to the next that is shown, forward or back.
func (v *View) walk(d *sheet, from, by int) {
	for at := from + by; at >= 0 && at < len(d.steps); at += by {
		if v.shown(d.steps[at].Phase) {
			v.step = at
			return
		}
	}
}

// list moves in the list that is marked.
func (v *View) list(d *sheet, by int) {
	switch v.panel {
	case coilsPanel:
		for range max(by, -by) {
			v.walk(d, v.step, max(-1, min(by, 1)))
		}
	case spansPanel:
		v.row = max(0, min(len(d.spans)+len(d.circuits)-1, v.marked(d)+by))
	default:
		v.scroll.By(by)
	}
}
