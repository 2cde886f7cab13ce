package card

import (
	"strings"
	"unicode"
)

// wide is the runes that take two columns: East Asian wide and full-width forms, and
// pictures. Source: Unicode Standard Annex 11, the blocks, from memory.
var wide = [][2]rune{{0x1100, 0x115f}, {0x2e80, 0xa4cf}, {0xac00, 0xd7a3}, {0xf900, 0xfaff}, {0xfe30, 0xfe6f},
	{0xff00, 0xff60}, {0xffe0, 0xffe6}, {0x1f300, 0x1faff}, {0x20000, 0x3fffd}}

// runeColumns is how many columns a rune takes.
func runeColumns(r rune) int {
	if r < 0x300 { // before the first combining mark
		return 1
	}
	if unicode.In(r, unicode.Mn, unicode.Me) {
		return 0
	}
	for _, span := range wide {
		if r >= span[0] && r <= span[1] {
			return 2
		}
	}
	return 1
}

// columns is how many columns a text takes.
func columns(s string) int {
	n := 0
	for _, r := range s {
		n += runeColumns(r)
	}
	return n
}

// pad fills a text with blanks on the right.
func pad(s string, to int) string { return s + strings.Repeat(" ", max(0, to-columns(s))) }

// padLeft fills on the left.
func padLeft(s string, to int) string { return strings.Repeat(" ", max(0, to-columns(s))) + s }

// wrap breaks text into lines of at most n columns, at blanks, and within a word only
// where it is longer than a line. There is at least one line.
func wrap(s string, n int) []string {
	n = max(n, 2)
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		if line != "" && columns(line)+1+columns(word) <= n {
			line += " " + word
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for columns(word) > n {
			head := cut(word, n)
			lines = append(lines, head)
			word = word[len(head):]
		}
		line = word
	}
	if line != "" || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// cut is as much of the start of a word as fits in n columns.
func cut(word string, n int) string {
	used := 0
	for i, r := range word {
		if used += runeColumns(r); used > n {
			return word[:i]
		}
	}
	return word
}
