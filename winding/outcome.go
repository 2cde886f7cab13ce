package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// Outcome is everything that is known of a job. Screen, card, report and JSON read
// it; nothing is worked out anywhere else. A Figure that is missing says why.
type Outcome struct {
	Job      string         `json:"job,omitempty"`
	Invented bool           `json:"invented,omitempty"`
	Machine  MachineOutcome `json:"machine"`
	// Old is the old winding worked out like a trial; nil when its turns or wire are
	// not given.
	Old    *TrialOutcome  `json:"old,omitempty"`
	Trials []TrialOutcome `json:"trials"`
	// Wound is what was really put in, in the order of the file.
	Wound []WoundOutcome `json:"as_wound,omitempty"`
	// Reference is the index of the trial the others are compared with.
	Reference  int       `json:"reference"`
	Comparison []Row     `json:"comparison"`
	Findings   []Finding `json:"findings"`
	Cautions   []Caution `json:"cautions"`
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
	// FluxMWb is the flux of a pole, at the field current that is used.
	FluxMWb  quantity.Figure `json:"flux_per_pole_mwb"`
	FluxFrom string          `json:"flux_from,omitempty"`
	GapTesla quantity.Figure `json:"gap_flux_density_t"`
	// NextReading is what to read next of the old winding, and what it would do, in a sentence.
	NextReading string `json:"next_reading,omitempty"`
	// ToothTesla is in the teeth where they are narrowest, YokeTesla behind the slots.
	ToothTesla quantity.Figure `json:"tooth_flux_density_t"`
	YokeTesla  quantity.Figure `json:"yoke_flux_density_t"`
	// MagnetsAgainstWound is the volts that the magnets given would make over those of
	// the wound rotor, for a stator that is to change rotors.
	MagnetsAgainstWound quantity.Figure `json:"magnets_over_wound"`
	FieldAmps           quantity.Figure `json:"field_amps"`

	RestVolts       quantity.Figure `json:"battery_rest_v"`
	ChargingVolts   quantity.Figure `json:"battery_charging_v"`
	AbsorptionVolts quantity.Figure `json:"battery_absorption_v"`
	FloatVolts      quantity.Figure `json:"battery_float_v"`
	ChargeLimitAmps quantity.Figure `json:"battery_charge_limit_a"`
	LoadOhms        quantity.Figure `json:"battery_and_cable_ohms"`
	FuseAmps        quantity.Figure `json:"fuse_a"`
	DiodeVolts      quantity.Figure `json:"diode_v"`
	DiodeOhms       quantity.Figure `json:"diode_ohms"`
	// DiodeReverseVolts is the repetitive peak reverse rating of a diode.
	DiodeReverseVolts quantity.Figure `json:"diode_reverse_v"`

	// DragWatts is iron and friction at the usual speed; RisePerWatt the winding's rise
	// for each watt that leaves through it, at the usual speed; MeanLimitC what its mean
	// may come to.
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
	// WantedRatio takes the drive's usual speed to the usual speed wanted; DrivenMM and
	// DriverMM are the pulleys (DrivenTeeth the wheel) that would do it with the other
	// one kept.
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
}

// Fit is the winding in its slot.
type Fit struct {
	BareMM            quantity.Figure `json:"bare_mm"`
	OverallMM         quantity.Figure `json:"overall_mm"`
	Conductors        quantity.Figure `json:"wires_per_slot"`
	WireFill          quantity.Figure `json:"wire_fill"`
	RoundFill         quantity.Figure `json:"round_fill"`
	CopperFill        quantity.Figure `json:"copper_fill"`
	FillLimit         quantity.Figure `json:"fill_limit"`
	TurnsThatFit      quantity.Figure `json:"turns_that_fit"`
	MostThatPack      quantity.Figure `json:"most_wires_that_pack"`
	CopperPerSlotMM2  quantity.Figure `json:"copper_per_slot_mm2"`
	MouthSpareMM      quantity.Figure `json:"mouth_spare_mm"`
	MouthText         string          `json:"mouth,omitempty"`
	ConductorAreaMM2  quantity.Figure `json:"conductor_area_mm2"`
	ConductorAreaCmil quantity.Figure `json:"conductor_area_cmil"`
}

