package winding

import (
	"sort"

	"slotwright/winding/layout"
)

// # The current's true rms
//
// Heat goes by the rms of the current in the copper, a limit is told in amps DC. Between
// them stands the form of the current: blocks or sines by convention (machine.phasePerDC),
// pulses in truth, the more so near cut-in and with one phase, where the current is gone
// twice a period. Once it is known where a trial runs, a limit by density or temperature is
// taken where the current's own rms, between those points, comes to what it allows, if that
// is at fewer amps than by convention. Limits that set a winding against the old one stay as they are: the form
// belongs to both.

// byForm is the limits that go by rms alone.
var byForm = map[string]bool{limitDensity: true, limitTemperature: true}

// The names of limits that other parts ask for.
const (
	limitDensity     = "density"
	limitTemperature = "temperature"
	limitSameHeat    = "same heat"
	limitOldDensity  = "old density"
)

// running is the points of a trial's conditions at which something flows, by their rms.
func (t *TrialOutcome) running() []RunPoint {
	var list []RunPoint
	for i := range t.Operating {
		if p := t.Operating[i].RunPoint; p.AmpsDC > 0 {
			list = append(list, p)
		}
	}
	sort.Slice(list, func(i, k int) bool { return list[i].PhaseAmpsRMS < list[k].PhaseAmpsRMS })
	return list
}

// dcAt is the amps DC at which a phase's current comes to an rms, in a straight line between
// points going up; below the first and beyond the last in proportion. 0 where nothing flows.
func dcAt(curve []RunPoint, rms float64) float64 {
	for i, p := range curve {
		switch {
		case p.PhaseAmpsRMS < rms && i < len(curve)-1:
		case i == 0 || p.PhaseAmpsRMS < rms:
			return p.AmpsDC * rms / p.PhaseAmpsRMS
		default:
			last := curve[i-1]
			return last.AmpsDC + (p.AmpsDC-last.AmpsDC)*(rms-last.PhaseAmpsRMS)/(p.PhaseAmpsRMS-last.PhaseAmpsRMS)
		}
	}
	return 0
}

// limitByForm takes a trial's limits at the true rms of where it runs.
func (t *TrialOutcome) limitByForm(m *machine) {
	perDC := m.phasePerDC(t.Connection) / float64(m.sets)
	points := t.running()
	for i := range t.Each {
		l := &t.Each[i]
		if !byForm[l.Name] || !l.AmpsDC.Known() {
			continue
		}
		if amps := dcAt(points, l.AmpsDC.Value*perDC); amps > 0 && amps < l.AmpsDC.Value {
			k := amps / l.AmpsDC.Value
			if l.AmpsDC = l.AmpsDC.Times(k); k < 0.995 {
				l.Reason += ", at the true rms of its current"
			}
			if l.Name == limitDensity {
				t.DensityPerAmp = t.DensityPerAmp.Times(1 / k)
			}
		}
	}
	sort.SliceStable(t.Each, func(i, k int) bool { return t.Each[i].AmpsDC.Value < t.Each[k].AmpsDC.Value })
	if len(t.Each) > 0 {
		t.LimitAmps, t.LimitBy = t.Each[0].AmpsDC.Because(t.Each[0].Reason), t.Each[0].Name
	}
}

// limitSlack is how far over a limit still counts as on it: the solver's own rounding, no
// licence.
const limitSlack = 1.005

// OverLimit reports whether the most that flows for long, the winding warm and the battery
// taking charge, is past what the winding stands. Either not known: no.
func (t *TrialOutcome) OverLimit() bool {
	return t.LimitAmps.Known() && t.SteadyAmps.Known() && t.SteadyAmps.Value > t.LimitAmps.Value*limitSlack
}

// over is whether a point passes a limit, by its amps DC or by its true rms.
func (l *Limits) over(p RunPoint, c layout.Connection, m *machine) bool {
	limit := l.LimitAmps
	if !limit.Known() {
		return false
	}
	rms := limit.Value * m.phasePerDC(c) / float64(m.sets)
	return p.AmpsDC > limit.Value*limitSlack || byForm[l.LimitBy] && p.PhaseAmpsRMS > rms*limitSlack
}
