package winding

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
)

// # Amps that the winding does not withstand
//
// Amps are computed at every operating point, even where the winding does not survive them: it finds no
// steady temperature and burns, it exceeds what its class allows, or the current exceeds its limit.
// Such amps are not available. They stay in the outcome, which says how far past the limit they are,
// but every place that compares windings marks them, calls none of them better, and words them in the
// conditional.

// Burnt is what becomes of a winding whose temperature is not followed any further: the reason for a missing
// temperature.
var Burnt = fmt.Sprintf("it gets past %.0f °C, where no insulation lasts", hottest)

// Burns reports whether the winding finds no steady temperature somewhere in the drive's range.
func (t *TrialOutcome) Burns() bool { return !t.HottestC.Known() && t.HottestC.Why == Burnt }

// burnsIn reports whether it burns where it runs in a condition.
func (t *TrialOutcome) burnsIn(condition int) bool {
	p := t.in(condition)
	return p != nil && p.TooHot
}

// Burns reports whether a trial does not survive the condition that this figure is for, so that no
// number is shown for it.
func (o *Output) Burns(t *TrialOutcome) bool {
	switch o.ID {
	case "winding_c_hottest":
		return t.Burns()
	case "full_power_amps_dc":
		return t.runHot
	}
	return o.At != 0 && o.Better != Neither && t.burnsIn(o.At-1)
}

// Held reports whether the regulator holds a trial's net amps in the condition that this figure is for.
// All figures of a condition except its net amps follow from the current, held or not.
func (o *Output) Held(t *TrialOutcome) bool {
	condition := o.At - 1
	if o.At == 0 {
		condition = usual
	}
	p := t.in(condition)
	switch {
	case p == nil:
		return false
	case o.ID == "amps_dc_usual_empty":
		return p.emptyHeld
	case o.ID == "amps_dc_usual_absorbing":
		return p.fullHeld
	}
	return o.At != 0 && strings.HasPrefix(o.ID, "amps_dc_") && p.Held
}

// failsIn says in a word or two why the winding does not withstand the current in a condition; "" when
// it does.
func (t *TrialOutcome) failsIn(m *MachineOutcome, condition int) string {
	hot := [conditionCount]quantity.Figure{t.HotSlowC, t.HotUsualC, t.HotTopC}[condition]
	switch {
	case t.burnsIn(condition):
		return "burns"
	case hot.Known() && m.MeanLimitC.Known() && hot.Value > m.MeanLimitC.Value:
		return "gets too hot"
	case t.in(condition) != nil && t.in(condition).full.TooHot:
		return "burns" + onceFull
	case t.overIn(condition):
		return "passes its limit"
	}
	return ""
}

// # A battery that is nearly full
//
// Where a winding holds its rotor below the blades' best speed, a battery at a higher voltage takes
// less torque at that speed: the rotor breaks free, and may settle at a balance with twice the amps or
// more. That is no transient, since a battery absorbs for hours. So limits, heat, fuse and verdict use
// the harder of two points, the battery taking charge and the battery nearly full; everywhere else a
// higher voltage lets fewer amps through, and the first is the harder one.

// onceFull is said of what happens only then.
const onceFull = " once the battery is nearly full"

// hardest is the sustained point of a condition at which a winding is furthest past its limit.
func (l *Limits) hardest(p *Operating) *RunPoint {
	if p.full.AmpsDC*l.LimitIn(&p.RunPoint) > p.AmpsDC*l.LimitIn(&p.full) {
		return &p.full
	}
	return &p.RunPoint
}

// endures reports whether the winding withstands a point for long.
func (b *bed) endures(l *Limits, c layout.Connection, run RunPoint) bool {
	return !l.over(run, c, b.machine) && !run.TooHot && !(b.air.still.Known() && run.WindingC > b.air.meanC)
}

// edge is the factor by which the volts of a full battery may be higher, or the machine's lower than
// read, before a winding that just holds its rotor is no longer called safe: the 2 % of a voltage
// reading without a ± (instruments of the bench).
const edge = 1.02

// beyond is a trial against a battery voltage raised by the edge, with the field of that voltage.
func (r *charger) beyond(volts float64) *charger {
	other := r.against(volts)
	other.load.Volts *= edge
	return other
}

// freed is the current when a winding that holds its rotor below its best speed in the furling wind,
// and withstands that, lets it go within the edge; 0 where it does not, or withstands that too.
func (b *bed) freed(r *charger, t *TrialOutcome) float64 {
	last := t.in(top)
	if b.drive.kind != job.DriveWind || last == nil || last.Region != drive.Stalled || !b.dc.absorption.Known() || !b.endures(&t.Limits, t.Connection, last.full) {
		return 0
	}
	free := r.beyond(b.dc.absorption.Value).settle(b.drive.given(last.X), last.full.RPM, 0, last.full.WindingC)
	if b.endures(&t.Limits, t.Connection, free) {
		return 0
	}
	return free.AmpsDC
}

