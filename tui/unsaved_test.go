package tui

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/job/running"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bench is a job's file and a state folder, for successive sessions.
type bench struct {
	t     *testing.T
	path  string
	store recovery.Store
}

func newBench(t *testing.T) bench {
	t.Helper()
	dir := t.TempDir()
	b := bench{t, filepath.Join(dir, "j.toml"), recovery.Store{Dir: filepath.Join(dir, "state")}}
	b.write(job.Example().Text())
	return b
}

func (b bench) write(text string) { require.NoError(b.t, os.WriteFile(b.path, []byte(text), 0o644)) }

func (b bench) file() string {
	data, err := os.ReadFile(b.path)
	require.NoError(b.t, err)
	return string(data)
}

// open is a window on the job.
func (b bench) open() *Model {
	b.t.Helper()
	d, mark, err := job.Load(b.path)
	require.NoError(b.t, err)
	return sized(New(session.New(d, b.path, mark), b.store))
}

func sized(m *Model) *Model {
	m.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
	return m
}

// press types keys: runes one by one, others by name.
func press(m *Model, keys ...string) (last tea.Cmd) {
	named := map[string]tea.KeyType{"enter": tea.KeyEnter, "esc": tea.KeyEsc, "ctrl+s": tea.KeyCtrlS, "f2": tea.KeyF2, "ctrl+c": tea.KeyCtrlC, "ctrl+u": tea.KeyCtrlU, "ctrl+e": tea.KeyCtrlE}
	for _, k := range keys {
		if code, ok := named[k]; ok {
			_, last = m.Update(tea.KeyMsg{Type: code})
			continue
		}
		for _, r := range k {
			_, last = m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
		}
	}
	return last
}

// kill makes every session so far look as if its program had ended: as after kill -9.
func (b bench) kill() {
	b.t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run", "^$")
	require.NoError(b.t, cmd.Run())
	entries, err := os.ReadDir(b.store.Dir)
	require.NoError(b.t, err)
	for _, e := range entries {
		file := filepath.Join(b.store.Dir, e.Name())
		data, err := os.ReadFile(file)
		require.NoError(b.t, err)
		now := strings.Replace(string(data), fmt.Sprintf(`"pid":%d`, os.Getpid()), fmt.Sprintf(`"pid":%d`, cmd.Process.Pid), 1)
		require.NoError(b.t, os.WriteFile(file, []byte(now), 0o600))
	}
	require.Equal(b.t, running.Ended, running.Program{PID: cmd.Process.Pid, Host: running.Self().Host}.State())
}

// copies counts the copies that wait for an answer.
func (b bench) copies() int {
	copies, _ := b.store.Offers(b.path)
	return len(copies)
}

// died leaves the work of a killed session behind, and gives its text.
func (b bench) died() string {
	b.t.Helper()
	m := b.open()
	press(m, "+")
	m.Update(keepNow{})
	b.kill()
	require.Equal(b.t, 1, b.copies())
	return m.s.Document().Text()
}

// However a session ends while "Unsaved work" is asked, the work is asked about again.
func TestAnOfferThatIsNotAnsweredStays(t *testing.T) {
	b := newBench(t)
	work := b.died()
	for name, end := range map[string]func(m *Model){
		"a signal": func(m *Model) {
			words, ok := m.KeepUnsaved()
			assert.True(t, ok)
			assert.Contains(t, words, "again")
		},
		"ctrl+c, unseen": func(m *Model) {
			m.Update(tea.WindowSizeMsg{Width: 50, Height: 12})
			assert.NotNil(t, press(m, "ctrl+c"))
			assert.Contains(t, m.End(), "again")
		},
		"for later": func(m *Model) { press(m, "l", "q") },
		"killed":    func(*Model) {},
	} {
		m := b.open()
		assert.Contains(t, m.View(), "Unsaved work", name)
		end(m)
		m.End()
		assert.Equal(t, 1, b.copies(), name)
	}
	m := b.open()
	press(m, "b")
	assert.Equal(t, work, m.s.Document().Text())
	b.kill()
	assert.Equal(t, 1, b.copies(), "brought back, it is this session's, and is kept on")
	m = b.open()
	press(m, "b", "ctrl+s")
	assert.Equal(t, work, b.file())
	m.End()
	assert.Zero(t, b.copies(), "it is in the file")
	b.died()
	m = b.open()
	press(m, "d")
	assert.Zero(t, b.copies(), "dropped")
}

