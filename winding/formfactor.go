package winding

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"slotwright/winding/layout"
)

// # The current's true rms
//
// Heat goes by the rms of the current in the copper, a limit is told in amps DC. Between
// them stands the form of the current: blocks or sines by convention (machine.phasePerDC),
// pulses in truth, the more so near cut-in and with one phase, where the current is gone
// twice a period, and less than blocks far above it, where the current is nearly a sine. A limit
// by temperature is taken where, on the trial's own curve of held speeds, the current's rms comes
// to what the limit allows, be that at fewer amps than by convention or at more: it belongs to the
// winding and its battery, whatever drives them, and the plate that tells the rise per watt is
// taken by its true rms too (plateform.go). A limit by density is a rule in amps DC as it stands,
// and is taken there only if that is at fewer amps. What a curve that ends before would still grow
// by is taken in the form that it has at its end, which falls towards a sine's, but no thinner
// than the convention, so that a winding which hardly begins within it is not judged by its first
// thin pulses. Limits that set a winding against the old one stay as they are: the form belongs
// to both.

// byForm is the limits that go by rms alone.
var byForm = map[string]bool{limitDensity: true, limitTemperature: true}

// The names of limits that other parts ask for.
const (
	limitDensity     = "density"
	limitTemperature = "temperature"
	limitSameHeat    = "same heat"
	limitOldDensity  = "old density"
)

// formSteps is how finely a curve is gone through for where its rms comes to a limit.
const formSteps = 24

// dcAt is the amps DC at which a phase's current comes to an rms on a curve that begins at from
// rpm: below what flows a hundredth above that in proportion; what is missing at top rpm grows
// in the form that it has there, at most perDC amps rms each. 0 where nothing flows up to there.
func dcAt(at func(rpm float64) RunPoint, from, top, rms, perDC float64) float64 {
	begin := 1.01 * from
	if !(top > begin) {
		return 0
	}
	low := at(begin)
	if low.PhaseAmpsRMS >= rms {
		return low.AmpsDC * rms / low.PhaseAmpsRMS
	}
	for i := 1; i <= formSteps; i++ {
		p := at(begin + (top-begin)*float64(i)/formSteps)
		if p.PhaseAmpsRMS >= rms {
			over := func(n float64) float64 { return at(n).PhaseAmpsRMS - rms }
			return at(zeroOf(over, low.RPM, p.RPM, low.PhaseAmpsRMS-rms, p.PhaseAmpsRMS-rms)).AmpsDC
		}
		low = p
	}
	return low.AmpsDC + (rms-low.PhaseAmpsRMS)/min(perDC, low.PhaseAmpsRMS/low.AmpsDC)
}

// circling says that most of what is allowed goes round in the delta before anything is
// charged, by the third harmonic of the volts; "" where that is not so.
func circling(idle, allowed float64) string {
	if idle < allowed/2 {
		return ""
	}
	return fmt.Sprintf(", of which the current round in the delta is %.0f %% before it charges: star has none", min(100, 100*idle/allowed))
}

// limitByForm takes a trial's limits at the true rms of its current.
func (t *TrialOutcome) limitByForm(c *characteristic, m *machine, top float64) {
	perDC := m.phasePerDC(t.Connection) / float64(m.sets)
	for i := range t.Each {
		l := &t.Each[i]
		if !byForm[l.Name] || !l.AmpsDC.Known() {
			continue
		}
		allowed := l.AmpsDC.Value * perDC
		if l.Name == limitTemperature {
			allowed = l.AmpsDC.Value * l.sum.form
		}
		if amps := dcAt(c.at, c.from, top, allowed, perDC); amps > 0 && (amps < l.AmpsDC.Value || l.Name == limitTemperature) {
			k := amps / l.AmpsDC.Value
			l.sum.form /= k
			if l.AmpsDC = l.AmpsDC.Times(k); math.Abs(k-1) > 0.005 {
				l.circles = circling(c.at(0.99*c.from).PhaseAmpsRMS, allowed)
				l.Reason += ", at the true rms of its current" + l.circles
			}
			if l.Name == limitDensity || !t.byDensity() {
				t.DensityPerAmp = t.DensityPerAmp.Times(allowed / (amps * perDC))
			}
		}
	}
	sort.SliceStable(t.Each, func(i, k int) bool { return t.Each[i].AmpsDC.Value < t.Each[k].AmpsDC.Value })
	if len(t.Each) > 0 {
		t.LimitAmps, t.LimitBy = t.Each[0].AmpsDC.Because(t.Each[0].Reason), t.Each[0].Name
	}
}

// byDensity reports whether a density for its cooling is among the limits.
func (l *Limits) byDensity() bool {
	return slices.ContainsFunc(l.Each, func(l Limit) bool { return l.Name == limitDensity })
}

// limitSlack is how far over a limit still counts as on it: the solver's own rounding, no
// licence.
const limitSlack = 1.005

// OverLimit reports whether what flows for long in any condition, the winding warm and the
// battery taking charge or nearly full, is past what the winding stands there. Either not known: no.
func (t *TrialOutcome) OverLimit() bool {
	for i := range conditionCount {
		if t.overIn(i) {
			return true
		}
	}
	return false
}

// overIn is OverLimit in one condition.
func (t *TrialOutcome) overIn(condition int) bool {
	p := t.in(condition)
	return p != nil && t.PassedIn(t.hardest(p))
}

// over is whether a point passes a limit, by its amps DC or by its true rms.
func (l *Limits) over(p RunPoint, c layout.Connection, m *machine) bool {
	return l.part(&p, c, m) > limitSlack
}

// part is how many times a limit a point is, by its amps DC or by its true rms; 0 where none is known.
func (l *Limits) part(p *RunPoint, c layout.Connection, m *machine) float64 {
	limit, by := l.governs(p)
	if by == nil || p.AmpsDC == 0 && p.PhaseAmpsRMS == 0 {
		return 0
	}
	switch by.Name {
	case limitTemperature:
		return p.PhaseAmpsRMS / (limit * by.sum.form)
	case limitDensity:
		return max(p.AmpsDC/limit, p.PhaseAmpsRMS/(limit*m.phasePerDC(c)/float64(m.sets)))
	}
	return p.AmpsDC / limit
}
