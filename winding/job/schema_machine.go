package job

import (
	"strings"

	"slotwright/winding/quantity"
	"slotwright/winding/slot"
)

var topFields = []Input{
	{Name: "format", Label: "File format", Kind: Whole, Min: 1, Max: 1, Allowed: []float64{1}, Help: "Which form of job file this is: 1.", How: "a higher one was written by a newer Slotwright: open it with that",
		at: func(j *Job, _ int) any { return new(quantity.Reading) }},
	{Name: "name", Label: "Job", Kind: Text, Help: "What you call this machine.", How: "Write the same name on the stator's tag.",
		at: func(j *Job, _ int) any { return &j.Name }},
	{Name: "notes", Label: "Notes", Kind: Text, Help: "Anything to remember: where it came from, what was odd about it.",
		at: func(j *Job, _ int) any { return &j.Notes }},
}

var machineFields = []Input{
	{Table: "machine", Name: "slots", Label: "Slots", Kind: Whole, Min: 3, Max: 360,
		Help: "How many slots the stator has; a flat one: gaps between its coils.", How: "Mark one with chalk and count round.",
		at: func(j *Job, _ int) any { return &j.Machine.Slots }},
	{Table: "machine", Name: "poles", Label: "Poles", Kind: Whole, Min: 2, Max: 240,
		Help: "How many magnetic poles the rotor has, north and south together.", How: "Claw rotor: count the claws of both halves. Magnets: count magnets; where bare iron stands between them as poles, twice that. Hz = rpm × poles / 120.",
		at: func(j *Job, _ int) any { return &j.Machine.Poles }},
	{Table: "machine", Name: "phases", Label: "Phases", Kind: Whole, Min: 1, Max: 3, Default: amount(3, Practice),
		Help: "1, 2 or 3. Three leads (or six, or three and a neutral) mean 3; two pairs that stand 90 electrical degrees apart, each with its own bridge, 2.", How: "Count leads before you cut them.",
		at: func(j *Job, _ int) any { return &j.Machine.Phases }},
	{Table: "machine", Name: "layers", Label: "Layers", Kind: Whole, Min: 1, Max: 2, Default: amount(2, Practice), when: slotted,
		Help: "Coil sides in one slot: 2 when every slot holds two coils, 1 when coils are half as many as slots.", How: "Count the coils: as many as slots is 2 layers.",
		at: func(j *Job, _ int) any { return &j.Machine.Layers }},
	{Table: "machine", Name: "span", Label: "Span", Kind: Whole, Min: 1, Max: 180, Ghost: "one pole pitch", when: slotted,
		Help: "Slots from one side of a coil to the other.", How: "From slot 1 to slot 4 is a span of 3.",
		at: func(j *Job, _ int) any { return &j.Machine.Span }},
	{Table: "machine", Name: "dead_slots", Label: "Dead slots", Kind: List, Min: 1, Max: 360, Ghost: "none",
		Help: "Slots that hold no coil of this winding: 1, 7, 13.", How: "Count up clockwise, seen from the end where the leads come out.",
		at: func(j *Job, _ int) any { return &j.Machine.DeadSlots }},
	{Table: "machine", Name: "bare_teeth", Label: "Bare teeth", Kind: List, Min: 1, Max: 360, Ghost: "none", when: toothCoils,
		Help: "Teeth without a coil of this winding; tooth 1 is between slots 1 and 2.", How: "Stations left empty, or taken by another coil (ignition, lights).",
		at: func(j *Job, _ int) any { return &j.Machine.BareTeeth }},
	{Table: "machine", Name: "kind", Label: "Winding", Kind: Word, Words: []string{"lap", "concentric", "wave"}, Default: word("lap", Practice), when: slotted,
		Help: "lap: equal coils. concentric: coils nested in one another. wave: the wire runs on round the stator.", How: "Look at the end of the stator.",
		at: func(j *Job, _ int) any { return &j.Machine.Kind }},
	{Table: "machine", Name: "sets", Label: "Sets", Kind: Whole, Min: 1, Max: 2, Default: amount(1, Practice),
		Help: "2 for two three-phase windings 30 electrical degrees apart, each with its own bridge.", How: "Six leads to two bridges mean 2.",
		at: func(j *Job, _ int) any { return &j.Machine.Sets }},
	{Table: "machine", Name: "stator", Label: "Stator", Kind: Word, Words: []string{StatorSlots, StatorFlat}, Default: word(StatorSlots, Practice),
		Help: "slots: iron with slots. flat: coils laid flat in a ring and cast, no iron, magnets on both sides; slots are then the coils.", How: "Does a magnet stick to it?",
		at: func(j *Job, _ int) any { return &j.Machine.Stator }},
	{Table: "machine", Name: "hole", Label: "Hole of a coil", Dim: quantity.Millimetres, Min: 0.5, Max: 500, when: flatCoils,
		Help: "Width of the hole of a coil along the circle through the middles of the magnets.", How: "Calipers; of a wedge-shaped coil on that circle.",
		at: func(j *Job, _ int) any { return &j.Machine.HoleMM }},
	{Table: "machine", Name: "side", Label: "Side of a coil", Dim: quantity.Millimetres, Min: 0.5, Max: 300, when: flatCoils,
		Help: "Width of the wire between hole and outer edge, on the same circle.", How: "(Outer width − hole) ÷ 2.",
		at: func(j *Job, _ int) any { return &j.Machine.SideMM }},
	{Table: "machine", Name: "thick", Label: "Thickness of a coil", Dim: quantity.Millimetres, Min: 0.5, Max: 200, when: flatCoils,
		Help: "Thickness of a coil along the shaft, wire only.", How: "Calipers, before casting.",
		at: func(j *Job, _ int) any { return &j.Machine.ThickMM }},
	{Table: "machine", Name: "rotor", Label: "Rotor runs", Kind: Word, Words: []string{RotorInside, RotorOutside}, Default: word(RotorInside, Practice), when: slotted,
		Help: "inside: in the stator. outside: round it, as in wheel hubs and flywheels.", How: "Which of the two stands still when the shaft is turned.",
		at: func(j *Job, _ int) any { return &j.Machine.Rotor }},
	{Table: "machine", Name: "bore", Label: "Diameter at the gap", Dim: quantity.Millimetres, Min: 10, Max: 2000,
		Help: "Diameter of the stator iron at the air gap: its bore, or, where the rotor turns outside, its outside. Flat coils: of the circle through the middles of the magnets.", How: "Calipers across two opposite teeth, tip to tip. With an odd number of slots none is opposite: turn a strip of paper once round the tips and divide by 3.14, or a plug or ring turned to fit.",
		at: func(j *Job, _ int) any { return &j.Machine.BoreMM }},
	{Table: "machine", Name: "stack", Label: "Stack", Dim: quantity.Millimetres, Min: 2, Max: 1000,
		Help: "Length of the iron along the shaft. Flat coils: radial length of the magnets.", How: "Calipers over the laminations, without the wire.",
		at: func(j *Job, _ int) any { return &j.Machine.StackMM }},
	{Table: "machine", Name: "outside", Label: "Outside diameter", Dim: quantity.Millimetres, Min: 10, Max: 3000, Ghost: "not checked", when: slotted,
		Help: "Diameter of the stator iron on the side away from the gap (its hole, where the rotor turns outside): shows how full the iron behind the slots is.", How: "Calipers over the laminations.",
		at: func(j *Job, _ int) any { return &j.Machine.OutsideMM }},
	{Table: "machine", Name: "air_gap", Label: "Air gap", Dim: quantity.Millimetres, Min: 0.05, Max: 20,
		Help: "Clear gap between rotor and teeth. Flat coils: half of the clear distance between facing magnets.", How: "Half the difference of the two diameters at the gap; a feeler gauge shows it.",
		at: func(j *Job, _ int) any { return &j.Machine.AirGapMM }},
	{Table: "machine", Name: "mean_turn", Label: "Mean turn", Dim: quantity.Millimetres, Min: 20, Max: 5000, Ghost: "from old ohms, else bore, stack",
		Help: "Length of one middling turn, all the way round.", How: "Unwind an old coil and divide its length by its turns, or lay a trial turn of string.",
		at: func(j *Job, _ int) any { return &j.Machine.MeanTurnMM }},
	{Table: "machine", Name: "end_run", Label: "End run", Dim: quantity.Millimetres, Min: 0, Max: 200, Default: amount(9, Practice), round: amount(ToothEndMM, Practice), when: slotted,
		Help: "How far a coil runs straight out of the iron before it bends, at each end.", How: "A rule on the old winding. A small alternator has 8 to 10 mm; a coil round one tooth, when empty, 1 mm.",
		at: func(j *Job, _ int) any { return &j.Machine.EndRunMM }},
	{Table: "machine", Name: "cooling", Label: "Cooling", Kind: Word, Words: []string{"closed", "open", "fan"}, Default: word("open", Practice),
		Help: "closed: no air through it. open: air gets through. fan: its own fan blows.", How: "Keep to what it has: a fan on the shaft is counted for less the slower it turns.",
		at: func(j *Job, _ int) any { return &j.Machine.Cooling }},
	{Table: "machine", Name: "thermal_class", Label: "Thermal class", Kind: Word, Words: []string{"A", "E", "B", "F", "H"}, Default: word("B", Practice),
		Help: "What the weakest insulation withstands: A 105, E 120, B 130, F 155, H 180 °C.", How: "The wire, liner and varnish suppliers print it; the lowest counts.",
		at: func(j *Job, _ int) any { return &j.Machine.ThermalClass }},
	{Table: "machine", Name: "ambient", Label: "Air around it", Dim: quantity.Celsius, Min: -50, Max: 100, Default: amount(25, Practice),
		Help: "Temperature of the air where it will run.", How: "A hot engine bay is 60 °C and more.",
		at: func(j *Job, _ int) any { return &j.Machine.AmbientC }},
	{Table: "machine", Name: "rise", Label: "Rise per watt", Dim: quantity.KelvinPerW, Min: 0.01, Max: 100, Ghost: "by size and cooling",
		Help: "How many degrees the winding gets hotter for each watt lost in it.", How: "Run a known DC through it until steady; (hot ohms say the °C) ÷ watts.",
		at: func(j *Job, _ int) any { return &j.Machine.KelvinPerWatt }},
	{Table: "machine", Name: "drag", Label: "Drag loss", Dim: quantity.Watts, Min: 0, Max: 50000, Ghost: "guessed by size, poles, flux",
		Help: "Watts it takes to turn it with nothing connected: iron and friction.", How: "Torque to keep it turning × rpm × 0.1047, at the speed below.",
		at: func(j *Job, _ int) any { return &j.Machine.IronWatts }},
	{Table: "machine", Name: "drag_at", Label: "Drag loss at", Dim: quantity.RPM, Min: 1, Max: 100000,
		Help: "The speed at which the drag loss was measured.", How: "Tachometer on the alternator shaft.",
		at: func(j *Job, _ int) any { return &j.Machine.IronRPM }},
}

