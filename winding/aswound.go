package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # What was really wound
//
// A record stands beside the plan and changes nothing in it. Its trial is computed again with the turns
// and the wire that were really put in, connected as they really are; the readings are then compared
// with that: the mean turn by the wire used,
//
//	l = M/(s·N)   or   l = G/(g·N)
//
// with M the metres of all strands together, s strands, N turns of all coils, G the weight used and g
// that of a metre of all strands; the ohms, converted to 20 °C; the volts, in proportion to the speed
// at which they were read and, with a wound rotor, at the field current of the reading (atfield.go). A
// weight includes the enamel, which makes the turn by weight a few per cent too long (common practice,
// no source). Where length and weight are both given the turn goes by the length, and the weight is
// compared with the plan's separately.

// WoundOutcome is one winding as it was put in, compared with its prediction.
type WoundOutcome struct {
	Trial string `json:"trial,omitempty"`
	Date  string `json:"date,omitempty"`
	Note  string `json:"note,omitempty"`
	Span  int    `json:"span_slots,omitempty"`
	Wire  string `json:"wire,omitempty"`
	// Filled is room, full or forced.
	Filled   string          `json:"filled,omitempty"`
	Turns    quantity.Figure `json:"turns_per_coil"`
	WireFill quantity.Figure `json:"wire_fill"`
	BareMM   quantity.Figure `json:"bare_mm"`
	// MeanTurnMM is by the wire used.
	MeanTurnMM Proof `json:"mean_turn_mm"`
	// WireKg is the weight used beside the plan's, where the mean turn goes by the length.
	WireKg     Proof `json:"wire_weight_kg"`
	LeadOhms20 Proof `json:"lead_ohms_20c"`
	// LineVolts is at RPM.
	LineVolts Proof           `json:"volts_line_rms"`
	RPM       quantity.Figure `json:"volts_at_rpm"`
	// FieldAmps is a wound rotor's current at that reading, or the planned one.
	FieldAmps quantity.Figure `json:"volts_at_field_a"`
	CutInRPM  Proof           `json:"cut_in_rpm"`
	// RisePerWatt follows from the temperature after an hour.
	RisePerWatt Proof `json:"rise_k_per_w"`
	// Likely is what would explain the readings that are off, the closest first.
	Likely []Likely `json:"likely_faults,omitempty"`
	// could is every fault that such a winding allows.
	could []Likely
	// leads are the names of its phases, delta says how they are connected; series is the turns in
	// series of a phase with one circuit, else 0; magnets is the rotor's kind.
	leads   leads
	delta   bool
	series  float64
	magnets bool
	// restC is the temperature of its cold ohms, °C, where it may have been meant in °F, else 0; zeroC
	// is the temperature at which its metal's resistance extrapolates to zero.
	restC, zeroC float64
	// carrying is the uncertainty of converting the planned volts to FieldAmps, beside that of the
	// plan.
	carrying float64
}

// Proof is a reading beside its expected value.
type Proof struct {
	Read     quantity.Figure `json:"read"`
	Expected quantity.Figure `json:"expected"`
	// Off is the difference from what was expected, in per cent of that.
	Off quantity.Figure `json:"off_percent"`
	// Each is the reading of each pair of leads, where more than the mean was given.
	Each []float64 `json:"each,omitempty"`
	// even is how far a pair of a sound winding may be from the mean, relative; step the last digit
	// written; law what lies between two leads.
	even, step float64
	law        pairLaw
}

// defaultWoundC is the temperature of the ohms where none was given.
var defaultWoundC = job.DefaultOf("wound.lead_at")

// proof is a reading beside its expectation.
func proof(read, expected quantity.Figure) Proof {
	return Proof{Read: read, Expected: expected, Off: read.With(expected, func(r, e float64) float64 { return 100 * (r/e - 1) })}
}

// Wound works out every record of the job.
func (b *Bench) Wound() []WoundOutcome {
	by := proving{trials: b.job.Trials, machine: &b.machine, layouts: &b.layouts, bed: &b.bed, flux: &b.flux, rotor: &b.rotor, static: b.static}
	var list []WoundOutcome
	for i := range b.job.AsWound {
		o := by.record(&b.job.AsWound[i])
		if slices.Contains(b.job.WarmAtRest, job.PathOf("wound", i, "lead_at")) {
			o.restC = b.job.AsWound[i].LeadOhmsC.Value
		}
		list = append(list, o)
	}
	return list
}

// proving is what a record is compared with: the trials it may refer to, computed again as they were
// really wound.
type proving struct {
	trials  []job.Trial
	machine *machine
	layouts *layouts
	bed     *bed
	flux    *flux
	rotor   *excitation
	static  func(*candidate) TrialOutcome
}

