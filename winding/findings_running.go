package winding

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// aboutRunning makes the findings about a trial that turns.
type aboutRunning struct {
	drive   *driveSide
	speeds  *speeds
	air     *thermal
	drag    *drag
	dc      *dcSide
	reverse quantity.Reading // V, of the diodes
	wanted  quantity.Reading // amps
	holder  *regulator
	// curveRead is set if the flux is known at more than one field current.
	curveRead bool
}

// callOut is about what a trial does when it turns; what would do better was searched for before
// (offers).
func (a aboutRunning) callOut(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	better := o.Better()
	a.late(d, at, t, o, o.wound())
	if f := o.ACFactor; f.Known() && f.Value > 1.1 {
		d.add(Finding{Severity: Doubt, Path: at("gauge"), Trial: t.Name, Fix: fmt.Sprintf("twice the strands with the same metal bring it to %.2f", o.ACFactorSplit.Value), Source: "Dowell; flagged above 1.1"},
			"at the top speed the wire's AC resistance is %.2f times its DC resistance", f.Value)
	}
	a.open(d, at, t, o)
	a.heat(d, at, t, o, better)
	a.net(d, at, t, o, better)
	a.year(d, t, o)
	a.balances(d, at, t, o)
	a.short(d, at, t, o)
	switch o.region {
	case drive.Stalled, drive.Runaway, drive.Idling, drive.Still, Overload:
		d.add(Finding{Severity: a.howBad(o), Path: at("turns"), Trial: t.Name, Fix: better, Source: "balance of drive and alternator", NoUse: a.howBad(o) == Broken},
			"%s", joined("; ", o.Suits, o.InTheWay))
	}
	a.residual(d, t, o)
	a.charge(d, t, o)
}

// late is about a trial that charges only above the slow speed, or whose rotor takes more there than
// comes in. A wind rotor has no slow speed of its own: its amps in light wind say it.
func (a aboutRunning) late(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	slow := a.speeds.slow
	if a.drive.kind == job.DriveWind || !slow.Known() {
		return
	}
	switch begins, gains := o.CutInRPM, o.BreakEvenRPM; {
	case begins.Known() && begins.Value > slow.Value:
		if o.Offer != nil && o.Offer.lateRPM > 0 {
			better += "; in time only with " + a.faster(o.Offer.lateRPM/slow.Value)
		}
		d.add(Finding{Severity: Doubt, Path: at("turns"), Trial: t.Name, Fix: cmp.Or(better, a.sooner(begins.Value/slow.Value, o))},
			"charging begins at %.0f alternator rpm, above the slow speed of %.0f alternator rpm", begins.Value, slow.Value)
	case gains.Known() && gains.Value > slow.Value:
		d.add(Finding{Severity: Note, Path: at("turns"), Trial: t.Name, Fix: a.onlyFromThere(o) + cmp.Or(better, moreTurns(gains.Value/slow.Value, o)+"; else "+a.faster(gains.Value/slow.Value))},
			"the rotor takes more than comes in up to %.0f alternator rpm, above the slow speed of %.0f alternator rpm", gains.Value, slow.Value)
	}
}

// short says how much of the amps wanted comes, where that is less.
func (a aboutRunning) short(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	brings, p := o.AmpsUsual, o.in(usual)
	if p == nil || !a.wanted.Given() || !brings.Known() || brings.Value <= 0 || brings.Value >= a.wanted.Value*(1-1e-3) {
		return
	}
	d.add(Finding{Severity: Note, Path: at("turns"), Trial: t.Name, Short: true},
		"brings %.3g A of the %.3g A wanted (%s)", brings.Value, a.wanted.Value, a.drive.label(p))
}

// howBad is the severity of a mismatch of trial and drive: a winding that never charges in the usual
// condition is of no use, however well it is wound.
func (a aboutRunning) howBad(o *TrialOutcome) Severity {
	p := o.in(usual)
	switch {
	case p == nil:
		return Doubt
	case a.drive.kind == job.DriveWind && (o.region == drive.Still || o.region == drive.Idling && !o.StartsAt.Known()):
		return Broken
	case a.drive.kind != job.DriveWind && p.AmpsDC == 0:
		return Broken
	case o.stalls() != nil && o.wound() == "":
		return Note
	}
	return Doubt
}

