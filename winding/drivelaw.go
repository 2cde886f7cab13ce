package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// DriveLaw is the power that the drive is assumed to give over its own speed.
type DriveLaw struct {
	// Points go from rest to the speed above which it gives nothing.
	Points []LawPoint
	// Assumed is set where only one power was given, and the shape is the usual one of its kind.
	Assumed bool
	// Words describe the shape in a sentence.
	Words string
}

// LawPoint is a speed of the drive's own shaft, rpm, and the most power it gives there, W.
type LawPoint struct{ RPM, Watts float64 }

// lawSteps is the number of steps of the law: enough to show its bends.
const lawSteps = 60

// DriveLawOf is the law of the job's drive; ok is false where it has none: wind, a speed that does
// not give way, or a drive not described enough.
func DriveLawOf(j *job.Job) (law DriveLaw, ok bool) {
	d := &j.Drive
	if d.Kind == "" || d.Kind == job.DriveWind || d.Kind == job.DriveFixed {
		return law, false
	}
	source, why := sourceOf(d)
	if why != "" {
		return law, false
	}
	for i := range lawSteps + 1 {
		rpm := source.Top() * float64(i) / lawSteps
		law.Points = append(law.Points, LawPoint{rpm, source.Watts(rpm)})
	}
	law.Assumed = true
	switch s := source.(type) {
	case drive.Yielding:
		law.Words = yieldingWords(d, s)
	case drive.Governed:
		law.Words = fmt.Sprintf("assumed: the pull of %s W at %s rpm at every speed, until the governor closes at %s rpm; two points of its power curve say it better", asTyped(s.UsualWatts), asTyped(s.UsualRPM), asTyped(s.TopRPM))
	case *drive.Curve:
		law.Assumed, law.Words = false, "what it gives is the power curve that was typed"+beyondTyped(s)
	}
	return law, true
}

// beyondTyped says what is assumed above the last point typed.
func beyondTyped(c *drive.Curve) string {
	last := c.Last()
	switch {
	case last.Watts == 0:
		return ""
	case c.FreeRPM > last.RPM:
		return fmt.Sprintf("; above its last point in a straight line to nothing at the top, %s rpm", asTyped(c.FreeRPM))
	}
	return fmt.Sprintf("; above its last point in a straight line to nothing at %s rpm, 1.2 times that: a top above %s rpm, or a point more, says it better", asTyped(c.Top()), asTyped(last.RPM))
}

// yieldingWords describes the law of legs and water in a sentence.
func yieldingWords(d *job.DriveSpec, y drive.Yielding) string {
	free := fmt.Sprintf("none at %s rpm, running free", asTyped(y.Top()))
	if y.FreeRPM == 0 {
		free = fmt.Sprintf("none at twice that speed, %s rpm, since nothing is said of running free", asTyped(y.Top()))
	}
	as := "as an undershot wheel by the momentum of its water"
	if d.Kind == job.DrivePedals {
		as = "as legs do in a short burst; for an hour they are flatter"
	}
	return fmt.Sprintf("assumed: it gives most, %s W, at %s rpm, less below and %s, %s; two points of its power curve say it better", asTyped(y.UsualWatts), asTyped(y.UsualRPM), free, as)
}
