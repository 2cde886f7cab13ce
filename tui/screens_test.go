package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bring opens a screen, as a key would.
func (m *Model) bring(i int) {
	m.show(i)
	m.fit()
}

// press presses keys, named with blanks between them, and returns the last command.
func (m *Model) press(keys string) (cmd tea.Cmd) {
	for _, k := range strings.Fields(keys) {
		if k == "space" {
			k = " "
		}
		cmd = m.keys(tuitest.KeyMsg(k))
		m.work()
	}
	return cmd
}

// gets gives the program a message that starts no timer, and runs what it asks for.
func (m *Model) gets(msg tea.Msg) {
	m.tick = atOnce
	l := tuitest.Loop{Model: m}
	l.Send(msg)
	for l.Waiting() > 0 {
		l.Run(0)
	}
}

// atOnce is a timer that nobody waits for.
func atOnce(_ time.Duration, then func(time.Time) tea.Msg) tea.Cmd {
	return func() tea.Msg { return then(time.Time{}) }
}

// work runs all pending commands at once, and delivers the answers; also what these ask for.
func (m *Model) work() {
	l := tuitest.Loop{Model: m}
	for l.Want(m.s.Working()); l.Waiting() > 0; {
		l.Run(0)
	}
}

// opened is the program on a session, on a screen in a terminal of this size, after keys.
func opened(s *session.Session, w, h int, screen, keys string) *Model {
	m := New(s, recovery.Store{})
	m.gets(tea.WindowSizeMsg{Width: w, Height: h})
	for i, name := range m.tabNames() {
		if name == screen {
			m.bring(i)
		}
	}
	m.work()
	m.press(keys)
	return m
}

// states are what keys lead to on each screen: among them every state that has keys of its own.
var states = []struct{ screen, keys string }{
	{"Machine", ""}, {"Machine", "pgdown pgdown"}, {"Machine", "ctrl+end"}, {"Machine", "space"}, {"Machine", "enter"}, {"Machine", "pgdown pgdown space"}, {"Machine", "pgdown pgdown t"}, {"Machine", "space left"}, {"Machine", "pgdown pgdown space down"}, {"Drive", "p"}, {"Machine", "down down down down down down down"},
	{"Trials", ""}, {"Trials", "space"}, {"Trials", "down space left"}, {"Trials", "end right v"}, {"Trials", "m"}, {"Trials", "n n home 4 x enter"},
	{"Trials", "e"}, {"Trials", "e > down"}, {"Trials", "down down down down f5"}, {"Trials", "y down right"}, {"Trials", "down"},
	{"Layout", ""}, {"Layout", "s"}, {"Layout", "r pgdown pgdown pgdown pgdown"}, {"Layout", "j end down"}, {"Layout", "f pgdown 2 end"}, {"Layout", "l ]"},
	{"Curves", ""}, {"Curves", "]"}, {"Curves", "v y y y end"},
	{"Drive", ""}, {"Drive", "space"}, {"Drive", "down down 2 5 left"}, {"Drive", "ctrl+g"}, {"Drive", "ctrl+g end"}, {"Drive", "pgdown ctrl+w"},
	{"Card", ""}, {"Card", "right"}, {"Card", "r end"},
	{"Wound", ""}, {"Wound", "f6"}, {"Wound", "f6 2 4 left"}, {"Wound", "f6 up"}, {"Wound", "f6 down down f"}, {"Wound", "f6 up up space"}, {"Wound", "f6 down down space down"},
	{"Shelf", ""}, {"Shelf", onShelf}, {"Shelf", onShelf + " end left"}, {"Shelf", onShelf + " y a right"}, {"Shelf", onShelf + " f9"},
	{"Trials", "?"}, {"Trials", "? end"}, {"Curves", "w"}, {"Card", "ctrl+z + q"},
}

// onShelf are the keys to a folder with jobs.
const onShelf = "f7 . . / t e s t d a t a / s h e l f enter"

// Drawing changes nothing, neither of a screen nor of what it shows, and drawing twice gives the same.
func TestDrawingChangesNothing(t *testing.T) {
	tuitest.OneGoroutine(t)
	for _, st := range states {
		m := opened(session.NewExample(), 80, 24, st.screen, st.keys)
		for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 40}, {200, 60}, {81, 25}} {
			m.Update(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			before := tuitest.Snapshot(m)
			frame := m.View()
			require.Equal(t, before, tuitest.Snapshot(m), "%v at %v", st, size)
			require.Equal(t, frame, m.View(), "%v at %v", st, size)
		}
	}
}

// silent are the keys without a visible effect, each with its reason.
var silent = map[string]string{
	"ctrl+l": "it draws anew what is there: only the command tells",
}

// meaning is a key of a screen with its line in the help.
type meaning struct{ screen, help, key string }

// Every key that any screen names does something, in one of the states of that screen: the picture, the
// message or the job changes. The keys are pressed in sequence, each in the state the previous one led
// to, or from the beginning if that took its meaning away; two rounds, since right leads to where left
// has an effect.
func TestEveryKeyDoesSomething(t *testing.T) {
	tuitest.OneGoroutine(t)
	did, told := map[meaning]bool{}, []meaning{}
	for _, st := range states {
		m := opened(edited(), 80, 24, st.screen, st.keys)
		if m.helping || m.prompt != nil || m.then != nil || m.picked != nil {
			continue
		}
		for _, b := range append(m.helpBindings(), m.helpBindings()...) {
			for _, k := range b.Keys() {
				is := meaning{st.screen, b.Help().Desc, k}
				told = append(told, is)
				if did[is] = did[is] || m.means(is) && m.seen(k); !did[is] {
					m = opened(edited(), 80, 24, st.screen, st.keys)
					did[is] = m.means(is) && m.seen(k)
				}
			}
		}
	}
	for _, is := range told {
		if silent[is.key] == "" && !did[is] {
			t.Errorf("%+v does nothing", is)
			did[is] = true // once is enough
		}
	}
}

