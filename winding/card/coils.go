package card

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// The coil list: what to wind, what it is joined to, and a box to tick when it is in and counted. It
// follows the wire of each phase, so the coil that one is joined to is the next in the list.
const (
	coilHead   = "        coil  in out turns way joins to"
	coilColumn = 41
	oneColumn  = 12 // coils in a single column
)

// coils is the list and how to read it.
func (w *writer) coils(trial int, plan *layout.Layout) {
	steps := plan.WindingOrder()
	counted := turnsGiven(w.job.Trials[trial].Wound)
	rows := make([]string, len(steps))
	for i, s := range steps {
		rows[i] = coilRow(s, counted)
	}
	w.entry("ORDER", w.howToRead(plan, steps))
	w.columns(coilHead, rows, w.coilColumns(rows))
}

// howToRead is what has to be known before the first coil.
func (w *writer) howToRead(plan *layout.Layout, steps []layout.Step) string {
	if w.flat() {
		return fmt.Sprintf("Lay the ring before you, leads at the rim. Mark one gap between two coils 1, count clockwise. The wire goes along gap \"in\" to the middle and along gap \"out\" back to the rim; cw: clockwise round the ring. \"4 at 7\": on to coil 4, which begins in gap 7, uncut or joined; ends %s long.",
			w.amount(quantity.Of(winding.LeadMM), quantity.Millimetres, 2))
	}
	return fmt.Sprintf("Line the slots (sheet two).%s Mark one slot 1, count clockwise, seen from the end with the leads. The wire goes down slot \"in\", away from you, and up \"out\"; cw: clockwise round the stator. \"4 at 7\": on to coil 4, which begins in slot 7, uncut or joined; ends %s long.",
		w.without(), w.amount(quantity.Of(winding.LeadMM), quantity.Millimetres, 2)) + w.howLaid(plan) + roundsOf(steps)
}

// without is the slots and teeth that stay bare.
func (w *writer) without() string {
	words := ""
	if list := w.job.Machine.DeadSlots; len(list) > 0 {
		words += " EMPTY slots: " + numbers(list) + "."
	}
	if list := w.job.Machine.BareTeeth; len(list) > 0 {
		words += " BARE teeth: " + numbers(list) + " (tooth 1 is between slots 1 and 2)."
	}
	return words
}

func numbers(list []int) string {
	words := make([]string, len(list))
	for i, n := range list {
		words[i] = fmt.Sprint(n)
	}
	return strings.Join(words, ", ")
}

// coilColumns is the number of columns for the rows: two for more than a dozen, where they are narrow
// enough.
func (w *writer) coilColumns(rows []string) int {
	for _, r := range rows {
		if len(r) > w.wide-coilColumn {
			return 1
		}
	}
	if len(rows) > oneColumn {
		return 2
	}
	return 1
}

// coilRow is one coil.
func coilRow(s layout.Step, counted bool) string {
	turns, way, lead := "____", "acw", s.Name
	if counted {
		turns = fmt.Sprint(s.Turns)
	}
	if s.Clockwise {
		way = "cw"
	}
	if s.Lead != "" {
		lead = s.Lead
	}
	to := s.EndLead
	if to == "" {
		to = fmt.Sprintf("%d at %d", s.Next.Coil, s.Next.Slot)
	}
	return fmt.Sprintf("[ ] %-3s %4d %3d %3d %5s %-3s %s", lead, s.Coil, s.From, s.To, turns, way, to)
}

// howLaid says which coil is laid first, and which side of it goes where.
func (w *writer) howLaid(plan *layout.Layout) string {
	spec := plan.Spec()
	switch {
	case w.flat():
		return ""
	case plan.Beside():
		return " Each coil is round one tooth and fills its half of both slots."
	case spec.Span == 1:
		return " Each coil is round one tooth."
	case spec.Layers == 1:
		return " Lay them by coil number."
	}
	return fmt.Sprintf(" Lay them by coil number, the anticlockwise side to the bottom of its slot, the other on top; the tops of the first %d coils stay up until the last are under them.", spec.Span)
}

