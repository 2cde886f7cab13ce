package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// sheetTwo is what is wanted once a coil is in: slots to check by, insulation to cut, the first run,
// what a reading that is off means, and what did not fit on sheet one.
func (w *writer) sheetTwo(t *winding.TrialOutcome, trial int, over []winding.Caution, spilled bool) [][]string {
	plan, why := w.b.Plan(trial)
	var blocks [][]string
	if spilled {
		blocks = append(blocks, w.block(func() { w.coils(trial, plan) }))
	}
	return append(blocks,
		w.block(func() { w.slotTable(plan, why) }),
		w.block(func() { w.cutList(t) }),
		w.block(func() { w.firstRun(t) }),
		w.block(func() { w.overCautions(over) }),
		w.block(func() { w.readingsOff(t) }),
	)
}

// slotTable is what lies in each slot, to check against when the coils are in.
func (w *writer) slotTable(plan *layout.Layout, why string) {
	if plan == nil {
		w.entry("SLOTS", notKnown(why))
		return
	}
	label, lie := "SLOTS", halves(plan)
	if w.flat() {
		label, lie = "GAPS", "between two coils lies a side of each."
	}
	way := "+ the wire of the phase goes away from the connection end, - it comes back"
	if w.flat() {
		way = "+ the wire of the phase goes to the middle, - it comes back to the rim"
	}
	w.entry(label, way+"; coil number; s its start, f its finish. "+title(lie))
	var rows []string
	wide := 0
	for n := 1; n <= plan.Spec().Slots; n++ {
		row := slotRow(plan, n)
		rows, wide = append(rows, row), max(wide, len(row))
	}
	columns := max(1, min(4, (w.wide+3)/(wide+3)))
	down := (len(rows) + columns - 1) / columns
	for r := range down {
		line := ""
		for c := r; c < len(rows); c += down {
			line = text.Pad(line, c/down*(wide+3)) + rows[c]
		}
		w.raw(line)
	}
}

func halves(plan *layout.Layout) string {
	if plan.Spec().Layers == 1 {
		return "each has its slot to itself."
	}
	return plan.SidesText()
}

// slotRow is the coil sides of a slot.
func slotRow(plan *layout.Layout, n int) string {
	row := fmt.Sprintf("[ ] %3d", n)
	sides := plan.Slot(n)
	if len(sides) == 0 {
		return row + "  empty"
	}
	for _, s := range sides {
		sign := "+"
		if s.Sign < 0 {
			sign = "-"
		}
		row += fmt.Sprintf("  %s%s %d%s", sign, plan.PhaseName(s.Set, s.Phase), s.Coil, s.End[:1])
	}
	return row
}

// cutList is the insulation.
func (w *writer) cutList(t *winding.TrialOutcome) {
	if len(t.Cuts) == 0 {
		w.entry("CUT", "insulation: the sizes need the coil list")
		return
	}
	unit := w.opt.Units.For(quantity.Millimetres)
	named := unit.Name
	if named == "in" {
		named = "inches" // "in in" reads twice
	}
	w.entry("CUT", "insulation, in "+named+". What stands out of the iron and what sleeves, papers and cord take are common practice, no source.")
	w.raw(fmt.Sprintf("          %-15s%7s%9s%9s%9s", "", "pieces", "long", "wide", "thick"))
	for _, c := range t.Cuts {
		pieces := "-"
		if c.Pieces > 0 {
			pieces = fmt.Sprint(c.Pieces)
		}
		note := "  " + c.Note
		if w.folded() {
			note = ""
		}
		w.raw(strings.TrimRight(fmt.Sprintf("      [ ] %s%7s%9s%9s%9s%s", text.Pad(c.Name, 15), pieces, size(c.LengthMM, unit), size(c.WidthMM, unit), size(c.ThickMM, unit), note), " "))
		if note == "" && c.Note != "" {
			w.more("    " + c.Note)
		}
	}
	for _, c := range t.Cuts {
		for _, f := range []quantity.Figure{c.LengthMM, c.WidthMM} {
			if !f.Known() && f.Why != winding.AsSold {
				w.more(c.Name + ": " + notKnown(f.Why))
				break
			}
		}
	}
}

// size is a length for scissors, or a dash.
func size(f quantity.Figure, u quantity.Unit) string {
	if !f.Known() {
		return "-"
	}
	return quantity.File.Value(u.From(f.Value), u, 3)
}

// firstRun is what to read when it first turns, with blanks for it.
func (w *writer) firstRun(t *winding.TrialOutcome) {
	m := &w.o.Machine
	with := "battery, fuse and ammeter"
	if load := w.job.Battery.Load; load != "" && load != "battery" {
		with = "its load and an ammeter"
	}
	w.entry("FIRST RUN", "with "+with+"; stand aside. Expected, then read:")
	line := func(what, expected, unit string) {
		if w.folded() {
			w.raw("      [ ] " + strings.TrimRight(text.Pad(w.clean(what), 30)+w.clean(expected), " "))
			w.raw("          ________ " + unit)
			return
		}
		w.raw(text.Pad("      [ ] "+text.Pad(w.clean(what), 30)+text.Pad(w.clean(expected), 18), 58) + "________ " + unit)
	}
	line("begins to charge at", w.expected(t.CutInRPM, quantity.RPM), "rpm")
	amps := []quantity.Figure{t.AmpsSlow, t.AmpsUsual, t.AmpsTop}
	for i := range min(2, len(m.Conditions)) {
		if m.Conditions[i].Same != "" {
			continue
		}
		expected := w.expected(amps[i], quantity.Amps)
		if rpm, told := t.DraggedTo(i); told {
			expected += fmt.Sprintf(", %.0f rpm", rpm)
		}
		line("net amps, "+w.opt.Units.Words(m.Conditions[i].Label), expected, "A at ____ rpm")
	}
	line("winding after an hour, usual", w.expected(t.HotUsualC, quantity.Celsius), w.opt.Units.For(quantity.Celsius).Name)
	line("ohms then, lead to lead", "", w.opt.Units.For(quantity.Ohms).Name)
}

// readingsOff is where to look when a reading is off, as on the screen.
func (w *writer) readingsOff(t *winding.TrialOutcome) {
	w.entry("IF OFF", "where to look (common practice, no source):")
	list := w.o.Signs(t)
	if !w.flat() {
		list = append(list, "To iron under the limit: dry it warm and read again; else a wire lies bare at a slot's end.")
	}
	for _, s := range append(list, "Begins to charge late, volts right: battery, diodes, cable. Hotter than said: less air; hotter by far, a short or drag: stop.") {
		w.hang("        - ", s)
	}
}

// overCautions is those that did not fit on sheet one.
func (w *writer) overCautions(list []winding.Caution) {
	for _, c := range list {
		w.caution(c)
	}
}
