package tui

import (
	"strings"
	"testing"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// later advances the time for the rest of a test.
func later(t *testing.T, by time.Duration) {
	t.Helper()
	was := now
	now = func() time.Time { return was().Add(by) }
	t.Cleanup(func() { now = was })
}

// A message is shown whole at any length, and covers nothing: the lines above it are those that the
// screen draws with that much less room. A short one leaves the first keys in place.
func TestMessagesCoverNothing(t *testing.T) {
	for _, size := range sizes {
		for _, text := range []string{"saved", strings.Repeat("a long word after another ", 6) + "end"} {
			m := opened(session.NewExample(), size[0], size[1], "Trials", "")
			m.s.Warn(text)
			m.fit()
			more := len(m.said()) - 1
			lines := strings.Split(m.View(), "\n")
			assert.Contains(t, tuitest.Words(strings.Join(lines[len(lines)-1-more:], " ")), kit.Theme{}.Mark(kit.Broken)+" "+text, size)
			if text == "saved" {
				assert.Contains(t, lines[len(lines)-1], "? help  tab screen", size)
				assert.Zero(t, more)
			}
			if size[1]-more < needH {
				continue // so low no screen is drawn without a message
			}
			bare := strings.Split(opened(session.NewExample(), size[0], size[1]-more, "Trials", "").View(), "\n")
			assert.Equal(t, bare[:len(bare)-1], lines[:len(lines)-1-more], size)
		}
	}
}

// Several messages are stacked, each whole; what was undone is among them. A notice stays until there
// was time to read it, the answer to a key disappears with the next key, and a notice without room
// waits until there is some.
func TestNoticesQueue(t *testing.T) {
	m := opened(session.NewExample(), 80, 24, "Trials", "+")
	notice := "this job is open in another window too (process 4711, since 10:42): who saves second is asked"
	m.press("u")
	m.notify(true, notice)
	m.notify(true, notice)
	m.fit()
	both := tuitest.Words(m.View())
	assert.Contains(t, both, "undone: ")
	assert.Contains(t, both, "✗ "+notice)
	assert.Equal(t, 1, strings.Count(both, notice))
	m.press("down")
	assert.NotContains(t, m.View(), "undone: ")
	assert.Contains(t, tuitest.Words(m.View()), notice, "a key typed meanwhile takes no notice away")

	second := strings.Repeat("kept work is damaged and was left where it is ", 12) + "end"
	m.notify(true, second)
	m.fit()
	assert.NotContains(t, tuitest.Words(m.View()), "damaged", "there is no room for both")
	later(t, noticeStays)
	m.press("down")
	assert.NotContains(t, tuitest.Words(m.View()), notice)
	assert.Contains(t, tuitest.Words(m.View()), "✗ "+second, "it comes when it has room, whole")
	m.press("down")
	assert.Contains(t, tuitest.Words(m.View()), second, "and stays its own time")
	later(t, noticeStays)
	m.press("down")
	require.Empty(t, m.notices)
}

// The same message twice from one key is shown once; two different ones are both shown.
func TestWhatIsSaidStacks(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Trials", "")
	m.s.Say("one")
	m.s.Say("one")
	m.s.Warn("two")
	assert.Equal(t, []string{"• one", "✗ two"}, m.said())
}

// However many messages there are, no frame is larger than the terminal, on any screen in any state.
func TestMuchSaidFits(t *testing.T) {
	tuitest.OneGoroutine(t)
	for _, st := range append(overlays, states...) {
		m := opened(session.NewExample(), needW, needH, st.screen, st.keys)
		m.s.Say(strings.Repeat("much is said here ", 60))
		m.notify(true, strings.Repeat("and more of it there ", 60))
		m.fit()
		tuitest.CheckFrame(t, m.View(), needW, needH)
		require.False(t, t.Failed(), "%v", st)
	}
}
