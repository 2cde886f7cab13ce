package winding

import (
	"slotwright/winding/quantity"
	"slotwright/winding/wound"
)

// Records is every record of the job compared with its plan, as in [Bench.Outcome] except for the
// likely faults: the trials are not run, only their static figures get their ±. For a folder of jobs.
func (b *Bench) Records() []wound.Record {
	o := Outcome{Wound: b.Wound()}
	if len(o.Wound) == 0 {
		return nil
	}
	d := &done{shifts: b.shifted()}
	o.Machine = b.machineAlone(d)
	o.Trials = make([]TrialOutcome, len(b.job.Trials))
	for i, t := range b.job.Trials {
		w := b.layouts.candidate(t)
		o.Trials[i] = b.works(&w)
		b.spreadStatic(&o.Trials[i], i, append(b.ofTrial(i), d.shifts...), func(int, *candidate, *TrialOutcome) {})
	}
	o.spreadProofs()
	return o.Wound
}

// spreadStatic gives the figures of a trial that need no running their ±, by the shifted benches; also
// is called with each of these once its figures are filled in.
func (b *Bench) spreadStatic(o *TrialOutcome, i int, shifts []shift, also func(k int, w *candidate, then *TrialOutcome)) {
	t := b.job.Trials[i]
	own := b.layouts.candidate(t)
	o.spread(len(shifts), new(TrialOutcome), func(k int, then *TrialOutcome) {
		other, w := shifts[k].bench, own
		if shifts[k].sameCoils {
			other.fillBeside(&w, o, then)
		} else {
			w = other.layouts.candidate(shifts[k].of(t, i))
			other.fillStatic(&w, then)
		}
		also(k, &w, then)
	})
}

// spreadProofs gives what each record expects the relative ± of its trial's figure.
func (o *Outcome) spreadProofs() {
	for i := range o.Wound {
		sure := wound.Predicted{RisePerWatt: o.surelyWarms()}
		for k := range o.Trials {
			if t := &o.Trials[k]; t.Name == o.Wound[i].Trial {
				sure = o.predicted(t, t.LinePerRPM)
				break
			}
		}
		o.Wound[i].AsSureAs(sure)
	}
}

// predicted is what a record of a trial is compared with, its volts as given.
func (o *Outcome) predicted(t *TrialOutcome, volts quantity.Figure) wound.Predicted {
	return wound.Predicted{MeanTurnMM: t.MeanTurnMM, WireKg: t.CopperKg, LeadOhms20: t.LeadOhms20, LineVolts: volts, CutInRPM: t.CutInRPM, RisePerWatt: o.surelyWarms()}
}

// surelyWarms is the rise per watt with its ±; a guessed one has none, since the errors of its inputs
// are small beside the guess.
func (o *Outcome) surelyWarms() quantity.Figure {
	f := o.Machine.RisePerWatt
	if f.Origin.Weak() {
		f.PlusMinus = 0
	}
	return f
}

// Checks are what a record of a trial, counted from 0, will be compared with, nothing read yet; its
// volts are at the speed of the test, its rise per watt at the usual speed.
func (o *Outcome) Checks(trial int) []wound.Check {
	t := &o.Trials[trial]
	return wound.Checks(o.predicted(t, t.LineAtTest), o.magnets)
}

// Signs is where to look when readings of a trial are off, in the order of the bench.
func (o *Outcome) Signs(t *TrialOutcome) []string {
	return wound.Signs(o.phases, t.Connection, o.magnets)
}
