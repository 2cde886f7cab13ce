package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// charging is what reaches the battery, and from where.
func (w *writer) charging(t *winding.TrialOutcome) {
	w.section("CHARGING")
	w.ofTrial(t, "cut_in_rpm", ", battery at rest")
	w.gap()
	w.ofTrial(t, "amps_dc_slow", w.there(t, "slow", t.HotSlowC))
	w.ofTrial(t, "amps_dc_usual", w.there(t, "usual", t.HotUsualC))
	if last := len(w.o.Machine.Conditions) - 1; last < 0 || w.o.Machine.Conditions[last].Same == "" {
		w.ofTrial(t, "amps_dc_top", w.there(t, "top", t.HotTopC))
	}
	w.ofTrial(t, "amps_dc_usual_empty", " at "+w.machineText("battery_rest_v"))
	w.ofTrial(t, "amps_dc_usual_absorbing", " at "+w.machineText("battery_absorption_v"))
	w.ofTrial(t, "bridge_amps_dc_most", " out of the bridge")
	w.ofTrial(t, "net_w_usual")
	w.ofTrial(t, "efficiency_usual", " of the drive's watts reach the battery, net")
	w.gap()
	w.figureAnd("Amps wanted", asFigure(w.job.Target.Amps), quantity.Amps, asGiven, " net, "+w.reached(t))
	w.crossing(t)
	w.ofTrial(t, "volts_dc_open_top", " DC peak, nothing connected")
	if w.job.Drive.Kind == "wind" {
		w.ofTrial(t, "volts_dc_open_furl", " DC peak, nothing connected")
		w.ofTrial(t, "volts_dc_open_gale", " DC peak, nothing connected")
	}
	w.ofTrial(t, "phase_mh", from(t.InductanceFrom))
	w.flush()
	w.operating(t)
	w.speeds(t)
}

// reached is where the amps wanted flow, if something holds it there.
func (w *writer) reached(t *winding.TrialOutcome) string {
	if !t.TargetRPM.Known() {
		return t.TargetRPM.Why
	}
	return "from " + w.trialText(t, "target_rpm") + " if held there"
}

// crossing is where the trial and the reference change places.
func (w *writer) crossing(t *winding.TrialOutcome) {
	if ref := w.o.Reference; ref < len(w.o.Trials) && t.Name != w.o.Trials[ref].Name {
		w.ofTrial(t, "cross_reference_rpm", ", trial "+w.o.Trials[ref].Name)
	}
}

// there is what net amps go by: the battery's voltage, the bridge's amps, the winding.
func (w *writer) there(t *winding.TrialOutcome, condition string, hot quantity.Figure) string {
	for i := range t.Operating {
		o := &t.Operating[i]
		if o.Condition != condition {
			continue
		}
		text := " at " + w.machineText("battery_charging_v") + ", bridge " + quantity.File.Value(o.AmpsDC, quantity.Amps[0], 3) + " A"
		switch {
		case o.TooHot:
			return text + ", TOO HOT: no steady temperature"
		case !hot.Known():
			return text + ", winding: " + notKnown(hot.Why)
		}
		return text + ", winding comes to " + w.amount(hot, quantity.Celsius, 3)
	}
	return ""
}

// speeds is the table at the job's own speeds.
func (w *writer) speeds(t *winding.TrialOutcome) {
	w.gap()
	if len(t.AtSpeeds) == 0 {
		return
	}
	w.say(2, "If something held it at the job's own speeds, battery at rest, "+w.machineText("battery_rest_v")+", bridge amps:")
	w.gap()
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
	w.section("AT THE JOB'S SPEEDS, IF HELD THERE, BATTERY AT REST")
	for i := range w.o.Trials {
		t := &w.o.Trials[i]
		w.heading("Trial " + t.Name)
		switch {
		case t.NoCharging != "":
			w.say(2, notKnown(t.NoCharging))
		case len(t.AtSpeeds) == 0:
			w.say(2, notKnown("needs the speeds"))
		}
		w.speeds(t)
	}
	w.ifNoTrials()
}
