package machine

import (
	"os"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// If all rows fit, Machine draws the slot to scale, with its sizes in the preferred unit, guesses with
// their mark, tooth and iron beside it; otherwise not.
func TestTheSlotIsDrawnWhereThereIsRoom(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/water.toml")
	require.NoError(t, err)
	s, v := session.New(job.Parse(string(text)), "", job.Mark{}), NewMachine()
	large := tuitest.Words(tuitest.Draw(t, v, s, 200, 57))
	for _, want := range []string{"The slot, to scale", "sizes in mm", "mouth 2.60, 1.50 high", "wide", "~5.26", "deep", "~13.7", "tooth", "~2.77", "iron"} {
		assert.Contains(t, large, want)
	}
	s.Units = quantity.Choice{Inch: true}
	large = tuitest.Words(tuitest.Draw(t, v, s, 200, 57))
	for _, want := range []string{"sizes in in", "~0.207", "~0.539"} { // 5.262 and 13.682 over 25.4
		assert.Contains(t, large, want)
	}
	for _, size := range [][2]int{{80, 21}, {100, 27}, {120, 37}} {
		assert.NotContains(t, tuitest.Draw(t, v, s, size[0], size[1]), "to scale", "%v", size)
	}
	none := session.New(job.Parse("format = 1\n"), "", job.Mark{})
	assert.NotContains(t, tuitest.Draw(t, NewMachine(), none, 200, 57), "to scale")
}

// The slot is empty and the iron on both sides of it is not; they are distinct in plain ASCII too.
func TestTheIronIsToldFromTheSlot(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/water.toml")
	require.NoError(t, err)
	s := session.New(job.Parse(string(text)), "", job.Mark{})
	cut, why := s.Bench().Section()
	require.Empty(t, why)
	for _, ascii := range []bool{false, true} {
		s.Theme = kit.Theme{ASCII: ascii}
		lines := sectionLines(s, &cut, 52, 26)
		row := []rune(lines[14]) // between the words
		middle := deepW + (52-deepW)/2
		assert.Equal(t, "      ", string(row[middle-3:middle+3]), "the slot")
		left, right := strings.Count(string(row[deepW:middle-8]), " "), strings.Count(string(row[middle+8:]), " ")
		assert.InDelta(t, left, right, 2)
		assert.Less(t, left, middle-8-deepW-4, "iron: %s", string(row))
	}
}
