package machine

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// work does the pending work, as the program would, and delivers the answers.
func work(t *testing.T, v *View, s *session.Session) {
	t.Helper()
	for range 2 { // an answer may make the screen ask for more
		tuitest.Work(t, s)
		v.SetSize(s, v.at)
	}
}

// onBench is a job in the folder of testdata/shelf, its form on a field.
func onBench(t *testing.T, path string) (*session.Session, *View) {
	t.Helper()
	file := filepath.Join("..", "..", "testdata", "shelf", "planned.toml")
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	s, v := session.New(job.Parse(string(text)), file, job.Mark{}), NewMachine()
	tuitest.Draw(t, v, s, 80, 21)
	require.True(t, v.GoTo(s, path))
	return s, v
}

// This bench's value for an empty field is offered at it, with the jobs it is from, once the folder has
// been read; only its key inserts it, as a guess, in one step of undo.
func TestWhatTheBenchHasIsOffered(t *testing.T) {
	s, v := onBench(t, "slot.fill_limit")
	before := s.Document().Text()
	assert.NotContains(t, tuitest.Draw(t, v, s, 80, 21), "f9", "not before it was read")
	work(t, v, s)
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Regexp(t, `Fill limit .* f9 takes ~0\.7`, frame)
	assert.Contains(t, tuitest.Words(frame), "(your last 2 jobs). f9 takes it, as a guess.")
	assert.Equal(t, before, s.Document().Text(), "nothing is put in by itself")
	tuitest.Press(t, v, s, 80, 21, "f9")
	r := s.Job().Slot.FillLimit
	assert.InDelta(t, 0.7, r.Value, 0.03)
	assert.Positive(t, r.PlusMinus)
	assert.Equal(t, "guessed", r.Origin.String())
	assert.NotContains(t, tuitest.Draw(t, v, s, 80, 21), "f9 takes", "the field is not empty now")
	assert.False(t, v.Key(s, tuitest.KeyMsg("f9")))
	s.Undo()
	assert.Equal(t, before, s.Document().Text())
	work(t, v, s)
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "f9 takes")
	assert.Empty(t, tuitest.Clashes(v.Bindings(s)))
}

// Nothing is offered for a field that has a value, nor for one without records.
func TestOnlyEmptyFieldsAreOffered(t *testing.T) {
	for _, path := range []string{"machine.mean_turn", "machine.rise", "machine.bore", "machine.outside"} {
		s, v := onBench(t, path)
		work(t, v, s)
		assert.NotContains(t, tuitest.Draw(t, v, s, 80, 21), "f9", path)
	}
	s, v := onBench(t, "machine.mean_turn")
	tuitest.Press(t, v, s, 80, 21, "ctrl+k")
	work(t, v, s)
	assert.Regexp(t, `This bench has: Mean turn ~[0-9]+.* mm \(your last 3 jobs\)`, tuitest.Words(tuitest.Draw(t, v, s, 80, 21)))
	s.Units.Inch = true
	tuitest.Press(t, v, s, 80, 21, "f9")
	assert.InDelta(t, 185, s.Job().Machine.MeanTurnMM.Value, 30, "it is in mm, whatever is liked")
}

// The dim text of a battery's volts begins with the figure that is used, and disappears when a value is
// typed.
func TestVoltsOfABatteryAreShownBeforeTheirSource(t *testing.T) {
	s := session.New(job.Parse("format = 1\n[battery]\ncells = 12\n"), "", job.Mark{})
	ghosts := func() map[string]string {
		list := map[string]string{}
		for _, r := range NewDrive().rows(s) {
			list[r.ID] = r.Ghost
		}
		return list
	}
	m := s.Outcome().Machine
	for path, c := range map[string]struct {
		v     float64
		words string
	}{
		"battery.rest": {m.RestVolts.Value, "by chemistry"}, "battery.charging": {m.ChargingVolts.Value, "half way"},
		"battery.absorption": {m.AbsorptionVolts.Value, "by chemistry"}, "battery.float": {m.FloatVolts.Value, "by chemistry"},
	} {
		number, words, _ := strings.Cut(ghosts()[path], " ")
		v, err := strconv.ParseFloat(number, 64)
		require.NoError(t, err, path)
		assert.InDelta(t, c.v, v, 0.05, path)
		assert.Equal(t, c.words, words, path)
	}
	// 12 cells of 100 Ah flooded: 0.2 A an Ah, and 0.08 Ω·Ah a cell; twice the Ah, twice and half.
	assert.Equal(t, "20 by Ah, kind", ghosts()["battery.charge_limit"])
	assert.Equal(t, "0.0096 by Ah, kind", ghosts()["battery.inner"])
	assert.Equal(t, "0.75 by kind", ghosts()["battery.diode_drop"])
	s.Type("battery.capacity", "200")
	assert.Equal(t, "40 by Ah, kind", ghosts()["battery.charge_limit"])
	assert.Equal(t, "0.0048 by Ah, kind", ghosts()["battery.inner"])
	s.Type("battery.load", "bus")
	assert.NotContains(t, ghosts()["battery.rest"], "0 by")
}

// The speed at which the drive's power holds is shown behind it, follows Usual, and is the one computed
// with. A drive without a usual speed shows none.
func TestPowerStandsWithItsSpeed(t *testing.T) {
	s := session.New(job.Parse("format = 1\n[drive]\nkind = \"water\"\nusual_rpm = 60\npower_w = 320\n"), "", job.Mark{})
	note := func() string {
		for _, r := range NewDrive().rows(s) {
			if r.ID == "drive.power" {
				return r.Note
			}
		}
		return "no such field"
	}
	for _, speed := range []string{"60", "45", "82.5"} {
		s.Type("drive.usual", speed)
		assert.Equal(t, "at "+speed+" rpm", note())
		j := s.Job()
		law, ok := winding.DriveLawOf(&j)
		require.True(t, ok)
		assert.Contains(t, law.Words, "320 W, at "+speed+" rpm", "the watts move with it")
	}
	s.Type("drive.usual", "")
	assert.Empty(t, note())
}
