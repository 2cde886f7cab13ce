package shelf

import (
	"math"
	"testing"

	"slotwright/winding"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const folder = "../../testdata/shelf"

func read(t *testing.T) map[string]Entry {
	t.Helper()
	list, err := Read(folder)
	require.NoError(t, err)
	all := map[string]Entry{}
	for _, e := range list {
		all[e.File] = e
	}
	require.Len(t, all, 4, "files that are no jobs are left alone")
	return all
}

func TestStates(t *testing.T) {
	all := read(t)
	planned, wound, proved := all["planned.toml"], all["wound.toml"], all["proved.toml"]
	assert.Equal(t, Planned, planned.State)
	assert.Equal(t, "Fourth from the yard", planned.Job)
	assert.Equal(t, []int{36, 12, 3}, []int{planned.Slots, planned.Poles, planned.Span})
	assert.Equal(t, 17.0, planned.Turns.Value)
	assert.Regexp(t, `^\d{4}-\d\d-\d\d$`, planned.Date, "the file's")
	assert.Equal(t, Wound, wound.State)
	assert.Equal(t, "2025-11-02", wound.Date)
	assert.Equal(t, wound.CutInRPM.Value, planned.CutInRPM.Value, "worked out alike where nothing was read")
	assert.Equal(t, Proved, proved.State)
	assert.Equal(t, "2025-09-01", proved.Date, "the last record")
	assert.Equal(t, 22.0, proved.Turns.Value, "as it was wound, not as planned")
	assert.Equal(t, 431.0, proved.CutInRPM.Value, "as it was read")
	assert.Contains(t, all["unreadable.toml"].Problem, "15 AXG")
}

func TestFoldersThatAreNone(t *testing.T) {
	_, err := Read("../../testdata/nowhere")
	assert.ErrorContains(t, err, "there is no such folder")
	_, err = Read(folder + "/notes.txt")
	assert.ErrorContains(t, err, "expected a folder")
	list, err := Read(t.TempDir())
	require.NoError(t, err)
	assert.Empty(t, list)
}

func names(list []Entry) []string {
	var n []string
	for _, e := range list {
		n = append(n, e.File)
	}
	return n
}

func TestSortAndFind(t *testing.T) {
	list, err := Read(folder)
	require.NoError(t, err)
	assert.Equal(t, []string{"planned.toml", "proved.toml", "unreadable.toml", "wound.toml"}, names(list))
	assert.Equal(t, []string{"planned.toml", "unreadable.toml", "wound.toml", "proved.toml"}, names(Sort(list, "state")))
	assert.Equal(t, []string{"planned.toml", "wound.toml", "proved.toml", "unreadable.toml"}, names(Sort(list, "turns")), "what is not known comes last")
	assert.Equal(t, []string{"proved.toml", "planned.toml", "wound.toml", "unreadable.toml"}, names(Sort(list, "begins")))
	assert.Equal(t, names(list), names(Sort(list, "colour")))
	for _, by := range Orders() {
		assert.Len(t, Sort(list, by), len(list), by)
	}
	assert.Equal(t, []string{"wound.toml"}, names(Find(list, "MAST")), "in the notes")
	assert.Equal(t, []string{"proved.toml"}, names(Find(list, "2025-09")))
	assert.Len(t, Find(list, "36/12"), 3)
	assert.Len(t, Find(list, " "), 4)
}

// The example of the sheet: two slots that were full, of 15 AWG (1.45 mm) and 16 AWG (1.29 mm),
// are in one class. 17·1.529² / 58.4 and 22·1.369² / 58.4 (heavy build, and the slot's room):
// the mean of the two and their standard deviation, d/√2.
func TestLearn(t *testing.T) {
	list, err := Read(folder)
	require.NoError(t, err)
	b := Learn(list)
	require.Len(t, b.Fills, 1)
	l := b.Fills[0]
	assert.Equal(t, []float64{1, 1.5}, []float64{l.FromMM, l.ToMM})
	room := 17 * 1.529 * 1.529 / 0.68 // 0.68 is the fill of 17 turns in this slot (wire_fill of the example)
	one, two := 17*1.529*1.529/room, 22*1.369*1.369/room
	assert.InDelta(t, (one+two)/2, l.Fill.Value, 0.01)
	assert.InDelta(t, math.Abs(one-two)/math.Sqrt2, l.Fill.PlusMinus, 0.01)
	assert.Equal(t, "your last 2 jobs", l.Fill.Why)
	assert.Equal(t, "your last 3 jobs", b.MeanTurnOff.Why, "the one with room left counts for the turn")
	// 58 m / 306 turns = 189.5 mm, 72 m / 378 = 190.5 mm, 840 g / (396 × 11.64 g/m) = 182.3 mm; of 185 mm.
	assert.InDelta(t, (2.46+2.96-1.5)/3, b.MeanTurnOff.Value, 0.3)
}

// Only the last five count, and one alone has no spread.
func TestOnlyTheLastJobsCount(t *testing.T) {
	record := func(date string, fill float64) Entry {
		return Entry{records: []winding.WoundOutcome{{Date: date, Filled: "full", BareMM: quantity.Of(0.8), WireFill: quantity.Of(fill)}}}
	}
	list := []Entry{record("2026-01", 0.60), record("2020-01", 0.10), record("2026-02", 0.62), record("2026-03", 0.64), record("2026-04", 0.66), record("2026-05", 0.68)}
	f := Learn(list).Fills[0].Fill
	assert.InDelta(t, 0.64, f.Value, 1e-12)
	assert.InDelta(t, math.Sqrt(0.0010), f.PlusMinus, 1e-9, "2·(0.04² + 0.02²)/4")
	assert.Equal(t, "your last 5 jobs", f.Why)
	one := Learn(list[:1]).Fills[0].Fill
	assert.Zero(t, one.PlusMinus)
	assert.Equal(t, "your last job", one.Why)
	forced := record("2026-06", 0.9)
	forced.records[0].Filled = "forced"
	assert.Equal(t, f, Learn(append(list, forced)).Fills[0].Fill, "what was forced is no measure")
	assert.Empty(t, Learn(nil).Fills)
	assert.False(t, Learn(nil).MeanTurnOff.Known())
}
