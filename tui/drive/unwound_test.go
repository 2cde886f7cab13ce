package drive

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var regexpMarked = regexp.MustCompile(`full power: net amps, A ~?[\d.]+ ✗`)

// Figures of a winding that cannot be wound are given in the conditional, and its amps are marked.
func TestWhatCannotBeWoundIsSaidOnDrive(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/pedals.toml")
	require.NoError(t, err)
	for _, fits := range []bool{true, false} {
		s, v := session.New(job.Parse(string(data)), "", job.Mark{}), New()
		if !fits {
			s.Type("trial[0].turns", "900")
		}
		o := &s.Outcome().Trials[0]
		require.Equal(t, fits, o.Fits())
		tuitest.Draw(t, v, s, 120, 37)
		text := tuitest.Words(strings.Join(v.text, "\n"))
		said := "A: cannot be wound, it does not fit: 900 turns"
		assert.Equal(t, !fits, strings.Contains(text, said), text)
		assert.Contains(t, text, o.Suits, "what it would do")
		assert.Equal(t, !fits, strings.Contains(text, "full power: net amps, A ") && regexpMarked.MatchString(text), text)
	}
}
