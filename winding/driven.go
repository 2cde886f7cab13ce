package winding

import (
	"fmt"
	"sort"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
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
	// Region is still, idling, charging, stalled, runaway or overload.
	Region drive.Region `json:"region"`
	// Others are the speeds at which it also could run, or could not stay.
	Others []drive.Equilibrium `json:"other_equilibria,omitempty"`
}

// Overload says that a drive is asked for more than it gives; the other regions are those
// of package drive.
const Overload drive.Region = "overload"

// Driven is how the trial and its drive come to terms.
type Driven struct {
	// Points are against wind or drive speed, going up.
	Points []DrivePoint `json:"drive_points,omitempty"`
	// StartsAt is the wind or the drive speed from which it charges.
	StartsAt quantity.Figure `json:"charges_from_x"`
	// YearKWh is into the battery in a year of the stated wind.
	YearKWh quantity.Figure `json:"year_kwh"`
	// RunRPM, RunAmps and RunWatts are where a drive that gives all it can comes to rest
	// against this winding: alternator speed, DC amps and drive watts.
	RunRPM   quantity.Figure `json:"full_power_rpm"`
	RunAmps  quantity.Figure `json:"full_power_amps_dc"`
	RunWatts quantity.Figure `json:"full_power_drive_w"`
	// Suits is one plain sentence on how the trial suits the drive; Mends is what would
	// suit it better.
	Suits string   `json:"suits,omitempty"`
	Mends []string `json:"mends,omitempty"`

	FieldRun
	SafetyRun
	region drive.Region // the one that governs
}

// noDrive is every figure missing for one reason.
func noDrive(why string) Driven {
	no := quantity.Missing(why)
	return Driven{StartsAt: no, YearKWh: no, RunRPM: no, RunAmps: no, RunWatts: no, Suits: "", FieldRun: noField(why), SafetyRun: noSafety(why)}
}

// drive lets every trial that can run meet the drive.
func (b *Bench) drive(o *Outcome, runners []*runner) {
	for i, r := range runners {
		t := &o.Trials[i]
		if r == nil {
			t.Driven = noDrive(t.NoCharging)
			t.OpenAtGaleVolts = quantity.Missing(t.NoCharging)
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
func (b *Bench) driveRatio() quantity.Figure {
	d := b.job.Drive
	t := b.transmission()
	if d.TachDriveRPM.Given() && d.TachAltRPM.Given() {
		ratio, slip, err := drive.RealRatio(d.TachDriveRPM.Value, d.TachAltRPM.Value, nominal(t))
		if err == nil {
			why := "two tachometer readings"
			if nominal(t) > 0 {
				why += fmt.Sprintf(", which mean %.1f %% of slip", 100*slip)
			}
			return quantity.Of(ratio).Because(why)
		}
	}
	turns, err := t.Turns()
	if err != nil {
		return quantity.Missing("needs the ratio, both pulleys or the teeth of both wheels")
	}
	if d.Ratio.Given() {
		return d.Ratio.Figure("").Because("as given")
	}
	return quantity.Of(turns, d.DriverMM.Origin, d.DrivenMM.Origin).Because(map[drive.Kind]string{drive.Direct: "direct", drive.Belt: "the pulleys, less slip", drive.Chain: "the teeth", drive.Gear: "the teeth"}[t.Kind])
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
func (dr *Driven) doubt(d *doubts, at func(string) string, t job.Trial) {
	fix := ""
	if len(dr.Mends) > 0 {
		fix = dr.Mends[0]
	}
	switch dr.region {
	case drive.Stalled, drive.Runaway, drive.Idling, drive.Still, Overload:
		d.add(Doubt, at("turns"), t.Name, fix, "balance of drive and alternator", "%s", dr.Suits)
	}
	dr.SafetyRun.doubt(d, at, t)
}

// torque is a trial as a shaft meets it: its torque against speed, and samples of that up
// to a speed. The winding's warmth at each sample is kept, and taken between them when
// the torque is asked for exactly.
func (r *runner) torque(cutIn, high float64) drive.Load {
	var w warmth
	idea := trend{ambient: r.b.air.ambientC}
	samples := drive.Sample(func(rpm float64) float64 {
		p := r.at(rpm, idea.next(rpm))
		idea.add(rpm, p.WindingC)
		w.rpm, w.celsius = append(w.rpm, rpm), append(w.celsius, p.WindingC)
		return p.TorqueNm
	}, high, driveSamples, cutIn)
	return drive.Load{Taken: func(rpm float64) float64 { return r.at(rpm, w.at(rpm)).TorqueNm }, CutInRPM: cutIn, Samples: samples}
}

// driveSamples is how finely a trial's torque is sampled for the drive.
const driveSamples = 48

// warmth is a winding's temperature against speed.
type warmth struct{ rpm, celsius []float64 }

// at is the temperature at a speed, in a straight line between two known.
func (w *warmth) at(rpm float64) float64 {
	n := len(w.rpm)
	i := sort.SearchFloat64s(w.rpm, rpm)
	switch {
	case n == 0:
		return defaultAmbientC
	case i == 0:
		return w.celsius[0]
	case i == n:
		return w.celsius[n-1]
	}
	part := (rpm - w.rpm[i-1]) / (w.rpm[i] - w.rpm[i-1])
	return w.celsius[i-1] + part*(w.celsius[i]-w.celsius[i-1])
}
