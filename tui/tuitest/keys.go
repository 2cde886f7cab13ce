package tuitest

import (
	"strings"
	"unicode/utf8"
)

// namedKeys are what a common terminal sends.
var namedKeys = map[string]string{
	"up": "\x1b[A", "down": "\x1b[B", "right": "\x1b[C", "left": "\x1b[D",
	"home": "\x1b[H", "end": "\x1b[F", "pgup": "\x1b[5~", "pgdown": "\x1b[6~",
	"insert": "\x1b[2~", "delete": "\x1b[3~", "backspace": "\x7f",
	"tab": "\t", "shift+tab": "\x1b[Z", "enter": "\r", "esc": "\x1b", "space": " ",
	"shift+up": "\x1b[1;2A", "shift+down": "\x1b[1;2B", "shift+right": "\x1b[1;2C", "shift+left": "\x1b[1;2D",
	"ctrl+up": "\x1b[1;5A", "ctrl+down": "\x1b[1;5B", "ctrl+right": "\x1b[1;5C", "ctrl+left": "\x1b[1;5D",
	"alt+up": "\x1b[1;3A", "alt+down": "\x1b[1;3B", "alt+right": "\x1b[1;3C", "alt+left": "\x1b[1;3D",
	"ctrl+home": "\x1b[1;5H", "ctrl+end": "\x1b[1;5F", "ctrl+pgup": "\x1b[5;5~", "ctrl+pgdown": "\x1b[6;5~",
	"f1": "\x1bOP", "f2": "\x1bOQ", "f3": "\x1bOR", "f4": "\x1bOS", "f5": "\x1b[15~", "f6": "\x1b[17~",
	"f7": "\x1b[18~", "f8": "\x1b[19~", "f9": "\x1b[20~", "f10": "\x1b[21~", "f11": "\x1b[23~", "f12": "\x1b[24~",
}

// keyBytes is what the terminal sends for a key by its tea name.
func keyBytes(name string) (string, bool) {
	if b, ok := namedKeys[name]; ok {
		return b, true
	}
	if utf8.RuneCountInString(name) == 1 {
		return name, true
	}
	if rest, ok := strings.CutPrefix(name, "alt+"); ok {
		b, ok := keyBytes(rest)
		return "\x1b" + b, ok
	}
	if rest, ok := strings.CutPrefix(name, "ctrl+"); ok && len(rest) == 1 && rest[0] >= 'a' && rest[0] <= 'z' {
		return string(rune(rest[0] - 'a' + 1)), true
	}
	return "", false
}
