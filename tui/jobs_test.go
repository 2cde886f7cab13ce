package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/wants"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fullColumn reports whether a column is full: room, volts, start of charging, limit, ohms and weight
// of the first trial.
func fullColumn(s *session.Session) bool {
	if len(s.Outcome().Trials) == 0 {
		return false
	}
	t := &s.Outcome().Trials[0]
	return t.WireFill.Known() && t.TurnsThatFit.Known() && t.LinePerRPM.Known() && t.CutInRPM.Known() &&
		t.LimitAmps.Known() && t.LeadOhms20.Known() && t.BuyKg.Known()
}

// From nothing to the first full column in fewer than 70 keys: a claw-pole stator of 42 slots (an
// invented one), typed into the program on a terminal in the process.
func TestFromNothingToTheFirstFullColumn(t *testing.T) {
	t.Chdir(t.TempDir())
	m := New(session.New(job.Parse(job.Template("")), "", job.Mark{}), recovery.Store{})
	st := tuitest.Start(t, m, 80, 24)
	st.WaitFor("next: slots")
	keys := 0
	typed := func(values ...string) {
		for _, v := range values {
			st.Type(v)
			st.Key("enter")
			keys += len(v) + 1
		}
	}
	// Slots, poles; span, layers, diameter at the gap, stack, slot area; turns, the wire of the old
	// winding, its ohms, the rotor and its ohms; speed, volts and field of the spin-up reading.
	typed("42", "14")
	st.Key("down") // three phases, when nothing is said
	keys++
	typed("3", "2", "95", "34", "68", "8", "1.7 mm", "0.055", "w", "3.1", "1000", "12.6", "2.5")
	st.WaitFor("Trial winding: turns")
	typed("16", "16")
	st.WaitFor("A: wire fill")
	final := st.Quit().(*Model)
	require.True(t, fullColumn(final.s), "%+v", final.s.Outcome().Trials[0])
	assert.Less(t, keys, 70)
	t.Logf("%d keys", keys)
	assert.Equal(t, 42.0, final.s.Job().Machine.Slots.Value)
	assert.Equal(t, "wound", final.s.Job().Field.Kind)
	assert.Equal(t, "16 AWG", final.s.Job().Trials[0].Gauge.String())
}

// Everything asked for first is needed by its figures: without it alone, in a job that has all the
// rest, one of them is missing or less well founded.
func TestNothingIsAskedForFirstInVain(t *testing.T) {
	for _, path := range []string{"machine.slots", "machine.poles", "slot.area", "trial[0].turns", "trial[0].gauge"} {
		s := session.NewExample()
		s.Edit(s.Document().Clear(path))
		assert.False(t, fullColumn(s), path)
		m := opened(s, 100, 30, "Machine", "ctrl+f")
		assert.Contains(t, m.View(), m.s.Theme.Glyphs().Needed, path)
	}
	assert.True(t, fullColumn(session.NewExample()))
}

// A blank job opens on Machine, where the work begins; one already begun opens on Trials.
func TestABlankJobOpensOnMachine(t *testing.T) {
	m := opened(session.New(job.Parse(""), "", job.Mark{}), 80, 24, "", "")
	assert.Contains(t, m.View(), "[Machine]")
	assert.Contains(t, m.View(), "First things")
	assert.Contains(t, opened(session.NewExample(), 80, 24, "", "").View(), "[Trials]")
	m.press("ctrl+f")
	assert.NotContains(t, m.View(), "First things")
}

