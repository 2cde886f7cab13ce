package tui

import (
	"math/rand/v2"
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

// overlays are what keys open over a screen: lists, lines to type, questions, pages.
var overlays = []struct{ screen, keys string }{
	{"Machine", "ctrl+f"}, {"Machine", "ctrl+f end enter"}, {"Machine", "pgdown pgdown down enter"}, {"Machine", "ctrl+end enter"},
	{"Machine", "ctrl+p"}, {"Machine", "ctrl+p t h i"}, {"Machine", "f3"}, {"Machine", "f1"}, {"Machine", "x ctrl+c"},
	{"Trials", "e"}, {"Trials", "e end"}, {"Trials", "y"}, {"Trials", "down down down y end"}, {"Trials", "f5"}, {"Trials", "v"}, {"Trials", "m v"},
	{"Trials", "ctrl+p"}, {"Trials", "ctrl+p z z z"}, {"Trials", "!"}, {"Trials", "! end"}, {"Trials", "? end"},
	{"Trials", "+ ctrl+c"}, {"Trials", "+ ctrl+n"}, {"Trials", "ctrl+o"}, {"Trials", "ctrl+o x y"}, {"Trials", "f2"}, {"Trials", "f2 left"}, {"Trials", "ctrl+e"},
	{"Layout", "s"}, {"Layout", "W"}, {"Layout", "f"}, {"Curves", "v"}, {"Drive", "ctrl+g"}, {"Card", "r"},
	{"Wound", "enter"}, {"Wound", "down 1 2"}, {"Shelf", ""}, {"Shelf", "h u"},
}

// written are jobs of each kind: whole, blank, and with values that cannot be used.
func written(t *testing.T) map[string]string {
	t.Helper()
	list := map[string]string{
		"example": job.Example().Text(), "blank": job.Template(""), "nothing": "",
		"broken": "name = \"" + strings.Repeat("日本 wide ", 30) + "\"\n[machine]\nslots = 36\npoles = 7\nbore_mm = \"x\"\n[[trial]]\nturns = \"abc\"\ngauge = \"?\"\n",
	}
	for _, name := range []string{"flat", "single"} {
		paths, err := filepath.Glob("../testdata/jobs/*" + name + "*.toml")
		require.NoError(t, err)
		for _, p := range paths[:min(1, len(paths))] {
			text, err := os.ReadFile(p)
			require.NoError(t, err)
			list[filepath.Base(p)] = string(text)
		}
	}
	return list
}

// No line is wider and no frame taller than the terminal, at any size from 1×1 to 300×100, on every
// screen with any overlay, in every spelling of the signs; resizing changes nothing that is open or
// typed.
func TestNoFrameLeavesTheTerminal(t *testing.T) {
	tuitest.OneGoroutine(t)
	texts := written(t)
	t.Chdir(t.TempDir())
	r := rand.New(rand.NewPCG(19, 7))
	each := 24
	if testing.Short() {
		each = 5
	}
	themes := []kit.Theme{{}, {ASCII: true}, {Colour: true}}
	for name, text := range texts {
		for i, st := range append(overlays, states...) {
			s := session.New(job.Parse(text), "", job.Mark{})
			s.Theme = themes[i%len(themes)]
			m := opened(s, 100, 30, st.screen, st.keys)
			before := m.standing()
			for n := range each {
				w, h := 1+r.IntN(300), 1+r.IntN(100)
				switch n {
				case 0:
					w, h = 1+r.IntN(needW+2), 1+r.IntN(needH+2) // about the smallest
				case 1:
					w = needW + r.IntN(60)
				}
				m.gets(tea.WindowSizeMsg{Width: w, Height: h})
				m.work()
				tuitest.CheckFrame(t, m.View(), w, h)
				require.False(t, t.Failed(), "%s: %s after %q at %d×%d", name, st.screen, st.keys, w, h)
			}
			assert.Equal(t, before, m.standing(), "%s: %s after %q", name, st.screen, st.keys)
		}
	}
}

// standing is what is open and typed, which must not depend on the size.
type standing struct {
	text, line, list, question string
	cursor                     int
	helping, editing           bool
	active                     int
}

func (m *Model) standing() standing {
	is := standing{text: m.s.Document().Text(), helping: m.helping, editing: m.editing(), active: m.active}
	if m.prompt != nil {
		is.line, is.cursor = m.prompt.line.Text, m.prompt.line.Cursor
	}
	if m.picked != nil {
		is.list, is.cursor = m.list.Typed, m.list.Cursor
	}
	if m.then != nil {
		is.question = m.question.Title
	}
	return is
}

// fields are one field on each screen that has any, what is pasted there, and what the job then
// contains.
var fields = []struct{ screen, path, text string }{
	{"Machine", "machine.bore", "3.5 in"},
	{"Machine", "machine.kind", "concentric"},
	{"Machine", "notes", "left hand, q ? : !"},
	{"Drive", "battery.cable", "12 m"},
	{"Drive", "drive.ratio", "9.75"},
	{"Trials", "trial[1].turns", "24"},
	{"Trials", "trial[1].gauge", "0.75 mm over"},
	{"Wound", "wound[0].lead", "0.37"},
	{"Wound", "wound[0].gauge", "0.75 mm over"},
	{"Wound", "wound[0].note", "left hand, q ? : !"},
}

// typedIn is what the job's text has for a field: the unit is in its key or in the text.
func typedIn(m *Model, path string) string {
	text, u, _ := m.s.Document().Typed(path)
	return strings.TrimSuffix(text+" "+u.Name, " ")
}

// A paste goes into a field, closed or open, on every screen that has fields; a half-typed value
// survives resizing and is accepted as typed.
func TestPastesAndSizesInEveryField(t *testing.T) {
	tuitest.OneGoroutine(t)
	for _, f := range fields {
		start := func() *Model {
			m := opened(session.NewExample(), 100, 30, f.screen, "")
			m.goTo(f.path)
			m.fit()
			require.Equal(t, f.screen, m.view().Name())
			return m
		}
		paste := func(m *Model, text string) {
			m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(text), Paste: true})
		}
		closed := start()
		paste(closed, f.text)
		closed.press("enter")
		want := typedIn(closed, f.path)
		assert.Contains(t, want, strings.Fields(f.text)[0], f)

		if f.path == "machine.kind" {
			continue // a list has no text to stand half way
		}
		halves := start()
		at := len(f.text) / 2
		paste(halves, f.text[:at])
		for _, size := range [][2]int{{200, 60}, {60, 20}, {12, 4}, {1, 1}, {80, 24}} {
			halves.gets(tea.WindowSizeMsg{Width: size[0], Height: size[1]})
			tuitest.CheckFrame(t, halves.View(), size[0], size[1])
			halves.work()
		}
		require.True(t, halves.editing(), f)
		assert.Contains(t, halves.View(), strings.TrimSpace(f.text[:at]), f)
		paste(halves, f.text[at:])
		halves.press("enter")
		assert.Equal(t, want, typedIn(halves, f.path), "%v", f)
	}
}

