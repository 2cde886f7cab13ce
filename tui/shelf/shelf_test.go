package shelf

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// jobs changes the test's working folder to one with the jobs of testdata/shelf, all last written on
// one day.
func jobs(t *testing.T) {
	t.Helper()
	paths, err := filepath.Glob("../../testdata/shelf/*")
	require.NoError(t, err)
	require.NotEmpty(t, paths)
	dir := t.TempDir()
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		to := filepath.Join(dir, filepath.Base(p))
		require.NoError(t, os.WriteFile(to, text, 0o600))
		day := time.Date(2026, 1, 15, 12, 0, 0, 0, time.Local)
		require.NoError(t, os.Chtimes(to, day, day))
	}
	t.Chdir(dir)
}

// went records which doors were used.
type went struct{ opened, begun, asked []string }

// doors record what is asked of them.
func (w *went) doors() Doors {
	to := func(list *[]string) func(string) tea.Cmd {
		return func(path string) tea.Cmd { *list = append(*list, path); return nil }
	}
	return Doors{Open: to(&w.opened), Begin: to(&w.begun), Folder: func(now string) { w.asked = append(w.asked, now) }}
}

// onShelf is the screen with its jobs read.
func onShelf(t *testing.T, w, h int) (*session.Session, *View, *went) {
	t.Helper()
	jobs(t)
	doors := &went{}
	s, v := session.NewExample(), New(doors.doors())
	tuitest.Draw(t, v, s, w, h)
	tuitest.Work(t, s)
	return s, v, doors
}

func TestShelfFrames(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {80, 21}, {100, 27}, {120, 37}, {200, 57}} {
		t.Run(fmt.Sprint(size), func(t *testing.T) {
			w, h := size[0], size[1]
			here, err := os.Getwd()
			require.NoError(t, err)
			s, v, _ := onShelf(t, w, h)
			t.Chdir(here) // the frames lie above it
			tuitest.Golden(t, fmt.Sprintf("shelf-%dx%d", w, h), tuitest.Draw(t, v, s, w, h))
			s.Theme = kit.Theme{Colour: true}
			if w == 80 {
				tuitest.Press(t, v, s, w, h, "end")
				tuitest.GoldenStyled(t, "shelf-unreadable-80x21-styles", tuitest.Draw(t, v, s, w, h))
			}
			s.Theme = kit.Theme{ASCII: true}
			tuitest.CheckASCII(t, tuitest.Draw(t, v, s, w, h))
		})
	}
}

// The folder is read in the background: until then the screen says so and takes keys, and text typed
// meanwhile is kept.
func TestTheFolderIsReadBesideTheKeys(t *testing.T) {
	jobs(t)
	s, v := session.NewExample(), New((&went{}).doors())
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "reading the jobs in it")
	tuitest.Press(t, v, s, 80, 21, "m a s t down right left")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "search: mast")
	tuitest.Work(t, s)
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "1 of 4 jobs")
	assert.Contains(t, frame, "Second from the yard")
	tuitest.Press(t, v, s, 80, 21, "esc f8")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "4 of 4 jobs, by date; 1 left out; being read again", "the jobs stay meanwhile")
	require.NoError(t, os.Remove("wound.toml"))
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "3 of 3 jobs, by date; 1 left out  ")
}

// Typing searches; a letter deleted finds more; a search without a hit says so.
func TestSearching(t *testing.T) {
	s, v, doors := onShelf(t, 80, 21)
	tuitest.Press(t, v, s, 80, 21, "1 6 space a w g")
	assert.Equal(t, []string{"proved.toml"}, files(v))
	tuitest.Press(t, v, s, 80, 21, "x")
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 80, 21)), "None of 4 jobs has “16 awgx”")
	tuitest.Press(t, v, s, 80, 21, "backspace enter")
	assert.Equal(t, []string{"proved.toml"}, doors.opened)
	assert.True(t, v.Editing(s), "signs are searched for too")
	tuitest.Press(t, v, s, 80, 21, "esc")
	assert.Len(t, files(v), 4)
	v.Key(s, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("36/12"), Paste: true})
	tuitest.Draw(t, v, s, 80, 21)
	assert.Len(t, files(v), 3)
	v.Key(s, tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(strings.Repeat("9", 400)), Paste: true})
	assert.Less(t, len(v.typed), 100)
}

func files(v *View) (names []string) {
	for _, e := range v.shown.list {
		names = append(names, e.File)
	}
	return names
}

