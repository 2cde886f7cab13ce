package job

import (
	"slotwright/winding/quantity"
)

// loadIs says whether the load is of a kind; a battery where nothing is given.
func loadIs(kind string) func(*Job) bool {
	return func(j *Job) bool { return j.Battery.Load == kind || kind == LoadBattery && j.Battery.Load == "" }
}

// singlePhases: half wave and doubler take one phase, or each of two independent ones; not three
// joined.
func singlePhases(j *Job) bool { return j.Machine.Phases.Or(3) < 3 }

// heldWithMagnets: with a wound rotor it is the field that is lowered.
func heldWithMagnets(j *Job) bool {
	return loadIs(LoadBattery)(j) && j.Battery.MostAmps.Given() && j.Field.Kind != FieldWound
}

var batteryFields = []Input{
	{Table: "battery", Name: "load", Label: "Load", Kind: Word, Words: []string{LoadBattery, LoadResistor, LoadBus}, Default: word(LoadBattery, Practice),
		Help: "battery; resistor: a heater or lamp; bus: a converter's input that holds a voltage.", How: "",
		at: func(j *Job, _ int) any { return &j.Battery.Load }},
	{Table: "battery", Name: "resistor", Label: "Resistor", Dim: quantity.Ohms, Min: 0.001, Max: 1e6, when: loadIs(LoadResistor),
		Help: "Resistance of the load when it is hot.", How: "A lamp or heater: its volts × its volts ÷ its watts.",
		at: func(j *Job, _ int) any { return &j.Battery.ResistorOhms }},
	{Table: "battery", Name: "bus", Label: "Bus voltage", Dim: quantity.Volts, Min: 1, Max: 1000, when: loadIs(LoadBus),
		Help: "Voltage that the converter's input holds, whatever the current.", How: "The converter's setting or sheet.",
		at: func(j *Job, _ int) any { return &j.Battery.BusVolts }},
	{Table: "battery", Name: "rectifier", Label: "Rectifier", Kind: Word, Words: []string{RectifierBridge, RectifierHalfWave, RectifierDoubler}, Default: word(RectifierBridge, Practice), when: singlePhases,
		Help: "bridge; half-wave: one diode in series; doubler: two diodes, two capacitors. The last two take one phase, or each of two.", How: "",
		at: func(j *Job, _ int) any { return &j.Battery.Rectifier }},
	{Table: "battery", Name: "chemistry", Label: "Battery", Kind: Word, Words: []string{"flooded", "agm", "gel", "lfp", "custom"}, Default: word("flooded", Practice), when: loadIs(LoadBattery),
		Help: "flooded, agm and gel are lead-acid; lfp is lithium iron phosphate; custom takes the voltages below.", How: "The label.",
		at: func(j *Job, _ int) any { return &j.Battery.Chemistry }},
	{Table: "battery", Name: "cells", Label: "Cells", Kind: Whole, Min: 1, Max: 200, Ghost: "12 V: 6, lfp 4", when: loadIs(LoadBattery),
		Help: "Cells in series, not volts: a 12 V lead battery has 6, a 24 V one 12; of lfp a 12.8 V one has 4, a 25.6 V one 8.", How: "The label.",
		at: func(j *Job, _ int) any { return &j.Battery.Cells }},
	{Table: "battery", Name: "capacity", Label: "Capacity", Dim: quantity.AmpHours, Min: 0.5, Max: 10000, Default: amount(100, Practice), when: loadIs(LoadBattery),
		Help: "What it holds; sets the charge limit and its inner resistance.", How: "The label.",
		at: func(j *Job, _ int) any { return &j.Battery.CapacityAh }},
	{Table: "battery", Name: "rest", Label: "Rest voltage", Dim: quantity.Volts, Min: 1, Max: 1000, Ghost: "by chemistry", when: loadIs(LoadBattery),
		Help: "Voltage at rest, half full or more: charging starts above it.", How: "Meter, hours after use.",
		at: func(j *Job, _ int) any { return &j.Battery.RestVolts }},
	{Table: "battery", Name: "charging", Label: "While charging", Dim: quantity.Volts, Min: 1, Max: 1000, Ghost: "half way", when: loadIs(LoadBattery),
		Help: "Voltage while it takes charge at a few amps: amps are worked out against it, and with more of them its posts are higher by the drop inside. Empty batteries are lower, full ones higher.", How: "Meter at the posts in the middle of a charge, few amps flowing.",
		at: func(j *Job, _ int) any { return &j.Battery.ChargingVolts }},
	{Table: "battery", Name: "absorption", Label: "Absorption", Dim: quantity.Volts, Min: 1, Max: 1000, Ghost: "by chemistry", when: loadIs(LoadBattery),
		Help: "Voltage at which charging must be held back.", How: "The battery maker's sheet.",
		at: func(j *Job, _ int) any { return &j.Battery.AbsorptionVolts }},
	{Table: "battery", Name: "float", Label: "Float", Dim: quantity.Volts, Min: 1, Max: 1000, Ghost: "by chemistry", when: loadIs(LoadBattery),
		Help: "Voltage at which it may stay for ever.", How: "The battery maker's sheet.",
		at: func(j *Job, _ int) any { return &j.Battery.FloatVolts }},
	{Table: "battery", Name: "charge_limit", Label: "Charge limit", Dim: quantity.Amps, Min: 0.05, Max: 5000, Ghost: "by Ah, kind", when: loadIs(LoadBattery),
		Help: "The most current the battery may be charged with.", How: "The battery maker's sheet.",
		at: func(j *Job, _ int) any { return &j.Battery.MaxChargeAmps }},
	{Table: "battery", Name: "most_current", Label: "Most current", Dim: quantity.Amps, Min: 0.05, Max: 5000, Ghost: "nothing holds it", when: loadIs(LoadBattery),
		Help: "Net amps that a regulator or controller lets into the battery at the most.", How: "Its setting or label; try values to find what to set it to.",
		at: func(j *Job, _ int) any { return &j.Battery.MostAmps }},
	{Table: "battery", Name: "held_by", Label: "… held by", Kind: Word, Words: []string{HeldBySeries, HeldByShunt}, Default: word(HeldBySeries, Practice), when: heldWithMagnets,
		Help: "series: a controller lets less through, winding and all, and is taken as one that drops volts and burns them. shunt: the winding carries all, what is over is burned in a dump load.", How: "The controller's sheet. A buck (most MPPT) asks less of winding and drive than is said; one that only opens and closes (most PWM) lets the winding carry all while closed: see it with Most current empty.",
		at: func(j *Job, _ int) any { return &j.Battery.HeldBy }},
	{Table: "battery", Name: "inner", Label: "Inner resistance", Dim: quantity.Ohms, Min: 0, Max: 10, Ghost: "by Ah, kind", when: loadIs(LoadBattery),
		Help: "Resistance inside the battery.", How: "(Volts before − volts under load) ÷ amps.",
		at: func(j *Job, _ int) any { return &j.Battery.Ohms }},
	{Table: "battery", Name: "cable", Label: "Cable, one way", Dim: quantity.Metres, Min: 0, Max: 2000, Default: amount(0, leftOut),
		Help: "Length from the bridge to the battery.", How: "Tape; one way, the return is counted.",
		at: func(j *Job, _ int) any { return &j.Battery.CableM }},
	{Table: "battery", Name: "cable_area", Label: "Cable area", Dim: quantity.SquareMM, Min: 0.05, Max: 500, Default: amount(16, Practice),
		Help: "Copper of one conductor: 16, or 6 AWG; of two cables side by side 2 x 16, or 2 x 6 AWG.", How: "Printed on the cable.",
		at: func(j *Job, _ int) any { return &j.Battery.CableMM2 }},
	{Table: "battery", Name: "diode", Label: "Diodes", Kind: Word, Words: []string{"silicon", "schottky"}, Default: word("silicon", Practice),
		Help: "silicon: about 0.8 V each and more. schottky: about 0.4 V, but check their reverse rating.", How: "The data sheet.",
		at: func(j *Job, _ int) any { return &j.Battery.Diode }},
	{Table: "battery", Name: "diode_drop", Label: "Diode drop", Dim: quantity.Volts, Min: 0, Max: 3, Ghost: "by kind",
		Help: "Part of the drop of one diode that does not go with current.", How: "Data sheet: the line through its curve, at zero amps.",
		at: func(j *Job, _ int) any { return &j.Battery.DiodeVolts }},
	{Table: "battery", Name: "diode_slope", Label: "Diode slope", Dim: quantity.Ohms, Min: 0, Max: 1, Default: amount(0.004, Practice),
		Help: "Part of the drop of one diode that grows with current.", How: "Data sheet: slope of its curve.",
		at: func(j *Job, _ int) any { return &j.Battery.DiodeOhms }},
	{Table: "battery", Name: "diode_reverse", Label: "Diode reverse", Dim: quantity.Volts, Min: 5, Max: 5000, Ghost: "not checked",
		Help: "Repetitive peak reverse voltage the diodes withstand (VRRM).", How: "Data sheet, or the code on the can.",
		at: func(j *Job, _ int) any { return &j.Battery.DiodeReverseVolts }},
	{Table: "battery", Name: "star_diodes", Label: "Star-point diodes", Kind: Word, Words: []string{"no", "yes"}, Default: word("no", Practice), when: threePhases,
		Help: "yes: two more diodes from the star point to both sides of the bridge. They carry the third harmonic at high speed.", How: "Eight diodes on one plate, or a fourth wire to it.",
		at: func(j *Job, _ int) any { return &j.Battery.StarDiodes }},
}

