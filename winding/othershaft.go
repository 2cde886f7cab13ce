package winding

import (
	"fmt"
	"math"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// # Two speeds of one shaft
//
// An engine may hold a speed at which a winding takes less than it gives, and yet never reach it: on
// the way up the same winding asks for more than there is, and holds it far below (the torque has its
// hump at low speed, where the winding's inductance does not limit the amps yet). A condition shows the
// speed asked for, as of an engine that was up to speed before it was loaded. From rest with the field
// on, or with the battery connected to a magnet machine, it stays at the lower balance. Legs and water
// are shown at the balance reached from rest, and may stay at a faster one, once they are past the
// unstable balance between.

// others are the balances at full power other than the one shown: for a governed drive those below it,
// as it goes no faster than asked.
func (at *spot) others(list []drive.Equilibrium) (others []drive.Equilibrium) {
	for _, e := range list {
		if apart := e.RPM/at.rpm - 1; at.asked && at.rpm > 0 && (apart < -1e-5 || apart > 1e-5 && at.yields) {
			others = append(others, e)
		}
	}
	return others
}

// otherOfShaft is the other stable balance of a drive with limited power, in the first condition in
// which its net amps differ enough from those shown; nil where there is none.
func (s *driveSide) otherOfShaft(c *characteristic, spots *[conditionCount]spot) (b *otherSpeed) {
	for _, i := range [...]int{usual, top, slow} {
		at := &spots[i]
		if !at.asked || s.conditions[i].Same != "" || at.stops {
			continue
		}
		here := c.at(at.rpm).NetAmps
		for _, e := range at.other {
			if net := c.at(e.RPM).NetAmps; e.Stable && apart(net, here) && (b == nil || math.Abs(net-here) > math.Abs(b.net-here)) {
				b = &otherSpeed{condition: i, rpm: e.RPM, net: net, here: here, past: between(at.rpm, at.other, e.RPM)}
			}
		}
		if b != nil {
			return b
		}
	}
	return nil
}

// shaftBalances reports that a shaft may stay at a speed other than the one shown.
func (a aboutRunning) shaftBalances(d *doubts, at func(string) string, t job.Trial, b *otherSpeed, p *Operating) {
	where, whom, what := a.drive.conditions[b.condition].Label, whose(a.drive.kind), "the battery joined"
	if p.FieldWatts > 0 {
		what = "the field switched on"
	}
	now := func(rpm float64) float64 { return rpm / a.drive.ratio.Value }
	said := Finding{Severity: Note, Path: at("turns"), Trial: t.Name, Source: "balance of drive and alternator"}
	past := ""
	if b.past > 0 {
		past = fmt.Sprintf(" past %s alternator rpm", asTyped(b.past))
	}
	if b.rpm < p.RPM {
		said.Fix = what + " only" + past
		if past == "" {
			said.Fix = what + " only at speed"
		}
		d.add(said, "it can stay at two speeds (%s): up to speed before %s it runs at %s rpm of the %s, %s, which is what is told here; from rest with it on it comes no further than %s rpm, %s: in between it asks for more than is given",
			where, before(what), asTyped(now(p.RPM)), whom, netSaid(b.here), asTyped(now(b.rpm)), netSaid(b.net))
		return
	}
	if b.net > b.here {
		said.Fix = what + " only" + past + ": it goes on to the faster"
	}
	d.add(said, "it can stay at two speeds (%s): from rest it comes to %s rpm of the %s, %s, which is what is told here; at %s rpm it stays too, %s",
		where, asTyped(now(p.RPM)), whom, netSaid(b.here), asTyped(now(b.rpm)), netSaid(b.net))
}

// before is what is done, in the manner of "before it is done".
func before(what string) string {
	if what == "the battery joined" {
		return "the battery is joined"
	}
	return "the field is switched on"
}
