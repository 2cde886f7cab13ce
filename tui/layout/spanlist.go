package layout

import (
	"fmt"
	"math"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// marked is the marked row of the comparison: the present span until it is moved, or
// the strongest one when the present one makes no layout.
func (v *View) marked(d *sheet) int {
	if v.row >= 0 {
		return min(v.row, max(0, len(d.spans)+len(d.circuits)-1))
	}
	for i, sp := range d.spans {
		if sp.Present {
			return i
		}
	}
	best := 0
	for i, sp := range d.spans {
		if sp.Kw1 > d.spans[best].Kw1+1e-9 {
			best = i
		}
	}
	return best
}

// set gives the trial the marked span or number of circuits.
func (v *View) set(s *session.Session, d *sheet) {
	i := v.marked(d)
	field, value := "span", 0
	switch {
	case i < len(d.spans):
		value = d.spans[i].Span
	case i-len(d.spans) < len(d.circuits):
		field, value = "circuits", d.circuits[i-len(d.spans)].Circuits
	default:
		return
	}
	s.Edit(s.Document().Set(trialPath(s, field), fmt.Sprint(value), s.Units))
	s.Say(fmt.Sprintf("trial %s now has %s %d; u takes it back", kit.Clean(d.name), field, value))
}

// spanLines is the comparison of spans and of circuits over what the marked row means.
func (v *View) spanLines(s *session.Session, d *sheet, w, h int) []string {
	t := s.Theme
	if len(d.spans) == 0 && len(d.circuits) == 0 {
		return t.Wrap("No span works with these slots, poles and layers.", w)
	}
	mark := v.marked(d)
	words := t.WrapPaint(kit.Hint, v.meaning(s, d, mark), w)
	if most := max(1, min(h-5, max(3, h/3))); len(words) > most {
		words = words[:most]
	}
	if h >= 16 {
		words = append(words, t.WrapPaint(kit.Hint, "Volts and wire: with the same turns. Same volts: the wire it takes with turns that bring the volts back.", w)...)
	}
	var lines []string
	room := h - len(words)
	if mark < len(d.spans) || len(d.spans) == 0 || room > len(d.spans)+len(d.circuits)+3 {
		n := min(len(d.spans)+1, room)
		lines = under(t, v.spanTable(t, d, w), mark, w, n)
		room -= n
	}
	if room > 2 && len(d.circuits) > 0 {
		if len(lines) > 0 {
			lines, room = append(lines, ""), room-1
		}
		lines = append(lines, under(t, aired(t, v.circuitTable(d), w), mark-len(d.spans), w, min(len(d.circuits)+1, room))...)
	}
	for len(lines) < h-len(words) {
		lines = append(lines, "")
	}
	return append(lines, words...)
}

// spanTable is one row per span; the factors of higher harmonics and the circuits only where they fit
// whole.
func (v *View) spanTable(t kit.Theme, d *sheet, w int) kit.Table {
	table := v.wholeSpanTable(d, w)
	for least := 7; len(table.Columns) > least && aired(t, table, w).Width(t)+2 > w; {
		table.Columns = table.Columns[:len(table.Columns)-1]
	}
	return aired(t, table, w)
}

// wholeSpanTable is the table with everything that might be shown in w cells.
func (v *View) wholeSpanTable(d *sheet, w int) kit.Table {
	right := func(head string) kit.Column { return kit.Column{Head: head, Align: kit.Right} }
	table := kit.Table{Margin: true, Columns: []kit.Column{
		{Head: "span", Align: kit.Right, Role: kit.Value}, right("pitch"), right("volts"), right("wire"), right("same volts"), right("kw1"), right("kw3"),
	}}
	if w >= roomyW {
		table.Columns = append(table.Columns, right("kw5"), right("kw7"), kit.Column{Head: "circuits"})
	}
	for i, sp := range d.spans {
		now := kit.Cell{Text: fmt.Sprint(sp.Span)}
		if sp.Present {
			now.Mark = kit.Chosen
		}
		table.Rows = append(table.Rows, kit.TableRow{Focus: v.panel == spansPanel && i == v.marked(d), Cells: []kit.Cell{
			now, {Text: fmt.Sprintf("%.0f %%", sp.PitchPercent)},
			change(sp.VoltsPercent, sp.Present), change(sp.WirePercent, sp.Present), change(sp.SameVoltsPercent, sp.Present),
			factor(sp.Kw1), factor(sp.Kw3), factor(sp.Kw5), factor(sp.Kw7), {Text: listed(sp.Circuits)},
		}})
	}
	return table
}

// circuitTable is one row per number of circuits.
func (v *View) circuitTable(d *sheet) kit.Table {
	table := kit.Table{Margin: true, Columns: []kit.Column{
		{Head: "circuits", Align: kit.Right, Role: kit.Value}, {Head: "volts", Align: kit.Right}, {Head: "amps", Align: kit.Right},
		{Head: "ohms", Align: kit.Right}, {Head: "turns needed", Align: kit.Right}, {Head: "joins", Align: kit.Right},
	}}
	for i, c := range d.circuits {
		now := kit.Cell{Text: fmt.Sprint(c.Circuits)}
		if c.Present {
			now.Mark = kit.Chosen
		}
		turns := kit.Cell{Text: session.Dash}
		if c.SameVoltsTurns.Known() {
			turns.Text = fmt.Sprintf("%.4g", c.SameVoltsTurns.Value)
		}
		table.Rows = append(table.Rows, kit.TableRow{Focus: v.panel == spansPanel && len(d.spans)+i == v.marked(d), Cells: []kit.Cell{
			now, percent(c.VoltsPercent, c.Present), percent(c.AmpsPercent, c.Present), percent(c.OhmsPercent, c.Present),
			turns, {Text: fmt.Sprint(c.Joins)},
		}})
	}
	return table
}

// change is a percentage that may be missing.
func change(f quantity.Figure, present bool) kit.Cell {
	if !f.Known() {
		return kit.Cell{Text: session.Dash, Role: kit.Dim}
	}
	return percent(f.Value, present)
}

// percent is a change with its sign.
func percent(v float64, present bool) kit.Cell {
	switch {
	case present:
		return kit.Cell{Text: "now"}
	case math.Abs(v) < 0.05:
		return kit.Cell{Text: "same"}
	}
	return kit.Cell{Text: signed(v) + " %"}
}

// signed is a change with its sign, to a tenth below ten.
func signed(v float64) string {
	digits := 1
	if math.Abs(v) >= 10 {
		digits = 0
	}
	return strings.Replace(fmt.Sprintf("%+.*f", digits, v), "-", "−", 1)
}

func factor(k float64) kit.Cell { return kit.Cell{Text: fmt.Sprintf("%.4f", k)} }

// listed is "1, 2, 4".
func listed(list []int) string {
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(list), " ", ", "), "[]")
}

