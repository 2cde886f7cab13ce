package text

import (
	"strings"

	"github.com/clipperhouse/displaywidth"
)

// Width is the number of columns clean text takes: 2 for an East Asian character or a
// picture, none for an accent (Unicode Standard Annexes 11 and 29).
func Width(s string) int { return displaywidth.String(s) }

// Cut is as much of clean text as fits in n columns; where some is left out, mark is at the end, within
// them.
func Cut(s string, n int, mark string) string { return displaywidth.TruncateString(s, n, mark) }

// Pad pads clean text with blanks on the right to n columns. Longer text stays as it is.
func Pad(s string, n int) string { return s + strings.Repeat(" ", max(0, n-Width(s))) }

// PadLeft is [Pad] with the blanks on the left.
func PadLeft(s string, n int) string { return strings.Repeat(" ", max(0, n-Width(s))) + s }

// Fit is clean text in exactly n columns: padded on the right, or cut with a mark.
func Fit(s string, n int, mark string) string { return Pad(Cut(s, n, mark), n) }

// Wrap breaks clean text into lines of at most n columns (at least 2), at blanks, and
// within a word only where it is longer than a line. There is at least one line.
func Wrap(s string, n int) []string {
	n = max(n, 2)
	var lines []string
	line, used := "", 0
	end := func() {
		if line != "" {
			lines = append(lines, line)
		}
	}
	for _, word := range strings.Fields(s) {
		w := Width(word)
		if line != "" && used+1+w <= n {
			line, used = line+" "+word, used+1+w
			continue
		}
		end()
		for Width(word) > n {
			head := Cut(word, n, "")
			lines = append(lines, head)
			word = word[len(head):]
		}
		line, used = word, Width(word)
	}
	if end(); len(lines) == 0 {
		return []string{""}
	}
	return lines
}