// sooner says how it could begin to charge sooner by a factor: with more turns where they may fit, else
// by the drive. Where a search found no better winding that fits, turns are ruled out.
func (a aboutRunning) sooner(times float64, o *TrialOutcome) string {
	if o.InTheWay != "" {
		return a.faster(times) + "; no other turns and wire that fit the slots do it"
	}
	return moreTurns(times, o) + "; else " + a.faster(times)
}

// moreTurns says how a multiple of the turns would fit the slot.
func moreTurns(times float64, o *TrialOutcome) string {
	n, fit := o.Turns, o.TurnsThatFit
	switch {
	case !n.Known() || !fit.Known():
		return "more turns if they fit"
	case n.Value*times <= fit.Value:
		return fmt.Sprintf("more turns, of which %s go in", whole(fit))
	case n.Value < fit.Value:
		return fmt.Sprintf("more turns of a thinner wire, as only %s of this one go in", whole(fit))
	}
	return "more turns of a thinner wire, as this one fills the slot"
}

// faster says what the drive would have to do instead, where no winding does it.
func (a aboutRunning) faster(times float64) string {
	if r := a.drive.ratio; a.drive.kind != "" && r.Known() {
		to, of := fmt.Sprintf("%.3g", r.Value*times), fmt.Sprintf("%.3g", r.Value)
		if to == of {
			to, of = fmt.Sprintf("%.4g", r.Value*times), fmt.Sprintf("%.4g", r.Value)
		}
		return to + " turns of the alternator for one of the drive, in place of " + of
	}
	return fmt.Sprintf("turn it %.3g times as fast", times)
}

// heat is about current and temperature where it really runs.
func (a aboutRunning) heat(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	fix := cmp.Or(better, a.cooler(o))
	for i := range o.Operating {
		p := &o.Operating[i]
		most := o.hardest(p)
		if limit, by := o.governs(most); o.PassedIn(most) {
			d.add(Finding{Severity: Doubt, Path: at("gauge"), Trial: t.Name, Fix: fix, Source: by.Source, Past: true},
				"%s A (%s%s) is over its limit of %s A, by %s%s%s%s", amps(most.AmpsDC), a.drive.label(p), p.whenFull(most), amps(limit), limitWords[by.Name], by.circles+o.coolEnough(by, most), a.furtherOver(o, i), o.yearPastSaid(better))
			break
		}
	}
	if o.freed > 0 && !o.OverLimit() && !o.Burns() {
		d.add(Finding{Severity: Doubt, Path: at("turns"), Trial: t.Name, Fix: cmp.Or(better, "furl it earlier"), Source: "balance of drive and alternator"},
			"it is close to breaking free (%s): with 2 %% more volts at a full battery, or a machine 2 %% weaker than measured, the rotor runs on: %s A flow, and it withstands %s A", a.drive.conditions[top].Label, amps(o.freed), amps(o.LimitAmps.Value))
	}
	if p := o.guarded(); p != nil && !o.OverLimit() {
		d.add(Finding{Severity: Note, Path: "battery.most_current", Trial: t.Name},
			"only the regulator protects the winding: without it %s A would flow (%s), and it withstands %s A", amps(p.unheld), a.drive.label(p), amps(o.LimitAt(p.unheldRPM)))
	}
	if !a.air.still.Known() || len(o.Operating) == 0 {
		return
	}
	switch hot, limit := o.HottestC, a.air.meanC; {
	case !hot.Known():
		d.add(Finding{Severity: Broken, Path: at("gauge"), Trial: t.Name, Fix: fix, Source: "steady heat balance"},
			"the winding gets past %.0f °C (%s): it burns%s%s", hottest, o.whereHot(a.drive), o.yearWithout(), a.air.taken())
	case hot.Value > limit:
		warmed := ""
		if p := o.hottest(); p != nil && fieldThroughStator*p.FieldWatts > p.CopperWatts {
			fix = "a smaller field current: no other winding and no regulator of the amps helps against that"
			warmed = fmt.Sprintf("; the rotor's field of %s W warms it more than its own copper, %s W", figures(p.FieldWatts), figures(p.CopperWatts))
		}
		d.add(Finding{Severity: Broken, Path: at("gauge"), Trial: t.Name, Fix: fix, Source: "IEC 60034-1 rise by resistance"},
			"the winding reaches a mean of %.0f °C; class %s allows %.0f °C%s%s%s", hot.Value, a.air.class, limit, warmed, o.yearPastSaid(better), a.air.taken())
	}
}