// Enter on a missing figure goes to the field it waits for, for every figure that says what it needs.
func TestAMissingFigureLeadsToItsField(t *testing.T) {
	led := 0
	for _, gone := range []string{"slot.area", "machine.poles", "machine.stack", "drive.kind", "trial[0].gauge", "trial[0].turns"} {
		s := session.NewExample()
		s.Edit(s.Document().Clear(gone))
		m := opened(s, 200, 60, "Trials", "")
		for range 60 {
			m.press("down enter")
			if m.tabNames()[m.active] == "Trials" && !m.editing() {
				continue
			}
			led++
			for i, name := range m.tabNames() {
				if name == "Trials" {
					m.press("esc")
					m.bring(i)
				}
			}
		}
		m.goTo(gone)
		assert.NotContains(t, m.s.Message().Text, "no screen", gone)
	}
	assert.Greater(t, led, 6)
	j := job.Example().Job()
	for _, why := range []string{"needs the wire", "needs the poles", "needs the top speed", "needs a spin-up reading of the old winding or the speed at which it began to charge (with its turns), or a trial coil, or a gap flux density, or the magnets"} {
		path, ok := wants.FieldFor(&j, why, 1)
		require.True(t, ok, why)
		_, ok = job.InputAt(path)
		assert.True(t, ok, path)
	}
	_, ok := wants.FieldFor(&j, "it never begins to charge", 0)
	assert.False(t, ok)
}

// Another job is opened from inside: typing completes, and stays if opening fails; the jobs opened last
// are listed.
func TestOpeningFromInside(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	for _, name := range []string{"hub-one.toml", "hub-two.toml", "note.txt"} {
		require.NoError(t, os.WriteFile(name, []byte(job.Template(strings.TrimSuffix(name, ".toml"))), 0o600))
	}
	m := New(session.NewExample(), recovery.Store{Dir: filepath.Join(dir, "state")})
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	m.press("ctrl+o h u tab")
	assert.Equal(t, "hub-", m.prompt.line.Text)
	assert.Contains(t, m.View(), "hub-two.toml")
	assert.NotContains(t, m.View(), "note.txt")
	m.press("x enter")
	require.NotNil(t, m.prompt)
	assert.Equal(t, "hub-x", m.prompt.line.Text, "what was typed stays")
	assert.Contains(t, m.View(), "no such file")
	m.press("backspace t tab")
	assert.Equal(t, "hub-two.toml", m.prompt.line.Text)
	m.press("enter")
	assert.Equal(t, "hub-two.toml", m.s.Path)
	assert.Equal(t, "hub-two", m.s.Job().Name)
	assert.Contains(t, m.View(), "[Machine]", "it is blank")

	m.press("4 2 enter ctrl+o down enter")
	assert.Contains(t, m.View(), "changes not saved to hub-two.toml")
	m.press("esc")
	assert.Equal(t, 42.0, m.s.Job().Machine.Slots.Value)
	m.press("ctrl+s ctrl+d")
	assert.Empty(t, m.s.Path)
	assert.True(t, m.s.Dirty(), "a copy is in no file")
	assert.Equal(t, 42.0, m.s.Job().Machine.Slots.Value)
	m.press("f2")
	assert.Contains(t, m.View(), "Save the job as")
	for range m.prompt.line.Text {
		m.press("backspace")
	}
	m.press("o . t o m l enter")
	assert.Equal(t, "o.toml", m.s.Path)
	m.press("ctrl+n")
	assert.True(t, m.s.Empty())
	assert.Empty(t, m.s.Path)
	m.press("ctrl+o down")
	assert.Equal(t, filepath.Join(dir, "o.toml"), m.prompt.line.Text, "the last one first")
}

// Every command is found by its name and run.
func TestCommandsByName(t *testing.T) {
	m := opened(session.NewExample(), 80, 24, "Machine", "ctrl+p i n c h e s enter")
	assert.Contains(t, m.View(), "lengths in inches")
	m.press(": c u r v e s enter")
	assert.Contains(t, m.View(), "[Curves]")
	m.press("ctrl+p t h i c k e r enter")
	assert.Contains(t, m.View(), "[Trials]")
	assert.Equal(t, "14 AWG", m.s.Job().Trials[0].Gauge.String())
	m.press("ctrl+p esc")
	assert.Nil(t, m.picked)
	names := map[string]bool{}
	for _, d := range m.commands() {
		assert.NotEmpty(t, d.name)
		names[d.name] = true
	}
	for _, b := range m.everywhere() {
		if b.Do != nil && b.Help().Desc != "" && !slices.ContainsFunc(b.Keys(), moves) {
			found := slices.ContainsFunc(m.commands(), func(d doing) bool { return strings.HasPrefix(b.Help().Desc, d.name) })
			assert.True(t, found, b.Help().Desc)
		}
	}
}

