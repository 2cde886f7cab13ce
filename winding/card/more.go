package card

import (
	"slotwright/winding"
)

// moreFigures sets the other figures side by side too.
func (w *writer) moreFigures() {
	w.section("MORE FIGURES, SIDE BY SIDE")
	w.ifNoTrials()
	if len(w.o.Trials) > 0 {
		w.names("")
		w.gap()
		for _, o := range winding.Outputs() {
			if o.Show == winding.InReport && !o.Again(&w.o.Machine) {
				w.moreRow(&o)
			}
		}
	}
	w.flush()
}

// moreRow is one of them; a row that no trial knows is named at the end only.
func (w *writer) moreRow(m *winding.Output) {
	u := w.opt.Units.For(m.DimFor(w.windy()))
	cells := make([]string, len(w.o.Trials))
	some := false
	var no absent
	for i := range w.o.Trials {
		f := m.Of(&w.o.Trials[i])
		cells[i] = "-"
		if f.Known() {
			f.PlusMinus, some = 0, true
			cells[i] = f.Text(u, m.Digits)
		} else {
			no.add(w.o.Trials[i].Name, f.Why)
		}
	}
	if some {
		w.row(w.withUnit(m.LabelFor(&w.o.Machine), u.Name), cells)
	}
	w.note(m.LabelFor(&w.o.Machine), no)
}

// rowHelp explains the rows of the comparison.
func (w *writer) rowHelp() {
	if len(w.o.Comparison) == 0 {
		return
	}
	w.section("WHAT THE ROWS MEAN")
	for _, r := range w.o.Comparison {
		w.pair(r.Label, r.Help)
	}
	w.gap()
}
