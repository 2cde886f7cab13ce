package trials

import (
	"regexp"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Flat coils have no slot and no slot opening, one phase has no star: the screen mentions only what
// exists, and the key of the slot's area changes the side of a coil.
func TestFlatCoilsAndOnePhaseHaveTheirOwnWords(t *testing.T) {
	s, v := jobOf(t, "axial-air-core"), New()
	for _, size := range [][2]int{{60, 17}, {80, 21}, {200, 57}} {
		frame := tuitest.Draw(t, v, s, size[0], size[1])
		assert.Contains(t, frame, "Side of a coil 25 mm", size)
		assert.NotRegexp(t, `Slot area|mouth`, frame, size)
	}
	area := s.Outcome().Machine.NetMM2.Value
	tuitest.Press(t, v, s, 80, 21, "a")
	assert.Equal(t, 24.5, s.Job().Machine.SideMM.Value)
	assert.Less(t, s.Outcome().Machine.NetMM2.Value, area)
	tuitest.Press(t, v, s, 80, 21, "e")
	tuitest.Work(t, s)
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "the coil full")

	s, v = jobOf(t, "fixed"), New()
	assert.NotRegexp(t, `star|delta`, tuitest.Draw(t, v, s, 100, 27))
	tuitest.Press(t, v, s, 100, 27, "e")
	tuitest.Work(t, s)
	assert.NotRegexp(t, `star|delta`, tuitest.Draw(t, v, s, 100, 27))
}

// The key that keeps the slot full is named on the line of its inputs at every size, whatever else
// these show.
func TestTheKeyThatKeepsItFullIsSeen(t *testing.T) {
	for _, w := range []int{58, 60, 72, 80, 100} {
		s, v := session.NewExample(), New()
		assert.Regexp(t, `Fill limit 0\.70.* T .*full`, v.slotLine(s, w), w)
		s.FlipFull()
		assert.Contains(t, v.slotLine(s, w), "●", w)
	}
}

// If there is little room for the rungs, whole columns are dropped; the wire, the words and the marks
// stay.
func TestTheLadderWhereThereIsLittleRoom(t *testing.T) {
	for _, name := range []string{"", "wind-good", "engine", "water", "pedals", "fixed", "wind-wound-rotor"} {
		for _, size := range [][2]int{{60, 17}, {80, 21}, {100, 27}} {
			s, v := session.NewExample(), New()
			if name != "" {
				s = jobOf(t, name)
			}
			s.FlipFull()
			s.StepWire(-1)
			tuitest.Press(t, v, s, size[0], size[1], "e")
			tuitest.Work(t, s)
			frame := tuitest.Draw(t, v, s, size[0], size[1])
			row := regexp.MustCompile(`(?m)^▸ \S+ (AWG|SWG|mm) +● .* now.*$`).FindString(frame)
			require.NotEmpty(t, row, "%s %v:\n%s", name, size, frame)
			assert.NotContains(t, row, "…")
		}
	}
}

// b moves to the next row that is best or meets the requirement, and wraps round.
func TestTheLadderGoesToTheBest(t *testing.T) {
	s, v := jobOf(t, "pedals"), New()
	tuitest.Press(t, v, s, 100, 27, "e")
	tuitest.Work(t, s)
	tuitest.Draw(t, v, s, 100, 27)
	list, seen := v.ladder.rungs(s), map[int]bool{}
	for range 8 {
		tuitest.Press(t, v, s, 100, 27, "b")
		r := list[v.ladder.row]
		assert.True(t, r.Meets || r.BestSlow || r.BestUsual || r.BestTop || r.BestYear)
		seen[v.ladder.row] = true
	}
	assert.Len(t, seen, 3, "one brings most at full effort, two meet what is wanted")
}

// On the row that is best over a year the ladder says what is worse about the next thinner and thicker;
// if other circuits bring more than all of its rows, it says what, with the key that goes there. Once
// there, nothing better is offered.
func TestTheLadderSaysWhyAndWhatOtherCircuitsBring(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {100, 27}, {120, 37}} {
		s, v := jobOf(t, "hub-in-wind"), New()
		w, h := size[0], size[1]
		best := func() string {
			tuitest.Work(t, s)
			tuitest.Draw(t, v, s, w, h)
			for i, r := range v.ladder.rungs(s) {
				if r.BestYear {
					v.ladder.row = i
				}
			}
			return tuitest.Words(tuitest.Draw(t, v, s, w, h))
		}
		tuitest.Press(t, v, s, w, h, "e")
		text := best()
		assert.Contains(t, text, "best (wind 4.5 m/s, and in a year): thinner stalls the rotor more, thicker does not go in.")
		assert.Contains(t, text, "o: more than on this ladder: 28 turns of IEC 2.12 mm in 12 parallel circuits, 0.27 A net (wind 4.5 m/s), about 216 kWh a year.")
		for range 5 {
			tuitest.Press(t, v, s, w, h, "o")
		}
		text = best()
		assert.Contains(t, text, "best in a year: thinner stalls the rotor (8.5 m/s), thicker lets the rotor run past its best (5 m/s).")
		assert.NotContains(t, text, "more than on this ladder")
	}
}
