package winding

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # How a figure comes about
//
// For each figure: its formula in words, with the ids of figures in braces where they occur, the
// formula's source, and the inputs of the job that affect it. A screen shows the words, the same with
// the numbers filled in, and each input with its origin.
//
// The inputs are named by the fields of the job file: "old.turns" is one field, a table's name with a
// dot behind it ("spin.") every field of it. A test moves each reading of a job and sees what changes,
// so the lists cannot leave anything out.

// How is where a figure comes from.
type How struct {
	basis
	// where says at what speed and the like it holds, in the form of Formula.
	where string
}

// basis belongs to one figure, or to several explained alike.
type basis struct {
	// Formula is it in words, Source where that is from.
	Formula, Source string
	// Takes are the inputs that affect it: fields, or tables with a dot behind.
	Takes []string
}

// Inputs that affect many figures.
var (
	ofWire   = []string{"trial.gauge", "trial.strands", "trial.also_gauge", "trial.also_strands", "trial.build"}
	ofTurns  = []string{"trial.turns", "trial.coil_turns"}
	ofSlot   = []string{"slot.", "machine.layers"}
	ofLayout = []string{"machine.slots", "machine.poles", "machine.phases", "machine.layers", "machine.span", "machine.kind", "machine.sets", "trial.span", "trial.kind", "trial.layers", "trial.circuits"}
	// What the old winding's readings depend on: its turns and connection, its ohms where all is solved
	// jointly, what it gave and when it began to charge.
	ofOldFlux = []string{"old.turns", "old.coil_turns", "old.circuits", "old.connection", "old.lead", "old.lead_at", "old.cut_in", "old.began_current", "old.inductance",
		"old.plate_current", "old.plate_voltage", "old.plate_speed", "old.metal"}
	ofFlux    = append([]string{"spin.", "short.", "amps.", "coil.", "field.", "machine.bore", "machine.stack", "machine.air_gap", "machine.outside", "slot.", "battery."}, append(ofOldFlux, ofLayout...)...)
	ofBattery = []string{"battery."}
	ofDrive   = []string{"drive.", "drive_point.", "target.slow", "target.usual", "target.top"}
	// ofMean is what a mean turn may depend on; UsesIn says which of these it does.
	ofMean = []string{"machine.bore", "machine.stack", "machine.end_run", "machine.mean_turn", "machine.rotor", "machine.outside", "machine.stator", "machine.hole", "machine.side", "machine.thick", "slot.",
		"old.turns", "old.coil_turns", "old.gauge", "old.strands", "old.also_gauge", "old.also_strands", "old.build", "old.metal", "old.circuits", "old.connection", "old.lead", "old.lead_at"}
	ofPlate = []string{"old."}
)

func all(lists ...[]string) []string { return slices.Concat(lists...) }

var (
	ofVolts   = all(ofTurns, []string{"trial.connection"}, ofLayout, ofFlux)
	ofOhms    = all(ofWire, ofTurns, []string{"trial.connection", "trial.metal"}, ofLayout, ofMean)
	ofLimit   = all(ofOhms, ofFlux, ofDrive, ofBattery, []string{"target.", "machine.", "old."})
	ofHenries = all(ofVolts, ofWire, ofMean, []string{"short."})
	ofRunning = all(ofLimit, ofHenries)
)

const (
	byDefinition = "by definition"
	turnSource   = "geometry: straight in the iron, round outside it"
	bridgeSolved = "the bridge solved from diode to diode at that speed, battery and winding warm as they are"
	balanced     = "the speed at which the drive gives the torque that winding, bridge, iron and belts take"
)

