package tui

import (
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// shelved changes the test's working folder to one with the jobs of testdata/shelf.
func shelved(t *testing.T) {
	t.Helper()
	paths, err := filepath.Glob("../testdata/shelf/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	dir := t.TempDir()
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(dir, filepath.Base(p)), text, 0o600))
	}
	t.Chdir(dir)
}

// From the shelf to a new job of the same kind, typed and saved: the file has the machine, and none of
// the readings of the old one.
func TestFromTheShelfToANewJob(t *testing.T) {
	shelved(t)
	st := tuitest.Start(t, New(session.NewExample(), recovery.Store{}), 80, 24)
	st.WaitFor("charging begins")
	st.Key("ctrl+p")
	st.Type("go to shelf")
	st.Key("enter")
	st.WaitFor("4 of 4 jobs")
	st.Type("mill")
	st.WaitFor("1 of 4 jobs")
	st.WaitFor("First from the yard")
	st.Key("f6")
	st.WaitFor("• not saved")
	st.WaitFor("[Machine]")
	st.Type("Fifth from the yard")
	st.Key("enter", "ctrl+s")
	st.WaitFor("saved to proved-2.toml")
	st.Quit()
	text, err := os.ReadFile("proved-2.toml")
	require.NoError(t, err)
	d := job.Parse(string(text))
	require.Empty(t, d.Problems())
	j := d.Job()
	assert.Equal(t, "Fifth from the yard", j.Name)
	assert.Equal(t, 36.0, j.Machine.Slots.Value)
	assert.Equal(t, "16 AWG", j.Trials[0].Gauge.String())
	assert.False(t, j.Old.LeadOhms.Given())
	assert.Empty(t, j.AsWound)
	assert.Empty(t, j.Spins)
	old, err := os.ReadFile("proved.toml")
	require.NoError(t, err)
	assert.Contains(t, string(old), "wedges tight", "the old job is as it was")
}

// At the bench: the planned job from the shelf, wound and read, each reading assessed as it is typed;
// the file has the record beside the plan, and the shelf shows it as proved.
func TestFromTheShelfToAProvedJob(t *testing.T) {
	shelved(t)
	plan, err := os.ReadFile("planned.toml")
	require.NoError(t, err)
	st := tuitest.Start(t, New(session.NewExample(), recovery.Store{}), 80, 24)
	st.WaitFor("charging begins")
	st.Key("shift+tab", "shift+tab")
	st.WaitFor("4 of 4 jobs")
	st.Type("brook")
	st.WaitFor("1 of 4 jobs")
	st.Key("enter")
	st.WaitFor("planned.toml")
	st.WaitFor("charging begins")
	st.Key("shift+tab", "shift+tab", "shift+tab")
	st.WaitFor("Planned, nothing wound yet: f6")
	st.Key("f6")
	st.WaitFor("Wound, not proved yet")
	st.Key("down", "down")
	st.Type("f")
	st.Key("enter")
	st.Type("58")
	st.WaitFor("good, plan 56.6 m")
	st.Key("enter", "down")
	st.Type("0.2")
	st.WaitFor("% low, 0.374 to 0.414")
	st.Key("backspace")
	st.Type("39")
	st.WaitFor("good, 0.374 to 0.414")
	st.Key("enter", "down")
	st.Type("11")
	st.Key("enter")
	st.Type("600")
	st.WaitFor("Proved.")
	st.Key("enter", "ctrl+s")
	st.WaitFor("saved to planned.toml")
	st.Key("tab")
	st.WaitFor("proved")
	st.Quit()
	text, err := os.ReadFile("planned.toml")
	require.NoError(t, err)
	day := time.Now().Format(time.DateOnly)
	assert.Equal(t, strings.TrimRight(string(plan), "\n")+"\n\n[[wound]]\ntrial = \"A\"\ndate = \""+day+"\"\nfilled = \"full\"\nwire_length_m = 58\nlead_ohm = 0.39\nline_v = 11\nspeed_rpm = 600\n", string(text))
}

// A job is opened from the shelf like any other: unsaved work is asked about, and if opening fails the
// path stays.
func TestOpeningFromTheShelf(t *testing.T) {
	shelved(t)
	m := opened(session.NewExample(), 80, 24, "Trials", "+")
	for range m.views {
		if m.view().Name() != "Shelf" {
			m.press("tab")
		}
	}
	m.press("m a s t enter")
	assert.Contains(t, m.View(), "changes not saved to any file")
	m.press("esc")
	assert.Empty(t, m.s.Path)
	m.press("enter d")
	assert.Equal(t, "wound.toml", m.s.Path)
	assert.Equal(t, "Second from the yard", m.s.Job().Name)
	m = opened(session.NewExample(), 80, 24, "Shelf", "u n r e a d")
	require.NoError(t, os.Remove("unreadable.toml"))
	m.press("f6")
	assert.Contains(t, m.s.Message().Text, "no such file")
	m.press("enter")
	require.NotNil(t, m.prompt)
	assert.Equal(t, "unreadable.toml", m.prompt.line.Text)
}

