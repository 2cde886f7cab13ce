package winding

import (
	"math"

	"slotwright/winding/job"
	"slotwright/winding/layout"
)

// # Diodes at the star point
//
// Some alternators have two diodes more, from the star point to either side of the bridge. What
// they add comes of the third harmonic alone. While current flows the leads stand at +V/2 and -V/2,
// V the load's volts and two diodes, and sine EMFs add up to nothing, so the star point is the
// mean of the leads, V/6 from the middle at most: with three leads conducting ±V/6, with
// two the half of the resting phase's EMF, which is less (any power electronics text has the star
// point of a bridge). It never comes to a side of the bridge. The third harmonics are alike in the three phases and move
// the star point by as much; so its diodes begin only where their peak is V/2 - V/6,
//
//	√2·E3 ≥ V/3,  E3 as in thirdharmonic.go
//
// and that speed is said. What they let through above it is not worked out: the amps there are
// that much too low.

// aboutStar is what the star point's diodes do.
type aboutStar struct {
	fitted bool
	field  *job.FieldSpec
	dc     *dcSide
	speeds *speeds
}

// beginRPM is the speed from which they carry current; ok is false where nothing says it.
func (a aboutStar) beginRPM(o *TrialOutcome) (rpm float64, ok bool) {
	if !o.Kw1.Known() || !o.Kw3.Known() || !o.PhasePerRPM.Known() || !a.dc.works.Known() || !a.dc.diodeVolts.Known() {
		return 0, false
	}
	perRPM := math.Sqrt2 * o.PhasePerRPM.Value * thirdWave(a.field) * o.Kw3.Value / o.Kw1.Value
	return (a.dc.works.Value + 2*a.dc.diodeVolts.Value) / 3 / perRPM, perRPM > 0
}

// callOut says from which speed they add something.
func (a aboutStar) callOut(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	const source = "the star point of a bridge stands a sixth of its volts from the middle; only the third harmonic moves it further"
	if !a.fitted || a.dc.why != "" {
		return
	}
	rpm, ok := a.beginRPM(o)
	switch top := a.speeds.top; {
	case t.Connection == layout.Delta:
		d.add(Doubt, at("connection"), t.Name, "leave them off, or join it in star", "", "diodes at the star point: a delta has none")
	case !ok && o.Kw3.Known() && o.Kw3.Value < 1e-9:
		d.add(Note, at("connection"), t.Name, "", source, "the star point's diodes add nothing: this winding lets no third harmonic through (kw3 is 0)")
	case !ok:
	case top.Known() && top.Value < rpm:
		d.add(Note, at("connection"), t.Name, "", source, "the star point's diodes add nothing up to the top speed of %.0f rpm: they begin at about %.0f rpm (%s)", top.Value, rpm, thirdWaveText(a.field))
	default:
		d.add(Note, at("connection"), t.Name, "", source, "from about %.0f rpm the star point's diodes add amps that are not counted (%s)", rpm, thirdWaveText(a.field))
	}
}
