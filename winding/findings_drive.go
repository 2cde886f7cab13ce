package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
)

// aboutDrive makes the findings about the drive as described.
type aboutDrive struct {
	given  *job.DriveSpec
	target *job.Target
	ratio  quantity.Figure
}

// farWanted is the factor by which a speed typed for the alternator may differ from what the drive's
// own speed makes of it; common practice, no source.
const farWanted = 2.0

// wanted is about alternator speeds that replace the drive's and are far from them: a drive's speed
// typed there, or a zero too many.
func (a aboutDrive) wanted(d *doubts) {
	if a.given.Kind == "" || !a.ratio.Known() {
		return
	}
	for _, s := range []struct {
		name        string
		asked, from quantity.Reading
	}{{"slow", a.target.SlowRPM, a.given.SlowRPM}, {"top", a.target.TopRPM, a.given.TopRPM}} {
		makes := s.from.Value * a.ratio.Value
		if s.asked.Given() && s.from.Given() && (s.asked.Value > farWanted*makes || s.asked.Value*farWanted < makes) {
			d.add(Finding{Severity: Doubt, Path: "target." + s.name, Fix: "leave it empty to take the drive's; it is a speed of the ALTERNATOR", Source: job.Practice},
				"the %s speed wanted, %s alternator rpm, is far from the %s that the drive's %s rpm make", s.name, asTyped(s.asked.Value), asTyped(makes), asTyped(s.from.Value))
		}
	}
}

// twice is about a ratio given in two ways that disagree, and about a slip that has no effect.
func (a aboutDrive) twice(d *doubts) {
	for _, c := range ratio.Contradictions(a.given) {
		d.add(Finding{Severity: Doubt, Path: c.Path, Fix: "take out what is wrong", Source: job.Practice}, "%s", c.Words)
	}
	if a.given.Slip.Given() {
		if why := ratio.Idle(a.given, "drive.slip"); why != "" {
			d.add(Finding{Severity: Note, Path: "drive.slip", Fix: "take it out, or give the ratio by pulleys or stage by stage"},
				"the belt's slip of %s %% is not used: %s", quantity.File.Number(100*a.given.Slip.Value, quantity.AtMost(2)), why)
		}
	}
}

// tooFree is the ratio to the usual speed below which a drive's free speed is doubted. Legs and
// undershot wheels give most at about half of it (see package drive); common practice, no source.
const tooFree = 1.25

// callOut is about speeds in the wrong order, a free speed that was meant as a working one, and a power
// beside points that are used instead of it.
func (a aboutDrive) callOut(d *doubts) {
	a.wanted(d)
	a.twice(d)
	g := a.given
	points := 0
	for _, p := range g.Points {
		if p.RPM.Given() && p.Watts.Given() {
			points++
		}
	}
	slow, usual, top := g.SlowRPM, g.UsualRPM, g.TopRPM
	if slow.Given() && usual.Given() && slow.Value > usual.Value {
		d.add(Finding{Severity: Doubt, Path: "drive.slow", Fix: "swap them"},
			"the drive's slow speed, %s rpm, is above its usual one, %s rpm", asTyped(slow.Value), asTyped(usual.Value))
	}
	switch {
	case !usual.Given() || !top.Given():
	case usual.Value > top.Value:
		d.add(Finding{Severity: Doubt, Path: "drive.top", Fix: "swap them"},
			"the drive's usual speed, %s rpm, is above its top, %s rpm", asTyped(usual.Value), asTyped(top.Value))
	case yields(g.Kind) && points < 2 && top.Value < tooFree*usual.Value:
		d.add(Finding{Severity: Doubt, Path: "drive.top", Fix: "give its speed with the load off, or leave it empty", Source: job.Practice},
			"a top of %s rpm is taken as running free, where the drive gives nothing: that is near the usual %s rpm", asTyped(top.Value), asTyped(usual.Value))
	}
	if points >= 2 && g.Watts.Given() {
		d.add(Finding{Severity: Note, Path: "drive.power", Fix: "take the power out, or the points"},
			"the power of %s W is not used: the points of the power curve are", asTyped(g.Watts.Value))
	}
}
