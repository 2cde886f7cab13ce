package trials

import (
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/wiretable"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// On the row of the wire the letters with which its name may begin start a value, even if they come
// with the rest in one read; every other letter acts as on the other rows.
func TestLettersOnTheWire(t *testing.T) {
	for _, c := range []struct{ keys, want string }{
		{"s w g space 1 8 enter", "18 SWG"}, {"A W G space 1 8 enter", "18 AWG"}, {"i e c space 0 . 9 enter", "IEC 0.9 mm"}, {"0 . 9 space m m enter", "0.9 mm"},
	} {
		s, v := session.NewExample(), New()
		tuitest.Press(t, v, s, w, h, "down "+c.keys)
		assert.Equal(t, c.want, s.Job().Trials[0].Gauge.String(), c.keys)
		area, _, _ := s.Document().Typed("slot.area")
		assert.Equal(t, "72 ±2", area)
	}
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, w, h, "down")
	require.Equal(t, rowWire, v.row)
	before := s.Job().Trials[0].Gauge
	tuitest.Press(t, v, s, w, h, "T T n c m")
	assert.Equal(t, before, s.Job().Trials[0].Gauge)
	assert.Len(t, s.Outcome().Trials, 4, "n is a command here too")
	assert.False(t, v.Typing(s))
	v.Key(s, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("19 SWG"), Paste: true})
	assert.True(t, v.Typing(s), "a paste begins a value")
}

// A bare number for a wire is never accepted silently: the gauge it is taken as is stated, or, where
// other sizes are in use, the screen asks, keeping what was typed.
func TestABareNumberForAWire(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, w, h, "down 1 7")
	assert.Contains(t, foot(t, v, s), "17 = 17 AWG, bare 1.15 mm", "while it is typed")
	tuitest.Press(t, v, s, w, h, "enter")
	assert.Equal(t, "17 = 17 AWG, bare 1.15 mm", s.Message().Text)
	for _, sizes := range []wiretable.System{wiretable.SWG, wiretable.IEC} {
		s, v := session.NewExample(), New()
		s.Wires = sizes
		before := s.Document().Text()
		tuitest.Press(t, v, s, w, h, "down 1 enter")
		assert.Equal(t, before, s.Document().Text())
		assert.Contains(t, s.Message().Text, "1 of which sizes? Write 1 AWG, 1 SWG, 1 mm (bare) or 1 mm over")
		tuitest.Press(t, v, s, w, h, "space m m enter")
		assert.Equal(t, "1 mm", s.Job().Trials[0].Gauge.String(), "what was typed is still there")
		before = s.Document().Text()
		tuitest.Press(t, v, s, w, h, "up 1 4 enter 5 6 enter")
		assert.Contains(t, s.Message().Text, "56 of which sizes? Write 56 AWG", "figures replace what was asked back")
		assert.Equal(t, before, s.Document().Text())
		tuitest.Press(t, v, s, w, h, "1 . 2 5 space m m enter")
		assert.Equal(t, "1.25 mm", s.Job().Trials[0].Gauge.String(), "the first figure alone replaces")
		tuitest.Press(t, v, s, w, h, "up 1 4 enter backspace . 6 space m m enter")
		assert.Equal(t, "1.6 mm", s.Job().Trials[0].Gauge.String(), "who corrects goes on with what is there")
		tuitest.Press(t, v, s, w, h, "up 1 4 enter")
		v.Key(s, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("19 SWG"), Paste: true})
		tuitest.Press(t, v, s, w, h, "enter")
		assert.Equal(t, "19 SWG", s.Job().Trials[0].Gauge.String(), "a paste too")
	}
}

// Connection and circuits are picked from their list, as on every screen, and the next input
// is marked.
func TestPickingAConnection(t *testing.T) {
	s, v := session.NewExample(), New()
	to(t, v, s, rowConnection)
	tuitest.Press(t, v, s, w, h, "space")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "delta")
	assert.True(t, v.Typing(s), "typing picks")
	tuitest.Press(t, v, s, w, h, "d enter")
	assert.Equal(t, "delta", s.Job().Trials[0].Connection.String())
	assert.Equal(t, rowCircuits, v.row)
	tuitest.Press(t, v, s, w, h, "space down enter")
	assert.Equal(t, 2.0, s.Job().Trials[0].Circuits.Value)
	assert.Equal(t, "wire_fill", v.row, "behind the last input come the figures")
	to(t, v, s, rowCircuits)
	tuitest.Press(t, v, s, w, h, "space up esc")
	assert.Equal(t, 2.0, s.Job().Trials[0].Circuits.Value, "esc leaves it")
}

// An unusable fill limit is marked in its place, and no longer once it is corrected.
func TestAFillLimitThatCannotBeUsedIsMarked(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Type("slot.fill_limit", "0")
	assert.Contains(t, tuitest.Draw(t, v, s, 100, 27), "Fill limit 0 ✗")
	s.Type("slot.fill_limit", "0.7")
	assert.NotContains(t, tuitest.Draw(t, v, s, 100, 27), "Fill limit 0.7 ✗")
}

// A problem of the marked row is reported once.
func TestAProblemIsSaidOnce(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {100, 27}, {200, 57}} {
		s, v := session.NewExample(), New()
		tuitest.Draw(t, v, s, size[0], size[1])
		tuitest.Press(t, v, s, size[0], size[1], "up 7 enter up")
		frame := tuitest.Draw(t, v, s, size[0], size[1])
		assert.Equal(t, 1, strings.Count(frame, `✗ Fill limit: read "7"`), frame)
		tuitest.Press(t, v, s, size[0], size[1], "down down")
		s.ClearMessage() // as every key does
		assert.Contains(t, strings.Join(v.calledOut(s, 200, 20), "\n"), `✗ Fill limit: read "7"`, "from another row it is called out")
	}
}
