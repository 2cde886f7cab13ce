package layout

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/layout"
)

// coilLines is every coil in the order of winding, the current one marked. Where not every word fits,
// the number of the step is dropped first, as the sentence above has it; then words are cut.
func (v *View) coilLines(t kit.Theme, d *sheet, w, h int) []string {
	for _, form := range []coilForm{{step: true, words: true}, {words: true}, {step: true}} {
		if table, focus := v.coilTable(t, d, w, form); table.Width(t)+2 <= w || !form.words {
			return under(t, table, focus, w, h)
		}
	}
	return nil
}

// coilForm is how much is said of a coil in its row: the number of the step, whole words.
type coilForm struct{ step, words bool }

// coilTable is the coils in a form, and the row that is marked.
func (v *View) coilTable(t kit.Theme, d *sheet, w int, form coilForm) (table kit.Table, focus int) {
	roomy := w >= roomyW
	table = kit.Table{Margin: true, Columns: []kit.Column{
		{Head: "step", Align: kit.Right}, {Head: "coil", Align: kit.Right, Role: kit.Value}, {Head: "phase"},
		{Head: "in", Align: kit.Right}, {Head: "out", Align: kit.Right}, {Head: "way"}, {Head: "then", Shrink: true, Min: 8},
	}}
	if roomy {
		table.Columns = append(table.Columns, kit.Column{Head: "turns", Align: kit.Right})
	}
	if roomy && d.plan.Circuits() > 1 {
		table.Columns = append(table.Columns, kit.Column{Head: "circuit", Align: kit.Right})
	}
	for i, step := range d.steps {
		if !v.shown(step.Phase) {
			continue
		}
		if i == v.step {
			focus = len(table.Rows)
		}
		marked := v.panel == coilsPanel
		table.Rows = append(table.Rows, kit.TableRow{Focus: i == v.step && marked, Follows: i == v.step && !marked, Cells: coilCells(t, d, step, w, form.words)})
	}
	if !form.step {
		table.Columns = table.Columns[1:]
		for i := range table.Rows {
			table.Rows[i].Cells = table.Rows[i].Cells[1:]
		}
	}
	return aired(t, table, w), focus
}

// roomyW is the width from which a table has room for all its columns.
const roomyW = 72

// aired is a table with two cells between its columns where w, less the scroll bar, allows it, else
// with one.
func aired(t kit.Theme, table kit.Table, w int) kit.Table {
	if table.Gap = 2; table.Width(t) > textWidth(w) {
		table.Gap = 1
	}
	return table
}

// coilCells is one step as a row.
func coilCells(t kit.Theme, d *sheet, step layout.Step, w int, words bool) []kit.Cell {
	roomy := w >= roomyW
	way, begins := "clockw.", step.Name
	switch {
	case step.Clockwise && words:
		way = "clockwise"
	case words:
		way = "anticlockwise"
	case !step.Clockwise:
		way = "anticl."
	}
	if step.Lead != "" {
		begins = step.Lead
	}
	then := fmt.Sprintf("%s to %s %d", step.Leave.End, step.Next.End, step.Next.Coil)
	if step.EndLead != "" {
		then = fmt.Sprintf("%s is %s", step.Leave.End, step.EndLead)
	} else if roomy {
		then = fmt.Sprintf("%s to %s of coil %d", step.Leave.End, step.Next.End, step.Next.Coil)
	}
	cells := []kit.Cell{
		{Text: fmt.Sprint(step.Number)}, {Text: fmt.Sprint(step.Coil)},
		{Text: begins + " " + penOf(t, step.Phase).across, Role: kit.Phase(step.Phase)},
		{Text: fmt.Sprint(step.From)}, {Text: fmt.Sprint(step.To)}, {Text: way}, {Text: then},
	}
	if roomy {
		turns := fmt.Sprint(step.Turns)
		if !d.turnsKnown {
			turns = session.Dash
		}
		cells = append(cells, kit.Cell{Text: turns})
	}
	return append(cells, kit.Cell{Text: fmt.Sprintf("%d of %d", step.Circuit, step.Circuits)})
}

