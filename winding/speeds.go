package winding

import (
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
)

// speeds are those of the alternator shaft that the job asks about.
type speeds struct{ slow, usual, top, test, ratio quantity.Figure }

// newSpeeds takes the target's own speeds before those that follow from the drive.
func newSpeeds(t *job.Target, d *job.DriveSpec) speeds {
	s := speeds{ratio: ratio.Of(d)}
	s.slow = t.SlowRPM.Figure("needs the slow speed")
	s.usual = t.UsualRPM.Figure("needs the usual speed")
	s.top = t.TopRPM.Figure("needs the top speed")
	through := func(own quantity.Figure, drive quantity.Reading) quantity.Figure {
		if own.Known() || !drive.Given() {
			return own
		}
		return drive.Figure("").With(s.ratio, mul)
	}
	s.slow, s.usual, s.top = through(s.slow, d.SlowRPM), through(s.usual, d.UsualRPM), through(s.top, d.TopRPM)
	if d.Kind == job.DriveWind {
		s = s.ofWind(d)
	}
	if !s.usual.Known() {
		s.usual = firstKnown(s.usual, s.slow, s.top)
	}
	if !s.slow.Known() {
		s.slow = firstKnown(s.slow, s.usual)
	}
	if !s.top.Known() {
		s.top = firstKnown(s.top, s.usual)
	}
	s.test = firstKnown(t.TestRPM.Figure("needs a test speed"), s.usual)
	return s
}

// firstKnown is the first known figure, else the first.
func firstKnown(figures ...quantity.Figure) quantity.Figure {
	for _, f := range figures {
		if f.Known() {
			return f
		}
	}
	return figures[0]
}
