package job

import "slotwright/winding/quantity"

// HowFull is how full the slots got, as the winder found it.
var HowFull = []string{"room", "full", "forced"}

// recordFields is what was really put in, beside the plan. Turns, wire and connections that it does not
// give are the trial's.
var recordFields = append(append([]Input{
	{Table: "wound", Name: "trial", Label: "Trial wound", Kind: Text, Ghost: "the first",
		Help: "Name of the trial that was wound.", How: "The letter on the card.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Trial }},
	{Table: "wound", Name: "date", Label: "Wound on", Kind: Text,
		Help: "When it was wound: 2026-03-14.", How: "Year, month, day: then lists sort.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Date }},
}, asTheTrial(woundFields("wound", func(j *Job, i int) *Wound { return &j.AsWound[i].Wound }))...), []Input{
	{Table: "wound", Name: "filled", Label: "How full", Kind: Word, Words: HowFull,
		Help: "room: more would have gone in. full: as much as this hand gets in. forced: more than it should be.", How: "The last turns of the last coil tell.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Filled }},
	{Table: "wound", Name: "wire_length", Label: "Wire used", Dim: quantity.Metres, Min: 0.1, Max: 100000,
		Help: "Wire that went in, all strands together, without leads and offcuts.", How: "A counter on the winder, or turns of the spool.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Metres }},
	{Table: "wound", Name: "wire_weight", Label: "… by weight", Dim: quantity.Kilograms, Min: 0.001, Max: 500,
		Help: "What the spool lost, offcuts put back; used when the length is not known. Enamel counts as metal, some parts in a hundred.", How: "Weigh the spool before and after.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Kg }},
	{Table: "wound", Name: "lead", Label: "Lead to lead", Dim: quantity.Ohms, Min: 0.0005, Max: 5000,
		Help: "Ohms between two leads of the finished winding: of each pair as on the card, U-V V-W W-U: 0.412 0.415 0.409; or their mean.", How: "Amps through it and millivolts across it; take off what the probes show touching.",
		at: func(j *Job, i int) any { return &j.AsWound[i].LeadOhms }, pairs: func(j *Job, i int) *[]float64 { return &j.AsWound[i].LeadPairs },
		step: func(j *Job, i int) *float64 { return &j.AsWound[i].LeadStep }},
	{Table: "wound", Name: "lead_at", Label: "… at", Dim: quantity.Celsius, Min: -50, Max: 250, Default: amount(20, cold),
		Help: "Temperature of the winding at that reading.", How: "Cold and rested: that of the room.",
		at: func(j *Job, i int) any { return &j.AsWound[i].LeadOhmsC }},
	{Table: "wound", Name: "line", Label: "Volts", Dim: quantity.Volts, Min: 0.001, Max: 2000,
		Help: "AC volts between two leads, nothing connected: of each pair as on the card, U-V V-W W-U: 12.1 12.0 12.3; or their mean.", How: "True-rms meter on AC volts.",
		at: func(j *Job, i int) any { return &j.AsWound[i].LineVolts }, pairs: func(j *Job, i int) *[]float64 { return &j.AsWound[i].LinePairs },
		step: func(j *Job, i int) *float64 { return &j.AsWound[i].LineStep }},
	{Table: "wound", Name: "speed", Label: "… at", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Speed of the alternator shaft at that reading.", How: "Tachometer, or Hz × 120 / poles.",
		at: func(j *Job, i int) any { return &j.AsWound[i].RPM }},
	{Table: "wound", Name: "field", Label: "… with", Dim: quantity.Amps, Min: 0.01, Max: 100, Ghost: "as planned", when: fieldKind(FieldWound),
		Help: "Rotor current at that reading: the volts planned are carried to it.", How: "Ammeter in the lead to the brushes.",
		at: func(j *Job, i int) any { return &j.AsWound[i].FieldAmps }},
	{Table: "wound", Name: "cut_in", Label: "Begins to charge at", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Alternator speed at which it first charged.", How: "Raise the speed slowly until the ammeter stirs.",
		at: func(j *Job, i int) any { return &j.AsWound[i].CutInRPM }},
	{Table: "wound", Name: "warm", Label: "After an hour", Dim: quantity.Celsius, Min: -50, Max: 300,
		Help: "How warm the winding was after an hour's charging: says its rise per watt.", How: "A probe between two coils; or leave it and give the ohms below.",
		at: func(j *Job, i int) any { return &j.AsWound[i].WarmC }},
	{Table: "wound", Name: "warm_lead", Label: "… by its ohms", Dim: quantity.Ohms, Min: 0.0005, Max: 5000,
		Help: "Ohms between two leads at once after that hour; needs the cold ohms too. Used when no temperature is given.", How: "Stop it and measure within half a minute, the same leads as cold.",
		at: func(j *Job, i int) any { return &j.AsWound[i].WarmLeadOhms }},
	{Table: "wound", Name: "warm_current", Label: "… with", Dim: quantity.Amps, Min: 0.01, Max: 2000,
		Help: "Amps DC out of the bridge during that hour: what charged, and what the rotor took of it.", How: "Ammeter behind the bridge; the mean when it swings.",
		at: func(j *Job, i int) any { return &j.AsWound[i].WarmAmps }},
	{Table: "wound", Name: "warm_speed", Label: "… at", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Speed of the alternator shaft during that hour.", How: "Tachometer, or Hz × 120 / poles.",
		at: func(j *Job, i int) any { return &j.AsWound[i].WarmRPM }},
	{Table: "wound", Name: "warm_air", Label: "… in air of", Dim: quantity.Celsius, Min: -50, Max: 100, Ghost: "the air around it",
		Help: "Temperature of the air during that hour.", How: "A thermometer an arm's length away, in the shade.",
		at: func(j *Job, i int) any { return &j.AsWound[i].WarmAirC }},
	{Table: "wound", Name: "connection", Label: "Connection", Kind: Word, Words: []string{"star", "delta"}, Ghost: "as the trial", when: threePhases,
		Help: "How the phases were really joined: star or delta.", How: "Three ends in one joint are a star.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Connection }},
	{Table: "wound", Name: "circuits", Label: "Circuits", Kind: Whole, Min: 1, Max: 120, Ghost: "as the trial",
		Help: "Parallel paths in each phase, as they were really joined.", How: "Count the coil ends that meet at a lead, divided by strands.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Circuits }},
	{Table: "wound", Name: "span", Label: "Span", Kind: Whole, Min: 1, Max: 180, Ghost: "as the trial",
		Help: "Slots from one side of a coil to the other, as they were really laid.", How: "From slot 1 to slot 4 is a span of 3.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Span }},
	{Table: "wound", Name: "layers", Label: "Layers", Kind: Whole, Min: 1, Max: 2, Ghost: "as the trial",
		Help: "Coil sides in a slot, as they were really laid.", How: "Half as many coils as slots is one layer, as many is two.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Layers }},
	{Table: "wound", Name: "kind", Label: "Winding", Kind: Word, Words: []string{"lap", "concentric", "wave"}, Ghost: "as the trial",
		Help: "lap, concentric or wave, as it was really laid.", How: "Coils of one size are lap or wave, one inside the other concentric.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Kind }},
	{Table: "wound", Name: "note", Label: "Note", Kind: Text, Help: "What to do otherwise next time.",
		at: func(j *Job, i int) any { return &j.AsWound[i].Note }},
}...)

// asTheTrial is fields of what is wound, whose turns and wire are the trial's where they are empty; a
// wire that is given is given whole, with its strands, enamel and metal.
func asTheTrial(fields []Input) []Input {
	how := map[string]string{ // nobody cuts through what was just wound
		"turns": "The counter on the winder, or strokes on paper.", "coil_turns": "As counted, coil by coil of a group.",
		"gauge": "The spool's label; calipers over the enamel where it has none.", "metal": "The spool's label.",
	}
	for i := range fields {
		if text, ok := how[fields[i].Name]; ok {
			fields[i].How = text
		}
		switch fields[i].Name {
		case "turns", "coil_turns", "gauge":
			fields[i].Ghost = "as the trial"
		}
	}
	return fields
}