// roundsOf says how a wave is wound, "" for any other.
func roundsOf(steps []layout.Step) string {
	for _, s := range steps {
		if s.Wave && s.Round > 1 {
			return fmt.Sprintf(" WAVE: one turn in each of %d coils, then round again until the turns are in.", s.Round)
		}
	}
	return ""
}

// columns sets rows beside each other, reading down.
func (w *writer) columns(head string, rows []string, n int) {
	down := (len(rows) + n - 1) / n
	heads := make([]string, min(n, len(rows)))
	for i := range heads {
		heads[i] = head
	}
	w.raw(beside(heads))
	for r := range down {
		var cells []string
		for c := r; c < len(rows); c += down {
			cells = append(cells, rows[c])
		}
		w.raw(beside(cells))
	}
}

// beside sets cells in columns of the coil list's width.
func beside(cells []string) string {
	line := ""
	for i, c := range cells {
		line = text.Pad(line, i*coilColumn) + c
	}
	return strings.TrimRight(line, " ")
}

// leads lists what comes out, and what is joined and stays in.
func (w *writer) leads(t *winding.TrialOutcome, plan *layout.Layout) {
	wiring := plan.Wiring(t.Connection)
	place := " slot "
	if w.flat() {
		place = " gap "
	}
	where := map[string]string{}
	var out []string
	for _, l := range wiring.Leads {
		if len(l.Ends) > mostInLine {
			w.leadsOneByOne(wiring, strings.TrimSpace(place))
			return
		}
		where[l.Name] = l.Name + place + strings.Join(slotsOf(l), "+")
		if l.Out {
			out = append(out, where[l.Name])
		}
	}
	w.entry("LEADS", "[ ] out, to "+w.rectifier()+": "+strings.Join(out, ", "))
	for _, n := range wiring.Nodes {
		ends := make([]string, len(n.Leads))
		for i, name := range n.Leads {
			ends[i] = where[name]
		}
		w.more("[ ] " + n.Name + ": join " + strings.Join(ends, " + ") + ", insulate")
	}
	w.rectified()
}

// mostInLine is the most ends per lead with which all leads are told in one line.
const mostInLine = 4

// slotsOf are the slots of a lead's ends.
func slotsOf(l layout.Lead) []string {
	slots := make([]string, len(l.Ends))
	for i, e := range l.Ends {
		slots[i] = fmt.Sprint(e.Slot)
	}
	return slots
}

// leadsOneByOne is a line or two for each lead of many ends: first those that come out, then those of
// each joint.
func (w *writer) leadsOneByOne(wiring layout.Wiring, place string) {
	told := func(l layout.Lead) {
		w.more(fmt.Sprintf("[ ] %s, %d ends: %ss %s", l.Name, len(l.Ends), place, strings.Join(slotsOf(l), ", ")))
	}
	w.entry("LEADS", "out, to "+w.rectifier()+", all ends of a lead joined:")
	for _, l := range wiring.Leads {
		if l.Out {
			told(l)
		}
	}
	for _, n := range wiring.Nodes {
		w.more(n.Name + ": join " + strings.Join(n.Leads, " + ") + ", insulate")
		for _, l := range wiring.Leads {
			if !l.Out && slices.Contains(n.Leads, l.Name) {
				told(l)
			}
		}
	}
	w.rectified()
}

// rectified says how leads that do not go to a bridge are connected.
func (w *writer) rectified() {
	if to := rectifiedBy[w.job.Battery.Rectifier]; to != "" {
		w.more(to)
	}
}

// rectifiedBy says how leads that do not go to a bridge are connected, by the word of the job file.
var rectifiedBy = map[string]string{
	job.RectifierHalfWave: "the diode: in series with one lead",
	job.RectifierDoubler:  "the doubler: one lead to where its two diodes meet, the other to where its two capacitors meet",
}
