package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// The columns of a table of trials: the label and four of them make 80.
const (
	rowLabel = 28
	rowCell  = 13
)

// withUnit is a row's label and its unit, as far apart as the column is wide.
func (w *writer) withUnit(label, unitName string) string {
	label = w.opt.Units.Words(label)
	s := strings.TrimRight(label+"  "+unitName, " ")
	if text.Width(w.clean(s))+2 > rowLabel {
		s = strings.TrimRight(label+" "+unitName, " ")
	}
	return s
}

// row sets a label and a cell for each trial; a label too long goes on a line above.
func (w *writer) row(label string, cells []string) {
	label = w.clean("  " + label)
	at := min(rowLabel, w.wide-rowCell*len(cells))
	if text.Width(label) > at {
		w.raw(label)
		label = ""
	}
	line := text.Pad(label, at)
	for _, c := range cells {
		line += text.PadLeft(w.clean(c), rowCell)
	}
	w.raw(line)
}

// names heads the columns.
func (w *writer) names(label string) {
	cells := make([]string, len(w.o.Trials))
	for i, t := range w.o.Trials {
		cells[i] = text.Cut(w.clean(t.Name), rowCell-5, "")
		if i == w.o.Reference {
			cells[i] += " ref"
		}
	}
	w.row(label, cells)
}

// windings is each trial in words.
func (w *writer) windings() {
	w.section("THE TRIALS")
	for i := range w.o.Trials {
		t, name := &w.o.Trials[i], w.o.Trials[i].Name
		if i == w.o.Reference {
			name += " (the reference)"
		}
		w.heading("Trial " + name)
		if t.Note != "" {
			w.pair("Note", verbatim(t.Note))
		}
		w.wound(t, w.job.Trials[i].Wound)
		w.pair("Throw, layers", fmt.Sprintf("%s; %d, %s winding", w.throwOf(i), t.Layers, t.Kind))
		for k := range t.Buy {
			s := &t.Buy[k]
			w.pair("To buy", fmt.Sprintf("%s: %s; %s; spools: %s", verbatim(s.Gauge), w.inBoth(s.Metres, "m", s.Feet, "ft"), w.inBoth(s.Kg, "kg", s.Pounds, "lb"), w.amount(s.Spools, quantity.None, 0)))
		}
		w.flush()
	}
	w.ifNoTrials()
}

// throwOf is the throw of a trial.
func (w *writer) throwOf(trial int) string {
	plan, _ := w.b.Plan(trial)
	return strings.TrimPrefix(strings.TrimPrefix(w.throw(&w.o.Trials[trial], plan), "throws "), "throw ")
}

// comparison is every row of the comparison, group by group: the figures, and under them their
// difference from the reference's, with the verdict.
func (w *writer) comparison() {
	w.section("SIDE BY SIDE")
	w.ifNoTrials()
	if len(w.o.Comparison) > 0 {
		w.say(2, "Under each figure: how far it is from the reference, in percent (degrees for temperatures), and whether that is better or worse for this job; PAST: over a limit.")
	}
	group := ""
	for i := range w.o.Comparison {
		r := &w.o.Comparison[i]
		if r.Group != group {
			w.flush()
			w.gap()
			w.names(strings.ToUpper(r.Group))
			group = r.Group
		}
		w.compared(r)
	}
	w.flush()
}

// compared is one row: figures, then differences.
func (w *writer) compared(r *winding.Row) {
	u := w.opt.Units.For(r.Dim)
	cells, under := make([]string, len(r.Cells)), make([]string, len(r.Cells))
	var no absent
	for i := range r.Cells {
		c := &r.Cells[i]
		cells[i], under[i] = "-", against(c, u, r.Digits)
		switch {
		case c.Figure.Known():
			cells[i] = quantity.Figure{Value: c.Figure.Value, Origin: c.Figure.Origin}.Text(u, r.Digits)
		case r.ID != "cross_reference_rpm" || i != w.o.Reference:
			no.add(w.o.Trials[i].Name, c.Figure.Why)
		}
	}
	w.row(w.withUnit(r.Label, u.Name), cells)
	if strings.Join(under, "") != "" {
		w.row("", under)
	}
	w.note(r.Label, no)
}

// against is the difference of a cell from the reference, and the verdict. A cell past a limit shows no
// difference.
func against(c *winding.Cell, u quantity.Unit, digits int) string {
	far := ""
	switch {
	case c.Verdict == winding.Past:
		return "PAST"
	case c.Verdict == winding.Same:
	case c.Percent.Known() && c.Percent.Value >= 1000:
		far = ">10x"
	case c.Percent.Known() && c.Percent.Value <= -1000:
		far = "<-10x"
	case c.Percent.Known():
		far = quantity.File.Signed(c.Percent.Value, 2) + "%"
	case c.Difference.Known():
		far = quantity.File.Difference(c.Difference.Value, u, min(digits, 3))
	}
	return strings.TrimSpace(far + " " + c.Verdict.String())
}
