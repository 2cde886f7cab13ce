package trials

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const w, h = 200, 57

// foot is what stands under the table.
func foot(t *testing.T, v *View, s *session.Session) string {
	frame := strings.Split(tuitest.Draw(t, v, s, w, h), "\n")
	return tuitest.Words(strings.Join(frame[h-footHeight(v.at):], "\n"))
}

// Every row of figures is explained at the foot: what it is, what it is worked out from or
// what is missing, whether a guess weighs in it, how far it may be off.
func TestEveryRowIsExplained(t *testing.T) {
	s, v := session.NewExample(), New()
	missing, off, guessed := 0, 0, 0
	tuitest.Press(t, v, s, w, h, "home")
	for range firstFigure {
		tuitest.Press(t, v, s, w, h, "down")
	}
	require.Equal(t, len(s.Outcome().Comparison), v.rowCount(s)-firstFigure)
	for _, r := range s.Outcome().Comparison {
		text, f := foot(t, v, s), r.Cells[0].Figure
		assert.Contains(t, text, r.Help, r.ID)
		if !f.Known() {
			missing++
			assert.Contains(t, text, "Missing: "+f.Why+".", r.ID)
		} else if f.Why != "" {
			assert.Contains(t, text, "From: "+f.Why+".", r.ID)
		}
		if f.PlusMinus > 0 {
			off++
			assert.Contains(t, text, "May be off by ±", r.ID)
		}
		if strings.Contains(text, "A guess or a default weighs in it.") {
			guessed++
		}
		tuitest.Press(t, v, s, w, h, "down")
	}
	assert.Positive(t, missing, "the example has rows of each kind")
	assert.Positive(t, off)
	assert.Positive(t, guessed)
}

// Every input is explained by the job file's own words.
func TestEveryInputIsExplained(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, w, h, "home")
	for row := range firstFigure {
		f, ok := job.InputAt(v.inputPath(s))
		require.True(t, ok, row)
		assert.Contains(t, foot(t, v, s), f.Help, row)
		tuitest.Press(t, v, s, w, h, "down")
	}
}

// What in the file cannot be used is said at the foot, wherever the cursor is, and marked
// at its cell.
func TestProblemsOfTheFileAreSaid(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Type("trial[1].strands", "many")
	require.Len(t, s.Problems(), 1)
	for _, keys := range []string{"home", "end", "home down down down"} {
		tuitest.Press(t, v, s, w, h, keys)
		assert.Contains(t, foot(t, v, s), s.Problems()[0], keys)
	}
	assert.Equal(t, kit.Broken, v.inputCell(s, rowStrands, 1).Mark)
	assert.Equal(t, kit.Plain, v.inputCell(s, rowStrands, 0).Mark)
}

// A value that cannot be used is warned of when it is taken, one that can is not.
func TestTypingAValue(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, w, h, "2 4 enter")
	assert.Equal(t, 24.0, s.Job().Trials[0].Turns.Value)
	assert.Equal(t, session.Message{}, s.Message())
	tuitest.Press(t, v, s, w, h, "2 x enter")
	assert.True(t, s.Message().Bad)
	assert.Contains(t, s.Message().Text, "2x")
	s.ClearMessage()
	tuitest.Press(t, v, s, w, h, "enter backspace backspace 3 1 enter")
	assert.Equal(t, 31.0, s.Job().Trials[0].Turns.Value, "it begins with what is there")
	assert.Equal(t, session.Message{}, s.Message())
	tuitest.Press(t, v, s, w, h, "~ 9 esc")
	assert.Equal(t, 31.0, s.Job().Trials[0].Turns.Value, "left as it was")
	s.Undo()
	s.Undo()
	assert.Equal(t, 24.0, s.Job().Trials[0].Turns.Value, "each value taken is a step of undo")
	tuitest.Press(t, v, s, w, h, "end enter")
	assert.Contains(t, s.Message().Text, "worked out")
	assert.False(t, v.Key(s, tuitest.KeyMsg("7")), "no figure can be typed over")
}