// An unreadable job is opened so that it can be corrected, and cannot be the basis of a new one.
func TestAnUnreadableJobIsOpenedToBeMended(t *testing.T) {
	shelved(t)
	m := opened(session.NewExample(), 80, 24, "Shelf", "u n r e a d f6")
	assert.Contains(t, m.s.Message().Text, "15 AXG")
	assert.True(t, m.s.Invented)
	m.press("enter")
	assert.Equal(t, "unreadable.toml", m.s.Path)
	assert.NotEmpty(t, m.s.Problems())
}

// Another folder is asked for, and listed; if the name is no folder, the screen says so and it stays to
// be corrected.
func TestAnotherFolderOnTheShelf(t *testing.T) {
	shelved(t)
	require.NoError(t, os.Mkdir("older", 0o700))
	require.NoError(t, os.Rename("wound.toml", "older/wound.toml"))
	m := opened(session.NewExample(), 80, 24, "Shelf", "f7 o l tab")
	assert.Equal(t, "older"+string(filepath.Separator), m.prompt.line.Text, "folders complete")
	m.press("enter")
	assert.Contains(t, m.View(), "older: 1 of 1 jobs")
	m.press("f6")
	assert.Equal(t, filepath.Join("older", "wound-2.toml"), m.s.Path, "beside the old one")
	m = opened(session.NewExample(), 80, 24, "Shelf", "f7 o x enter")
	assert.Contains(t, m.View(), "ox: there is no such folder")
	m.press("f7")
	assert.Equal(t, "ox", m.prompt.line.Text)
}

// A paste on the shelf goes into the search, whole and after what is typed there, and runs no command;
// nor does a line end or a control character in it.
func TestPasteSearchesTheShelf(t *testing.T) {
	shelved(t)
	for text, want := range map[string]string{"proved.toml": "", "First from": "proved.toml", "q?:!": "", "First\nfrom\x1b": "proved.toml"} {
		m := opened(session.NewExample(), 80, 24, "Shelf", "")
		m.gets(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
		require.Equal(t, "Shelf", m.view().Name())
		require.False(t, m.helping || m.prompt != nil || m.then != nil || m.picked != nil, text)
		assert.Contains(t, m.View(), "search: "+strings.NewReplacer("\n", " ", "\x1b", "").Replace(text))
		if want != "" {
			assert.Contains(t, m.View(), "─ "+want, "the only one that has it is marked")
			assert.Contains(t, m.View(), "1 of 4 jobs")
		}
	}
	m := opened(session.NewExample(), 80, 24, "Shelf", "f i r")
	m.gets(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("st from"), Paste: true})
	assert.Contains(t, m.View(), "search: first from")
	assert.Contains(t, m.View(), "1 of 4 jobs")
}

// A click on the shelf reaches the job there.
func TestClickingOnTheShelf(t *testing.T) {
	shelved(t)
	m := opened(session.NewExample(), 80, 24, "Shelf", "home")
	for range 2 {
		m.Update(tea.MouseMsg{X: 10, Y: 5, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
	}
	assert.Contains(t, []string{"wound.toml", "proved.toml", "planned.toml"}, m.s.Path)
}

// Random keys on a shelf with jobs: opening, beginning, sorting and saving from there never breaks a
// frame, and the old jobs stay unchanged unless they are saved.
func TestRandomHandsOnTheShelf(t *testing.T) {
	tuitest.OneGoroutine(t)
	shelved(t)
	r := rand.New(rand.NewPCG(11, 7))
	keys := strings.Fields("up down left right home end pgup pgdown enter enter esc f6 f6 f7 f8 f9 tab shift+tab backspace ctrl+r ctrl+s ctrl+k ctrl+z d 1 a m i l")
	m := opened(session.NewExample(), 80, 24, "Shelf", "")
	w, h := 80, 24
	for i := range 1500 {
		if i%40 == 0 {
			w, h = needW+r.IntN(180), needH+r.IntN(60)
			m.Update(tea.WindowSizeMsg{Width: w, Height: h})
			for k, name := range m.tabNames() {
				if name == []string{"Shelf", "Wound"}[r.IntN(2)] && m.then == nil && m.prompt == nil {
					m.bring(k)
				}
			}
		}
		m.press(keys[r.IntN(len(keys))])
		tuitest.CheckFrame(t, m.View(), w, h)
		require.False(t, t.Failed(), "event %d", i)
		if m.s.Path != "" && !m.s.Dirty() {
			text, err := os.ReadFile(m.s.Path)
			require.NoError(t, err)
			require.Equal(t, string(text), m.s.Document().Text(), "event %d", i)
		}
	}
	m.End()
}