var targetFields = []Input{
	{Table: "target", Name: "current", Label: "Amps wanted, usual", Dim: quantity.Amps, Min: 0.05, Max: 5000,
		Help: "Net charging current you are after, DC, in the usual condition alone: at the usual speed, in wind at its mean. Slow and top have no aim of their own.", How: "A tenth of the battery's Ah is a good start.",
		at: func(j *Job, _ int) any { return &j.Target.Amps }},
	{Table: "target", Name: "slow", Label: "Slow speed", Dim: quantity.RPM, Min: 1, Max: 50000, Ghost: "from the drive",
		Help: "Alternator shaft speed at which charging should have begun.", How: "Drive speed × ratio.",
		at: func(j *Job, _ int) any { return &j.Target.SlowRPM }},
	{Table: "target", Name: "usual", Label: "Usual speed", Dim: quantity.RPM, Min: 1, Max: 50000, Ghost: "from the drive",
		Help: "Alternator shaft speed most of the time.", How: "Drive speed × ratio.",
		at: func(j *Job, _ int) any { return &j.Target.UsualRPM }},
	{Table: "target", Name: "top", Label: "Top speed", Dim: quantity.RPM, Min: 1, Max: 50000, Ghost: "from the drive",
		Help: "Highest alternator shaft speed.", How: "Drive speed × ratio.",
		at: func(j *Job, _ int) any { return &j.Target.TopRPM }},
	{Table: "target", Name: "test", Label: "Test speed", Dim: quantity.RPM, Min: 1, Max: 50000, Ghost: "the usual speed",
		Help: "Speed at which you will prove the winding (a lathe or a drill).", How: "What your lathe or drill runs at.",
		at: func(j *Job, _ int) any { return &j.Target.TestRPM }},
	{Table: "target", Name: "test_at", Label: "Test temperature", Dim: quantity.Celsius, Min: -50, Max: 250, Default: amount(20, cold),
		Help: "Temperature of the winding when you will measure its ohms.", How: "Thermometer on the bench.",
		at: func(j *Job, _ int) any { return &j.Target.TestC }},
	{Table: "target", Name: "reference", Label: "Reference", Kind: Text, Ghost: "the first trial",
		Help: "Name of the trial the others are compared with.", How: "",
		at: func(j *Job, _ int) any { return &j.Target.Reference }},
	{Table: "target", Name: "allowance", Label: "Wire allowance", Min: 0, Max: 1, Default: amount(0.10, Practice),
		Help: "Part added to the wire to buy: leads, joints, a coil gone wrong. 0.10 is 10 %.", How: "",
		at: func(j *Job, _ int) any { return &j.Target.Allowance }},
	{Table: "target", Name: "spool", Label: "Spool", Dim: quantity.Kilograms, Min: 0.01, Max: 500, Default: amount(1, Practice),
		Help: "Wire on one spool as your supplier sells it.", How: "The shop's list.",
		at: func(j *Job, _ int) any { return &j.Target.SpoolKg }},
}

