package winding

import (
	"fmt"

	"slotwright/winding/drive"
)

// DrivePoint is where drive and alternator come to terms at one wind or drive speed.
type DrivePoint struct {
	// X is the wind in m/s, or the speed of the drive's shaft in rpm.
	X            float64 `json:"x"`
	RPM          float64 `json:"rpm"` // of the alternator
	AmpsDC       float64 `json:"amps_dc"`
	BatteryWatts float64 `json:"battery_w"`
	// DriveWatts is what the drive gives at its shaft there; for a drive that is not
	// the wind, what it could give is GivesWatts.
	DriveWatts float64 `json:"drive_w"`
	GivesWatts float64 `json:"drive_gives_w,omitempty"`
	Efficiency float64 `json:"efficiency"` // battery over drive
	Lambda     float64 `json:"tip_speed_ratio,omitempty"`
	Cp         float64 `json:"cp,omitempty"`
	Region     Region  `json:"region"`
	// Others are the speeds at which it also could run, or could not stay.
	Others []drive.Equilibrium `json:"other_equilibria,omitempty"`
}

// Region says how a drive fares with a winding.
type Region string

// The regions.
const (
	Still    Region = "still"    // it does not turn
	Idling   Region = "idling"   // it turns and charges nothing
	Charges  Region = "charging" // as it should be
	Stalled  Region = "stalled"  // held far below its best speed
	Racing   Region = "racing"   // loaded too little: far above its best speed
	Overload Region = "overload" // asks for more than the drive gives
)

// Driven is how the trial and its drive come to terms.
type Driven struct {
	// Points are against wind or drive speed, going up.
	Points []DrivePoint `json:"drive_points,omitempty"`
	// StartsAt is the wind or the drive speed from which it charges.
	StartsAt Figure `json:"charges_from_x"`
	// YearKWh is into the battery in a year of the stated wind.
	YearKWh Figure `json:"year_kwh"`
	// RunRPM, RunAmps and RunWatts are where a drive that gives all it can comes to rest
	// against this winding: alternator speed, DC amps and drive watts.
	RunRPM   Figure `json:"full_power_rpm"`
	RunAmps  Figure `json:"full_power_amps_dc"`
	RunWatts Figure `json:"full_power_drive_w"`
	// Suits is one plain sentence on how the trial suits the drive; Mends is what would
	// suit it better.
	Suits string   `json:"suits,omitempty"`
	Mends []string `json:"mends,omitempty"`

	FieldRun
	SafetyRun
	region Region // the worst at the winds or speeds that matter
}

// noDrive is every figure missing for one reason.
func noDrive(why string) Driven {
	no := missing(why)
	return Driven{StartsAt: no, YearKWh: no, RunRPM: no, RunAmps: no, RunWatts: no, Suits: "", FieldRun: noField(why), SafetyRun: noSafety(why)}
}

// drive lets every trial that can run meet the drive.
func (b *Bench) drive(o *Outcome, runners []*runner) {
	for i, r := range runners {
		t := &o.Trials[i]
		if r == nil {
			t.Driven = noDrive(t.NoCharging)
			t.OpenAtGaleVolts = missing(t.NoCharging)
			continue
		}
		t.Driven = b.meet(r, t)
		t.FieldRun = b.runField(r, t)
		t.SafetyRun = b.runSafety(r, t)
		t.OpenAtGaleVolts = b.openAtGale(t)
	}
}

// meet is one trial against the drive.
func (b *Bench) meet(r *runner, t *TrialOutcome) Driven {
	switch b.job.Drive.Kind {
	case "":
		return noDrive("needs what turns it")
	case "wind":
		return b.meetWind(r, t)
	case "fixed":
		return b.meetFixed(r, t)
	default:
		return b.meetShaft(r, t)
	}
}

// transmission is the job's, with what was not given filled in.
func (b *Bench) transmission() drive.Transmission {
	d := b.job.Drive
	t := drive.Transmission{
		DriverMM: d.DriverMM.Value, DrivenMM: d.DrivenMM.Value, DriverTeeth: d.DriverTeeth.Value, DrivenTeeth: d.DrivenTeeth.Value,
		Ratio: d.Ratio.Value, Efficiency: d.Efficiency.Or(1),
	}
	switch d.Transmission {
	case "belt":
		t.Kind, t.Slip, t.Efficiency = drive.Belt, d.Slip.Or(defaultSlip), d.Efficiency.Or(defaultBeltEfficiency)
	case "chain":
		t.Kind, t.Efficiency = drive.Chain, d.Efficiency.Or(defaultChainEfficiency)
	case "gear":
		t.Kind, t.Efficiency = drive.Gear, d.Efficiency.Or(defaultChainEfficiency)
	}
	return t
}

