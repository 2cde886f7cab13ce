package winding

import (
	"fmt"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/readings"
	"slotwright/wiretable"
)

// aboutReadings makes the findings about the old winding's readings: shorts and spins converted to what
// the meter stands for.
type aboutReadings struct {
	machine    *machine
	field      *job.FieldSpec
	spins      []job.SpinReading
	shorts     []job.ShortReading
	amps       []job.AmpsReading
	trialCoils []job.CoilReading
	meanTurn   quantity.Reading
	flux       *flux
	turn       *turnLength
	henries    *inductances
	fit        *fitted
}

// single is about incomplete readings, and readings of one kind that disagree.
func (a aboutReadings) single(d *doubts) {
	for i, s := range a.spins {
		if s.RPM.Given() != s.LineVolts.Given() {
			d.add(Finding{Severity: Doubt, Path: job.PathOf("spin", i, "speed"), Fix: "a reading is a speed and a voltage"},
				"the reading is not whole and is not used")
		}
	}
	if spread := a.flux.spread; spread > spinsApart && a.flux.curve != nil {
		d.add(Finding{Severity: Doubt, Path: "spin[0].line", Fix: "read them again at one speed, with a true-rms meter; speeds and field currents too"},
			"the spin-up readings contradict each other by %.0f %%: with more field current the volts only rise, and ever less", spread*100)
	} else if spread > spinsApart {
		d.add(Finding{Severity: Doubt, Path: "spin[0].line", Fix: "take them again at one field current, with a true-rms meter"},
			"the spin-up readings differ by %.0f %% in volts per rpm", spread*100)
	}
	if a.flux.extrapolated {
		d.add(Finding{Severity: Doubt, Path: "field.current", Fix: "take a spin-up reading at the field current it will run at"},
			"the field current, %.2f A, is above the highest one read: the flux there is a guess%s", a.flux.fieldAmps.Value, a.flux.off())
	}
	old := a.turn.old
	if m := a.meanTurn; a.turn.apart() {
		d.add(Finding{Severity: Doubt, Path: "old.lead", Fix: a.turn.otherMetal(m.Value) + "check the old turns, wire, strands, circuits and connection"},
			"the old winding's ohms make its mean turn %.0f mm, it was measured at %.0f mm", old.Value, m.Value)
	} else if geo, by, doubted := a.turn.doubted(); !m.Given() && doubted && !a.turn.impossible() { // reported at the old winding
		d.add(Finding{Severity: Doubt, Path: "old.lead", Fix: a.turn.otherMetal(geo.Value) + "check the old turns, wire, strands, circuits and connection"},
			"the old winding's ohms make its mean turn %.0f mm, %s make it about %.0f mm", old.Value, by, geo.Value)
	}
}

// off is the uncertainty of the flux, in words; "" where it is not known.
func (f *flux) off() string {
	if !f.perTurn.Known() || f.perTurn.PlusMinus == 0 || f.perTurn.Value == 0 {
		return ""
	}
	return fmt.Sprintf(", ±%.0f %%", 100*f.perTurn.PlusMinus/f.perTurn.Value)
}

// gapAlone says that the amps of a wound rotor's winding rest on its gap alone.
func (a aboutReadings) gapAlone(d *doubts, now quantity.Figure) {
	if a.field.Kind != job.FieldWound || a.henries.route != byGeometry || !now.Known() {
		return
	}
	d.add(Finding{Severity: Doubt, Path: "machine.air_gap", Fix: "give the plate's volts, amps and speed, or a short-circuit reading of the old winding, or its amps into a battery at two speeds", Source: job.Practice},
		"the inductance is estimated from the air gap alone; with a claw rotor it may be several times too high, and the amps depend on it")
}

// routes says when two readings of the same thing disagree.
func (a aboutReadings) routes(d *doubts) {
	short, bridge := a.henries.shortHenries(), a.henries.bridgeHenries()
	if !short.Known() || !bridge.Known() {
		return
	}
	if henriesApart(short, bridge) {
		d.add(Finding{Severity: Doubt, Path: "old.inductance", Fix: "the short-circuit reading is used: it was taken at the current that matters", Source: "small-signal and short-circuit inductance of one machine can differ by a factor of two"},
			"the bridge says %.3g mH a phase, the short circuit %.3g mH", bridge.Value*1000, short.Value*1000)
	}
}

// carried says which readings were converted to another field current.
func (a aboutReadings) carried(d *doubts) {
	for i, s := range a.shorts {
		if k := a.henries.carriedBy(s.FieldAmps); k != 1 {
			d.add(Finding{Severity: Note, Path: job.PathOf("short", i, "field"), Fix: "take it again at the field current of the spin-up reading", Source: "the short-circuit characteristic is a straight line: IEC 60034-4, IEEE Std 115 (from memory)"},
				"the short circuit was read at %.3g A of field, the flux at %.3g A: its amps are taken as %.3g times as many", s.FieldAmps.Value, a.flux.fieldAmps.Value, k)
		}
	}
}