// hows is every figure of a trial.
var hows = map[string]basis{
	"turns_per_coil":       {"as given, or the largest of unequal coils", byDefinition, ofTurns},
	"wire_fill":            {"wires in the slot × overall diameter² / room for wire = {wires_per_slot} × ({overall_mm})² / {slot_net_mm2}", "each round wire takes the square round it: common practice, no source", all(ofTurns, ofWire, ofSlot, ofLayout)},
	"turns_that_fit":       {"fill limit × room for wire / (strands × overall diameter² × coil sides in the slot), whole turns = {fill_limit} × {slot_net_mm2} / ({strands} × ({overall_mm})² × {sides})", job.Practice, all(ofWire, ofSlot, ofLayout)},
	"copper_fill":          {"metal in the slot / bare slot = {copper_per_slot_mm2} / {slot_gross_mm2}", byDefinition, all(ofTurns, ofWire, ofSlot, ofLayout)},
	"mouth_spare_mm":       {"mouth less liner on both sides less the thickest the wire may be", "largest overall diameter of the wire's standard", all(ofWire, ofSlot)},
	"copper_per_slot_mm2":  {"turns × coil sides in the slot × conductor area = {turns_per_coil} × {sides} × {conductor_area_mm2}", byDefinition, all(ofTurns, ofWire, ofLayout)},
	"bare_mm":              {"of the gauge's table, or the caliper's less the enamel", "ASTM B258, IEC 60317-0-1 and NEMA MW 1000 sizes", ofWire},
	"overall_mm":           {"of the gauge's table and build, or as measured", "ASTM B258, IEC 60317-0-1 and NEMA MW 1000 sizes", ofWire},
	"conductor_area_mm2":   {"π/4 × bare diameter² × strands", byDefinition, ofWire},
	"conductor_area_cmil":  {"bare diameter in thousandths of an inch, squared, × strands", byDefinition, ofWire},
	"wires_per_slot":       {"turns × strands × coil sides in the slot", byDefinition, all(ofTurns, ofWire, ofLayout)},
	"most_wires_that_pack": {"circles of that size laid side by side in the lined slot, the best of several ways of stacking", "computed, no formula", all(ofWire, ofSlot, ofLayout)},
	"round_fill":           {"wires × π/4 × overall diameter² / room for wire = {wires_per_slot} × π/4 × ({overall_mm})² / {slot_net_mm2}", byDefinition, all(ofTurns, ofWire, ofSlot, ofLayout)},
	"fill_limit":           {"as given", byDefinition, []string{"slot.fill_limit"}},

	"coils_per_phase": {"counted from the layout", byDefinition, ofLayout},
	"series_turns":    {"turns of a coil, of unequal ones the mean, × coils of a phase / circuits = {coil_turns} × {coils_per_phase} / {circuits}", byDefinition, all(ofTurns, ofLayout)},
	"volts_phase_rms_per_rpm": {"√2·π·f·N·kw·Φ, the shape of the flux left out = 4.44 × {hertz_per_rpm} × {series_turns} × {kw1} × {flux_per_pole_mwb} / 1000",
		"Faraday's law, as 4.44·f·N·kw·Φ in the handbooks", ofVolts},
	"volts_line_rms_per_rpm":     {"volts of a phase × √3 in star, × 1 in delta = {volts_phase_rms_per_rpm} × {line_factor}", byDefinition, ofVolts},
	"volts_line_rms_per_1000rpm": {"the old winding's volts by turns in series, winding factor, and √3 in star; where it told none, by the flux of a pole: 4.44·f·N·kw·Φ, √3 times that in star = {chain}", "Faraday's law", ofVolts},
	"volts_dc_peak_per_rpm":      {"√2 × volts between leads, twice that behind a doubler = {volts_line_rms_per_rpm} × {peak_factor}", byDefinition, ofVolts},
	"volts_line_rms_test":        {"{volts_line_rms_per_rpm} × {test_rpm}", byDefinition, all(ofVolts, ofDrive, []string{"target.test"})},
	"cut_in_rpm": {"(battery at rest + two diodes) / peak volts for each rpm, at the field that the battery drives at rest where it feeds the rotor = {begins}",
		"the tips of the wave carry the first amps, so the peak counts", all(ofVolts, ofBattery)},
	"volts_dc_open_top":  {"{volts_dc_peak_per_rpm} × {top_rpm}", byDefinition, all(ofVolts, ofDrive)},
	"volts_dc_open_gale": {"peak volts for each rpm × the speed of the free rotor in the gale", byDefinition, ofRunning},
	"volts_dc_open_furl": {"peak volts for each rpm × the speed of the free rotor where it furls", byDefinition, ofRunning},
	"volts_dc_most":      {"the highest of: {volts_dc_open_top} at the top speed, the free rotor's in furling wind and in the gale, {battery_absorption_v} absorbing", byDefinition, ofRunning},

	"target_rpm":              {"where the curve of net amps comes to the amps wanted", bridgeSolved, ofRunning},
	"cross_reference_rpm":     {"where the curve of net amps crosses the reference's", bridgeSolved, ofRunning},
	"amps_dc_usual_empty":     {"the usual condition again with the battery at {battery_rest_v}", bridgeSolved, ofRunning},
	"amps_dc_usual_absorbing": {"the usual condition again with the battery at {battery_absorption_v}", bridgeSolved, ofRunning},
	"net_w_usual":             {"volts at the battery's posts × net amps: what comes in there less what the rotor takes = {at.battery_w_usual} − {at.field_w_usual}", bridgeSolved, ofRunning},
	"bridge_amps_dc_steady":   {"the most the bridge gives in any condition, battery at {battery_charging_v}, winding warm", bridgeSolved, ofRunning},
	"bridge_amps_dc_most":     {"the most the bridge gives in any condition, battery at {battery_rest_v} or nearly full, winding cold", bridgeSolved, ofRunning},

	"limit_amps_dc": {"the lowest of: the plate's heat and density in the old winding, a density for the way it is cooled where that proves none, and the temperature class = {limit}",
		"densities: common practice; class: IEC 60085 and IEC 60034-1", ofLimit},
	"third_harmonic_a_usual":          {"third-harmonic volts of a phase / impedance of a phase at three times the frequency", "a delta joins them in a ring", ofRunning},
	"limit_rpm":                       {"where the bridge's amps come to {limit_amps_dc}, held at that speed", bridgeSolved, ofRunning},
	"winding_c_hottest":               {"the hottest of all conditions and of the drive's whole range", "steady heat balance", ofRunning},
	"efficiency_usual":                {"net watts into the battery / watts taken of the drive = {net_w_usual} / {at.drive_w_usual}", byDefinition, ofRunning},
	"density_a_per_mm2_per_dc_amp":    {"phase amps for one ampere DC / circuits / conductor area: … / {conductor_area_mm2}", "the current's own wave where it is known, else an ideal bridge's", ofRunning},
	"seconds_to_class_limit":          {"heat kept in the copper alone, at {density_a_per_mm2_per_dc_amp} for each of {limit_amps_dc}", "IEC 60949, adiabatic", ofRunning},
	"ac_factor_top":                   {"layers of round wire in the slot's own field at the top speed's frequency", "Dowell's layers, from memory", ofRunning},
	"ac_factor_top_twice_the_strands": {"the same with twice the strands", "Dowell's layers, from memory", ofRunning},
	"skin_depth_top_mm":               {"√(ρ / (π·f·μ)) at the top speed's frequency, 60 °C", "textbook", all(ofDrive, []string{"machine.poles", "trial.metal"})},

	"lead_ohms_20c":   {"ohms of a phase × 2 in star, × 2/3 in delta, a phase: resistivity × turns in series × mean turn / (circuits × area) = {lead_factor} × {rho} × {series_turns} × {mean_turn_m} / ({circuits} × {area_mm2})", "ρ of copper 0.017241 Ω·mm²/m at 20 °C, IEC 60028", ofOhms},
	"phase_ohms_20c":  {"resistivity × turns in series × mean turn / (circuits × area) = {rho} × {series_turns} × {mean_turn_m} / ({circuits} × {area_mm2})", "ρ of copper 0.017241 Ω·mm²/m at 20 °C, IEC 60028", ofOhms},
	"phase_ohms_test": {"{phase_ohms_20c} as warm as {test_c}", "α of copper from IEC 60028", all(ofOhms, []string{"target.test_at"})},
	"lead_ohms_test":  {"{lead_ohms_20c} as warm as {test_c}", "α of copper from IEC 60028", all(ofOhms, []string{"target.test_at"})},
	"phase_mh":        {"from the best reading there is, or all of them together, as the square of the turns", "L goes with N²", ofHenries},
	"mean_turn_mm":    {"as measured; else from the old winding's ohms, turns and wire; else from bore, stack and slot", turnSource, all(ofMean, []string{"trial.span"})},

	"wire_to_buy_kg": {"metal wound in, and the allowance = {metal_kg} × {allowance}", "density of copper 8.89 g/cm³, IEC 60028", all(ofOhms, []string{"target."})},
	"metal_kg":       {"mean turn × all turns × area × density = {mean_turn_m} × {all_turns} × {area_mm2} × {density}", "density of copper 8.89 g/cm³, IEC 60028", all(ofOhms, []string{"target."})},

	"charges_from_x":         {"the lowest speed of the drive, or wind, in which the balance of both leaves amps for the battery", balanced, ofRunning},
	"starts_alone_from_x":    {"the lowest wind in which a shaft taken up from rest through rising wind charges", balanced, ofRunning},
	"year_kwh":               {"net watts in each wind that leaves some and in which the winding does not burn × the hours a year has of it, summed", "Weibull distribution of winds", ofRunning},
	"year_kwh_past_limit":    {"the same of the winds in which the winding is past its current limit or its class", "Weibull distribution of winds", ofRunning},
	"year_kwh_field_left_on": {"the same of every wind, those in which the rotor takes more than comes in too", "Weibull distribution of winds", ofRunning},
	"full_power_rpm":         {balanced, "balance of torques", ofRunning},
	"full_power_amps_dc":     {"net amps where that is", bridgeSolved, ofRunning},
	"full_power_drive_w":     {"what the drive gives where that is", byDefinition, ofRunning},
}