func shaped(words ...string) func(*Job) bool {
	return func(j *Job) bool {
		for _, w := range words {
			if j.Slot.Shape == w || (j.Slot.Shape == "" && w == "area") {
				return true
			}
		}
		return false
	}
}

// toothCoils reports whether the machine's coils lie round one tooth each, as far as is known: a span
// of 1, or no span and a pole pitch nearer to one slot than to two.
func toothCoils(j *Job) bool {
	m := &j.Machine
	if m.Span.Given() {
		return m.Span.Whole() == 1
	}
	return m.Slots.Given() && m.Poles.Given() && 2*m.Slots.Value <= 3*m.Poles.Value
}

// flatCoils and slotted report which of the two the stator is.
func flatCoils(j *Job) bool { return j.Machine.Stator == StatorFlat }
func slotted(j *Job) bool   { return !flatCoils(j) }

// ofSlots is the fields of a slot, asked only where there are slots; the fill limit is asked for any
// coil.
func ofSlots(fields []Input) []Input {
	for i := range fields {
		if also := fields[i].when; fields[i].Name != "fill_limit" {
			fields[i].when = func(j *Job) bool { return slotted(j) && (also == nil || also(j)) }
		}
	}
	return fields
}

var slotFields = ofSlots([]Input{
	{Table: "slot", Name: "shape", Label: "Shape", Kind: Word, Words: slot.ShapeNames(), Default: word("area", Practice),
		Help: "area: only its area is known. parallel: straight sides. tapered: wider at one end. round: tapered with a round bottom. pear: round at both ends.", How: "Press soft clay or a paper rubbing into a slot and look.",
		at: func(j *Job, _ int) any { return &j.Slot.Shape }},
	{Table: "slot", Name: "area", Label: "Slot area", Dim: quantity.SquareMM, Min: 0.5, Max: 20000, when: shaped("area"),
		Help: "Area of the bare slot, without liner.", How: "Rub it onto squared paper and count squares, or width × depth: type 8 x 9 mm.",
		at: func(j *Job, _ int) any { return &j.Slot.AreaMM2 }},
	{Table: "slot", Name: "depth_per_width", Label: "Depth / width", Min: 0.2, Max: 20, Default: amount(2, Practice), when: shaped("area"),
		Help: "How many times deeper than wide the slot is; used with the area.", How: "A rule is good enough.",
		at: func(j *Job, _ int) any { return &j.Slot.DepthPerWidth }},
	{Table: "slot", Name: "top", Label: "Width below mouth", Dim: quantity.Millimetres, Min: 0.5, Max: 200, when: shaped("parallel", "tapered", "round", "pear"),
		Help: "Width of the slot just below its mouth (of a pear where the round begins: its diameter).", How: "Drill shanks as plug gauges, or calipers on the end of the iron.",
		at: func(j *Job, _ int) any { return &j.Slot.TopMM }},
	{Table: "slot", Name: "bottom", Label: "Width at bottom", Dim: quantity.Millimetres, Min: 0.5, Max: 200, when: shaped("tapered", "round", "pear"),
		Help: "Width of the slot at its bottom (where the round begins, if it has one).", How: "Calipers on the end of the iron.",
		at: func(j *Job, _ int) any { return &j.Slot.BottomMM }},
	{Table: "slot", Name: "depth", Label: "Slot depth", Dim: quantity.Millimetres, Min: 1, Max: 400, when: shaped("parallel", "tapered", "round", "pear"),
		Help: "From below the mouth to the bottom, what is round included.", How: "Depth rod of the calipers, less the height of the mouth.",
		at: func(j *Job, _ int) any { return &j.Slot.DepthMM }},
	{Table: "slot", Name: "tooth", Label: "Tooth width", Dim: quantity.Millimetres, Min: 0.5, Max: 500, Ghost: "from the slots and their widths", when: toothCoils,
		Help: "Width of the tooth that a coil lies round, halfway down.", How: "Calipers across its neck, without paper.",
		at: func(j *Job, _ int) any { return &j.Slot.ToothMM }},
	{Table: "slot", Name: "mouth", Label: "Mouth width", Dim: quantity.Millimetres, Min: 0.2, Max: 100, Ghost: "not checked",
		Help: "Width of the opening at the gap that wire must pass.", How: "Drill shanks or feeler gauges between two teeth tips.",
		at: func(j *Job, _ int) any { return &j.Slot.MouthMM }},
	{Table: "slot", Name: "mouth_height", Label: "Mouth height", Dim: quantity.Millimetres, Min: 0, Max: 50, Default: amount(1, Practice),
		Help: "Height of the opening, from the gap to where the slot widens.", How: "Depth rod of the calipers.",
		at: func(j *Job, _ int) any { return &j.Slot.MouthHeightMM }},
	{Table: "slot", Name: "liner", Label: "Liner thickness", Dim: quantity.Millimetres, Min: 0, Max: 5, Default: amount(0.25, Practice),
		Help: "Thickness of the slot paper.", How: "Calipers on ten sheets, divided by ten.",
		at: func(j *Job, _ int) any { return &j.Slot.LinerMM }},
	{Table: "slot", Name: "wedge", Label: "Wedge thickness", Dim: quantity.Millimetres, Min: 0, Max: 20, Default: amount(1, Practice),
		Help: "Thickness of the wedge or the paper cap that closes the slot.", How: "Calipers.",
		at: func(j *Job, _ int) any { return &j.Slot.WedgeMM }},
	{Table: "slot", Name: "separator", Label: "Separator paper", Dim: quantity.Millimetres, Min: 0, Max: 5, Default: amount(0, leftOut),
		Help: "Thickness of the paper between two coil sides in a slot.", How: "Calipers. Empty when none will be used.",
		at: func(j *Job, _ int) any { return &j.Slot.SeparatorMM }},
	{Table: "slot", Name: "fill_limit", Label: "Fill limit", Min: 0.1, Max: 1, Default: amount(0.70, Practice),
		Help: "How full the lined slot may get: turns × strands × overall diameter² over its area.", How: "By hand 0.65 to 0.75; a tidy old winding shows what this slot takes.",
		at: func(j *Job, _ int) any { return &j.Slot.FillLimit }},
})

