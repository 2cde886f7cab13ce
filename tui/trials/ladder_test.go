package trials

import (
	"os"
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The ladder says that it is being computed, then shows its rungs with marks for best, over a limit and
// present; enter applies one, n makes a new trial of it, one step of undo each.
func TestLadder(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, 80, 21, "e")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "working out…")
	tuitest.Work(t, s)
	frame := tuitest.Draw(t, v, s, 80, 21)
	for _, want := range []string{`▸ 15 AWG ● +17 +~567 ?✗ .* now`, `▲`, `A, wheel +A, full +hottest +limit`, `45 rpm +water`, `every AWG size`} {
		assert.Regexp(t, want, frame)
	}
	before := s.Document().Text()
	tuitest.Press(t, v, s, 80, 21, "down enter")
	assert.Equal(t, "1 × 16 AWG", s.Outcome().Trials[0].Wire)
	assert.Equal(t, 21.0, s.Outcome().Trials[0].Turns.Value)
	assert.False(t, v.ladder.open)
	s.Undo()
	assert.Equal(t, before, s.Document().Text())
	tuitest.Press(t, v, s, 80, 21, "e")
	tuitest.Work(t, s)
	tuitest.Press(t, v, s, 80, 21, "up n")
	assert.Len(t, s.Outcome().Trials, 4)
	assert.Equal(t, "1 × 14 AWG", s.Outcome().Trials[3].Wire)
	tuitest.Press(t, v, s, 80, 21, "e esc")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Turns")
}

// Other strands, another system of sizes or another slot recompute it; the answer to an outdated
// question is not shown.
func TestLadderAsksAnew(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, 100, 27, "e")
	tuitest.Work(t, s)
	one := tuitest.Draw(t, v, s, 100, 27)
	for _, key := range []string{">", "a", "c", "F"} {
		tuitest.Press(t, v, s, 100, 27, key)
		assert.Contains(t, tuitest.Draw(t, v, s, 100, 27), "working out…", key)
		tuitest.Work(t, s)
		assert.NotEqual(t, one, tuitest.Draw(t, v, s, 100, 27), key)
	}
	assert.Contains(t, tuitest.Draw(t, v, s, 100, 27), "2 strands in hand, delta")
	assert.Regexp(t, regexp.MustCompile(`2 × \d+ AWG`), tuitest.Draw(t, v, s, 100, 27))
	for range mostStrands {
		v.Key(s, tuitest.KeyMsg(">"))
		v.SetSize(s, v.at)
	}
	assert.Contains(t, s.Message().Text, "no more strands")
	for name, path := range map[string]string{"give trial A one": "trial[0].gauge", "needs the slot": "slot.area"} {
		s, v := session.NewExample(), New()
		s.Type(path, "")
		tuitest.Press(t, v, s, 100, 27, "e")
		tuitest.Work(t, s)
		assert.Contains(t, tuitest.Draw(t, v, s, 100, 27), name)
	}
}

// With wind the ladder has a year's energy, and marks the best for it.
func TestLadderOfTheWind(t *testing.T) {
	s, v := jobOf(t, "wind-trap"), New()
	tuitest.Press(t, v, s, 100, 27, "e")
	tuitest.Work(t, s)
	frame := tuitest.Draw(t, v, s, 100, 27)
	assert.Contains(t, frame, "a year")
	assert.Contains(t, frame, "12 m/s")
}

// At every size, with each picture, the why page and the ladder, the frame fills its rectangle exactly.
func TestEverySize(t *testing.T) {
	for _, name := range []string{"", "wind-good", "car-stator-13-to-30"} {
		s := session.NewExample()
		if name != "" {
			s = jobOf(t, name)
		}
		for _, size := range [][2]int{{1, 1}, {2, 9}, {9, 2}, {20, 5}, {24, 8}, {40, 12}, {60, 17}, {80, 20}, {90, 24}, {149, 60}, {150, 30}, {151, 29}, {300, 100}} {
			v := New()
			for _, key := range []string{"v", "v", "v", "m", "y", "esc", "e"} {
				v.SetSize(s, kit.Rect{W: size[0], H: size[1]})
				v.Key(s, tuitest.KeyMsg(key))
				tuitest.Work(t, s)
				tuitest.Draw(t, v, s, size[0], size[1])
			}
			v.SetSize(s, v.at)
			tuitest.Work(t, s)
			frame := tuitest.Draw(t, v, s, size[0], size[1])
			assert.NotContains(t, frame, "NaN", size)
		}
	}
}

// Where there is room, each gauge's amps are plotted beside the rungs against the speed at which
// charging begins, with the marked one named; the points are the rungs' own figures.
func TestTheFrontierIsTheRungs(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, 120, 37, "e")
	tuitest.Work(t, s)
	frame := tuitest.Draw(t, v, s, 120, 37)
	for _, want := range []string{"net amps, every gauge, A", "full water", "slow 459", "charging begins, alternator rpm", "17 wires"} {
		assert.Contains(t, frame, want)
	}
	assert.Contains(t, rightOf(frame, 66), "15 AWG")
	assert.NotContains(t, rightOf(frame, 66), "17 AWG")
	tuitest.Press(t, v, s, 120, 37, "down down")
	frame = tuitest.Draw(t, v, s, 120, 37)
	assert.NotContains(t, rightOf(frame, 66), "15 AWG", "the mark has gone on to another gauge")
	assert.Contains(t, rightOf(frame, 66), "17 AWG")
	assert.Contains(t, frame, "27 wires")
	assert.NotContains(t, tuitest.Draw(t, v, s, 80, 21), "every gauge, A")
	list := v.ladder.rungs(s)
	assert.GreaterOrEqual(t, farthest(list, 0), list[0].CutInRPM.Value)
	for i := range list {
		if list[i].AmpsUsual.Value > 0 {
			assert.Greater(t, farthest(list, len(list)-1), list[i].CutInRPM.Value, "what brings something is in the picture")
		}
	}
}

// rightOf is what stands right of a column.
func rightOf(frame string, column int) string {
	lines := strings.Split(frame, "\n")
	for i, line := range lines {
		cells := []rune(line)
		lines[i] = string(cells[min(column, len(cells)):])
	}
	return strings.Join(lines, "\n")
}

// What "meets" refers to is stated: the mean wind, or the slow speed.
func TestTheLadderSaysWhatMeets(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, 120, 37, "e")
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 120, 37)), "meets: charges by the slow speed, brings what is wanted, breaks no limit, lets the wheel turn.")
	s.Type("drive.kind", "wind")
	tuitest.Draw(t, v, s, 120, 37)
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 120, 37)), "meets: brings in the mean wind what is wanted")
}

// A row that meets the requirement is never marked as over its limit: both refer to the same current.
func TestNothingMeetsPastItsLimit(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/pedals-hub.toml")
	require.NoError(t, err)
	s, v := session.NewCopy(job.Parse(string(text))), New()
	tuitest.Press(t, v, s, 80, 40, "e")
	tuitest.Work(t, s)
	rows, meets := v.ladder.rungs(s), 0
	for i := range rows {
		assert.False(t, rows[i].Meets && rows[i].OverLimit(), rows[i].Wire)
		if rows[i].Meets {
			meets++
		}
	}
	assert.Positive(t, meets)
	assert.NotRegexp(t, `✗ +meets`, tuitest.Draw(t, v, s, 80, 40))
}