// The findings are listed whole, the most serious first, and lead to their fields.
func TestFindingsAreReadWholeAndLeadToTheirField(t *testing.T) {
	s := session.NewExample()
	s.Type("trial[1].turns", "60")
	s.Type("machine.bore", "8x")
	m := opened(s, 80, 24, "Trials", "!")
	view := tuitest.Words(m.View())
	assert.Contains(t, view, "8x", "what cannot be read comes first")
	broken, doubt := 0, 0
	for i, o := range m.list.Options {
		if o.Mark == kit.Broken {
			broken = i
		} else if doubt == 0 {
			doubt = i
		}
	}
	assert.Positive(t, broken)
	assert.Less(t, broken, doubt)
	m.press("enter")
	assert.Contains(t, m.View(), "[Machine]")
	assert.Contains(t, m.View(), "▸ Diameter at the gap")
	for _, o := range m.list.Options {
		m.press("f3")
		for range m.list.Options {
			if m.list.Options[m.list.Cursor].ID == o.ID {
				break
			}
			m.press("down")
		}
		seen := tuitest.Words(m.View())
		for _, word := range strings.Fields(o.Label + " " + o.Note) {
			require.Contains(t, seen, word)
		}
		m.press("esc")
	}
}

// While a value is being typed, letters and signs are its text, on every screen.
func TestSignsAreTextWhileAValueIsGiven(t *testing.T) {
	m := opened(session.NewExample(), 80, 24, "Machine", "x ? : ! q")
	assert.Equal(t, "x?:!q", m.s.Job().Name)
	m = opened(session.NewExample(), 80, 24, "Trials", "space ? : !")
	assert.Nil(t, m.picked)
	assert.False(t, m.helping)
	m = opened(session.NewExample(), 80, 24, "Trials", "down s w g space 1 9 enter")
	assert.Equal(t, "19 SWG", m.s.Job().Trials[0].Gauge.String(), "letters begin a wire")
	m = opened(session.NewExample(), 80, 24, "Trials", "")
	m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("24"), Paste: true})
	m.press("enter")
	assert.Equal(t, 24.0, m.s.Job().Trials[0].Turns.Value, "a paste opens the cell")
	m = opened(session.NewExample(), 80, 24, "Machine", "")
	m.goTo("field.kind")
	m.press("m a g")
	assert.Equal(t, "wound", m.s.Job().Field.Kind, "not before it is taken")
	m.press("enter")
	assert.Equal(t, "magnets", m.s.Job().Field.Kind)
}

// Pressing the leave key twice leaves, and unsaved work is kept.
func TestLeavingTwiceLeaves(t *testing.T) {
	for _, keys := range []string{"ctrl+c ctrl+c", "q q", "ctrl+q ctrl+c"} {
		b := newBench(t)
		m := b.open()
		press(m, "+")
		var cmd tea.Cmd
		for _, k := range strings.Fields(keys) {
			_, cmd = m.Update(tuitest.KeyMsg(k))
		}
		require.NotNil(t, cmd, keys)
		assert.Equal(t, tea.Quit(), cmd())
		assert.Equal(t, 1, b.copies(), keys)
		assert.Contains(t, m.End(), "offered again")
	}
}