// families are figures explained alike, by the beginning of their ids.
var families = []struct {
	begins string
	how    basis
}{
	{"former_", basis{"straight part: stack and both end runs; width: slot to slot at half depth; radius: what makes the way round the mean turn, (l − 2S − 2W)/(2π − 4)", "plane geometry", all(ofLayout, ofMean, []string{"trial.span", "machine."})}},
	{"coil_length_m", basis{"mean turn × turns of a coil, of unequal ones the mean = {mean_turn_m} × {coil_turns}", byDefinition, ofOhms}},
	{"coil_kg", basis{"{coil_length_m} × {conductor_area_mm2} × density", "density of copper 8.89 g/cm³, IEC 60028", ofOhms}},
	{"fuse_a", basis{"the next size from 1.25 times the most that flows, {bridge_amps_dc_most}", job.Practice, ofRunning}},
	{"kw", basis{"each coil side turned by its electrical angle, added up as arrows, over their plain sum", "star of slots", ofLayout}},
	{"amps_dc_", basis{"bridge amps less the rotor's watts over the volts at the battery's posts, where drive and alternator come to terms = {at.bridge_a<>} − {at.field_w<>} / {at.posts_v<>}", bridgeSolved, ofRunning}},
	{"runs_rpm_", basis{balanced + " = {at.torque<>} at the alternator's shaft, {at.drive_w<>} taken of the drive", "balance of torques", ofRunning}},
	{"bridge_amps_dc_", basis{"the mean of what the bridge lets through at that speed", bridgeSolved, ofRunning}},
	{"winding_c_", basis{fmt.Sprintf("air around it + rise per watt × (copper's heat + %[1]g of iron and friction + %[2]g of the field) = {at.air<>} + {at.rise<>} × ({at.copper_w<>} + %[1]g × {at.iron_w<>} + %[2]g × {at.field_w<>})", ironThroughStator, fieldThroughStator), "steady heat balance", ofRunning}},
	{"brake_", basis{"leads joined: E / impedance of the winding, hot; torque from the heat that makes", "textbook: short-circuited generator", ofRunning}},
	{"dump_load_", basis{"absorption volts, {battery_absorption_v}, and the most the bridge gives against them in any condition, the winding still cold, as a gust finds it", "Ohm's law", ofRunning}},
	{"over_charge_limit_a", basis{"{bridge_amps_dc_most} less {battery_charge_limit_a}", byDefinition, ofRunning}},
	{"field_w", basis{"field current² × ohms of the rotor coil, and the brushes", "Ohm's law", ofFlux}},
	{"hold_field_a_", basis{"the field current at which the bridge comes to the absorption volts with the amps wanted", bridgeSolved, ofRunning}},
	{"best_field_", basis{"the field current that leaves the most after its own watts, of those that winding and drive withstand", bridgeSolved, ofRunning}},
	{"break_even_rpm", basis{"where watts at the battery come to the field's {field_w}", bridgeSolved, ofRunning}},
	{"self_excitation_", basis{"where the volts that residual flux makes drive the field that makes more", "magnetisation curve against the field's line", ofRunning}},
	{"against_old.", basis{"new over old", byDefinition, all(ofOhms, ofVolts, ofPlate)}},
}