// Each column sorts, both ways; unusable jobs stay last.
func TestSorting(t *testing.T) {
	s, v, _ := onShelf(t, 120, 37)
	for _, want := range []struct{ keys, by, first string }{
		{"", "date", "planned.toml"}, {"ctrl+r", "date", "proved.toml"}, {"right", "state", "planned.toml"}, {"ctrl+r", "state", "proved.toml"},
		{"right", "file", "planned.toml"}, {"right", "machine", "proved.toml"}, {"left left left left", "begins", "proved.toml"},
	} {
		tuitest.Press(t, v, s, 120, 37, want.keys)
		assert.Equal(t, want.by, v.by)
		assert.Equal(t, want.first, files(v)[0], want)
		assert.Equal(t, "unreadable.toml", files(v)[3], want)
		assert.Contains(t, tuitest.Draw(t, v, s, 120, 37), want.by+v.sign(s.Theme))
	}
	seen := map[string]bool{}
	for range orders {
		tuitest.Press(t, v, s, 120, 37, "right")
		seen[v.by] = true
	}
	assert.Len(t, seen, len(orders))
}

// A job is opened, the next of its kind begun, and another folder asked for, each for the marked job.
func TestDoors(t *testing.T) {
	s, v, doors := onShelf(t, 80, 21)
	tuitest.Press(t, v, s, 80, 21, "down f6 down enter f7")
	assert.Equal(t, []string{"wound.toml"}, doors.begun)
	assert.Equal(t, []string{"proved.toml"}, doors.opened)
	assert.Len(t, doors.asked, 1)
	v.Show("nowhere")
	tuitest.Draw(t, v, s, 80, 21)
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "nowhere: there is no such folder")
	assert.False(t, v.Bindings(s)[0].Enabled(), "there is nothing to open")
	other := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(other, "sums.txt"), nil, 0o600))
	v.Show(other)
	tuitest.Draw(t, v, s, 80, 21)
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 80, 21)), "No job lies here")
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 80, 21)), "sums.txt: its name does not end in .toml")
}

// What is wrong with a file is shown whole in the list too, on as many lines as needed, if there is
// room for all rows; a click on any of its lines marks it. Otherwise its row is one line.
func TestAProblemStandsWholeInTheList(t *testing.T) {
	jobs(t)
	const bad = "[[trial]]\nname = \"A\"\ngauge = \"0.71\"\n"
	require.NoError(t, os.WriteFile("sizeless.toml", []byte(bad), 0o600))
	const why = `sizeless.toml: 3:9: trial[0].gauge: read "0.71", expected a wire size; say which unit: "0.71 mm" for a diameter, or "AWG" or "SWG" with a gauge number`
	for _, size := range [][2]int{{60, 25}, {80, 28}, {100, 37}, {120, 37}, {200, 57}} {
		s, v := session.NewExample(), New((&went{}).doors())
		tuitest.Draw(t, v, s, size[0], size[1])
		tuitest.Work(t, s)
		tuitest.Draw(t, v, s, size[0], size[1])
		v.marked = v.shown.list[0].File
		frame := tuitest.Draw(t, v, s, size[0], size[1])
		at := strings.Index(frame, "✗ sizeless")
		require.GreaterOrEqual(t, at, 0, frame)
		_, body := v.listAreas()
		list := ""
		for _, line := range strings.Split(frame, "\n")[body.Y-v.at.Y : body.Y-v.at.Y+body.H] {
			list += string([]rune(line)[:min(body.W, len([]rune(line)))]) + "\n"
		}
		assert.Contains(t, tuitest.Words(list), why, "%v\n%s", size, frame)
		for y, line := range strings.Split(frame, "\n") {
			if strings.Contains(line, "gauge number") || strings.Contains(line, "✗ sizeless") {
				v.marked = v.shown.list[0].File
				v.Click(s, v.at.X+10, v.at.Y+y)
				assert.Equal(t, "sizeless.toml", v.marked, "%v, line %d", size, y)
			}
		}
	}
	for i := range 30 {
		require.NoError(t, os.WriteFile(fmt.Sprintf("more-%d.toml", i), []byte(bad), 0o600))
	}
	s, v := session.NewExample(), New((&went{}).doors())
	tuitest.Draw(t, v, s, 80, 21)
	tuitest.Work(t, s)
	tuitest.Press(t, v, s, 80, 21, "end")
	assert.Greater(t, strings.Count(tuitest.Draw(t, v, s, 80, 21), "✗ more-"), 5, "a line each")
}

// A file that cannot be used says why, whole.
func TestAFileThatCannotBeUsedSaysWhy(t *testing.T) {
	s, v, _ := onShelf(t, 60, 17)
	tuitest.Press(t, v, s, 60, 17, "end")
	frame := tuitest.Words(tuitest.Draw(t, v, s, 60, 17))
	assert.Contains(t, frame, "✗ unreadable.toml: ")
	assert.Contains(t, frame, `read "15 AXG", expected a wire size`)
}

