package trials

import (
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Why a figure is so: what it is, its formula with the numbers in it, its source, what was
// guessed of its inputs before what was measured; enter goes to the input.
func TestWhy(t *testing.T) {
	s, v := session.NewExample(), New()
	to(t, v, s, "cut_in_rpm")
	tuitest.Press(t, v, s, 120, 60, "y")
	frame := tuitest.Words(tuitest.Draw(t, v, s, 120, 60))
	for _, want := range []string{"Why: charging begins, trial A", "It is ~547 ±", "peak volts for each rpm", "= (12.60 V + 2 × 0.75 V) / ", "How sure May be off by ±",
		"default", "chosen", "measured", "Spin-up reading 1: "} {
		assert.Contains(t, frame, want)
	}
	tuitest.Press(t, v, s, 120, 60, "esc")
	to(t, v, s, "winding_c_usual")
	tuitest.Press(t, v, s, 120, 60, "y")
	assert.Regexp(t, `Drag loss +~18 W +guessed`, tuitest.Draw(t, v, s, 120, 60))
	list := v.options(s)
	require.Greater(t, len(list), 10)
	tuitest.Press(t, v, s, 120, 60, "home")
	for i := 1; i < len(list); i++ {
		assert.False(t, list[i].origin.Weak() && !list[i-1].origin.Weak(), "what was guessed comes first")
	}
	tuitest.Press(t, v, s, 120, 60, "down enter")
	path, ok := s.Going()
	assert.True(t, ok)
	assert.Equal(t, list[1].path, path)
	assert.False(t, v.why.open)
}

// Every row can be asked why, at every size, and closed again.
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

// Enter on a figure that is missing goes to the field that it waits for, on one that is there
// asks why.
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
