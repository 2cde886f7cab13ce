package kit_test

import (
	"fmt"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTableLinesUpPointsAndUnits(t *testing.T) {
	tb := sampleTable()
	tuitest.GoldenLines(t, "kit-table", append(tb.Lines(kit.Theme{}, 72), tb.Lines(kit.Theme{}, 40)...))
	lines := tb.Body(kit.Theme{}, 72)
	require.Len(t, lines, len(tb.Rows))
	column := func(line, part string) int { return kit.Width(line[:strings.Index(line, part)]) }
	assert.Equal(t, column(lines[1], "0.482"), column(lines[3], "0.71"))
	assert.Equal(t, column(lines[1], ".482"), column(lines[2], "48")+2, "whole numbers end at the point")
	assert.Equal(t, column(lines[1], "Ω"), column(lines[3], "mm"))
	assert.Contains(t, lines[3], "does not fit")
	for w := 0; w < 100; w++ {
		tuitest.CheckLines(t, tb.Lines(kit.Theme{Colour: true}, w), w, 5)
	}
}

func TestTableCutsShrinkColumnsFirst(t *testing.T) {
	tb := kit.Table{Columns: []kit.Column{{Shrink: true}, {Align: kit.Right}}, Rows: []kit.TableRow{{Cells: []kit.Cell{{Text: "a rather long label"}, {Text: "123456"}}}}}
	assert.Equal(t, []string{"a rathe…  123456"}, tb.Lines(kit.Theme{}, 16))
	assert.Equal(t, []string{"a rat…  12…"}, tb.Lines(kit.Theme{}, 11))
}

func TestScroll(t *testing.T) {
	th := kit.Theme{}
	var lines []string
	for i := range 30 {
		lines = append(lines, fmt.Sprint("line ", i))
	}
	for focus := range lines {
		for h := 1; h <= 31; h++ {
			got := kit.Window(th, lines, focus, 12, h)
			tuitest.CheckLines(t, got, 12, h)
			assert.Contains(t, strings.Join(got, "\n")+" ", fmt.Sprint("line ", focus, " "))
		}
	}
	s := &kit.Scroll{}
	s.SetSize(10, 30)
	press := func(key string) bool {
		_, used := kit.Press(s.Bindings("", ""), tuitest.KeyMsg(key))
		return used
	}
	assert.True(t, press("end"))
	assert.Equal(t, 20, s.Top)
	got := s.Window(th, lines, 12, 10)
	assert.True(t, strings.HasSuffix(got[0], "▲"))
	assert.False(t, strings.HasSuffix(got[9], "▼"))
	for _, step := range []struct {
		key string
		top int
	}{{"up", 19}, {"pgup", 10}, {"down", 11}, {"home", 0}, {"k", 0}, {"pgdown", 9}, {"j", 10}, {"G", 20}, {" ", 20}} {
		press(step.key)
		assert.Equal(t, step.top, s.Top, step.key)
	}
	assert.False(t, press("x"))
	s.SetSize(10, 15)
	assert.Equal(t, 5, s.Top, "a shorter text is not read past its end")
	assert.Equal(t, kit.Scroll{Top: 99}.Window(th, lines, 12, 10), kit.Scroll{Top: 20}.Window(th, lines, 12, 10))
	assert.Equal(t, []string{"a  ", "   "}, kit.Scroll{Top: 5}.Window(th, []string{"a"}, 3, 2))
}

func runes(s string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)} }

func TestExpandKeys(t *testing.T) {
	got := kit.ExpandKeys(runes("j k"), false)
	require.Len(t, got, 3)
	assert.Equal(t, []string{"j", " ", "k"}, []string{got[0].String(), got[1].String(), got[2].String()})
	assert.Len(t, kit.ExpandKeys(runes("jk"), true), 1, "a text field takes it whole")
	paste := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("qq"), Paste: true}
	got = kit.ExpandKeys(paste, false)
	require.Len(t, got, 1)
	_, used := kit.Press([]kit.Binding{kit.Bind("", "q qq [qq]", "", "", func() {})}, got[0])
	assert.False(t, used, "a paste is never a command")
	assert.Len(t, kit.ExpandKeys(runes("<35;100;40M"), false), 1)
	assert.Len(t, kit.ExpandKeys(tea.KeyMsg{Type: tea.KeyUp}, false), 1)
}

