package winding

import (
	"reflect"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/parallel"
)

// # What is not computed again
//
// A person changes one value at a time, mostly of one trial. A trial by itself depends on its own
// inputs, on what the trials share, and on the speeds of the curves, which are common to all. Where the
// three are equal by value, the results of a bench are handed on to the next, those of shifted benches
// included; what looks at several trials (crossings, comparison, verdicts, findings) is always
// recomputed. So an outcome is the same to the last bit whatever was typed before it.

// done is what an outcome is put together from. It is not changed once it is made.
type done struct {
	grid    []float64
	shifts  []shift
	machine MachineOutcome
	old     *TrialOutcome
	trials  []*workedTrial
	// reversed is the question whether the drive is the wrong way round; nil where nothing asks it.
	reversed *Reversed
}

// workedTrial is a trial worked out by itself.
type workedTrial struct {
	trial   job.Trial
	outcome TrialOutcome
	runs    *characteristic // nil where it cannot run
	mend    mend            // found for it alone
}

// With is Prepare for another state of the job. Everything that is equal by value is reused: all that
// the trials share where only trials, names and records differ; else the measured slot, the layouts,
// and the joint fit of the old winding's readings.
func (b *Bench) With(j job.Job) *Bench {
	if !sharesAll(j, *b.job) {
		other := prepare(&j, offsets{}, b.stillGood(&j))
		other.offersNone = b.offersNone
		return other
	}
	j.Slot = j.Slot.AsMeasured()
	return &Bench{job: &j, prepared: b.prepared, before: b.done.Load()}
}

// sharesAll reports whether two jobs agree in everything that their trials share.
func sharesAll(a, b job.Job) bool {
	return reflect.DeepEqual(shared(a), shared(b))
}

// shared is a job without what belongs to a single trial or is only quoted.
func shared(j job.Job) job.Job {
	j.Slot = j.Slot.AsMeasured()
	j.Name, j.Notes, j.Invented, j.BareGauges, j.LoneMillimetres, j.Trials, j.AsWound, j.Target.Reference = "", "", false, nil, nil, nil, nil, ""
	return j
}

// work is all that the outcome is put together from.
func (b *Bench) work() *done {
	if d := b.done.Load(); d != nil {
		return d
	}
	d := &done{grid: b.bed.grid(b.cutIns)}
	before := b.before
	if before != nil {
		d.shifts, d.machine, d.old = before.shifts, before.machine, before.old
	} else {
		before = &done{}
		d.shifts = b.shifted()
	}
	d.trials = make([]*workedTrial, len(b.job.Trials))
	var fresh []int
	for i := range b.job.Trials {
		t := &b.job.Trials[i]
		k := slices.IndexFunc(before.trials, func(w *workedTrial) bool { return reflect.DeepEqual(&w.trial, t) })
		if k >= 0 && slices.Equal(before.grid, d.grid) {
			d.trials[i] = before.trials[k]
			continue
		}
		fresh = append(fresh, i)
	}
	tasks := make([]func(), 0, len(fresh)+2)
	for _, i := range fresh {
		tasks = append(tasks, func() { d.trials[i] = b.trialAlone(i, d) })
	}
	if b.before == nil {
		tasks = append(tasks, func() { d.old = b.oldAlone(d) }, func() { d.machine = b.machineAlone(d) })
	}
	parallel.Each(len(tasks), func(k int) { tasks[k]() })
	for _, i := range fresh {
		o := &d.trials[i].outcome
		o.Against = b.byTurns().against(b.job.Trials[i], o, d.old)
	}
	d.reversed = b.turnedAbout(d)
	b.done.Store(d)
	return d
}
