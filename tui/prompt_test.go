package tui

import (
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An answer that stands there is replaced by typing and edited after an arrow, as a value is
// elsewhere; one that failed is there to be mended.
func TestAnAnswerIsReplacedOrEdited(t *testing.T) {
	t.Chdir(t.TempDir())
	ask := func(keys string) *Model { return opened(session.NewExample(), 80, 24, "Trials", "f2 "+keys) }
	const stands = "mill-race-alternator.toml"
	assert.Equal(t, stands, ask("").prompt.line.Text)
	assert.Contains(t, ask("").View(), "["+stands+"]")
	assert.Contains(t, ask("").View(), "typing replaces it")
	assert.Equal(t, "zw", ask("z w").prompt.line.Text)
	assert.Equal(t, stands[:len(stands)-1]+"xl", ask("left x").prompt.line.Text)
	assert.Equal(t, stands+"x", ask("end x").prompt.line.Text)
	assert.Equal(t, stands[:len(stands)-1]+"x", ask("backspace x").prompt.line.Text)
	assert.NotContains(t, ask("left").View(), "typing replaces it")
	m := ask("")
	m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("there/hub"), Paste: true})
	assert.Equal(t, "there/hub", m.prompt.line.Text)
	m.press("enter")
	require.NotNil(t, m.prompt, "there is no such folder")
	m.press("x")
	assert.Equal(t, "there/hubx", m.prompt.line.Text)
	m.press("ctrl+u h u b enter")
	assert.Equal(t, "hub.toml", m.s.Path, "a job is among those that are offered")
	m.press("ctrl+o h u b")
	assert.Contains(t, m.View(), "hub.toml")
}

// What is typed into a line stays while the terminal changes its size, also through one that
// has no room for a screen.
func TestALineStaysWhileTheSizeChanges(t *testing.T) {
	for _, keys := range []string{"ctrl+o h u b", "f2 h u b", "ctrl+e h u b"} {
		m := opened(session.NewExample(), 80, 24, "Trials", keys)
		for _, size := range [][2]int{{100, 30}, {20, 5}, {1, 1}, {60, 20}, {200, 60}} {
			m.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			assert.Equal(t, "hub", m.prompt.line.Text)
			tuitest.CheckFrame(t, m.View(), size[0], size[1])
		}
		assert.Contains(t, m.View(), "hub")
		m.press("- 2")
		assert.True(t, strings.HasSuffix(m.prompt.line.Text, "hub-2"))
	}
}
