package winding

import (
	"math"
	"reflect"

	"slotwright/winding/job"
	"slotwright/winding/parallel"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// # How far a figure may be off
//
// Each reading that was typed with a tolerance is moved by it, one at a time; everything that needs no
// running is computed again, and the changes of each figure are added as squares: the usual law for
// small independent errors (Guide to the Expression of Uncertainty in Measurement, JCGM 100:2008,
// 5.1.2, with sensitivities by differences). Volts, speeds, ohms and turns read without a tolerance are
// moved by what is usual of the instrument (usualVoltsOff and its fellows). Guesses are moved too, by
// what is usual of their kind (see the package comments of their sources; else common practice, no
// source): a ~ without a ± by a tenth, magnets by 15 %, an unknown diode by 0.1 V (which also covers
// that a real diode drops less at the first amps), a guessed mean turn by a tenth, the inductance by
// what its method is worth. What a battery does while it charges is no error: figures for its two ends
// are given beside.
//
// The amps and watts of the usual condition, and of any other in which the drive holds the speed, are
// solved again from their present speed at the winding's present temperature; other figures that need
// running get no ±, nor do amps in a light and in a furling wind. A tolerance typed with a trial moves
// that trial only.
//
// It is first order: of a tolerance that changes a whole number of turns, or takes a figure out of its
// range, it sees the effect at its end only.
//
// Cost: one Prepare, one Static a trial, and two solved points for each tolerance of a trial.

var (
	readingType = reflect.TypeFor[quantity.Reading]()
	gaugeType   = reflect.TypeFor[wiretable.Gauge]()
	recordType  = reflect.TypeFor[job.AsWound]()
)

// tolerances finds the readings and wires with a tolerance in what v points to, a job or a trial, as
// paths of field indexes.
func tolerances(v reflect.Value, path []int, found *[][]int) {
	switch {
	case v.Type() == recordType: // readings taken afterwards move no figure
	case v.Type() == readingType:
		if r := v.Addr().Interface().(*quantity.Reading); r.Given() && off(*r) > 0 {
			*found = append(*found, append([]int{}, path...))
		}
	case v.Type() == gaugeType:
		if v.Addr().Interface().(*wiretable.Gauge).PlusMinusMM() > 0 {
			*found = append(*found, append([]int{}, path...))
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.CanInterface() {
				tolerances(f, append(path, i), found)
			}
		}
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		for i := range v.Len() {
			tolerances(v.Index(i), append(path, i), found)
		}
	}
}

// off is a reading's tolerance: as typed, else a tenth for a guess.
func off(r quantity.Reading) float64 {
	if r.PlusMinus == 0 && r.Origin == quantity.Guessed {
		return typedGuess * math.Abs(r.Value)
	}
	return r.PlusMinus
}

// moved is a copy of a job or a trial with one reading moved by its tolerance.
func moved[T any](j T, path []int) *T {
	at := reflect.ValueOf(&j).Elem()
	for _, i := range path {
		if at.Kind() == reflect.Slice {
			own := reflect.MakeSlice(at.Type(), at.Len(), at.Len())
			reflect.Copy(own, at)
			at.Set(own)
			at = at.Index(i)
			continue
		}
		at = at.Field(i)
	}
	if g, ok := at.Interface().(wiretable.Gauge); ok {
		at.Set(reflect.ValueOf(g.Wider()))
		return &j
	}
	r := at.Interface().(quantity.Reading)
	r.Value += off(r)
	at.Set(reflect.ValueOf(r))
	return &j
}

// spreadBy is the figures of a table whose ± is found in one way.
func spreadBy(table []Output, way Spread) []*Output {
	var list []*Output
	for i := range table {
		if table[i].Spread == way {
			list = append(list, &table[i])
		}
	}
	return list
}

var (
	followedOfTrial   = spreadBy(trialOutputs, Followed)
	followedOfMachine = spreadBy(machineOutputs, Followed)
)

var rerunOfTrial = spreadBy(trialOutputs, Rerun)

// Spreads of guesses, relative unless a unit is given; see above.
const (
	typedGuess    = 0.10
	diodeGuessV   = 0.10
	meanTurnGuess = 0.10
	dragGuess     = 0.5
	noise         = 1e-9
)

// readTogether reports whether a reading, by its path of field indexes, is among those solved jointly.
func readTogether(path []int) bool {
	top := reflect.TypeFor[job.Job]().Field(path[0])
	switch top.Name {
	case "Spins", "Shorts", "Amps", "Coils":
		return true
	case "Old":
		switch reflect.TypeFor[job.OldWinding]().Field(path[1]).Name {
		case "CutInRPM", "BeganAmps", "RatedAmps", "RatedVolts", "RatedRPM", "LeadMilliHenries":
			return true
		}
	}
	return false
}

// shift is a bench, or a trial on the same bench, with one error applied.
type shift struct {
	bench *Bench
	// only is the one trial that moves, in its moved form; -1 where all may.
	only  int
	trial job.Trial
	// sameCoils says that coils, slot and copper equal those of the original bench.
	sameCoils bool
}

// of is the shifted form of trial i.
func (s *shift) of(t job.Trial, i int) job.Trial {
	if s.only == i {
		return s.trial
	}
	return t
}

// ofTrial gives the shifts by the tolerances typed with a trial.
func (b *Bench) ofTrial(i int) []shift {
	var paths [][]int
	tolerances(reflect.ValueOf(&b.job.Trials[i]).Elem(), make([]int, 0, 8), &paths)
	list := make([]shift, len(paths))
	for k, path := range paths {
		list[k] = shift{bench: b, only: i, trial: *moved(b.job.Trials[i], path)}
	}
	return list
}

// mistake is one error.
type mistake struct {
	job   *job.Job     // with the error; nil where it does not change
	off   offsets      // what is moved off its value
	held  *fitted      // the joint fit of the readings, where that is what is off
	after func(*Bench) // what to change on the bench once it is made
	// part is the part of the job that has the error, "" if none.
	part string
}

// coils reports whether coils, slot or copper depend on the error.
func (m *mistake) coils() bool { return m.part != "" && !besideCoils[m.part] }

// besideCoils are the parts of a job that do not affect coils, slot and copper.
var besideCoils = map[string]bool{"Spins": true, "Shorts": true, "Amps": true, "Coils": true, "Field": true, "Drive": true, "Battery": true}

// mistakes is every error, one at a time, except those of the trials' own inputs.
func (b *Bench) mistakes() []mistake {
	var paths [][]int
	j := *b.job
	j.Trials = nil
	tolerances(reflect.ValueOf(&j).Elem(), make([]int, 0, 8), &paths)
	list := make([]mistake, 0, len(paths)+8)
	add := func(m mistake) { list = append(list, m) }
	for _, path := range paths {
		if b.fit.ok && readTogether(path) {
			continue // included in the fit's covariance
		}
		add(mistake{job: moved(*b.job, path), part: reflect.TypeFor[job.Job]().Field(path[0]).Name})
	}
	switch {
	case b.fit.ok:
		for _, f := range b.fit.moved() {
			add(mistake{held: f})
		}
		add(mistake{after: func(other *Bench) { other.henries.loose = true }})
		if b.flux.reach > 0 {
			add(mistake{held: b.fit, off: offsets{reach: 1}})
		}
	case b.flux.perTurn.PlusMinus > 0:
		add(mistake{off: offsets{flux: 1}})
	}
	if j := *b.job; b.turnBy(&j) {
		add(mistake{job: &j, part: "Old"})
	}
	if !b.job.Battery.DiodeVolts.Given() {
		j := *b.job
		j.Battery.DiodeVolts = quantity.Reading{Value: b.dc.diodeVolts.Value + diodeGuessV, Origin: quantity.Guessed}
		add(mistake{job: &j})
	}
	if !b.job.Machine.MeanTurnMM.Given() && !b.turn.old.Known() {
		if roundTooth(&b.turn.own) { // each coil has a turn of its own, by its build
			add(mistake{off: offsets{turn: meanTurnGuess}, part: "Machine"})
		} else if turn, _ := b.turn.of(&b.turn.own); turn.Known() {
			j := *b.job
			j.Machine.MeanTurnMM = quantity.Reading{Value: turn.Value * (1 + meanTurnGuess), Origin: quantity.Guessed}
			add(mistake{job: &j, part: "Old"})
		}
	}
	add(mistake{after: func(other *Bench) { other.henries.off = b.henries.spread() }})
	if b.drag.origin.Weak() && b.drag.watts > 0 {
		add(mistake{after: func(other *Bench) { other.drag.watts *= 1 + dragGuess }})
	}
	return list
}

// Usual relative errors of the reading behind the mean turn where no ± was typed with it; common
// practice, no source.
const (
	usualOhmsOff = 0.03 // by amps and volts; a two-lead meter is worse
	usualTurnOff = 0.02 // a string or an old coil
)

// turnBy moves the reading that the mean turn is taken from, where it was read without a ±.
func (b *Bench) turnBy(j *job.Job) bool {
	r, part := &j.Machine.MeanTurnMM, usualTurnOff
	if !r.Given() {
		r, part = &j.Old.LeadOhms, usualOhmsOff
	}
	if !r.Given() || r.PlusMinus > 0 || r.Origin.Weak() || part == usualOhmsOff && !b.turn.old.Known() {
		return false
	}
	r.Value *= 1 + part
	return true
}

// shifted is every bench that one error at a time makes of this one.
func (b *Bench) shifted() []shift {
	list := b.mistakes()
	shifts := make([]shift, len(list))
	parallel.Each(len(list), func(k int) { shifts[k] = shift{bench: b.mistaken(&list[k]), only: -1, sameCoils: !list[k].coils()} })
	return shifts
}

// mistaken is the bench with an error applied. The slot is kept if it is the same, and the old
// winding's joint fit is kept in any case.
func (b *Bench) mistaken(m *mistake) *Bench {
	j := m.job
	if j == nil {
		j = b.job
	}
	known := b.stillGood(j)
	if known.held = m.held; known.held == nil && b.fit.ok {
		known.held = b.fit
	}
	if !m.coils() && m.part != "Field" {
		known.magnets = b.magnets
	}
	other := prepare(j, m.off, known)
	if m.after != nil {
		m.after(other)
	}
	return other
}

// spread gives a winding's figures that need no running their ±: again recomputes it on each of n
// shifted benches into then.
func (o *TrialOutcome) spread(n int, then *TrialOutcome, again func(k int, then *TrialOutcome)) {
	follow(o, n, then, again, followedOfTrial, (*Output).at)
}

// spreadRunning gives the amps and watts of the usual condition their ±, and those of other conditions
// in which the drive holds the speed, from its speed there at the winding's present temperature. runs
// are the winding on each shifted bench, nil where it does not run; slope is that of the usual condition
// (slopeAt).
func (o *TrialOutcome) spreadRunning(runs []*charger, shifts []shift, slope float64, then *TrialOutcome) {
	if at := o.in(usual); at == nil || at.RPM == 0 {
		return
	}
	no := quantity.Missing("needs the speeds")
	list := make([]Operating, 0, conditionCount)
	follow(o, len(runs), then, func(k int, then *TrialOutcome) {
		if runs[k] == nil {
			then.readOperating(nil, quantity.Derived, no, no)
			return
		}
		then.readOperating(o.repeated(list, &shifts[k].bench.drive, runs[k], slope), quantity.Derived, no, no)
	}, rerunOfTrial, (*Output).at)
}

// repeated is where a trial runs on a shifted bench, in the conditions that are worth the time. A drive
// that holds the speed goes on holding it: that its power runs out is no tolerance.
func (o *TrialOutcome) repeated(list []Operating, s *driveSide, r *charger, slope float64) []Operating {
	first := o.in(usual)
	list = append(list, again(first, s, r, slope))
	for i := range o.Operating {
		at := &o.Operating[i]
		switch {
		case at == first:
		case at.RPM == first.RPM:
			list = append(list, Operating{Meeting: Meeting{Condition: at.Condition}, RunPoint: list[0].RunPoint})
		case s.holds(at):
			list = append(list, again(at, s, r, 0)) // at its speed
		}
	}
	return list
}

// again is one condition of a trial on a shifted bench; slope as in nudged.
func again(at *Operating, s *driveSide, r *charger, slope float64) Operating {
	o := Operating{Meeting: Meeting{Condition: at.Condition}}
	c := &s.conditions[indexOf(at.Condition)]
	if s.holds(at) {
		o.RunPoint = r.at(c.asked, at.WindingC)
	} else {
		o.RunPoint = r.nudged(s.given(c.X.Value), at.RPM, c.asked, at.WindingC, slope)
	}
	return o
}

// holds reports whether the drive holds the speed of a condition in which a trial runs.
func (s *driveSide) holds(at *Operating) bool {
	return s.conditions[indexOf(at.Condition)].asked > 0 && !at.HeldBack
}

// keptWarm is a trial on a bench with its temperature fixed at a given value; nil where it does not
// run.
func (b *bed) keptWarm(w *candidate, o *TrialOutcome) *charger {
	r, _ := b.chargerOf(w, o)
	if r != nil {
		r.air = &thermal{ambientC: b.air.ambientC}
	}
	return r
}

// follow recomputes something on each of n shifted benches and adds the changes as squares; then is
// memory for one result.
func follow[T any](now *T, n int, then *T, again func(k int, then *T), list []*Output, at func(*Output, *T) *quantity.Figure) {
	type pair struct {
		now, then *quantity.Figure
		sum       float64
	}
	pairs := make([]pair, len(list))
	for i, o := range list {
		pairs[i] = pair{now: at(o, now), then: at(o, then)}
	}
	for k := range n {
		again(k, then)
		for i := range pairs {
			if p := &pairs[i]; p.now.Known() && p.then.Known() {
				p.sum += sq(p.then.Value - p.now.Value)
			}
		}
	}
	for i := range pairs {
		f := pairs[i].now
		if f.PlusMinus = math.Sqrt(pairs[i].sum); f.PlusMinus < noise*math.Abs(f.Value) {
			f.PlusMinus = 0 // changes that cancel leave rounding only
		}
	}
}
