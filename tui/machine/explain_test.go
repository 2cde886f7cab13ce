package machine

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The explanation of a field and how to measure it is shown to its last word from the smallest ordinary
// terminal up, under a three-line notice too, among the first things and among all; where there is no
// room for it, the box says how much follows.
func TestAFieldIsExplainedToItsLastWord(t *testing.T) {
	files, err := filepath.Glob("../../testdata/jobs/*.toml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	cut := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		s := session.New(job.Parse(string(text)), "", job.Mark{})
		for _, size := range []kit.Rect{{W: 80, H: 18}, {W: 80, H: 21}, {W: 100, H: 27}, {W: 200, H: 57}, {W: 80, H: 9}} {
			for _, first := range []bool{true, false} {
				v := NewMachine()
				v.SetSize(s, size)
				v.first = first
				v.SetSize(s, size)
				for i := range v.form.Rows {
					v.form = v.form.By(i - v.form.Focus)
					_, help, _ := v.areas()
					box := unwrapped(strings.Join(v.explain(s, help).Lines, "\n"))
					want := unwrapped(strings.Join(v.form.Explain(s.Theme, 1000), " "))
					if size.H > 9 {
						require.Contains(t, box, want, "%s at %d×%d", file, size.W, size.H)
					} else if !strings.Contains(box, want) {
						require.Contains(t, box, "moreline")
						cut++
					}
				}
			}
		}
	}
	assert.Positive(t, cut)
}

// unwrapped is text without borders and blanks, so that it does not depend on wrapping.
func unwrapped(text string) string { return strings.ReplaceAll(tuitest.Words(text), " ", "") }