// fullTo is the strongest wind examined below the furling one in which a winding that does not
// withstand a full battery there does withstand it; 0 where there is none or it withstands the furling
// wind. The stronger the wind the freer the rotor, so bisection over the winds finds it: each costs a
// balance.
func (b *bed) fullTo(r *charger, t *TrialOutcome) float64 {
	last := t.in(top)
	if b.drive.kind != job.DriveWind || last == nil || b.endures(&t.Limits, t.Connection, last.full) {
		return 0
	}
	full := r.against(b.dc.absorption.Value)
	first := sort.Search(len(t.Points), func(i int) bool {
		p := &t.Points[i]
		return !b.endures(&t.Limits, t.Connection, full.settle(b.drive.given(p.X), p.RPM, 0, p.WindingC))
	})
	if first == 0 {
		return 0
	}
	return t.Points[first-1].X
}

// whenFull says for a point of a condition that the battery is nearly full, where that is the harder
// point.
func (p *Operating) whenFull(at *RunPoint) string {
	if at == &p.full {
		return ", the battery nearly full"
	}
	return ""
}

// Stretch is a range of the alternator's speed, both ends in rpm.
type Stretch struct{ From, To float64 }

// NotWithstood are the ranges of speed in which the winding does not withstand the current if held there:
// it is past its current limit or its class, or finds no steady temperature. Below a hump of the amps,
// and above one that a regulator or a fan ends, it withstands them. An end set by the current limit is
// exact, others are as accurate as the spacing of the curve's points.
func (t *TrialOutcome) NotWithstood(m *MachineOutcome) (list []Stretch) {
	past := func(p *RunPoint) bool {
		return p.TooHot || p.followed && m.MeanLimitC.Known() && p.WindingC > m.MeanLimitC.Value || t.PassedIn(p)
	}
	for i := range t.Curve {
		p := &t.Curve[i]
		switch {
		case !past(p):
		case i > 0 && past(&t.Curve[i-1]):
			list[len(list)-1].To = p.RPM
		default:
			list = append(list, Stretch{p.RPM, p.RPM})
		}
	}
	if len(list) == 0 {
		return nil
	}
	first, last := &list[0], &list[len(list)-1]
	if t.LimitRPM.Known() {
		first.From = min(first.From, t.LimitRPM.Value)
	}
	if t.LimitToRPM > 0 {
		last.To = max(last.To, t.LimitToRPM)
	}
	return list
}

// standsAt reports whether the winding withstands what flows at a point of its drive, in the wind also
// with a battery that is nearly full.
func (t *TrialOutcome) standsAt(p *DrivePoint, air *thermal) bool {
	return !(p.passes(&t.Limits) || p.TooHot || air.still.Known() && p.WindingC > air.meanC || t.fullTo > 0 && p.X > t.fullTo)
}

// stands reports whether it withstands all that the drive can do.
func (t *TrialOutcome) stands(m *MachineOutcome) bool {
	hot := t.Burns() || t.HottestC.Known() && m.MeanLimitC.Known() && t.HottestC.Value > m.MeanLimitC.Value
	return !hot && !t.OverLimit()
}

// doubtCooling asks for the kind of cooling where it was not given and a winding, under the assumed
// one, exceeds what it withstands.
func doubtCooling(d *doubts, o *Outcome, air *thermal) {
	if !air.unsaid {
		return
	}
	var names []string
	for i := range o.Trials {
		if t := &o.Trials[i]; t.Fits() && !t.stands(&o.Machine) {
			names = append(names, t.Name)
		}
	}
	if len(names) == 0 {
		return
	}
	d.add(Finding{Severity: Doubt, Path: "machine.cooling", Fix: "say whether it is closed, open or has a fan of its own"},
		"cooling was not given and is taken as %s: with that the winding of trial %s gets too hot or passes its current limit", air.cooling, strings.Join(names, ", "))
}

// notHad marks amps or watts that cannot be had in a condition: none come, the winding does not
// withstand them, or the drive is dragged far below the condition's speed.
func notHad(condition int) func(*Outcome, *TrialOutcome) bool {
	none := nothingAt(condition)
	return func(o *Outcome, t *TrialOutcome) bool {
		return none(o, t) || t.failsIn(&o.Machine, condition) != "" || t.draggedFarIn(condition)
	}
}