// ofTheOld is fields read of the old winding, which have no meaning where it is gone.
func ofTheOld(fields []Input) []Input {
	for i := range fields {
		if also := fields[i].when; !strings.HasPrefix(fields[i].Name, "plate_") {
			fields[i].when = func(j *Job) bool { return !j.Old.Gone() && (also == nil || also(j)) }
		}
	}
	return fields
}

var stateOfTheOld = Input{Table: "old", Name: "state", Label: "State", Kind: Word, Words: []string{StateThere, StateGone}, Default: word(StateThere, Practice),
	Help: "there: its turns and wire can be counted, its ohms and volts measured. gone: nothing of it is left, the slots are bare; a trial coil then tells the volts.", How: "",
	at: func(j *Job, _ int) any { return &j.Old.State }}

var oldFields = append([]Input{stateOfTheOld}, ofTheOld(append(woundFields("old", func(j *Job, _ int) *Wound { return &j.Old.Wound }), []Input{
	{Table: "old", Name: "circuits", Label: "Circuits", Kind: Whole, Min: 1, Max: 120, Default: amount(1, Practice),
		Help: "Parallel paths in each phase.", How: "Count the wire ends at one lead, divided by strands.",
		at: func(j *Job, _ int) any { return &j.Old.Circuits }},
	{Table: "old", Name: "connection", Label: "Connection", Kind: Word, Words: []string{"star", "delta"}, Default: word("star", Practice), when: threePhases,
		Help: "star: three ends meet in one joint. delta: each phase's end joins the next one's start.", How: "A lump of three ends under varnish is the star point.",
		at: func(j *Job, _ int) any { return &j.Old.Connection }},
	{Table: "old", Name: "lead", Label: "Lead to lead", Dim: quantity.Ohms, Min: 0.0005, Max: 5000,
		Help: "Resistance between two leads of the old winding.", How: "Amps through it and millivolts across it; take off what the probes show touching.",
		at: func(j *Job, _ int) any { return &j.Old.LeadOhms }},
	{Table: "old", Name: "lead_at", Label: "… at", Dim: quantity.Celsius, Min: -50, Max: 250, Default: amount(20, cold),
		Help: "Temperature of the winding at that reading.", How: "Cold and rested: that of the room.",
		at: func(j *Job, _ int) any { return &j.Old.LeadOhmsC }},
	{Table: "old", Name: "cut_in", Label: "Began to charge", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Shaft speed at which the OLD winding began to charge the battery; used when there is no spin-up reading.", How: "Raise the speed slowly until the ammeter stirs.",
		at: func(j *Job, _ int) any { return &j.Old.CutInRPM }},
	{Table: "old", Name: "began_current", Label: "… with amps", Dim: quantity.Amps, Min: 0.001, Max: 100, Ghost: "1 % of the plate's",
		Help: "Amps that were seen there.", How: "What the ammeter showed when you took the speed.",
		at: func(j *Job, _ int) any { return &j.Old.BeganAmps }},
	{Table: "old", Name: "inductance", Label: "Inductance", Dim: quantity.Millihenry, Min: 0.0001, Max: 10000,
		Help: "Inductance of one set from a bridge (LCR meter): between two leads, the third open, unless the next field says otherwise.", How: "Turn the rotor and take the mean of the highest and lowest.",
		at: func(j *Job, _ int) any { return &j.Old.LeadMilliHenries }},
	{Table: "old", Name: "inductance_leads", Label: "… read on", Kind: Word, Words: []string{BridgeTwo, BridgeOneTwo, BridgeStar}, Default: word(BridgeTwo, Practice), when: threePhases,
		Help: "two leads: the third open. one against two: one lead and the two others joined. star point: one lead and the star point.", How: "Two leads is the plainest.",
		at: func(j *Job, _ int) any { return &j.Old.BridgeLeads }},
	{Table: "old", Name: "inductance_other", Label: "… other set", Kind: Word, Words: []string{OtherOpen, OtherJoined}, Default: word(OtherOpen, Practice), when: twoSets,
		Help: "What the leads of the other set did meanwhile; joined to each other they hide most of the inductance.", How: "Take them off their bridge.",
		at: func(j *Job, _ int) any { return &j.Old.OtherSet }},
	{Table: "old", Name: "plate_current", Label: "Plate amps", Dim: quantity.Amps, Min: 0.05, Max: 2000,
		Help: "Rated output current, DC.", How: "The plate, or the maker's sheet.",
		at: func(j *Job, _ int) any { return &j.Old.RatedAmps }},
	{Table: "old", Name: "plate_voltage", Label: "Plate volts", Dim: quantity.Volts, Min: 1, Max: 1000,
		Help: "Rated output voltage, DC.", How: "The plate.",
		at: func(j *Job, _ int) any { return &j.Old.RatedVolts }},
	{Table: "old", Name: "plate_speed", Label: "Plate speed", Dim: quantity.RPM, Min: 10, Max: 50000,
		Help: "Shaft speed of the rating.", How: "The plate or sheet; often 6000 for a road-vehicle alternator.",
		at: func(j *Job, _ int) any { return &j.Old.RatedRPM }},
}...))...)
