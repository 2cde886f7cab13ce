package job

import "slotwright/winding/quantity"

// What a person reads of a machine that turns: volts open, amps with the leads joined, amps
// into a battery, volts of a trial coil.

// SpinReading is an open-circuit voltage of the old winding at a speed.
type SpinReading struct {
	RPM       quantity.Reading
	Hertz     quantity.Reading // measured instead of the speed, or to check the poles
	LineVolts quantity.Reading // V, according to Across and Meter
	// Across is where it was read: "leads", "star point" (a lead and the star point), "bridge" (DC
	// behind the bridge, with only a meter on it) or "bridge and capacitor".
	Across string
	// Meter is the kind of AC meter: "rms", "average" (scaled to the rms of a sine) or "peak" (showing
	// the peak).
	Meter     string
	FieldAmps quantity.Reading // wound rotor only
}

// ShortReading is a current of the old winding with its leads joined.
type ShortReading struct {
	RPM       quantity.Reading
	LineAmps  quantity.Reading // A rms in one lead
	FieldAmps quantity.Reading // wound rotor only
	// Leads is which leads of a set were joined: "all" or "two".
	Leads string
	// Sets is how many of the sets had their leads joined; all when not given.
	Sets     quantity.Reading
	WindingC quantity.Reading // temperature of the winding, °C
}

// AmpsReading is what the old winding gave into a battery at a speed.
type AmpsReading struct {
	RPM       quantity.Reading
	Amps      quantity.Reading // A DC
	Volts     quantity.Reading // V DC at the bridge while they flowed
	FieldAmps quantity.Reading // wound rotor only
	WindingC  quantity.Reading // temperature of the winding, °C
}

// CoilReading is the voltage of a trial coil: some turns of any wire laid into two slots.
type CoilReading struct {
	Turns     quantity.Reading
	Span      quantity.Reading // slots from side to side
	RPM       quantity.Reading
	Volts     quantity.Reading // V rms
	FieldAmps quantity.Reading // wound rotor only
}

// speedOf is the speed of a reading, fieldOf its field current and warmOf the temperature
// of its winding.
func speedOf(table, how string, at func(*Job, int) *quantity.Reading) Input {
	return Input{Table: table, Name: "speed", Label: "Speed", Dim: quantity.RPM, Min: 1, Max: 50000,
		Help: "Speed of the alternator shaft at the reading.", How: how, at: standsAt(at)}
}

func fieldOf(table string, at func(*Job, int) *quantity.Reading) Input {
	return Input{Table: table, Name: "field", Label: "Field", Dim: quantity.Amps, Min: 0, Max: 100,
		Help: "Rotor current at the reading; empty with magnets.", How: "Ammeter in the lead to the brushes.", at: standsAt(at)}
}

func warmOf(table, ghost string, at func(*Job, int) *quantity.Reading) Input {
	return Input{Table: table, Name: "winding", Label: "Winding at", Dim: quantity.Celsius, Min: -50, Max: 250, Ghost: ghost,
		Help: "Temperature of the winding while this was read; its ohms go by it.", How: "From its ohms just before or after, or a thermocouple under the tape.", at: standsAt(at)}
}

func standsAt(at func(*Job, int) *quantity.Reading) func(*Job, int) any {
	return func(j *Job, i int) any { return at(j, i) }
}

const tachometer = "Tachometer, or Hz × 120 / poles."

// threePhases is where a lead has more than one other.
func threePhases(j *Job) bool { return j.Machine.Phases.Or(3) == 3 }

// twoSets is where a reading may be of one set or of both.
func twoSets(j *Job) bool { return j.Machine.Sets.Or(1) == 2 }

// spinFields are in the order of the bench: what is set, what is read, and what checks it.
var spinFields = ofTheOld([]Input{
	speedOf("spin", "Tachometer; or leave it empty and give the frequency.", func(j *Job, i int) *quantity.Reading { return &j.Spins[i].RPM }),
	{Table: "spin", Name: "line", Label: "Volts", Dim: quantity.Volts, Min: 0.001, Max: 2000,
		Help: "Volts of the OLD winding, nothing connected: AC between two leads unless Read across, among all fields, says otherwise.", How: "True-rms meter on AC volts; mean of the three pairs.",
		at: func(j *Job, i int) any { return &j.Spins[i].LineVolts }},
	fieldOf("spin", func(j *Job, i int) *quantity.Reading { return &j.Spins[i].FieldAmps }),
	{Table: "spin", Name: "frequency", Label: "Frequency", Dim: quantity.Hertz, Min: 0.1, Max: 5000, Ghost: "from speed and poles",
		Help: "Frequency of the AC volts, in place of the speed; given with the speed it checks the poles.", How: "The Hz range of a multimeter on two leads.",
		at: func(j *Job, i int) any { return &j.Spins[i].Hertz }},
	{Table: "spin", Name: "across", Label: "Read across", Kind: Word, Words: []string{AcrossLeads, AcrossStar, AcrossBridge, AcrossCapacitor}, Default: word(AcrossLeads, Practice),
		Help: "leads: two leads. star point: a lead and the star point. bridge: DC behind the bridge with only a meter on it. bridge and capacitor: the same with a capacitor across it.", How: "Behind a bridge a capacitor holds the peak; without one the meter shows the mean.",
		at: func(j *Job, i int) any { return &j.Spins[i].Across }},
	{Table: "spin", Name: "meter", Label: "Meter", Kind: Word, Words: []string{MeterRMS, MeterAverage, MeterPeak}, Default: word(MeterRMS, Practice),
		Help: "rms: a true-rms meter. average: a plain one, that shows rms of a sine. peak: one that shows the peak. On DC it does not matter.", How: "True-rms meters say so on their front.",
		at: func(j *Job, i int) any { return &j.Spins[i].Meter }},
})