// Each key changes its one thing of the job.
func TestKeysChangeTheJob(t *testing.T) {
	for _, c := range []struct{ key, path, want string }{
		{"+", "trial[0].turns", "18"}, {"=", "trial[0].turns", "18"}, {"-", "trial[0].turns", "16"}, {"_", "trial[0].turns", "16"},
		{"]", "trial[0].gauge", "14 AWG"}, {"[", "trial[0].gauge", "16 AWG"}, {">", "trial[0].strands", "2"}, {".", "trial[0].strands", "2"},
		{"A", "slot.area", "72.5"}, {"a", "slot.area", "71.5"}, {"F", "slot.fill_limit", "0.71"}, {"f", "slot.fill_limit", "0.69"},
		{"c", "trial[0].connection", "delta"}, {"o", "trial[0].circuits", "2"}, {"n", "trial[2].name", "C"}, {"x", "trial[0].name", "B"},
		{"right r", "target.reference", "B"}, {"> > <", "trial[0].strands", "2"}, {"> > ,", "trial[0].strands", "2"},
	} {
		s, v := session.NewExample(), New()
		tuitest.Press(t, v, s, w, h, c.key)
		got, _, _ := s.Document().Typed(c.path)
		assert.Equal(t, c.want, strings.TrimPrefix(got, "~"), c.key)
	}
}

// The findings of the chosen trial stand at the foot, the others' do not.
func TestFindingsOfTheChosenTrial(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Type("trial[1].turns", "400")
	s.Choose(1)
	assert.Contains(t, foot(t, v, s), "✗ B: ")
	s.Choose(0)
	assert.NotContains(t, foot(t, v, s), "B: ")
}

// Rows and picture: what the keys m and v show, at each height.
func TestRowsAndPicture(t *testing.T) {
	s, v := session.NewExample(), New()
	short := tuitest.Draw(t, v, s, 80, 21)
	brief := v.rowCount(s)
	tuitest.Press(t, v, s, 80, 21, "m end")
	assert.Greater(t, v.rowCount(s), brief)
	assert.Equal(t, v.rowCount(s)-1, v.row)
	tuitest.Press(t, v, s, 80, 21, "m")
	assert.Equal(t, brief-1, v.row, "the cursor stays on a row there is")
	assert.NotContains(t, short, "Slot, trial")
	tuitest.Press(t, v, s, 80, 21, "v")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Slot, trial A")
	tuitest.Press(t, v, s, 80, 21, "right")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Slot, trial B")
}

// The difference stands against the reference, in the trial that is chosen.
func TestDifferences(t *testing.T) {
	s, v := session.NewExample(), New()
	row := s.Outcome().Comparison[0]
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "B vs A")
	want := fmt.Sprintf("+%.0f %%", row.Cells[1].Percent.Value) // B fills more than A
	assert.Equal(t, want, differenceCell(s, row, 1).Text)
	tuitest.Press(t, v, s, w, h, "right r")
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "A vs B")
}

// Every figure of a row in inches is that in millimetres over the unit's size, as far as it
// is written out.
func TestInchFiguresAreConverted(t *testing.T) {
	size := map[string]float64{"in": 25.4, "in²": 25.4 * 25.4, "lb": 0.45359237, "ft": 0.3048}
	s, converted := session.NewExample(), 0
	for _, r := range s.Outcome().Comparison {
		s.Units.Inch = true
		unit, f := s.Units.For(r.Dim).Name, r.Cells[0].Figure
		inch := figureCell(s, r, 0).Text
		s.Units.Inch = false
		mm := figureCell(s, r, 0).Text
		if size[unit] == 0 {
			assert.Equal(t, mm, inch, r.ID)
			continue
		}
		if !f.Known() {
			continue
		}
		got, err := strconv.ParseFloat(strings.ReplaceAll(inch, "−", "-"), 64)
		require.NoError(t, err, r.ID)
		assert.InDelta(t, f.Value, got*size[unit], 0.51*math.Pow(10, -decimals(inch))*size[unit], r.ID)
		converted++
	}
	assert.GreaterOrEqual(t, converted, 3)
}

// decimals is how many places are written.
func decimals(text string) float64 {
	_, places, _ := strings.Cut(text, ".")
	return float64(len(places))
}

func TestWithoutTrials(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n"), "", job.Mark{}), New()
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "No trial yet")
	for _, b := range v.Bindings(s) {
		for _, k := range b.Keys() {
			v.Key(s, tuitest.KeyMsg(k))
			tuitest.Draw(t, v, s, 80, 21)
		}
	}
	s, v = session.New(job.Parse("format = 1\n"), "", job.Mark{}), New()
	tuitest.Press(t, v, s, 80, 21, "n +")
	assert.Equal(t, fmt.Sprint(1), fmt.Sprint(len(s.Job().Trials)))
}
