package winding

import "math"

// RunAt runs a trial of the job, counted from 0, into the battery at one speed of the
// alternator's shaft: the same solution as the points of its curve, for a speed between
// them. A string that is not empty says why there is none; rpm must be finite and not
// negative. It costs about as much as one point of a curve.
func (b *Bench) RunAt(trial int, rpm float64) (RunPoint, string) {
	if trial < 0 || trial >= len(b.job.Trials) {
		return RunPoint{}, "there is no such trial"
	}
	if math.IsNaN(rpm) || math.IsInf(rpm, 0) || rpm < 0 {
		return RunPoint{}, "the speed must be a number of rpm, 0 or more"
	}
	o := b.Static(b.job.Trials[trial])
	r, why := b.runner(b.job.Trials[trial], &o)
	if r == nil {
		return RunPoint{}, why
	}
	return r.at(rpm, b.air.ambientC), ""
}

// ClassLimit is the letter of the insulation's thermal class, as given or by default,
// and the winding temperature it allows in °C (IEC 60085).
func (b *Bench) ClassLimit() (class string, celsius float64) {
	return b.air.class.String(), b.air.classC
}
