package card

import (
	"slotwright/winding/quantity"
)

// battery is what is charged, and what protects it.
func (w *writer) battery() {
	m := &w.o.Machine
	w.section("BATTERY")
	w.word("Battery", "battery.chemistry", w.job.Battery.Chemistry)
	w.ofMachine("battery_rest_v")
	w.ofMachine("battery_charging_v")
	w.ofMachine("battery_absorption_v")
	w.ofMachine("battery_float_v")
	w.reasons(m.RestVolts, m.ChargingVolts, m.AbsorptionVolts, m.FloatVolts)
	w.ofMachine("battery_charge_limit_a", because(m.ChargeLimitAmps))
	w.ofMachine("fuse_a", because(m.FuseAmps))
	w.gap()
	w.ofMachine("battery_inside_ohms", because(m.InsideOhms))
	w.ofMachine("battery_and_cable_ohms", because(m.LoadOhms))
	w.ofMachine("diode_v", because(m.DiodeVolts))
	w.ofMachine("diode_ohms", because(m.DiodeOhms))
	w.flush()
}

// reasons gives the sources of figures, each once.
func (w *writer) reasons(figures ...quantity.Figure) {
	said := map[string]bool{"": true}
	for _, f := range figures {
		if f.Known() && !said[f.Why] {
			w.pair("", "("+f.Why+")")
			said[f.Why] = true
		}
	}
}
