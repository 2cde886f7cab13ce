package winding

import (
	"fmt"

	"slotwright/winding/drive"
	"slotwright/winding/job"
)

// suit says in one plain sentence how a trial and its drive suit each other; held is the trial with
// the shaft held at a speed.
func (t *TrialOutcome) suit(s *driveSide, held *characteristic) {
	if s.kind == job.DriveWind {
		if t.verdict != nil {
			t.Suits = suitsWind(*t.verdict)
		}
		return
	}
	at := t.in(usual)
	if s.kind == "" || s.why != "" || at == nil {
		return
	}
	switch {
	case at.Region == drive.Stalled:
		t.region = Overload
		t.Suits = "demands more than the drive gives at any speed and stalls it"
	case at.AmpsDC == 0 && at.HeldBack:
		t.region = drive.Idling
		t.Suits = fmt.Sprintf("is held back to %s rpm of the drive and does not charge there", figures(at.DriveRPM))
	case at.AmpsDC == 0:
		t.region = drive.Idling
		t.Suits = fmt.Sprintf("does not charge in the usual condition: it begins at %s rpm of the drive", figures(t.StartsAt.Value))
	case at.HeldBack:
		t.region = Overload
		t.Suits = heldBackTo(at)
	case s.source == nil:
		t.region = drive.Charging
		t.Suits = fmt.Sprintf("draws %.0f W at the usual speed and charges %s A net", at.DriveWatts, amps(at.NetAmps))
	case t.stalls() != nil:
		t.region = drive.Stalled
		t.Suits = fmt.Sprintf("%s, for %s A net", stalledAt(s.kind, at), amps(at.NetAmps))
	case yields(s.kind):
		t.region = drive.Charging
		t.Suits = fmt.Sprintf("takes all that the drive gives at %s rpm, %.0f W, and charges %s A net", figures(at.DriveRPM), at.DriveWatts, amps(at.NetAmps))
		if usual := s.conditions[usual].X; usual.Known() && at.DriveRPM < 0.9*usual.Value {
			t.Suits += fmt.Sprintf("; that is slower than its usual %s rpm", figures(usual.Value))
		}
		t.Suits += s.withLess(at, held)
	default:
		t.region = drive.Charging
		t.Suits = fmt.Sprintf("takes %.0f W of the %.0f W the drive gives at its usual speed, for %s A net", at.DriveWatts, at.GivesWatts, amps(at.NetAmps))
	}
	if at.NetAmps <= 0 && at.AmpsDC > 0 {
		t.Suits += fmt.Sprintf("; the rotor takes %.3g W of the battery, more than comes in", at.FieldWatts)
	}
	t.heldBackElsewhere(s)
}

// withLess is what it takes and brings at the usual speed typed, where the drive turns faster at
// full power: nobody pedals at full effort for long.
func (s *driveSide) withLess(at *Operating, held *characteristic) string {
	usual := s.conditions[usual].X
	if !usual.Known() || !s.ratio.Known() || at.DriveRPM < 1.05*usual.Value {
		return ""
	}
	p := held.at(usual.Value * s.ratio.Value)
	if p.AmpsDC < leastNet {
		return fmt.Sprintf("; at its usual %s rpm it does not charge", figures(usual.Value))
	}
	return fmt.Sprintf("; held at its usual %s rpm it takes %.0f W for %s A net", figures(usual.Value), p.ShaftWatts/s.through.Passes(), amps(p.NetAmps))
}
