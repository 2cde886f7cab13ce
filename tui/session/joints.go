package session

import (
	"fmt"
	"slices"
	"strconv"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"
)

// Rejoined is the trial whose own coils do better with other connections, as worked out, the chosen one
// before the others; ok is false where there is none, or where each such is a trial already.
func (s *Session) Rejoined() (trial int, to winding.Joints, ok bool) {
	list := s.outcome.Trials
	better := func(i int) bool { return i < len(list) && list[i].Joints != nil && !s.isTrial(i, *list[i].Joints) }
	trial = s.Trial
	for i := 0; !better(trial) && i < len(list); i++ {
		trial = i
	}
	if !better(trial) {
		return 0, to, false
	}
	return trial, *list[trial].Joints, true
}

// isTrial reports whether a trial's coils with given connections are a trial of the job already.
func (s *Session) isTrial(i int, to winding.Joints) bool {
	list := s.Job().Trials
	if i >= len(list) {
		return true
	}
	own := list[i]
	return slices.ContainsFunc(list, func(t job.Trial) bool {
		return t.Connection == to.Connection && t.Circuits.Or(1) == float64(to.Circuits) && t.Turns.Value == own.Turns.Value &&
			slices.Equal(t.CoilTurns, own.CoilTurns) && t.Bundle().String() == own.Bundle().String() && t.Span == own.Span && t.Kind == own.Kind
	})
}

// JointsText says joints in a few words: "delta, 2 circuits".
func JointsText(to winding.Joints) string {
	words := to.Connection.String()
	if to.Circuits != 1 {
		words += ", " + text.Count(to.Circuits, "circuit")
	}
	return words
}

// TakeJoints makes a new trial with the better connections, see [Session.Rejoined].
func (s *Session) TakeJoints() {
	from, to, ok := s.Rejoined()
	if !ok {
		s.Say("no trial would do better by other joints alone")
		return
	}
	name := s.outcome.Trials[from].Name
	if s.takes(from, true, [][2]string{{"connection", to.Connection.String()}, {"circuits", strconv.Itoa(to.Circuits)}}) {
		s.Say(fmt.Sprintf("trial %s: the coils of %s in %s; ctrl+z takes it back", s.outcome.Trials[s.Trial].Name, name, JointsText(to)))
	}
}
