package shelf

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wound"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const folder = "../../testdata/shelf"

func read(t *testing.T) map[string]Entry {
	t.Helper()
	list, left, err := Read(folder)
	require.NoError(t, err)
	assert.Equal(t, []LeftOut{{"notes.txt", "its name does not end in .toml"}}, left)
	all := map[string]Entry{}
	for _, e := range list {
		all[e.File] = e
	}
	require.Len(t, all, 4, "what is no job is left out")
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
	assert.Equal(t, quantity.Measured, proved.Turns.Origin, "counted")
	assert.Equal(t, quantity.Planned, planned.Turns.Origin, "nobody has counted them")
	assert.Equal(t, quantity.Planned, wound.Turns.Origin, "the record says none of its own")
	require.Len(t, proved.Others, 1)
	assert.Equal(t, []any{"2025-06-20", 21.0, Wound}, []any{proved.Others[0].Date, proved.Others[0].Turns.Value, proved.Others[0].State}, "wound before")
	assert.Contains(t, all["unreadable.toml"].Problem, "15 AXG")
}

func TestFoldersThatAreNone(t *testing.T) {
	_, _, err := Read("../../testdata/nowhere")
	assert.ErrorContains(t, err, "there is no such folder")
	_, _, err = Read(folder + "/notes.txt")
	assert.ErrorContains(t, err, "expected a folder")
	list, _, err := Read(t.TempDir())
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
	list, _, err := Read(folder)
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
	assert.Equal(t, []string{"proved.toml"}, names(Find(list, "16 awg MILL")), "every word, wherever it is")
	assert.Empty(t, Find(list, "mill mast"))
	assert.Equal(t, []string{"planned.toml"}, names(In(list, Planned)), "a file that cannot be used is in no state")
	assert.Len(t, In(list, ""), 4)
	assert.Len(t, Find(list, " "), 4)
}

