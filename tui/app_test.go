package tui

import (
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onStage starts the program on the example in a terminal in the process.
func onStage(t *testing.T, w, h int) (*tuitest.Stage, *Model) {
	t.Helper()
	t.Chdir(t.TempDir())
	m := New(session.NewExample(), recovery.Store{Dir: filepath.Join(t.TempDir(), "state")})
	st := tuitest.Start(t, m, w, h)
	st.WaitFor("charging begins")
	return st, m
}

// turnsRow is the row of the turns on the Trials screen.
var turnsRow = regexp.MustCompile(`(?m)^\W*Turns +\d+ of \d+ +(\d+) of \d+(?: ?[!✗])? +(\d+) of `)

// turnsOf is that row's text for the first two trials; the old winding comes before them.
func turnsOf(screen string) [2]string {
	if m := turnsRow.FindStringSubmatch(screen); m != nil {
		return [2]string{m[1], m[2]}
	}
	return [2]string{}
}

// From the example to an exported card, typing only keys that the screen names.
func TestFromTheExampleToACard(t *testing.T) {
	st, m := onStage(t, 80, 24)
	st.WaitFor("[ thinner")
	before := m.s.Outcome().Trials[1].CutInRPM.Value
	st.Key("right")
	st.Type("+++")
	st.WaitFor("not saved")
	st.WaitUntil("21 and 3 turns in B", func(screen string) bool { return turnsOf(screen)[1] == "24" })
	st.Type("[")
	st.WaitFor("17 AWG")
	st.Type("w")
	st.WaitFor("Write the winding card of trial B")
	st.Key("enter")
	st.WaitFor("card written to")
	text, err := os.ReadFile("mill-race-alternator-card-b.txt")
	require.NoError(t, err)
	assert.Contains(t, string(text), "17 AWG")
	st.Type("q")
	st.WaitFor("Leave?")
	st.Type("d")
	final := st.Quit().(*Model)
	assert.Less(t, final.s.Outcome().Trials[1].CutInRPM.Value, before, "more turns charge earlier")
}

func TestValuesAreTypedKeptAndUndone(t *testing.T) {
	st, m := onStage(t, 100, 30)
	st.Type("24")
	st.Key("enter")
	st.WaitUntil("24 turns in A", func(screen string) bool { return turnsOf(screen)[0] == "24" })
	st.Type(" ")
	for range 10 {
		st.Key("backspace")
	}
	st.Type("0.9 mm over")
	st.Key("enter")
	st.WaitFor("0.9 over")
	st.Key("up")
	st.Type(" x")
	st.Key("enter")
	st.WaitFor("expected a wire size")
	st.WaitFor("0.9 mm overx")
	st.Key("ctrl+z", "ctrl+z")
	st.WaitFor("15 AWG")
	st.Key("ctrl+s")
	st.WaitFor("Save the job as")
	st.Key("enter")
	st.WaitFor("saved to")
	d, _, err := job.Load("mill-race-alternator.toml")
	require.NoError(t, err)
	assert.Empty(t, d.Problems())
	assert.Equal(t, 24.0, d.Job().Trials[0].Turns.Value)
	assert.Contains(t, d.Text(), "# counted on squared paper", "comments survive")
	st.Key("ctrl+q")
	st.Quit()
	assert.False(t, m.s.Dirty())
}

// Every screen in turn, at every size, while the size changes under it.
func TestAllScreensWhileResizing(t *testing.T) {
	st, m := onStage(t, 80, 24)
	for _, size := range [][2]int{{200, 60}, {100, 30}, {60, 10}, {80, 24}, {120, 40}} {
		st.Resize(size[0], size[1])
		if size[0] < needW || size[1] < needH {
			st.WaitFor("this needs 60×20")
			continue
		}
		st.WaitFor("[Trials]")
		for i := range m.views {
			st.Key("tab")
			st.WaitFor("[" + m.views[(2+i)%len(m.views)].Name() + "]")
		}
		st.WaitFor("charging begins")
	}
	st.Type("q")
	st.Quit()
}

func TestUnsavedWorkIsOfferedAgain(t *testing.T) {
	store := recovery.Store{Dir: t.TempDir()}
	m := New(session.NewExample(), store)
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("+")})
	m.KeepUnsaved()
	again := New(session.NewExample(), store)
	again.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	assert.Contains(t, again.View(), "Unsaved work")
	again.Update(tea.KeyMsg{Type: tea.KeyEsc})
	assert.Equal(t, m.s.Document().Text(), again.s.Document().Text(), "leaving the question loses nothing")
	again.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("u")})
	assert.False(t, again.s.Dirty())
}

