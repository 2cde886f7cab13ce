package trials

import (
	"os"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// With every row shown on a small screen the foot still says of every trial what stands first in its
// verdict, nothing of it cut, and that more is called out; and more rows are in sight than lines of the foot.
func TestEveryRowLeavesTheFootItsShare(t *testing.T) {
	for _, name := range []string{"wind-good", "engine-held", "pedals", "water"} {
		text, err := os.ReadFile("../../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		s, v := session.New(job.Parse(string(text)), "", job.Mark{}), New()
		tuitest.Draw(t, v, s, 80, 21)
		tuitest.Press(t, v, s, 80, 21, "m")
		for range 40 {
			frame := tuitest.Draw(t, v, s, 80, 21)
			table, foot, _ := strings.Cut(frame, "▼\n")
			if !strings.Contains(frame, "▼\n") { // scrolled to its end
				at := strings.LastIndex(frame, "┃\n")
				table, foot = frame[:at], frame[at+len("┃\n"):]
			}
			said := strings.Join(strings.Fields(foot), " ")
			for i := range s.Outcome().Trials {
				o := &s.Outcome().Trials[i]
				first, _, _ := strings.Cut(o.Verdict, "; ")
				assert.Contains(t, said, o.Name+" "+first, "%s at %s\n%s", name, v.row, frame)
			}
			assert.True(t, len(called(s)) == 0 || strings.Contains(said, "called out") || strings.Contains(said, "! "+s.Outcome().Trials[s.Trial].Name), "%s\n%s", name, frame)
			assert.Regexp(t, `(\.|called out)$`, said, "%s\n%s", name, frame)
			assert.Greater(t, strings.Count(table, "\n"), 2*strings.Count(strings.TrimSpace(foot), "\n"))
			tuitest.Press(t, v, s, 80, 21, "down")
		}
	}
}
