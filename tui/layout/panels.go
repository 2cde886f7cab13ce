package layout

import (
	"slices"

	"slotwright/tui/kit"
	"slotwright/tui/session"
)

// panel is one of the lists under the picture.
type panel int

const (
	coilsPanel panel = iota
	leadsPanel
	joinsPanel
	spansPanel
	factorsPanel
	remarksPanel
	panelCount
)

var panelNames = [panelCount]string{"Coils", "Leads", "Joins", "Spans and circuits", "Factors", "Remarks"}

var panelHelp = [panelCount]string{
	"every coil in the order of winding.", "what comes out and what meets inside.", "every joint from coil to coil.",
	"what another span or number of circuits costs and saves.", "harmonics, slot pair, balance of the phases.",
	"what to know of this layout before winding it, with sources.",
}

// String is the panel's heading; its first letter is its key.
func (p panel) String() string { return panelNames[p] }

// byWeight is the panels in the order in which they get room.
var byWeight = []panel{coilsPanel, leadsPanel, spansPanel, joinsPanel, factorsPanel, remarksPanel}

// Minimum width and height of a list where several are together.
const (
	panelW = 56
	panelH = 11
)

// placed is a list and its rectangle.
type placed struct {
	panel panel
	at    kit.Rect
}

// arranged is as many of the lists as fit, the chosen one among them.
func (v *View) arranged(r kit.Rect) []placed {
	columns := max(1, min(3, r.W/panelW))
	rows := max(1, min(6/columns, r.H/panelH))
	chosen := slices.Clone(byWeight[:columns*rows])
	if !slices.Contains(chosen, v.panel) {
		chosen[len(chosen)-1] = v.panel
	}
	if len(chosen) == 1 {
		return []placed{{v.panel, r}}
	}
	slices.Sort(chosen)
	var list []placed
	for _, row := range r.Rows(0, slices.Repeat([]int{1}, rows)...) {
		for _, at := range row.Columns(0, slices.Repeat([]int{1}, columns)...) {
			list = append(list, placed{chosen[len(list)], at})
		}
	}
	return list
}

// allLists reports whether the screen has room for every list whatever the picture takes.
func (v *View) allLists() bool {
	return v.at.W >= 3*panelW && v.leastPanels(v.at.H) >= 2*panelH
}

// drawPanel draws one list in its box.
func (v *View) drawPanel(s *session.Session, d *sheet, p panel, r kit.Rect) kit.Block {
	t, in := s.Theme, kit.Inner(r)
	box := kit.Panel{Title: p.String(), Focused: p == v.panel}
	if box.Focused {
		box.Note = "c l j s f r: other lists"
		if in.W >= 74 {
			box.Note = "c coils l leads j joins s spans f factors r remarks"
		}
		if d.plan == nil {
			box.Note = ""
		}
	}
	var lines []string
	switch p {
	case coilsPanel:
		lines = v.coilLines(t, d, in.W, in.H)
	case joinsPanel:
		lines = v.joinLines(t, d, p, in.W, in.H)
	case spansPanel:
		lines = v.spanLines(s, d, in.W, in.H)
	default:
		lines = v.scrolled(t, textLines(t, d, p, textWidth(in.W)), p, in.W, in.H)
	}
	return box.Draw(t, r, lines)
}

// textWidth leaves the columns of the scroll bar free, whether it shows or not.
func textWidth(w int) int { return max(1, w-2) }

// textLines is a list that is a text.
func textLines(t kit.Theme, d *sheet, p panel, w int) []string {
	switch p {
	case leadsPanel:
		return leadLines(t, d, w)
	case factorsPanel:
		return factorLines(t, d, w)
	default:
		return remarkLines(t, d, w)
	}
}

// reading is how many lines of the marked list are visible in a box, and how many there are. The joins
// scroll by a line that is kept visible: any of them can be it.
func (v *View) reading(t kit.Theme, d *sheet, in kit.Rect) (h, total int) {
	switch v.panel {
	case joinsPanel:
		return 1, len(v.joins(d))
	case coilsPanel, spansPanel: // these follow a mark of their own
		return 0, 0
	}
	return in.H, len(textLines(t, d, v.panel, textWidth(in.W)))
}

// scrolled is a list at its scroll position.
func (v *View) scrolled(t kit.Theme, lines []string, p panel, w, h int) []string {
	if p != v.panel {
		return kit.Scroll{}.Window(t, lines, w, h)
	}
	return v.scroll.Window(t, lines, w, h)
}

// under is a table whose body scrolls under its head with a line kept visible.
func under(t kit.Theme, table kit.Table, focus, w, h int) []string {
	room := w
	if head := len(table.Head(t, w)); len(table.Rows)+head > h {
		room = textWidth(w)
	}
	head := table.Head(t, room)
	return append(head, kit.Window(t, table.Body(t, room), focus, w, max(0, h-len(head)))...)
}
