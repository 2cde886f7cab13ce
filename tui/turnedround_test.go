package tui

import (
	"os"
	"strings"
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

// backwards is a stored job with a piece of its text replaced, opened on a screen.
func backwards(t *testing.T, name, screen string, w, h int, pieces ...string) *Model {
	t.Helper()
	text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
	require.NoError(t, err)
	for i := 0; i < len(pieces); i += 2 {
		require.Contains(t, string(text), pieces[i])
	}
	d := job.Parse(strings.NewReplacer(pieces...).Replace(string(text)))
	require.Empty(t, d.Problems())
	return opened(session.New(d, "", job.Mark{}), w, h, screen, "")
}

// A drive backwards comes first on every screen that a person goes by, at the smallest size too, with the
// key that swaps it; and no winding is offered there.
func TestADriveBackwardsComesFirstOnTheScreens(t *testing.T) {
	for _, size := range [][2]int{{60, 20}, {80, 24}, {120, 40}, {160, 50}} {
		for _, screen := range []string{"Machine", "Trials", "Drive", "Card"} {
			m := backwards(t, "engine", screen, size[0], size[1], "driver_mm = 150", "driver_mm = 60", "driven_mm = 60", "driven_mm = 150")
			shown := tuitest.Words(m.View())
			assert.Contains(t, shown, "rive is probably the wrong way round", "%s %v", screen, size)
			assert.NotContains(t, shown, "would do better", "%s %v", screen, size)
			assert.Contains(t, shown, "f5 swap the pulleys", "%s %v", screen, size)
			if screen == "Trials" {
				m.press("e")
				ladder := tuitest.Words(m.View())
				assert.Contains(t, ladder, "the drive is probably the wrong way round: f5 swaps it", size)
				assert.NotContains(t, ladder, "meets", size)
				m.press("esc")
			}
			m.press("f5")
			assert.NotContains(t, tuitest.Words(m.View()), "wrong way round", "%s %v", screen, size)
			assert.NotContains(t, tuitest.Words(m.View()), "f5 swap", "%s %v", screen, size)
		}
	}
}

// f5 swaps sizes, each with its own unit, its mark and its tolerance; teeth; a ratio, and of several stages
// those that are backwards. One undo takes it back.
func TestOneKeySwapsTheDrive(t *testing.T) {
	for _, c := range []struct {
		name         string
		from, to     []string
		label, after string
	}{
		{"engine", []string{"driver_mm = 150", "driver_in = \"~2.4\"", "driven_mm = 60", "driven_mm = \"150 ±1\""}, []string{"driver_mm = \"150 ±1\"", "driven_in = \"~2.4\""}, "f5 swap the pulleys", "the drive has 150 ±1 mm, the alternator ~2.4 in"},
		{"pedals", []string{"ratio = 9", "driver_teeth = 12\ndriven_teeth = 108"}, []string{"driver_teeth = 108", "driven_teeth = 12"}, "f5 swap the wheels", "the drive has 108, the alternator 12"},
		{"pedals", []string{"ratio = 9", `ratio = "~0.125"`}, []string{`ratio = "~8"`}, "f5 ratio 8", "the ratio is now 8"},
		{"water", []string{"ratio = 10.2", `ratio = "14:48 x 180:55"`}, []string{`ratio = "14:48 x 55:180"`}, "f5 ratio 14:48 x 55:180", "the ratio is now 14:48 x 55:180"},
	} {
		m := backwards(t, c.name, "Drive", 120, 40, c.from...)
		before := m.s.Document().Text()
		assert.Contains(t, tuitest.Words(m.View()), c.label)
		m.press("f5")
		for _, line := range c.to {
			assert.Contains(t, m.s.Document().Text(), line)
		}
		assert.Contains(t, tuitest.Words(m.View()), c.after)
		assert.Nil(t, m.s.Outcome().Reversed)
		m.press("ctrl+z")
		assert.Equal(t, before, m.s.Document().Text(), c.name)
		assert.NotNil(t, m.s.Outcome().Reversed)
	}
}
