package card

import (
	"slotwright/winding"
	"slotwright/winding/job"
)

// allDrives says how each trial and its drive suit each other.
func (w *writer) allDrives() {
	w.section("THE DRIVE")
	for i := range w.o.Trials {
		w.heading("Trial " + w.o.Trials[i].Name)
		w.driven(&w.o.Trials[i])
	}
	w.ifNoTrials()
}

func (w *writer) driven(t *winding.TrialOutcome) {
	if why := t.CannotBeWound(); why != "" {
		w.hang("  ", "Trial "+t.Name+" cannot be wound: it "+why+". What it would do:")
		w.gap()
	}
	if t.Suits != "" {
		w.hang("  ", "Trial "+t.Name+": "+t.Suits)
		w.gap()
	}
	if better := t.Better(); better != "" {
		w.hang("  - would do better: ", better)
	}
	if t.InTheWay != "" {
		w.hang("  - ", t.InTheWay)
	}
	w.gap()
	of := " of the drive's shaft"
	if w.windy() {
		of = " of wind"
	}
	w.ofTrial(t, "charges_from_x", of)
	if t.StartsAlone.Known() {
		w.ofTrial(t, "starts_alone_from_x", of+": in less a gust has to start it")
	}
	w.ofTrial(t, "full_power_drive_w")
	w.ofTrial(t, "full_power_rpm")
	w.ofTrial(t, "full_power_amps_dc")
	if w.windy() || t.YearKWh.Known() {
		w.ofTrial(t, "year_kwh")
	}
	if t.YearPastKWh.Known() {
		w.ofTrial(t, "year_kwh_past_limit", ": in winds that the winding does not withstand")
	}
	w.field(t)
	w.stopping(t)
	w.flush()
}

// field is what a wound rotor costs; nothing for magnets.
func (w *writer) field(t *winding.TrialOutcome) {
	if w.job.Field.Kind != job.FieldWound {
		return
	}
	w.gap()
	w.ofTrial(t, "field_w")
	w.ofTrial(t, "best_field_a_usual", w.gains(t))
	w.ofTrial(t, "break_even_rpm")
	w.ofTrial(t, "self_excitation_build_rpm")
	w.ofTrial(t, "self_excitation_hold_rpm")
}

// gains is what the best field current is worth, where it is worth something.
func (w *writer) gains(t *winding.TrialOutcome) (text string) {
	if t.BestGainUsual.Known() && t.BestGainUsual.Value > 0 {
		text = " leaves the battery the most, " + w.trialText(t, "best_field_gain_w_usual") + " more"
	}
	if best := t.BestUsual; best.Known() && best.Why != "" {
		text += "; " + w.clean(best.Why)
	}
	return text
}

// stopping is about shorted leads, and a full battery.
func (w *writer) stopping(t *winding.TrialOutcome) {
	of := " of the drive: more than that goes on turning it"
	if w.windy() {
		of = " of wind: more than that keeps turning it"
	}
	w.gap()
	w.brake(t, "brake_at_top", t.Brake)
	w.brake(t, "brake_pair_at_top", t.BrakePair)
	w.ofTrial(t, "brake_peak_torque_nm", " at "+w.trialText(t, "brake_peak_rpm")+"; faster than that they hold less")
	w.ofTrial(t, "brake_stops_to_x_cold", of)
	w.ofTrial(t, "brake_stops_to_x_hot", of)
	w.ofTrial(t, "brake_seconds_to_class_limit", " from warm to the class limit, with no cooling")
	w.ofTrial(t, "dump_load_ohms", ", "+w.trialText(t, "dump_load_w"))
	w.ofTrial(t, "volts_dc_most", because(t.MostVolts))
	if t.OverChargeAmps.Known() && t.OverChargeAmps.Value > 0 {
		w.ofTrial(t, "over_charge_limit_a", " at the most that flows")
	}
}

// brake is one way of stopping it; none where nothing flows.
func (w *writer) brake(t *winding.TrialOutcome, id string, b winding.Brake) {
	if b.LeadAmps.Known() {
		w.ofTrial(t, id+".lead_a", " in a lead, "+w.trialText(t, id+".torque_nm")+", "+w.trialText(t, id+".copper_w")+" in the copper")
	}
}

// windy reports whether the drive is wind.
func (w *writer) windy() bool { return w.job.Drive.Kind == job.DriveWind }