// wheres says where the figures of a condition hold.
var wheres = map[string]string{"amps_dc_": runsWhere, "bridge_amps_dc_": runsWhere, "winding_c_": "{at.rpm<>} of the alternator{fan}"}

// runsWhere says where the amps of a condition hold.
const runsWhere = "{at.rpm<>} of the alternator, the winding at {at.winding<>}, against {at.supply_v<>}{held<>}"

// HowOf says where a figure of a trial comes from.
func HowOf(id string) How {
	if h, ok := hows[id]; ok {
		return How{basis: h}
	}
	for _, f := range families {
		if strings.HasPrefix(id, f.begins) {
			how := How{f.how, wheres[f.begins]}
			at := strings.TrimPrefix(id, strings.TrimSuffix(f.begins, "_"))
			how.Formula, how.where = strings.ReplaceAll(how.Formula, "<>", at), strings.ReplaceAll(how.where, "<>", at)
			return how
		}
	}
	return How{}
}

// Uses reports whether a field of the job ("machine.bore", "trial.gauge") affects the figure.
func (h *How) Uses(field string) bool {
	return slices.ContainsFunc(h.Takes, func(take string) bool {
		return take == field || strings.HasSuffix(take, ".") && strings.HasPrefix(field, take)
	})
}

// UsesIn is Uses for a job: the old winding's wire stands in for its ohms where these were not
// read and amps are solved with them.
func (h *How) UsesIn(j *job.Job, field string) bool {
	if h.Uses(field) {
		return !ofOtherRotor(j, field) && !h.otherTurn(j, field)
	}
	wire, old := strings.CutPrefix(field, "old.")
	return old && slices.Contains(ofWire, "trial."+wire) && h.Uses("old.lead") && !j.Old.LeadOhms.Given() && (len(j.Amps) > 0 || j.Old.RatedAmps.Given())
}

