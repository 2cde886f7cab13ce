package winding

// Records is every record of the job compared with its plan, as in [Bench.Outcome] except for the
// likely faults: the trials are not run, only their static figures get their ±. For a folder of jobs.
func (b *Bench) Records() []WoundOutcome {
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