// joinLines is every joint from coil to coil; the one after the current coil is marked.
func (v *View) joinLines(t kit.Theme, d *sheet, p panel, w, h int) []string {
	if len(d.wiring.Joins) == 0 {
		return t.Wrap("No joins from coil to coil: every coil is a circuit by itself, and both its ends go to the leads.", w)
	}
	step, coil, _ := v.current(d)
	table := kit.Table{Margin: true, Columns: []kit.Column{
		{Head: "", Align: kit.Right, Role: kit.Dim}, {Head: "phase"}, {Head: "join coil end", Shrink: true}, {Head: "with coil end", Shrink: true},
	}}
	if d.plan.Spec().Kind == layout.Wave {
		table.Columns[2].Head, table.Columns[3].Head = "coil end", "runs on to"
	}
	focus, exact := 0, false
	for _, i := range v.joins(d) {
		j := d.wiring.Joins[i]
		c := d.coils[j.From.Coil]
		here := j.From.Coil == coil.Number && step.EndLead == ""
		if here || (!exact && j.To.Coil == coil.Number) {
			focus, exact = len(table.Rows), here
		}
		table.Rows = append(table.Rows, kit.TableRow{Focus: here && p == v.panel, Follows: here && p != v.panel, Cells: []kit.Cell{
			{Text: fmt.Sprint(i + 1)}, {Text: d.plan.PhaseName(c.Set, c.Phase), Role: kit.Phase(c.Phase)},
			{Text: endText(j.From, w)}, {Text: endText(j.To, w)},
		}})
	}
	if p == v.panel && v.scroll.Top > 0 {
		focus = v.scroll.Top
	}
	return under(t, aired(t, table, w), focus, w, h)
}

// joins are the joints shown, by their index in the list of all.
func (v *View) joins(d *sheet) []int {
	var list []int
	for i, j := range d.wiring.Joins {
		if v.shown(d.coils[j.From.Coil].Phase) {
			list = append(list, i)
		}
	}
	return list
}

// endText is an end of a coil, abbreviated where room is short.
func endText(e layout.EndRef, w int) string {
	if w >= roomyW {
		return e.String()
	}
	return fmt.Sprintf("%s %d (slot %d)", e.End, e.Coil, e.Slot)
}

// leadLines say which ends come out as leads, and which meet inside.
func leadLines(t kit.Theme, d *sheet, w int) []string {
	var lines []string
	meets := map[string]layout.Node{}
	for _, n := range d.wiring.Nodes {
		for _, l := range n.Leads {
			meets[l] = n
		}
	}
	for _, l := range d.wiring.Leads {
		ends := make([]string, len(l.Ends))
		for i, e := range l.Ends {
			ends[i] = e.String()
		}
		goes := leadGoes(d, l, meets[l.Name])
		lines = append(lines, t.Hang(t.Paint(kit.Phase(l.Phase), l.Name)+"  ", kit.Plain, goes+": "+strings.Join(ends, ", "), w)...)
	}
	lines = append(lines, "")
	for _, n := range d.wiring.Nodes {
		lines = append(lines, t.Wrap(nodeText(d, n), w)...)
	}
	if d.plan.Spec().Sets == 2 {
		lines = append(lines, t.Wrap("The two sets are not joined with each other: each has its own bridge.", w)...)
	}
	if d.plan.Circuits() > 1 {
		lines = append(lines, t.Wrap(fmt.Sprintf("Each lead takes the ends of the %d circuits of its phase together. Check each circuit's ohms before joining them.", d.plan.Circuits()), w)...)
	}
	return append(lines, t.WrapPaint(kit.Hint, "1 is where the phase begins, 2 where it ends (IEC 60034-8). Sleeve and insulate every joint, also those inside.", w)...)
}

// leadGoes says where a lead goes: out, to the star point, to its partner in a delta.
func leadGoes(d *sheet, l layout.Lead, node layout.Node) string {
	switch {
	case len(node.Leads) == 0 || (d.connected == layout.Star && l.Out):
		return "comes out"
	case d.connected == layout.Star:
		return "goes to the star point"
	}
	partner := node.Leads[0]
	if partner == l.Name {
		partner = node.Leads[1]
	}
	if l.Out {
		return "comes out, joined with " + partner
	}
	return "is joined with " + partner
}

// nodeText is what meets in a star point or in a corner of a delta.
func nodeText(d *sheet, n layout.Node) string {
	if d.connected == layout.Delta {
		return n.Name + ": join " + strings.Join(n.Leads, " and ") + " and bring one cable out from here"
	}
	set := ""
	if d.plan.Spec().Sets == 2 {
		set = fmt.Sprintf(" of set %d", n.Set+1)
	}
	return n.Name + set + ": join " + strings.Join(n.Leads, ", ") + "; insulate it, nothing comes out"
}
