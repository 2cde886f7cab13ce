package winding

import (
	"fmt"
	"math"
	"slices"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// # Two speeds in one wind
//
// In one wind a shaft may have several stable speeds (package drive). Where drag holds it from rest, so that
// nothing comes in, a condition shows the speed that it keeps once it turns (wind.go), and a finding says
// what has to start it. Else a condition shows the one reached from rest in rising wind, as of a winding
// that stalls the rotor. A gust or a push, or a field current switched on late, takes it to another, where
// it stays once the wind is back. Where the amps in the usual wind differ there, it says so, and what takes
// the shaft there.

// leastApart is by how many net amps, and partApart by what part of them, two balances must differ to
// be reported; our choice.
const leastApart, partApart = 0.05, 0.03

// otherSpeed is another stable speed of a trial in the usual wind.
type otherSpeed struct {
	condition int
	rpm, net  float64
	// here is the net amps at the speed that is shown.
	here float64
	// past is the unstable balance between the two speeds.
	past float64
	// from is the wind that takes it there from rest, m/s; 0 for none up to the furling wind.
	from float64
}

// otherBalance is the stable balance in the usual wind whose net amps differ most from those at the
// speed shown; nil where none differs enough.
func otherBalance(c *characteristic, points []drive.WindPoint, wind float64) *otherSpeed {
	var b *otherSpeed
	for i := range points {
		p := &points[i]
		if math.Abs(p.WindMPS-wind) > 1e-6 {
			continue
		}
		here := c.at(p.RPM).NetAmps
		for _, e := range p.Others {
			if net := c.at(e.RPM).NetAmps; e.Stable && apart(net, here) && (b == nil || math.Abs(net-here) > math.Abs(b.net-here)) {
				b = &otherSpeed{condition: usual, rpm: e.RPM, net: net, here: here, past: between(p.RPM, p.Others, e.RPM), from: reachedFrom(points[i:], e.RPM)}
			}
		}
	}
	return b
}

// apart reports whether two balances differ enough.
func apart(a, b float64) bool {
	return math.Abs(a-b) > max(leastApart, partApart*max(math.Abs(a), math.Abs(b)))
}

// between is the unstable balance next to the other speed, on the side of the present one; 0 for none.
func between(rpm float64, others []drive.Equilibrium, other float64) float64 {
	at := 0.0
	for _, e := range others {
		if !e.Stable && (e.RPM-rpm)*(e.RPM-other) < 0 && (at == 0 || math.Abs(e.RPM-other) < math.Abs(at-other)) {
			at = e.RPM
		}
	}
	return at
}

// reachedFrom is the first wind in which a shaft on its way up turns that fast; 0 for none.
func reachedFrom(points []drive.WindPoint, rpm float64) float64 {
	for i := range points {
		if points[i].RPM >= rpm {
			return points[i].WindMPS
		}
	}
	return 0
}

// balances reports that a trial may run at another speed than the one shown.
func (a aboutRunning) balances(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
	if a.gusts(d, at, t, o) {
		return
	}
	b := o.other
	if b == nil || o.in(b.condition) == nil {
		return
	}
	p, where := o.in(b.condition), a.drive.conditions[b.condition].Label
	if a.drive.kind != job.DriveWind {
		a.shaftBalances(d, at, t, b, p)
		return
	}
	if b.rpm < p.RPM {
		d.add(Finding{Severity: Note, Path: at("turns"), Trial: t.Name, Source: "balance of drive and alternator"},
			"it can stay at two speeds (%s): from rest it comes to %.0f alternator rpm, %s; slowed far below that it stays at %.0f, %s",
			where, p.RPM, netSaid(b.here), b.rpm, netSaid(b.net))
		return
	}
	takes := "no wind up to the furling wind takes it there from rest"
	if b.from > 0 {
		takes = fmt.Sprintf("stronger wind, from %.3g m/s on, takes it there", b.from)
	}
	fix := ""
	switch {
	case b.net < b.here:
	case b.past > 0:
		fix = fmt.Sprintf("brought past %.0f alternator rpm, by a push or a gust, it goes on to the faster", b.past)
	case p.RPM == 0:
		fix = "once it turns, by a push or a gust, it goes on to the faster"
	}
	rest := fmt.Sprintf("from rest it comes to %.0f alternator rpm, %s", p.RPM, netSaid(b.here))
	if p.RPM == 0 {
		rest = "from rest it does not start"
	}
	d.add(Finding{Severity: Note, Path: at("turns"), Trial: t.Name, Fix: fix, Source: "balance of drive and alternator"},
		"it can stay at two speeds (%s): %s, which is what is told here; at %.0f alternator rpm it stays too, %s: %s",
		where, rest, b.rpm, netSaid(b.net), takes)
}

// gusts calls out that a rotor has to be started by a gust in the usual wind, or in winds that bring a part
// of its year that counts, and what of the year that is. It reports whether that is so in the usual wind.
func (a aboutRunning) gusts(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) bool {
	p := o.in(usual)
	if p == nil || !slices.ContainsFunc(o.Points, func(p DrivePoint) bool { return p.Gust }) {
		return false
	}
	lent, usually := o.YearKWh.Value-o.yearAlone(a.drive.year), p.Gust && p.AmpsDC > 0
	if !usually && lent < max(leastYear, partApart*o.YearKWh.Value) {
		return false
	}
	said := Finding{Severity: Note, Path: at("turns"), Trial: t.Name, Source: "balance of drive and alternator"}
	held := "iron and drag hold it from rest"
	if a.drag.origin.Weak() {
		said.Path, said.Fix, held = "machine.drag", "measure the drag, and the torque that starts it: the drag is a guess", "iron and drag, as they are guessed, hold it from rest"
	}
	text := fmt.Sprintf("a gust has to start it in less than %.3g m/s: %s; once it turns it runs on and charges down to %.3g m/s", o.StartsAlone.Value, held, o.StartsAt.Value)
	if p.pushed || !o.StartsAlone.Known() {
		text = fmt.Sprintf("a push has to start it: %s, and no gust takes it past that; once it turns it charges from %.3g m/s", held, o.StartsAt.Value)
	}
	if usually {
		said.Severity = Doubt
		text = fmt.Sprintf("%s, and is shown running here (%s, the mean of this place)", text, a.drive.conditions[usual].Label)
	}
	if lent >= leastYear {
		text += fmt.Sprintf("; %.0f of its %.0f kWh a year come in winds too weak to start it", lent, o.YearKWh.Value)
	}
	d.add(said, "%s", text)
	return usually
}

// yearAlone is the year's energy, kWh, without the winds in which only a gust starts it.
func (dr *Driven) yearAlone(year drive.Weibull) float64 {
	return dr.yearOf(year, func(p *DrivePoint) bool { return !p.Gust })
}

// netSaid is net amps in words.
func netSaid(net float64) string {
	switch {
	case net <= -leastNet:
		return fmt.Sprintf("the rotor takes %s A more than comes in", amps(-net))
	case net < leastNet:
		return "nothing comes in"
	}
	return amps(net) + " A net"
}
