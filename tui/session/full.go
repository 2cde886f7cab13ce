package session

import (
	"fmt"
	"strconv"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/wiretable"
)

// The steps in which turns and wire change together, so that the slot stays full: thick and few, thin
// and many.

// FlipFull switches keeping the slot full on or off. It affects how the keys step, and is not part of
// the job.
func (s *Session) FlipFull() {
	s.Full = !s.Full
	if !s.Full {
		s.Say("turns stay as they are when the wire changes")
		return
	}
	s.Say("the slot is kept full: thicker and thinner wire take their turns with them")
	s.FillTurns()
}

// FillTurns winds as many turns as fit on every coil of the chosen trial.
func (s *Session) FillTurns() {
	t, ok := s.trial()
	if !ok {
		return
	}
	if doc, ok := s.filled(s.doc, t); ok {
		s.Edit(doc)
	}
}

// SplitWire winds the same metal in twice the strands of a thinner wire.
func (s *Session) SplitWire() {
	t, ok := s.trial()
	if !ok {
		return
	}
	thin, n, ok := winding.Split(t)
	if !ok {
		s.Say("no thinner size of this standard makes the same metal in twice the strands")
		return
	}
	before := t.Bundle().AreaMM2(t.Build)
	s.wind(func(t job.Trial) (wiretable.Gauge, int) { return thin, n })
	if now, ok := s.trial(); ok {
		s.Say(fmt.Sprintf("%s: %+.0f %% of metal", now.Bundle(), 100*(now.Bundle().AreaMM2(now.Build)/before-1)))
	}
}

// setGauge is another wire for the chosen trial, with its turns where the slot is kept full.
func (s *Session) setGauge(g wiretable.Gauge) {
	s.wind(func(t job.Trial) (wiretable.Gauge, int) { return g, 0 })
}

// wind changes wire and strands (0: as they are) of the chosen trial in one step of undo.
func (s *Session) wind(to func(job.Trial) (wiretable.Gauge, int)) {
	t, ok := s.trial()
	if !ok {
		return
	}
	g, n := to(t)
	doc := s.doc.Set(trialPath(s.Trial, "gauge"), g.String(), s.Units)
	if n > 0 && doc.Refused() == "" {
		doc = doc.Set(trialPath(s.Trial, "strands"), strconv.Itoa(n), s.Units)
	}
	if s.Full && doc.Refused() == "" {
		if full, ok := s.filled(doc, doc.Job().Trials[s.Trial]); ok {
			doc = full
		}
	}
	s.Edit(doc)
}

// filled is a document in which the chosen trial has as many turns as fit, or says why that is not
// known.
func (s *Session) filled(doc job.Document, t job.Trial) (job.Document, bool) {
	if len(t.CoilTurns) > 0 {
		s.Say("coils of unequal turns are filled by hand")
		return doc, false
	}
	fit := s.bench.TurnsThatFit(t)
	switch {
	case !fit.Known():
		s.Say("how many turns fit cannot be told: " + fit.Why)
		return doc, false
	case fit.Value < 1:
		s.Say("not one turn of this wire fits")
		return doc, false
	case fit.Value == t.Turns.Value:
		return doc, true
	}
	return doc.Set(trialPath(s.Trial, "turns"), strconv.Itoa(int(fit.Value)), s.Units), true
}

// TakeRung puts a rung of the ladder into the chosen trial, in one step of undo; asNew makes
// a new trial of it.
func (s *Session) TakeRung(r winding.Rung, asNew bool) {
	if s.takes(s.Trial, asNew, [][2]string{
		{"gauge", r.Trial.Gauge.String()}, {"turns", strconv.Itoa(r.Trial.Turns.Whole())}, {"strands", strconv.Itoa(int(r.Trial.Strands.Or(1)))},
	}) {
		s.Say(fmt.Sprintf("trial %s: %d turns of %s", s.outcome.Trials[s.Trial].Name, r.Trial.Turns.Whole(), r.Trial.Bundle()))
	}
}

// takes sets fields of a trial, or of a new copy of it, in one step of undo, and chooses it. It reports
// whether that was done.
func (s *Session) takes(trial int, asNew bool, fields [][2]string) bool {
	at, doc := trial, s.doc
	if asNew {
		if at = len(s.outcome.Trials); at >= job.MaxTrials {
			s.sayFull()
			return false
		}
		doc = doc.Add("trial", trial)
		doc = doc.Set(trialPath(at, "name"), s.freeName(), s.Units)
	}
	for _, set := range fields {
		if doc.Refused() == "" {
			doc = doc.Set(trialPath(at, set[0]), set[1], s.Units)
		}
	}
	if s.Edit(doc); doc.Refused() != "" {
		return false
	}
	s.Trial = at
	return true
}