// hottest is the condition in which the winding is warmest; nil where it runs in none.
func (o *TrialOutcome) hottest() (p *Operating) {
	for i := range o.Operating {
		if q := &o.Operating[i]; p == nil || q.WindingC > p.WindingC {
			p = q
		}
	}
	return p
}

// coolEnough says that a winding past a density limit keeps to its class where it runs: the density is
// a rule of thumb, the temperature is computed from guesses, and the person decides.
func (o *TrialOutcome) coolEnough(by *Limit, p *RunPoint) string {
	i := slices.IndexFunc(o.Each, func(l Limit) bool { return l.Name == limitTemperature })
	if by.Name == limitTemperature || i < 0 {
		return ""
	}
	stands := o.Each[i].AmpsDC.Value * o.fanned.grows(limitTemperature, p)
	if p.AmpsDC > stands || p.TooHot {
		return ""
	}
	return fmt.Sprintf("; its class would allow %s A", amps(stands))
}

// regulate is a regulator as a mend: where to type one, or a lower setting of the present one. A shunt
// takes nothing off the winding.
func (a aboutRunning) regulate(words string, battery bool) string {
	switch g := a.holder; {
	case g == nil:
		return words + " (" + sayMost + ")"
	case g.shunt && !battery:
		return "a controller in series in place of the shunt"
	}
	return "a lower Most current of the battery"
}

// furtherOver is the later condition in which a winding is furthest over its limit, if further than in
// the one told.
func (a aboutRunning) furtherOver(o *TrialOutcome, told int) string {
	worst := told
	for i := told + 1; i < len(o.Operating); i++ {
		if o.timesLimit(&o.Operating[i]) > o.timesLimit(&o.Operating[worst])*limitSlack {
			worst = i
		}
	}
	if worst == told {
		return ""
	}
	p := &o.Operating[worst]
	most := o.hardest(p)
	return fmt.Sprintf("; %s A (%s%s) of %s A", amps(most.AmpsDC), a.drive.label(p), p.whenFull(most), amps(o.LimitIn(most)))
}

// cooler is what keeps a winding within its limits where no other winding does.
func (a aboutRunning) cooler(o *TrialOutcome) string {
	wind := o.coolTo(a.air)
	switch {
	case a.drive.kind == job.DriveWind && wind > 0:
		return fmt.Sprintf("better cooling, or furl it before %.3g m/s%s", wind, a.leftOfYear(o, wind)) + o.unfurled()
	case o.FieldWatts.Known():
		return a.regulate("a regulator that limits the current", true) + ", or better cooling"
	}
	slower := ""
	if !yields(a.drive.kind) { // its speed follows from the winding, whatever was asked for
		slower = "a lower top speed, "
	}
	return slower + a.regulate("something that limits the current", false) + ", or better cooling"
}

// leftOfYear says what a year brings with the rotor furled at a wind; "" where that is nearly all.
func (a aboutRunning) leftOfYear(o *TrialOutcome, wind float64) string {
	left := o.yearTo(wind, a.drive.year)
	if !o.YearKWh.Known() || o.YearKWh.Value < leastYear || left > 0.98*o.YearKWh.Value {
		return ""
	}
	return fmt.Sprintf("; that leaves %.0f of its %.0f kWh a year", left, o.YearKWh.Value)
}

// unfurled says that no winding avoids the furling, where one was searched for: among every size of the
// trial's standard and steps of other circuits, with a margin of 2 % of volts (edge), so only of those
// tried.
func (o *TrialOutcome) unfurled() string {
	switch {
	case !o.noneStands:
		return ""
	case o.YearKWh.Value < leastYear:
		return "; none of the windings examined that bring anything withstands it unfurled"
	}
	return "; none of the windings examined that bring nearly as much withstands it unfurled"
}

