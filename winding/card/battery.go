package card

import (
	"slotwright/winding"
	"slotwright/winding/unit"
)

// battery is what is charged, and what protects it.
func (w *writer) battery() {
	m := &w.o.Machine
	w.section("BATTERY")
	w.word("Battery", "battery.chemistry", w.job.Battery.Chemistry)
	w.figure("Rest", m.RestVolts, unit.Volts, 4)
	w.figure("Absorption", m.AbsorptionVolts, unit.Volts, 4)
	w.figure("Float", m.FloatVolts, unit.Volts, 4)
	w.reasons(m.RestVolts, m.AbsorptionVolts, m.FloatVolts)
	w.figureAnd("CHARGE LIMIT", m.ChargeLimitAmps, unit.Amps, 3, because(m.ChargeLimitAmps))
	w.figureAnd("FUSE, at the post", m.FuseAmps, unit.Amps, 3, because(m.FuseAmps))
	w.gap()
	w.figureAnd("Battery and cable", m.LoadOhms, unit.Ohms, 3, because(m.LoadOhms))
	w.figureAnd("A diode drops", m.DiodeVolts, unit.Volts, 3, because(m.DiodeVolts))
	w.figureAnd("  and per amp", m.DiodeOhms, unit.Ohms, 3, because(m.DiodeOhms))
	w.flush()
}

// reasons is where figures came from, each reason once.
func (w *writer) reasons(figures ...winding.Figure) {
	said := map[string]bool{"": true}
	for _, f := range figures {
		if f.Known() && !said[f.Why] {
			w.pair("", "("+f.Why+")")
			said[f.Why] = true
		}
	}
}
