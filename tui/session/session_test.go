package session

import (
	"testing"

	"slotwright/winding/job"
	"slotwright/winding/layout"
	"slotwright/winding/quantity"
	"slotwright/wiretable"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSingleSteps(t *testing.T) {
	s := NewExample()
	s.StepTurns(1)
	assert.Equal(t, 18.0, s.Job().Trials[0].Turns.Value)
	s.StepTurns(-100)
	assert.Equal(t, 1.0, s.Job().Trials[0].Turns.Value, "never below one")
	s.StepWire(1)
	assert.Equal(t, "14 AWG", s.Job().Trials[0].Gauge.String())
	s.StepWire(-1)
	s.StepWire(-1)
	assert.Equal(t, "16 AWG", s.Job().Trials[0].Gauge.String())
	s.Wires = wiretable.SWG
	s.StepWire(1)
	assert.Equal(t, "18 SWG", s.Job().Trials[0].Gauge.String(), "another system begins with its nearest size: 16 AWG is 1.29 mm, 18 SWG 1.22")
	s.StepStrands(2)
	assert.Equal(t, 3.0, s.Job().Trials[0].Strands.Value)
	s.StepArea(1)
	text, _, _ := s.Document().Typed("slot.area")
	assert.Equal(t, "72.5 ±2", text, "what it may be off by stays")
	assert.Contains(t, s.Document().Text(), "# counted on squared paper")
	s.StepFill(-3)
	assert.InDelta(t, 0.67, s.Job().Slot.FillLimit.Value, 1e-12)
	s.FlipConnection()
	assert.Equal(t, layout.Delta, s.Job().Trials[0].Connection)
	s.StepCircuits()
	assert.Equal(t, 2.0, s.Job().Trials[0].Circuits.Value, "the next that the layout allows")
	s.StepCircuits()
	s.StepCircuits()
	s.StepCircuits()
	assert.Equal(t, 1.0, s.Job().Trials[0].Circuits.Value, "and round again")
}

// Coils of unequal turns each gain or lose one, none below one.
func TestStepsOfUnequalCoils(t *testing.T) {
	s := NewExample()
	s.Edit(s.Document().Set("trial[0].coil_turns", "9, 8, 1", s.Units))
	assert.Equal(t, []int{9, 8, 1}, s.Job().Trials[0].CoilTurns)
	turns := s.Job().Trials[0].Turns
	s.StepTurns(1)
	assert.Equal(t, []int{10, 9, 2}, s.Job().Trials[0].CoilTurns)
	s.StepTurns(-1)
	s.StepTurns(-1)
	assert.Equal(t, []int{8, 7, 1}, s.Job().Trials[0].CoilTurns)
	assert.Equal(t, turns, s.Job().Trials[0].Turns, "they are not turned into equal ones")
}

// An area is stepped in the unit it was typed in; an empty one in the preferred unit.
func TestStepsOfTheAreaKeepItsUnit(t *testing.T) {
	for _, liked := range []quantity.Choice{{}, {Inch: true}} {
		s := NewExample()
		s.Units = quantity.Choice{Inch: true}
		s.Type("slot.area", "")
		s.Type("slot.area", "~0.11")
		s.Units = liked
		s.StepArea(1)
		text, u, _ := s.Document().Typed("slot.area")
		assert.Equal(t, "~0.115", text, "in² typed, still a guess")
		assert.Equal(t, "in²", u.Name)
		assert.InDelta(t, 0.115*25.4*25.4, s.Job().Slot.AreaMM2.Value, 1e-9)
	}
	s := NewExample()
	s.Type("slot.area", "")
	s.Units.Inch = true
	s.StepArea(1)
	_, u, _ := s.Document().Typed("slot.area")
	assert.Equal(t, "in²", u.Name)
	s.Type("slot.shape", "round")
	before := s.Document().Text()
	s.StepArea(1)
	assert.Equal(t, before, s.Document().Text())
	assert.Contains(t, s.Message().Text, "give the depth")
	s.Units = quantity.Choice{}
	for path, text := range map[string]string{"slot.depth": "~14.0 ±0.3", "slot.top": "5", "slot.bottom": "6"} {
		s.Type(path, text)
	}
	require.True(t, s.Outcome().Machine.GrossMM2.Known(), s.Outcome().Machine.GrossMM2.Why)
	area := s.Outcome().Machine.GrossMM2.Value
	s.StepArea(-1)
	text, _, _ := s.Document().Typed("slot.depth")
	assert.Equal(t, "~13.5 ±0.3", text)
	assert.Less(t, s.Outcome().Machine.GrossMM2.Value, area)
}

func TestTrialsAndReference(t *testing.T) {
	s := NewExample()
	s.Trial = 1
	s.AddTrial()
	assert.Equal(t, 3, s.Trial)
	assert.Equal(t, "D", s.Outcome().Trials[3].Name)
	assert.Equal(t, s.Job().Trials[1].Gauge, s.Job().Trials[3].Gauge)
	assert.NotEqual(t, s.Job().Trials[2].Gauge, s.Job().Trials[3].Gauge)
	s.AddTrial()
	assert.Len(t, s.Outcome().Trials, 4)
	assert.Contains(t, s.Message().Text, "4 trials already")
	s.MakeReference()
	assert.Equal(t, 3, s.Outcome().Reference)
	s.RemoveTrial()
	assert.Len(t, s.Outcome().Trials, 3)
	assert.Less(t, s.Trial, 3)
	s.Undo()
	assert.Len(t, s.Outcome().Trials, 4)
}

// Letters typed in succession into a field are one step of undo; another field or a step in between
// begins a new one.
func TestUndoMergesTyping(t *testing.T) {
	s := NewExample()
	before := s.Document().Text()
	for _, text := range []string{"8", "85", "85.5"} {
		s.Type("machine.bore", text)
	}
	s.Type("machine.stack", "40")
	assert.Equal(t, 85.5, s.Job().Machine.BoreMM.Value)
	s.Undo()
	assert.Equal(t, 85.5, s.Job().Machine.BoreMM.Value)
	assert.Equal(t, 33.0, s.Job().Machine.StackMM.Value)
	s.Undo()
	assert.Equal(t, before, s.Document().Text())
	s.Redo()
	s.Redo()
	assert.Equal(t, 40.0, s.Job().Machine.StackMM.Value)
	s.Redo()
	assert.Equal(t, "nothing to redo", s.Message().Text)
	assert.True(t, s.Dirty())
}

// An unreadable value stays as typed, and the rest still works.
func TestWrongValuesStay(t *testing.T) {
	s := NewExample()
	s.Type("trial[1].turns", "abc")
	assert.Contains(t, s.Document().Text(), `turns = "abc"`)
	assert.Len(t, s.Problems(), 1)
	assert.False(t, s.Outcome().Trials[1].LinePerRPM.Known())
	assert.True(t, s.Outcome().Trials[0].LinePerRPM.Known())
}

func TestNumbers(t *testing.T) {
	s := NewExample()
	s.Units = quantity.Choice{Inch: true, Fahrenheit: true}
	assert.Equal(t, "1.00 in", s.Text(quantity.Figure{Value: 25.4, Origin: quantity.Derived}, quantity.Millimetres, 3))
	assert.Equal(t, "212 °F", s.Text(quantity.Figure{Value: 100, Origin: quantity.Derived}, quantity.Celsius, 3))
	assert.Equal(t, Dash, s.Text(quantity.Figure{}, quantity.Celsius, 3))
}

func TestSaveKeepsTheSessionClean(t *testing.T) {
	s := NewExample()
	s.StepTurns(1)
	path := t.TempDir() + "/a.toml"
	assert.NoError(t, s.Save(path, 0))
	assert.False(t, s.Dirty())
	assert.False(t, s.Invented)
	assert.False(t, s.Outcome().Invented, "what is saved is the person's own job")
	s.StepTurns(1)
	assert.NoError(t, s.Save("", 0))
	d, _, err := job.Load(path)
	assert.NoError(t, err)
	assert.Equal(t, 19.0, d.Job().Trials[0].Turns.Value)
}

// Until somebody chooses, sizes are stepped in the standard the wire was typed in.
func TestSizesFollowTheWire(t *testing.T) {
	for typed, want := range map[string]struct {
		sizes wiretable.System
		next  string
	}{
		"1 mm":   {wiretable.IEC, "IEC 1.06 mm"},
		"1.01mm": {wiretable.IEC, "IEC 1 mm"}, // the nearest size first
		"18 SWG": {wiretable.SWG, "17 SWG"},
		"18 AWG": {wiretable.AWG, "17 AWG"},
	} {
		s := NewExample()
		s.Edit(s.Document().Set("trial[0].gauge", typed, s.Units))
		assert.Equal(t, want.sizes, s.Sizes(), typed)
		s.StepWire(1)
		assert.Equal(t, want.next, s.Job().Trials[0].Gauge.String(), typed)
		s.Wires = wiretable.AWG
		assert.Equal(t, wiretable.AWG, s.Sizes())
	}
}

// A wire typed with its strands sets both when accepted, in one step of undo; while it is being typed
// it stays as typed.
func TestStrandsTypedWithTheWire(t *testing.T) {
	s := NewExample()
	before := s.Document().Text()
	for _, typed := range []string{"5 ", "5 x 0", "5 x 0.6 mm"} {
		s.Type("trial[0].gauge", typed)
	}
	text, _, _ := s.Document().Typed("trial[0].gauge")
	assert.Equal(t, "5 x 0.6 mm", text)
	s.Settle()
	text, _, _ = s.Document().Typed("trial[0].gauge")
	assert.Equal(t, "0.6 mm", text)
	assert.Equal(t, 5.0, s.Job().Trials[0].Strands.Value)
	assert.Equal(t, "5 strands of 0.6 mm", s.Message().Text)
	s.Undo()
	assert.Equal(t, before, s.Document().Text())
}
