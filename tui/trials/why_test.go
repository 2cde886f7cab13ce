package trials

import (
	"os"
	"slices"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Why a figure is what it is: its meaning, its formula with the numbers filled in, its source, its
// measured inputs before guessed ones, defaults last; enter goes to the input.
func TestWhy(t *testing.T) {
	s, v := session.NewExample(), New()
	to(t, v, s, "cut_in_rpm")
	tuitest.Press(t, v, s, 120, 60, "y")
	frame := tuitest.Words(tuitest.Draw(t, v, s, 120, 60))
	for _, want := range []string{"Why: charging begins, trial A", "It is ~567 ±", "peak volts for each rpm", "= (12.60 V + 2 × 0.75 V) / ", "How sure May be off by ±",
		"default", "chosen", "measured", "Spin-up reading 1: "} {
		assert.Contains(t, frame, want)
	}
	tuitest.Press(t, v, s, 120, 60, "esc")
	to(t, v, s, "winding_c_usual")
	tuitest.Press(t, v, s, 120, 60, "y")
	for range 40 { // down to what was guessed
		if strings.Contains(tuitest.Draw(t, v, s, 120, 60), "~18 W") {
			break
		}
		tuitest.Press(t, v, s, 120, 60, "down")
	}
	assert.Regexp(t, `Drag loss +~18 W +guessed`, tuitest.Draw(t, v, s, 120, 60))
	list := v.options(s)
	require.Greater(t, len(list), 10)
	tuitest.Press(t, v, s, 120, 60, "home")
	for i := 1; i < len(list); i++ {
		assert.LessOrEqual(t, rank(list[i-1]), rank(list[i]), "%s before %s", list[i-1].path, list[i].path)
	}
	tuitest.Press(t, v, s, 120, 60, "down enter")
	path, ok := s.Going()
	assert.True(t, ok)
	assert.Equal(t, list[1].path, path)
	assert.False(t, v.why.open)
}

// Every row can be asked why, at every size, and the page closed again.
func TestEveryRowCanBeAskedWhy(t *testing.T) {
	s, v := session.NewExample(), New()
	v.flipped = true
	v.SetSize(s, v.at)
	for _, id := range v.ids(s) {
		v.row = id
		for _, size := range [][2]int{{60, 17}, {80, 21}, {200, 57}} {
			tuitest.Press(t, v, s, size[0], size[1], "f5")
			assert.Contains(t, tuitest.Draw(t, v, s, size[0], size[1]), "Why: ", id)
			tuitest.Press(t, v, s, size[0], size[1], "end esc")
		}
	}
}

// Enter on a missing figure goes to the field that it waits for; on an existing one it asks why.
func TestEnterOnAFigure(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Type("slot.area", "")
	to(t, v, s, "wire_fill")
	tuitest.Press(t, v, s, 80, 21, "enter")
	path, _ := s.Going()
	assert.Equal(t, "slot.area", path)
	tuitest.Press(t, v, s, 80, 21, "y")
	assert.Equal(t, "slot.area", v.options(s)[0].path)
	tuitest.Press(t, v, s, 80, 21, "esc")
	to(t, v, s, "kw1")
	tuitest.Press(t, v, s, 80, 21, "enter")
	assert.True(t, v.why.open)
	_, going := s.Going()
	assert.False(t, going)
}

// rank is the position of an input of a figure by its origin.
func rank(o option) int {
	switch {
	case o.origin == quantity.Default:
		return 2
	case o.origin.Weak():
		return 1
	}
	return 0
}

// Net amps state the speed, temperature and volts at which they hold, so that they can be recomputed; a
// row of inputs that agree is not called by an internal name.
func TestWhyTellsWhereAFigureHolds(t *testing.T) {
	s, v := session.NewExample(), New()
	to(t, v, s, "amps_dc_usual")
	tuitest.Press(t, v, s, 120, 60, "y")
	frame := tuitest.Words(tuitest.Draw(t, v, s, 120, 60))
	assert.Regexp(t, `= [\d.]+ A − [\d.]+ W / 13\.5\d+ V`, frame)
	assert.Regexp(t, `At [\d.]+ rpm of the alternator, the winding at [\d.]+ °C, against 13\.5\d+ V`, frame)
	tuitest.Press(t, v, s, 120, 60, "esc")
	to(t, v, s, "mean_turn_mm")
	tuitest.Press(t, v, s, 120, 60, "y")
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 120, 60)), "Source from the old winding's ohms")
	tuitest.Press(t, v, s, 120, 60, "esc")
	v.row = rowFold
	assert.NotContains(t, v.whyTitle(s), "fold")
}

// Every reading that determines the volts is among their origins: a trial coil, amps into a battery.
func TestWhyNamesEveryKindOfReading(t *testing.T) {
	for name, entry := range map[string]string{"trial-coil": "coil[0].", "amps-readings": "amps[0]."} {
		text, err := os.ReadFile("../../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		s, v := session.New(job.Parse(string(text)), "", job.Mark{}), New()
		to(t, v, s, "cut_in_rpm")
		v.why.open = true
		assert.True(t, slices.ContainsFunc(v.options(s), func(o option) bool { return strings.HasPrefix(o.path, entry) }), name)
	}
}

// A job without a trial keeps its own fill limit.
func TestFillLimitWithoutATrial(t *testing.T) {
	s := session.New(job.Parse("[slot]\nfill_limit = 0.6\n"), "", job.Mark{})
	assert.Equal(t, 0.6, s.FillLimit())
	s.StepFill(1)
	assert.Equal(t, 0.61, s.FillLimit())
}