// record works out one record.
func (p proving) record(r *job.AsWound) WoundOutcome {
	o := WoundOutcome{Trial: r.Trial, Date: r.Date, Note: r.Note, Filled: r.Filled, magnets: !p.rotor.wound, RPM: r.RPM.Figure("needs the speed at that reading")}
	o.FieldAmps = p.fed(r)
	plan, ok := p.planned(r)
	if !ok {
		no := quantity.Missing(fmt.Sprintf("the job has no trial %q", r.Trial))
		o.Turns, o.WireFill, o.BareMM = no, no, no
		o.MeanTurnMM, o.LeadOhms20, o.LineVolts, o.CutInRPM = proof(no, no), proof(no, no), proof(no, no), proof(no, no)
		o.WireKg, o.RisePerWatt = proof(no, no), proof(no, no)
		return o
	}
	w := p.layouts.candidate(plan)
	made := p.static(&w)
	o.Trial, o.Span, o.Wire, o.Turns, o.WireFill, o.BareMM = plan.Name, made.Span, made.Wire, made.Turns, made.WireFill, made.BareMM
	o.could = couldBe(p.machine, &w, p.bed.speeds.ratio)
	o.zeroC = plan.Metal.InferredZeroC()
	o.leads, o.delta = p.leads(), plan.Connection == layout.Delta
	if w.coils.plan != nil && w.coils.circuits == 1 {
		o.series = w.coils.series
	}
	o.MeanTurnMM = proof(p.usedTurn(r, &w), made.MeanTurnMM)
	o.WireKg = proof(weighed(r), made.CopperKg)
	cold := r.LeadOhms.Figure("not read").Times(plan.Metal.TempFactor(r.LeadOhmsC.Or(defaultWoundC), 20))
	ohms, volts := p.laws(plan)
	o.LeadOhms20 = proof(cold, made.LeadOhms20).ofPairs(r.LeadPairs, plan.Metal.TempFactor(r.LeadOhmsC.Or(defaultWoundC), 20), BalanceLimit, r.LeadStep, ohms)
	perRPM, doubt := p.flux.carriedVolts(made.LinePerRPM, p.read(r))
	o.carrying = doubt
	o.LineVolts = proof(r.LineVolts.Figure("not read"), perRPM.With(o.RPM, mul)).ofPairs(r.LinePairs, 1, VoltsBalance, r.LineStep, volts)
	o.CutInRPM = proof(r.CutInRPM.Figure("not read"), made.CutInRPM)
	o.RisePerWatt = p.bed.warmed(r, plan, &made, cold)
	return o
}

// laws are what lies between two leads, for ohms and for volts.
func (p proving) laws(plan job.Trial) (ohms, volts pairLaw) {
	switch {
	case p.machine.phases != 3:
		return alone1, alone1
	case plan.Connection == layout.Delta:
		return ohmsDelta, voltsDelta
	}
	return ohmsStar, voltsStar
}

// leads are the phases by name, of both sets where there are two.
func (p proving) leads() (names leads) {
	phases, sets := p.machine.laidOut()
	for set := range max(1, sets) {
		for phase := range phases {
			names = append(names, layout.PhaseName(max(1, sets), set, phase))
		}
	}
	return names
}

// planned is a record's trial with the turns and the wire that were really put in.
func (p proving) planned(r *job.AsWound) (t job.Trial, ok bool) {
	for _, t := range p.trials {
		if t.Name != r.Trial && r.Trial != "" {
			continue
		}
		if r.Turns.Given() || len(r.CoilTurns) > 0 {
			t.Turns, t.CoilTurns = r.Turns, r.CoilTurns
		}
		if !r.Gauge.IsZero() {
			turns, each := t.Turns, t.CoilTurns
			t.Wound = r.Wound
			t.Turns, t.CoilTurns = turns, each
		}
		return joinedAs(t, r), true
	}
	return t, false
}

// joinedAs is a trial connected and laid as a record says.
func joinedAs(t job.Trial, r *job.AsWound) job.Trial {
	switch r.Connection {
	case layout.Star.String():
		t.Connection = layout.Star
	case layout.Delta.String():
		t.Connection = layout.Delta
	}
	if r.Circuits.Given() {
		t.Circuits = r.Circuits
	}
	if r.Span.Given() {
		t.Span = r.Span
	}
	if r.Layers.Given() {
		t.Layers = r.Layers
	}
	if r.Kind != "" {
		t.Kind = r.Kind
	}
	return t
}

// read is the field current of a record's volts; magnets have none.
func (p proving) read(r *job.AsWound) quantity.Reading {
	if !p.rotor.wound {
		return quantity.Reading{}
	}
	return r.FieldAmps
}

// fed is a wound rotor's current at a record's volts, else that of the plan.
func (p proving) fed(r *job.AsWound) quantity.Figure {
	if own := p.read(r); own.Given() {
		return own.Figure("")
	}
	if !p.rotor.wound {
		return quantity.Missing("magnets need none")
	}
	return p.flux.fieldAmps
}

// weighed is the weight of the wire used, kg, where the mean turn goes by its length.
func weighed(r *job.AsWound) quantity.Figure {
	if !r.Metres.Given() {
		return quantity.Missing("by it the mean turn is worked out")
	}
	return r.Kg.Figure("not read")
}

// usedTurn is the mean turn by the wire used, mm.
func (p proving) usedTurn(r *job.AsWound, w *candidate) quantity.Figure {
	bundle := w.trial.Bundle()
	turns := w.coils.series * float64(w.coils.circuits) * p.machine.windings()
	switch {
	case !r.Metres.Given() && !r.Kg.Given():
		return quantity.Missing("needs the wire used up, by length or by weight")
	case w.coils.plan == nil:
		return quantity.Missing(w.coils.why)
	case turns <= 0 || bundle.IsZero():
		return quantity.Missing("needs turns and wire")
	case r.Metres.Given():
		return r.Metres.Figure("").Times(1000 / turns / float64(bundle.Count()))
	}
	perMetre := 0.0
	for _, s := range bundle.Parts() {
		perMetre += float64(s.Count) * wiretable.KgPerMetre(s.Gauge.AreaMM2(w.trial.Build), w.trial.Metal)
	}
	return r.Kg.Figure("").Times(1000 / turns / perMetre)
}
