package layout

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/winding/layout"
)

// orders are the harmonics shown, with what each does.
var orders = []struct {
	n           int
	what, short string
}{
	{1, "the working wave: volts go by it", "volts go by it"},
	{3, "drives a current round a delta", "round a delta"},
	{5, "shape of the wave", "wave shape"},
	{7, "shape of the wave", "wave shape"},
	{11, "shape of the wave", "wave shape"},
	{13, "shape of the wave", "wave shape"},
}

// factorLines are the winding factors, the slot pair and the balance.
func factorLines(t kit.Theme, d *sheet, w int) []string {
	table := kit.Table{Columns: []kit.Column{
		{Head: "harmonic", Align: kit.Right}, {Head: "factor", Align: kit.Right, Role: kit.Value}, {Head: "of span", Align: kit.Right}, {Head: "of belt", Align: kit.Right}, {Head: "", Shrink: true, Role: kit.Dim},
	}}
	for _, o := range orders {
		if w < roomyW {
			o.what = o.short
		}
		if o.n == 3 && d.plan.Spec().Phases != 3 {
			o.what = orders[2].short
		}
		table.Rows = append(table.Rows, kit.TableRow{Cells: []kit.Cell{
			{Text: fmt.Sprint(o.n)}, {Text: fmt.Sprintf("%.4f", d.plan.Factor(o.n))},
			{Text: fmt.Sprintf("%.4f", d.plan.PitchFactor(o.n))}, {Text: fmt.Sprintf("%.4f", d.plan.BeltFactor(o.n))}, {Text: o.what},
		}})
	}
	lines := table.Lines(t, w)
	third := " The third drives a current round a delta; star has no path for it."
	if d.plan.Spec().Phases != 3 {
		third = ""
	}
	lines = append(lines, t.WrapPaint(kit.Hint, "A factor of 1 lets all of that wave of the field into the volts, 0 none of it. It is what the span lets through times what spreading a phase over its belt of slots does."+third, w)...)
	lines = append(lines, "")
	p := d.slotPair
	felt := "; no wave of an evenly poled rotor fits these, so they hardly show in the volts"
	if p.Felt {
		felt = "; they show in the volts as ripple, whatever the span; skewing by a slot takes them out"
	}
	lines = append(lines, t.Wrap(fmt.Sprintf("Slot pair: Q ± p = %d and %d pole pairs, harmonics %.4g and %.4g, factor %.4f as the working wave%s.",
		p.LowerPairs, p.UpperPairs, p.LowerOrder, p.UpperOrder, p.Kw, felt), w)...)
	return append(append(lines, ""), balanceLines(t, d, w)...)
}

// balanceLines say how equal the phases and the circuits are.
func balanceLines(t kit.Theme, d *sheet, w int) []string {
	b := d.balance
	if d.plan.Spec().Phases == 1 {
		return t.Wrap("Balance: one phase, nothing to balance.", w)
	}
	if b.Equal {
		text := "Balance: the phases are equal in volts and stand 120° apart."
		if d.plan.Spec().Phases == 2 {
			text = strings.Replace(text, "120°", "90°", 1)
		}
		if d.plan.Circuits() > 1 {
			text += " The circuits of each phase are equal."
		}
		return t.Wrap(text, w)
	}
	lines := t.WrapPaint(kit.Warning, t.Mark(kit.Warning)+" Balance: the phases are not equal.", w)
	for _, p := range b.Phases {
		lines = append(lines, t.Fit(t.Text(fmt.Sprintf("  %s  volts %s %% off the mean, at %.2f°, %.2f° out of place", p.Name, signed(p.SizePercent), p.AngleDeg, p.AngleErrorDeg)), w))
	}
	if b.WorstCircuitPercent > 0 {
		lines = append(lines, t.Wrap(fmt.Sprintf("  circuits of a phase differ by up to %.2g %%", b.WorstCircuitPercent), w)...)
	}
	return lines
}

// remarkLines are the notes with their sources, cautions first, and what the job
// calls out of this layout.
func remarkLines(t kit.Theme, d *sheet, w int) []string {
	var lines []string
	for _, f := range d.findings {
		text := f.Text
		if f.Fix != "" {
			text += " → " + f.Fix
		}
		lines = append(lines, t.Hang(t.PaintMark(kit.Warning)+" ", kit.Warning, text, w)...)
	}
	for _, caution := range [2]bool{true, false} {
		for _, n := range d.notes {
			if n.Caution != caution {
				continue
			}
			mark := t.Glyphs().Bullet
			if caution {
				mark = t.PaintMark(kit.Warning)
			}
			lines = append(lines, t.Hang(mark+" ", kit.Plain, n.Topic+": "+n.Text+".", w)...)
			lines = append(lines, t.Hang("  ", kit.Dim, "Source: "+n.Source+".", w)...)
		}
	}
	for _, text := range append(reading(d.plan), wordsOf(d)...) {
		lines = append(lines, t.Hang(t.Glyphs().Bullet+" ", kit.Plain, text, w)...)
	}
	return lines
}

// reading is how to read the picture.
func reading(l *layout.Layout) []string {
	texts := []string{
		"the picture: the stator cut open and laid flat, seen from the end where the coils are joined; slot numbers go up clockwise. A coil at the edge goes on at the other end.",
		"the signs: + is a side where the current of its phase goes into the core, away from you, − where it comes back, when it enters at the lead with a 1.",
	}
	switch names := sideRows(l); names[0] {
	case "top":
		texts = append(texts, "top lies at the mouth, bottom under it; the bottom side goes in first.")
	case "left":
		texts = append(texts, "left and right: two coils lie side by side in each slot, each against its own tooth.")
	}
	return texts
}