// The mouse marks a job, opens the marked one, and sorts by a head.
func TestClicks(t *testing.T) {
	s, v, doors := onShelf(t, 80, 21)
	click := func(text string) {
		for y, line := range strings.Split(tuitest.Draw(t, v, s, 80, 21), "\n") {
			if before, _, ok := strings.Cut(line, text); ok {
				v.Click(s, kit.Width(before), y)
				tuitest.Draw(t, v, s, 80, 21)
				return
			}
		}
		t.Errorf("%q is not there", text)
	}
	click("First from")
	assert.Equal(t, "proved.toml", v.marked)
	assert.Empty(t, doors.opened)
	click("First from")
	assert.Equal(t, []string{"proved.toml"}, doors.opened)
	click("turns")
	assert.Equal(t, "turns", v.by)
	assert.True(t, v.least)
	click("turns▲")
	assert.False(t, v.least)
	v.Click(s, 3, 20)
	v.Click(s, 3, 9)
	assert.Len(t, doors.opened, 1, "under the jobs there is nothing")
}

// The rest of a job is shown under its winding: what was wound before, or its other trials.
func TestTheRestOfAJob(t *testing.T) {
	s, v, _ := onShelf(t, 140, 37)
	tuitest.Press(t, v, s, 140, 37, "m i l l")
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 140, 37)), "Trial A: 21 turns of 1 × 16 AWG, wound before, 2025-06-20.")
	text := "format = 1\n[[trial]]\nname = \"A\"\nturns = 9\n[[trial]]\nname = \"B\"\nturns = 10\ngauge = \"18 AWG\"\n"
	require.NoError(t, os.WriteFile("two.toml", []byte(text), 0o600))
	tuitest.Press(t, v, s, 140, 37, "esc f8 t w o")
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 140, 37)), "Trial B: 10 turns of 1 × 18 AWG.")
}

// What the bench learns is shown beside the jobs, or instead of them.
func TestWhatTheBenchLearnsIsShown(t *testing.T) {
	s, v, _ := onShelf(t, 80, 21)
	assert.NotContains(t, tuitest.Draw(t, v, s, 80, 21), "your last 2 jobs")
	tuitest.Press(t, v, s, 80, 21, "f9")
	frame := tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Contains(t, frame, "your last 2 jobs")
	assert.Contains(t, frame, "your last 3 jobs")
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 200, 57)), "your last 2 jobs")
}

// Files in the folder that are no jobs are listed under the jobs with the reason, even if the list is
// shorter than the folder; they cannot be marked, and a search finds only jobs.
func TestWhatIsLeftOutIsNamed(t *testing.T) {
	s, v, doors := onShelf(t, 80, 21)
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "left out: notes.txt: its name does not end in .toml")
	tuitest.Press(t, v, s, 80, 21, "end")
	last := v.marked
	_, body := v.listAreas()
	before, _, _ := strings.Cut(tuitest.Draw(t, v, s, 80, 21), "left out: ")
	y := v.at.Y + strings.Count(before, "\n")
	v.Click(s, 4, y)
	assert.Equal(t, last, v.marked)
	assert.Empty(t, doors.opened)
	h := 11 // the jobs alone are more than fit
	tuitest.Press(t, v, s, 80, h, "end")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, h), "left out: notes.txt")
	_, body = v.listAreas()
	require.Less(t, body.H, len(v.shown.list)+1)
	v.Click(s, 4, body.Y+body.H-1)
	assert.Equal(t, last, v.marked, "the lowest line is no job")
	require.NoError(t, os.WriteFile("more.txt", nil, 0o600))
	tuitest.Press(t, v, s, 80, 21, "f8")
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "left out, 2: its name does not end in .toml: more.txt, notes.txt", "a line for a reason")
	tuitest.Press(t, v, s, 80, 21, "p")
	assert.NotContains(t, tuitest.Draw(t, v, s, 80, 21), "left out: ")
}

// Where there is room both boxes are shown, under the list or beside it, and the key that switches
// between them is not named; abbreviated column heads are explained.
func TestBothBoxesWhereThereIsRoom(t *testing.T) {
	for size, both := range map[[2]int]bool{{80, 22}: false, {100, 28}: true, {120, 38}: true, {200, 58}: true, {100, 22}: false} {
		t.Run(fmt.Sprint(size), func(t *testing.T) {
			s, v, _ := onShelf(t, size[0], size[1])
			frame := tuitest.Words(tuitest.Draw(t, v, s, size[0], size[1]))
			assert.Contains(t, frame, "─ planned.toml ─")
			assert.Equal(t, both, strings.Contains(frame, "What this bench learns"))
			named := false
			for _, b := range v.Bindings(s) {
				named = named || b.Label == "this bench"
			}
			assert.Equal(t, !both, named)
			if both && size[0] > 100 {
				assert.Contains(t, frame, "s/p: slots and poles.")
			}
		})
	}
}
