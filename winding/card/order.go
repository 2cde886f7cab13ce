package card

import (
	"fmt"
	"strings"

	"slotwright/winding"
	"slotwright/winding/layout"
)

// windingOrder is every coil in the order of winding, each with a box to tick.
func (w *writer) windingOrder(trial int) {
	w.section("WINDING ORDER")
	plan, why := w.b.Plan(trial)
	if plan == nil {
		w.say(2, notKnown(why))
		return
	}
	w.say(2, "Seen from the connection end. Tick each coil when it is in and its turns are counted.")
	for _, s := range plan.WindingOrder() {
		if s.Lead != "" {
			w.heading("Phase " + s.Name)
		}
		w.tick(fmt.Sprintf("%3d  ", s.Number), s.String())
	}
}

// joints is what is soldered to what, and what comes out.
func (w *writer) joints(t *winding.TrialOutcome, trial int) {
	w.section("JOINTS AND LEADS")
	plan, why := w.b.Plan(trial)
	if plan == nil {
		w.say(2, notKnown(why))
		return
	}
	wiring := plan.Wiring(t.Connection)
	if len(wiring.Joins) > 0 {
		w.heading("Coil to coil")
	}
	for i, j := range wiring.Joins {
		w.tick(fmt.Sprintf("%3d  ", i+1), j.From.String()+" to "+j.To.String())
	}
	w.heading("Leads")
	for _, l := range wiring.Leads {
		w.tick("", l.Name+leadOut(l)+ends(l.Ends))
	}
	w.nodes(wiring.Nodes)
}

// nodes is the star point or the corners of the delta.
func (w *writer) nodes(nodes []layout.Node) {
	if len(nodes) == 0 {
		return
	}
	w.heading("Joined with each other")
	for _, n := range nodes {
		w.tick("", n.Name+": join "+strings.Join(n.Leads, " + ")+", insulate")
	}
}

func leadOut(l layout.Lead) string {
	if l.Out {
		return ", a cable comes out: "
	}
	return ", stays inside: "
}

// ends is the coil ends that are one lead.
func ends(list []layout.EndRef) string {
	words := make([]string, len(list))
	for i, e := range list {
		words[i] = e.String()
	}
	return strings.Join(words, " with ")
}

// layoutNotes is what to know of the layout before winding it.
func (w *writer) layoutNotes(trial int) {
	w.section("ABOUT THIS LAYOUT")
	plan, why := w.b.Plan(trial)
	if plan == nil {
		w.say(2, notKnown(why))
		return
	}
	if plan.Balance().Equal {
		w.say(2, "The phases balance: equal voltages at equal angles.")
		w.gap()
	}
	for _, n := range plan.Notes() {
		mark := "  -  "
		if n.Caution {
			mark = "  !  "
		}
		w.hang(mark, n.Topic+": "+n.Text)
		w.say(5, "source: "+n.Source)
		w.gap()
	}
}
