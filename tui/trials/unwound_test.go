package trials

import (
	"strings"
	"testing"

	"slotwright/tui/tuitest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Amps of a winding that cannot be wound are marked, and the foot and the why page say that it cannot.
func TestAmpsOfWhatCannotBeWoundSaySo(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {120, 37}} {
		s, v := jobOf(t, "pedals"), New()
		s.Type("trial[0].turns", "900")
		require.False(t, s.Outcome().Trials[0].Fits())
		to(t, v, s, "amps_dc_usual")
		frame := tuitest.Draw(t, v, s, size[0], size[1])
		assert.Regexp(t, `net amps, full effort, A +~?[\d.]+ *✗`, frame)
		assert.Contains(t, tuitest.Words(frame), "this winding cannot be wound. It does not fit: 900 turns")
		tuitest.Press(t, v, s, size[0], size[1], "y")
		assert.Contains(t, tuitest.Words(strings.ReplaceAll(tuitest.Draw(t, v, s, size[0], size[1]), "│", "")), "not to be had: this winding cannot be wound. It does not fit: 900 turns")
	}
}