// The mouse does what a key does: tabs, rows, options, the wheel.
func TestTheMouse(t *testing.T) {
	m := opened(session.NewExample(), 80, 24, "Machine", "")
	click := func(x, y int) {
		m.Update(tea.MouseMsg{X: x, Y: y, Button: tea.MouseButtonLeft, Action: tea.MouseActionPress})
	}
	at := func(text string) (x, y int) {
		for y, line := range strings.Split(m.View(), "\n") {
			if before, _, ok := strings.Cut(line, text); ok {
				return kit.Width(before), y
			}
		}
		t.Fatalf("%q is not there:\n%s", text, m.View())
		return 0, 0
	}
	click(at("Poles"))
	assert.Contains(t, m.View(), "▸ Poles")
	m.Update(tea.MouseMsg{Button: tea.MouseButtonWheelDown})
	assert.NotContains(t, m.View(), "▸ Poles")
	m.goTo("field.kind")
	m.press("space")
	click(at("magnets"))
	assert.Equal(t, "magnets", m.s.Job().Field.Kind)
	click(at("Layout"))
	assert.Contains(t, m.View(), "[Layout]")
	m.press("ctrl+p c u r v e s")
	click(at("Go to Curves"))
	assert.Contains(t, m.View(), "[Curves]")
	assert.NotNil(t, m.press("f4"))
}

// Saving, then opening the file just saved, shows what was saved, not what was read of it before; and
// the next of its kind begins from what was saved.
func TestWhatIsSavedOnTheWayIsWhatIsOpened(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	require.NoError(t, os.WriteFile("hub.toml", []byte(job.Template("hub")), 0o600))
	d, mark, err := job.Load("hub.toml")
	require.NoError(t, err)
	m := New(session.New(d, "hub.toml", mark), recovery.Store{Dir: filepath.Join(dir, "state")})
	m.Update(tea.WindowSizeMsg{Width: 80, Height: 24})
	m.press("4 2 enter ctrl+o h u b . t o m l enter")
	require.Contains(t, m.View(), "changes not saved to hub.toml")
	m.press("s")
	require.False(t, m.s.Dirty())
	text, err := os.ReadFile("hub.toml")
	require.NoError(t, err)
	assert.Equal(t, string(text), m.s.Document().Text())
	assert.Equal(t, 42.0, m.s.Job().Machine.Slots.Value)

	m.goTo("machine.slots")
	m.press("4 5 enter")
	m.beginFrom("hub.toml")
	require.Contains(t, m.View(), "changes not saved to hub.toml")
	m.press("s")
	assert.Equal(t, "hub-2.toml", m.s.Path)
	assert.Equal(t, 45.0, m.s.Job().Machine.Slots.Value)
}

// A copy continues where its original was: same screen, same trial, and changes made before copying can
// be undone in it. The original's file stays as it is, and records of what was wound are left out.
func TestACopyKeepsItsHistory(t *testing.T) {
	t.Chdir(t.TempDir())
	text := job.Example().Text() + "\n[[wound]]\ntrial = \"A\"\n"
	require.NoError(t, os.WriteFile("mill.toml", []byte(text), 0o600))
	m := opened(session.NewExample(), 100, 30, "Trials", "")
	m.press("ctrl+o m i l l enter")
	m.press("right + + tab ctrl+d")
	assert.Equal(t, 1, m.s.Trial)
	assert.Contains(t, m.View(), "[Layout]")
	assert.Contains(t, m.s.Message().Text, "a copy of mill.toml with what was not saved without what was wound")
	assert.Zero(t, m.s.Document().Count("wound"))
	turns := m.s.Job().Trials[1].Turns.Value
	m.press("ctrl+z")
	assert.Equal(t, 1, m.s.Document().Count("wound"), "leaving them out is a change as any other")
	m.press("ctrl+z")
	assert.Equal(t, turns-1, m.s.Job().Trials[1].Turns.Value)
	m.press("ctrl+z")
	assert.Equal(t, text, m.s.Document().Text(), "to the text of the file")
	assert.True(t, m.s.Dirty(), "which the copy is not in")
	assert.Empty(t, m.s.Path)
	m.press("ctrl+y ctrl+y ctrl+y")
	assert.Zero(t, m.s.Document().Count("wound"))
	assert.Equal(t, turns, m.s.Job().Trials[1].Turns.Value)
	file, err := os.ReadFile("mill.toml")
	require.NoError(t, err)
	assert.Equal(t, text, string(file))
}