// Coils is what the layout makes of the turns.
type Coils struct {
	Kw1           quantity.Figure `json:"kw1"`
	Kw3           quantity.Figure `json:"kw3"`
	Kw5           quantity.Figure `json:"kw5"`
	Kw7           quantity.Figure `json:"kw7"`
	Kw11          quantity.Figure `json:"kw11"`
	Kw13          quantity.Figure `json:"kw13"`
	CoilsPerPhase quantity.Figure `json:"coils_per_phase"`
	// SeriesTurns is N, in series in each phase.
	SeriesTurns quantity.Figure `json:"series_turns"`
	// CircuitChoices is the circuits this layout allows.
	CircuitChoices []int `json:"circuits_allowed,omitempty"`
}

// Ohms is the copper's length and resistance.
type Ohms struct {
	MeanTurnMM   quantity.Figure `json:"mean_turn_mm"`
	MeanTurnFrom string          `json:"mean_turn_from,omitempty"`
	PhaseOhms20  quantity.Figure `json:"phase_ohms_20c"`
	LeadOhms20   quantity.Figure `json:"lead_ohms_20c"`
	PhaseOhmsT   quantity.Figure `json:"phase_ohms_test"`
	LeadOhmsT    quantity.Figure `json:"lead_ohms_test"`
}

// Volts is what it gives with nothing connected.
type Volts struct {
	PhasePerRPM     quantity.Figure `json:"volts_phase_rms_per_rpm"`
	LinePerRPM      quantity.Figure `json:"volts_line_rms_per_rpm"`
	LinePer1000RPM  quantity.Figure `json:"volts_line_rms_per_1000rpm"`
	PeakDCPerRPM    quantity.Figure `json:"volts_dc_peak_per_rpm"`
	LineAtTest      quantity.Figure `json:"volts_line_rms_test"`
	CutInRPM        quantity.Figure `json:"cut_in_rpm"`
	OpenAtTopVolts  quantity.Figure `json:"volts_dc_open_top"`
	OpenAtGaleVolts quantity.Figure `json:"volts_dc_open_gale"`
}

// Limit is one reason why the current must stop somewhere.
type Limit struct {
	Name   string          `json:"name"`
	AmpsDC quantity.Figure `json:"amps_dc"`
	Reason string          `json:"reason"`
	Source string          `json:"source"`
}

// Limits is how much current it can stand.
type Limits struct {
	// Each is every limit that could be worked out, the lowest first.
	Each []Limit `json:"limits,omitempty"`
	// LimitAmps is the lowest, LimitBy its name.
	LimitAmps quantity.Figure `json:"limit_amps_dc"`
	LimitBy   string          `json:"limit_by,omitempty"`
	// DensityPerAmp is A/mm² in the wire for one ampere DC.
	DensityPerAmp quantity.Figure `json:"density_a_per_mm2_per_dc_amp"`
	// SecondsToClass is the time from warm to the class limit at the limit current
	// with no cooling at all.
	SecondsToClass quantity.Figure `json:"seconds_to_class_limit"`
	// ACFactor is AC over DC resistance at the top speed.
	ACFactor quantity.Figure `json:"ac_factor_top"`
	// ACFactorSplit is that of twice the strands with the same metal.
	ACFactorSplit quantity.Figure `json:"ac_factor_top_twice_the_strands"`
	// SkinDepthMM at the top speed.
	SkinDepthMM quantity.Figure `json:"skin_depth_top_mm"`
}

// Spools is wire of one size to buy.
type Spools struct {
	Gauge  string          `json:"gauge"`
	Metres quantity.Figure `json:"metres"`
	Feet   quantity.Figure `json:"feet"`
	Kg     quantity.Figure `json:"kg"`
	Pounds quantity.Figure `json:"lb"`
	Spools quantity.Figure `json:"spools"`
	// SpoolKg is the copper on one spool.
	SpoolKg float64 `json:"spool_kg"`
}

// Purchase is what to buy.
type Purchase struct {
	Buy []Spools `json:"buy,omitempty"`
	// BuyKg is all sizes together, with the allowance.
	BuyKg quantity.Figure `json:"wire_to_buy_kg"`
	// CopperKg is the metal wound in, without the allowance.
	CopperKg quantity.Figure `json:"metal_kg"`
	// Allowance is the part added, 0.1 for 10 %.
	Allowance float64 `json:"allowance"`
}

