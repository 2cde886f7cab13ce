package wound

import (
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// Record is one winding as it was put in, compared with its prediction.
type Record struct {
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
	// Likely is what would explain the readings that are off, the closest first: see [Record.Explain].
	Likely []Likely `json:"likely_faults,omitempty"`
	// could is every fault that such a winding allows.
	could []Likely
	// leads are the names of its phases, delta says how they are connected; ohmsLaw and voltsLaw are what
	// lies between two leads; series is the turns in series of a phase with one circuit, else 0; magnets is
	// the rotor's kind.
	leads             leads
	delta             bool
	ohmsLaw, voltsLaw pairLaw
	series            float64
	magnets           bool
	// restC is the temperature of its cold ohms, °C, where it may have been meant in °F, else 0; metal is
	// that of its wire.
	restC float64
	metal wiretable.Metal
	// carrying is the uncertainty of converting the planned volts to FieldAmps, beside that of the
	// plan.
	carrying float64
}

// Winding is a winding as it was really put in: what decides which faults it may have, and what lies
// between its leads.
type Winding struct {
	// Trial is its turns, wire, connection and circuits.
	Trial job.Trial
	// Phases are those of a set, 1 or 3; a two-phase winding is two sets of one.
	Phases, Sets int
	// Leads are the phases' names, in the order in which pairs are read: of both sets where there are two.
	Leads []string
	// Layout is nil where it is not known.
	Layout *layout.Layout
	// Circuits is in parallel in a phase, SeriesTurns the turns in series of one circuit.
	Circuits    int
	SeriesTurns float64
	// Ratio is the alternator's speed over that of the drive.
	Ratio quantity.Figure
	// Magnets says that the rotor needs no current.
	Magnets bool
	// RestC is the temperature of the cold ohms, °C, where it may have been meant in °F; else 0.
	RestC float64
}

// Unplanned is a record that has no plan to be compared with, and why.
func Unplanned(r *job.AsWound, magnets bool, why string) Record {
	o, no := begun(r, magnets), quantity.Missing(why)
	o.Trial = r.Trial
	o.Turns, o.WireFill, o.BareMM = no, no, no
	o.MeanTurnMM, o.LeadOhms20, o.LineVolts, o.CutInRPM = Compare(no, no), Compare(no, no), Compare(no, no), Compare(no, no)
	o.WireKg, o.RisePerWatt = Compare(no, no), Compare(no, no)
	return o
}

// Record is the record of a winding, with none of its readings compared yet.
func (w Winding) Record(r *job.AsWound) Record {
	o := begun(r, w.Magnets)
	o.Trial = w.Trial.Name
	o.could = couldBe(w)
	o.leads, o.delta = w.Leads, w.Trial.Connection == layout.Delta
	o.ohmsLaw, o.voltsLaw = w.laws()
	if w.Layout != nil && w.Circuits == 1 {
		o.series = w.SeriesTurns
	}
	o.restC, o.metal = w.RestC, w.Trial.Metal
	return o
}

func begun(r *job.AsWound, magnets bool) Record {
	return Record{Date: r.Date, Note: r.Note, Filled: r.Filled, magnets: magnets, RPM: r.RPM.Figure("needs the speed at that reading")}
}

// laws are what lies between two leads, for ohms and for volts.
func (w Winding) laws() (ohms, volts pairLaw) {
	switch {
	case w.Phases != 3:
		return alone, alone
	case w.Trial.Connection == layout.Delta:
		return ohmsDelta, voltsDelta
	}
	return ohmsStar, voltsStar
}

// defaultWoundC is the temperature of the ohms where none was given.
var defaultWoundC = job.DefaultOf("wound.lead_at")

// ReadOhms compares the ohms between leads, converted to 20 °C, with those planned.
func (r *Record) ReadOhms(read *job.AsWound, planned quantity.Figure) {
	to20 := r.metal.TempFactor(read.LeadOhmsC.Or(defaultWoundC), 20)
	cold := read.LeadOhms.Figure("not read").Times(to20)
	r.LeadOhms20 = Compare(cold, planned).ofPairs(read.LeadPairs, to20, BalanceLimit, read.LeadStep, r.ohmsLaw)
}

// ReadVolts compares the volts between leads with those planned at the speed and the field current of
// the reading. doubt is the squared relative uncertainty of the conversion to that current, beside that
// of the plan; negative where the current is surer than the plan's.
func (r *Record) ReadVolts(read *job.AsWound, plannedPerRPM quantity.Figure, doubt float64) {
	planned := plannedPerRPM.With(r.RPM, func(perRPM, n float64) float64 { return perRPM * n })
	r.LineVolts = Compare(read.LineVolts.Figure("not read"), planned).ofPairs(read.LinePairs, 1, VoltsBalance, read.LineStep, r.voltsLaw)
	r.carrying = doubt
}

// Predicted is what a plan predicts of a finished winding.
type Predicted struct {
	MeanTurnMM, WireKg, LeadOhms20 quantity.Figure
	// LineVolts is at any speed.
	LineVolts             quantity.Figure
	CutInRPM, RisePerWatt quantity.Figure
}

// AsSureAs gives each expected value the relative ± of a prediction of its kind; one that is not known
// changes nothing.
func (r *Record) AsSureAs(p Predicted) {
	r.RisePerWatt.asSureAs(p.RisePerWatt)
	r.MeanTurnMM.asSureAs(p.MeanTurnMM)
	r.WireKg.asSureAs(p.WireKg)
	r.WireKg.withEnamel()
	r.LeadOhms20.asSureAs(p.LeadOhms20)
	r.LineVolts.asSureAs(p.LineVolts)
	r.LineVolts.carry(r.carrying)
	r.CutInRPM.asSureAs(p.CutInRPM)
}
