package winding

import "slotwright/winding/quantity"

// # The one table of figures
//
// Every figure that comes out is described here once: its name, its unit, how many of its digits mean
// something, which way is better, what it means, what to do when it is past its limit, and whether
// tolerances are followed to it. Screens, card, report, JSON and help use it. A figure is added in two
// places: its field in the [Outcome], and its line here; a field without a line fails a test, and its ±
// is followed unless the line says why not.

// Side says which direction of a figure is better.
type Side int

const (
	// Neither side is better by itself.
	Neither Side = iota
	// Less is better.
	Less
	// More is better.
	More
)

// Show says where a figure of a trial appears beside those of the others.
type Show int

const (
	// InReport appears in the report only.
	InReport Show = iota
	// InGrid is a row of the Trials screen.
	InGrid
	// First is a row of the Trials screen even where room is short.
	First
	// InDrive is a row of the Drive screen.
	InDrive
)

// Spread is how the ± of a figure is found.
type Spread int

const (
	// Followed: every tolerance given is followed to it.
	Followed Spread = iota
	// AsGiven: a reading or a choice, with its own.
	AsGiven
	// Counted: a whole number of things.
	Counted
	// NeedsRunning: it would have to be run again for each tolerance, and is not.
	NeedsRunning
	// Rerun: solved again for each tolerance, in the usual condition and wherever the drive holds the
	// speed.
	Rerun
)

// Output is the description of one figure.
type Output struct {
	// ID is its JSON key, with those above it: "cut_in_rpm", "against_old.volts".
	ID string
	// Group is its heading.
	Group string
	// Label is a few words; [Output.LabelFor] adds the condition of the drive that it is for.
	Label string
	// At is the condition it is for; 0 for none.
	At int
	// Dim is the unit its value is in, and those it can be shown in; InWind replaces it where the drive
	// is wind.
	Dim, InWind quantity.Dimension
	// IfAny omits its row where no trial has it, because the machine is not of the kind.
	IfAny bool
	// Digits is how many significant figures mean something; 0 for a whole number.
	Digits int
	Better Side
	Show   Show
	Spread Spread
	// Meaning says in a line what the number is.
	Meaning string
	// Mend says what to change when the figure is past its limit.
	Mend string
	// Runs marks figures that require a running winding: they are not available for one that cannot be
	// wound.
	Runs bool
	past func(*Outcome, *TrialOutcome) bool
	path []int // of its field
}

// DimFor is the unit for a job: in wind, or with any other drive.
func (o *Output) DimFor(wind bool) quantity.Dimension {
	if wind && o.InWind != nil {
		return o.InWind
	}
	return o.Dim
}

// The conditions a figure may be for.
const (
	atSlow = iota + 1
	atUsual
	atTop
)

// LabelFor is the label with the condition it is for: "net amps, wheel 60 rpm", or "net amps, 1500 rpm"
// where there is no shaft but the alternator's.
func (o *Output) LabelFor(m *MachineOutcome) string {
	if o.At == 0 || o.At > len(m.Conditions) {
		return o.Label
	}
	return o.Label + ", " + m.Conditions[o.At-1].Head()
}

// The units that only figures have.
var (
	cmil       = quantity.Only("cmil")
	kWh        = quantity.Only("kWh")
	seconds    = quantity.Only("s")
	milliWeber = quantity.Only("mWb")
	density    = quantity.Only("A/mm²")
	perRPM     = quantity.Only("Hz")
	// voltsPerRPM are small numbers, not what a meter shows: all their decimals count.
	voltsPerRPM = quantity.Only("V")
)