var trialFields = append(append([]Input{
	{Table: "trial", Name: "name", Label: "Trial", Kind: Text, Help: "A letter or short name.",
		at: func(j *Job, i int) any { return &j.Trials[i].Name }},
	{Table: "trial", Name: "note", Label: "Note", Kind: Text, Help: "What this trial is for.",
		at: func(j *Job, i int) any { return &j.Trials[i].Note }},
}, woundFields("trial", func(j *Job, i int) *Wound { return &j.Trials[i].Wound })...), []Input{
	{Table: "trial", Name: "connection", Label: "Connection", Kind: Word, Words: []string{"star", "delta"}, Default: word("star", Practice), when: threePhases,
		Help: "star: more volts. delta: 0.577 of them, more amps.", How: "",
		at: func(j *Job, i int) any { return &j.Trials[i].Connection }},
	{Table: "trial", Name: "circuits", Label: "Circuits", Kind: Whole, Min: 1, Max: 120, Default: amount(1, Practice),
		Help: "Parallel paths in each phase; 1 is all coils in series.", How: "",
		at: func(j *Job, i int) any { return &j.Trials[i].Circuits }},
	{Table: "trial", Name: "span", Label: "Span", Kind: Whole, Min: 1, Max: 180, Ghost: "as the machine",
		Help: "Slots from one side of a coil to the other, if this trial differs from the machine.", How: "",
		at: func(j *Job, i int) any { return &j.Trials[i].Span }},
	{Table: "trial", Name: "layers", Label: "Layers", Kind: Whole, Min: 1, Max: 2, Ghost: "as the machine",
		Help: "Coil sides in a slot, if this trial differs from the machine.", How: "",
		at: func(j *Job, i int) any { return &j.Trials[i].Layers }},
	{Table: "trial", Name: "kind", Label: "Winding", Kind: Word, Words: []string{"lap", "concentric", "wave"}, Ghost: "as the machine",
		Help: "lap, concentric or wave, if this trial differs from the machine.", How: "",
		at: func(j *Job, i int) any { return &j.Trials[i].Kind }},
}...)

