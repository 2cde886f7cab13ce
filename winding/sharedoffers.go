package winding

import (
	"math"

	"slotwright/winding/job"
)

// # Offers found for another trial on the same iron
//
// Each search starts from its own trial's wire and circuits and may end at a lower local maximum than
// that of the trial beside it. So, once all are worked out, a trial that is laid out and connected like
// another, circuits apart, takes the other's offer where it brings more. As this depends on several
// trials it is done each time an outcome is put together; what a trial found for itself is kept as it
// is.

// shareOffers gives every trial that waits for a mend the best that any of them found.
func (b *Bench) shareOffers(o *Outcome, d *done) {
	if b.offersNone {
		return
	}
	of := offers{workshop: b, bed: &b.bed, slots: b.slots, tried: new(trying)}
	for i := range o.Trials {
		own := &d.trials[i].mend
		if !own.sought {
			continue
		}
		best := own.best
		for k := range o.Trials {
			f := d.trials[k].mend.best
			if k != i && f != nil && f != best && !f.late && woundAlike(&b.job.Trials[i], &b.job.Trials[k], &o.Trials[i], &o.Trials[k]) &&
				of.improves(f, best, own, b.job.Trials[i], &o.Trials[i]) {
				best = f
			}
		}
		if best != own.best {
			s := of.search(b.job.Trials[i], o.Trials[i].TurnsThatFit.Value)
			o.Trials[i].Mend, o.Trials[i].Offer, o.Trials[i].InTheWay = s.says(best, &o.Trials[i]), best.offer(), ""
		}
	}
}

// woundAlike reports whether a replacement for one trial also serves for another: same coils,
// connections but for the circuits, and wire but for the size.
func woundAlike(t, u *job.Trial, a, b *TrialOutcome) bool {
	far := math.Abs(math.Log(t.Gauge.BareMM(t.Build) / u.Gauge.BareMM(u.Build)))
	return a.Connection == b.Connection && a.Span == b.Span && a.Layers == b.Layers && a.Kind == b.Kind &&
		t.Build == u.Build && t.Metal == u.Metal && a.Strands == b.Strands && t.Gauge.System() == u.Gauge.System() && far <= math.Log(widerWire)
}

// improves reports whether a winding found for another trial brings enough for this one and, if this
// one has an offer of its own, exceeds that by what other connections must gain.
func (of offers) improves(f, best *fullSlot, own *mend, t job.Trial, o *TrialOutcome) bool {
	if same(f.trial, t) || f.net < 0 || !(f.score > own.least*worthIt) {
		return false
	}
	if !own.breaks && of.drive.kind == job.DriveWind && of.yearKWh(f) < o.YearKWh.Value+leastYear {
		return false
	}
	return best == nil || of.tells(f) > of.tells(best)*worthIt
}

// tells is what an offer is said to bring: a year's energy in wind, kWh, else net amps.
func (of offers) tells(f *fullSlot) float64 {
	if of.drive.kind == job.DriveWind {
		return of.yearKWh(f)
	}
	return f.net
}
