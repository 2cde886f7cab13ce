package winding

import (
	"fmt"

	"slotwright/winding/drive"
)

// # A drive dragged below its speed
//
// An engine holds its speed as far as its power goes. A trial that takes more drags it down to the
// next balance, and the current there belongs to a speed other than the one asked for. (Legs and
// water slow down by their nature: they have a speed for each winding, which is shown with it.) A
// small drop is normal governor droop. From a few per cent on it is reported in every condition,
// and far below the speed it is no way to run: an engine has a lowest speed at which it still
// fires, but nobody has typed that, so only the speed is shown.

// The parts of the speed asked for below which a drive is reported as held back, and below which
// that is no way to run it; common practice, no source.
const (
	draggedSaid = 0.95
	draggedFar  = 0.9
)

// keeps is the part of the speed asked for that it keeps: 1 where nothing holds the drive back.
func (m *Meeting) keeps() float64 {
	if !m.HeldBack || !m.governed || !(m.X > 0) {
		return 1
	}
	return m.DriveRPM / m.X
}

// dragged is the condition in which the drive keeps the smallest part of its speed, if that is
// below a given part; nil where there is none.
func (c *Charging) dragged(below float64) *Operating {
	var worst *Operating
	for i := range c.Operating {
		p := &c.Operating[i]
		if k := p.keeps(); k < below && (worst == nil || k < worst.keeps()) {
			worst = p
		}
	}
	return worst
}

// draggedFarIn reports whether the drive is dragged far below the speed asked for in a condition.
func (c *Charging) draggedFarIn(condition int) bool {
	p := c.in(condition)
	return p != nil && p.keeps() < draggedFar
}

// stalls is where legs or water give all they can, if the winding holds them so far below the speed
// of most power that less than four fifths of it is left ([drive.Weak], as for a wind rotor): thick
// wire in fewer turns would let them turn. nil where it does not. Where iron and drag take much,
// the most amps may still be there: then no winding does better, and it is only noted.
func (c *Charging) stalls() *Operating {
	p := c.in(usual)
	if p == nil || !(p.best.Watts > 0) || p.DriveRPM >= p.best.RPM || p.DriveWatts >= drive.Weak*p.best.Watts {
		return nil
	}
	return p
}

// stalledAt says so.
func stalledAt(kind string, p *Operating) string {
	return fmt.Sprintf("holds the %s to %s rpm: %s W of the %s W to be had", whose(kind), figures(p.DriveRPM), figures(p.DriveWatts), figures(p.best.Watts))
}

// unsuited says in a word how a winding and a drive that gives way do not suit each other, and from
// which wind or at what speed; "" where they do. Suits says the same in a sentence. A drive held at
// its speed is described by its figures.
func (t *TrialOutcome) unsuited() (word, where string) {
	if v := t.verdict; v != nil {
		switch v.Region {
		case drive.Stalled:
			return "stalls", fmt.Sprintf(" from %.3g m/s", v.StallsFrom)
		case drive.Runaway:
			return "runs away", fmt.Sprintf(" from %.3g m/s", v.RunsAwayFrom)
		}
	}
	if p := t.stalls(); p != nil {
		return "stalls", fmt.Sprintf(" at %s rpm", figures(p.DriveRPM))
	}
	return "", ""
}

// DraggedTo is the speed of the drive, rpm, at which a trial runs in a condition, by index (slow,
// usual, top), and whether it is worth reporting: it differs from the speed asked for. Legs and water
// at full power have a speed for each winding, and none was asked for.
func (c *Charging) DraggedTo(condition int) (rpm float64, told bool) {
	p := c.in(condition)
	switch {
	case p == nil:
		return 0, false
	case p.best.Watts > 0:
		return p.DriveRPM, condition != slow || p.DriveRPM < draggedSaid*p.X
	}
	return p.DriveRPM, p.keeps() < draggedSaid
}

// Drags says that a trial drags its drive far below the speed asked for, naming the drive's kind:
// "drags the engine from 900 to 427 rpm", of the worst condition; "" where it does not.
func (c *Charging) Drags(kind string) string {
	p := c.dragged(draggedFar)
	switch {
	case p == nil:
		return ""
	case p.DriveRPM <= 0:
		return fmt.Sprintf("stops the %s at %s rpm", whose(kind), asTyped(p.X))
	}
	return fmt.Sprintf("drags the %s from %s to %s rpm", whose(kind), asTyped(p.X), figures(p.DriveRPM))
}

// heldBackTo says where a drive and a trial that asks for more than it gives balance in a
// condition.
func heldBackTo(p *Operating) string {
	text := fmt.Sprintf("asks for more than the drive gives at %s rpm: it is ", asTyped(p.X))
	if p.DriveRPM <= 0 {
		return text + "stopped"
	}
	return text + fmt.Sprintf("held back to %s rpm of the drive and %s A net", figures(p.DriveRPM), amps(p.NetAmps))
}

// heldBackElsewhere adds the conditions other than the usual one in which the drive is held back.
func (t *TrialOutcome) heldBackElsewhere(s *driveSide) {
	if t.Suits == "" {
		return
	}
	said := ""
	for _, i := range []int{slow, top} {
		if p := t.in(i); p != nil && s.conditions[i].Same == "" && p.keeps() < draggedSaid {
			said = joined("; ", said, heldBackTo(p))
		}
	}
	switch {
	case said == "":
	case t.region == Overload:
		t.Suits += "; " + said
	default:
		t.Suits, t.region = said+"; "+t.Suits, Overload
	}
}
