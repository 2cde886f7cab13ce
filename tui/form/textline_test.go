package form

import (
	"reflect"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func press(t tea.KeyType) tea.KeyMsg { return tea.KeyMsg{Type: t} }

func typed(s string) tea.KeyMsg { return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s)} }

func pasted(s string) tea.KeyMsg {
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(s), Paste: true}
}

func TestFieldKeys(t *testing.T) {
	f := NewTextLine("12.5")
	for _, step := range []struct {
		msg  tea.KeyMsg
		want TextLine
	}{
		{typed("µ"), TextLine{"12.5µ", 5}},
		{press(tea.KeySpace), TextLine{"12.5µ ", 6}},
		{typed("m"), TextLine{"12.5µ m", 7}},
		{press(tea.KeyBackspace), TextLine{"12.5µ ", 6}},
		{press(tea.KeyHome), TextLine{"12.5µ ", 0}},
		{press(tea.KeyLeft), TextLine{"12.5µ ", 0}},
		{press(tea.KeyBackspace), TextLine{"12.5µ ", 0}},
		{press(tea.KeyDelete), TextLine{"2.5µ ", 0}},
		{press(tea.KeyRight), TextLine{"2.5µ ", 1}},
		{typed("34"), TextLine{"234.5µ ", 3}},
		{press(tea.KeyEnd), TextLine{"234.5µ ", 7}},
		{press(tea.KeyRight), TextLine{"234.5µ ", 7}},
		{press(tea.KeyDelete), TextLine{"234.5µ ", 7}},
		{press(tea.KeyLeft), TextLine{"234.5µ ", 6}},
		{press(tea.KeyCtrlU), TextLine{" ", 0}},
		{press(tea.KeyDelete), TextLine{"", 0}},
		{pasted("  18\tAWG\r\n\x1b[31m\x00x "), TextLine{"18 AWG x", 8}},
	} {
		var used bool
		f, used = f.Key(step.msg)
		require.True(t, used)
		require.Equal(t, step.want, f, "%q", step.msg.String())
	}
}

func TestFieldLeavesOtherKeys(t *testing.T) {
	f := NewTextLine("a")
	for _, msg := range []tea.KeyMsg{
		press(tea.KeyUp), press(tea.KeyDown), press(tea.KeyEnter), press(tea.KeyTab), press(tea.KeyEsc), press(tea.KeyCtrlC), press(tea.KeyCtrlS), press(tea.KeyF1),
		{Type: tea.KeyRunes, Runes: []rune("x"), Alt: true}, {Type: tea.KeyRunes, Runes: []rune("]"), Alt: true}, {Type: tea.KeyBackspace, Alt: true},
	} {
		got, used := f.Key(msg)
		assert.False(t, used, msg.String())
		assert.Equal(t, f, got)
	}
}

func TestFieldRefuses(t *testing.T) {
	f := NewTextLine("7")
	for _, s := range []string{"<35;100;40M", "[<0;3;4M", "0;40M", "[A", "11;rgb:1e1e/1e1e/2e2e"} {
		got, used := f.Key(typed(s))
		assert.True(t, used)
		assert.Equal(t, f, got, s)
	}
	got, _ := f.Key(pasted("a\u202eb\u0301\u200d"))
	assert.Equal(t, "7ab", got.Text)
	got, _ = f.Key(pasted(strings.Repeat("y", 999)))
	assert.Len(t, got.Text, MaxRunes)
	got, _ = got.Key(typed("z"))
	assert.Len(t, got.Text, MaxRunes)
	// Text from a file stays as it is until it is edited.
	long := TextLine{strings.Repeat("é", MaxRunes+9), 3}
	got, _ = long.Key(press(tea.KeyRight))
	assert.Equal(t, TextLine{long.Text, 4}, got)
	got, _ = TextLine{"a\tb", 0}.Key(press(tea.KeyRight))
	assert.Equal(t, TextLine{"a\tb", 1}, got)
	// Letters read at once that spell the name of a key are letters.
	for _, name := range []string{"end", "home", "left", "delete"} {
		got, _ = f.Key(typed(name))
		assert.Equal(t, TextLine{"7" + name, 1 + len(name)}, got)
	}
}

// The help lists every key that a line handles, and textinput has no other.
func TestLineKeysAreTold(t *testing.T) {
	told := map[string]bool{}
	for _, b := range LineBindings() {
		assert.NotEmpty(t, b.Help().Desc)
		for _, k := range b.Keys() {
			told[k] = true
		}
	}
	has := map[string]bool{}
	keys := reflect.ValueOf(lineKeys)
	for i := range keys.NumField() {
		for _, k := range keys.Field(i).Interface().(key.Binding).Keys() {
			has[k] = true
		}
	}
	assert.Equal(t, has, told)
	assert.Empty(t, tuitest.Clashes(LineBindings()))
}

