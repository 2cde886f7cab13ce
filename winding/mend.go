package winding

import (
	"fmt"
	"slices"

	"slotwright/winding/drive"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # Mends that were worked out
//
// "More turns" or "thicker wire" is cheap to say, and in a full slot each forbids the other.
// So nothing is offered here that was not wound on paper first: the neighbouring sizes of
// the trial's wire, each with as many turns as fit the slot, are run in the usual condition
// of the drive, and the best that breaks no limit is named, wire and turns together. Where
// none is better, none is offered.
//
// Each of these windings is worked out by itself, and once for all trials: fullslot.go. What is
// said of the one that is offered is what the grid will say of it, in a year's energy to a
// percent or two.

// Sizes looked at on either side of the trial's own.
const (
	sizesThicker = 6
	sizesThinner = 8
	worthIt      = 1.03 // a gain smaller than this is none
	worthKeeping = 0.9  // of what a winding that breaks a limit brings
)

// Offer is a winding that was worked out in a trial's place: as many turns as fit.
type Offer struct {
	Turns int    `json:"turns"`
	Wire  string `json:"wire"`
	// Gauge is the wire as a job has it.
	Gauge wiretable.Gauge `json:"-"`
}

// workshop winds a trial on paper: the bench.
type workshop interface {
	Static(t job.Trial) TrialOutcome
	TurnsThatFit(t job.Trial) quantity.Figure
}

// offers looks for what would do better in a trial's place.
type offers struct {
	workshop
	*bed
	slots *fullSlots
	// tried is the curve of the winding tried last, in whose room the next is worked out.
	tried *characteristic
}

// better is the winding that would do better, worked out once for all that a trial is
// blamed for; "" when it is blamed for nothing that turns and wire could mend.
func (of offers) better(t job.Trial, o *TrialOutcome) (string, *Offer) {
	at := o.in(usual)
	if at == nil {
		return "", nil
	}
	late := of.drive.kind != "wind" && o.CutInRPM.Known() && of.speeds.slow.Known() && o.CutInRPM.Value > of.speeds.slow.Value
	hot := o.HottestC.Known() && o.HottestC.Value > of.air.meanC || o.Burns()
	clean := !late && !o.OverLimit() && !hot && at.NetAmps > 0
	if clean && (o.region == drive.Charging || o.region == "") {
		return "", nil
	}
	return of.mendFor(t, o, clean)
}

// mendFor is the best winding that fits in a trial's place, in a sentence and as such; none
// when none is better. clean says that the trial itself breaks nothing, so that an offer has to gain.
func (of offers) mendFor(t job.Trial, o *TrialOutcome, clean bool) (string, *Offer) {
	at := o.in(usual)
	if at == nil || t.Bundle().IsZero() || !t.AlsoGauge.IsZero() || len(t.CoilTurns) > 0 || !o.TurnsThatFit.Known() {
		return "", nil
	}
	present := at.NetAmps
	if of.drive.kind == "wind" {
		present = of.coarsely(o)
	}
	least := worthIt
	if !clean {
		least = worthKeeping
	}
	var best *fullSlot
	more := max(0, least*present) // that an offer has to bring
	for _, g := range of.sizes(t) {
		if f := of.full(withGauge(t, g)); of.brings(f) > more && of.holds(f) {
			best, more = f, f.score
		}
	}
	if best == nil || same(best.trial, t) {
		return "", nil
	}
	text := fmt.Sprintf("%d turns of %s fit: begins at %.0f alternator rpm, %.3g A net (%s)", best.trial.Turns.Whole(), wireWords(best.trial.Bundle()),
		best.begins, best.net, of.drive.conditions[usual].Label)
	if of.drive.kind == "wind" {
		text += fmt.Sprintf(", about %.0f kWh a year", best.score)
	}
	return text, &Offer{best.trial.Turns.Whole(), best.trial.Gauge.String(), best.trial.Gauge}
}

// wireWords is a bundle as it is said: one strand needs no number.
func wireWords(b wiretable.Bundle) string {
	if b.Count() == 1 {
		return b.Strands[0].Gauge.String()
	}
	return b.String()
}

func withGauge(t job.Trial, g wiretable.Gauge) job.Trial {
	t.Gauge = g
	return t
}

func same(a, b job.Trial) bool {
	return a.Turns.Value == b.Turns.Value && a.Gauge.String() == b.Gauge.String()
}

// sizes is a trial's wire and its neighbours.
func (of offers) sizes(t job.Trial) []wiretable.Gauge {
	list := append(make([]wiretable.Gauge, 0, 1+sizesThicker+sizesThinner), t.Gauge)
	thick, thin := t.Gauge, t.Gauge
	step := 1
	if of.drive.kind == "wind" {
		step = 3 // each costs a year
	}
	for i := 1; i <= max(sizesThicker, sizesThinner); i++ {
		if g, ok := thick.ThickerIn(t.Build); ok && i <= sizesThicker {
			if thick = g; i%step == 1%step {
				list = append(list, thick)
			}
		}
		if g, ok := thin.ThinnerIn(t.Build); ok && i <= sizesThinner {
			if thin = g; i%step == 1%step {
				list = append(list, thin)
			}
		}
	}
	if g, ok := of.filling(t); ok && !slices.ContainsFunc(list, func(o wiretable.Gauge) bool { return o.String() == g.String() }) {
		list = append(list, g)
	}
	return list
}

// filling is the thickest wire of which the trial's own turns still go in: what a slot that is
// mostly empty asks for. ok is false where there is none, as with turns that do not fit.
func (of offers) filling(t job.Trial) (g wiretable.Gauge, ok bool) {
	for g = t.Gauge; ; ok = true {
		next, more := g.ThickerIn(t.Build)
		if !more || of.TurnsThatFit(withGauge(t, next)).Value < t.Turns.Value {
			return g, ok
		}
		g = next
	}
}
