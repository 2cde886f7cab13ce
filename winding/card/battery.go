package card

import (
	"slotwright/winding/quantity"
)

// battery is what is charged, and what protects it.
func (w *writer) battery() {
	m := &w.o.Machine
	w.section("BATTERY")
	w.word("Battery", "battery.chemistry", w.job.Battery.Chemistry)
	w.figure("Rest", m.RestVolts, quantity.Volts, 4)
	w.figure("Absorption", m.AbsorptionVolts, quantity.Volts, 4)
	w.figure("Float", m.FloatVolts, quantity.Volts, 4)
	w.reasons(m.RestVolts, m.AbsorptionVolts, m.FloatVolts)
	w.figureAnd("CHARGE LIMIT", m.ChargeLimitAmps, quantity.Amps, 3, because(m.ChargeLimitAmps))
	w.figureAnd("FUSE, at the post", m.FuseAmps, quantity.Amps, 3, because(m.FuseAmps))
	w.gap()
	w.figureAnd("Battery and cable", m.LoadOhms, quantity.Ohms, 3, because(m.LoadOhms))
	w.figureAnd("A diode drops", m.DiodeVolts, quantity.Volts, 3, because(m.DiodeVolts))
	w.figureAnd("  and per amp", m.DiodeOhms, quantity.Ohms, 3, because(m.DiodeOhms))
	w.flush()
}

// reasons is where figures came from, each reason once.
func (w *writer) reasons(figures ...quantity.Figure) {
	said := map[string]bool{"": true}
	for _, f := range figures {
		if f.Known() && !said[f.Why] {
			w.pair("", "("+f.Why+")")
			said[f.Why] = true
		}
	}
}
