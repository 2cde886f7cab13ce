package tui

import (
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// richJobs are jobs with many kinds of values, in two systems of units, guessed and with ±, and with a
// record.
func richJobs(t *testing.T) map[string]string {
	t.Helper()
	list := map[string]string{"example": job.Example().Text()}
	for _, name := range []string{"car-stator-13-to-30", "trial-coil", "hub-in-wind", "pedals"} {
		if testing.Short() {
			break
		}
		text, err := os.ReadFile("../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		list[name] = string(text)
	}
	list["inches"] = `format = 1
[machine]
slots = 36
poles = 12
bore_in = 6
stack_in = "~2 ±0.06"
[slot]
area_in2 = "0.1 ±5%"
[drive]
kind = "wind"
rotor_ft = "7 ±0.1" # measured twice
mean_wind_mph = 11
[battery]
cable_ft = 30
[[trial]]
turns = 9
[[wound]]
turns = 8
lead_ohms = "0.12 ±5%"
`
	return list
}

// foreign is a value in another unit than the field's key has, where there is one.
func foreign(d job.Document, path string) string {
	in, _ := job.InputAt(path)
	_, now, given := d.Typed(path)
	for _, u := range in.Dim {
		if u.Suffix != "" && (given && u.Suffix != now.Suffix || !given && u.Suffix != in.Dim[0].Suffix) {
			return "3.5 " + u.Suffix
		}
	}
	return "3 x 1:2 %"
}

// esc leaves every field of every screen exactly as it was: the number, its unit, its ±, the line's
// place and comment; and it adds nothing to the file. Every field is typed over in one job and opened
// first in the next.
func TestEscLeavesEveryFieldToTheLetter(t *testing.T) {
	tuitest.OneGoroutine(t)
	jobs := richJobs(t)
	for which, name := range slices.Sorted(maps.Keys(jobs)) {
		text := jobs[name]
		m := opened(session.New(job.Parse(text), "", job.Mark{}), 120, 40, "Machine", "")
		typed := map[string]int{}
		for _, table := range job.Tables {
			for i := range max(1, m.s.Document().Count(table.Name)) {
				for field, in := range job.InputsOf(table.Name) {
					path := in.PathAt(i)
					m.s.ClearMessage()
					if m.goTo(path); strings.Contains(m.s.Message().Text, "no screen") {
						continue
					}
					value := foreign(m.s.Document(), path)
					begin := []string{"", " "}[(which+field)%2] // space opens what is there
					m.press(strings.ReplaceAll(strings.Join(strings.Split(begin+value, ""), "\t"), " ", "space"))
					for n := 0; m.editing() && n < 3; n++ { // a list takes one esc for its letters
						m.press("esc")
					}
					require.False(t, m.editing(), "%s %s", name, path)
					if !assert.Equal(t, text, m.s.Document().Text(), "%s: %s, %q typed", name, path, begin+value) {
						return
					}
					typed[m.view().Name()]++
				}
			}
		}
		assert.Positive(t, typed["Machine"], name)
		assert.Positive(t, typed["Drive"], name)
		assert.Positive(t, typed["Trials"], name)
	}
}

// What was undone can be redone, even if a field was typed into and left meanwhile.
func TestEscKeepsWhatWasUndone(t *testing.T) {
	m := opened(session.New(job.Parse(richJobs(t)["inches"]), "", job.Mark{}), 120, 40, "Machine", "")
	m.goTo("machine.bore")
	m.press("8 enter ctrl+z")
	m.goTo("machine.stack")
	m.press("5 0 m m esc ctrl+y")
	assert.Contains(t, m.s.Document().Text(), "bore_in = 8\n")
	assert.Contains(t, m.s.Document().Text(), `stack_in = "~2 ±0.06"`)
}

// A job in inches, with millimetres typed and left, reads as before on the screen.
func TestEscAtTheTerminal(t *testing.T) {
	hd := newHand(t, session.New(job.Parse(richJobs(t)["inches"]), "", job.Mark{}), 100, 30)
	hd.st.Key("ctrl+p")
	hd.st.Type("diameter at the gap")
	hd.st.WaitFor("Field: ")
	hd.st.Key("enter")
	hd.st.WaitFor("[6")
	hd.st.Type("50mm")
	hd.st.WaitFor("[50mm")
	hd.st.Key("esc")
	hd.st.WaitUntil("6 inches", func(screen string) bool {
		return strings.Contains(strings.Join(strings.Fields(screen), " "), "[6] ◆ in")
	})
}