// ofOtherRotor reports whether a field is about a rotor other than the job's: magnets beside a wound
// one.
func ofOtherRotor(j *job.Job, field string) bool {
	in, ok := job.InputAt(field)
	return ok && j.Field.Kind == job.FieldWound && in.OfMagnets()
}

// otherTurn reports whether a field belongs to a way to the mean turn that is not the one used, where
// the figure depends on the iron only through its mean turn. Coils round a tooth, and of another span
// than the machine's, use more than one way.
func (h *How) otherTurn(j *job.Job, field string) bool {
	mean, o := j.Machine.MeanTurnMM, &j.Old
	if !slices.Contains(h.Takes, "machine.mean_turn") || h.Uses("field.kind") || h.Uses("machine.ambient") || !slices.Contains(ofMean, field) && !strings.HasPrefix(field, "slot.") || j.Machine.Span.Whole() == 1 || j.Machine.Stator == job.StatorFlat {
		return false
	}
	for i := range j.Trials {
		if j.Trials[i].Span.Given() {
			return false
		}
	}
	byOhms := o.LeadOhms.Given() && o.Turns.Given() && !o.Bundle().IsZero()
	sure := byOhms && !o.LeadOhms.Origin.Weak() && !o.Turns.Origin.Weak()
	measured := mean.Given() && !(mean.Origin.Weak() && sure)
	switch old := strings.HasPrefix(field, "old."); {
	case field == "machine.mean_turn": // a given one comes first once it is measured
		return false
	case old:
		return measured || !byOhms
	}
	return measured || byOhms
}

