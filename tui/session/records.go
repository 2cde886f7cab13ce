package session

import (
	"cmp"
	"fmt"
	"slices"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// A record takes from its trial the turns, the wire and the connections that it does not give itself.
// What was wound does not change when the trial does: before an edit changes what a record takes from
// its trial, the old value is written into the record.

// windingFields are what a record may take from its trial, in groups: a record that gives its wire
// gives all of it.
var windingFields = [][]string{{"turns", "coil_turns"}, {"gauge", "strands", "also_gauge", "also_strands", "build", "metal"}}

// laid is how the coils of a trial lie, given by the trial or by the machine.
type laid struct {
	span, layers int
	kind         string
}

// keepRecords is the document after an edit, with the previous values that its records took from their
// trials; lay is how a trial was laid before.
func keepRecords(before, after job.Document, lay func(trial int) laid) job.Document {
	n := before.Count("wound")
	if n == 0 || n != after.Count("wound") {
		return after
	}
	was, is := before.Job(), after.Job()
	for i := range was.AsWound {
		at := trialOf(&was, was.AsWound[i].Trial)
		if at < 0 || at >= len(is.Trials) || is.Trials[at].Name != was.Trials[at].Name || was.AsWound[i].Trial != is.AsWound[i].Trial {
			continue
		}
		for _, group := range windingFields {
			after = keepGroup(before, after, at, i, group)
		}
		old, now := joins(&was.Trials[at], lay(at)), joins(&is.Trials[at], lay(at))
		for _, name := range []string{"connection", "circuits", "span", "layers", "kind"} {
			if old[name] != "" && now[name] != old[name] {
				after = keepJoin(after, job.PathOf("wound", i, name), old[name])
			}
		}
	}
	return after
}

// joins is a trial's connections and layout, by the fields of a record; unsaid is the layout of a trial
// that does not give it.
func joins(t *job.Trial, unsaid laid) map[string]string {
	list := map[string]string{"connection": t.Connection.String(), "circuits": fmt.Sprint(max(1, t.Circuits.Whole())), "kind": cmp.Or(t.Kind, unsaid.kind)}
	if n := cmp.Or(t.Span.Whole(), unsaid.span); n > 0 {
		list["span"] = fmt.Sprint(n)
	}
	if n := cmp.Or(t.Layers.Whole(), unsaid.layers); n > 0 {
		list["layers"] = fmt.Sprint(n)
	}
	return list
}

// keepJoin writes into a record its trial's former connections, where the record does not give them.
func keepJoin(after job.Document, path, was string) job.Document {
	if _, _, own := after.Typed(path); own {
		return after
	}
	if kept := after.Set(path, was, quantity.Choice{}); kept.Refused() == "" {
		return kept
	}
	return after
}

// trialOf is the trial that a record is of, the first where it names none; -1 without one.
func trialOf(j *job.Job, name string) int {
	return slices.IndexFunc(j.Trials, func(t job.Trial) bool { return name == "" || t.Name == name })
}

// keepGroup writes into a record its trial's former values of a group, where the edit changed them and
// the record does not give them.
func keepGroup(before, after job.Document, trial, record int, group []string) job.Document {
	changed := false
	for _, name := range group {
		old, _, _ := before.Typed(job.PathOf("trial", trial, name))
		now, _, _ := after.Typed(job.PathOf("trial", trial, name))
		_, _, own := after.Typed(job.PathOf("wound", record, name))
		if own && name == group[0] {
			return after
		}
		changed = changed || old != now
	}
	if !changed {
		return after
	}
	kept := after
	for _, name := range group {
		text, _, given := before.Typed(job.PathOf("trial", trial, name))
		path := job.PathOf("wound", record, name)
		if _, _, own := kept.Typed(path); given && !own && text != "" {
			kept = kept.Set(path, text, quantity.Choice{})
		}
	}
	if kept.Refused() != "" {
		return after
	}
	return kept
}
