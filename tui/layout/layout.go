// Package layout is the layout screen: the stator unrolled with its coils, the walk
// along the wire coil by coil, joins and leads, and what another span would give.
package layout

import (
	"slotwright/tui/kit"
	"slotwright/tui/session"

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
	// scroll is how far the chosen panel is read.
	scroll kit.Scroll
	// left is the first slot in sight, from 0, where not all slots are.
	left int
	kept sheet
}

// New is the screen on the first coil.
func New() *View { return &View{row: -1} }

// Name stands on the tab.
func (v *View) Name() string { return "Layout" }

// Typing is always false: nothing is typed here.
func (v *View) Typing(*session.Session) bool { return false }

// Bindings are the keys of the screen.
func (v *View) Bindings(*session.Session) []kit.Binding {
	if v.panel == spansPanel {
		return append(bindings[:len(bindings):len(bindings)], setBinding)
	}
	return bindings
}

var setBinding = kit.Binding{ID: "set", Keys: []string{"enter"}, Label: "take it", Help: "Give the chosen trial the marked span or number of circuits.", Group: "Spans and circuits"}

var bindings = []kit.Binding{
	{ID: "next", Keys: []string{"right", "n"}, Label: "next coil", Help: "The next coil along the wire.", Group: "Walking along the wire"},
	{ID: "previous", Keys: []string{"left", "p"}, Label: "before", Help: "The coil before.", Group: "Walking along the wire"},
	{ID: "first", Keys: []string{"home"}, Help: "The first coil of what is shown.", Group: "Walking along the wire"},
	{ID: "last", Keys: []string{"end"}, Help: "The last coil of what is shown.", Group: "Walking along the wire"},
	{ID: "up", Keys: []string{"up"}, Help: "Up in the list that is marked.", Group: "Lists", Hidden: true},
	{ID: "down", Keys: []string{"down"}, Help: "Down in the list that is marked.", Group: "Lists", Hidden: true},
	{ID: "pgup", Keys: []string{"pgup"}, Help: "Ten lines up.", Group: "Lists", Hidden: true},
	{ID: "pgdown", Keys: []string{"pgdown"}, Help: "Ten lines down.", Group: "Lists", Hidden: true},
	{ID: "panel+", Keys: []string{"v"}, Label: "next list", Help: "Mark the next list: coils, leads, joins, spans, factors, remarks.", Group: "Lists"},
	{ID: "panel-", Keys: []string{"V"}, Help: "Mark the list before.", Group: "Lists"},
	{ID: "0", Keys: []string{"0"}, Label: "all", Help: "Show all phases.", Group: "Phases"},
	{ID: "1", Keys: []string{"1"}, Label: "U", Help: "Show phase U alone and walk in it.", Group: "Phases"},
	{ID: "2", Keys: []string{"2"}, Label: "V", Help: "Show phase V alone and walk in it.", Group: "Phases"},
	{ID: "3", Keys: []string{"3"}, Label: "W", Help: "Show phase W alone and walk in it.", Group: "Phases"},
	{ID: "c", Keys: []string{"c"}, Help: "Coils: every coil in the order of winding.", Group: "Lists"},
	{ID: "l", Keys: []string{"l"}, Label: "leads", Help: "Leads: what comes out and what meets inside.", Group: "Lists"},
	{ID: "j", Keys: []string{"j"}, Label: "joins", Help: "Joins: every joint from coil to coil.", Group: "Lists"},
	{ID: "s", Keys: []string{"s"}, Label: "spans", Help: "Spans: what another span or number of circuits costs and saves.", Group: "Lists"},
	{ID: "f", Keys: []string{"f"}, Label: "factors", Help: "Factors: harmonics, slot pair, balance of the phases.", Group: "Lists"},
	{ID: "r", Keys: []string{"r"}, Label: "remarks", Help: "Remarks: what to know of this layout before winding it, with sources.", Group: "Lists"},
	{ID: "trial-", Keys: []string{"["}, Help: "The trial before.", Group: "Trials"},
	{ID: "trial+", Keys: []string{"]"}, Label: "next trial", Help: "The next trial.", Group: "Trials"},
}

// panelOfKey are the keys that mark a list.
var panelOfKey = map[string]panel{
	"c": coilsPanel, "l": leadsPanel, "j": joinsPanel, "s": spansPanel, "f": factorsPanel, "r": remarksPanel,
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	d := v.sheet(s)
	if d.plan == nil {
		v.panel = spansPanel // the only list there is
	}
	id := kit.Lookup(v.Bindings(s), msg.String())
	if p, ok := panelOfKey[id]; ok {
		v.choose(p)
		return true
	}
	switch id {
	case "":
		return false
	case "next", "previous", "first", "last":
		v.walk(d, id)
	case "up", "down", "pgup", "pgdown":
		v.list(d, id)
	case "panel+":
		v.choose((v.panel + 1) % panelCount)
	case "panel-":
		v.choose((v.panel + panelCount - 1) % panelCount)
	case "0", "1", "2", "3":
		v.show(s, d, int(id[0]-'0'))
	case "trial-":
		s.Trial = max(0, s.Trial-1)
	case "trial+":
		s.Trial = max(0, min(len(s.Outcome().Trials)-1, s.Trial+1))
	case "set":
		v.set(s, d)
	}
	return true
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
		v.walk(d, "first")
	}
}

// shown reports whether a phase, from 0, is shown.
func (v *View) shown(phase int) bool { return v.phase == 0 || v.phase == phase+1 }

// walk goes along the wire through what is shown.
func (v *View) walk(d *sheet, id string) {
	at, by := v.step, 1
	switch id {
	case "previous":
		by = -1
	case "first":
		at = -1
	case "last":
		at, by = len(d.steps), -1
	}
	for at += by; at >= 0 && at < len(d.steps); at += by {
		if v.shown(d.steps[at].Phase) {
			v.step = at
			return
		}
	}
}

// page is how far pgup and pgdown go.
const page = 10

// list moves in the list that is marked.
func (v *View) list(d *sheet, id string) {
	by := map[string]int{"up": -1, "down": 1, "pgup": -page, "pgdown": page}[id]
	switch v.panel {
	case coilsPanel:
		way := "next"
		if by < 0 {
			way, by = "previous", -by
		}
		for range by {
			v.walk(d, way)
		}
	case spansPanel:
		v.row = max(0, min(len(d.spans)+len(d.circuits)-1, v.marked(d)+by))
	default:
		v.scroll.Top = max(0, v.scroll.Top+by)
	}
}
