package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// limits is where the current must stop, and why.
func (w *writer) limits(t *winding.TrialOutcome) {
	w.section("CURRENT LIMITS")
	w.limitsOf(t)
}

// limitsOf is the limits of one trial, the one that governs first.
func (w *writer) limitsOf(t *winding.TrialOutcome) {
	if !t.LimitAmps.Known() {
		w.say(2, notKnown(t.LimitAmps.Why))
		return
	}
	w.pair("NOT MORE THAN", w.amount(t.LimitAmps, quantity.Amps, 3)+" DC: "+t.LimitBy+" governs")
	w.gap()
	for _, l := range t.Each {
		w.pair(l.Name, fmt.Sprintf("%s DC: %s", w.amount(l.AmpsDC, quantity.Amps, 3), l.Reason))
		if l.Source != "" {
			w.pair("", "source: "+l.Source)
		}
	}
	w.gap()
	w.figureAnd("Limit reached at", t.LimitRPM, quantity.RPM, 3, "")
	w.figureAnd("In the wire", t.DensityPerAmp, quantity.Only("A/mm²"), 3, " for 1 A DC")
	w.figureAnd("With no cooling", t.SecondsToClass, quantity.Only("s"), 2, " from warm to the class limit, at the limit current")
	w.figure("AC over DC ohms, top", t.ACFactor, quantity.None, 4)
	w.figure("Skin depth, top", t.SkinDepthMM, quantity.Millimetres, 3)
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
