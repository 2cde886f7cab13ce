package kit

import (
	"slices"
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"
)

// Binding is one thing that keys do. A screen has one list of them, and everything comes from that
// list: what a key does, what the status line and the help page say of it, what the tests press. So
// they cannot disagree.
type Binding struct {
	// Binding has the keys, by tea's names, the first being the one shown in the status line, and in
	// Help().Desc the line on the help page. A disabled one is still on the help page, but does nothing
	// now.
	key.Binding
	Label string // one or two words for the status line, "" to stay out of it
	Group string // heading on the help page
	// Do is what it does. A nil one is handled elsewhere, by a text editor.
	Do func(tea.KeyMsg) tea.Cmd
}

// Bind is a binding of keys, named with blanks between them ("up k", a blank itself as "space").
func Bind(group, keys, label, help string, do func()) Binding {
	return Command(group, keys, label, help, func(tea.KeyMsg) tea.Cmd { do(); return nil })
}

// Command is Bind for what needs the key itself or has a command for the program.
func Command(group, keys, label, help string, do func(tea.KeyMsg) tea.Cmd) Binding {
	names := strings.Fields(keys)
	for i, name := range names {
		if name == "space" {
			names[i] = " "
		}
	}
	return Binding{key.NewBinding(key.WithKeys(names...), key.WithHelp("", help)), label, group, do}
}

// When is the binding, enabled only when yes.
func (b Binding) When(yes bool) Binding {
	b.SetEnabled(yes)
	return b
}

// Press does what the first of the bindings that has the key does, and reports whether there is one.
// Several letters in one message are text: "end" typed at once is not the key of that name.
func Press(bindings []Binding, msg tea.KeyMsg) (tea.Cmd, bool) {
	if len(msg.Runes) > 1 {
		return nil, false
	}
	for _, b := range bindings {
		if b.Do != nil && key.Matches(msg, b.Binding) {
			return b.Do(msg), true
		}
	}
	return nil, false
}

// ExpandKeys splits a key message into single keys. Keys typed fast arrive as one
// message of several runes, which would match no binding. When a text field has
// the focus (typing) the message is text and stays whole; so does a paste, whose
// String is bracketed and matches no binding.
func ExpandKeys(msg tea.KeyMsg, typing bool) []tea.KeyMsg {
	if typing || msg.Paste || msg.Type != tea.KeyRunes || len(msg.Runes) < 2 || Garbage(msg) {
		return []tea.KeyMsg{msg}
	}
	out := make([]tea.KeyMsg, len(msg.Runes))
	for i, r := range msg.Runes {
		k := tea.Key{Type: tea.KeyRunes, Runes: []rune{r}, Alt: msg.Alt && i == 0}
		if r == ' ' {
			k.Type = tea.KeySpace
		}
		out[i] = tea.KeyMsg(k)
	}
	return out
}

// Garbage reports whether a key message is the rest of an escape sequence that
// was split between two reads and so came in as text: a mouse report
// ("<35;100;40M"), an arrow ("[A"), an answer about colours ("11;rgb:…"). A
// paste and a single rune never are.
func Garbage(msg tea.KeyMsg) bool {
	if msg.Type != tea.KeyRunes || msg.Paste || len(msg.Runes) < 2 {
		return false
	}
	s := strings.TrimSuffix(strings.TrimSuffix(string(msg.Runes), "\\"), "\x1b")
	if strings.Contains(s, ";rgb:") || strings.HasPrefix(s, "rgb:") {
		return true
	}
	bracket := strings.HasPrefix(s, "[")
	body := strings.TrimPrefix(s, "[")
	mouse := strings.HasPrefix(body, "<")
	body = strings.TrimPrefix(body, "<")
	digits := strings.TrimRight(body, "MmABCDEFHPQRSZ~u")
	tail := len(body) - len(digits)
	if strings.Trim(digits, "0123456789;<[Mm") != "" {
		return false
	}
	params := strings.Contains(digits, ";")
	return mouse || (bracket && tail == 1) || (params && tail <= 1)
}

// keyNames are the keys not shown by tea's names.
var keyNames = map[string]string{
	"up": "↑", "down": "↓", "left": "←", "right": "→", " ": "space", "pgdown": "pgdn",
}

// KeyName is a key as the person reads it: arrows as arrows (as words with an ASCII theme), " " as
// "space"; the rest by tea's names.
func KeyName(t Theme, key string) string {
	name, ok := keyNames[key]
	if !ok {
		return t.Text(key)
	}
	return t.Text(name)
}

// keyList is a binding's keys for the help page: its own text if it has one, else all of them.
func keyList(t Theme, b Binding) string {
	if shown := b.Help().Key; shown != "" {
		return t.Text(shown)
	}
	names := make([]string, len(b.Keys()))
	for i, k := range b.Keys() {
		names[i] = KeyName(t, k)
	}
	return strings.Join(names, ", ")
}

// HelpLines is the help page of the bindings in lines of exactly w cells: groups
// in the order they first appear, a heading each, keys in one column and what they do
// beside them, wrapped. Bindings without keys are left out. (bubbles/help draws short
// words in columns; here each key has a sentence, wrapped, in ASCII where asked.)
func HelpLines(t Theme, w int, bindings []Binding) []string {
	var groups []string
	keyW := 0
	for _, b := range bindings {
		if len(b.Keys()) == 0 {
			continue
		}
		keyW = max(keyW, Width(keyList(t, b)))
		if !slices.Contains(groups, b.Group) {
			groups = append(groups, b.Group)
		}
	}
	keyW = min(keyW, max(1, w/2-4))
	var lines []string
	for i, group := range groups {
		if i > 0 {
			lines = append(lines, t.Fit("", w))
		}
		if group != "" {
			lines = append(lines, t.Fit(t.Paint(Title, group), w))
		}
		for _, b := range bindings {
			if b.Group == group && len(b.Keys()) > 0 {
				lines = append(lines, helpLine(t, w, keyW, b)...)
			}
		}
	}
	return lines
}

func helpLine(t Theme, w, keyW int, b Binding) []string {
	text := b.Help().Desc
	if text == "" {
		text = b.Label
	}
	var lines []string
	head := t.Style(Key).Render(t.Fit(keyList(t, b), keyW))
	for i, line := range t.Wrap(text, w-keyW-4) {
		if i > 0 {
			head = spaces(keyW)
		}
		lines = append(lines, t.Fit("  "+head+"  "+line, w))
	}
	if lines == nil {
		lines = []string{t.Fit("  "+head, w)}
	}
	return lines
}