var shortFields = ofTheOld([]Input{
	speedOf("short", tachometer, func(j *Job, i int) *quantity.Reading { return &j.Shorts[i].RPM }),
	{Table: "short", Name: "line", Label: "Lead current", Dim: quantity.Amps, Min: 0.01, Max: 5000,
		Help: "AC amps in one lead of the OLD winding, all leads joined.", How: "Clamp meter on AC; be quick, it heats.",
		at: func(j *Job, i int) any { return &j.Shorts[i].LineAmps }},
	fieldOf("short", func(j *Job, i int) *quantity.Reading { return &j.Shorts[i].FieldAmps }),
	{Table: "short", Name: "leads", Label: "Leads joined", Kind: Word, Words: []string{LeadsAll, LeadsTwo}, Default: word(LeadsAll, Practice), when: threePhases,
		Help: "all: the three leads of a set. two: only two of them, the third left open.", How: "Bolt all three together: it tells more.",
		at: func(j *Job, i int) any { return &j.Shorts[i].Leads }},
	{Table: "short", Name: "sets", Label: "Sets joined", Kind: Whole, Min: 1, Max: 2, Ghost: "all of them", when: twoSets,
		Help: "Of two sets: 1 when the leads of one were joined and the other's open, 2 when those of both were.", How: "Join the leads of each set among themselves, not across.",
		at: func(j *Job, i int) any { return &j.Shorts[i].Sets }},
	warmOf("short", "that of the ohms", func(j *Job, i int) *quantity.Reading { return &j.Shorts[i].WindingC }),
})

var ampsFields = ofTheOld([]Input{
	speedOf("amps", tachometer, func(j *Job, i int) *quantity.Reading { return &j.Amps[i].RPM }),
	{Table: "amps", Name: "current", Label: "Amps", Dim: quantity.Amps, Min: 0.01, Max: 5000,
		Help: "DC amps that the OLD winding sent into the battery, all sets together.", How: "Clamp meter on DC, or a shunt, in the lead from the bridge.",
		at: func(j *Job, i int) any { return &j.Amps[i].Amps }},
	{Table: "amps", Name: "voltage", Label: "Volts", Dim: quantity.Volts, Min: 1, Max: 1000,
		Help: "DC volts at the bridge's posts while those amps flowed.", How: "Meter on the bridge itself, not at the battery: the cable takes some.",
		at: func(j *Job, i int) any { return &j.Amps[i].Volts }},
	fieldOf("amps", func(j *Job, i int) *quantity.Reading { return &j.Amps[i].FieldAmps }),
	warmOf("amps", "that of the ohms", func(j *Job, i int) *quantity.Reading { return &j.Amps[i].WindingC }),
})

var coilFields = []Input{
	{Table: "coil", Name: "turns", Label: "Turns", Kind: Whole, Min: 1, Max: 1000,
		Help: "Turns of any wire laid into two slots of the bare iron.", How: "Five or ten turns of hook-up wire will do.",
		at: func(j *Job, i int) any { return &j.Coils[i].Turns }},
	{Table: "coil", Name: "span", Label: "Span", Kind: Whole, Min: 1, Max: 200, Ghost: "that of the coils",
		Help: "Slots from one side of the trial coil to the other.", How: "From slot 1 to slot 4 is a span of 3.",
		at: func(j *Job, i int) any { return &j.Coils[i].Span }},
	speedOf("coil", "Turn the rotor with a drill and a tachometer.", func(j *Job, i int) *quantity.Reading { return &j.Coils[i].RPM }),
	{Table: "coil", Name: "voltage", Label: "Volts", Dim: quantity.Volts, Min: 0.0001, Max: 1000,
		Help: "AC volts rms of the trial coil.", How: "True-rms meter on AC volts, mV range.",
		at: func(j *Job, i int) any { return &j.Coils[i].Volts }},
	fieldOf("coil", func(j *Job, i int) *quantity.Reading { return &j.Coils[i].FieldAmps }),
}
