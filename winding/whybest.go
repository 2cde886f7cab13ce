package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # Why the best rung is the best
//
// On a ladder, amps and energy rise to a rung and fall after it. The reason is read off the two
// neighbours at their operating points: for a condition in that condition, for a year in the wind in
// which the neighbour loses the most of it, weighted by how often that wind blows. There the neighbour
// does not charge, or the drive gives it less because it is held slower or let run faster, or it loses
// more of what it is given: the one that makes up most of the difference is named. A neighbour that
// would bring more is ruled out by a limit that it breaks.

// ranIn is what a rung and its neighbour are compared by in one state.
type ranIn struct {
	rpm, amps, net, drive, iron float64
	open                        float64 // V; 0 for a wind of a year
	region                      drive.Region
	hot, held                   bool // held: by the regulator, which makes all alike
}

func (l ladder) ranIn(t *TrialOutcome, condition int) (ranIn, bool) {
	p := t.in(condition)
	if p == nil {
		return ranIn{}, false
	}
	return ranIn{p.RPM, p.AmpsDC, p.NetWatts, p.DriveWatts, p.IronWatts, p.OpenVoltsDC, p.Region, p.TooHot, p.Held}, true
}

func (l ladder) ranAt(p *DrivePoint) ranIn {
	return ranIn{p.RPM, p.AmpsDC, p.NetWatts, p.DriveWatts, l.drag.at(p.RPM), 0, p.Region, p.TooHot, p.Held}
}

// whyBest says why neighbours are worse than a rung that is the best of its column in the usual
// condition or in a year; "" for any other rung.
func (l ladder) whyBest(list []Rung, i int) string {
	r := &list[i]
	inUsual, inYear, alike := "", "", false
	if r.BestUsual {
		inUsual = l.sides(list, i, func(n *Rung) string { return l.worseIn(n, r, usual) })
	}
	if r.BestYear {
		plain := l.sides(list, i, func(n *Rung) string { why, _ := l.worseYear(n, r); return why })
		inYear = l.sides(list, i, func(n *Rung) string { why, wind := l.worseYear(n, r); return joined(" ", why, wind) })
		alike = plain == inUsual
	}
	label := l.drive.conditions[usual].Label
	switch {
	case inUsual == "" && inYear == "":
		return ""
	case alike:
		return fmt.Sprintf("best (%s, and in a year): %s", label, inUsual)
	case inYear == "":
		return fmt.Sprintf("best (%s): %s", label, inUsual)
	case inUsual == "":
		return "best in a year: " + inYear
	}
	return fmt.Sprintf("best (%s): %s; best in a year: %s", label, inUsual, inYear)
}

// sides joins what is worse of the thinner and of the thicker neighbour.
func (l ladder) sides(list []Rung, i int, worse func(n *Rung) string) string {
	thinner, thicker := "", ""
	if i+1 < len(list) {
		thinner = "thinner " + worse(&list[i+1])
	}
	if i > 0 {
		thicker = "thicker " + worse(&list[i-1])
	}
	return joined(", ", thinner, thicker)
}

// breaks says in a word or two which limit rules out a rung that brings more; "" for one that keeps to
// all limits.
func (l ladder) breaks(n *Rung) string {
	switch {
	case !n.Fits():
		return "does not go in"
	case n.Burns():
		return "burns"
	case n.HottestC.Known() && n.HottestC.Value > l.air.meanC:
		return "gets too hot"
	case n.OverLimit():
		return "passes its current limit"
	}
	return ""
}

// worseIn says what is worse of a neighbour in a condition.
func (l ladder) worseIn(n, r *Rung, condition int) string {
	a, ok := l.ranIn(&n.TrialOutcome, condition)
	b, also := l.ranIn(&r.TrialOutcome, condition)
	switch breaks := l.breaks(n); {
	case breaks != "" && (!ok || a.net > b.net || a.hot):
		return breaks
	case !ok || !also:
		return "does not run"
	}
	return l.worse(a, b, &n.TrialOutcome, &r.TrialOutcome)
}

// worseYear says what is worse of a neighbour, and in which wind: the one in which it loses most of a
// year's energy to the best.
func (l ladder) worseYear(n, r *Rung) (why, wind string) {
	if breaks := l.breaks(n); breaks != "" && (!n.YearKWh.Known() || n.YearKWh.Value >= r.YearKWh.Value) {
		return breaks, ""
	}
	at, most := -1, 0.0
	for k := range min(len(n.Points), len(r.Points)) {
		p, q := &n.Points[k], &r.Points[k]
		if lost := l.drive.year.Density(q.X) * (q.kept() - p.kept()); lost > most {
			at, most = k, lost
		}
	}
	if at < 0 {
		return "brings as much", ""
	}
	return l.worse(l.ranAt(&n.Points[at]), l.ranAt(&r.Points[at]), &n.TrialOutcome, &r.TrialOutcome), fmt.Sprintf("(%s m/s)", figures(r.Points[at].X))
}

// worse is the largest part of what a neighbour, a, brings less than the best, b, in one state.
func (l ladder) worse(a, b ranIn, n, r *TrialOutcome) string {
	lost, given := b.net-a.net, b.drive-a.drive
	switch {
	case a.hot:
		return "burns"
	case lost <= 0 || a.held && b.held:
		return "brings as much"
	case a.amps == 0 && a.region == drive.Stalled:
		return "stops the drive"
	case a.amps == 0 && n.CutInRPM.Known() && r.CutInRPM.Known() && n.CutInRPM.Value > r.CutInRPM.Value:
		return fmt.Sprintf("begins too late, at %s rpm", quantity.Number(n.CutInRPM.Value, 0))
	case given >= lost/2:
		return l.givenLess(a, b)
	case a.iron-b.iron >= lost/2:
		return "turns faster: iron and drag take more"
	}
	return "loses more in the winding"
}

// givenLess says why a drive gives a neighbour, a, less than the best, b.
func (l ladder) givenLess(a, b ranIn) string {
	shaft := "drive"
	if l.drive.kind == job.DriveWind {
		shaft = "rotor"
	}
	switch same := 1e-3 * b.rpm; {
	case a.rpm < b.rpm-same && a.region == drive.Stalled && b.region == drive.Stalled:
		return "stalls the " + shaft + " more"
	case a.rpm < b.rpm-same && a.region == drive.Stalled:
		return "stalls the " + shaft
	case a.rpm < b.rpm-same:
		return "holds the " + shaft + " below its best"
	case a.rpm > b.rpm+same:
		return "lets the " + shaft + " run past its best"
	case a.open < b.open:
		return "has fewer volts to spare"
	}
	return "takes less of the " + shaft
}
