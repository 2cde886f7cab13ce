package winding

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/winding/zero"
)

// # The current's true rms
//
// Heat goes by the rms current in the copper; a limit is given in amps DC. Between them is the form
// factor of the current: by convention blocks or sines (machine.phasePerDC), in truth pulses, most so
// near cut-in and with one phase, where the current stops twice a period, and less than blocks far
// above it, where the current is nearly a sine. A temperature limit is taken where, on the trial's own
// curve at held speeds, the rms current reaches what the limit allows, whether at fewer amps than by
// convention or at more: it belongs to the winding and its battery, whatever drives them. The plate,
// which gives the rise per watt, is taken by its true rms too (plateform.go). A density limit is a rule
// in amps DC as it stands, and is moved only to fewer amps. Where a curve ends below the limit, the
// rest is extrapolated with the form factor at its end, which falls towards a sine's, but at most the
// conventional one, so that a winding that barely charges on it is not judged by its first thin pulses.
// Limits that compare a winding with the old one stay as they are: both have the same form.

// byForm is the limits that depend on rms alone.
var byForm = map[string]bool{limitDensity: true, limitTemperature: true}

// The names of limits that other parts ask for.
const (
	limitDensity     = "density"
	limitTemperature = "temperature"
	limitSameHeat    = "same heat"
	limitOldDensity  = "old density"
)

// formSteps is the number of steps in which a curve is searched for its rms limit.
const formSteps = 24

// dcAt is the amps DC at which a phase's current reaches an rms value on a curve that begins at from
// rpm. Below the current at 1 % above that it is proportional; above the current at top rpm it is
// extrapolated with the form factor there, at most perDC amps rms per ampere. 0 where nothing flows.
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
			return at(zero.Of(over, low.RPM, p.RPM, low.PhaseAmpsRMS-rms, p.PhaseAmpsRMS-rms)).AmpsDC
		}
		low = p
	}
	return low.AmpsDC + (rms-low.PhaseAmpsRMS)/min(perDC, low.PhaseAmpsRMS/low.AmpsDC)
}

// circling says that most of what is allowed circulates in the delta before anything is charged, by the
// third harmonic of the volts; "" where that is not so.
func circling(idle, allowed float64) string {
	if idle < allowed/2 {
		return ""
	}
	return fmt.Sprintf(", of which the current round in the delta is %.0f %% before it charges: star has none", min(100, 100*idle/allowed))
}

// nothingLeft, A DC, is the limit of a delta whose circulating current alone exceeds what is allowed:
// practically none, but above 0 so that its rms is kept.
const nothingLeft = 1e-6

// limitByForm moves a trial's limits to the true rms of its current.
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
		idle := c.at(0.99 * c.from).PhaseAmpsRMS
		amps := dcAt(c.at, c.from, top, allowed, perDC)
		if idle >= allowed {
			amps = min(amps, nothingLeft)
		}
		if amps > 0 && (amps < l.AmpsDC.Value || l.Name == limitTemperature) {
			k := amps / l.AmpsDC.Value
			l.sum.form /= k
			if l.AmpsDC = l.AmpsDC.Times(k); math.Abs(k-1) > 0.005 {
				l.circles = circling(idle, allowed)
				l.Reason += ", at the true rms of its current" + l.circles
			}
			switch {
			case l.Name != limitDensity && t.byDensity():
			case idle >= allowed:
				t.DensityPerAmp = quantity.Missing("no amps are left beside what circulates in the delta")
			default:
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

// limitSlack is the factor over a limit that still counts as on it: for the solver's own rounding, not
// a licence.
const limitSlack = 1.005

// OverLimit reports whether the sustained current in any condition, the winding warm and the battery
// taking charge or nearly full, is past what the winding withstands there; false where either is not
// known.
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

// besideHeat is the limits without the one by temperature, for a search at another field current: that
// limit includes the heat of the field in use, and where the rise per watt is known the temperature
// itself decides.
func (l *Limits) besideHeat(air *thermal) *Limits {
	if !air.still.Known() {
		return l
	}
	rest := *l
	rest.Each = slices.DeleteFunc(slices.Clone(l.Each), func(one Limit) bool { return one.Name == limitTemperature })
	return &rest
}

// over reports whether a point passes a limit, by its amps DC or by its true rms.
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
