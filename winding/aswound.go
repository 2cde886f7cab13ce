package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
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

// Wound works out every record of the job.
func (b *Bench) Wound() []wound.Record {
	by := proving{trials: b.job.Trials, machine: &b.machine, layouts: &b.layouts, bed: &b.bed, flux: &b.flux, rotor: &b.rotor, static: b.static}
	var list []wound.Record
	for i := range b.job.AsWound {
		r, restC := &b.job.AsWound[i], 0.0
		if slices.Contains(b.job.WarmAtRest, job.PathOf("wound", i, "lead_at")) {
			restC = r.LeadOhmsC.Value
		}
		list = append(list, by.record(r, restC))
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

// record works out one record; restC is the temperature of its cold ohms, °C, where that may have been
// meant in °F, else 0.
func (p proving) record(r *job.AsWound, restC float64) wound.Record {
	plan, ok := p.planned(r)
	if !ok {
		o := wound.Unplanned(r, !p.rotor.wound, fmt.Sprintf("the job has no trial %q", r.Trial))
		o.FieldAmps = p.fed(r)
		return o
	}
	w := p.layouts.candidate(plan)
	made := p.static(&w)
	is := p.winding(&w)
	is.RestC = restC
	o := is.Record(r)
	o.FieldAmps = p.fed(r)
	o.Span, o.Wire, o.Turns, o.WireFill, o.BareMM = made.Span, made.Wire, made.Turns, made.WireFill, made.BareMM
	o.MeanTurnMM = wound.Compare(p.usedTurn(r, &w), made.MeanTurnMM)
	o.WireKg = wound.Compare(weighed(r), made.CopperKg)
	o.ReadOhms(r, made.LeadOhms20)
	perRPM, doubt := p.flux.carriedVolts(made.LinePerRPM, p.read(r))
	o.ReadVolts(r, perRPM, doubt)
	o.CutInRPM = wound.Compare(r.CutInRPM.Figure("not read"), made.CutInRPM)
	o.RisePerWatt = p.bed.warmed(r, plan, &made, o.LeadOhms20.Read)
	return o
}

// winding is what decides which faults a candidate may have.
func (p proving) winding(w *candidate) wound.Winding {
	return wound.Winding{
		Trial: w.trial, Phases: p.machine.phases, Sets: p.machine.sets, Leads: p.leads(),
		Layout: w.coils.plan, Circuits: w.coils.circuits, SeriesTurns: w.coils.series,
		Ratio: p.bed.speeds.ratio, Magnets: !p.rotor.wound,
	}
}

// leads are the phases by name, of both sets where there are two.
func (p proving) leads() (names []string) {
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
