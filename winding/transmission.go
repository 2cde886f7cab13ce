package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// transmissionOf is the job's, with what was not given filled in.
func transmissionOf(d *job.DriveSpec) drive.Transmission {
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
	defaultBeltEfficiency  = 0.95
	defaultChainEfficiency = 0.97
)

// defaultSlip is a belt's, where it was not measured.
var defaultSlip = job.DefaultOf("drive.slip")

// driveRatio is alternator turns for one turn of the drive: from two tachometer
// readings, else as given, else from pulleys or teeth.
func driveRatio(d *job.DriveSpec) quantity.Figure {
	t := transmissionOf(d)
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

// wantedPulleys turns the belt's question round: which pulley takes the drive's usual
// speed to the usual speed that is wanted.
func wantedPulleys(m *MachineOutcome, d *job.DriveSpec, usual quantity.Reading) {
	no := quantity.Missing("needs the drive's usual speed and the usual speed wanted")
	m.WantedRatio, m.DrivenMM, m.DriverMM, m.DrivenTeeth = no, no, no, no
	if !d.UsualRPM.Given() || !usual.Given() {
		return
	}
	m.WantedRatio = quantity.Of(usual.Value/d.UsualRPM.Value, d.UsualRPM.Origin)
	t := transmissionOf(d)
	pulley := func(end drive.End, other quantity.Reading, slip float64) quantity.Figure {
		if !other.Given() {
			return quantity.Missing("needs the other pulley")
		}
		size, err := drive.PulleyFor(end, m.WantedRatio.Value, other.Value, slip)
		return quantity.OrError(size, err, other.Origin)
	}
	switch t.Kind {
	case drive.Belt:
		m.DrivenMM, m.DriverMM = pulley(drive.AlternatorEnd, d.DriverMM, t.Slip), pulley(drive.DriveEnd, d.DrivenMM, t.Slip)
	case drive.Chain, drive.Gear:
		m.DrivenTeeth = pulley(drive.AlternatorEnd, d.DriverTeeth, 0)
	}
}