// The example of the sheet: two full slots, of 15 AWG (1.45 mm) and 16 AWG (1.29 mm), are in one class.
// 17·1.529² / 58.4 and 22·1.369² / 58.4 (heavy build, and the slot's room): the mean of the two and
// their standard deviation, d/√2.
func TestLearn(t *testing.T) {
	list, _, err := Read(folder)
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
		return Entry{records: []record{{Record: wound.Record{Date: date, Filled: "full", BareMM: quantity.Of(0.8), WireFill: quantity.Of(fill)}}}}
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

// Every trial of a job without a wound one is listed, the reference first; other files in the folder
// are named.
func TestEveryTrialAndWhatIsLeftOut(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	write("three.toml", "format = 1\nname = \"Three\"\n[target]\nreference = \"B\"\n[[trial]]\nname = \"A\"\nturns = 9\n[[trial]]\nname = \"B\"\nturns = 10\n[[trial]]\nname = \"C\"\n")
	write("picture.jpg", "")
	write("sums", "")
	require.NoError(t, os.Mkdir(filepath.Join(dir, "old.toml"), 0o700))
	require.NoError(t, os.Symlink("nowhere", filepath.Join(dir, "gone.toml")))
	list, left, err := Read(dir)
	require.NoError(t, err)
	assert.Equal(t, []LeftOut{{"old.toml", isFolder}, {"picture.jpg", notTOML}, {"sums", notTOML}}, left)
	require.Len(t, list, 2)
	assert.NotEmpty(t, list[0].Problem, "a link to nothing")
	var trials []string
	for _, w := range list[1].Windings() {
		trials = append(trials, w.Trial)
		assert.Equal(t, Planned, w.State)
	}
	assert.Equal(t, []string{"B", "A", "C"}, trials)
	assert.False(t, list[1].Others[1].Turns.Known())
}

// Rises count by machine: two of one kind (bore within a tenth) and one of another; a machine of
// unknown size contributes nothing.
func TestRisesByMachine(t *testing.T) {
	one := func(date string, bore, rise float64) Entry {
		r := wound.Record{Date: date}
		r.RisePerWatt.Read = quantity.Of(rise)
		return Entry{records: []record{{r, kin{cooling: "open", slots: 36, poles: 12, boreMM: bore, stackMM: 33}}}}
	}
	b := Learn([]Entry{one("2026-01", 89, 0.9), one("2026-03", 92, 1.1), one("2026-02", 150, 0.4), one("2026-04", 0, 9)})
	require.Len(t, b.Rises, 2)
	assert.Equal(t, "36/12, bore 92, stack 33 mm, open to the air", b.Rises[0].Machine)
	assert.InDelta(t, 1.0, b.Rises[0].RisePerWatt.Value, 1e-12)
	assert.InDelta(t, 0.2/math.Sqrt2, b.Rises[0].RisePerWatt.PlusMinus, 1e-12)
	assert.Equal(t, "your last 2 jobs", b.Rises[0].RisePerWatt.Why)
	assert.Equal(t, 0.4, b.Rises[1].RisePerWatt.Value)
	short := one("2026-05", 89, 3.1)
	p := &short.records[0].RisePerWatt
	p.Expected, p.Off = quantity.Of(0.37, quantity.Guessed), quantity.Of(100*(3.1/0.37-1))
	assert.Equal(t, b.Rises[0].RisePerWatt, Learn([]Entry{one("2026-01", 89, 0.9), one("2026-03", 92, 1.1), short}).Rises[0].RisePerWatt, "a short teaches nothing")
	assert.Empty(t, Learn([]Entry{short}).Rises)
	assert.False(t, b.riseOf(kin{}).Known())
}

// Offers are made only for fields that a job leaves empty, with what to type and where it is from.
func TestOffers(t *testing.T) {
	list, _, err := Read(folder)
	require.NoError(t, err)
	b := Learn(list)
	d, _, err := job.Load(folder + "/planned.toml")
	require.NoError(t, err)
	j := d.Job()
	require.Equal(t, []string{"slot.fill_limit"}, paths(b.Offers(j)), "its mean turn is given")
	o := b.Offers(j)[0]
	assert.Equal(t, "~0.70 ±0.02", o.Typed)
	assert.Equal(t, "Fill limit ~0.70 ±0.02 (your last 2 jobs)", o.String())
	assert.Equal(t, o.Typed, d.Set(o.Path, o.Typed, quantity.Choice{}).Job().Slot.FillLimit.Figure("").Text(quantity.None[0], 2), "it reads as it was offered")
	j.Machine.MeanTurnMM = quantity.Reading{}
	reckoned := winding.Prepare(j).Static(j.Trials[0]).MeanTurnMM.Value
	b.Rises = []Warmth{{"", quantity.Of(0.8).Because("your last job"), kinOf(&j.Machine)}}
	offers := b.Offers(j)
	require.Equal(t, []string{"slot.fill_limit", "machine.mean_turn", "machine.rise"}, paths(offers))
	assert.InDelta(t, reckoned*(1+b.MeanTurnOff.Value/100), offers[1].Value.Value, 1e-9)
	assert.Equal(t, "~0.80", offers[2].Typed)
	j.Machine.KelvinPerWatt, j.Slot.FillLimit = quantity.Known(1), quantity.Known(0.5)
	assert.Equal(t, []string{"machine.mean_turn"}, paths(b.Offers(j)))
	assert.Empty(t, (&Bench{}).Offers(j))
}

func paths(list []Hint) (p []string) {
	for _, o := range list {
		p = append(p, o.Path)
	}
	return p
}

// A folder of 1,000 jobs.
func BenchmarkReadThousand(b *testing.B) {
	dir := b.TempDir()
	text, err := os.ReadFile(folder + "/proved.toml")
	require.NoError(b, err)
	for i := range 1000 {
		require.NoError(b, os.WriteFile(filepath.Join(dir, fmt.Sprintf("%d.toml", i)), text, 0o600))
	}
	for b.Loop() {
		list, _, err := Read(dir)
		require.NoError(b, err)
		Learn(list)
	}
}

// Cards and drawings, which the program writes beside a job, are not listed as left out; another file
// and a folder are.
func TestOwnPaperIsNotLeftOut(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"wheel-card-b.txt", "wheel-amps.svg", "notes.txt"} {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), nil, 0o600))
	}
	require.NoError(t, os.Mkdir(filepath.Join(dir, "old.svg"), 0o700))
	_, left, err := Read(dir)
	require.NoError(t, err)
	assert.Equal(t, []LeftOut{{"notes.txt", notTOML}, {"old.svg", isFolder}}, left)
}
