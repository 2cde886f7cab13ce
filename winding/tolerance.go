package winding

import (
	"math"
	"reflect"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// # How far a figure may be off
//
// Each reading that was typed with a tolerance is moved by it, one at a time, everything
// that needs no running is worked out again, and the changes of each figure are added as
// squares: the usual law for independent small errors (Guide to the Expression of
// Uncertainty in Measurement, JCGM 100:2008, 5.1.2, with sensitivities by difference). The
// flux of magnets is moved by its own ±15 % in the same way. It is first order: a
// tolerance that changes a whole number of turns, or takes a figure out of its range, is
// told by what it does at its end only.
//
// Cost: one Prepare and one Static a trial for each tolerance, a tenth of a millisecond.

var readingType = reflect.TypeFor[quantity.Reading]()

// tolerances finds the readings of a job that have one, as paths of field indexes.
func tolerances(v reflect.Value, path []int, found *[][]int) {
	switch {
	case v.Type() == readingType:
		if r := v.Interface().(quantity.Reading); r.Given() && r.PlusMinus > 0 {
			*found = append(*found, append([]int{}, path...))
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				tolerances(v.Field(i), append(path, i), found)
			}
		}
	case v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Struct:
		for i := range v.Len() {
			tolerances(v.Index(i), append(path, i), found)
		}
	}
}

// moved is the job with one reading moved by its tolerance; the job itself stays.
func moved(j job.Job, path []int) job.Job {
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
	r := at.Interface().(quantity.Reading)
	r.Value += r.PlusMinus
	at.Set(reflect.ValueOf(r))
	return j
}

// followed is the figures of a table that tolerances are followed to.
func followed(table []Output) []*Output {
	var list []*Output
	for i := range table {
		if table[i].Spread == Followed {
			list = append(list, &table[i])
		}
	}
	return list
}

var (
	followedOfTrial   = followed(trialOutputs)
	followedOfMachine = followed(machineOutputs)
)

// addTolerances gives the figures of the trials and of the old winding their ±.
func (b *Bench) addTolerances(o *Outcome) {
	var paths [][]int
	tolerances(reflect.ValueOf(b.job), nil, &paths)
	var others []*Bench
	for _, path := range paths {
		others = append(others, Prepare(moved(b.job, path)))
	}
	if b.flux.perTurn.PlusMinus > 0 {
		others = append(others, prepare(b.job, 1))
	}
	if len(others) == 0 {
		return
	}
	for i := range o.Trials {
		follow(&o.Trials[i], others, func(other *Bench) TrialOutcome { return other.Static(other.job.Trials[i]) }, followedOfTrial, (*Output).at)
	}
	if o.Old != nil {
		follow(o.Old, others, func(other *Bench) TrialOutcome { return other.static(&other.old.candidate) }, followedOfTrial, (*Output).at)
	}
	follow(&o.Machine, others, (*Bench).machineFigures, followedOfMachine, (*Output).atMachine)
}

// follow works out again what the moved jobs give, and adds the changes up as squares.
func follow[T any](now *T, others []*Bench, again func(*Bench) T, list []*Output, at func(*Output, *T) *quantity.Figure) {
	sums := make([]float64, len(list))
	for _, other := range others {
		then := again(other)
		for i, o := range list {
			if now, then := at(o, now), at(o, &then); now.Known() && then.Known() {
				sums[i] += sq(then.Value - now.Value)
			}
		}
	}
	for i, o := range list {
		at(o, now).PlusMinus = math.Sqrt(sums[i])
	}
}