// trialOutputs is every figure of a trial, in the order a rewinder asks.
var trialOutputs = []Output{
	{ID: "turns_per_coil", Group: "Fit", Label: "turns in one coil", Dim: quantity.None, Digits: 0, Spread: AsGiven,
		Meaning: "Turns of each coil; the largest where they are unequal."},
	{ID: "wire_fill", Group: "Fit", Label: "wire fill", Dim: quantity.None, Digits: 2, Show: First,
		Meaning: "Turns × strands × overall diameter² over the lined slot's area. The limit is yours to set.",
		Mend:    "fewer turns, thinner wire or fewer strands",
		past:    func(_ *Outcome, t *TrialOutcome) bool { return t.WireFill.Value > t.FillLimit.Value }},
	{ID: "turns_that_fit", Group: "Fit", Label: "turns that fit", Dim: quantity.None, Digits: 0, Show: First, Spread: Counted,
		Meaning: "Most whole turns of this wire within the fill limit.", Mend: "fewer turns or thinner wire",
		past: func(_ *Outcome, t *TrialOutcome) bool { return t.tooMany() }},
	{ID: "copper_fill", Group: "Fit", Label: "copper fill", Dim: quantity.None, Digits: 2, Better: More, Show: InGrid,
		Meaning: "Bare metal over the bare slot."},
	{ID: "mouth_spare_mm", Group: "Fit", Label: "mouth to spare", Dim: quantity.Millimetres, Digits: 2, Show: InGrid,
		Meaning: "Lined mouth less the wire's diameter: below zero it cannot be put in.", Mend: "thinner wire with more strands",
		past: func(_ *Outcome, t *TrialOutcome) bool { return t.MouthSpareMM.Value <= 0 }},
	{ID: "copper_per_slot_mm2", Group: "Fit", Label: "metal per slot", Dim: quantity.SquareMM, Digits: 3, Better: More, Show: InGrid,
		Meaning: "Bare metal in one slot: more means less heat for the same watts."},
	{ID: "bare_mm", Group: "Fit", Label: "bare diameter", Dim: quantity.Millimetres, Digits: 4,
		Meaning: "Of the thicker wire, without its enamel."},
	{ID: "overall_mm", Group: "Fit", Label: "over the enamel", Dim: quantity.Millimetres, Digits: 4,
		Meaning: "What a caliper shows over the enamel."},
	{ID: "conductor_area_mm2", Group: "Fit", Label: "conductor area", Dim: quantity.SquareMM, Digits: 4,
		Meaning: "Bare metal of all strands in hand together."},
	{ID: "conductor_area_cmil", Group: "Fit", Label: "conductor area", Dim: cmil, Digits: 4,
		Meaning: "The same in circular mils."},
	{ID: "wires_per_slot", Group: "Fit", Label: "wires in a slot", Dim: quantity.None, Digits: 0, Spread: Counted,
		Meaning: "Turns × strands × coil sides in one slot."},
	{ID: "most_wires_that_pack", Group: "Fit", Label: "most wires that pack", Dim: quantity.None, Digits: 0, Spread: Counted,
		Meaning: "The most round wires of this size that can lie side by side in the lined slot at the very best."},
	{ID: "round_fill", Group: "Fit", Label: "fill of round wires", Dim: quantity.None, Digits: 2,
		Meaning: "The wires' own round area, enamel and all, over the lined slot's."},
	{ID: "fill_limit", Group: "Fit", Label: "fill limit", Dim: quantity.None, Digits: 2, Spread: AsGiven,
		Meaning: "The wire fill not to be passed."},

	{ID: "kw1", Group: "Volts", Label: "winding factor", Dim: quantity.None, Digits: quantity.Places(4), Better: More, Show: InGrid, Spread: Counted,
		Meaning: "The part of the turns that counts for the working wave, from the coils themselves."},
	{ID: "kw3", Group: "Volts", Label: "factor, 3rd harmonic", Dim: quantity.None, Digits: quantity.Places(4), Spread: Counted, Meaning: "The same for the third harmonic."},
	{ID: "kw5", Group: "Volts", Label: "factor, 5th harmonic", Dim: quantity.None, Digits: quantity.Places(4), Spread: Counted, Meaning: "The same for the fifth harmonic."},
	{ID: "kw7", Group: "Volts", Label: "factor, 7th harmonic", Dim: quantity.None, Digits: quantity.Places(4), Spread: Counted, Meaning: "The same for the seventh harmonic."},
	{ID: "kw11", Group: "Volts", Label: "factor, 11th harmonic", Dim: quantity.None, Digits: quantity.Places(4), Spread: Counted, Meaning: "The same for the eleventh harmonic."},
	{ID: "kw13", Group: "Volts", Label: "factor, 13th harmonic", Dim: quantity.None, Digits: quantity.Places(4), Spread: Counted, Meaning: "The same for the thirteenth harmonic."},
	{ID: "coils_per_phase", Group: "Volts", Label: "coils in a phase", Dim: quantity.None, Digits: 0, Spread: Counted,
		Meaning: "All coils of one phase, of one set."},
	{ID: "series_turns", Group: "Volts", Label: "turns in series", Dim: quantity.None, Digits: 0, Show: InGrid, Spread: Counted,
		Meaning: "In each phase, from lead to star point."},
	{ID: "volts_line_rms_per_1000rpm", Group: "Volts", Label: "two leads, 1000 rpm", Dim: quantity.VoltsAC, Digits: 3, Show: First,
		Meaning: "Volts rms between two leads, the alternator at 1000 rpm, nothing connected."},
	{ID: "cut_in_rpm", Group: "Volts", Label: "charging begins", Dim: quantity.RPM, Digits: 3, Better: Less, Show: First,
		Meaning: "Speed of the alternator at which the first amps reach the battery at rest.", Mend: "more turns, or a larger ratio",
		past: func(o *Outcome, t *TrialOutcome) bool {
			// A rotor in the wind begins in stronger wind: its amps in light wind say that.
			return !t.inWind() && o.Machine.SlowRPM.Known() && t.CutInRPM.Value > o.Machine.SlowRPM.Value
		}},
	{ID: "break_even_rpm", Group: "Volts", IfAny: true, Label: "net gain from", Dim: quantity.RPM, Digits: 3, Better: Less, Show: First, Spread: NeedsRunning,
		Meaning: "Alternator speed from which more reaches the battery, taking charge, than the rotor takes out of it.", Mend: "more turns, a smaller field current, or a larger ratio",
		past: func(o *Outcome, t *TrialOutcome) bool {
			return !t.inWind() && o.Machine.SlowRPM.Known() && t.BreakEvenRPM.Value > o.Machine.SlowRPM.Value
		}},
	{ID: "volts_dc_open_top", Group: "Volts", Label: "open at top speed", Dim: quantity.VoltsDC, Digits: 3, Better: Less, Show: InGrid,
		Meaning: "Peak DC unloaded at the top speed: what diodes and fingers meet when the battery comes off.", Mend: "diodes rated higher, or fewer turns",
		past: func(o *Outcome, t *TrialOutcome) bool {
			r := o.Machine.DiodeReverseVolts
			return r.Known() && t.OpenAtTopVolts.Value > r.Value
		}},
	{ID: "volts_dc_open_gale", Group: "Volts", Label: "open in the gale", Dim: quantity.VoltsDC, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Peak DC with nothing connected and the rotor running free in the gale."},
	{ID: "volts_dc_open_furl", Group: "Volts", Label: "open when it furls", Dim: quantity.VoltsDC, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Peak DC with nothing connected and the rotor running free in the wind at which it furls."},
	{ID: "volts_dc_most", Group: "Volts", Label: "most volts anywhere", Dim: quantity.VoltsDC, Digits: 3, Better: Less, Show: InGrid, Spread: NeedsRunning,
		Meaning: "The highest of: unloaded at the top speed, unloaded in furling wind and in the gale, the battery absorbing.", Mend: "diodes rated higher, or fewer turns",
		past: func(o *Outcome, t *TrialOutcome) bool {
			r := o.Machine.DiodeReverseVolts
			return r.Known() && t.MostVolts.Value > r.Value
		}},
	{ID: "volts_phase_rms_per_rpm", Group: "Volts", Label: "phase rms per 1 rpm", Dim: voltsPerRPM, Digits: 3,
		Meaning: "Volts rms of one phase for each rpm, nothing connected."},
	{ID: "volts_line_rms_per_rpm", Group: "Volts", Label: "line rms per 1 rpm", Dim: voltsPerRPM, Digits: 3,
		Meaning: "Volts rms between two leads for each rpm, nothing connected."},
	{ID: "volts_dc_peak_per_rpm", Group: "Volts", Label: "DC peak per 1 rpm", Dim: voltsPerRPM, Digits: 3,
		Meaning: "Peak volts behind the bridge for each rpm, nothing connected."},
	{ID: "volts_line_rms_test", Group: "Volts", Label: "line rms, at the test", Dim: quantity.VoltsAC, Digits: 3,
		Meaning: "Volts rms between two leads at the test speed, nothing connected."},

	{ID: "amps_dc_slow", Runs: true, Group: "Amps", Label: "net amps", At: atSlow, Dim: quantity.Amps, Digits: 3, Better: More, Show: First, Spread: Rerun,
		Meaning: "At the speed the drive really reaches: into the battery, net of the rotor's field, battery charging, winding warm.", Mend: "a winding that charges there and withstands it",
		past: notHad(slow)},
	{ID: "amps_dc_usual", Runs: true, Group: "Amps", Label: "net amps", At: atUsual, Dim: quantity.Amps, Digits: 3, Better: More, Show: First, Spread: Rerun,
		Meaning: "At the speed the drive really reaches: into the battery, net of the rotor's field, battery charging, winding warm.", Mend: "a winding that charges there and withstands it, less field, or magnets in the rotor",
		past: notHad(usual)},
	{ID: "amps_dc_usual_empty", Runs: true, Group: "Amps", Label: "… battery empty", Dim: quantity.Amps, Digits: 3, Better: More, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Net amps in the usual condition with the battery at its rest voltage.", Mend: "thicker wire, better cooling or a current limit",
		past: func(o *Outcome, t *TrialOutcome) bool { return t.failsIn(&o.Machine, usual) != "" }},
	{ID: "amps_dc_usual_absorbing", Runs: true, Group: "Amps", Label: "… battery nearly full", Dim: quantity.Amps, Digits: 3, Better: More, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Net amps in the usual condition with the battery at its absorption voltage.", Mend: "thicker wire, better cooling or a current limit",
		past: func(o *Outcome, t *TrialOutcome) bool { return t.failsIn(&o.Machine, usual) != "" }},
	{ID: "amps_dc_top", Runs: true, Group: "Amps", Label: "net amps", At: atTop, Dim: quantity.Amps, Digits: 3, Better: More, Show: First, Spread: Rerun,
		Meaning: "At the speed the drive really reaches: into the battery, net of the rotor's field, battery charging, winding warm.", Mend: "a winding that charges there and withstands it",
		past: notHad(top)},
	{ID: "net_w_usual", Runs: true, Group: "Amps", Label: "net watts", At: atUsual, Dim: quantity.Watts, Digits: 3, Better: More, Show: InGrid, Spread: Rerun,
		Meaning: "At the battery's posts, net of the rotor's field: volts there × net amps.", Mend: "a winding that charges there and withstands it",
		past: notHad(usual)},
	{ID: "runs_rpm_slow", Group: "Amps", Label: "alternator", At: atSlow, Dim: quantity.RPM, Digits: 3, Spread: Rerun, Meaning: "The speed at which it settles there."},
	{ID: "runs_rpm_usual", Group: "Amps", Label: "alternator", At: atUsual, Dim: quantity.RPM, Digits: 3, Show: InGrid, Spread: Rerun, Meaning: "The speed at which it settles there."},
	{ID: "runs_rpm_top", Group: "Amps", Label: "alternator", At: atTop, Dim: quantity.RPM, Digits: 3, Spread: Rerun, Meaning: "The speed at which it settles there."},
	{ID: "bridge_amps_dc_slow", Group: "Amps", Label: "bridge", At: atSlow, Dim: quantity.Amps, Digits: 3, Spread: Rerun,
		Meaning: "Bridge output, before the rotor's field is subtracted."},
	{ID: "bridge_amps_dc_usual", Group: "Amps", Label: "bridge", At: atUsual, Dim: quantity.Amps, Digits: 3, Spread: Rerun,
		Meaning: "Bridge output, before the rotor's field is subtracted.", Mend: "thicker wire or a current limit",
		past: pastLimit(usual)},
	{ID: "bridge_amps_dc_top", Group: "Amps", Label: "bridge", At: atTop, Dim: quantity.Amps, Digits: 3, Spread: Rerun,
		Meaning: "Bridge output, before the rotor's field is subtracted.", Mend: "thicker wire or a current limit",
		past: pastLimit(top)},
	{ID: "bridge_amps_dc_most", Group: "Amps", Label: "the most that flows", Dim: quantity.Amps, Digits: 3, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Out of the bridge in any condition, the battery empty and the winding cold, or the battery nearly full: what diodes, cable and fuse carry."},
	{ID: "bridge_amps_dc_steady", Group: "Amps", Label: "the most that lasts", Dim: quantity.Amps, Digits: 3, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Out of the bridge in any condition, the winding warm and the battery taking charge or nearly full: what is held against the current limit.", Mend: "thicker wire or a current limit",
		past: func(_ *Outcome, t *TrialOutcome) bool { return t.OverLimit() }},
	{ID: "target_rpm", Group: "Amps", Label: "amps wanted from", Dim: quantity.RPM, Digits: 3, Better: Less, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Alternator speed at which the amps wanted are reached, net, if something holds it there."},
	{ID: "cross_reference_rpm", Group: "Amps", Label: "crosses reference", Dim: quantity.RPM, Digits: 3, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Alternator speed at which this trial's curve crosses the reference's: below it one charges more, above it the other."},

	{ID: "limit_amps_dc", Group: "Limits", Label: "current limit", Dim: quantity.Amps, Digits: 3, Better: More, Show: First,
		Meaning: "The lowest of the limits by density, heat and temperature, DC side, at the usual speed; where a fan cools it, another at others."},
	{ID: "third_harmonic_a_usual", Group: "Limits", Label: "circulates in the delta", At: atUsual, Dim: quantity.Amps, Digits: 2, Better: Less, Spread: NeedsRunning,
		Meaning: "Amps rms that the third harmonic drives round inside a delta: heat and no charge. The shape of the gap's flux is assumed."},
	{ID: "limit_rpm", Group: "Limits", Label: "limit reached at", Dim: quantity.RPM, Digits: 3, Spread: NeedsRunning,
		Meaning: "Alternator speed at which the current limit is reached."},
	{ID: "winding_c_slow", Group: "Limits", Label: "winding", At: atSlow, Dim: quantity.Celsius, Digits: 3, Better: Less, Spread: NeedsRunning,
		Meaning: "The winding's mean temperature there: copper, iron and the rotor's field warm it."},
	{ID: "winding_c_usual", Group: "Limits", Label: "winding", At: atUsual, Dim: quantity.Celsius, Digits: 3, Better: Less, Show: InGrid, Spread: NeedsRunning,
		Meaning: "The winding's mean temperature there: copper, iron and the rotor's field warm it.", Mend: "thicker wire, better cooling, or less current",
		past: func(o *Outcome, t *TrialOutcome) bool { return t.HotUsualC.Value > o.Machine.MeanLimitC.Value }},
	{ID: "winding_c_top", Group: "Limits", Label: "winding", At: atTop, Dim: quantity.Celsius, Digits: 3, Better: Less, Show: InGrid, Spread: NeedsRunning,
		Meaning: "The winding's mean temperature there: copper, iron and the rotor's field warm it.", Mend: "thicker wire, better cooling, or less current",
		past: func(o *Outcome, t *TrialOutcome) bool { return t.HotTopC.Value > o.Machine.MeanLimitC.Value }},
	{ID: "winding_c_hottest", Group: "Limits", Label: "winding, at its hottest", Dim: quantity.Celsius, Digits: 3, Better: Less, Spread: NeedsRunning,
		Meaning: "The hottest anywhere in what the drive can do.", Mend: "thicker wire, better cooling, or less current",
		past: func(o *Outcome, t *TrialOutcome) bool { return t.HottestC.Value > o.Machine.MeanLimitC.Value }},
	{ID: "efficiency_usual", Runs: true, Group: "Limits", Label: "net of drive", At: atUsual, Dim: quantity.Percent, Digits: 2, Better: More, Show: InGrid, Spread: NeedsRunning,
		Meaning: "Efficiency: net watts into the battery over the watts taken of the drive, belt, chain or gears and all.", Mend: "a winding that charges there",
		past: nothingAt(usual)},
	{ID: "density_a_per_mm2_per_dc_amp", Group: "Limits", Label: "in the wire, for 1 A DC", Dim: density, Digits: 3,
		Meaning: "Current density in the wire for each ampere on the DC side."},
	{ID: "seconds_to_class_limit", Group: "Limits", Label: "time to class limit", Dim: seconds, Digits: 2, Spread: NeedsRunning,
		Meaning: "From the temperature it has at the usual condition to the class limit, at the limit current, with no cooling."},
	{ID: "ac_factor_top", Group: "Limits", Label: "AC over DC ohms, top", Dim: quantity.None, Digits: 4,
		Meaning: "AC over DC resistance of the wire at the top speed's frequency."},
	{ID: "ac_factor_top_twice_the_strands", Group: "Limits", Label: "… with twice the strands", Dim: quantity.None, Digits: 4,
		Meaning: "The same, had the wire twice the strands with the same metal."},
	{ID: "skin_depth_top_mm", Group: "Limits", Label: "skin depth, top", Dim: quantity.Millimetres, Digits: 3,
		Meaning: "How deep the current goes into thick metal at the top speed's frequency."},

	{ID: "lead_ohms_20c", Group: "Ohms", Label: "lead to lead 20 °C", Dim: quantity.Ohms, Digits: 3, Better: Less, Show: First,
		Meaning: "What the meter should show between two leads, cold."},
	{ID: "phase_ohms_20c", Group: "Ohms", Label: "a phase, 20 °C", Dim: quantity.Ohms, Digits: 3, Meaning: "Of one phase winding, cold."},
	{ID: "phase_ohms_test", Group: "Ohms", Label: "a phase, at the test", Dim: quantity.Ohms, Digits: 3,
		Meaning: "Of one phase winding at the test's temperature."},
	{ID: "lead_ohms_test", Group: "Ohms", Label: "leads, at the test", Dim: quantity.Ohms, Digits: 3,
		Meaning: "Between two leads at the test's temperature."},
	{ID: "phase_mh", Group: "Ohms", Label: "inductance, phase", Dim: quantity.Millihenry, Digits: 3, Better: Less, Show: InGrid,
		Meaning: "It sets the ceiling of the current at high speed."},
	{ID: "mean_turn_mm", Group: "Ohms", Label: "mean turn", Dim: quantity.Millimetres, Digits: 3, Show: InGrid,
		Meaning: "Mean length of one turn."},

	{ID: "wire_to_buy_kg", Group: "Wire", Label: "wire to buy", Dim: quantity.Kilograms, Digits: 3, Better: Less, Show: First,
		Meaning: "With the allowance for leads and a coil gone wrong."},
	{ID: "former_straight_mm", Group: "Wire", Label: "former: straight part", Dim: quantity.Millimetres, Digits: 3,
		Meaning: "Of the former, along the slot: stack and both end runs."},
	{ID: "former_width_mm", Group: "Wire", Label: "former: width", Dim: quantity.Millimetres, Digits: 3,
		Meaning: "From slot to slot at half depth, middle to middle of the coil's two sides."},
	{ID: "former_radius_mm", Group: "Wire", Label: "former: corner radius", Dim: quantity.Millimetres, Digits: 3,
		Meaning: "That makes the way round the mean turn."},
	{ID: "coil_length_m", Group: "Wire", Label: "wire in one coil", Dim: quantity.Metres, Digits: 3,
		Meaning: "Of each strand, in a middling coil, without leads."},
	{ID: "coil_kg", Group: "Wire", Label: "weight of one coil", Dim: quantity.Kilograms, Digits: 3,
		Meaning: "Metal of all strands of a middling coil: what a scale shows, enamel apart."},
	{ID: "metal_kg", Group: "Wire", Label: "metal wound in", Dim: quantity.Kilograms, Digits: 3, Meaning: "Without the allowance."},

	{ID: "charges_from_x", Group: "Drive", Label: "charges from", Dim: quantity.RPM, InWind: quantity.WindSpeed, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Speed of the drive's own shaft, or the wind, from which the battery is charged once it turns."},
	{ID: "starts_alone_from_x", Group: "Drive", Label: "starts by itself from", Dim: quantity.RPM, InWind: quantity.WindSpeed, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning, IfAny: true,
		Meaning: "Wind in which the rotor gets from rest to a charging speed. In weaker wind, down to where charging stops, a gust has to start it; then it keeps running."},
	{ID: "year_kwh", Runs: true, Group: "Drive", Label: "a year's energy", Dim: kWh, Digits: 3, Better: More, Show: First, Spread: NeedsRunning,
		Meaning: "Into the battery in a year of the stated wind, less what the rotor takes where that gains; elsewhere its current is off. Winds in which the winding burns are left out.", Mend: "a winding that withstands every wind up to the furling wind",
		past: func(o *Outcome, t *TrialOutcome) bool { return !t.stands(&o.Machine) }},
	{ID: "year_kwh_past_limit", Group: "Drive", Label: "… of it past a limit", Dim: kWh, Digits: 3, Better: Less, Show: First, Spread: NeedsRunning, IfAny: true,
		Meaning: "The part of a year's energy from winds in which the winding is past its current limit or its class: it does not survive those for long.", Mend: "a winding that withstands every wind up to the furling wind, better cooling, or furl earlier",
		past: func(o *Outcome, t *TrialOutcome) bool { return t.YearPastKWh.Value > 0 }},
	{ID: "full_power_rpm", Group: "Drive", Label: "full power: alternator", Dim: quantity.RPM, Digits: 3, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Where a drive that gives all it can comes to rest against this winding."},
	{ID: "full_power_amps_dc", Runs: true, Group: "Drive", Label: "full power: net amps", Dim: quantity.Amps, Digits: 3, Better: More, Show: InDrive, Spread: NeedsRunning,
		Meaning: "What is charged there, less what the rotor takes."},
	{ID: "full_power_drive_w", Group: "Drive", Label: "full power: the drive", Dim: quantity.Watts, Digits: 3, Spread: NeedsRunning,
		Meaning: "What the drive gives there."},

	{ID: "brake_at_top.lead_a", Group: "Leads joined", Label: "brake: lead current", Dim: quantity.Amps, Digits: 3, Show: InDrive, Spread: NeedsRunning,
		Meaning: "In each lead with all of them joined at the top speed."},
	{ID: "brake_at_top.torque_nm", Group: "Leads joined", Label: "brake: torque", Dim: quantity.Torque, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Braking torque at the alternator's shaft."},
	{ID: "brake_at_top.coil_a", Group: "Leads joined", Label: "brake: coil current", Dim: quantity.Amps, Digits: 3, Spread: NeedsRunning,
		Meaning: "In each phase winding with all leads joined at the top speed."},
	{ID: "brake_at_top.copper_w", Group: "Leads joined", Label: "brake: heat", Dim: quantity.Watts, Digits: 3, Spread: NeedsRunning,
		Meaning: "What the copper turns to heat meanwhile."},
	{ID: "brake_pair_at_top.lead_a", Group: "Leads joined", Label: "two leads: current", Dim: quantity.Amps, Digits: 3, Spread: NeedsRunning,
		Meaning: "In the two leads with only those joined at the top speed."},
	{ID: "brake_pair_at_top.torque_nm", Group: "Leads joined", Label: "two leads: torque", Dim: quantity.Torque, Digits: 2, Spread: NeedsRunning,
		Meaning: "What that holds back with."},
	{ID: "brake_pair_at_top.coil_a", Group: "Leads joined", Label: "two leads: coil current", Dim: quantity.Amps, Digits: 3, Spread: NeedsRunning,
		Meaning: "In the windings between the two leads."},
	{ID: "brake_pair_at_top.copper_w", Group: "Leads joined", Label: "two leads: heat", Dim: quantity.Watts, Digits: 3, Spread: NeedsRunning,
		Meaning: "What the copper turns to heat meanwhile."},
	{ID: "brake_peak_torque_nm", Group: "Leads joined", Label: "brake: most torque", Dim: quantity.Torque, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "The most that joined leads hold back with, at any speed, hot; faster than there they hold less."},
	{ID: "brake_peak_rpm", Group: "Leads joined", Label: "… at the speed", Dim: quantity.RPM, Digits: 3, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Where ohms and reactance of the winding are alike."},
	{ID: "brake_stops_to_x_cold", Group: "Leads joined", Label: "brake stops up to, cold", Dim: quantity.Watts, InWind: quantity.WindSpeed, Digits: 2, Better: More, Show: InDrive, Spread: NeedsRunning,
		Meaning: "The most wind, or the most power of the drive, in which joined leads bring a turning shaft to rest, the winding at 20 °C."},
	{ID: "brake_stops_to_x_hot", Group: "Leads joined", Label: "brake stops up to, hot", Dim: quantity.Watts, InWind: quantity.WindSpeed, Digits: 2, Better: More, Show: InDrive, Spread: NeedsRunning,
		Meaning: "The same with the winding at its class limit: the hotter, the less it holds."},
	{ID: "brake_seconds_to_class_limit", Group: "Leads joined", Label: "brake: time to limit", Dim: seconds, Digits: 2, Better: More, Show: InDrive, Spread: NeedsRunning,
		Meaning: "How long the copper takes to its class limit with all leads joined and no cooling, from the temperature it has."},
	{ID: "dump_load_ohms", Group: "Battery full", Label: "dump load, battery full", Dim: quantity.Ohms, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "What takes the most it gives at the absorption voltage, the winding still cold, as a gust finds it."},
	{ID: "dump_load_w", Group: "Battery full", Label: "… and its watts", Dim: quantity.Watts, Digits: 3, Show: InDrive, Spread: NeedsRunning,
		Meaning: "What that load has to withstand."},
	{ID: "fuse_a", Group: "Battery full", Label: "fuse", Dim: quantity.Amps, Digits: 3, Spread: NeedsRunning,
		Meaning: "At the battery's post: next size from 1.25 times the most that flows with this trial."},
	{ID: "over_charge_limit_a", Group: "Battery full", Label: "over charge limit by", Dim: quantity.Amps, Digits: 2, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "How far the most that flows is above what the battery should take; 0 where it is not.", Mend: "a larger battery, a current limit, or a dump load",
		past: func(_ *Outcome, t *TrialOutcome) bool { return t.OverChargeAmps.Value > 0 }},
	{ID: "field_w", Group: "Field", Label: "field takes", Dim: quantity.Watts, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "What the rotor coil takes at its full current, brushes and all."},
	{ID: "year_kwh_field_left_on", Group: "Field", IfAny: true, Label: "year, field left on", Dim: kWh, Digits: 3, Better: More, Show: InDrive, Spread: NeedsRunning,
		Meaning: "A year's energy with the rotor's current on all year, also in winds in which it takes more than comes in."},
	{ID: "hold_field_a_slow", Group: "Field", Label: "field to hold", At: atSlow, Dim: quantity.Amps, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Field current that holds the absorption voltage there with the amps wanted flowing, or with none where none are wanted: a battery that is full. What a regulator takes for its amps is said where it holds."},
	{ID: "hold_field_a_usual", Group: "Field", Label: "field to hold", At: atUsual, Dim: quantity.Amps, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Field current that holds the absorption voltage there with the amps wanted flowing, or with none where none are wanted: a battery that is full. What a regulator takes for its amps is said where it holds."},
	{ID: "hold_field_a_top", Group: "Field", Label: "field to hold", At: atTop, Dim: quantity.Amps, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Field current that holds the absorption voltage there with the amps wanted flowing, or with none where none are wanted: a battery that is full. What a regulator takes for its amps is said where it holds."},
	{ID: "best_field_a_slow", Group: "Field", Label: "best field", At: atSlow, Dim: quantity.Amps, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "The field current that charges most there without overloading winding or drive: what to set a regulator to."},
	{ID: "best_field_a_usual", Group: "Field", Label: "best field", At: atUsual, Dim: quantity.Amps, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "The field current that charges most there without overloading winding or drive: what to set a regulator to."},
	{ID: "best_field_a_top", Group: "Field", Label: "best field", At: atTop, Dim: quantity.Amps, Digits: 2, Show: InDrive, Spread: NeedsRunning,
		Meaning: "The field current that charges most there without overloading winding or drive: what to set a regulator to."},
	{ID: "best_field_gain_w_usual", Group: "Field", Label: "… and what it gains", Dim: quantity.Watts, Digits: 2, Better: More, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Net watts in the usual condition over the field current in use."},
	{ID: "self_excitation_build_rpm", Group: "Field", Label: "excites itself from", Dim: quantity.RPM, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Speed from which it builds up by itself, with no battery to lend the first ampere."},
	{ID: "self_excitation_hold_rpm", Group: "Field", Label: "… and holds to", Dim: quantity.RPM, Digits: 3, Better: Less, Show: InDrive, Spread: NeedsRunning,
		Meaning: "Speed below which a field fed from the machine itself falls back."},

	{ID: "against_old.volts", Group: "Against the old", Label: "volts over the old's", Dim: quantity.None, Digits: 3, Meaning: "New volts over old at one speed."},
	{ID: "against_old.ohms", Group: "Against the old", Label: "ohms over the old's", Dim: quantity.None, Digits: 3, Meaning: "New ohms between leads over old."},
	{ID: "against_old.copper", Group: "Against the old", Label: "metal over the old's", Dim: quantity.None, Digits: 3, Meaning: "New metal in a slot over old."},
	{ID: "against_old.cut_in", Group: "Against the old", Label: "cut-in over the old's", Dim: quantity.None, Digits: 3, Meaning: "New speed at which charging begins over the old one."},
}

// machineOutputs is every figure that no trial changes.
var machineOutputs = []Output{
	{ID: "slot_gross_mm2", Group: "Slot", Label: "slot, bare", Dim: quantity.SquareMM, Digits: 3, Meaning: "Area of the slot without its liner."},
	{ID: "slot_liner_mm2", Group: "Slot", Label: "liner takes", Dim: quantity.SquareMM, Digits: 3, Meaning: "Thickness of the liner times its way round the slot."},
	{ID: "slot_wedge_mm2", Group: "Slot", Label: "wedge takes", Dim: quantity.SquareMM, Digits: 3, Meaning: "What closes the slot."},
	{ID: "slot_separator_mm2", Group: "Slot", Label: "separator takes", Dim: quantity.SquareMM, Digits: 3, Meaning: "The paper between two coil sides."},
	{ID: "slot_net_mm2", Group: "Slot", Label: "room for wire", Dim: quantity.SquareMM, Digits: 3, Meaning: "What the insulation leaves."},
	{ID: "hertz_per_rpm", Group: "Flux", Label: "frequency for 1 rpm", Dim: perRPM, Digits: 3, Spread: Counted, Meaning: "Poles over 120."},
	{ID: "pole_pitch_mm", Group: "Flux", Label: "pole pitch", Dim: quantity.Millimetres, Digits: 3, Meaning: "Way along the bore from one pole to the next."},
	{ID: "flux_per_pole_mwb", Group: "Flux", Label: "flux of a pole", Dim: milliWeber, Digits: 3, Meaning: "At the field current that is used."},
	{ID: "gap_flux_density_t", Group: "Flux", Label: "gap flux density", Dim: quantity.Tesla, Digits: 3, Meaning: "Peak of the working wave in the gap that the flux speaks of."},
	{ID: "tooth_flux_density_t", Group: "Flux", Label: "in the teeth", Dim: quantity.Tesla, Digits: 2, Meaning: "Where they are narrowest, all flux of a slot pitch in them: past 1.8 T they are full."},
	{ID: "yoke_flux_density_t", Group: "Flux", Label: "in the yoke", Dim: quantity.Tesla, Digits: 2, Meaning: "Behind the slots, which half of a pole's flux goes through."},
	{ID: "field_amps", Group: "Flux", Label: "field current", Dim: quantity.Amps, Digits: 3, Spread: AsGiven, Meaning: "The rotor current that the flux is for."},
	{ID: "magnets_over_wound", Group: "Flux", Label: "with magnets: volts ×", Dim: quantity.None, Digits: 2,
		Meaning: "Volts that the magnets given would make over those of the wound rotor."},
	{ID: "battery_rest_v", Group: "Battery", Label: "battery at rest", Dim: quantity.Volts, Digits: 4, Spread: AsGiven, Meaning: "With nothing connected for some hours."},
	{ID: "battery_charging_v", Group: "Battery", Label: "battery while charging", Dim: quantity.Volts, Digits: 4, Spread: AsGiven, Meaning: "What amps are worked out against."},
	{ID: "battery_absorption_v", Group: "Battery", Label: "absorption", Dim: quantity.Volts, Digits: 4, Spread: AsGiven, Meaning: "Where a charger holds it until it is full."},
	{ID: "battery_float_v", Group: "Battery", Label: "float", Dim: quantity.Volts, Digits: 4, Spread: AsGiven, Meaning: "Where a charger keeps a full one."},
	{ID: "battery_charge_limit_a", Group: "Battery", Label: "charge limit", Dim: quantity.Amps, Digits: 3, Spread: AsGiven, Meaning: "The most it should be charged with."},
	{ID: "battery_inside_ohms", Group: "Battery", Label: "inside the battery", Dim: quantity.Ohms, Digits: 2, Spread: AsGiven, Meaning: "Its own resistance, by which its volts rise with each ampere."},
	{ID: "battery_and_cable_ohms", Group: "Battery", Label: "battery and cable", Dim: quantity.Ohms, Digits: 3, Meaning: "Inside the battery, and along the cable there and back."},
	{ID: "fuse_a", Group: "Battery", Label: "fuse", Dim: quantity.Amps, Digits: 3, Spread: NeedsRunning, Meaning: "At the battery's post: next size from 1.25 times the most that flows with any trial."},
	{ID: "diode_v", Group: "Battery", Label: "a diode drops", Dim: quantity.Volts, Digits: 3, Spread: AsGiven, Meaning: "Whatever flows."},
	{ID: "diode_ohms", Group: "Battery", Label: "… and per amp", Dim: quantity.Ohms, Digits: 3, Spread: AsGiven, Meaning: "More for each ampere."},
	{ID: "diode_reverse_v", Group: "Battery", Label: "diodes withstand, reverse", Dim: quantity.Volts, Digits: 3, Spread: AsGiven, Meaning: "Repetitive peak reverse rating."},
	{ID: "class_limit_c", Group: "Heat", Label: "class limit", Dim: quantity.Celsius, Digits: 3, Spread: AsGiven, Meaning: "Hottest the insulation's class allows (IEC 60085)."},
	{ID: "mean_limit_c", Group: "Heat", Label: "its mean may come to", Dim: quantity.Celsius, Digits: 3, Spread: AsGiven, Meaning: "What the class allows the whole winding, as its ohms tell (IEC 60034-1): its hottest spot is hotter."},
	{ID: "rise_k_per_w", Group: "Heat", Label: "rise per watt", Dim: quantity.KelvinPerW, Digits: 3, Meaning: "Kelvins for each watt that leaves through the stator, at the usual speed."},
	{ID: "drag_w_usual", Group: "Heat", Label: "iron and friction, usual", Dim: quantity.Watts, Digits: 3, Meaning: "What it takes to turn it with nothing connected, at the usual speed."},
	{ID: "slow_rpm", Group: "Speeds", Label: "slow", Dim: quantity.RPM, Digits: 3, Meaning: "Alternator speed from which it should charge."},
	{ID: "usual_rpm", Group: "Speeds", Label: "usual", Dim: quantity.RPM, Digits: 3, Meaning: "Alternator speed it has most of the time."},
	{ID: "top_rpm", Group: "Speeds", Label: "top", Dim: quantity.RPM, Digits: 3, Meaning: "Highest alternator speed."},
	{ID: "test_rpm", Group: "Speeds", Label: "test", Dim: quantity.RPM, Digits: 3, Spread: AsGiven, Meaning: "Alternator speed of the proof."},
	{ID: "test_c", Group: "Speeds", Label: "test temperature", Dim: quantity.Celsius, Digits: 3, Spread: AsGiven, Meaning: "Winding temperature at the proof."},
	{ID: "drive_ratio", Group: "Speeds", Label: "turns per drive turn", Dim: quantity.None, Digits: 3, Meaning: "Alternator turns for one turn of the drive."},
	{ID: "wanted_ratio", Group: "Speeds", Label: "… for the speed wanted", Dim: quantity.None, Digits: 3, Meaning: "The ratio that takes the drive's usual speed to the one wanted."},
	{ID: "driven_pulley_for_wanted_ratio_mm", Group: "Speeds", Label: "alternator pulley for it", Dim: quantity.Millimetres, Digits: 3, Meaning: "With the drive's pulley kept."},
	{ID: "driver_pulley_for_wanted_ratio_mm", Group: "Speeds", Label: "or drive pulley for it", Dim: quantity.Millimetres, Digits: 3, Meaning: "With the alternator's pulley kept."},
	{ID: "driven_teeth_for_wanted_ratio", Group: "Speeds", Label: "alternator teeth for it", Dim: quantity.None, Digits: 3, Meaning: "With the drive's wheel kept."},
}

// pointOutputs is what a trial does at one speed of its shaft.
var pointOutputs = []Output{
	{ID: "amps_dc", Label: "bridge amps", Dim: quantity.Amps, Digits: 3, Better: More, Meaning: "DC amps out of the bridge."},
	{ID: "net_amps_dc", Label: "net amps", Dim: quantity.Amps, Digits: 3, Better: More, Meaning: "DC amps into the battery, less what the rotor takes at its posts."},
	{ID: "net_w", Label: "net watts", Dim: quantity.Watts, Digits: 3, Better: More, Meaning: "Watts at the battery's posts, less what the rotor takes: the volts there times the net amps."},
	{ID: "cable_w", Label: "cable loss", Dim: quantity.Watts, Digits: 3, Better: Less, Meaning: "Heat in the cable."},
	{ID: "controller_w", Label: "controller", Dim: quantity.Watts, Digits: 3, Better: Less, Meaning: "What a controller in series takes up and is taken to burn, or a shunt burns beside the battery. A controller that switches burns little of it."},
	{ID: "held_field_a", Label: "field, held", Dim: quantity.Amps, Digits: 3, Meaning: "Field current that the regulator leaves the rotor where it holds the net amps."},
	{ID: "field_w", Label: "field", Dim: quantity.Watts, Digits: 3, Better: Less, Meaning: "What the rotor takes."},
	{ID: "battery_w", Label: "to battery", Dim: quantity.Watts, Digits: 3, Better: More, Meaning: "Watts at the battery's posts."},
	{ID: "efficiency", Label: "net of shaft", Dim: quantity.Percent, Digits: 2, Better: More, Meaning: "Efficiency: net watts into the battery over the watts at the alternator's shaft, without belt, chain or gears."},
	{ID: "winding_c", Label: "winding", Dim: quantity.Celsius, Digits: 2, Better: Less, Meaning: "Temperature the winding comes to."},
	{ID: "open_volts_dc", Label: "unloaded", Dim: quantity.VoltsDC, Digits: 3, Meaning: "Peak DC with nothing connected."},
	{ID: "shaft_w", Label: "shaft", Dim: quantity.Watts, Digits: 3, Meaning: "Watts the alternator's shaft takes."},
	{ID: "torque_nm", Label: "torque", Dim: quantity.Torque, Digits: 3, Meaning: "Torque at the alternator's shaft."},
	{ID: "posts_volts_dc", Label: "at its posts", Dim: quantity.Volts, Digits: 4, Meaning: "Volts at the battery's posts while those amps flow, as the current weighs them: net watts over net amps."},
	{ID: "volts_dc", Label: "at the bridge", Dim: quantity.Volts, Digits: 4, Meaning: "Volts behind the bridge."},
	{ID: "phase_amps_rms", Label: "phase RMS", Dim: quantity.Amps, Digits: 3, Meaning: "Amps rms in one phase winding."},
	{ID: "copper_w", Label: "copper loss", Dim: quantity.Watts, Digits: 3, Better: Less, Meaning: "Heat in the winding."},
	{ID: "diode_w", Label: "diode loss", Dim: quantity.Watts, Digits: 3, Better: Less, Meaning: "Heat in the bridge."},
	{ID: "iron_w", Label: "iron and drag", Dim: quantity.Watts, Digits: 3, Better: Less, Meaning: "Iron and friction."},
	{ID: "rpm", Label: "speed", Dim: quantity.RPM, Digits: 3, Meaning: "Of the alternator's shaft."},
}
