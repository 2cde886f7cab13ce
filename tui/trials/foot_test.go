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

// With every row shown on a small screen the foot still gives the first item of every trial's verdict,
// uncut, and says that there are more findings; and more rows are in sight than lines of the foot.
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

// Amps held by the regulator have a sign of their own in front, at every size and with every picture,
// in ASCII too, and the foot says what it means; a job without a regulator has neither.
func TestHeldAmpsHaveASign(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/engine-held.toml")
	require.NoError(t, err)
	for _, ascii := range []bool{false, true} {
		for _, size := range [][2]int{{60, 18}, {80, 21}, {100, 27}, {120, 37}, {200, 57}} {
			s, v := session.New(job.Parse(string(text)), "", job.Mark{}), New()
			s.Theme.ASCII = ascii
			for range 3 {
				frame := tuitest.Draw(t, v, s, size[0], size[1])
				assert.Regexp(t, `engine 1200 rpm(, A)? +~18\.0 +=20\.0 `, frame, size)
				assert.Contains(t, frame, "= held at 20 A by the regulator", size)
				tuitest.Press(t, v, s, size[0], size[1], "v")
			}
			s.Type("battery.most_current", "")
			frame := tuitest.Draw(t, v, s, size[0], size[1])
			assert.NotContains(t, frame, "= held", size)
			assert.NotRegexp(t, `=\d`, frame, size)
		}
	}
}
