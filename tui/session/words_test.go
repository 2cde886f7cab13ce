package session

import (
	"testing"

	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Undo and redo name what they undid, as the screens name it.
func TestUndoSaysWhat(t *testing.T) {
	for _, c := range []struct {
		do           func(s *Session)
		undone, redo string
	}{
		{func(s *Session) { s.Choose(1); s.StepTurns(1) }, "B turns 22 → 21", "B turns 21 → 22"},
		{func(s *Session) { s.StepWire(1) }, "A wire 15 AWG → 14 AWG"[:7] + "14 AWG → 15 AWG", "A wire 15 AWG → 14 AWG"},
		{func(s *Session) { s.StepArea(1) }, "Slot area 72.5 ±2 mm² → 72 ±2 mm²", "Slot area 72 ±2 mm² → 72.5 ±2 mm²"},
		{func(s *Session) { s.FlipConnection() }, "A connection delta → nothing", "A connection nothing → delta"},
		{func(s *Session) { s.Full = true; s.StepWire(-1) }, "A turns 21 → 17, A wire 16 AWG → 15 AWG", "A turns 17 → 21, A wire 15 AWG → 16 AWG"},
		{func(s *Session) { s.AddTrial() }, "trial D is gone", "trial D is there"},
		{func(s *Session) { s.Choose(1); s.RemoveTrial() }, "trial B is there", "trial B is gone"},
		{func(s *Session) { s.Type("old.turns", "12") }, "Old winding: turns 12 → 11", "Old winding: turns 11 → 12"},
	} {
		s := NewExample()
		c.do(s)
		s.Undo()
		assert.Equal(t, "undone: "+c.undone+"; 0 more to undo", s.Message().Text)
		s.Redo()
		assert.Equal(t, "done again: "+c.redo, s.Message().Text)
	}
	s := NewExample()
	doc := s.Document()
	for _, path := range []string{"machine.bore", "machine.stack", "machine.slots", "machine.poles", "old.turns"} {
		doc = doc.Set(path, "6", s.Units)
	}
	s.Edit(doc)
	s.Undo()
	assert.Contains(t, s.Message().Text, ", 2 more; 0 more to undo")
}

// A problem is stated with the field's name and, for a unit, what to write on the screen; only one that
// is about no field gives its line in the file.
func TestProblemsNameTheirField(t *testing.T) {
	s := NewExample()
	s.Type("trial[1].strands", "many")
	s.Type("machine.bore", "85 kg")
	require.Len(t, s.Problems(), 2)
	assert.Contains(t, s.Problems()[0], "Diameter at the gap: read")
	assert.Contains(t, s.Problems()[0], "; give it in mm or in or cm")
	assert.Contains(t, s.Problems()[1], "B strands: read \"many\"")
	for _, text := range s.Problems() {
		assert.NotRegexp(t, `[a-z]\.[a-z]|\[\d|_mm|the file`, text)
	}
	broken := New(job.Parse("format = 1\n[nonsense]\nx = 1\n"), "", job.Mark{})
	require.NotEmpty(t, broken.Problems())
	assert.Contains(t, broken.Problems()[0], "line 2 of the file: ")
}