// A file changed by something else is not overwritten.
func TestChangedFileIsNotWrittenOver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "j.toml")
	require.NoError(t, os.WriteFile(path, []byte(job.Example().Text()), 0o600))
	d, mark, err := job.Load(path)
	require.NoError(t, err)
	m := New(session.New(d, path, mark), recovery.Store{})
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("+")})
	require.NoError(t, os.WriteFile(path, []byte("# mine\n"), 0o600))
	m.Update(tea.KeyMsg{Type: tea.KeyCtrlS})
	assert.Contains(t, m.View(), "Save the job as", "another name is asked for")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "# mine\n", string(text))
}

// No size and no state of the job may break a frame.
func TestFramesOfPoorJobs(t *testing.T) {
	tuitest.OneGoroutine(t)
	for _, text := range []string{"", "[[trial]]\n", job.Template("x"), "[machine]\nslots = 36\npoles = 7\n[[trial]]\nturns = \"abc\"\ngauge = \"?\"\n"} {
		m := New(session.New(job.Parse(text), "", job.Mark{}), recovery.Store{})
		for w := needW; w <= 200; w += 17 {
			for h := needH; h <= 60; h += 9 {
				m.Update(tea.WindowSizeMsg{Width: w, Height: h})
				for i := range m.views {
					m.bring(i)
					tuitest.CheckFrame(t, m.View(), w, h)
				}
			}
		}
	}
}

// Random keys never break the program, and what is on the screen stays a whole frame.
func FuzzKeys(f *testing.F) {
	f.Add("++[]<>aAfFcno", uint8(0))
	f.Add("\t\t\t12\r\x1b?xq", uint8(1))
	f.Fuzz(func(t *testing.T, keys string, tab uint8) {
		if len(keys) > 60 {
			return
		}
		t.Chdir(t.TempDir())
		m := New(session.NewExample(), recovery.Store{})
		m.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
		m.bring(int(tab))
		for _, r := range keys {
			msg := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
			if r < 0x20 || r == 0x7f {
				msg = tea.KeyMsg{Type: tea.KeyType(r)}
			}
			m.Update(msg)
		}
		tuitest.CheckFrame(t, m.View(), 100, 30)
	})
}

// BenchmarkKeystroke is one key that changes the job: evaluate and draw at 120×40.
func BenchmarkKeystroke(b *testing.B) {
	m := New(session.NewExample(), recovery.Store{})
	m.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	keys := []string{"+", "-"}
	for i := 0; b.Loop(); i++ {
		m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(keys[i%2])})
		_ = m.View()
	}
}

// BenchmarkFrame is drawing alone.
func BenchmarkFrame(b *testing.B) {
	m := New(session.NewExample(), recovery.Store{})
	m.Update(tea.WindowSizeMsg{Width: 120, Height: 40})
	for b.Loop() {
		_ = m.View()
	}
}

// Words with blanks between them, a unit after a number, a tolerance: typed in the form as a person
// does.
func TestTypingInTheForm(t *testing.T) {
	st, m := onStage(t, 100, 30)
	st.Key("shift+tab")
	st.WaitFor("[Machine]")
	st.Type("Old pump, left hand")
	st.WaitFor("pump, left hand")
	st.Key("enter", "ctrl+s")
	st.WaitFor("Save the job as")
	st.Key("enter")
	st.WaitFor("saved to")
	assert.Equal(t, "Old pump, left hand", m.s.Job().Name)
	st.Key("ctrl+c")
	st.Quit()

	m = New(session.New(job.Parse(job.Template("x")), "", job.Mark{}), recovery.Store{})
	m.Update(tea.WindowSizeMsg{Width: 100, Height: 30})
	m.goTo("machine.bore")
	for _, r := range "3.5 in" {
		m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	assert.InDelta(t, 88.9, m.s.Job().Machine.BoreMM.Value, 1e-9)
	assert.Contains(t, m.s.Document().Text(), "\nbore_in = 3.5\n")
	m.Update(tea.KeyMsg{Type: tea.KeyEnter})
	for _, r := range "~33 ±1.5" {
		m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}})
	}
	assert.Contains(t, m.s.Document().Text(), "\nstack_mm = \"~33 ±1.5\"\n")
	assert.Contains(t, m.View(), "~33 ±1.5")
}
