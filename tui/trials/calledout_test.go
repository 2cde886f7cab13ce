package trials

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/assert"
)

// The findings are beside the table if the verdict leaves room for them there, and under it if more of
// them fit there; a line that is never cut says how many were left out.
func TestWhatIsCalledOutGoesWhereThereIsRoom(t *testing.T) {
	one, v := jobOf(t, "hub-in-wind"), New()
	frame := strings.Split(tuitest.Draw(t, v, one, 100, 27), "\n")
	line, cell := 0, 0
	for y, text := range frame {
		if before, _, ok := strings.Cut(text, "! A: unloaded in the gale"); ok {
			line, cell = y, kit.Width(before)
		}
	}
	assert.Positive(t, line, strings.Join(frame, "\n"))
	assert.Greater(t, cell, 50, "beside the table")
	assert.Contains(t, strings.Join(strings.Fields(strings.Join(strings.Split(tuitest.Draw(t, New(), one, 120, 37), "\n"), " ")), " "), "circuits fit:")

	three := jobOf(t, "hub-outside")
	under := tuitest.Draw(t, New(), three, 120, 37)
	assert.Regexp(t, `(?m)^[!✗] \S+: `, under, "under it")
	for w := 12; w < 60; w++ {
		assert.LessOrEqual(t, kit.Width(furtherCalled(1, w)), max(w, 16))
		assert.LessOrEqual(t, kit.Width(furtherCalled(12, w)), max(w, 16))
	}
}
