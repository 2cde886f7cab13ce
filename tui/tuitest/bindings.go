package tuitest

import (
	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// Clashes lists keys that more than one enabled binding claims.
func Clashes(bindings []kit.Binding) []string {
	seen := map[string]int{}
	var out []string
	for _, b := range bindings {
		for _, k := range b.Keys() {
			if !b.Enabled() {
				continue
			}
			if seen[k]++; seen[k] == 2 {
				out = append(out, k)
			}
		}
	}
	return out
}

// specialKeys are the keys that are not a letter, by their names.
var specialKeys = func() map[string]tea.KeyMsg {
	list := map[string]tea.KeyMsg{}
	for t := tea.KeyF20; t <= tea.KeyBackspace; t++ {
		msg := tea.KeyMsg{Type: t}
		if name := msg.String(); name != "" && t != tea.KeyRunes {
			list[name] = msg
		}
	}
	return list
}()

// KeyMsg is the message of a key by its tea name: "down", "ctrl+s", "j", " ".
func KeyMsg(name string) tea.KeyMsg {
	if msg, ok := specialKeys[name]; ok {
		return msg
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}
