package winding

import (
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # The other numbers of a formula
//
// A formula names figures by their ids. Whatever else it needs, so that working it out by hand gives
// the figure shown, has a name here: the number of circuits, the resistivity, the watts at one point of
// the drive. These are the outcome's numbers, or a ratio of two of its figures; metric, so that the
// formula holds as written.

// term is one such number, and how it is written.
type term struct {
	value  float64
	dim    quantity.Dimension
	digits int
	ok     bool
}

var (
	resistivity = quantity.Only("Ω·mm²/m")
	perVolume   = quantity.Only("kg/cm³")
	metric      = quantity.Only("m")
	metricArea  = quantity.Only("mm²")
)

// termOf is a trial's term by its name; a term of a point has the condition behind its name.
func termOf(name string, j *job.Job, m *MachineOutcome, t *TrialOutcome) term {
	if of, ok := strings.CutPrefix(name, "at."); ok {
		return termAt(of, j, m, t)
	}
	ratio := func(a, b quantity.Figure) term {
		return term{a.Value / b.Value, quantity.None, 3, a.Known() && b.Known() && b.Value != 0}
	}
	equal := !unequal(j, t.Name) && t.CoilsPerPhase.Known() && t.Turns.Known() && t.Conductors.Known()
	if of, ok := strings.CutPrefix(name, "was."); ok {
		return t.was.term(of)
	}
	if of, ok := strings.CutPrefix(name, "limit."); ok {
		return t.termOfLimit(of, j)
	}
	switch name {
	case "circuits":
		return term{float64(t.Circuits), quantity.None, 0, t.Circuits > 0}
	case "coil_turns":
		return coilTurns(j, t)
	case "rest_flux":
		return term{t.restFlux, quantity.None, 4, t.restFlux > 0}
	case "strands":
		return term{float64(t.Strands), quantity.None, 0, t.Strands > 0}
	case "sides":
		return term{t.Conductors.Value / (t.Turns.Value * float64(t.Strands)), quantity.None, 3, equal && t.Turns.Value > 0 && t.Strands > 0}
	case "lead_factor":
		return ratio(t.LeadOhms20, t.PhaseOhms20)
	case "line_factor":
		return ratio(t.LinePerRPM, t.PhasePerRPM)
	case "peak_factor":
		return ratio(t.PeakDCPerRPM, t.LinePerRPM)
	case "allowance":
		return ratio(t.BuyKg, t.CopperKg)
	case "rho":
		return term{1e6 * t.metal.Resistivity(20), resistivity, 5, true}
	case "density":
		return term{1e-6 * t.metal.DensityKgM3(), perVolume, 3, true}
	case "mean_turn_m":
		return term{t.MeanTurnMM.Value / 1000, metric, 4, t.MeanTurnMM.Known()}
	case "area_mm2":
		return term{t.ConductorAreaMM2.Value, metricArea, 4, t.ConductorAreaMM2.Known()}
	case "all_turns":
		coils := t.CoilsPerPhase.Value * j.Machine.Phases.Or(3) * j.Machine.Sets.Or(1)
		return term{t.Turns.Value * coils, quantity.None, 0, equal}
	}
	return term{}
}

// coilTurns is the turns of a coil; of unequal ones the mean.
func coilTurns(j *job.Job, t *TrialOutcome) term {
	if !unequal(j, t.Name) {
		return term{t.Turns.Value, quantity.None, 0, t.Turns.Known()}
	}
	sum, coils := 0, 0
	for _, s := range t.Shapes {
		sum, coils = sum+s.Count*s.Turns, coils+s.Count
	}
	return term{float64(sum) / float64(max(1, coils)), quantity.None, 4, coils > 0}
}

// oldSum is the old winding as volts are scaled from it: volts between two leads at 1000 rpm, turns in
// series, winding factor, and the ratio of line to phase volts.
type oldSum struct{ volts, series, kw, line float64 }

// newOldSum is it where the volts come from the old winding; else nil.
func newOldSum(f *flux, old *oldWinding, m *machine) *oldSum {
	c := &old.coils
	if per := f.phasePerRPM(c); f.fromOld && per.Known() && c.series > 0 {
		line := m.linePerPhase(old.Connection)
		return &oldSum{1000 * per.Value * line, c.series, c.effective / c.series, line}
	}
	return nil
}

func (o *oldSum) term(name string) term {
	if o == nil {
		return term{}
	}
	switch name {
	case "volts":
		return term{o.volts, quantity.VoltsAC, 4, true}
	case "series":
		return term{o.series, quantity.None, 4, true}
	case "kw":
		return term{o.kw, quantity.None, 4, true}
	case "line":
		return term{o.line, quantity.None, 4, true}
	}
	return term{}
}

// chainFormula says how a winding's volts at 1000 rpm come about.
func (t *TrialOutcome) chainFormula() string {
	if t.was != nil {
		return "{was.volts} × ({series_turns} × {kw1} × {line_factor}) / ({was.series} × {was.kw} × {was.line})"
	}
	return "1000 × {line_factor} × 4.44 × {hertz_per_rpm} × {series_turns} × {kw1} × {flux_per_pole_mwb} / 1000"
}

// beginsFormula says how the speed at which charging begins comes about.
func (t *TrialOutcome) beginsFormula() string {
	if t.restFlux == 1 {
		return "({battery_rest_v} + 2 × {diode_v}) / {volts_dc_peak_per_rpm}"
	}
	return "({battery_rest_v} + 2 × {diode_v}) / ({volts_dc_peak_per_rpm} × {rest_flux})"
}

// limitFormulas are the limits with their numbers: the amps rms that a conductor or a phase may carry
// over those that one ampere DC makes, or the plate's amps.
var limitFormulas = map[string]string{
	limitDensity:     "{limit.density} × {conductor_area_mm2} / {limit.form}",
	limitOldDensity:  "{limit.density} × {conductor_area_mm2} / {limit.form}",
	limitSameHeat:    "{limit.plate} / √{limit.heat}",
	limitTemperature: "√({limit.watts} / {limit.ohms}) / {limit.form}",
}

// limitFormula is that of the limit which governs a trial.
func (t *TrialOutcome) limitFormula() string { return limitFormulas[t.LimitBy] }

// termOfLimit is a number of the limit that governs.
func (t *TrialOutcome) termOfLimit(name string, j *job.Job) term {
	if len(t.Each) == 0 {
		return term{}
	}
	s := t.Each[0].sum
	switch name {
	case "density":
		return term{s.density, density, 3, true}
	case "form":
		return term{s.form, quantity.None, 4, true}
	case "heat":
		return term{s.heat, quantity.None, 4, true}
	case "watts":
		return term{s.watts, quantity.Watts, 3, true}
	case "ohms":
		return term{s.ohms, quantity.Ohms, 3, true}
	case "plate":
		return term{j.Old.RatedAmps.Value, quantity.Amps, 3, true}
	}
	return term{}
}

// termAt is a number of a trial's operating point in a condition: "copper_w_usual".
func termAt(name string, j *job.Job, m *MachineOutcome, t *TrialOutcome) term {
	cut := strings.LastIndexByte(name, '_')
	p := t.in(indexOf(name[cut+1:]))
	if p == nil {
		return term{}
	}
	watts := func(v float64) term { return term{v, quantity.Watts, 3, true} }
	air := j.Machine.AmbientC.Or(defaultAmbientC)
	heat := p.CopperWatts + ironThroughStator*p.IronWatts + fieldThroughStator*p.FieldWatts
	switch name[:cut] {
	case "bridge_a":
		return term{p.AmpsDC, quantity.Amps, 3, true}
	case "posts_v":
		return term{p.PostsVolts, quantity.Volts, 4, true}
	case "supply_v":
		return term{m.ChargingVolts.Value, quantity.Volts, 4, m.ChargingVolts.Known()}
	case "rpm":
		return term{p.RPM, quantity.RPM, 4, true}
	case "winding":
		return term{p.WindingC, quantity.Celsius, 3, p.followed && !p.TooHot}
	case "battery_w":
		return watts(p.BatteryWatts)
	case "field_w":
		return watts(p.FieldWatts)
	case "drive_w":
		return watts(p.DriveWatts)
	case "copper_w":
		return watts(p.CopperWatts)
	case "iron_w":
		return watts(p.IronWatts)
	case "torque":
		return term{p.TorqueNm, quantity.Torque, 3, true}
	case "air":
		return term{air, quantity.Celsius, 3, true}
	case "rise":
		return term{(p.WindingC - air) / heat, quantity.KelvinPerW, 3, heat > 0 && p.followed && !p.TooHot}
	}
	return term{}
}

// unequal reports whether the coils of a trial have turns of their own.
func unequal(j *job.Job, trial string) bool {
	for i := range j.Trials {
		if j.Trials[i].Name == trial {
			return len(j.Trials[i].CoilTurns) > 0
		}
	}
	return false
}