// Work is also kept while someone types without a pause: at most a second after the first change that
// is not yet kept.
func TestKeepingDoesNotWaitForAPause(t *testing.T) {
	b := newBench(t)
	m := b.open()
	timers := 0
	for i := range 5 {
		if press(m, "+") != nil {
			timers++
		}
		assert.Equal(t, 1, timers, "the first change starts the clock, change %d does not stop it", i+1)
	}
	m.Update(keepNow{})
	b.kill()
	copies, _ := b.store.Offers(b.path)
	require.Len(t, copies, 1)
	assert.Equal(t, m.s.Document().Text(), copies[0].Text)
	assert.NotNil(t, press(m, "+"), "the next change starts it again")
	assert.Equal(t, time.Second, keepAfter)
}

// A window that only views a job removes nothing of another's, and both say so.
func TestTwoWindowsOnOneJob(t *testing.T) {
	b := newBench(t)
	first := b.open()
	press(first, "+")
	first.Update(keepNow{})
	d, mark, err := job.Load(b.path)
	require.NoError(t, err)
	s := session.New(d, b.path, mark)
	second := New(s, b.store)
	sized(second)
	assert.Contains(t, tuitest.Words(second.View()), "open in another window")
	assert.NotContains(t, second.View(), "Unsaved work", "living work is not offered")
	press(second, "q")
	second.End()
	press(first, "+")
	third := b.open()
	first.Update(keepNow{})
	assert.Contains(t, first.View(), "open in another window", "the first learns of the others")
	third.End()
	b.kill()
	copies, _ := b.store.Offers(b.path)
	require.Len(t, copies, 1)
	assert.Equal(t, first.s.Document().Text(), copies[0].Text)
}

// Recovered work on a file edited since says so, and does not overwrite it unasked.
func TestOldWorkIsNotSavedOverANewerFile(t *testing.T) {
	b := newBench(t)
	work := b.died()
	newer := job.Example().Text() + "# with an editor\n"
	b.write(newer)
	m := b.open()
	assert.Contains(t, m.View(), "changed since")
	press(m, "enter", "ctrl+s")
	assert.Contains(t, m.View(), "Save the job as")
	assert.Equal(t, newer, b.file())
	press(m, "enter")
	assert.Equal(t, newer, b.file())
	assert.Equal(t, strings.TrimSuffix(b.path, ".toml")+"-2.toml", m.s.Path, "beside it")
	saved, err := os.ReadFile(m.s.Path)
	require.NoError(t, err)
	assert.Equal(t, work, string(saved))

	b.write(job.Example().Text())
	work = b.died()
	b.write(newer)
	m = b.open()
	press(m, "enter", "f2", "enter")
	assert.Contains(t, m.View(), "Write over it?")
	press(m, "enter")
	assert.Equal(t, newer, b.file(), "enter alone cancels")
	press(m, "f2", "enter", "w")
	assert.Equal(t, work, b.file(), "said so")
}

// A damaged copy is named, and neither offered nor deleted.
func TestDamagedWorkIsNotOffered(t *testing.T) {
	b := newBench(t)
	b.died()
	files, err := filepath.Glob(filepath.Join(b.store.Dir, "unsaved-*"))
	require.NoError(t, err)
	require.Len(t, files, 1)
	require.NoError(t, os.WriteFile(files[0], []byte(strings.Repeat("\x91\x02", 1500)), 0o600))
	m := b.open()
	assert.Contains(t, m.View(), "kept work is damaged")
	assert.NotContains(t, m.View(), "Unsaved work")
	press(m, "q")
	m.End()
	assert.FileExists(t, files[0])
}

// If nothing can be kept, that is reported once, and nothing is promised.
func TestWhatCannotBeKeptIsSaidAndNotPromised(t *testing.T) {
	b := newBench(t)
	b.store.Dir = filepath.Join(b.path, "in a file")
	m := b.open()
	assert.Contains(t, m.View(), "unsaved work cannot be kept")
	later(t, noticeStays)
	press(m, "+")
	_, again := m.Update(keepNow{})
	assert.NotNil(t, again, "it is tried again")
	assert.NotContains(t, m.View(), "cannot be kept", "once")
	words, ok := m.KeepUnsaved()
	assert.False(t, ok)
	assert.Contains(t, words, "could not be kept")
	assert.NotContains(t, words, "next time")
	m.Update(tea.WindowSizeMsg{Width: 50, Height: 12})
	assert.Nil(t, press(m, "ctrl+c"))
	assert.Nil(t, press(m, "ctrl+c"), "it does not leave with the work")
}

// In a window too small for a screen the question is drawn small, and leaving again keeps the work.
func TestLeavingUnseenKeepsTheWork(t *testing.T) {
	b := newBench(t)
	m := b.open()
	press(m, "+")
	m.Update(tea.WindowSizeMsg{Width: 40, Height: 10})
	assert.Nil(t, press(m, "ctrl+c"))
	assert.Contains(t, m.View(), "changes not saved to j.toml")
	assert.Contains(t, m.View(), "s save and leave")
	assert.NotNil(t, press(m, "ctrl+c"))
	assert.Contains(t, m.End(), "offered again")
	assert.Equal(t, 1, b.copies())
}