// meaning is the marked row in words.
func (v *View) meaning(s *session.Session, d *sheet, mark int) string {
	if mark >= len(d.spans) {
		return circuitsMeaning(d, d.circuits[mark-len(d.spans)])
	}
	sp := d.spans[mark]
	text := fmt.Sprintf("Span %d is slot 1 to %d", sp.Span, sp.Span+1)
	if sp.MeanTurnMM.Known() {
		text += ", mean turn " + s.Text(sp.MeanTurnMM, quantity.Millimetres, 3)
		if sp.MeanTurnMM.Origin.Weak() {
			text += " (a guess)"
		}
	}
	switch {
	case sp.Present:
		return text + ", as now" + oneShorter(d, mark)
	case !sp.VoltsPercent.Known():
		return text + fmt.Sprintf(", kw1 %.4f.", sp.Kw1)
	}
	return text + ": " + spanChange(sp)
}

// spanChange is what a span costs and saves, in words.
func spanChange(sp winding.SpanChoice) string {
	text := "volts " + inWords(sp.VoltsPercent.Value)
	if !sp.WirePercent.Known() {
		return text + ". Wire: " + sp.WirePercent.Why + "."
	}
	return text + ", wire and ohms " + inWords(sp.WirePercent.Value) +
		"; with turns for the same volts, wire " + inWords(sp.SameVoltsPercent.Value) + "."
}

// oneShorter is what one slot less than the present span, in row mark, would do.
func oneShorter(d *sheet, mark int) string {
	if mark == 0 || d.spans[mark-1].Span != d.spans[mark].Span-1 {
		return "; one slot shorter makes no layout."
	}
	return ". One slot shorter: " + spanChange(d.spans[mark-1])
}

// circuitsMeaning is a number of circuits in words.
func circuitsMeaning(d *sheet, c winding.CircuitsChoice) string {
	text := text.Count(c.Circuits, "circuit") + " a phase"
	if c.Present {
		return text + ", as now. The others are against it, with the same turns and wire; turns needed are those of a coil for the present volts."
	}
	text += ": volts " + inWords(c.VoltsPercent) + ", amps at the same amps per mm² " + inWords(c.AmpsPercent) +
		", ohms of a phase " + inWords(c.OhmsPercent)
	if c.SameVoltsTurns.Known() {
		text += fmt.Sprintf("; %.4g turns a coil give the present volts", c.SameVoltsTurns.Value)
	}
	return text + "."
}

// inWords is a change as a person says it.
func inWords(v float64) string {
	text := strings.TrimLeft(signed(v), "+−") + " %"
	switch {
	case math.Abs(v) < 0.05:
		return "the same"
	case v < 0:
		return text + " less"
	default:
		return text + " more"
	}
}
