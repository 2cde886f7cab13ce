package trials

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// clickOn clicks at the nth place where a text stands in the frame.
func clickOn(t *testing.T, v *View, s *session.Session, size [2]int, text string, nth int) {
	t.Helper()
	for y, line := range strings.Split(tuitest.Draw(t, v, s, size[0], size[1]), "\n") {
		before, _, ok := strings.Cut(line, text)
		if !ok {
			continue
		}
		if nth--; nth < 0 {
			v.Click(s, v.at.X+kit.Width(before), v.at.Y+y)
			v.SetSize(s, v.at)
			return
		}
	}
	require.Fail(t, "not in the frame", "%s at %v\n%s", text, size, tuitest.Draw(t, v, s, size[0], size[1]))
}

// A click marks the row and chooses the trial under it, at every size; a click on what is marked opens
// it, as enter does.
func TestClicksOnTheTable(t *testing.T) {
	for _, size := range [][2]int{{60, 18}, {80, 21}, {100, 27}, {120, 37}, {200, 57}} {
		s, v := session.NewExample(), New()
		clickOn(t, v, s, size, "22.5", 0) // B's volts
		assert.Equal(t, "volts_line_rms_per_1000rpm", v.row, size)
		assert.Equal(t, 1, s.Trial, size)
		clickOn(t, v, s, size, "current limit", 0)
		assert.Equal(t, "limit_amps_dc", v.row, size)
		assert.Equal(t, 1, s.Trial, "beside the trials the chosen one stays")
		legend := 0 // at this size the legend comes before
		if size[0] == 200 {
			legend = 1
		}
		clickOn(t, v, s, size, "15 AWG", legend)
		assert.Equal(t, []any{rowWire, 0}, []any{v.row, s.Trial}, size)
		assert.False(t, v.editing)
		clickOn(t, v, s, size, "15 AWG", legend)
		assert.True(t, v.editing, "what is marked opens")
		clickOn(t, v, s, size, "current limit", 0)
		assert.True(t, v.editing, "what is typed is not lost to a click")
		tuitest.Press(t, v, s, size[0], size[1], "esc")
		clickOn(t, v, s, size, "Fill limit", 0)
		assert.Equal(t, rowFill, v.row, size)
		clickOn(t, v, s, size, "Slot area", 0)
		assert.Equal(t, rowArea, v.row, size)
	}
}

// Rungs, why pages and lists take clicks too.
func TestClicksOnWhatLiesOver(t *testing.T) {
	size := [2]int{100, 27}
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, size[0], size[1], "e")
	tuitest.Work(t, s)
	clickOn(t, v, s, size, "17 AWG", 0)
	require.True(t, v.ladder.open)
	clickOn(t, v, s, size, "17 AWG", 0) // the box of its slot, which names it now
	require.True(t, v.ladder.open)
	clickOn(t, v, s, size, "17 AWG", 1)
	require.False(t, v.ladder.open)
	assert.Equal(t, "17 AWG", s.Job().Trials[0].Gauge.String())

	to(t, v, s, "cut_in_rpm")
	tuitest.Press(t, v, s, 120, 57, "y")
	v.SetSize(s, v.at)
	list := v.options(s)
	clickOn(t, v, s, [2]int{120, 57}, list[2].label, 0)
	assert.Equal(t, 2, v.why.at)
	clickOn(t, v, s, [2]int{120, 57}, list[2].label, 0)
	path, ok := s.Going()
	assert.True(t, ok)
	assert.Equal(t, list[2].path, path)

	to(t, v, s, rowConnection)
	tuitest.Press(t, v, s, 120, 57, "space")
	clickOn(t, v, s, [2]int{120, 57}, "delta", 0)
	assert.Equal(t, "delta", s.Job().Trials[0].Connection.String())
}
