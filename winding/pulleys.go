package winding

import (
	"slotwright/winding/drive"
	"slotwright/winding/quantity"
)

// wantedPulleys turns the belt's question round: which pulley takes the drive's usual
// speed to the usual speed that is wanted.
func (b *Bench) wantedPulleys(m *MachineOutcome) {
	d := b.job.Drive
	no := quantity.Missing("needs the drive's usual speed and the usual speed wanted")
	m.WantedRatio, m.DrivenMM, m.DriverMM, m.DrivenTeeth = no, no, no, no
	if !d.UsualRPM.Given() || !b.job.Target.UsualRPM.Given() {
		return
	}
	m.WantedRatio = quantity.Of(b.job.Target.UsualRPM.Value/d.UsualRPM.Value, d.UsualRPM.Origin)
	t := b.transmission()
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