// planned chooses between the texts for a winding that is not wound yet and for one that is.
func planned(table, old, planned string) string {
	if table == "trial" {
		return planned
	}
	return old
}

// woundFields are the fields of what is wound in a coil, old or new.
func woundFields(table string, of func(j *Job, i int) *Wound) []Input {
	return []Input{
		{Table: table, Name: "turns", Label: "Turns", Kind: Whole, Min: 1, Max: 5000,
			Help: planned(table, "Turns in one coil.", "Turns in one coil, of how many that fit."),
			How:  planned(table, "Cut a coil through and count the ends, divided by strands.", "Few of thick wire begin late and carry much; many of thin the other way round."),
			at:   func(j *Job, i int) any { return &of(j, i).Turns }},
		{Table: table, Name: "coil_turns", Label: "Turns by coil", Kind: List, Min: 1, Max: 5000, Ghost: "all equal",
			Help: "Turns of each coil of a group, outermost first, when they differ: 12, 10, 8.", How: planned(table, "Count each coil of one group.", "As many as you mean to wind in each."),
			at: func(j *Job, i int) any { return &of(j, i).CoilTurns }},
		{Table: table, Name: "gauge", Label: "Wire", Kind: Wire,
			Help: "18 AWG, 19 SWG, 0.71 mm bare, 0.75 mm over (calipers over enamel), 0.0403 in.",
			How:  planned(table, "Calipers over enamel: write the figure and \"mm over\". Burn it off to measure bare.", "The spool's label; calipers over the enamel where it has none."),
			at:   func(j *Job, i int) any { return &of(j, i).Gauge }},
		{Table: table, Name: "strands", Label: "Strands", Kind: Whole, Min: 1, Max: 60, Default: amount(1, Practice),
			Help: planned(table, "Wires wound side by side as one.", "Wires wound side by side as one: two of thinner wire bend easily and pass a mouth that one thick does not."),
			How:  planned(table, "Count the ends at a lead.", "As many as you mean to wind side by side."),
			at:   func(j *Job, i int) any { return &of(j, i).Strands }},
		{Table: table, Name: "also_gauge", Label: "Second wire", Kind: Wire, Ghost: "none",
			Help: "A second size wound along with the first.", How: "",
			at: func(j *Job, i int) any { return &of(j, i).AlsoGauge }},
		{Table: table, Name: "also_strands", Label: "… strands", Kind: Whole, Min: 1, Max: 60, Default: amount(1, Practice),
			Help: "How many of the second size.", How: "",
			at: func(j *Job, i int) any { return &of(j, i).AlsoStrands }},
		{Table: table, Name: "build", Label: "Enamel", Kind: Word, Words: buildWords(), Default: word("heavy", Practice),
			Help: "Thickness of the enamel: grade 1, 2, 3 (IEC) or single, heavy, triple (MW 1000).", How: "The spool's label; heavy or grade 2 is usual.",
			at: func(j *Job, i int) any { return &of(j, i).Build }},
		{Table: table, Name: "metal", Label: "Metal", Kind: Word, Words: []string{"copper", "aluminium"}, Default: word("copper", Practice),
			Help: "copper or aluminium.", How: "Scrape it: aluminium is grey and soft.",
			at: func(j *Job, i int) any { return &of(j, i).Metal }},
	}
}
