package winding

import (
	"fmt"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A drive the wrong way round
//
// Chains and gears are written driver : driven by some and as turns by others, 48:14 for 14:48, and a
// pulley goes into the wrong field. Then the alternator turns so slowly that no winding of the job ever
// charges, while the same numbers the other way round give a speed at which one does. Both are worked
// out, so it can be asked.

// turnedRound is about a ratio, or two wheels, that are probably the wrong way round.
type turnedRound struct {
	given  *job.DriveSpec
	target *job.Target
	speeds *speeds
	begins float64 // the least speed at which a winding of the job begins to charge, rpm; 0: not known
}

// fastFor is how many times the speed at which charging begins a usual speed may be to be one that
// somebody meant; a road vehicle's alternator begins at about 1000 rpm and is rated at 6000.
// Common practice, no source.
const fastFor = 10.0

// callOut asks, at the field that was filled in.
func (a turnedRound) callOut(d *doubts) {
	path, swapped := a.field()
	r, top := a.speeds.ratio, a.speeds.top
	if path == "" || a.begins == 0 || !r.Known() || !top.Known() || r.Value <= 0 || r.Value >= 1 || top.Value >= a.begins {
		return
	}
	other := 1 / r.Value
	if highest, usual := top.Value*other*other, a.speeds.usual.Value*other*other; highest < a.begins || usual > fastFor*a.begins {
		return
	}
	d.add(Finding{Severity: Doubt, Path: path, Fix: fmt.Sprintf("turned round? %s it would be %.3g, and %.0f rpm at the top", swapped, other, top.Value*other*other), Source: "n2 = i·n1; common practice, no source"},
		"%.3g turns of the alternator for one of the drive make %.3g alternator rpm at the top, and nothing charges under %.0f", r.Value, top.Value, a.begins)
}

// field is where the ratio was said, and how it is turned round; "" where the speeds do not go by it or
// were measured.
func (a turnedRound) field() (path, swapped string) {
	g := a.given
	switch {
	case a.target.TopRPM.Given(), g.TachDriveRPM.Given() && g.TachAltRPM.Given():
		return "", ""
	case g.Ratio.Given():
		return "drive.ratio", "With the sides swapped, of teeth the alternator's first,"
	case g.DriverTeeth.Given() && g.DrivenTeeth.Given():
		return "drive.driver_teeth", "With the wheels swapped"
	case g.DriverMM.Given() && g.DrivenMM.Given():
		return "drive.driver", "With the pulleys swapped"
	}
	return "", ""
}

// earliest is the least speed at which a trial begins to charge, or else the old winding, rpm; 0 where it
// is not known of any.
func earliest(o *Outcome) (rpm float64) {
	least := func(f quantity.Figure) {
		if f.Known() && (rpm == 0 || f.Value < rpm) {
			rpm = f.Value
		}
	}
	for i := range o.Trials {
		least(o.Trials[i].CutInRPM)
	}
	if rpm == 0 && o.Old != nil {
		least(o.Old.CutInRPM)
	}
	return rpm
}
