package session

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// With the slot kept full, thicker and thinner wire and strands adjust the turns, one step of undo
// each; with the lock off the turns stay.
func TestTheSlotIsKeptFull(t *testing.T) {
	s := NewExample()
	s.StepTurns(-5)
	s.FlipFull()
	full := func() {
		t.Helper()
		tr := s.Outcome().Trials[0]
		assert.Equal(t, tr.TurnsThatFit.Value, tr.Turns.Value)
	}
	full()
	wires := []string{s.Outcome().Trials[0].Wire}
	for _, step := range []func(){func() { s.StepWire(-1) }, func() { s.StepWire(-1) }, func() { s.StepWire(1) }, func() { s.StepStrands(1) }, s.SplitWire} {
		before := s.Document().Text()
		step()
		full()
		wires = append(wires, s.Outcome().Trials[0].Wire)
		s.Undo()
		assert.Equal(t, before, s.Document().Text(), "one step of undo")
		s.Redo()
	}
	assert.Equal(t, []string{"1 × 15 AWG", "1 × 16 AWG", "1 × 17 AWG", "1 × 16 AWG", "2 × 16 AWG", "4 × 19 AWG"}, wires)
	s.FlipFull()
	turns := s.Job().Trials[0].Turns
	s.StepWire(1)
	assert.Equal(t, turns, s.Job().Trials[0].Turns)
	s.FillTurns()
	full()
}

// The same metal in more strands is the same metal, within a tenth, and turns stay.
func TestSplitWire(t *testing.T) {
	s := NewExample()
	before := s.Outcome().Trials[0]
	s.SplitWire()
	now := s.Outcome().Trials[0]
	assert.Equal(t, "2 × 18 AWG", now.Wire)
	assert.Equal(t, before.Turns.Value, now.Turns.Value)
	assert.InEpsilon(t, before.ConductorAreaMM2.Value, now.ConductorAreaMM2.Value, 0.02)
	assert.Contains(t, s.Message().Text, "% of metal")
	s.Type("trial[0].gauge", "40 AWG")
	s.SplitWire()
}

// If the turns that fit are unknown, that is reported and nothing changed.
func TestNothingToFill(t *testing.T) {
	s := NewExample()
	s.Type("slot.area", "")
	text := s.Document().Text()
	s.FillTurns()
	assert.Equal(t, text, s.Document().Text())
	assert.Contains(t, s.Message().Text, "needs the slot's area")
	s.Type("slot.area", "3")
	s.FillTurns()
	assert.Contains(t, s.Message().Text, "not one turn")
}

// A rung is applied to the chosen trial, or becomes a new one.
func TestTakeRung(t *testing.T) {
	s := NewExample()
	r := s.Bench().Ladder(0)[4]
	s.TakeRung(r, false)
	assert.Equal(t, r.Wire, s.Outcome().Trials[0].Wire)
	assert.Equal(t, r.Turns.Value, s.Outcome().Trials[0].Turns.Value)
	assert.InDelta(t, r.AmpsUsual.Value, s.Outcome().Trials[0].AmpsUsual.Value, 1e-9)
	s.Undo()
	assert.Len(t, s.Outcome().Trials, 3)
	s.TakeRung(r, true)
	assert.Len(t, s.Outcome().Trials, 4)
	assert.Equal(t, 3, s.Trial)
	assert.Equal(t, r.Wire, s.Outcome().Trials[3].Wire)
	s.TakeRung(r, true)
	assert.Contains(t, s.Message().Text, "4 trials already")
	s.Undo()
	assert.Len(t, s.Outcome().Trials, 3, "one step of undo")
}

// Work is done once for its subject; an answer to an outdated question is dropped, and a panic becomes
// a message.
func TestWorkBesideTheKeys(t *testing.T) {
	s, runs := NewExample(), 0
	run := func() {
		if cmd := s.Working(); cmd != nil {
			msg := cmd()
			require.IsType(t, Done{}, msg)
			s.Take(msg.(Done))
		}
	}
	ask := func(about string) { s.Later("a", about, func() any { runs++; return about }) }
	ask("x")
	ask("x")
	_, done, _ := s.Answer("a", "x")
	assert.False(t, done)
	run()
	v, done, _ := s.Answer("a", "x")
	assert.True(t, done)
	assert.Equal(t, "x", v)
	assert.Equal(t, 1, runs)
	ask("y")
	late := s.Working()
	ask("z")
	s.Take(late().(Done))
	_, done, _ = s.Answer("a", "y")
	assert.False(t, done, "nobody asks for y any more")
	run()
	_, done, _ = s.Answer("a", "z")
	assert.True(t, done)
	s.Later("b", "x", func() any { panic("no") })
	run()
	_, done, wrong := s.Answer("b", "x")
	assert.True(t, done)
	assert.Contains(t, wrong, "no")
	assert.Nil(t, s.Working())
}
