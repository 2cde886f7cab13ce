package winding

import (
	"fmt"
	"math"

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
// The winding's temperature is held at the trial's own while sizes are compared, so that a
// size costs some ten solved points (in wind a coarse year, some hundred and fifty). The
// one that is offered is good to a percent or two of what the grid will say of it.

// Sizes looked at on either side of the trial's own.
const (
	sizesThicker = 6
	sizesThinner = 8
	worthIt      = 1.03 // a gain smaller than this is none
	worthKeeping = 0.9  // of what a winding that breaks a limit brings
)

// tried is a winding that could take a trial's place.
type tried struct {
	trial  job.Trial
	begins float64 // rpm
	net    float64 // A in the usual condition
	score  float64
}

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
	limit := o.LimitAmps
	late := of.drive.kind != "wind" && o.CutInRPM.Known() && of.speeds.slow.Known() && o.CutInRPM.Value > of.speeds.slow.Value
	over := limit.Known() && o.SteadyAmps.Known() && o.SteadyAmps.Value > limit.Value*limitSlack
	hot := o.HottestC.Known() && o.HottestC.Value > of.air.meanC || at.TooHot
	clean := !late && !over && !hot && at.NetAmps > 0
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
	present := of.score(t, o, at)
	least := worthIt
	if !clean {
		least = worthKeeping
	}
	var best *tried
	more := max(0, least*present) // that an offer has to bring
	for _, c := range of.sizes(t) {
		if w := of.try(c, o, at, more); w != nil {
			best, more = w, w.score
		}
	}
	if best == nil || same(best.trial, t) {
		return "", nil
	}
	text := fmt.Sprintf("%d turns of %s fit: begins at %.0f rpm, %.3g A net (%s)", best.trial.Turns.Whole(), wireWords(best.trial.Bundle()),
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

// sizes is the trial with neighbouring wires, each filling the slot.
func (of offers) sizes(t job.Trial) []job.Trial {
	list := []job.Trial{t}
	thick, thin := t.Gauge, t.Gauge
	step := 1
	if of.drive.kind == "wind" {
		step = 3 // each costs a year
	}
	for i := 1; i <= max(sizesThicker, sizesThinner); i++ {
		if g, ok := thick.ThickerIn(t.Build); ok && i <= sizesThicker {
			if thick = g; i%step == 1%step {
				list = append(list, withGauge(t, thick))
			}
		}
		if g, ok := thin.ThinnerIn(t.Build); ok && i <= sizesThinner {
			if thin = g; i%step == 1%step {
				list = append(list, withGauge(t, thin))
			}
		}
	}
	for i := range list {
		list[i].Turns = quantity.Reading{Value: of.TurnsThatFit(list[i]).Value, Origin: quantity.Derived}
	}
	return list
}

// try runs one; nil when it does not fit, cannot be put in, breaks a limit, or brings no more
// than so much, which is found out first where that costs less.
func (of offers) try(t job.Trial, now *TrialOutcome, at *Operating, more float64) *tried {
	if t.Turns.Value < 1 {
		return nil
	}
	o := of.Static(t)
	slowest := of.speeds.slow
	late := of.drive.kind != "wind" && slowest.Known() && o.CutInRPM.Known() && o.CutInRPM.Value > slowest.Value*1.0001
	if late || o.MouthSpareMM.Known() && o.MouthSpareMM.Value <= 0 {
		return nil
	}
	r, _ := of.charger(t, &o)
	if r == nil {
		return nil
	}
	w := &tried{trial: t, begins: o.CutInRPM.Value}
	stands := func(in *Operating) bool {
		c := of.drive.conditions[indexOf(in.Condition)]
		run := r.settle(of.drive.given(in.X), max(in.RPM, 1), c.asked, in.WindingC)
		if in.Condition == at.Condition {
			w.net = run.NetAmps
		}
		return !(o.over(run, of.machine) || run.TooHot || of.air.still.Known() && run.WindingC > of.air.meanC)
	}
	brings := func() bool { return w.score > more && !math.IsNaN(w.score) }
	if of.drive.kind == "wind" {
		if w.score = of.coarseYear(r, &o, at.WindingC); !brings() || !stands(at) {
			return nil
		}
	} else if !stands(at) {
		return nil
	} else if w.score = w.net; !brings() {
		return nil
	}
	for i := range now.Operating {
		in := &now.Operating[i]
		if in.Condition != at.Condition && of.drive.conditions[indexOf(in.Condition)].Same == "" && !stands(in) {
			return nil
		}
	}
	return w
}

// score is what an offer is measured by, for the trial itself: a year's energy in wind, else
// net amps in the usual condition.
func (of offers) score(t job.Trial, o *TrialOutcome, at *Operating) float64 {
	if of.drive.kind != "wind" {
		return at.NetAmps
	}
	r, _ := of.charger(t, o)
	if r == nil {
		return 0
	}
	return of.coarseYear(r, o, at.WindingC)
}

// coarseYear is a year's net energy at one temperature of the winding, winds a metre a
// second apart.
func (of offers) coarseYear(r *charger, o *TrialOutcome, warm float64) float64 {
	s := of.drive
	if s.why != "" {
		return 0
	}
	winds, err := drive.Winds(s.furl, 1)
	if err != nil {
		return 0
	}
	kept := *r
	kept.air = &thermal{ambientC: of.air.ambientC} // holds the temperature it is given
	c := of.tried
	c.over(&kept, s.fastest, warm, closeOffer)
	points, err := drive.Climb(s.shaft, c.torque(o.CutInRPM.Value, s.fastest), winds)
	if err != nil {
		return 0
	}
	year := Driven{Points: make([]DrivePoint, 0, len(points))}
	for _, p := range points {
		year.Points = append(year.Points, windPoint(p, c.at(p.RPM)))
	}
	return year.yearIn(s.year)
}