// An older copy must never change when a newer one is edited.
func TestCopiesAreIndependent(t *testing.T) {
	a := TextLine{"abcdef", 3}
	b, _ := a.Key(typed("X"))
	c, _ := b.Key(press(tea.KeyBackspace))
	_, _ = c.Key(typed("Y"))
	assert.Equal(t, "abcdef", a.Text)
	assert.Equal(t, "abcXdef", b.Text)
	assert.Equal(t, "abcdef", c.Text)
}

func TestFieldDraw(t *testing.T) {
	plain, ascii, colour := kit.Theme{}, kit.Theme{ASCII: true}, kit.Theme{Colour: true}
	f := TextLine{"12.5", 3}
	assert.Equal(t, " 12.5   ", f.Draw(plain, 8, false))
	assert.Equal(t, "[12.▏5 ]", f.Draw(plain, 8, true))
	assert.Equal(t, "[12.|5 ]", f.Draw(ascii, 8, true))
	assert.Equal(t, "[12.\x1b[7m5\x1b[0m  ]", f.Draw(colour, 8, true))
	assert.Equal(t, "[12.5\x1b[7m \x1b[0m ]", NewTextLine("12.5").Draw(colour, 8, true))
	assert.Equal(t, "[▏     ]", TextLine{}.Draw(plain, 8, true))
	long := "abcdefghijklmnop"
	assert.Equal(t, "◂lmnop▏]", NewTextLine(long).Draw(plain, 8, true))
	assert.Equal(t, "[▏abcde▸", TextLine{long, 0}.Draw(plain, 8, true))
	assert.Equal(t, "◂efgh▏i▸", TextLine{long, 8}.Draw(plain, 8, true))
	assert.Equal(t, " abcdef…", TextLine{long, 8}.Draw(plain, 8, false))
}

// At every width and cursor the field has its width and the cursor shows.
func TestFieldDrawAlwaysShowsTheCursor(t *testing.T) {
	for _, text := range []string{"", "1", "12.5 mm", "0123456789abcdefghij", "日本語のテキスト", "0.5 Ω ± 3 %"} {
		for at := -1; at <= utf8.RuneCountInString(text)+1; at++ {
			for w := 0; w <= 26; w++ {
				for _, th := range []kit.Theme{{}, {Colour: true}, {ASCII: true}} {
					f := TextLine{text, at}
					got := f.Draw(th, w, true)
					tuitest.CheckLines(t, []string{got, f.Draw(th, w, false)}, w, 2)
					if w < 5 {
						continue
					}
					if th.Colour {
						require.Contains(t, got, "\x1b[7m")
					} else {
						require.Contains(t, got, th.Glyphs().Cursor, "%q at %d in %d", text, at, w)
					}
				}
			}
		}
	}
	require.False(t, t.Failed())
}

// FuzzFieldKeys feeds bytes as keys: whatever is typed, the cursor stays in range and no control rune
// gets in.
func FuzzFieldKeys(f *testing.F) {
	f.Add([]byte("12.5\x01\x02\x03"), "18 AWG\n\x1b[A")
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, "\xff\u202eΩ")
	f.Add([]byte("\x05\x06\x07aaaa\x04\x04"), "<35;1;1M")
	keys := []tea.KeyType{tea.KeyLeft, tea.KeyRight, tea.KeyHome, tea.KeyEnd, tea.KeyBackspace, tea.KeyDelete, tea.KeyCtrlU, tea.KeyCtrlK, tea.KeySpace}
	f.Fuzz(func(t *testing.T, script []byte, text string) {
		fd := TextLine{text, len(text) / 2}
		fd, _ = TextLine{}.Key(pasted(text))
		for _, b := range script {
			before := fd
			switch {
			case int(b) < len(keys):
				fd, _ = fd.Key(press(keys[b]))
			case b%3 == 0:
				fd, _ = fd.Key(typed(text))
			default:
				fd, _ = fd.Key(typed(string(rune(b) * 7)))
			}
			n := utf8.RuneCountInString(fd.Text)
			require.True(t, fd.Cursor >= 0 && fd.Cursor <= n && n <= MaxRunes, "%+v after %+v", fd, before)
			require.True(t, utf8.ValidString(fd.Text))
			for _, r := range fd.Text {
				require.False(t, unicode.IsControl(r) || r == 0x1b, "%q", fd.Text)
			}
		}
		require.Equal(t, 20, ansi.StringWidth(fd.Draw(kit.Theme{}, 20, true)))
	})
}
