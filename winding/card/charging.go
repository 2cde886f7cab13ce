package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// charging is what reaches the battery, and from where.
func (w *writer) charging(t *winding.TrialOutcome) {
	m := &w.o.Machine
	w.section("CHARGING")
	w.ofTrial(t, "cut_in_rpm")
	w.gap()
	w.ofTrial(t, "amps_dc_slow", w.atSpeed(m.SlowRPM))
	w.ofTrial(t, "amps_dc_usual", w.atSpeed(m.UsualRPM)+w.hot(t, m.UsualRPM, t.HotUsualC))
	w.ofTrial(t, "amps_dc_top", w.atSpeed(m.TopRPM)+w.hot(t, m.TopRPM, t.HotTopC))
	w.ofTrial(t, "efficiency_usual", " of the shaft's watts reach the battery")
	w.gap()
	w.figureAnd("Amps wanted", asFigure(w.job.Target.Amps), quantity.Amps, asGiven, " reached at "+w.trialText(t, "target_rpm"))
	w.crossing(t)
	w.ofTrial(t, "volts_dc_open_top", " DC peak, nothing connected")
	if w.job.Drive.Kind == "wind" {
		w.ofTrial(t, "volts_dc_open_gale", " DC peak, nothing connected")
	}
	w.ofTrial(t, "phase_mh", from(t.InductanceFrom))
	w.flush()
	w.speeds(t)
}

// crossing is where the trial and the reference change places.
func (w *writer) crossing(t *winding.TrialOutcome) {
	if ref := w.o.Reference; ref < len(w.o.Trials) && t.Name != w.o.Trials[ref].Name {
		w.ofTrial(t, "cross_reference_rpm", ", trial "+w.o.Trials[ref].Name)
	}
}

func (w *writer) atSpeed(rpm quantity.Figure) string {
	if !rpm.Known() {
		return ""
	}
	return " at " + w.amount(rpm, quantity.RPM, 3)
}

// hot is the winding's temperature at a speed, or that it comes to none.
func (w *writer) hot(t *winding.TrialOutcome, rpm, c quantity.Figure) string {
	if !c.Known() {
		return ", winding: " + notKnown(c.Why)
	}
	for _, p := range t.AtSpeeds {
		if p.RPM == rpm.Value && p.TooHot {
			return ", TOO HOT: no steady temperature"
		}
	}
	return ", winding comes to " + w.amount(c, quantity.Celsius, 3)
}

// speeds is the table at the job's own speeds.
func (w *writer) speeds(t *winding.TrialOutcome) {
	w.gap()
	if t.NoCharging != "" {
		w.say(2, "No charging worked out: "+t.NoCharging)
	}
	if len(t.AtSpeeds) == 0 {
		return
	}
	temp := w.opt.Units.For(quantity.Celsius)
	const form = "  %7s %8s %8s %9s %9s %8s %9s  %s"
	w.raw(fmt.Sprintf(form, "rpm", "A DC", "V DC", "battery W", "shaft W", "eff. %", w.clean(temp.Name), "diodes"))
	for _, p := range t.AtSpeeds {
		put := func(v float64, dim quantity.Dimension, figures int) string {
			return quantity.File.Value(v, dim[0], figures)
		}
		hot := quantity.File.Value(temp.From(p.WindingC), temp, 3)
		if p.TooHot {
			hot = "too hot"
		}
		w.raw(fmt.Sprintf(form, put(p.RPM, quantity.RPM, 3), put(p.AmpsDC, quantity.Amps, 3), put(p.VoltsDC, quantity.Volts, 4), put(p.BatteryWatts, quantity.Watts, 3),
			put(p.ShaftWatts, quantity.Watts, 3), quantity.Number(100*p.Efficiency, 2), hot, p.Mode))
	}
	w.gap()
}

// allSpeeds is that table for every trial.
func (w *writer) allSpeeds() {
	w.section("AT THE JOB'S SPEEDS")
	for i := range w.o.Trials {
		t := &w.o.Trials[i]
		w.heading("Trial " + t.Name)
		if len(t.AtSpeeds) == 0 && t.NoCharging == "" {
			w.say(2, "not known: needs the speeds")
		}
		w.speeds(t)
	}
	w.ifNoTrials()
}
