package winding

// Foremost is the trial that a job is currently about, and why: the one wound last, a proved one before
// others; else the reference that was named. Where neither is given it is the first, and why is "".
// Without a trial it is -1.
func (o *Outcome) Foremost(reference string) (trial int, why string) {
	if len(o.Trials) == 0 {
		return -1, ""
	}
	best, date, proved := -1, "", false
	for i := range o.Wound {
		r := &o.Wound[i]
		at, ok := o.trialNamed(r.Trial), r.Proved()
		if at >= 0 && (best < 0 || ok && !proved || ok == proved && r.Date >= date) {
			best, date, proved = at, r.Date, ok
		}
	}
	switch {
	case best >= 0 && proved:
		return best, "it is wound and proved"
	case best >= 0:
		return best, "it is wound"
	case reference != "" && o.trialNamed(reference) >= 0:
		return o.trialNamed(reference), "it is the reference"
	}
	return 0, ""
}

// trialNamed is the index of a trial by its name; -1 where there is none.
func (o *Outcome) trialNamed(name string) int {
	for i := range o.Trials {
		if o.Trials[i].Name == name {
			return i
		}
	}
	return -1
}
