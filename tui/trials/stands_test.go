package trials

import (
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
)

// If the winding finds no steady temperature, no number is shown for its amps, in the grid and on the
// ladder; amps that it does not withstand are marked, and so is a year that includes them.
func TestWhatBurnsShowsNoAmps(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {80, 21}, {100, 27}, {200, 57}} {
		s, v := jobOf(t, "wind-good"), New()
		frame := tuitest.Draw(t, v, s, size[0], size[1])
		row := regexp.MustCompile(`net amps, wind 12 m/s, A.*`).FindString(frame)
		assert.Regexp(t, `burns ?✗`, row, size)
		assert.NotRegexp(t, `A +~?\d`, row, size)
	}
	s, v := jobOf(t, "engine"), New()
	tuitest.Press(t, v, s, 100, 27, "e")
	tuitest.Work(t, s)
	for _, line := range strings.Split(tuitest.Draw(t, v, s, 100, 27), "\n") {
		if strings.Contains(line, "1.8 mm") && strings.Contains(line, "▸") {
			assert.Regexp(t, `17\.1 +~20\.0 +✗ +~21\.7 +✗ .*18\.8`, line, "what is over the limit at the end of the row, and only that")
		}
	}
}

// Why a figure is unavailable is explained where it is asked for, with the figure that it would be.
func TestWhyItBurns(t *testing.T) {
	s, v := jobOf(t, "wind-good"), New()
	to(t, v, s, "amps_dc_top")
	tuitest.Press(t, v, s, 100, 40, "y")
	assert.Regexp(t, `Would be 22\.8 A: the winding does not live through it`, tuitest.Words(strings.ReplaceAll(tuitest.Draw(t, v, s, 100, 40), "│", "")))
}

// Every speed of the grid and of the ladder's head says that it is the alternator's.
func TestSpeedsOfTheGridSayWhose(t *testing.T) {
	s := session.NewExample()
	seen := 0
	for _, r := range s.Outcome().Comparison {
		if r.Dim[0].Name == quantity.RPM[0].Name {
			seen++
			label := rowLabel(s, r.Label, r.Dim)
			assert.Regexp(t, `alt\. rpm|^alternator`, label)
			assert.LessOrEqual(t, len([]rune(label)), labelCells-2, "it has room where there is least")
		}
	}
	assert.Greater(t, seen, 3)
	v := New()
	tuitest.Press(t, v, s, 80, 21, "e")
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "alt. rpm")
}

// Under the rungs is shown why the marked one brings what it does, at every size that has a foot, and
// what the marks mean.
func TestTheLadderSaysWhy(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {100, 27}, {120, 37}} {
		s, v := jobOf(t, "wind-good"), New()
		tuitest.Press(t, v, s, size[0], size[1], "e")
		tuitest.Work(t, s)
		frame := tuitest.Words(tuitest.Draw(t, v, s, size[0], size[1]))
		assert.Regexp(t, `wind 12 m/s: the winding holds the rotor to \d+ alternator rpm, its best is \d+: stalled, it gives`, frame, size)
		assert.Regexp(t, "✗ past (a limit|one), or nothing comes", frame, size)
		assert.Contains(t, frame, "meets: ", size)
	}
}

// The row of the trial's wire says whether it is the trial itself: only if the turns match too.
func TestTheLadderSaysWhatIsWoundNow(t *testing.T) {
	s, v := jobOf(t, "wind-good"), New()
	tuitest.Press(t, v, s, 100, 27, "e")
	tuitest.Work(t, s)
	frame := tuitest.Draw(t, v, s, 100, 27)
	assert.Regexp(t, `17 AWG ● +42 .* its wire`, frame, "nine turns are wound, not 42")
	assert.NotRegexp(t, `42 .* now`, frame)
	tuitest.Press(t, v, s, 100, 27, "enter e")
	tuitest.Work(t, s)
	assert.Regexp(t, `17 AWG ● +42 .* now`, tuitest.Draw(t, v, s, 100, 27))
}

// The difference of two trials is not red because a figure exceeds its limit.
func TestTheDifferenceIsNotPastALimit(t *testing.T) {
	s := jobOf(t, "engine")
	seen := 0
	for _, r := range s.Outcome().Comparison {
		if r.Cells[1].Verdict == winding.Past {
			seen++
			assert.Equal(t, kit.Plain, differenceCell(s, r, 1).Role, r.ID)
		}
	}
	assert.Positive(t, seen)
}
