package form

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"slotwright/tui/kit"

	"github.com/charmbracelet/bubbles/cursor"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/bubbles/textinput"
	tea "github.com/charmbracelet/bubbletea"
)

// MaxRunes is the most a line holds; the rest is not taken.
const MaxRunes = 256

// TextLine is a line of text being edited. It is a plain value: keys return a new one. Cursor counts
// runes, 0 before the first; out of range counts as the nearest end. bubbles/textinput does the
// editing, rebuilt from the strings at every key: a kept one shares its letters with its copies, so
// that an older copy would change with a newer. It is drawn here, with a cursor that shows without
// colour too.
type TextLine struct {
	Text   string
	Cursor int
}

// NewTextLine is a line with the cursor behind the text.
func NewTextLine(text string) TextLine {
	return TextLine{Text: text, Cursor: utf8.RuneCountInString(text)}
}

// lineKeys are the keys of every line that is typed into, and no others: what else textinput has
// (words, the system's clipboard, suggestions) is left out.
var lineKeys = textinput.KeyMap{
	CharacterBackward:       key.NewBinding(key.WithKeys("left"), key.WithHelp("", "Left in the text.")),
	CharacterForward:        key.NewBinding(key.WithKeys("right"), key.WithHelp("", "Right in the text.")),
	LineStart:               key.NewBinding(key.WithKeys("home"), key.WithHelp("", "The beginning of the text.")),
	LineEnd:                 key.NewBinding(key.WithKeys("end"), key.WithHelp("", "The end of the text.")),
	DeleteCharacterBackward: key.NewBinding(key.WithKeys("backspace", "ctrl+h"), key.WithHelp("", "Delete before the cursor.")),
	DeleteCharacterForward:  key.NewBinding(key.WithKeys("delete"), key.WithHelp("", "Delete at the cursor.")),
	DeleteBeforeCursor:      key.NewBinding(key.WithKeys("ctrl+u"), key.WithHelp("", "Delete all before the cursor.")),
}

// The keys of a line in the order of the help page.
var (
	lineEnds  = []key.Binding{lineKeys.LineStart, lineKeys.LineEnd}
	lineEdits = []key.Binding{
		lineKeys.CharacterBackward, lineKeys.CharacterForward,
		lineKeys.DeleteCharacterBackward, lineKeys.DeleteCharacterForward, lineKeys.DeleteBeforeCursor,
	}
	lineAll = append(lineEnds[:2:2], lineEdits...)
)

// LineBindings tell the keys of a line, which does them itself.
func LineBindings() []kit.Binding { return told(lineAll, true) }

func told(keys []key.Binding, enabled bool) []kit.Binding {
	list := make([]kit.Binding, len(keys))
	for i, k := range keys {
		list[i] = kit.Binding{Binding: k, Group: "In a text"}.When(enabled)
	}
	return list
}

// Key handles one key message: the keys of [LineBindings], and text, typed or pasted. used is false for
// keys a line has no use for, among them everything with alt; leftovers of mouse reports and other
// escape sequences are swallowed. A paste becomes one line.
func (f TextLine) Key(msg tea.KeyMsg) (next TextLine, used bool) { return f.KeyWithin(msg, MaxRunes) }

// Anew is the line as it is for a key after its text was asked back: a figure begins a new one, as it does
// in a field that is not open; anything else, such as a unit, is about the one that is there.
func (f TextLine) Anew(msg tea.KeyMsg) TextLine {
	if msg.Type == tea.KeyRunes && !msg.Alt && isFigure(string(msg.Runes)) {
		return TextLine{}
	}
	return f
}

// KeyWithin is Key for a line that holds at most so many runes.
func (f TextLine) KeyWithin(msg tea.KeyMsg, most int) (next TextLine, used bool) {
	text := msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace
	switch {
	case msg.Alt && !msg.Paste:
		return f, false
	case text:
		// As a paste, so that "end" typed at once is not taken for the key of that name.
		msg.Runes, msg.Paste = incoming(msg), true
		if len(msg.Runes) == 0 {
			return f, true
		}
	default:
		if !key.Matches(msg, lineAll...) {
			return f, false
		}
	}
	in := f.input(most)
	before := in.Value()
	in, _ = in.Update(msg)
	next = TextLine{Text: in.Value(), Cursor: in.Position()}
	if next.Text == before {
		next.Text = f.Text // a tab or the like that the input does without is no edit
	}
	return next, true
}

// input is the line as textinput edits it. A line already too long stays whole.
func (f TextLine) input(most int) textinput.Model {
	in := textinput.New()
	in.KeyMap, in.CharLimit = lineKeys, max(most, utf8.RuneCountInString(f.Text))
	in.Cursor.SetMode(cursor.CursorStatic)
	in.SetValue(f.Text)
	in.SetCursor(f.Cursor)
	in.Focus()
	return in
}

// incoming is the part of a message that may go into a line: printable runes, without marks that would
// combine with the one before.
func incoming(msg tea.KeyMsg) []rune {
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
		if unicode.IsPrint(r) && !unicode.Is(unicode.Mn, r) && r != unicode.ReplacementChar {
			out = append(out, r)
		}
	}
	return out
}

// Draw is the field in exactly w cells. With the focus it is in brackets (reversed too, in colour) and
// the cursor shows: in colour as a reversed cell, without as a bar before its rune. Text longer than
// the field scrolls so that the cursor stays visible, and marks show where it continues.
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
