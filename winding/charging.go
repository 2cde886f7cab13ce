package winding

import "slotwright/winding/quantity"

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
	ShaftWatts   float64 `json:"shaft_w"`
	TorqueNm     float64 `json:"torque_nm"`
	Efficiency   float64 `json:"efficiency"`
	WindingC     float64 `json:"winding_c"`
	OpenVoltsDC  float64 `json:"open_volts_dc"`
	Mode         string  `json:"mode"`
	// TooHot is set when no steady temperature exists: it goes on getting hotter.
	TooHot bool `json:"too_hot,omitempty"`
}

// Charging is what reaches the battery, at the temperature the winding comes to.
type Charging struct {
	AmpsSlow  quantity.Figure `json:"amps_dc_slow"`
	AmpsUsual quantity.Figure `json:"amps_dc_usual"`
	AmpsTop   quantity.Figure `json:"amps_dc_top"`
	// HotUsualC is the winding's temperature at the usual speed.
	HotUsualC  quantity.Figure `json:"winding_c_usual"`
	HotTopC    quantity.Figure `json:"winding_c_top"`
	Efficiency quantity.Figure `json:"efficiency_usual"`
	// TargetRPM is where the amps wanted are reached.
	TargetRPM quantity.Figure `json:"target_rpm"`
	// CrossRPM is where its curve crosses the reference's.
	CrossRPM quantity.Figure `json:"cross_reference_rpm"`
	// LimitRPM is where the governing current limit is reached.
	LimitRPM quantity.Figure `json:"limit_rpm"`
	// AtSpeeds are the job's own speeds, Curve the whole range.
	AtSpeeds []RunPoint `json:"at_speeds,omitempty"`
	Curve    []RunPoint `json:"curve,omitempty"`
	// NoCharging says why there is none of this.
	NoCharging string `json:"no_charging,omitempty"`
}