// A paste where nothing is typed runs no command and changes nothing.
func TestAPasteIsNoCommand(t *testing.T) {
	for _, screen := range []string{"Layout", "Curves", "Card"} {
		m := opened(session.NewExample(), 100, 30, screen, "")
		before, frame := m.standing(), m.View()
		m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("wqnue+]s"), Paste: true})
		assert.Equal(t, before, m.standing(), screen)
		assert.Nil(t, m.prompt, screen)
		m.s.ClearMessage()
		assert.Equal(t, frame, m.View(), screen)
	}
}

// If a path cannot be opened the reason is shown and the path stays as typed; the open job stays open.
func TestAPathThatFailsStays(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	require.NoError(t, os.Mkdir("folder", 0o700))
	require.NoError(t, os.WriteFile("noise.toml", []byte("\x00\x01\x02 = [[["), 0o600))
	require.NoError(t, os.WriteFile("long.toml", []byte(strings.Repeat("#\n", 4<<20)), 0o600))
	for path, why := range map[string]string{
		"gone.toml": "no such file", "folder": "folder", "no/where.toml": "no folder", strings.Repeat("n", 300): "too long",
		"noise.toml": "", "long.toml": "",
	} {
		m := New(session.NewExample(), recovery.Store{Dir: filepath.Join(dir, "state")})
		m.gets(tea.WindowSizeMsg{Width: 80, Height: 24})
		m.press("+ ctrl+o")
		was := m.s.Document().Text()
		m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(path), Paste: true})
		m.press("enter")
		assert.Equal(t, was, m.s.Document().Text(), path)
		require.NotNil(t, m.prompt, path)
		if path == "folder" {
			path = "folder/" // what is in it is offered
		}
		assert.Equal(t, path, m.prompt.line.Text)
		assert.NotEmpty(t, m.prompt.why, path)
		assert.Contains(t, m.prompt.why, why, path)
		m.gets(tea.WindowSizeMsg{Width: 60, Height: 20})
		assert.Equal(t, path, m.prompt.line.Text)
		tuitest.CheckFrame(t, m.View(), 60, 20)
	}
}
