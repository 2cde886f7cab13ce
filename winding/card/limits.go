package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// limitsOf is the limits of one trial, the one that governs first.
func (w *writer) limitsOf(t *winding.TrialOutcome) {
	if !t.LimitAmps.Known() {
		w.say(2, notKnown(t.LimitAmps.Why))
		return
	}
	w.pair("NOT MORE THAN", w.trialText(t, "limit_amps_dc")+" DC: "+t.LimitBy+" governs")
	w.gap()
	for _, l := range t.Each {
		w.pair(l.Name, fmt.Sprintf("%s DC: %s", w.amount(l.AmpsDC, quantity.Amps, 3), l.Reason))
		if l.Source != "" {
			w.pair("", "source: "+l.Source)
		}
	}
	w.gap()
	again := ""
	if t.LimitToRPM > 0 {
		again = ", within it again from " + w.amount(quantity.Of(t.LimitToRPM), quantity.RPM, 3)
	}
	w.ofTrial(t, "limit_rpm", again)
	w.ofTrial(t, "density_a_per_mm2_per_dc_amp")
	w.ofTrial(t, "seconds_to_class_limit", " from warm to the class limit, at the limit current")
	w.ofTrial(t, "ac_factor_top")
	w.ofTrial(t, "skin_depth_top_mm")
	w.flush()
}

// allLimits is those of every trial.
func (w *writer) allLimits() {
	w.section("CURRENT LIMITS, WITH REASONS AND SOURCES")
	for i := range w.o.Trials {
		w.heading("Trial " + w.o.Trials[i].Name)
		w.limitsOf(&w.o.Trials[i])
	}
	w.ifNoTrials()
}

// ifNoTrials says so where a section would be empty.
func (w *writer) ifNoTrials() {
	if len(w.o.Trials) == 0 {
		w.say(2, "The job has no trial yet.")
	}
}