func TestGarbage(t *testing.T) {
	for _, s := range []string{"<35;100;40M", "[<35;100;40M", "<35;10", "0;40M", "35;100;40m", "[A", "[1;5C", "[5~", "11;rgb:1e1e/1e1e/2e2e", "11;rgb:1e1e/1e1e/2e2e\\", "[<0;1;2M[<0;1;2m", "<35;1;1M<35;2;2M"} {
		assert.True(t, kit.Garbage(runes(s)), s)
	}
	for _, s := range []string{"a", "<", "[", "12", "12.5", "18AWG", "1,25", "jj", "A7", "M6", "0.71mm", "AB", "2M", "][", "[[", "uu", "xM"} {
		assert.False(t, kit.Garbage(runes(s)), s)
	}
	assert.False(t, kit.Garbage(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("<35;100;40M"), Paste: true}))
}

func TestBindings(t *testing.T) {
	var did []string
	note := func(what string) func() { return func() { did = append(did, what) } }
	list := []kit.Binding{
		kit.Bind("", "up k", "", "", note("off")).When(false), kit.Bind("", "k space", "", "", note("k")), kit.Bind("", "k", "", "", note("never")),
		{Binding: bindings[0].Binding}, // told, done elsewhere
		kit.Command("", "7", "", "", func(msg tea.KeyMsg) tea.Cmd { did = append(did, msg.String()); return tea.Quit }),
	}
	for _, c := range []struct {
		key  string
		used bool
	}{{"k", true}, {" ", true}, {"up", false}, {"z", false}, {"ctrl+s", false}} {
		cmd, used := kit.Press(list, tuitest.KeyMsg(c.key))
		assert.Equal(t, c.used, used, c.key)
		assert.Nil(t, cmd)
	}
	cmd, _ := kit.Press(list, tuitest.KeyMsg("7"))
	assert.NotNil(t, cmd)
	assert.Equal(t, []string{"k", "k", "7"}, did)
	_, used := kit.Press([]kit.Binding{kit.Bind("", "end", "", "", note("end"))}, runes("end"))
	assert.False(t, used, "three letters in one read are text")
	assert.Empty(t, tuitest.Clashes(bindings))
	assert.Equal(t, []string{"k"}, tuitest.Clashes(append([]kit.Binding{kit.Bind("", "k", "", "", nil)}, bindings...)))
	th := kit.Theme{}
	assert.Equal(t, "ctrl+s save  ↑ up", kit.StatusKeys(th, 20, bindings))
	assert.Equal(t, "ctrl+s save", kit.StatusKeys(th, 16, bindings))
	assert.Equal(t, "", kit.StatusKeys(th, 5, bindings))
	help := strings.Join(kit.HelpLines(th, 60, bindings), "\n")
	for _, b := range bindings[:4] {
		for _, k := range b.Keys() {
			assert.Contains(t, help, kit.KeyName(th, k))
		}
	}
	assert.NotContains(t, help, "Nothing", "no heading over nothing")
	off := bindings[1].When(false)
	assert.Equal(t, "", kit.StatusKeys(th, 40, []kit.Binding{off}), "what does nothing now is not in the status line")
	assert.Contains(t, strings.Join(kit.HelpLines(th, 60, []kit.Binding{off}), "\n"), "Go up", "but in the help")
	for w := range 90 {
		tuitest.CheckLines(t, kit.HelpLines(kit.Theme{Colour: true}, w, bindings), w, len(kit.HelpLines(th, w, bindings)))
		tuitest.CheckLines(t, []string{kit.StatusLine(th, w, "saved", bindings), kit.StatusLine(th, w, "", bindings), kit.Bar(th, w, "left", "right side")}, w, 3)
	}
}

func TestTabs(t *testing.T) {
	names := []string{"Stator", "Drive", "Trials", "Layout", "Proof"}
	for w := range 70 {
		for i := range names {
			for _, th := range themes {
				tuitest.CheckLines(t, []string{kit.Tabs(th, w, names, i)}, w, 1)
			}
			if w > 14 {
				assert.Contains(t, kit.Tabs(kit.Theme{}, w, names, i), "["+names[i]+"]", "%d", w)
			}
		}
	}
	assert.Contains(t, kit.Tabs(kit.Theme{}, 30, names, 2), "◂")
	assert.NotContains(t, kit.Tabs(kit.Theme{}, 80, names, 2), "◂")
	assert.Equal(t, "   ", kit.Tabs(kit.Theme{}, 3, nil, 0))
}

