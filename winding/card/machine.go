package card

import (
	"fmt"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// machine is the iron: what was counted and measured, and the slot's room.
func (w *writer) machine() {
	m, o := w.job.Machine, &w.o.Machine
	w.section("THE MACHINE")
	w.given("Slots", "machine.slots", m.Slots)
	w.given("Poles", "machine.poles", m.Poles)
	w.given("Phases", "machine.phases", m.Phases)
	if m.Sets.Given() {
		w.given("Sets", "machine.sets", m.Sets)
	}
	w.given("Bore", "machine.bore", m.BoreMM)
	w.given("Stack", "machine.stack", m.StackMM)
	w.given("Air gap", "machine.air_gap", m.AirGapMM)
	w.word("Cooling", "machine.cooling", m.Cooling)
	w.word("Thermal class", "machine.thermal_class", m.ThermalClass)
	w.ofMachine("class_limit_c", " at the hottest spot")
	w.ofMachine("mean_limit_c", " by its ohms (IEC 60034-1)")
	w.given("Air around it", "machine.ambient", m.AmbientC)
	w.ofMachine("pole_pitch_mm")
	w.gap()
	w.slotRoom(o)
	w.gap()
	w.flux(o)
	w.flush()
}

// slotRoom is the areas of one slot.
func (w *writer) slotRoom(o *winding.MachineOutcome) {
	w.ofMachine("slot_gross_mm2")
	w.ofMachine("slot_liner_mm2")
	w.ofMachine("slot_wedge_mm2")
	if o.SeparatorMM2.Known() && o.SeparatorMM2.Value > 0 || !o.SeparatorMM2.Known() {
		w.ofMachine("slot_separator_mm2")
	}
	w.ofMachine("slot_net_mm2")
	if o.SlotNote != "" {
		w.pair("", o.SlotNote)
	}
}

// flux is what the volts rest on.
func (w *writer) flux(o *winding.MachineOutcome) {
	from := ""
	if o.FluxFrom != "" {
		from = ", from " + o.FluxFrom
	}
	w.ofMachine("flux_per_pole_mwb", from)
	w.ofMachine("gap_flux_density_t")
	if o.NextReading != "" {
		w.pair("Read next", o.NextReading)
	}
	if w.job.Field.Kind != job.FieldMagnets {
		w.ofMachine("field_amps")
	}
	w.ofMachine("hertz_per_rpm")
	w.ofMachine("drive_ratio", because(o.Ratio))
}

// because is where a figure came from, behind it.
func because(f quantity.Figure) string {
	if f.Why == "" {
		return ""
	}
	return " (" + f.Why + ")"
}

// given is a line for a reading in the unit to show, or what stands in for it.
func (w *writer) given(label, path string, r quantity.Reading) {
	if r.Given() {
		field, ok := job.InputAt(path)
		dim, figures := quantity.None, 0
		if ok && field.Kind == job.Number {
			dim, figures = field.Dim, asGiven
		}
		w.pair(label, w.amount(asFigure(r), dim, figures))
		return
	}
	w.word(label, path, "")
}

// word is a line for a word of the job, or what is used in its place.
func (w *writer) word(label, path, text string) {
	if text != "" {
		w.pair(label, text)
		return
	}
	if field, ok := job.InputAt(path); ok {
		if empty := field.Empty(w.opt.Units.For(field.Dim)); empty != "" {
			w.pair(label, fmt.Sprintf("~%s (not given)", empty))
			return
		}
	}
	w.known.add(label, "not given")
}