// Inductance is per phase.
type Inductance struct {
	PhaseMilliHenries quantity.Figure `json:"phase_mh"`
	InductanceFrom    string          `json:"inductance_from,omitempty"`
}

// Ratios compares with the old winding, new over old.
type Ratios struct {
	Volts  quantity.Figure `json:"volts"`
	Ohms   quantity.Figure `json:"ohms"`
	Copper quantity.Figure `json:"copper"`
	CutIn  quantity.Figure `json:"cut_in"`
}

// RunPoint is a trial running into the battery at one speed of its shaft.
type RunPoint struct {
	RPM          float64 `json:"rpm"`
	AmpsDC       float64 `json:"amps_dc"`
	VoltsDC      float64 `json:"volts_dc"`
	BatteryWatts float64 `json:"battery_w"`
	PhaseAmpsRMS float64 `json:"phase_amps_rms"`
	CopperWatts  float64 `json:"copper_w"`
	DiodeWatts   float64 `json:"diode_w"`
	IronWatts    float64 `json:"iron_w"`
	CableWatts   float64 `json:"cable_w"`
	// FieldWatts is what the rotor takes, NetAmps and NetWatts what is left of the
	// battery's after it, below 0 where it takes more than comes in.
	FieldWatts  float64 `json:"field_w"`
	NetAmps     float64 `json:"net_amps_dc"`
	NetWatts    float64 `json:"net_w"`
	ShaftWatts  float64 `json:"shaft_w"`
	TorqueNm    float64 `json:"torque_nm"`
	Efficiency  float64 `json:"efficiency"`
	WindingC    float64 `json:"winding_c"`
	OpenVoltsDC float64 `json:"open_volts_dc"`
	Mode        string  `json:"mode"`
	// TooHot is set when no steady temperature exists: it goes on getting hotter.
	TooHot bool `json:"too_hot,omitempty"`
	// followed is set when the temperature could be worked out; else WindingC is that of
	// the air.
	followed bool
}

// Charging is what reaches the battery where the trial really runs, net of what the rotor
// takes, the battery taking charge, at the temperature the winding comes to.
type Charging struct {
	AmpsSlow  quantity.Figure `json:"amps_dc_slow"`
	AmpsUsual quantity.Figure `json:"amps_dc_usual"`
	AmpsTop   quantity.Figure `json:"amps_dc_top"`
	// EmptyUsual and FullUsual are the usual amps with the battery at rest and absorbing.
	EmptyUsual quantity.Figure `json:"amps_dc_usual_empty"`
	FullUsual  quantity.Figure `json:"amps_dc_usual_absorbing"`
	// Bridge… is what the bridge gives, the rotor's part not taken off: what copper, diodes
	// and fuse carry. MostAmps is the most of it in any condition, the battery empty.
	BridgeSlow  quantity.Figure `json:"bridge_amps_dc_slow"`
	BridgeUsual quantity.Figure `json:"bridge_amps_dc_usual"`
	BridgeTop   quantity.Figure `json:"bridge_amps_dc_top"`
	MostAmps    quantity.Figure `json:"bridge_amps_dc_most"`
	// Runs… is the alternator's speed there.
	RunsSlow  quantity.Figure `json:"runs_rpm_slow"`
	RunsUsual quantity.Figure `json:"runs_rpm_usual"`
	RunsTop   quantity.Figure `json:"runs_rpm_top"`
	HotSlowC  quantity.Figure `json:"winding_c_slow"`
	HotUsualC quantity.Figure `json:"winding_c_usual"`
	HotTopC   quantity.Figure `json:"winding_c_top"`
	// HottestC is the hottest anywhere in the drive's range.
	HottestC quantity.Figure `json:"winding_c_hottest"`
	// Efficiency is net watts into the battery over watts taken of the drive, usual.
	Efficiency    quantity.Figure `json:"efficiency_usual"`
	NetWattsUsual quantity.Figure `json:"net_w_usual"`
	// TargetRPM is where the amps wanted are reached, net, if something held the speed.
	TargetRPM quantity.Figure `json:"target_rpm"`
	// CrossRPM is where its curve crosses the reference's.
	CrossRPM quantity.Figure `json:"cross_reference_rpm"`
	// LimitRPM is where the governing current limit is reached.
	LimitRPM quantity.Figure `json:"limit_rpm"`
	// ThirdAmps is what the third harmonic drives round a delta, rms in the winding, usual.
	ThirdAmps quantity.Figure `json:"third_harmonic_a_usual"`
	// Operating is the trial in each condition of its drive.
	Operating []Operating `json:"operating,omitempty"`
	// AtSpeeds are the job's own speeds and Curve the whole range, as if something held the
	// bare machine there: AtSpeeds against the battery at rest, Curve against one that takes
	// charge.
	AtSpeeds []RunPoint `json:"at_speeds,omitempty"`
	Curve    []RunPoint `json:"curve,omitempty"`
	// NoCharging says why there is none of this.
	NoCharging string `json:"no_charging,omitempty"`
}

