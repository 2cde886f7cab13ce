package tui

import (
	"os"
	"regexp"
	"strconv"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ladderRow is the marked row of the ladder: a wire and the turns of it that fill the slot.
var ladderRow = regexp.MustCompile(`▸ +\W*(\d+ (?:AWG|SWG)|[\d.]+ mm)\W+(\d+)`)

// From the ladder to a trial to its card: the row's turns and wire are the trial's, the
// trial's the card's and the file's. Full slots of the same standard: metal in a slot stays about the same, so
// that turns go as the area of the wire, 0.127 mm × 92^((36 − n)/39) across (ASTM B258): from 15 to 18
// AWG twice as many (92^(6/39) = 2.005), less what the enamel, thicker for its wire, takes.
func TestFromTheLadderToACard(t *testing.T) {
	h := newHand(t, session.NewExample(), 100, 30)
	h.begins("ladder")
	h.st.WaitFor("[Trials]")
	h.command("every gauge")
	thick := h.row()
	require.Equal(t, "15 AWG", thick.wire, "it begins where the trial is")
	for thick.wire != "18 AWG" {
		h.key("down")
		row := h.row()
		require.Greater(t, row.turns, thick.turns, "thinner and more")
		if row.wire == "18 AWG" {
			assert.InDelta(t, 2.0, float64(row.turns)/17, 0.1)
		}
		thick = row
	}
	h.key("enter")
	h.sees(`●A ref`, `34 of 34`, `18 AWG`, `trial A: 34 turns of 1 × 18 AWG`)
	assert.Equal(t, 34, thick.turns)
	card, j := h.cardAndFile("rung", "A")
	assert.Contains(t, card, "34 in each coil")
	assert.Contains(t, card, "WIRE 1 × 18 AWG")
	assert.Equal(t, 34.0, j.Trials[0].Turns.Value)
	assert.Equal(t, "18 AWG", j.Trials[0].Gauge.String())
	assert.Equal(t, job.Example().Job().Name, j.Name, "a job that has a name keeps it")
	assert.Equal(t, job.Example().Job().Trials[1], j.Trials[1], "the others are as they were")
	h.leaves()
}

// rung is a row of the ladder.
type rung struct {
	wire  string
	turns int
}

// row is the marked row of the ladder.
func (h *hand) row() rung {
	h.t.Helper()
	h.st.WaitUntil("for the ladder's row", ladderRow.MatchString) // it is worked out aside
	m := ladderRow.FindStringSubmatch(h.st.Screen())
	require.NotNil(h.t, m, h.st.Screen())
	n, err := strconv.Atoi(m[2])
	require.NoError(h.t, err)
	return rung{m[1], n}
}

// A job is opened, a trial compared with the reference, the job duplicated and the copy saved under
// another name: the copy has the change, the first file is as it was. 23 turns in place of 17 give
// 23/17 of the volts, +35 %.
func TestOpenCompareDuplicateSaveAs(t *testing.T) {
	h := newHand(t, blankJob(), 100, 30)
	was := job.Example().Text()
	require.NoError(t, os.WriteFile("pedal.toml", []byte(was), 0o600))
	h.begins("open")
	h.command("open another")
	h.letters("pe")
	h.key("tab", "enter")
	h.sees(`Mill-race alternator`, `pedal\.toml`, `\[Trials\]`)
	h.begins("compare")
	h.key("right", "[", "+", "+")
	h.sees(`●B`, `23 of 27`, `17 AWG`, `two leads, 1000 rpm, V AC 11\.8 18\.2 24\.7 45\.0 \+35 %`, `sooner`)
	h.begins("duplicate")
	h.command("duplicate")
	h.sees("a copy of pedal.toml with what was not saved", "no file yet")
	h.begins("save as")
	h.key("ctrl+s")
	h.letters("zwei")
	h.key("enter")
	h.sees(`saved to zwei\.toml`)
	first, err := os.ReadFile("pedal.toml")
	require.NoError(t, err)
	assert.Equal(t, was, string(first))
	d, _, err := job.Load("zwei.toml")
	require.NoError(t, err)
	assert.Equal(t, 23.0, d.Job().Trials[1].Turns.Value)
	assert.Equal(t, "17 AWG", d.Job().Trials[1].Gauge.String())
	assert.Contains(t, d.Text(), "# counted on squared paper", "comments go with it")
	h.leaves()
}

// If the same coils connected otherwise would do better, a key of Drive makes a trial of them, which
// the bottom line, the help and the answers name; one undo removes it, and once it exists the key is no
// longer offered.
func TestDriveMakesATrialOfOtherJoints(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/engine-held.toml")
	require.NoError(t, err)
	for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 40}, {200, 60}} {
		m := opened(session.New(job.Parse(string(text)), "", job.Mark{}), size[0], size[1], "Drive", "")
		before := m.s.Document().Text()
		joints := m.s.Outcome().Trials[1].Joints
		require.NotNil(t, joints)
		require.Nil(t, m.s.Outcome().Trials[0].Joints)
		assert.Contains(t, m.View(), "f6 try B in delta", "the bottom line at %v", size)
		m.press("f1")
		assert.Contains(t, tuitest.Words(m.View()), "A new trial of trial B's coils in delta", "the help")
		m.press("esc")
		if size[0] > 110 {
			m.press("ctrl+g down down down down")
			assert.Contains(t, tuitest.Words(m.View()), "f6 makes a trial of the same coils in delta")
			m.press("ctrl+g")
		}
		m.press("f6")
		trials := m.s.Job().Trials
		require.Len(t, trials, 3)
		assert.Equal(t, trials[1].Wound, trials[2].Wound)
		assert.Equal(t, joints.Connection, trials[2].Connection)
		assert.Equal(t, 2, m.s.Trial, "it is the chosen one")
		assert.Equal(t, "C", m.s.Outcome().Trials[2].Name)
		assert.Contains(t, tuitest.Words(m.View()), "trial C: the coils of B in delta; ctrl+z takes it back")
		m.press("down")
		assert.NotContains(t, m.View(), "f6 try")
		m.press("ctrl+z")
		assert.Equal(t, before, m.s.Document().Text())
		m.press("up")
		assert.Contains(t, m.View(), "f6 try B in delta")
	}
}

// A job that has the maximum number of trials keeps them, and says why none was added.
func TestOtherJointsWantRoom(t *testing.T) {
	text, err := os.ReadFile("../testdata/jobs/engine-held.toml")
	require.NoError(t, err)
	m := opened(session.New(job.Parse(string(text)), "", job.Mark{}), 120, 40, "Trials", "n n")
	require.Len(t, m.s.Job().Trials, job.MaxTrials)
	m.press("ctrl+p D r i v e enter f6")
	assert.Len(t, m.s.Job().Trials, job.MaxTrials)
	assert.Contains(t, tuitest.Words(m.View()), "as many as fit side by side")
}
