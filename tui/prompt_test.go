package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A suggested answer is replaced by typing and edited after an arrow, like a value elsewhere; a failed
// one stays to be corrected.
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

// Opening: a name needs no extension; a folder is entered, and its jobs are offered; the open job is
// not offered; if nothing was opened before, the jobs of this folder are. What went wrong is reported
// once.
func TestOpeningByName(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	require.NoError(t, os.Mkdir("yard", 0o700))
	for _, name := range []string{"hub.toml", "yard/mill.toml"} {
		require.NoError(t, os.WriteFile(name, []byte(job.Template("x")), 0o600))
	}
	m := New(session.NewExample(), recovery.Store{Dir: filepath.Join(dir, "state")})
	m.gets(tea.WindowSizeMsg{Width: 80, Height: 24})
	m.press("ctrl+o")
	assert.Contains(t, m.View(), "hub.toml")
	assert.Contains(t, m.View(), "↓ goes through them")
	m.press("y a r d enter")
	require.NotNil(t, m.prompt)
	assert.Contains(t, m.View(), folderSays)
	assert.Contains(t, m.View(), "yard/mill.toml")
	m.press("down enter")
	assert.Equal(t, "yard/mill.toml", m.s.Path)
	m.press("ctrl+o h u b enter")
	assert.Equal(t, "hub.toml", m.s.Path)
	m.press("ctrl+o")
	assert.Equal(t, []string{filepath.Join(dir, "yard", "mill.toml")}, m.prompt.recent)
	m.press("esc f2 n o / a enter")
	assert.Equal(t, 1, strings.Count(m.View(), "there is no folder"))
}

// During a prompt the bottom line names no key that then does something else.
func TestTheBottomLineAnswersWhatIsAsked(t *testing.T) {
	for keys, want := range map[string]string{
		"f2": "enter take it  esc leave it  tab complete", "+ q": "", "ctrl+p": "", "f3": "", "?": "↓ read on",
	} {
		m := opened(session.NewExample(), 80, 24, "Trials", keys)
		lines := strings.Split(m.View(), "\n")
		assert.Equal(t, want, strings.TrimSpace(lines[len(lines)-1]), keys)
	}
}

// A copy is offered a name next to its original, and says in what format it is written.
func TestACopyIsSavedBesideItsFile(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("yard", 0o700))
	require.NoError(t, os.WriteFile("yard/mill.toml", []byte(job.Example().Text()), 0o600))
	m := opened(session.NewExample(), 80, 24, "Trials", "ctrl+o y a r d / m i l l enter ctrl+d")
	assert.Contains(t, tuitest.Words(m.View()), "in no file yet: ctrl+s writes it")
	m.press("ctrl+s")
	assert.Equal(t, filepath.Join("yard", "mill-2.toml"), m.prompt.line.Text)
	m.press("enter")
	assert.FileExists(t, filepath.Join("yard", "mill-2.toml"))
}

// No command's name is cut at 80 columns, and a shortened one is found by what was left out.
func TestNamesOfCommandsAreWhole(t *testing.T) {
	for _, screen := range []string{"Machine", "Trials", "Layout", "Curves", "Drive", "Card", "Wound", "Shelf"} {
		m := opened(session.NewExample(), 80, 24, screen, "ctrl+p")
		for _, o := range m.list.Options {
			assert.LessOrEqual(t, kit.Width(o.Label)+kit.Width(o.Note), 72, "%s: %s", screen, o.Label)
		}
	}
	m := opened(session.NewExample(), 80, 24, "Trials", "ctrl+p t h i n n e r space w i r e space a n d space s t r a n d s")
	assert.Contains(t, m.View(), "▸ Keep the slot full")
}

// A line being typed survives resizing, even to a size that has no room for a screen.
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