// DrivePoint is where drive and alternator come to terms at one wind or drive speed, the
// battery taking charge.
type DrivePoint struct {
	// X is the wind in m/s, or the speed of the drive's shaft in rpm.
	X            float64 `json:"x"`
	RPM          float64 `json:"rpm"` // of the alternator
	AmpsDC       float64 `json:"amps_dc"`
	BatteryWatts float64 `json:"battery_w"`
	// NetAmps and NetWatts are less what the rotor takes.
	NetAmps  float64 `json:"net_amps_dc"`
	NetWatts float64 `json:"net_w"`
	// DriveWatts is what is taken of the drive at its shaft; for a drive that is not the
	// wind, what it could give is GivesWatts.
	DriveWatts float64 `json:"drive_w"`
	GivesWatts float64 `json:"drive_gives_w,omitempty"`
	Efficiency float64 `json:"efficiency"` // net over drive
	WindingC   float64 `json:"winding_c"`
	TooHot     bool    `json:"too_hot,omitempty"`
	followed   bool    // the temperature was
	Lambda     float64 `json:"tip_speed_ratio,omitempty"`
	Cp         float64 `json:"cp,omitempty"`
	// Region is still, idling, charging, stalled, runaway or overload.
	Region drive.Region `json:"region"`
	// Others are the speeds at which it also could run, or could not stay.
	Others []drive.Equilibrium `json:"other_equilibria,omitempty"`
}

// Offer is a winding that was worked out in a trial's place: as many turns as fit.
type Offer struct {
	Turns int    `json:"turns"`
	Wire  string `json:"wire"`
	// Gauge is the wire as a job has it.
	Gauge wiretable.Gauge `json:"-"`
}

// Overload says that a drive is asked for more than it gives; the other regions are those
// of package drive.
const Overload drive.Region = "overload"

// Driven is how the trial and its drive come to terms.
type Driven struct {
	// Points are against wind or drive speed, going up.
	Points []DrivePoint `json:"drive_points,omitempty"`
	// XUnit is the unit of what they are against, and of StartsAt: m/s or rpm.
	XUnit string `json:"x_unit,omitempty"`
	// StartsAt is the wind or the drive speed from which it charges.
	StartsAt quantity.Figure `json:"charges_from_x"`
	// YearKWh is into the battery in a year of the stated wind, net of the field whenever
	// it charges; hours in which the winding finds no steady temperature are left out.
	YearKWh quantity.Figure `json:"year_kwh"`
	// RunRPM, RunAmps and RunWatts are where a drive that gives all it can comes to rest
	// against this winding: alternator speed, DC amps and drive watts.
	RunRPM   quantity.Figure `json:"full_power_rpm"`
	RunAmps  quantity.Figure `json:"full_power_amps_dc"`
	RunWatts quantity.Figure `json:"full_power_drive_w"`
	// Suits is one plain sentence on how trial and drive come to terms; Mend is the winding
	// that fits the slot and would do better, worked out, where there is one.
	Suits string `json:"suits,omitempty"`
	Mend  string `json:"mend,omitempty"`
	// Offer is that winding.
	Offer *Offer `json:"mend_winding,omitempty"`

	FieldRun
	SafetyRun
	region  drive.Region   // the one that governs
	verdict *drive.Verdict // of the wind
}

