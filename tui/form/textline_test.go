package form

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func key(t tea.KeyType) tea.KeyMsg { return tea.KeyMsg{Type: t} }

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
		{key(tea.KeySpace), TextLine{"12.5µ ", 6}},
		{typed("m"), TextLine{"12.5µ m", 7}},
		{key(tea.KeyBackspace), TextLine{"12.5µ ", 6}},
		{key(tea.KeyHome), TextLine{"12.5µ ", 0}},
		{key(tea.KeyLeft), TextLine{"12.5µ ", 0}},
		{key(tea.KeyBackspace), TextLine{"12.5µ ", 0}},
		{key(tea.KeyDelete), TextLine{"2.5µ ", 0}},
		{key(tea.KeyRight), TextLine{"2.5µ ", 1}},
		{typed("34"), TextLine{"234.5µ ", 3}},
		{key(tea.KeyEnd), TextLine{"234.5µ ", 7}},
		{key(tea.KeyRight), TextLine{"234.5µ ", 7}},
		{key(tea.KeyDelete), TextLine{"234.5µ ", 7}},
		{key(tea.KeyLeft), TextLine{"234.5µ ", 6}},
		{key(tea.KeyCtrlU), TextLine{" ", 0}},
		{key(tea.KeyCtrlK), TextLine{"", 0}},
		{pasted("  18\tAWG\r\n\x1b[31m\x00x "), TextLine{"18 AWG x", 8}},
	} {
		var used bool
		f, used = f.Key(step.msg, nil)
		require.True(t, used)
		require.Equal(t, step.want, f, "%q", step.msg.String())
	}
}

func TestFieldLeavesOtherKeys(t *testing.T) {
	f := NewTextLine("a")
	for _, msg := range []tea.KeyMsg{
		key(tea.KeyUp), key(tea.KeyDown), key(tea.KeyEnter), key(tea.KeyTab), key(tea.KeyEsc), key(tea.KeyCtrlC), key(tea.KeyCtrlS), key(tea.KeyF1),
		{Type: tea.KeyRunes, Runes: []rune("x"), Alt: true}, {Type: tea.KeyRunes, Runes: []rune("]"), Alt: true}, {Type: tea.KeyBackspace, Alt: true},
	} {
		got, used := f.Key(msg, nil)
		assert.False(t, used, msg.String())
		assert.Equal(t, f, got)
	}
}

func TestFieldRefuses(t *testing.T) {
	f := NewTextLine("7")
	for _, s := range []string{"<35;100;40M", "[<0;3;4M", "0;40M", "[A", "11;rgb:1e1e/1e1e/2e2e"} {
		got, used := f.Key(typed(s), nil)
		assert.True(t, used)
		assert.Equal(t, f, got, s)
	}
	got, _ := f.Key(typed("1,5 mm"), Number)
	assert.Equal(t, "71,5", got.Text)
	got, _ = f.Key(typed("x"), Number)
	assert.Equal(t, f, got)
	got, _ = f.Key(typed("1,25 mm ±5%;<"), Quantity)
	assert.Equal(t, "71,25 mm ±5%", got.Text)
	got, _ = f.Key(pasted("a\u202eb\u0301\u200d"), nil)
	assert.Equal(t, "7ab", got.Text)
	got, _ = f.Key(pasted(strings.Repeat("y", 999)), nil)
	assert.Len(t, got.Text, MaxRunes)
	got, _ = got.Key(typed("z"), nil)
	assert.Len(t, got.Text, MaxRunes)
}

// An older copy must never change when a newer one is edited.
func TestCopiesAreIndependent(t *testing.T) {
	a := TextLine{"abcdef", 3}
	b, _ := a.Key(typed("X"), nil)
	c, _ := b.Key(key(tea.KeyBackspace), nil)
	_, _ = c.Key(typed("Y"), nil)
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

// FuzzFieldKeys plays bytes as keys: whatever is typed, the cursor stays in range and no
// control rune gets in.
func FuzzFieldKeys(f *testing.F) {
	f.Add([]byte("12.5\x01\x02\x03"), "18 AWG\n\x1b[A")
	f.Add([]byte{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}, "\xff\u202eΩ")
	f.Add([]byte("\x05\x06\x07aaaa\x04\x04"), "<35;1;1M")
	keys := []tea.KeyType{tea.KeyLeft, tea.KeyRight, tea.KeyHome, tea.KeyEnd, tea.KeyBackspace, tea.KeyDelete, tea.KeyCtrlU, tea.KeyCtrlK, tea.KeySpace}
	f.Fuzz(func(t *testing.T, script []byte, text string) {
		fd := TextLine{text, len(text) / 2}
		fd, _ = TextLine{}.Key(pasted(text), nil)
		for _, b := range script {
			before := fd
			switch {
			case int(b) < len(keys):
				fd, _ = fd.Key(key(keys[b]), nil)
			case b%3 == 0:
				fd, _ = fd.Key(typed(text), Quantity)
			default:
				fd, _ = fd.Key(typed(string(rune(b)*7)), nil)
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
