package card

import (
	"strings"
	"testing"

	"slotwright/winding/text"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Folded to a narrow screen every line of card and report keeps within it, and every word that is
// on the sheets is there, as often as there: but for what says of a sheet that it is one, and the
// head that each column of coils has.
func TestFoldedNothingIsLost(t *testing.T) {
	bare := func(text string) map[string]int {
		words := map[string]int{}
		for _, line := range strings.Split(text, "\n") {
			trimmed := strings.TrimSpace(line)
			switch {
			case strings.Trim(trimmed, "-=") == "", strings.Contains(line, "More cautions overleaf"), strings.Contains(line, "in out turns way"), strings.Contains(line, ", TRIAL "):
				continue
			}
			for _, word := range strings.Fields(strings.ReplaceAll(trimmed, "read then", "")) {
				words[word]++
			}
		}
		return words
	}
	for name, work := range jobs(t) {
		for i := range work.o.Trials {
			folded := Text(work.b, &work.o, i, Options{Width: 60})
			within(t, folded, name)
			sheets, narrow := bare(Text(work.b, &work.o, i, Options{})), bare(folded)
			for word, times := range sheets {
				if text.Width(word) < 50 {
					require.GreaterOrEqual(t, narrow[word], times, "%s: %q", name, word)
				}
			}
		}
		report := Report(work.b, &work.o, Options{Width: 60})
		within(t, report, name)
	}
	work := jobs(t)["example"]
	assert.Equal(t, Text(work.b, &work.o, 0, Options{}), Text(work.b, &work.o, 0, Options{Width: 200}), "no wider than a sheet")
}

// within holds lines to the width of a narrow screen.
func within(t *testing.T, lines, name string) {
	t.Helper()
	for _, line := range strings.Split(lines, "\n") {
		require.LessOrEqual(t, text.Width(line), narrowest, "%s: %s", name, line)
	}
}
