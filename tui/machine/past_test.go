package machine

import (
	"os"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What follows from the inputs marks the amps of a winding that cannot be wound as Trials does, in the
// list and in the line at the foot, and says burns where it does not survive; others have no mark.
func TestWhatFollowsMarksAmpsThatAreNotToBeHad(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/pedals.toml")
	require.NoError(t, err)
	for _, fits := range []bool{true, false} {
		s := session.New(job.Parse(string(data)), "", job.Mark{})
		if !fits {
			s.Type("trial[0].turns", "60")
		}
		require.Equal(t, fits, s.Outcome().Trials[0].Fits())
		list := ansi.Strip(strings.Join(knownLines(s, 54), "\n"))
		line := tuitest.Words(known(s, 400))
		if fits {
			assert.Regexp(t, `full effort +~?[\d.]+`, list)
			assert.NotRegexp(t, `full effort +~?[\d.]+ +(A )?✗`, list+"\n"+line)
			continue
		}
		assert.Regexp(t, `full effort +~?[\d.]+ *✗`, list)
		assert.Regexp(t, `full effort ~?[\d.]+ A ✗`, line)
	}
	data, err = os.ReadFile("../../testdata/jobs/wind-good.toml")
	require.NoError(t, err)
	s := session.New(job.Parse(string(data)), "", job.Mark{})
	burnt := 0
	for i := range s.Outcome().Trials {
		s.Choose(i)
		list := ansi.Strip(strings.Join(knownLines(s, 54), "\n"))
		for _, r := range s.Outcome().Comparison {
			if c := r.Cells[i]; r.Key && c.Burns {
				burnt++
				assert.Regexp(t, `burns +✗`, list, r.ID)
				assert.Contains(t, strings.Join(strings.Fields(known(s, 900)), " "), "burns ✗", r.ID)
			}
		}
	}
	assert.Greater(t, burnt, 0)
}