// limitWords are the limits in sentences.
var limitWords = map[string]string{
	limitDensity: "current density", limitTemperature: "temperature", limitSameHeat: "the heat the old winding made", limitOldDensity: "the old wire's current density",
}

// coolTo is the strongest wind examined in which the winding still keeps to its class and its current
// limit; 0 when there is none.
func (o *TrialOutcome) coolTo(air *thermal) float64 {
	wind := 0.0
	for i := range o.Points {
		if !o.standsAt(&o.Points[i], air) {
			break
		}
		wind = o.Points[i].X
	}
	return wind
}

// whereHot names the first state in which the winding finds no steady temperature.
func (o *TrialOutcome) whereHot(d *driveSide) string {
	for i := range o.Points {
		if o.Points[i].TooHot && d.kind == job.DriveWind {
			return fmt.Sprintf("wind from %.3g m/s", o.Points[i].X)
		}
	}
	for i := range o.Operating {
		if p := &o.Operating[i]; p.TooHot {
			return d.label(p)
		}
	}
	for i := range o.Operating {
		if p := &o.Operating[i]; p.full.TooHot {
			return d.label(p) + p.whenFull(&p.full)
		}
	}
	return "drive at full power"
}

// net is about a trial that leaves the battery nothing in the usual condition. Where the mean wind
// brings nothing, stronger winds may still make a year worth while.
func (a aboutRunning) net(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome, better string) {
	p := o.in(usual)
	if p == nil || p.NetAmps > 0 {
		return
	}
	where, fix := a.drive.conditions[usual].Label, better
	switch {
	case fix != "":
	case o.BestUsual.Known():
		fix = fmt.Sprintf("a field current of %.2g A", o.BestUsual.Value)
	case o.BreakEvenRPM.Known():
		fix = a.weakerFirst(p) + a.paysFrom(o)
	}
	switch {
	case p.FieldWatts > 0 && p.AmpsDC > 0:
		d.add(Finding{Severity: Broken, Path: at("turns"), Trial: t.Name, Fix: fix, NoUse: true},
			"the rotor takes %s W and only %s W come in (%s): the battery runs down", figures(p.FieldWatts), figures(p.BatteryWatts), where)
	case p.FieldWatts > 0:
		d.add(Finding{Severity: Broken, Path: at("turns"), Trial: t.Name, Fix: fix, NoUse: true},
			"the rotor takes %.3g W and nothing comes in (%s): the battery runs down", p.FieldWatts, where)
	case o.region != "" && a.howBad(o) == Broken: // already said of trial and drive
	case a.drive.kind == job.DriveWind:
		d.add(Finding{Severity: Doubt, Path: at("turns"), Trial: t.Name, Fix: a.dragFirst(fix), NoUse: true},
			"nothing comes in (%s, the mean of this place): iron and drag hold it at %s rpm of the wind rotor there", where, figures(p.DriveRPM))
	default:
		d.add(Finding{Severity: Broken, Path: at("turns"), Trial: t.Name, Fix: fix, NoUse: true}, "nothing comes in (%s)", where)
	}
}

// weakerFirst is the free remedy where it could not be computed: with one spin-up reading the volts at
// a weaker field are unknown. "" if the magnetisation curve was read.
func (a aboutRunning) weakerFirst(p *Operating) string {
	if a.curveRead || p.FieldWatts == 0 {
		return ""
	}
	return "a weaker field may bring more: a second spin-up reading, at a third of the field current, tells which; else "
}

// paysFrom is what to do about a rotor that takes more than comes in: its current on only from the
// speed at which it pays, where the drive ever takes the alternator there.
func (a aboutRunning) paysFrom(o *TrialOutcome) string {
	if !o.everGains(a.drive) {
		return fmt.Sprintf("magnets, a winding that brings more, or a stronger drive: this one never reaches the %.0f alternator rpm from which the rotor's current pays for itself", o.BreakEvenRPM.Value)
	}
	return fmt.Sprintf("the rotor's current on only from %.0f rpm of the alternator, where it pays for itself; magnets, or a winding that brings more there", o.BreakEvenRPM.Value)
}

