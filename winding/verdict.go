package winding

import (
	"fmt"
	"math"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # A trial in a sentence
//
// The grid says everything, and so nothing at a glance. The verdict says what decides, in the order in
// which it decides: whether the winding can be wound at all; when it begins to charge and what it
// brings, against the reference; which limits it breaks. Each number in it is a figure of the outcome,
// or the difference of two, rounded as the grid rounds it.
//
// A speed always says whose it is: "alternator rpm", or the drive's by its name. Amps that the winding
// does not withstand (stands.go) are worded as what it would bring.

// verdict is a trial's verdict, kind being that of the drive; "" when there is nothing to say.
func (o *Outcome) verdict(i int, kind string) string {
	t := &o.Trials[i]
	if why := t.CannotBeWound(); why != "" {
		return why
	}
	if i != o.Reference && !t.Turns.Known() && t.Wire == "" {
		return "is still empty: it waits for turns and a wire"
	}
	does := o.alone(t, kind)
	if i != o.Reference && o.Trials[o.Reference].Fits() {
		does = o.against(t, &o.Trials[o.Reference], kind)
	}
	harm, first := o.over(t, kind), ""
	if len(harm) > 0 { // the gravest first: the rest is left out where room is short
		first, harm = harm[0], harm[1:]
	}
	said := joined("; ", append([]string{first, does}, append(harm, o.late(t), t.mostlyEmpty())...)...)
	if o.Reversed != nil && said != "" {
		return o.Reversed.Short + "; as it is, " + said
	}
	return said
}

// CannotBeWound says what keeps a winding out of the slot; "" when nothing does.
func (t *TrialOutcome) CannotBeWound() string {
	switch {
	case t.tooMany():
		return fmt.Sprintf("does not fit: %s turns of %s where %s go in", whole(t.Turns), strings.TrimPrefix(t.Wire, "1 × "), whole(t.TurnsThatFit))
	case !t.Fits():
		return fmt.Sprintf("does not go in: the mouth is %s mm narrower than the wire needs", quantity.Number(-t.MouthSpareMM.Value, 2))
	}
	return ""
}

// alone describes the reference, or a trial that has none to be compared with.
func (o *Outcome) alone(t *TrialOutcome, kind string) string {
	text := ""
	if from, verb := t.begins(); from.Known() {
		text = fmt.Sprintf("%s from %s alternator rpm", verb, whole(from))
	}
	if t.AmpsUsual.Known() {
		text = joined(", ", text, t.brings(kind, &o.Machine))
	}
	if t.YearKWh.Known() && t.stands(&o.Machine) {
		text = joined(", ", text, t.year())
	}
	return text
}

// year is a year's energy in words: the purpose of a rotor in the wind.
func (t *TrialOutcome) year() string {
	if t.YearKWh.Value < 0.5 {
		return "almost nothing in a year"
	}
	return whole(t.YearKWh) + " kWh in a year"
}

// brings is the net amps in the usual condition.
func (t *TrialOutcome) brings(kind string, m *MachineOutcome) string {
	where := whereIn(usual, kind, m)
	switch fails := t.failsIn(m, usual); {
	case strings.HasPrefix(fails, "burns"):
		return fails + " " + where
	case t.AmpsUsual.Value > 0 && fails != "":
		return "would bring " + amps(t.AmpsUsual.Value) + " A " + where + t.turning(kind, m) + t.heldSaid(usual) + t.startedSaid()
	case t.AmpsUsual.Value > 0:
		return "brings " + amps(t.AmpsUsual.Value) + " A " + where + t.turning(kind, m) + t.heldSaid(usual) + t.startedSaid()
	case t.BridgeUsual.Value > 0:
		return "takes " + amps(-t.AmpsUsual.Value) + " A more for its rotor than it brings " + where
	}
	return "brings nothing " + where
}

// turning is how fast a drive that gives way turns there: this winding's own speed, not the usual speed
// that was typed.
func (t *TrialOutcome) turning(kind string, m *MachineOutcome) string {
	p := t.in(usual)
	if p == nil || len(m.Conditions) <= usual || !m.Conditions[usual].free || p.DriveRPM <= 0 {
		return ""
	}
	return fmt.Sprintf(", the %s at %.0f rpm", whose(kind), p.DriveRPM)
}

// startedSaid says that in the usual wind a gust has to start it, and which does; "" where it starts by
// itself.
func (t *TrialOutcome) startedSaid() string {
	switch p := t.in(usual); {
	case p == nil || !p.Gust:
		return ""
	case p.pushed || !t.StartsAlone.Known():
		return " once a push has started it"
	}
	return fmt.Sprintf(" once a gust has started it (by itself from %.3g m/s)", t.StartsAlone.Value)
}

// against is what it does better and worse than the reference.
func (o *Outcome) against(t, ref *TrialOutcome, kind string) string {
	before, begins := sooner(t, ref)
	more, amps := o.moreAmps(t, ref, kind)
	and := " and "
	if before*more < 0 {
		and = " but "
	}
	return joined(", ", joined(and, begins, amps), o.moreEnergy(t, ref))
}

// begins is the speed from which it is useful, and the word for that: a machine with a wound rotor
// gives its first amps well below the speed at which they make up for what the rotor takes.
func (t *TrialOutcome) begins() (quantity.Figure, string) {
	if t.BreakEvenRPM.Known() {
		return t.BreakEvenRPM, "gains"
	}
	return t.CutInRPM, "charges"
}

// sooner is how much sooner it charges: 1 for sooner, -1 for later, and in words.
func sooner(t, ref *TrialOutcome) (int, string) {
	mine, verb := t.begins()
	its, other := ref.begins()
	if verb != other {
		mine, its, verb = t.CutInRPM, ref.CutInRPM, "charges"
	}
	if !mine.Known() || !its.Known() {
		return 0, ""
	}
	d := its.Value - mine.Value
	switch {
	case math.Abs(d) < 0.5:
		return 0, verb + " from the same speed"
	case d > 0:
		return 1, fmt.Sprintf("%s %.0f alternator rpm sooner", verb, d)
	}
	return -1, fmt.Sprintf("%s %.0f alternator rpm later", verb, -d)
}

// moreAmps is how much more it brings in the usual condition.
func (o *Outcome) moreAmps(t, ref *TrialOutcome, kind string) (int, string) {
	a, r := t.AmpsUsual, ref.AmpsUsual
	if !a.Known() || !r.Known() {
		return 0, ""
	}
	where := whereIn(usual, kind, &o.Machine)
	d := a.Value - r.Value
	brings := "brings "
	switch fails, refFails := t.failsIn(&o.Machine, usual), ref.failsIn(&o.Machine, usual); {
	case strings.HasPrefix(fails, "burns"):
		return -1, fails + " " + where
	case fails != "":
		brings = "would bring "
	case refFails != "" && a.Value > 0:
		return 1, t.brings(kind, &o.Machine) + ", where " + ref.Name + " " + refFails
	}
	side, word := 1, " A more "
	if d < 0 {
		side, word = -1, " A less "
	}
	switch {
	case a.Value <= 0 && r.Value <= 0:
		return 0, "brings nothing " + where + " either"
	case a.Value <= 0:
		return -1, t.brings(kind, &o.Machine)
	}
	started := t.startedSaid()
	if started == ref.startedSaid() { // which the reference's own sentence says
		started = ""
	}
	if math.Abs(d) < 0.005 {
		return 0, brings + "as much " + where + t.heldSaid(usual) + started
	}
	return side, brings + amps(math.Abs(d)) + word + where + t.heldSaid(usual) + started
}

// moreEnergy is how much more it brings in a year of wind.
func (o *Outcome) moreEnergy(t, ref *TrialOutcome) string {
	if !t.YearKWh.Known() || !ref.YearKWh.Known() || !t.stands(&o.Machine) {
		return ""
	}
	d := t.YearKWh.Value - ref.YearKWh.Value
	switch {
	case !ref.stands(&o.Machine):
		return t.year()
	case math.Abs(d) < 0.5:
		return "as much in a year"
	case d > 0:
		return fmt.Sprintf("%.0f kWh more in a year", d)
	}
	return fmt.Sprintf("%.0f kWh less in a year", -d)
}

// late says that it brings nothing at the slow speed, or less than its rotor takes.
func (o *Outcome) late(t *TrialOutcome) string {
	switch {
	case OutputOf("cut_in_rpm").Past(o, t):
		return fmt.Sprintf("begins after the slow speed, %s alternator rpm", whole(o.Machine.SlowRPM))
	case OutputOf("break_even_rpm").Past(o, t):
		return fmt.Sprintf("runs the battery down at the slow speed, %s alternator rpm", whole(o.Machine.SlowRPM))
	}
	return ""
}

// over is the limits that it breaks, in words.
func (o *Outcome) over(t *TrialOutcome, kind string) []string {
	var parts []string
	if t.OverLimit() {
		p := t.mostOver()
		most := t.hardest(p)
		text := fmt.Sprintf("passes its limit%s: up to %s A", t.limitSaid(" of "+amps(t.LimitAmps.Value)+" A"), amps(most.AmpsDC))
		switch {
		case t.LimitAmps.Value < leastLimit:
			text = "gets too hot before any amps flow"
		case most == &p.full:
			text += fmt.Sprintf(" %s%s", whereIn(indexOf(p.Condition), kind, &o.Machine), onceFull)
		case t.LimitRPM.Known():
			text = fmt.Sprintf("passes its limit%s from %s%s alternator rpm", t.limitSaid(" of "+amps(t.LimitAmps.Value)+" A"), whole(t.LimitRPM), until(t.LimitToRPM))
		}
		parts = append(parts, text)
	}
	if drags := t.Drags(kind); drags != "" {
		parts = append(parts, drags)
	}
	if p := t.stalls(); p != nil && t.wound() != "" {
		parts = append(parts, stalledAt(kind, p))
	}
	if word, from := t.unsuited(); word != "" && kind == job.DriveWind {
		parts = append(parts, word+" in wind"+from)
	}
	if t.Burns() && !strings.HasPrefix(t.failsIn(&o.Machine, usual), "burns") { // already said there
		return append([]string{o.burns(t, kind)}, parts...) // the gravest first
	}
	if OutputOf("winding_c_hottest").Past(o, t) {
		parts = append(parts, fmt.Sprintf("gets to %s °C where class %s allows %s", whole(t.HottestC), o.Machine.ThermalClass, whole(o.Machine.MeanLimitC)))
	}
	return parts
}

// until is the speed up to which something lasts, " to 2600"; "" at 0, where it has no end.
func until(rpm float64) string {
	if rpm == 0 {
		return ""
	}
	return fmt.Sprintf(" to %.0f", rpm)
}

// limitSaid is its limit in words, where it is the same at every speed.
func (t *TrialOutcome) limitSaid(words string) string {
	if t.fanned != nil {
		return ""
	}
	return words
}

// timesLimit is the current in a condition over what the winding withstands there, at the worst.
func (t *TrialOutcome) timesLimit(p *Operating) float64 {
	at := t.hardest(p)
	return at.AmpsDC / t.LimitIn(at)
}

// mostOver is the condition in which it is furthest past its limit; nil where it runs in none.
func (t *TrialOutcome) mostOver() *Operating {
	var most *Operating
	for i := range t.Operating {
		p := &t.Operating[i]
		if most == nil || t.timesLimit(p) > t.timesLimit(most) {
			most = p
		}
	}
	return most
}

// burns says where a winding finds no steady temperature: the first wind, else the first condition.
func (o *Outcome) burns(t *TrialOutcome, kind string) string {
	for i := range t.Points {
		if p := &t.Points[i]; p.TooHot && kind == job.DriveWind {
			return fmt.Sprintf("burns in wind from %.3g m/s", p.X)
		}
	}
	for i := range conditionCount {
		if t.burnsIn(i) {
			return "burns " + whereIn(i, kind, &o.Machine)
		}
	}
	for i := range t.Operating {
		if p := &t.Operating[i]; p.full.TooHot {
			return "burns" + onceFull + " " + whereIn(indexOf(p.Condition), kind, &o.Machine)
		}
	}
	return "burns with the drive at full power"
}

// emptyBelow is the part of the fill limit below which a slot is called mostly empty; common practice,
// no source.
const emptyBelow = 0.5

// MostlyEmpty reports whether much room for wire is left, which thicker wire would use.
func (t *TrialOutcome) MostlyEmpty() bool {
	return t.WireFill.Known() && t.FillLimit.Known() && t.Turns.Value > 0 && t.WireFill.Value < emptyBelow*t.FillLimit.Value
}

// mostlyEmpty says so in words.
func (t *TrialOutcome) mostlyEmpty() string {
	if !t.MostlyEmpty() {
		return ""
	}
	return fmt.Sprintf("fills only %s of its room, %s go in", quantity.Number(t.WireFill.Value, 2), quantity.Number(t.FillLimit.Value, 2))
}

// leastLimit, A, is the smallest limit that counts as one: below it iron and field alone are too much.
const leastLimit = 0.005

// whereIn is a condition in words: "with the engine at 1800 rpm".
func whereIn(condition int, kind string, m *MachineOutcome) string {
	if len(m.Conditions) <= condition {
		return "at the " + conditionNames[condition] + " speed"
	}
	c := &m.Conditions[condition]
	switch {
	case !c.X.Known():
		return "at the " + conditionNames[condition] + " speed"
	case c.free:
		return "with " + c.Label
	case kind == job.DriveWind:
		return fmt.Sprintf("in wind of %.3g m/s", c.X.Value)
	case kind == "":
		return fmt.Sprintf("at %.4g alternator rpm", c.X.Value)
	}
	return fmt.Sprintf("with the %s at %s rpm", whose(kind), asTyped(c.X.Value))
}
