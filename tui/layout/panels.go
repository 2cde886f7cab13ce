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

// String is the panel's heading; its first letter is its key.
func (p panel) String() string { return panelNames[p] }

// byWeight is the panels in the order in which they get room.
var byWeight = []panel{coilsPanel, leadsPanel, spansPanel, joinsPanel, factorsPanel, remarksPanel}

// Least width and height of a list where several stand together.
const (
	panelW = 56
	panelH = 11
)

// panels draws as many of the lists as there is room for, the chosen one among them.
func (v *View) panels(s *session.Session, d *sheet, r kit.Rect) []kit.Block {
	columns := max(1, min(3, r.W/panelW))
	rows := max(1, min(6/columns, r.H/panelH))
	chosen := slices.Clone(byWeight[:columns*rows])
	if !slices.Contains(chosen, v.panel) {
		chosen[len(chosen)-1] = v.panel
	}
	if len(chosen) == 1 {
		return []kit.Block{v.drawPanel(s, d, v.panel, r)}
	}
	slices.Sort(chosen)
	var blocks []kit.Block
	for i, row := range r.Rows(0, slices.Repeat([]int{1}, rows)...) {
		for j, at := range row.Columns(0, slices.Repeat([]int{1}, columns)...) {
			blocks = append(blocks, v.drawPanel(s, d, chosen[i*columns+j], at))
		}
	}
	return blocks
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
	case leadsPanel:
		lines = v.scrolled(t, leadLines(t, d, textWidth(in.W)), p, in.W, in.H)
	case factorsPanel:
		lines = v.scrolled(t, factorLines(t, d, textWidth(in.W)), p, in.W, in.H)
	case remarksPanel:
		lines = v.scrolled(t, remarkLines(t, d, textWidth(in.W)), p, in.W, in.H)
	}
	return box.Draw(t, r, lines)
}

// textWidth keeps the columns of the scroll bar free, whether it shows or not.
func textWidth(w int) int { return max(1, w-2) }

// scrolled is a list read from where the person has scrolled it to.
func (v *View) scrolled(t kit.Theme, lines []string, p panel, w, h int) []string {
	if p != v.panel {
		return kit.Scroll{}.Window(t, lines, w, h)
	}
	v.scroll.Top = max(0, min(v.scroll.Top, len(lines)-h))
	return v.scroll.Window(t, lines, w, h)
}

// under is a table whose body scrolls under its head with a line kept in sight.
func under(t kit.Theme, table kit.Table, focus, w, h int) []string {
	room := w
	if head := len(table.Head(t, w)); len(table.Rows)+head > h {
		room = textWidth(w)
	}
	head := table.Head(t, room)
	return append(head, kit.Window(t, table.Body(t, room), focus, w, max(0, h-len(head)))...)
}
