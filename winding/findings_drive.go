package winding

import "slotwright/winding/job"

// aboutDrive is what is called out of what was said of the drive.
type aboutDrive struct{ given *job.DriveSpec }

// tooFree is how near to the usual speed a drive's free speed is doubted. Legs and undershot
// wheels give most at about half of it (see package drive); common practice, no source.
const tooFree = 1.25

// callOut is about speeds in the wrong order, a free speed that was meant as a working one, and
// a power beside the points that are used in its place.
func (a aboutDrive) callOut(d *doubts) {
	g := a.given
	points := 0
	for _, p := range g.Points {
		if p.RPM.Given() && p.Watts.Given() {
			points++
		}
	}
	slow, usual, top := g.SlowRPM, g.UsualRPM, g.TopRPM
	if slow.Given() && usual.Given() && slow.Value > usual.Value {
		d.add(Doubt, "drive.slow", "", "swap them", "", "the drive's slow speed, %s rpm, is above its usual one, %s rpm", asTyped(slow.Value), asTyped(usual.Value))
	}
	yields := g.Kind == "pedals" || g.Kind == "water"
	switch {
	case !usual.Given() || !top.Given():
	case usual.Value > top.Value:
		d.add(Doubt, "drive.top", "", "swap them", "", "the drive's usual speed, %s rpm, is above its top, %s rpm", asTyped(usual.Value), asTyped(top.Value))
	case yields && points < 2 && top.Value < tooFree*usual.Value:
		d.add(Doubt, "drive.top", "", "give its speed with the load off, or leave it empty", "common practice, no source",
			"a top of %s rpm is taken as running free, where the drive gives nothing: that is near the usual %s rpm", asTyped(top.Value), asTyped(usual.Value))
	}
	if points >= 2 && g.Watts.Given() {
		d.add(Note, "drive.power", "", "take the power out, or the points", "", "the power of %s W is not used: the points of the power curve are", asTyped(g.Watts.Value))
	}
}
