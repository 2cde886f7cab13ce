package winding

import (
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
	"slotwright/wiretable"
)

// Outcome is everything that is known of a job. Screen, card, report and JSON read it; nothing is
// worked out anywhere else. A missing Figure says why.
type Outcome struct {
	Job      string         `json:"job,omitempty"`
	Invented bool           `json:"invented,omitempty"`
	Machine  MachineOutcome `json:"machine"`
	// Old is the old winding worked out like a trial; nil when its turns or wire are
	// not given.
	Old    *TrialOutcome  `json:"old,omitempty"`
	Trials []TrialOutcome `json:"trials"`
	// Wound is what was really put in, in the order of the file.
	Wound []wound.Record `json:"as_wound,omitempty"`
	// Reference is the index of the trial the others are compared with.
	Reference  int       `json:"reference"`
	Comparison []Row     `json:"comparison"`
	Findings   []Finding `json:"findings"`
	Cautions   []Caution `json:"cautions"`
	// Reversed is set where the drive is probably the wrong way round: then no winding is offered. It is
	// the first of the findings too.
	Reversed *Reversed `json:"-"`

	// phases and magnets are the machine's, for explaining readings that are off.
	phases  int
	magnets bool
}

// MachineOutcome is what does not depend on the trial.
type MachineOutcome struct {
	GrossMM2     quantity.Figure `json:"slot_gross_mm2"`
	LinerMM2     quantity.Figure `json:"slot_liner_mm2"`
	WedgeMM2     quantity.Figure `json:"slot_wedge_mm2"`
	SeparatorMM2 quantity.Figure `json:"slot_separator_mm2"`
	NetMM2       quantity.Figure `json:"slot_net_mm2"`
	SlotNote     string          `json:"slot_note,omitempty"`

	HertzPerRPM quantity.Figure `json:"hertz_per_rpm"`
	PolePitchMM quantity.Figure `json:"pole_pitch_mm"`
	// FluxMWb is the flux of a pole, at the field current in use.
	FluxMWb  quantity.Figure `json:"flux_per_pole_mwb"`
	FluxFrom string          `json:"flux_from,omitempty"`
	GapTesla quantity.Figure `json:"gap_flux_density_t"`
	// NextReading is what to read next of the old winding, and what that would do, in a sentence.
	NextReading string `json:"next_reading,omitempty"`
	// ToothTesla is in the teeth at their narrowest, YokeTesla behind the slots.
	ToothTesla quantity.Figure `json:"tooth_flux_density_t"`
	YokeTesla  quantity.Figure `json:"yoke_flux_density_t"`
	// MagnetsAgainstWound is the volts that the given magnets would make over those of the wound rotor,
	// for a stator that is to change rotors.
	MagnetsAgainstWound quantity.Figure `json:"magnets_over_wound"`
	FieldAmps           quantity.Figure `json:"field_amps"`
	// restAmps is the field current, A, that the battery drives at rest, where the field follows it;
	// else 0.
	restAmps float64

	// Feeds is what is charged or fed, in a few words.
	Feeds           string          `json:"feeds"`
	RestVolts       quantity.Figure `json:"battery_rest_v"`
	ChargingVolts   quantity.Figure `json:"battery_charging_v"`
	AbsorptionVolts quantity.Figure `json:"battery_absorption_v"`
	FloatVolts      quantity.Figure `json:"battery_float_v"`
	ChargeLimitAmps quantity.Figure `json:"battery_charge_limit_a"`
	// InsideOhms is the battery's internal resistance; missing where there is no battery.
	InsideOhms quantity.Figure `json:"battery_inside_ohms"`
	LoadOhms   quantity.Figure `json:"battery_and_cable_ohms"`
	FuseAmps   quantity.Figure `json:"fuse_a"`
	DiodeVolts quantity.Figure `json:"diode_v"`
	DiodeOhms  quantity.Figure `json:"diode_ohms"`
	// DiodeReverseVolts is the repetitive peak reverse rating of a diode.
	DiodeReverseVolts quantity.Figure `json:"diode_reverse_v"`

	// DragWatts is iron and friction loss at the usual speed; RisePerWatt the winding's rise per watt
	// that leaves through it, at the usual speed; MeanLimitC the limit of its mean temperature.
	DragWatts   quantity.Figure `json:"drag_w_usual"`
	RisePerWatt quantity.Figure `json:"rise_k_per_w"`
	MeanLimitC  quantity.Figure `json:"mean_limit_c"`
	// Conditions are the states of the drive that everything is worked out for.
	Conditions []Condition `json:"conditions"`
	// ThermalClass is the letter of the insulation's class, ClassLimitC what it allows.
	ThermalClass string          `json:"thermal_class,omitempty"`
	ClassLimitC  quantity.Figure `json:"class_limit_c"`

	SlowRPM  quantity.Figure `json:"slow_rpm"`
	UsualRPM quantity.Figure `json:"usual_rpm"`
	TopRPM   quantity.Figure `json:"top_rpm"`
	TestRPM  quantity.Figure `json:"test_rpm"`
	TestC    quantity.Figure `json:"test_c"`
	Ratio    quantity.Figure `json:"drive_ratio"`
	// WantedRatio takes the drive's usual speed to the usual speed wanted; DrivenMM and DriverMM are
	// the pulleys (DrivenTeeth the wheel) that would do it with the other one kept.
	WantedRatio quantity.Figure `json:"wanted_ratio"`
	DrivenMM    quantity.Figure `json:"driven_pulley_for_wanted_ratio_mm"`
	DriverMM    quantity.Figure `json:"driver_pulley_for_wanted_ratio_mm"`
	DrivenTeeth quantity.Figure `json:"driven_teeth_for_wanted_ratio"`
}

// TrialOutcome is one winding worked out.
type TrialOutcome struct {
	Name       string            `json:"name"`
	Note       string            `json:"note,omitempty"`
	Wire       string            `json:"wire,omitempty"`
	Build      string            `json:"build,omitempty"`
	Metal      string            `json:"metal,omitempty"`
	Turns      quantity.Figure   `json:"turns_per_coil"`
	Strands    int               `json:"strands,omitempty"`
	Connection layout.Connection `json:"connection"`
	Circuits   int               `json:"circuits,omitempty"`
	Span       int               `json:"span_slots,omitempty"`
	Layers     int               `json:"layers,omitempty"`
	Kind       string            `json:"kind,omitempty"`

	Fit
	Coils
	Ohms
	Volts
	Limits
	Purchase
	Former
	// Shapes are its kinds of coils where not all are alike, the widest first.
	Shapes []CoilShape `json:"coil_shapes,omitempty"`
	Inductance
	Charging
	Driven

	// Cuts is the insulation to cut for it.
	Cuts []Cut `json:"insulation,omitempty"`

	// Against is this winding over the old one.
	Against Ratios `json:"against_old"`

	// Verdict is what a rewinder would say of it beside the reference, in plain words.
	Verdict string `json:"verdict,omitempty"`

	metal wiretable.Metal
	// was is the old winding that its volts are scaled from.
	was *oldSum
}

// Ratios compares with the old winding, new over old.
type Ratios struct {
	Volts  quantity.Figure `json:"volts"`
	Ohms   quantity.Figure `json:"ohms"`
	Copper quantity.Figure `json:"copper"`
	CutIn  quantity.Figure `json:"cut_in"`
}
