package card

import (
	"cmp"
	"fmt"

	"slotwright/winding"
	"slotwright/winding/quantity"
)

// speeds is the table at the job's own speeds.
func (w *writer) speeds(t *winding.TrialOutcome) {
	w.gap()
	if len(t.AtSpeeds) == 0 {
		return
	}
	at, watts := "", "load W"
	if w.holdsVolts() {
		at, watts = "battery at rest, "+w.machineText("battery_rest_v")+", ", "battery W"
	}
	w.say(2, "If something held it at the job's own speeds, "+at+"bridge amps:")
	w.gap()
	temp := w.opt.Units.For(quantity.Celsius)
	const form = "  %7s %8s %8s %9s %9s %8s %9s  %s"
	w.raw(fmt.Sprintf(form, "rpm", "A DC", "V DC", watts, "shaft W", "eff. %", w.clean(temp.Name), "diodes"))
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
	title := "AT THE JOB'S SPEEDS, IF HELD THERE"
	if w.holdsVolts() {
		title += ", BATTERY AT REST"
	}
	w.section(title)
	for i := range w.o.Trials {
		t := &w.o.Trials[i]
		w.heading("Trial " + t.Name)
		switch {
		case t.NoCharging != "":
			w.say(2, notKnown(t.NoCharging))
		case len(t.AtSpeeds) == 0:
			w.say(2, notKnown(cmp.Or(t.AmpsUsual.Why, "needs the speeds")))
		}
		w.speeds(t)
	}
	w.ifNoTrials()
}