// coils says which trial coils are not used.
func (a aboutReadings) coils(d *doubts) {
	r := fluxRoutes{machine: a.machine}
	for i, c := range a.trialCoils {
		at := func(name string) string { return job.PathOf("coil", i, name) }
		switch _, why := r.pitchFactor(c.Span); {
		case why != "":
			d.add(Finding{Severity: Doubt, Path: at("span"), Source: "pitch factor"}, "the trial coil is not used: %s", why)
		case !c.Turns.Given() || !c.RPM.Given() || !c.Volts.Given():
			d.add(Finding{Severity: Doubt, Path: at("turns"), Fix: "a trial coil is turns, a speed and a voltage"},
				"the trial coil is not whole and is not used")
		case c.FieldAmps.Given() && a.field.Kind == job.FieldMagnets:
			d.add(Finding{Severity: Note, Path: at("field")},
				"the trial coil was read with a wound rotor, and magnets are to turn: it is not used")
		}
	}
}

// together is what the readings say of each other.
func (a aboutReadings) together(d *doubts) {
	f := a.fit
	a.whole(d)
	if !f.ok {
		if f.why != "" && len(a.amps) > 0 {
			d.add(Finding{Severity: Doubt, Path: "amps[0].current"}, "the amps readings are not used: %s", f.why)
		}
		return
	}
	for _, c := range f.fit.Readings() {
		path := f.pathOf(c.Reading)
		switch {
		case c.Aside != "":
			d.add(Finding{Severity: Doubt, Path: path}, "%s, is not used: %s", kindWords(c.Kind), c.Aside)
		case c.Off > 1:
			read, unit := c.Amps, "A"
			switch c.Kind {
			case readings.SpinUp, readings.TrialCoil:
				read, unit = c.Volts, "V"
			case readings.Bridge:
				read, unit = c.Henries*1000, "mH"
				c.Shown *= 1000
			}
			d.add(Finding{Severity: Doubt, Path: path, Fix: "take it again, its speed too", Source: "least squares on the exact bridge"},
				"%s disagrees with the others: %.3g %s where they indicate %.3g %s, %.1f times the error expected of such a reading", kindWords(c.Kind), read, unit, c.Shown, unit, c.Off)
		}
	}
}

// whole is about readings that lack something.
func (a aboutReadings) whole(d *doubts) {
	for i, s := range a.amps {
		if !s.RPM.Given() || !s.Amps.Given() || !s.Volts.Given() {
			d.add(Finding{Severity: Doubt, Path: job.PathOf("amps", i, "current"), Fix: "an amps reading is a speed, amps and the volts at the bridge"},
				"the amps reading is not whole and is not used")
		}
	}
	if h := a.henries.bridgeHenries(); a.henries.old.LeadMilliHenries.Given() && !h.Known() {
		d.add(Finding{Severity: Doubt, Path: "old.inductance", Fix: "put the bridge on two leads of one set, all others open"},
			"the bridge reading is not used: %s", h.Why)
	}
}

// kindWords names a kind of reading at the head of a sentence.
func kindWords(k readings.Kind) string {
	switch k {
	case readings.Plate:
		return string(k)
	case readings.Began:
		return "the speed at which it began to charge"
	}
	return "the reading of " + string(k)
}

// pathOf is the field of a reading.
func (f *fitted) pathOf(r readings.Reading) string {
	for _, t := range f.told {
		if t.Kind == r.Kind && t.RPM == r.RPM && (t.Volts == r.Volts || t.Kind == readings.Short) {
			return t.path
		}
	}
	return ""
}

// doubtLone asks about a length that is not in inches while those beside it are.
func doubtLone(d *doubts, j *job.Job) {
	for _, path := range j.LoneMillimetres {
		d.add(Finding{Severity: Doubt, Path: path, Fix: "write the unit behind it, in or mm"},
			"the lengths beside it are in inches, this one in mm")
	}
}

// doubtWires asks about a whole number that names no gauge system.
func doubtWires(d *doubts, j *job.Job) {
	for _, path := range j.BareGauges {
		g := j.GaugeAt(path)
		if g.IsZero() {
			continue
		}
		number := strings.TrimSuffix(g.String(), " AWG")
		other := ""
		if s, err := wiretable.Parse(number + " SWG"); err == nil {
			other = fmt.Sprintf(" (%.2f mm), or %s (%.2f mm)", g.BareMM(wiretable.Heavy), s, s.BareMM(wiretable.Heavy))
		}
		d.add(Finding{Severity: Doubt, Path: path, Trial: trialAt(j, path), Fix: fmt.Sprintf("write %q, %q or the diameter", g.String(), number+" SWG")},
			"%s of which gauge? It is taken as %s%s", number, g, other)
	}
}

// trialAt is the name of the trial that a path is in, "" for none.
func trialAt(j *job.Job, path string) string {
	switch table, i, _ := job.SplitPath(path); {
	case table == "trial" && i < len(j.Trials):
		return j.Trials[i].Name
	case table == "wound" && i < len(j.AsWound):
		return j.AsWound[i].Trial
	}
	return ""
}