func TestAFileThatIsGoneIsWrittenAgain(t *testing.T) {
	b := newBench(t)
	m := b.open()
	press(m, "+")
	require.NoError(t, os.Remove(b.path))
	press(m, "ctrl+s")
	assert.Contains(t, m.View(), "the file is gone")
	assert.Contains(t, m.View(), filepath.Base(b.path))
	press(m, "enter")
	assert.Equal(t, m.s.Document().Text(), b.file())
	assert.False(t, m.s.Dirty())
}

func TestAReadOnlyFileIsAskedAbout(t *testing.T) {
	b := newBench(t)
	require.NoError(t, os.Chmod(b.path, 0o444))
	before := b.file()
	m := b.open()
	press(m, "+", "ctrl+s")
	assert.Contains(t, m.View(), "read-only")
	press(m, "enter")
	assert.Equal(t, before, b.file())
	assert.True(t, m.s.Dirty())
	press(m, "ctrl+s", "w")
	assert.Equal(t, m.s.Document().Text(), b.file())
	assert.False(t, m.s.Dirty())
}

// Whatever is wrong with the name, the reason is shown, and name and work stay so that the name can be
// corrected.
func TestATypedNameStaysWhenItFails(t *testing.T) {
	b := newBench(t)
	m := b.open()
	press(m, "+")
	dir := filepath.Dir(b.path)
	for name, why := range map[string]string{
		filepath.Join(dir, "none", "x.toml"):         "there is no folder",
		filepath.Join(b.path, "x"):                   "not a folder",
		filepath.Join(dir, strings.Repeat("n", 300)): "too long",
		dir: "this is a folder; put the file's name behind it",
	} {
		press(m, "f2", "ctrl+u", name, "enter")
		require.NotNil(t, m.prompt, name)
		assert.Equal(t, name, m.prompt.line.Text)
		assert.Contains(t, m.prompt.why, why)
		assert.Contains(t, m.View(), why)
		assert.True(t, m.s.Dirty())
		press(m, "esc")
	}
	t.Setenv("HOME", dir)
	press(m, "f2", "ctrl+u", "~/mine.toml", "enter")
	assert.FileExists(t, filepath.Join(dir, "mine.toml"))
	press(m, "ctrl+e", "ctrl+u", filepath.Join(dir, "none", "card.txt"), "enter")
	require.NotNil(t, m.prompt)
	assert.Contains(t, m.View(), "there is no folder")
}

// An edit that the text does not allow is refused with a message.
func TestARefusedEditIsSaid(t *testing.T) {
	b := newBench(t)
	b.write("[[trial]]\nname = \"A\"\nturns = 11\nnote = \"\"\"\nnever ended\n")
	m := b.open()
	before := m.s.Document().Text()
	press(m, "f")
	assert.Equal(t, before, m.s.Document().Text())
	assert.Contains(t, m.s.Message().Text, "never ended")
}

// Singular and plural are right.
func TestWhatCannotBeUsedIsCounted(t *testing.T) {
	for text, want := range map[string]string{
		"slots = 3\n":            "one thing in the file cannot be used; it stays",
		"slots = 3\npoles = 2\n": "2 things in the file cannot be used; they stay",
	} {
		m := New(session.New(job.Parse(text), "j.toml", job.Mark{}), recovery.Store{})
		m.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
		assert.Contains(t, m.View(), want)
		assert.NotContains(t, m.View(), "%!")
	}
}

// A value still being typed when the program is left is discarded: the old value comes back, and what
// was typed is reported. A value that was accepted stays.
func TestAHalfTypedValueIsNotTaken(t *testing.T) {
	for _, taken := range []bool{false, true} {
		b := newBench(t)
		m := b.open()
		m.goTo("machine.bore")
		old, _, _ := m.s.Document().Typed("machine.bore")
		require.NotEmpty(t, old)
		press(m, "77")
		m.Update(keepNow{})
		if taken {
			press(m, "enter")
		}
		press(m, "ctrl+c", "ctrl+c")
		m.KeepUnsaved()
		m.End()
		b.kill()
		m = b.open()
		press(m, "b")
		now, _, _ := m.s.Document().Typed("machine.bore")
		if taken {
			assert.Equal(t, "77", now)
			continue
		}
		assert.Equal(t, old, now)
		assert.Contains(t, m.s.Message().Text, `"77" was still being typed and was not taken; it says `+old+" mm as before")
		m.s.Undo()
		now, _, _ = m.s.Document().Typed("machine.bore")
		assert.Equal(t, "77", now, "nothing typed is lost")
	}
}
