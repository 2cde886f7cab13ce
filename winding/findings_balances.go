package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// # Two speeds in one wind
//
// In one wind a shaft may stay at more than one speed (package drive). What is told of a condition is the
// one that it comes to from rest with rising wind: held by its drag, or by a winding that stalls it. A gust
// or a push, or a rotor's current that is put on late, takes it to another, where it stays when the wind
// is back to what it was. Where that brings other amps in the usual wind it is said, with what takes it
// there.

// leastApart is by how many net amps, or by what part of them, two balances have to part to be told; ours.
const leastApart, partApart = 0.05, 0.03

// otherSpeed is the other speed at which a trial can stay in a condition: of the wind the usual one.
type otherSpeed struct {
	condition int
	rpm, net  float64
	// here is the net amps where it is told.
	here float64
	// past is the speed between the two at which torque given and taken agree but it cannot stay.
	past float64
	// from is the wind that takes it there from rest, m/s; 0 for none up to the furling wind.
	from float64
}

// otherBalance is the balance in the usual wind, among those at which a trial could stay, whose net amps
// part the most from those where it is; nil where none parts from them by anything that counts.
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

// apart reports whether two balances part by what counts.
func apart(a, b float64) bool {
	return math.Abs(a-b) > max(leastApart, partApart*max(math.Abs(a), math.Abs(b)))
}

// between is the balance next to the other speed, on the side of where the shaft is, at which it cannot stay;
// 0 for none.
func between(rpm float64, others []drive.Equilibrium, other float64) float64 {
	at := 0.0
	for _, e := range others {
		if !e.Stable && (e.RPM-rpm)*(e.RPM-other) < 0 && (at == 0 || math.Abs(e.RPM-other) < math.Abs(at-other)) {
			at = e.RPM
		}
	}
	return at
}

// reachedFrom is the first wind in which a shaft on its way up through them turns so fast; 0 for none.
func reachedFrom(points []drive.WindPoint, rpm float64) float64 {
	for i := range points {
		if points[i].RPM >= rpm {
			return points[i].WindMPS
		}
	}
	return 0
}

// balances calls out that a trial may stay at another speed than the one that is told.
func (a aboutRunning) balances(d *doubts, at func(string) string, t job.Trial, o *TrialOutcome) {
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
