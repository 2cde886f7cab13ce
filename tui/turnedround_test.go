package tui

import (
	"os"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A ratio typed as driver : driven teeth is questioned at its field and among the findings; the other
// way round it is not.
func TestARatioTurnedRoundIsAskedAtItsField(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/water.toml")
	require.NoError(t, err)
	m := opened(session.New(job.Parse(string(text)), "", job.Mark{}), 160, 50, "Drive", "")
	m.goTo("drive.ratio")
	for typed, asked := range map[string]bool{"48:14 x 180:55": true, "14:48 x 55:180": false} {
		for _, letter := range typed {
			m.gets(tuitest.KeyMsg(string(letter)))
		}
		m.press("enter up")
		check := assert.NotContains
		if asked {
			check = assert.Contains
		}
		check(t, tuitest.Words(m.View()), "sides swapped, of", typed)
		m.press("f3")
		check(t, tuitest.Words(m.View()), "sides swapped, of", typed)
		m.press("esc")
	}
}
