package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
	"slotwright/winding/text"
)

// readings is what the finished winding should read, with room for what it does.
func (w *writer) readings(t *winding.TrialOutcome, trial int) {
	m := &w.o.Machine
	w.section("EXPECTED READINGS")
	pairs := w.leadPairs(trial)
	w.say(2, "Before varnish. Take the meter leads' own ohms off.")
	if len(pairs) > 1 {
		w.say(2, "The pairs should read alike: one that does not is a fault, whatever the figure.")
	}

	w.heading("Ohms, lead to lead, standing")
	w.pair(w.at20("expected at "), w.trialText(t, "lead_ohms_20c"))
	w.pair("expected at "+w.amount(m.TestC, quantity.Celsius, asGiven), w.trialText(t, "lead_ohms_test"))
	w.blanks(pairs, quantity.Ohms[0].Name+"  at ________ "+w.opt.Units.For(quantity.Celsius).Name)

	w.heading("Volts AC rms, lead to lead, turning, nothing connected")
	w.pair("expected at "+w.machineText("test_rpm"), w.trialText(t, "volts_line_rms_test"))
	w.blanks(pairs, quantity.Volts[0].Name+"  at ________ rpm")

	w.heading("Insulation, winding to iron")
	w.say(2, "Only with the proper tester, and by someone trained.")
	w.blanks([]string{"all leads - iron"}, quantity.Megohms[0].Name+" at ________ V")
}

// blanks is a line to write on for each pair of leads.
func (w *writer) blanks(pairs []string, behind string) {
	for _, pair := range pairs {
		w.gap()
		w.raw("  [ ] " + text.Pad(pair, 18) + " measured  ____________ " + behind)
	}
}

// leadPairs is the pairs of leads to measure between: three in each set of three
// phases, one in one phase.
func (w *writer) leadPairs(trial int) []string {
	plan, _ := w.b.Plan(trial)
	if plan == nil {
		if w.job.Machine.Phases.Whole() == 1 {
			return []string{"U1 - U2"}
		}
		return []string{"U1 - V1", "V1 - W1", "W1 - U1"}
	}
	var pairs []string
	if n := plan.Spec().Phases; n < 3 {
		for phase := range n {
			pairs = append(pairs, plan.PhaseName(0, phase)+"1 - "+plan.PhaseName(0, phase)+"2")
		}
		return pairs
	}
	for set := range plan.Spec().Sets {
		for phase := range 3 {
			pairs = append(pairs, fmt.Sprintf("%s1 - %s1", plan.PhaseName(set, phase), plan.PhaseName(set, (phase+1)%3)))
		}
	}
	return pairs
}