// # What limits the amps
//
// From one wire of a ladder to the next amps may fall, most of all in strong wind. The reason is read
// off the operating point: the rotor is stalled or the drive held back by the winding, too little speed
// to charge, or speed enough, but the volts are lost in the winding's own resistance and inductance.

// holds says what limits the amps in the usual and the top condition, and in the slow one where the
// drive is dragged below it; "" where it does not run.
func (b *bed) holds(t *TrialOutcome) string {
	text, said := "", ""
	for _, i := range []int{usual, top, slow} {
		c := &b.drive.conditions[i]
		p := t.in(i)
		if p == nil || i != usual && c.Same != "" || i == slow && p.keeps() >= draggedSaid {
			continue
		}
		why := b.holdsIn(t, p, i)
		if why == said {
			text = joined("", text, fmt.Sprintf(", and in %s", c.Label))
			continue
		}
		said = why
		text = joined("; ", text, c.Label+": "+why)
	}
	return text
}

// holdsIn says what limits the amps in one condition.
func (b *bed) holdsIn(t *TrialOutcome, p *Operating, i int) string {
	if b.drive.kind == job.DriveWind {
		return b.windHolds(t, p, i)
	}
	switch {
	case p.Held || p.Spent:
		return b.holder.words(p)
	case p.Region == drive.Stalled:
		return "it asks for more than the drive gives at any speed and stops it"
	case p.AmpsDC == 0:
		return t.tooSlow(p)
	case t.stalls() == p:
		return fmt.Sprintf("the winding %s, %s W of them reach the battery", stalledAt(b.drive.kind, p), figures(max(0, p.NetWatts)))
	case p.HeldBack:
		return fmt.Sprintf("the winding holds the drive back to %s rpm of the %s, all that it gives is taken", asTyped(p.DriveRPM), whose(b.drive.kind))
	case b.drive.conditions[i].free:
		return fmt.Sprintf("takes all that the drive gives, %s W at %s rpm of the %s: %s W of it reach the battery", figures(p.DriveWatts), figures(p.DriveRPM), whose(b.drive.kind), figures(max(0, p.NetWatts)))
	}
	return b.eaten(t, p)
}

// bestRPM is the speed of the alternator, rpm, at which a drive that gives way has the most power in a
// condition; 0 for one that is held to a speed.
func (s *driveSide) bestRPM(c *Condition) float64 {
	switch {
	case s.kind == job.DriveWind:
		return s.shaft.Turns * s.shaft.Rotor.RPM(c.X.Value, s.shaft.Rotor.PeakLambda)
	case yields(s.kind):
		return s.best.RPM * s.ratio.Value
	}
	return 0
}

// windHolds is the same for a rotor in the wind.
func (b *bed) windHolds(t *TrialOutcome, p *Operating, i int) string {
	if p.Gust && p.AmpsDC > 0 {
		return "once started, " + b.turningHolds(t, p, i)
	}
	return b.turningHolds(t, p, i)
}

// turningHolds is windHolds however the rotor came to turn.
func (b *bed) turningHolds(t *TrialOutcome, p *Operating, i int) string {
	best := b.drive.bestRPM(&b.drive.conditions[i])
	if p.Held || p.Spent {
		return b.holder.words(p)
	}
	switch p.Region {
	case drive.Still:
		return "the rotor does not start"
	case drive.Idling:
		return t.tooSlow(p)
	case drive.Stalled:
		return fmt.Sprintf("the winding holds the rotor to %.0f alternator rpm, its best is %.0f: stalled, it gives %s W", p.RPM, best, figures(p.DriveWatts))
	case drive.Runaway:
		return fmt.Sprintf("the rotor runs past its best speed, %.0f for %.0f alternator rpm; ", p.RPM, best) + b.eaten(t, p)
	}
	return fmt.Sprintf("the rotor runs near its best speed, %.0f alternator rpm: the wind gives no more", p.RPM)
}

func (t *TrialOutcome) tooSlow(p *Operating) string {
	return fmt.Sprintf("turns at %.0f alternator rpm, charging begins at %s", p.RPM, whole(t.CutInRPM))
}

// eaten says that there is speed enough, and which part of the winding loses the volts.
func (b *bed) eaten(t *TrialOutcome, p *Operating) string {
	x, r := t.PhaseMilliHenries.Value/1000*p.RPM*b.machine.Poles.Value/120*2*math.Pi, t.PhaseOhms20.Value
	part := "ohms and inductance"
	switch {
	case x > 2*r:
		part = "inductance"
	case r > 2*x:
		part = "ohms"
	}
	return fmt.Sprintf("open it would make %s V, %s V are left: the winding takes the rest, mostly by its %s", figures(p.OpenVoltsDC), figures(p.VoltsDC), part)
}
