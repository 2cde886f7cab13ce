package layout

import (
	"strings"

	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/layout"
)

// sheet is everything the screen shows of one trial. It is gathered once for every change of the job or
// of the trial, not for every frame.
type sheet struct {
	bench *winding.Bench
	trial int

	plan *layout.Layout // nil without a layout
	why  string         // why there is none
	// name is the trial's; connected how its phases are joined.
	name      string
	several   bool // trials, not this one alone
	connected layout.Connection
	// turnsKnown is false when the trial has no turns: one is assumed for them.
	turnsKnown bool
	coils      map[int]layout.Coil // by number
	steps      []layout.Step
	wiring     layout.Wiring
	balance    layout.Balance
	notes      []layout.Note
	slotPair   layout.SlotPair
	spans      []winding.SpanChoice
	circuits   []winding.CircuitsChoice
	findings   []winding.Finding
}

// sheet is that of the chosen trial, with the walk brought into its range.
func (v *View) sheet(s *session.Session) *sheet {
	if v.kept.bench != s.Bench() || v.kept.trial != s.Trial {
		v.kept = gather(s)
	}
	d := &v.kept
	v.step = max(0, min(v.step, len(d.steps)-1))
	if d.plan != nil && v.phase > d.plan.Spec().Phases {
		v.phase = 0
	}
	if len(d.steps) > 0 && !v.shown(d.steps[v.step].Phase) {
		v.walk(d, -1, 1)
	}
	return d
}

// gather takes everything from the bench.
func gather(s *session.Session) sheet {
	d := sheet{bench: s.Bench(), trial: s.Trial}
	trials := s.Outcome().Trials
	if s.Trial < 0 || s.Trial >= len(trials) {
		d.why = "there is no trial yet; make one on the screen Trials"
		return d
	}
	o := trials[s.Trial]
	d.name, d.several = o.Name, len(trials) > 1
	d.connected = o.Connection
	d.turnsKnown = o.Turns.Known() || len(s.Job().Trials[s.Trial].CoilTurns) > 0
	d.plan, d.why = s.Bench().Plan(s.Trial)
	d.spans, d.circuits = s.Bench().Spans(s.Trial), s.Bench().CircuitsChoices(s.Trial)
	if d.plan == nil {
		return d
	}
	d.coils = map[int]layout.Coil{}
	for _, c := range d.plan.Coils() {
		d.coils[c.Number] = c
	}
	d.steps, d.wiring = d.plan.WindingOrder(), d.plan.Wiring(d.connected)
	d.balance, d.slotPair = d.plan.Balance(), d.plan.SlotPair()
	d.notes = winding.NotesOf(d.plan, s.Job().Field.Kind, d.connected)
	for _, f := range s.Outcome().Findings {
		if field, ours := strings.CutPrefix(f.Path, trialPath(s, "")); ours && layoutFields[field] {
			d.findings = append(d.findings, f)
		}
	}
	return d
}

// layoutFields are the fields of a trial that the layout depends on.
var layoutFields = map[string]bool{"span": true, "layers": true, "kind": true, "circuits": true}

// trialPath is a field of the chosen trial.
func trialPath(s *session.Session, field string) string {
	return job.PathOf("trial", s.Trial, field)
}

// current is the step of the walk and its coil; false without a layout.
func (v *View) current(d *sheet) (layout.Step, layout.Coil, bool) {
	if len(d.steps) == 0 {
		return layout.Step{}, layout.Coil{}, false
	}
	step := d.steps[v.step]
	return step, d.coils[step.Coil], true
}
