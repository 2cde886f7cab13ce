package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// DriveLaw is what the drive is taken to give over its own speed.
type DriveLaw struct {
	// Points go from rest to the speed above which it gives nothing.
	Points []LawPoint
	// Assumed is set where only one power was given and the shape is the usual one of its kind.
	Assumed bool
	// Words say in a sentence what the shape is.
	Words string
}

// LawPoint is a speed of the drive's own shaft, rpm, and what it gives there at most, W.
type LawPoint struct{ RPM, Watts float64 }

// lawSteps are how many steps the law is told in: enough that its bends are seen.
const lawSteps = 60

// DriveLawOf is the law of the job's drive; ok is false where it has none: wind, a speed that
// does not give way, or too little said.
func DriveLawOf(j *job.Job) (law DriveLaw, ok bool) {
	d := &j.Drive
	if d.Kind == "" || d.Kind == "wind" || d.Kind == "fixed" {
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
		law.Words = fmt.Sprintf("assumed: the pull of %.4g W at %.4g rpm at every speed, until the governor closes at %.4g rpm; two points of its power curve say it better", s.UsualWatts, s.UsualRPM, s.TopRPM)
	case *drive.Curve:
		law.Assumed, law.Words = false, "what it gives is the power curve that was typed"+beyondTyped(s)
	}
	return law, true
}

// beyondTyped is what is taken above the last point that was typed.
func beyondTyped(c *drive.Curve) string {
	last := c.Last()
	switch {
	case last.Watts == 0:
		return ""
	case c.FreeRPM > last.RPM:
		return fmt.Sprintf("; above its last point in a straight line to nothing at the top, %.4g rpm", c.FreeRPM)
	}
	return fmt.Sprintf("; above its last point in a straight line to nothing at %.4g rpm, 1.2 times that: a top above %.4g rpm, or a point more, says it better", c.Top(), last.RPM)
}

// yieldingWords is the law of legs and water in a sentence.
func yieldingWords(d *job.DriveSpec, y drive.Yielding) string {
	free := fmt.Sprintf("none at %.4g rpm, running free", y.Top())
	if y.FreeRPM == 0 {
		free = fmt.Sprintf("none at twice that speed, %.4g rpm, since nothing is said of running free", y.Top())
	}
	as := "as an undershot wheel by the momentum of its water"
	if d.Kind == "pedals" {
		as = "as legs do in a short burst; for an hour they are flatter"
	}
	return fmt.Sprintf("assumed: it gives most, %.4g W, at %.4g rpm, less below and %s, %s; two points of its power curve say it better", y.UsualWatts, y.UsualRPM, free, as)
}