// means reports whether a key now has that meaning.
func (m *Model) means(is meaning) bool {
	for _, b := range m.helpBindings() {
		if key.Matches(tuitest.KeyMsg(is.key), b.Binding) {
			return b.Help().Desc == is.help
		}
	}
	return false
}

// seen presses a key and reports whether it had an effect; then it closes what has opened.
func (m *Model) seen(key string) bool {
	m.s.ClearMessage()
	before, screen := m.View()+m.s.Document().Text(), m.active
	m.keys(tuitest.KeyMsg(key))
	m.work()
	after := m.View() + m.s.Document().Text()
	if m.helping || m.prompt != nil || m.then != nil || m.picked != nil {
		m.press("esc")
	}
	m.picked = nil
	m.bring(screen)
	return before != after
}

// edited is the example with something to undo and something to redo.
func edited() *session.Session {
	s := session.NewExample()
	s.StepTurns(1)
	s.StepTurns(1)
	s.Undo()
	s.ClearMessage()
	return s
}

// The help lists every key of every state, no key has two meanings, and everything the bottom line
// names is in the help.
func TestHelpTellsEveryKey(t *testing.T) {
	for _, st := range states {
		m := opened(session.NewExample(), 200, 60, st.screen, st.keys)
		if m.helping || m.prompt != nil || m.then != nil || m.picked != nil {
			continue
		}
		require.Empty(t, tuitest.Clashes(m.helpBindings()), "%v", st)
		help := tuitest.Words(strings.Join(m.helpLines(300), "\n"))
		for _, b := range append(m.helpBindings(), m.statusBindings()...) {
			if len(b.Keys()) == 0 {
				continue
			}
			keys := b.Help().Key
			for i, k := range b.Keys() {
				if b.Help().Key == "" {
					keys += kit.Either(i > 0, ", ", "") + kit.KeyName(m.s.Theme, k)
				}
			}
			require.Contains(t, help, " "+keys+" "+b.Help().Desc, "%v", st)
		}
	}
}

// The help page scrolls to its end and closes.
func TestHelpPage(t *testing.T) {
	m := opened(session.NewExample(), 80, 24, "Curves", "?")
	top := m.View()
	assert.Contains(t, top, "Help: Curves")
	below := len(m.helpLines(kit.Inner(m.body()).W-2)) - kit.Inner(m.body()).H
	assert.Contains(t, top, fmt.Sprintf(" %d more lines ", below))
	m.press("down")
	assert.Contains(t, m.View(), fmt.Sprintf(" %d more lines ", below-1))
	m.press("end")
	assert.NotContains(t, m.View(), "more line")
	cautions := m.s.Outcome().Cautions
	assert.Contains(t, m.View(), cautions[len(cautions)-1].Text[:40], "the last of them is the last line")
	m.press("pgup")
	assert.Contains(t, m.View(), "Cautions for this job")
	m.press("home")
	assert.Equal(t, top, m.View())
	m.press("esc")
	assert.NotContains(t, m.View(), "Help: ")
}

// Units and systems of the figures: what is shown, and the size of a step.
func TestUnitsOfTheFigures(t *testing.T) {
	m := opened(session.NewExample(), 200, 60, "Trials", "i")
	assert.Contains(t, m.View(), "lengths in inches")
	assert.Contains(t, m.View(), "wire to buy, lb")
	m.press("i")
	assert.Contains(t, m.View(), "lengths in millimetres")
	assert.NotContains(t, m.View(), "wire to buy, lb")
	m.press("d")
	assert.Contains(t, m.View(), "°F")
	m.press("d")
	assert.NotContains(t, m.View(), "°F")
	for _, want := range []string{"SWG", "mm", "AWG"} {
		m.press("g ]")
		assert.Contains(t, m.s.Job().Trials[0].Gauge.String(), want)
	}
}

// A name typed quickly arrives in one message; it is text, though it may spell a key.
func TestNamesOfKeysAreText(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Machine", "ctrl+home ctrl+k")
	for _, name := range []string{"up", "end", "left", "tab", "enter"} {
		m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)})
	}
	assert.Equal(t, "upendlefttabenter", m.s.Job().Name)
	m = opened(session.NewExample(), 100, 30, "Trials", "w")
	m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("esc")})
	require.NotNil(t, m.prompt)
	assert.Equal(t, "esc", m.prompt.line.Text)
}

// A value on Trials that cannot be used is reported once at a time: at the foot when it is accepted,
// among the findings at the next key.
func TestAValueThatCannotBeUsedIsSaidOnce(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 40}, {200, 60}} {
		m := opened(session.NewExample(), size[0], size[1], "Trials", "up up up")
		m.press("3 x enter")
		said := `Slot area: read "3x"`
		assert.Equal(t, 1, strings.Count(tuitest.Words(m.View()), said), "%v", size)
		m.press("down down")
		assert.Equal(t, 1, strings.Count(tuitest.Words(m.View()), said), "%v", size)
	}
}
