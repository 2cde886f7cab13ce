package tui

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/card"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// With inches chosen, wind is in miles an hour wherever it is a figure or in a sentence: on every
// screen, with every overlay, and on paper. Typed values stay as typed, and values that a maker or a
// standard prescribes are in brackets, of which an overlay may hide the first half.
func TestInchesComeWithMilesAnHour(t *testing.T) {
	tuitest.OneGoroutine(t)
	mayBe := regexp.MustCompile(`◆ m/s|[┓┃┛] *m/s\)|\(\d+(\.\d+)? m/s\)|^ +(Mean wind|Furls at|Gale to check) `)
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
		if name == "wind-good" { // 2.4 m and 5 m/s stay as typed, and are said beside: 0.3048 m and 0.44704 m/s
			assert.Regexp(t, `Rotor diameter +2\.4 +◆ m +\S*= 7\.874 ft`, said)
			assert.Regexp(t, `Mean wind +5 +◆ m/s +\S*= 11\.18 mph`, said)
		}
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

// With inches chosen, nobody reads of millimetres, square millimetres, metres or kilograms where
// nothing is typed in them: every field of every form with its unit, its dim text and its help, in jobs
// that together ask for all of them. The names of wires stay.
func TestInchesAreInEveryFieldsHelp(t *testing.T) {
	tuitest.OneGoroutine(t)
	names := regexp.MustCompile(`\d mm (over|bare)|IEC [\d.]+ mm`)
	metric := regexp.MustCompile(`\d ?(mm²|mm|cm|m|kg|m/s|K/W)([ .,;:)]|$)|(^| )(mm²?|kg|m/s) *$|\bmetres\b`)
	helped := 0
	for _, words := range []string{
		"[slot]\nshape = \"tapered\"\n[field]\nkind = \"magnets\"\n[drive]\nkind = \"wind\"\nthrough = \"belt\"\n[[trial]]\nname = \"A\"\n",
		"[machine]\nstator = \"flat\"\n[field]\nkind = \"wound\"\n[drive]\nkind = \"water\"\n[[spin]]\n[[coil]]\n[[trial]]\nname = \"A\"\n",
	} {
		doc := job.Parse(words)
		require.Empty(t, doc.Problems(), words)
		s := session.New(doc, "", job.Mark{})
		s.Units = quantity.Choice{Inch: true, Fahrenheit: true}
		for _, screen := range []string{"Machine", "Drive", "Wound"} {
			m := opened(s, 200, 60, screen, "")
			if screen == "Machine" {
				m.press("ctrl+f")
			}
			m.press("ctrl+home")
			for range 120 {
				for _, line := range strings.Split(names.ReplaceAllString(ansi.Strip(m.View()), ""), "\n") {
					for _, part := range strings.Split(line, "│") {
						assert.NotRegexp(t, metric, part, screen)
					}
				}
				if m.press("down"); strings.Contains(m.View(), "0.315 to 0.394 in;") || strings.Contains(m.View(), "2.24 mph") || strings.Contains(m.View(), "feet of fall") {
					helped++
				}
			}
		}
	}
	assert.GreaterOrEqual(t, helped, 3, "the helps with numbers in them were passed")
}
