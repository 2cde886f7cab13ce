package winding

import (
	"fmt"

	"slotwright/winding/battery"
	"slotwright/winding/quantity"
)

// fuses is each trial's fuse, and the one that serves all of them.
func (d *dcSide) fuses(o *Outcome, turns *driveSide, wanted quantity.Reading) {
	for i := range o.Trials {
		o.Trials[i].FuseAmps = d.fuseFor(o.Trials[i:i+1], turns, wanted, "the most that flows")
	}
	if o.Old != nil {
		o.Old.FuseAmps = d.fuseFor([]TrialOutcome{*o.Old}, turns, wanted, "the most that flows")
	}
	o.Machine.FuseAmps = d.fuseFor(o.Trials, turns, wanted, "the most that flows with any trial")
}

// fuseFor is the fuse at the battery's post for the most that any of some trials can send through it,
// or for the amps wanted where nothing runs yet.
func (d *dcSide) fuseFor(trials []TrialOutcome, turns *driveSide, wanted quantity.Reading, words string) quantity.Figure {
	if d.noFuse != "" {
		return quantity.Missing(d.noFuse)
	}
	most, from := wanted.Figure("needs the amps wanted"), "the amps wanted"
	for i := range trials {
		if a := trials[i].mostAnywhere(turns); a.Known() && a.Value > most.Value {
			most, from = a, words
		}
	}
	if !most.Known() {
		most, from = d.chargeLimit, "the battery's charge limit"
	}
	fuse := most.Then(battery.FuseAmps)
	if fuse.Known() && fuse.Value == 0 {
		return quantity.Missing("more amps than a usual fuse carries")
	}
	return fuse.Because(fmt.Sprintf("the next size from 1.25 times %.3g A, %s", most.Value, from))
}

// within reports whether the drive reaches a point of its curve: it has the power, and turns no faster
// than its top speed.
func (s *driveSide) within(p *DrivePoint) bool {
	fastest := s.conditions[top].X
	return p.Region != Overload && (!fastest.Known() || p.X <= fastest.Value*(1+1e-9))
}

// mostAnywhere is the highest bridge current over all that the drive can do.
func (t *TrialOutcome) mostAnywhere(d *driveSide) quantity.Figure {
	most := t.MostAmps
	for i := range t.Points {
		if p := &t.Points[i]; d.within(p) && most.Known() && p.AmpsDC > most.Value {
			most.Value = p.AmpsDC
		}
	}
	return most
}