func TestModal(t *testing.T) {
	m := ask("Leave?", "Sure?")
	for key, want := range map[string]string{"y": "yes", "Y": "yes", "n": "no", "c": "cancel", "esc": "cancel", "enter": "cancel", "x": "", "left": ""} {
		_, a := m.Key(key)
		assert.Equal(t, kit.Answer{Done: want != "", ID: want}, a, key)
	}
	m, _ = m.Key("right")
	_, a := m.Key("enter")
	assert.Equal(t, "yes", a.ID, "round the end")
	for w := 1; w < 100; w += 3 {
		for h := 1; h < 30; h++ {
			b := m.Draw(kit.Theme{Colour: true}, kit.Rect{X: 2, Y: 1, W: w, H: h})
			tuitest.CheckLines(t, b.Lines, b.Rect.W, b.Rect.H)
			assert.LessOrEqual(t, b.Rect.X+b.Rect.W, w+2)
			assert.LessOrEqual(t, b.Rect.Y+b.Rect.H, h+1)
		}
	}
	long := ask("q", strings.Repeat("many words ", 200))
	assert.Contains(t, strings.Join(long.Draw(kit.Theme{}, kit.Rect{W: 60, H: 10}).Lines, "\n"), "yes (y)", "the answers stay in sight")
	_, a = kit.Modal{}.Key("x")
	assert.True(t, a.Done)
}

func TestChoice(t *testing.T) {
	var options []kit.Option
	for _, s := range []string{"0.50 mm", "0.56 mm", "0.63 mm", "0.71 mm", "18 AWG", "19 AWG", "1.00 mm"} {
		options = append(options, kit.Option{ID: s, Label: s, Note: "on the shelf"})
	}
	c := kit.Pick("Wire", options, "0.63 mm")
	assert.Equal(t, 2, c.Cursor)
	for _, step := range []struct {
		key string
		at  int
	}{{"down", 3}, {"home", 0}, {"up", 0}, {"end", 6}, {"pgup", 0}, {"pgdown", 6}, {"down", 6}} {
		c, _ = c.Key(tuitest.KeyMsg(step.key))
		assert.Equal(t, step.at, c.Cursor, step.key)
	}
	typed, _ := c.Key(tuitest.KeyMsg("a"))
	var labels []string
	for _, o := range typed.Matching() {
		labels = append(labels, o.Label)
	}
	assert.Equal(t, []string{"18 AWG", "19 AWG"}, labels[:2], "a word that begins with it before one that has it")
	typed, _ = c.Key(tuitest.KeyMsg("19"))
	_, a := typed.Key(tuitest.KeyMsg("enter"))
	assert.Equal(t, kit.Answer{Done: true, ID: "19 AWG"}, a)
	none, _ := typed.Key(tuitest.KeyMsg("x"))
	_, a = none.Key(tuitest.KeyMsg("enter"))
	assert.False(t, a.Done, "nothing matches, so nothing is taken")
	back, _ := none.Key(tuitest.KeyMsg("backspace"))
	assert.Equal(t, "19", back.Typed)
	back, _ = back.Key(tuitest.KeyMsg("ctrl+u"))
	assert.Len(t, back.Matching(), 7)
	c, _ = c.Key(tuitest.KeyMsg("home"))
	_, a = c.Key(tuitest.KeyMsg("enter"))
	assert.Equal(t, kit.Answer{Done: true, ID: "0.50 mm"}, a)
	_, a = c.Key(tuitest.KeyMsg("esc"))
	assert.Equal(t, kit.Answer{Done: true}, a)
	kit.Choice{}.Draw(kit.Theme{}, kit.Rect{W: 20, H: 5})
	for name, th := range themes {
		b := typed.Draw(th, kit.Rect{W: 60, H: 7})
		tuitest.CheckLines(t, b.Lines, b.Rect.W, b.Rect.H)
		b = c.Draw(th, kit.Rect{W: 60, H: 7})
		tuitest.CheckLines(t, b.Lines, b.Rect.W, b.Rect.H)
		if name == "plain" {
			tuitest.GoldenLines(t, "kit-choice", b.Lines)
		}
	}
	for _, tall := range []bool{false, true} {
		c := kit.Choice{Title: "Wire", Options: options, Tall: tall}
		within := kit.Rect{X: 3, Y: 2, W: 50, H: 9}
		b := c.Draw(kit.Theme{}, within)
		seen := 0
		for y, line := range b.Lines {
			id, ok := c.At(kit.Theme{}, within, b.Rect.X+5, b.Rect.Y+y)
			if ok && strings.Contains(line, id) {
				seen++
			}
			if !tall {
				assert.Equal(t, ok, strings.Contains(line, "on the"), line)
			}
		}
		assert.Positive(t, seen)
	}
}