// onlyFromThere begins that remedy, where it is one.
func (a aboutRunning) onlyFromThere(o *TrialOutcome) string {
	if !o.everGains(a.drive) {
		return ""
	}
	return "the rotor's current on only from there, or "
}

// everGains reports whether more comes in than the rotor takes anywhere that the drive reaches: where
// it runs, or at another stable balance, as after its current was switched on late.
func (t *TrialOutcome) everGains(s *driveSide) bool {
	for i := range t.Operating {
		if t.Operating[i].NetAmps > 0 {
			return true
		}
	}
	for i := range t.Points {
		p := &t.Points[i]
		if !s.within(p) {
			continue
		}
		other := slices.ContainsFunc(p.Others, func(e drive.Equilibrium) bool { return e.Stable && e.RPM > t.BreakEvenRPM.Value })
		if p.NetAmps > 0 || other {
			return true
		}
	}
	return false
}

// dragFirst asks for the drag before anything else where it is a guess: with no amps flowing it is all
// that holds the rotor, and no winding changes that.
func (a aboutRunning) dragFirst(fix string) string {
	if !a.drag.origin.Weak() {
		return fix
	}
	const measure = "measure the drag: it is a guess, and all that holds the rotor there"
	if fix == "" {
		return measure
	}
	return measure + "; else " + fix
}

// ordinaryInsulation is the volts rms between leads up to which the usual enamel, liner and sleeving of
// a low-voltage stator are not doubted; common practice, no source.
const ordinaryInsulation = 250.0

// open is about the highest possible voltage.
func (a aboutRunning) open(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	worst, where := o.OpenAtTopVolts, "unloaded at the top speed"
	if o.MostVolts.Known() {
		worst, where = o.MostVolts, o.MostVolts.Why
	}
	if !worst.Known() {
		return
	}
	if r := a.reverse; r.Given() {
		fix := fmt.Sprintf("diodes of %.0f V and more", math.Ceil(worst.Value*2/50)*50)
		worst := a.dc.onDiode(worst)
		switch open, err := drive.OpenAt(1, worst.Value/math.Sqrt2, r.Value, 0); {
		case err != nil:
		case open.DiodesBroken:
			d.add(Finding{Severity: Broken, Path: "battery.diode_reverse", Trial: t.Name, Fix: fix},
				"%s the diodes see %.0f V, their rating is %.0f V", where, worst.Value, r.Value)
		case open.DiodesTight:
			d.add(Finding{Severity: Doubt, Path: "battery.diode_reverse", Trial: t.Name, Fix: fix, Source: "half the rating; common practice, no source"},
				"%s the diodes see %.0f V, more than half of their %.0f V: no margin if the battery comes off", where, worst.Value, r.Value)
		}
	}
	if line := worst.Value / math.Sqrt2; line > ordinaryInsulation {
		d.add(Finding{Severity: Doubt, Path: at("turns"), Trial: t.Name, Fix: "liner, sleeving and enamel rated for it, proved by someone with the proper tester; or fewer turns", Source: job.Practice, Danger: true},
			"%s there are %.0f V rms between leads: more than the insulation of a low-voltage stator is made for", where, line)
	}
}

// charge is about charging above the battery's limit.
func (a aboutRunning) charge(d *doubts, t job.Trial, o *TrialOutcome) {
	over := o.OverChargeAmps
	if !over.Known() || over.Value <= 0 {
		return
	}
	fix, load := "a larger battery, or "+a.regulate("a regulator that holds the field back", true), ""
	if o.DumpOhms.Known() {
		fix = "a larger battery, a dump load, or " + a.regulate("a current limit", true)
		load = fmt.Sprintf("; a dump load for all of it, the winding cold, is %.2f Ω and %.0f W", o.DumpOhms.Value, o.DumpWatts.Value)
	}
	d.add(Finding{Severity: Doubt, Path: "battery.charge_limit", Trial: t.Name, Fix: fix, Source: "the battery's charge limit"},
		"its highest charging current is %.1f A above the battery's limit%s", over.Value, load)
}
