package kit

import (
	"slices"
	"strings"

	tea "github.com/charmbracelet/bubbletea"
)

// Binding is one thing keys can do, as data: the dispatch, the status line, the
// help page and the README's list are all made from the same table.
type Binding struct {
	ID     string   // what the owner switches on
	Keys   []string // tea key names ("up", "ctrl+s", "j", " "); the first is the one shown in the status line
	Label  string   // one or two words for the status line
	Help   string   // one line for the help page; Label if empty
	Group  string   // heading on the help page
	Hidden bool     // works and is in the help, but not in the status line
}

// Lookup returns the ID of the first binding that has the key, "" if none has.
func Lookup(bindings []Binding, key string) string {
	for _, b := range bindings {
		if slices.Contains(b.Keys, key) {
			return b.ID
		}
	}
	return ""
}

// Clashes lists keys that more than one of the bindings claims, for a test.
func Clashes(bindings []Binding) []string {
	seen := map[string]int{}
	var out []string
	for _, b := range bindings {
		for _, k := range b.Keys {
			if seen[k]++; seen[k] == 2 {
				out = append(out, k)
			}
		}
	}
	return out
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

// keyNames are the keys shown otherwise than tea spells them.
var keyNames = map[string]string{
	"up": "↑", "down": "↓", "left": "←", "right": "→", " ": "space", "pgdown": "pgdn",
}

// KeyName is a key as the person reads it: arrows as arrows (as words with an ASCII
// theme), " " as "space"; the rest as tea spells it.
func KeyName(t Theme, key string) string {
	name, ok := keyNames[key]
	if !ok {
		return t.Text(key)
	}
	return t.Text(name)
}

// keyList joins a binding's keys for the help page.
func keyList(t Theme, keys []string) string {
	names := make([]string, len(keys))
	for i, k := range keys {
		names[i] = KeyName(t, k)
	}
	return strings.Join(names, ", ")
}

// HelpLines is the help page of the bindings in lines of exactly w cells: groups
// in the order they first appear, a heading each, keys in one column and what they do
// beside them, wrapped. Bindings without keys are left out.
func HelpLines(t Theme, w int, bindings []Binding) []string {
	var groups []string
	keyW := 0
	for _, b := range bindings {
		if len(b.Keys) == 0 {
			continue
		}
		keyW = max(keyW, Width(keyList(t, b.Keys)))
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
			if b.Group == group && len(b.Keys) > 0 {
				lines = append(lines, helpLine(t, w, keyW, b)...)
			}
		}
	}
	return lines
}

func helpLine(t Theme, w, keyW int, b Binding) []string {
	text := b.Help
	if text == "" {
		text = b.Label
	}
	var lines []string
	head := t.Style(Key).Render(t.Fit(keyList(t, b.Keys), keyW))
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
