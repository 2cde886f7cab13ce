package tui

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/winding/card"
	"slotwright/winding/job"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Whoever likes inches sees the wind in miles an hour wherever it is a figure or in a sentence: on every
// screen, with what opens over it, and on paper. What was typed stays as typed, what a maker or a
// standard lays down stands in brackets, and a field's help is the field's.
func TestInchesComeWithMilesAnHour(t *testing.T) {
	mayBe := regexp.MustCompile(`◆ m/s|map errs by 1 m/s|^\W*1 m/s and more|\(\d+(\.\d+)? m/s\)|^ +(Mean wind|Furls at|Gale to check) `)
	for _, name := range []string{"wind-good", "wind-12v-gale", "wind-trap", "wind-wound-rotor"} {
		text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		s := session.New(job.Parse(string(text)), "", job.Mark{})
		s.Units.Inch = true
		said := ""
		for _, screen := range []string{"Machine", "Trials", "Curves", "Drive", "Card", "Wound"} {
			for _, keys := range []string{"", "m", "v", "e", "y", "ctrl+g end", "r", "!", "down down down down down down down down y"} {
				said += ansi.Strip(opened(s, 200, 60, screen, keys).View()) + "\n"
			}
		}
		for _, screen := range []string{"Trials", "Curves", "Drive"} { // what is small says it in places of its own
			said += ansi.Strip(opened(s, 60, 20, screen, "").View()) + "\n" + ansi.Strip(opened(s, 80, 24, screen, "").View()) + "\n"
		}
		doc := s.Document()
		opt := card.Options{Units: s.Units, Document: &doc}
		said += card.Report(s.Bench(), s.Outcome(), opt) + card.Text(s.Bench(), s.Outcome(), 0, opt)
		for _, line := range strings.Split(said, "\n") {
			if strings.Contains(line, "m/s") {
				assert.Regexp(t, mayBe, line, name)
			}
		}
		assert.Regexp(t, `net amps, wind \d+(\.\d+)? mph`, said)
		assert.Contains(t, said, "wind, mph")
	}
	s := session.New(job.Parse(""), "", job.Mark{})
	s.Units.Inch = true
	m := opened(s, 100, 30, "Drive", "w i enter")
	m.goTo("drive.mean_wind")
	m.press("1 0 enter")
	typed, u, _ := m.s.Document().Typed("drive.mean_wind")
	assert.Equal(t, "10 mph", typed+" "+u.Name, "a bare number is in the unit behind the field")
	// 1 mph is 0.44704 m/s exactly (international yard and pound agreement, 1959).
	assert.InDelta(t, 4.4704, m.s.Job().Drive.MeanWindMS.Value, 1e-9)
}