// FieldPoint is the wound rotor at one speed.
type FieldPoint struct {
	RPM float64 `json:"rpm"`
	// HoldAmps is the field current that holds the regulated (absorption) voltage while
	// the amps wanted flow, or while nothing flows when none are wanted; Enough is false
	// when full field does not do it.
	HoldAmps float64 `json:"hold_field_a"`
	Enough   bool    `json:"enough"`
	// NetWatts is into the battery at full field, less what the field takes.
	NetWatts float64 `json:"net_w"`
}

// FieldRun is what the wound rotor costs and needs.
type FieldRun struct {
	FieldWatts quantity.Figure `json:"field_w"`
	// BreakEvenRPM is the speed below which the field takes more than reaches the
	// battery.
	BreakEvenRPM quantity.Figure `json:"break_even_rpm"`
	FieldPoints  []FieldPoint    `json:"field_points,omitempty"`
	// HoldSlow, HoldUsual and HoldTop are the field currents of those points; missing
	// where full field does not hold.
	HoldSlow  quantity.Figure `json:"hold_field_a_slow"`
	HoldUsual quantity.Figure `json:"hold_field_a_usual"`
	HoldTop   quantity.Figure `json:"hold_field_a_top"`
	// BestSlow, BestUsual and BestTop are the field currents that leave the battery the
	// most; BestGainUsual is what that gains over the current in use.
	BestSlow      quantity.Figure `json:"best_field_a_slow"`
	BestUsual     quantity.Figure `json:"best_field_a_usual"`
	BestTop       quantity.Figure `json:"best_field_a_top"`
	BestGainUsual quantity.Figure `json:"best_field_gain_w_usual"`
	// ExciteHoldRPM is the speed below which a field fed from the machine itself falls
	// back, ExciteBuildRPM that from which it builds up without a battery.
	ExciteHoldRPM  quantity.Figure `json:"self_excitation_hold_rpm"`
	ExciteBuildRPM quantity.Figure `json:"self_excitation_build_rpm"`
}

// Brake is the machine turned with leads joined.
type Brake struct {
	LeadAmps quantity.Figure `json:"lead_a"`
	CoilAmps quantity.Figure `json:"coil_a"`
	TorqueNm quantity.Figure `json:"torque_nm"`
	Watts    quantity.Figure `json:"copper_w"`
}

// SafetyRun is what happens at the worst: leads joined to stop it, a battery that is
// full, a battery that comes off.
type SafetyRun struct {
	// Brake is all leads of all sets joined at the top speed, BrakePair only two of one
	// set, the winding as hot as its class allows.
	Brake     Brake `json:"brake_at_top"`
	BrakePair Brake `json:"brake_pair_at_top"`
	// BrakePeakNm is the most that joined leads hold back with, at BrakePeakRPM, where
	// R = ωL; above that speed they hold less and less.
	BrakePeakNm  quantity.Figure `json:"brake_peak_torque_nm"`
	BrakePeakRPM quantity.Figure `json:"brake_peak_rpm"`
	// StopsCold and StopsHot are the most wind (m/s), or the most power of the drive (W),
	// in which joined leads bring a turning shaft to rest, at 20 °C and at the class limit.
	StopsCold quantity.Figure `json:"brake_stops_to_x_cold"`
	StopsHot  quantity.Figure `json:"brake_stops_to_x_hot"`
	// BrakeSeconds is from the temperature it has at the usual condition to the class limit
	// with all leads joined at the top speed and no cooling.
	BrakeSeconds quantity.Figure `json:"brake_seconds_to_class_limit"`
	// FuseAmps is the fuse at the battery's post with this winding.
	FuseAmps quantity.Figure `json:"fuse_a"`
	// DumpOhms and DumpWatts take all it gives in the top condition at the absorption
	// voltage, for a battery that is full.
	DumpOhms  quantity.Figure `json:"dump_load_ohms"`
	DumpWatts quantity.Figure `json:"dump_load_w"`
	// OverChargeAmps is how far the most it charges is over the battery's charge limit.
	OverChargeAmps quantity.Figure `json:"over_charge_limit_a"`
	// OpenAtFurlVolts is peak DC with nothing connected in the wind at which it furls, the
	// rotor running free; MostVolts the highest that can stand anywhere.
	OpenAtFurlVolts quantity.Figure `json:"volts_dc_open_furl"`
	MostVolts       quantity.Figure `json:"volts_dc_most"`
}
