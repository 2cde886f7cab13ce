package winding

import (
	"cmp"
	"slices"
)

// # What a curve's points tell
//
// Sentences about a curve need speeds that no figure has: where a winding gets warmer than its class
// allows, where it is most efficient. They are read off the curve's points here, good to the spacing of
// the points, so that no screen searches for them itself.

// SpeedRange is from one speed of the alternator to another, rpm; To is 0 where it lasts to the curve's
// end.
type SpeedRange struct{ From, To float64 }

// where is the range from the first point of the curve at which something holds to the last before it
// no longer does.
func (t *TrialOutcome) where(holds func(*RunPoint) bool) (r SpeedRange, ok bool) {
	first := -1
	for i := range t.Curve {
		if holds(&t.Curve[i]) {
			first = i
			break
		}
	}
	if first < 0 {
		return r, false
	}
	r.From = t.Curve[first].RPM
	for i := len(t.Curve) - 1; i > first && !holds(&t.Curve[i]); i-- {
		if holds(&t.Curve[i-1]) {
			r.To = t.Curve[i-1].RPM
		}
	}
	return r, true
}

// OverClass is where the winding's mean is warmer than its class allows; ok is false where it never is.
func (t *TrialOutcome) OverClass(m *MachineOutcome) (r SpeedRange, ok bool) {
	return t.where(func(p *RunPoint) bool { return p.WindingC > m.MeanLimitC.Value })
}

// NeverSteady is where the winding finds no steady temperature; ok is false where it always does.
func (t *TrialOutcome) NeverSteady() (r SpeedRange, ok bool) {
	return t.where(func(p *RunPoint) bool { return p.TooHot })
}

// MostEfficient is the point of highest efficiency, the slowest of several; ok is false where nothing
// comes out anywhere.
func (t *TrialOutcome) MostEfficient() (p RunPoint, ok bool) {
	if len(t.Curve) == 0 {
		return p, false
	}
	p = slices.MaxFunc(t.Curve, func(a, b RunPoint) int { return cmp.Compare(a.Efficiency, b.Efficiency) })
	return p, p.Efficiency > 0
}

// Beats compares the net amps of a trial with those of the reference above the speed at which their
// curves cross, rpm, or at the curve's end where they do not cross (above is 0 then): 1 where the trial
// has more, -1 where the reference has, 0 where they are alike. Both must have a curve.
func (o *Outcome) Beats(trial int) (above float64, side int) {
	t, ref := &o.Trials[trial], &o.Trials[o.Reference]
	at := func(curve []RunPoint) float64 { return curve[len(curve)-1].NetAmps }
	if t.CrossRPM.Known() {
		above = t.CrossRPM.Value
		at = func(curve []RunPoint) float64 {
			i := slices.IndexFunc(curve, func(p RunPoint) bool { return p.RPM > above })
			if i < 0 {
				i = len(curve) - 1
			}
			return curve[i].NetAmps
		}
	}
	return above, cmp.Compare(at(t.Curve), at(ref.Curve))
}
