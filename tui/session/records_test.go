package session

import (
	"testing"

	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What was wound stays what it was when its trial is changed: the record stores the turns, or the wire
// with its strands, that it had taken from the trial. Its own values stay, and a record of another
// trial is left alone.
func TestARecordKeepsWhatWasWound(t *testing.T) {
	text := "format = 1\n[[trial]]\nname = \"A\"\nturns = 17\ngauge = \"15 AWG\"\nstrands = 2\n[[trial]]\nname = \"B\"\nturns = 21\ngauge = \"16 AWG\"\n" +
		"[[wound]]\ntrial = \"A\"\nlead_ohm = 0.4\n[[wound]]\ntrial = \"A\"\nturns = 16\n[[wound]]\ntrial = \"B\"\n"
	s := New(job.Parse(text), "", job.Mark{})
	s.Trial = 0
	s.StepTurns(1)
	require.Equal(t, 18, s.Job().Trials[0].Turns.Whole())
	r := s.Job().AsWound
	assert.Equal(t, 17, r[0].Turns.Whole())
	assert.True(t, r[0].Gauge.IsZero(), "the wire is still the trial's")
	assert.Equal(t, 16, r[1].Turns.Whole())
	assert.False(t, r[2].Turns.Given())
	assert.Equal(t, 17.0, s.Outcome().Wound[0].Turns.Value)

	s.Type("trial[0].gauge", "18 AWG")
	r = s.Job().AsWound
	assert.Equal(t, "15 AWG", r[0].Gauge.String())
	assert.Equal(t, 2, r[0].Strands.Whole())
	s.StepTurns(1)
	assert.Equal(t, 17, s.Job().AsWound[0].Turns.Whole(), "what it has it keeps")
	s.Undo()
	s.Undo()
	s.Undo()
	assert.Equal(t, text, s.Document().Text(), "one step of undo each")
}

// The same holds for its connection and layout, whatever its trial did or did not say of them.
func TestARecordKeepsHowItWasJoined(t *testing.T) {
	text := "format = 1\n[machine]\nslots = 36\npoles = 12\nlayers = 1\n[[trial]]\nname = \"A\"\nturns = 17\ngauge = \"15 AWG\"\n" +
		"[[wound]]\ntrial = \"A\"\nlead_ohm = 0.4\n[[wound]]\ntrial = \"A\"\nconnection = \"delta\"\n"
	s := New(job.Parse(text), "", job.Mark{})
	before := s.Outcome().Wound[0]
	s.Type("trial[0].connection", "delta")
	r := s.Job().AsWound
	assert.Equal(t, []string{"star", "delta"}, []string{r[0].Connection, r[1].Connection})
	s.Type("trial[0].circuits", "2")
	s.Type("trial[0].span", "2")
	r = s.Job().AsWound
	assert.Equal(t, []int{1, 3}, []int{r[0].Circuits.Whole(), r[0].Span.Whole()}, "of an empty span the pole pitch that held")
	assert.False(t, r[0].Turns.Given(), "the turns are still the trial's")
	assert.Equal(t, before, s.Outcome().Wound[0], "and is held against the same as before")
	s.Type("trial[0].layers", "2")
	s.Type("trial[0].kind", "concentric")
	r = s.Job().AsWound
	assert.Equal(t, []int{1, 1}, []int{r[0].Layers.Whole(), r[1].Layers.Whole()}, "the machine's, which held")
	assert.Equal(t, []string{"lap", "lap"}, []string{r[0].Kind, r[1].Kind})
	assert.Equal(t, before, s.Outcome().Wound[0])
	for range 5 {
		s.Undo()
	}
	assert.Equal(t, text, s.Document().Text())
}
