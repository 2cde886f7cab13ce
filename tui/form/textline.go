package form

import (
	"slices"
	"strings"
	"unicode/utf8"

	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// MaxRunes is the most a field holds; what would go beyond is not taken.
const MaxRunes = 256

// Field is a line of text being edited. It is a plain value: keys return a new
// one. Cursor counts runes, 0 before the first; out of range counts as the
// nearest end.
type TextLine struct {
	Text   string
	Cursor int
}

// New is a field with the cursor behind the text.
func NewTextLine(text string) TextLine {
	return TextLine{Text: text, Cursor: utf8.RuneCountInString(text)}
}

// Key handles one key message: left, right, home (ctrl+a), end (ctrl+e),
// backspace, delete, ctrl+u (clear up to the cursor), ctrl+k (clear from it), and
// text, typed or pasted. used is false for keys a field has no use for, among
// them everything with alt, up, down, enter, tab and esc; leftovers of mouse
// reports and other escape sequences are swallowed. A paste becomes one line.
func (f TextLine) Key(msg tea.KeyMsg, accept Charset) (next TextLine, used bool) {
	if msg.Alt && !msg.Paste {
		return f, false
	}
	runes := []rune(f.Text)
	at := min(max(f.Cursor, 0), len(runes))
	switch msg.Type {
	case tea.KeyLeft:
		at = max(0, at-1)
	case tea.KeyRight:
		at = min(len(runes), at+1)
	case tea.KeyHome, tea.KeyCtrlA:
		at = 0
	case tea.KeyEnd, tea.KeyCtrlE:
		at = len(runes)
	case tea.KeyBackspace:
		if at > 0 {
			runes, at = slices.Delete(runes, at-1, at), at-1
		}
	case tea.KeyDelete:
		if at < len(runes) {
			runes = slices.Delete(runes, at, at+1)
		}
	case tea.KeyCtrlU:
		runes, at = slices.Delete(runes, 0, at), 0
	case tea.KeyCtrlK:
		runes = runes[:at]
	case tea.KeyRunes, tea.KeySpace:
		in := incoming(msg, accept, MaxRunes-len(runes))
		runes, at = slices.Insert(runes, at, in...), at+len(in)
	default:
		return f, false
	}
	return TextLine{Text: string(runes), Cursor: at}, true
}

// incoming is what of a message may go into a field with room for n more runes.
func incoming(msg tea.KeyMsg, accept Charset, n int) []rune {
	if kit.Garbage(msg) {
		return nil
	}
	text := string(msg.Runes)
	if msg.Type == tea.KeySpace {
		text = " "
	}
	if msg.Paste {
		text = strings.Join(strings.Fields(kit.Clean(text)), " ")
	}
	var out []rune
	for _, r := range text {
		if len(out) < n && accept.takes(r) {
			out = append(out, r)
		}
	}
	return out
}

// Draw is the field in exactly w cells. With the focus it stands in brackets
// (reversed too, in colour) and the cursor shows: in colour as a reversed cell,
// without as a bar before the rune it stands at. Text longer than the room scrolls so
// that the cursor stays in sight, and marks show where it goes on.
func (f TextLine) Draw(t kit.Theme, w int, focused bool) string {
	if !focused {
		return t.Fit(" "+t.Style(kit.Value).Render(t.Text(kit.Clean(f.Text))), w)
	}
	if w < 3 {
		return t.Fit(t.Glyphs().Cursor, w)
	}
	runes := []rune(f.Text)
	at := min(max(f.Cursor, 0), len(runes))
	before, after := t.Text(kit.Clean(string(runes[:at]))), t.Text(kit.Clean(string(runes[at:])))
	room := w - 2
	before, cut := keepEnd(t, before, room-min(1+kit.Width(after), max(1, room/3)))
	open := "["
	if cut {
		open = t.Glyphs().MoreLeft
	}
	closing := "]"
	rest := room - kit.Width(before)
	if kit.Width(after)+cursorRoom(t, after) > rest {
		closing = t.Glyphs().MoreRight
	}
	return t.Fit(open+before+withCursor(t, after, rest)+closing, w)
}

// cursorRoom is what the cursor takes beyond the text behind it.
func cursorRoom(t kit.Theme, after string) int {
	if t.Colour && after != "" {
		return 0
	}
	return 1
}

// keepEnd is the end of s that fits n cells, and whether something was left out.
func keepEnd(t kit.Theme, s string, n int) (string, bool) {
	runes := []rune(s)
	from, used := len(runes), 0
	for from > 0 {
		rw := kit.Width(string(runes[from-1]))
		if used+rw > n {
			return string(runes[from:]), true
		}
		used += rw
		from--
	}
	return s, false
}

// withCursor is the text behind the cursor with the cursor drawn, in n cells.
func withCursor(t kit.Theme, after string, n int) string {
	if !t.Colour {
		return fill(t, t.Glyphs().Cursor+after, n)
	}
	first := " "
	if after != "" {
		_, size := utf8.DecodeRuneInString(after)
		first, after = after[:size], after[size:]
	}
	return t.Style(kit.Focus).Render(first) + fill(t, after, n-kit.Width(first))
}

// fill is s in exactly n cells, cut without an ellipsis: the bracket tells.
func fill(t kit.Theme, s string, n int) string {
	used, to := 0, len(s)
	for i, r := range s {
		rw := kit.Width(string(r))
		if used+rw > n {
			to = i
			break
		}
		used += rw
	}
	return t.Fit(s[:to], n)
}