// Transmission losses; V-belts 0.92 to 0.95 (US DOE tip sheet and field literature),
// chains and gears common practice, no source.
const (
	defaultSlip            = 0.02
	defaultBeltEfficiency  = 0.95
	defaultChainEfficiency = 0.97
)

// driveRatio is alternator turns for one turn of the drive: from two tachometer
// readings, else as given, else from pulleys or teeth.
func (b *Bench) driveRatio() Figure {
	d := b.job.Drive
	t := b.transmission()
	if d.TachDriveRPM.Given() && d.TachAltRPM.Given() {
		ratio, slip, err := drive.RealRatio(d.TachDriveRPM.Value, d.TachAltRPM.Value, nominal(t))
		if err == nil {
			why := "two tachometer readings"
			if nominal(t) > 0 {
				why += fmt.Sprintf(", which mean %.1f %% of slip", 100*slip)
			}
			return derived(ratio).because(why)
		}
	}
	turns, err := t.Turns()
	if err != nil {
		return missing("needs the ratio, both pulleys or the teeth of both wheels")
	}
	if d.Ratio.Given() {
		return d.Ratio.figure("").because("as given")
	}
	return derived(turns, d.DriverMM.Origin, d.DrivenMM.Origin).because(map[drive.Kind]string{drive.Direct: "direct", drive.Belt: "the pulleys, less slip", drive.Chain: "the teeth", drive.Gear: "the teeth"}[t.Kind])
}

// nominal is the ratio without slip, 0 when it is not known.
func nominal(t drive.Transmission) float64 {
	t.Slip, t.Ratio = 0, 0
	if t.Kind == drive.Direct {
		return 0
	}
	turns, err := t.Turns()
	if err != nil {
		return 0
	}
	return turns
}

// doubt is what the drive calls out.
func (dr *Driven) doubt(d *doubts, at func(string) string, t Trial) {
	fix := ""
	if len(dr.Mends) > 0 {
		fix = dr.Mends[0]
	}
	switch dr.region {
	case Stalled, Racing, Overload:
		d.add(Doubt, at("turns"), t.Name, fix, "balance of drive and alternator", "%s", dr.Suits)
	}
	dr.SafetyRun.doubt(d, at, t)
}

// sampled is a trial's torque against speed, taken once for all winds.
type sampled struct {
	rpm, torque []float64
	warm        []float64
}

// drivePoints is how finely a trial's torque is sampled for the drive.
const driveSamples = 72

// sample takes the torque up to a speed.
func (r *runner) sample(high float64) sampled {
	s := sampled{make([]float64, driveSamples+1), make([]float64, driveSamples+1), make([]float64, driveSamples+1)}
	warm := r.b.air.ambientC
	for i := range s.rpm {
		s.rpm[i] = high * (float64(i) + 1e-3) / driveSamples
		p := r.at(s.rpm[i], warm)
		warm = p.WindingC
		s.torque[i], s.warm[i] = p.TorqueNm, warm
	}
	return s
}

// samples is the torque of a trial up to a speed: that of its curve where it goes so far,
// else taken anew.
func (r *runner) samples(curve []RunPoint, high float64) sampled {
	if len(curve) < driveSamples/2 || curve[len(curve)-1].RPM < high {
		return r.sample(high)
	}
	n := len(curve) - 1
	s := sampled{make([]float64, n), make([]float64, n), make([]float64, n)}
	for i, p := range curve[1:] {
		s.rpm[i], s.torque[i], s.warm[i] = p.RPM, p.TorqueNm, p.WindingC
	}
	return s
}

// warmAt is the winding's temperature at the sample below a speed.
func (s *sampled) warmAt(rpm float64) float64 {
	last := len(s.rpm) - 1
	i := int(rpm / s.rpm[last] * float64(last))
	return s.warm[max(0, min(i, last))]
}

// balance finds the speeds at which a given torque is what the trial takes.
func (r *runner) balance(s *sampled, given drive.Torque) []drive.Equilibrium {
	taken := func(rpm float64) float64 { return r.at(rpm, s.warmAt(rpm)).TorqueNm }
	over := func(rpm float64) float64 { return given(rpm) - taken(rpm) }
	ys := make([]float64, len(s.rpm))
	for i, rpm := range s.rpm {
		ys[i] = given(rpm) - s.torque[i]
	}
	return drive.Roots(over, given, taken, s.rpm, ys)
}