// named matches a figure's id in a formula.
var named = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\{([a-z0-9_.]+)\}`) })

// Words is the formula in words: the part before its numbers where it has both, else with the figures'
// names in it.
func (h *How) Words() string {
	words, _, both := strings.Cut(h.Formula, " = ")
	if both && !named().MatchString(words) {
		return words
	}
	return named().ReplaceAllStringFunc(h.Formula, func(id string) string { return "“" + outputNamed(id).Label + "”" })
}

// Numbers is the formula with the trial's numbers in it, in the units chosen, each with one digit more
// than elsewhere so that the result agrees; "" where it names none, or one is not known.
func (h *How) Numbers(j *job.Job, m *MachineOutcome, t *TrialOutcome, units quantity.Choice) string {
	formula := strings.NewReplacer("{limit}", t.limitFormula(), "{chain}", t.chainFormula(), "{begins}", t.beginsFormula()).Replace(h.Formula)
	if words, numbers, both := strings.Cut(formula, " = "); both && !named().MatchString(words) {
		formula = "= " + numbers
	}
	return numbersOf(formula, j, m, t, units)
}

// SourceOf is the source of a trial's figure; for a mean turn it depends on the way it was found.
func (h *How) SourceOf(t *TrialOutcome) string {
	if h.Source == turnSource && t.MeanTurnFrom != "" {
		return t.MeanTurnFrom
	}
	return h.Source
}

// Where says where a figure of a condition holds: speed, temperature, volts; "" for one that holds
// anywhere, or where it does not run.
func (h *How) Where(j *job.Job, m *MachineOutcome, t *TrialOutcome, units quantity.Choice) string {
	where := strings.ReplaceAll(h.where, "{fan}", t.fanned.words())
	for i, name := range conditionNames {
		where = strings.ReplaceAll(where, "{held_"+name+"}", t.heldSaid(i))
	}
	return numbersOf(where, j, m, t, units)
}

// numbersOf replaces the names by numbers.
func numbersOf(formula string, j *job.Job, m *MachineOutcome, t *TrialOutcome, units quantity.Choice) string {
	known := named().MatchString(formula)
	text := named().ReplaceAllStringFunc(formula, func(braced string) string {
		p := numberNamed(braced[1:len(braced)-1], j, m, t)
		if !p.ok {
			known = false
			return ""
		}
		u := units.For(p.dim)
		return strings.TrimSpace(quantity.Screen.Value(u.From(p.value), u, p.digits+min(1, p.digits)) + " " + u.Name)
	})
	if !known {
		return ""
	}
	return text
}

// numberNamed is what a name in a formula stands for: a figure of the trial, one of the machine, or one
// of the other numbers (howparts.go).
func numberNamed(name string, j *job.Job, m *MachineOutcome, t *TrialOutcome) term {
	if o := trialByID[name]; o != nil {
		f := o.Of(t)
		return term{f.Value, o.Dim, o.Digits, f.Known()}
	}
	if o := machineByID[name]; o != nil {
		f := o.OfMachine(m)
		return term{f.Value, o.Dim, o.Digits, f.Known()}
	}
	return termOf(name, j, m, t)
}

// outputNamed is the figure whose id is in braces, a trial's before the machine's.
func outputNamed(braced string) *Output {
	id := braced[1 : len(braced)-1]
	if o := trialByID[id]; o != nil {
		return o
	}
	return must(machineByID, id)
}
