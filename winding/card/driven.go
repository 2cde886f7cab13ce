package card

import (
	"slotwright/winding"
	"slotwright/winding/drive"
	"slotwright/winding/quantity"
)

// drive is how the trial and what turns it come to terms.
func (w *writer) drive(t *winding.TrialOutcome) {
	w.section("THE DRIVE")
	w.driven(t)
}

// allDrives is the same for every trial.
func (w *writer) allDrives() {
	w.section("THE DRIVE")
	for i := range w.o.Trials {
		w.heading("Trial " + w.o.Trials[i].Name)
		w.driven(&w.o.Trials[i])
	}
	w.ifNoTrials()
}

func (w *writer) driven(t *winding.TrialOutcome) {
	if t.Suits != "" {
		w.hang("  ", "Trial "+t.Name+": "+t.Suits)
		w.gap()
	}
	for _, m := range t.Mends {
		w.hang("  - would suit better: ", m)
	}
	w.gap()
	dim, of := quantity.RPM, " of the drive's shaft"
	if w.job.Drive.Kind == "wind" {
		dim, of = quantity.WindSpeed, " of wind"
	}
	w.figureAnd("Charges from", t.StartsAt, dim, 3, of)
	w.figure("At the drive's full power", t.RunWatts, quantity.Watts, 3)
	w.figure("  the alternator runs at", t.RunRPM, quantity.RPM, 3)
	w.figure("  and charges", t.RunAmps, quantity.Amps, 3)
	if w.job.Drive.Kind == "wind" || t.YearKWh.Known() {
		w.figure("A year's energy", t.YearKWh, quantity.Only("kWh"), 3)
	}
	w.field(t)
	w.stopping(t)
	w.flush()
}

// field is what a wound rotor costs; nothing for magnets.
func (w *writer) field(t *winding.TrialOutcome) {
	if w.job.Field.Kind != "wound" {
		return
	}
	w.gap()
	w.figure("The field takes", t.FieldWatts, quantity.Watts, 3)
	w.figureAnd("Net at the usual speed", t.NetUsual, quantity.Watts, 3, ", after what the field takes")
	w.figure("The field pays from", t.BreakEvenRPM, quantity.RPM, 3)
	w.figureAnd("Self-excited it builds at", t.ExciteBuildRPM, quantity.RPM, 3, "")
	w.figureAnd("  and falls back below", t.ExciteHoldRPM, quantity.RPM, 3, "")
}

// stopping is leads joined, and a battery that is full.
func (w *writer) stopping(t *winding.TrialOutcome) {
	w.gap()
	w.brake("All leads joined, top", t.Brake)
	w.brake("Two leads joined, top", t.BrakePair)
	w.figureAnd("  joined it may stay", t.BrakeSeconds, quantity.Only("s"), 2, " from warm to the class limit, with no cooling")
	w.figureAnd("Dump load for all of it", t.DumpOhms, quantity.Ohms, 3, ", "+w.amount(t.DumpWatts, quantity.Watts, 3))
	if t.OverChargeAmps.Known() && t.OverChargeAmps.Value > 0 {
		w.figureAnd("OVER THE CHARGE LIMIT", t.OverChargeAmps, quantity.Amps, 3, " at the top speed")
	}
}

// brake is one way of stopping it; none where nothing flows.
func (w *writer) brake(label string, b drive.Brake) {
	if b.LeadAmps <= 0 {
		return
	}
	w.pair(label, significant(b.LeadAmps, 3)+" A in a lead, "+significant(b.TorqueNm, 3)+" "+quantity.Torque[0].Name+", "+significant(b.Watts, 3)+" W in the copper")
}
