package trials

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const w, h = 200, 57

// foot is the text under the table.
func foot(t *testing.T, v *View, s *session.Session) string {
	tuitest.Draw(t, v, s, w, h)
	return tuitest.Words(strings.Join(append(v.meaning(s, 600, 9), v.foot(s, 600, 20)...), "\n"))
}

// to puts the cursor on a row of a view that shows every one.
func to(t *testing.T, v *View, s *session.Session, id string) {
	t.Helper()
	v.flipped = true
	v.SetSize(s, kit.Rect{W: w, H: h})
	require.Contains(t, v.ids(s), id)
	tuitest.Press(t, v, s, w, h, "home")
	for range v.ids(s) {
		if v.row == id {
			return
		}
		tuitest.Press(t, v, s, w, h, "down")
	}
	require.Equal(t, id, v.row, "down goes by every row once")
}

// Every row of figures is explained at the foot: what it is, what it is computed from or what is
// missing, whether it depends on a guess, how accurate it is.
func TestEveryRowIsExplained(t *testing.T) {
	s, v := session.NewExample(), New()
	missing, off, guessed, mended := 0, 0, 0, 0
	s.Type("target.current", "600")
	for _, r := range s.Outcome().Comparison {
		if r.ID == "year_kwh" {
			continue // a wheel has no year of wind
		}
		to(t, v, s, r.ID)
		text, f := foot(t, v, s), r.Cells[0].Figure
		assert.Contains(t, text, r.Help, r.ID)
		if !f.Known() {
			missing++
			assert.Contains(t, text, "Missing: "+f.Why, r.ID)
		} else if f.Why != "" {
			assert.Contains(t, text, "From: "+f.Why+".", r.ID)
		}
		if f.PlusMinus > 0 {
			off++
			assert.Contains(t, text, "May be off by ±", r.ID)
		}
		if strings.Contains(strings.ToLower(text), "a guess or a default weighs in it.") {
			guessed++
			assert.True(t, strings.HasPrefix(figureCell(s, r, 0).Text, session.Rough), "%s: and its cell says so", r.ID)
		}
		if past := r.Cells[0].Verdict == winding.Past; past && r.Mend != "" {
			mended++
			assert.Contains(t, text, "Past its limit: "+r.Mend+".", r.ID)
		} else {
			assert.NotContains(t, text, "Past its limit", r.ID)
		}
	}
	assert.Positive(t, missing, "the example has rows of each kind")
	assert.Positive(t, off)
	assert.Positive(t, guessed)
	assert.Positive(t, mended)
}

// Every input is explained by the job file's own words.
func TestEveryInputIsExplained(t *testing.T) {
	s, v := session.NewExample(), New()
	for _, row := range append([]string{rowArea, rowFill}, inputRows...) {
		to(t, v, s, row)
		f, ok := job.InputAt(v.inputPath(s))
		require.True(t, ok, row)
		assert.Contains(t, foot(t, v, s), f.Help, row)
	}
}

// Unusable values in the file are reported at the foot, wherever the cursor is, and marked in their
// cells.
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

// A value that cannot be used brings a warning when accepted; one that can does not.
func TestTypingAValue(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, w, h, "2 4 enter")
	assert.Equal(t, 24.0, s.Job().Trials[0].Turns.Value)
	assert.Equal(t, session.Message{}, s.Message())
	assert.Equal(t, rowWire, v.row, "and the next input is marked, as on every screen")
	tuitest.Press(t, v, s, w, h, "up 2 x enter")
	assert.True(t, s.Message().Bad)
	assert.Contains(t, s.Message().Text, "2x")
	assert.Equal(t, rowWire, v.row, "what is typed next is the next value, and what is wrong stays")
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "2x ✗")
	s.ClearMessage()
	tuitest.Press(t, v, s, w, h, "up space backspace backspace 3 1 enter")
	assert.Equal(t, 31.0, s.Job().Trials[0].Turns.Value, "it begins with what is there")
	assert.Equal(t, session.Message{}, s.Message())
	tuitest.Press(t, v, s, w, h, "up ~ 9 esc")
	assert.Equal(t, 31.0, s.Job().Trials[0].Turns.Value, "left as it was")
	s.Undo()
	s.Undo()
	assert.Equal(t, 24.0, s.Job().Trials[0].Turns.Value, "each value taken is a step of undo")
	to(t, v, s, "cut_in_rpm")
	assert.False(t, v.Key(s, tuitest.KeyMsg("7")), "no figure can be typed over")
}

// Each key changes its one item of the job.
func TestKeysChangeTheJob(t *testing.T) {
	for _, c := range []struct{ key, path, want string }{
		{"+", "trial[0].turns", "18"}, {"=", "trial[0].turns", "18"}, {"-", "trial[0].turns", "16"}, {"_", "trial[0].turns", "16"},
		{"]", "trial[0].gauge", "14 AWG"}, {"[", "trial[0].gauge", "16 AWG"}, {">", "trial[0].strands", "2"}, {".", "trial[0].strands", "2"},
		{"A", "slot.area", "72.5 ±2"}, {"a", "slot.area", "71.5 ±2"}, {"F", "slot.fill_limit", "0.71"}, {"f", "slot.fill_limit", "0.69"},
		{"c", "trial[0].connection", "delta"}, {"o", "trial[0].circuits", "2"}, {"n", "trial[3].name", "D"}, {"x", "trial[0].name", "B"},
		{"right r", "target.reference", "B"}, {"> > <", "trial[0].strands", "2"}, {"> > ,", "trial[0].strands", "2"},
		{"T [", "trial[0].turns", "21"}, {"T ] ]", "trial[0].gauge", "13 AWG"}, {"T T [", "trial[0].turns", "17"}, {"[ t", "trial[0].turns", "21"}, {"s", "trial[0].gauge", "18 AWG"},
	} {
		s, v := session.NewExample(), New()
		tuitest.Press(t, v, s, w, h, c.key)
		got, _, _ := s.Document().Typed(c.path)
		assert.Equal(t, c.want, strings.TrimPrefix(got, "~"), c.key)
	}
}

// The findings of the chosen trial are at the foot, those of the others are not.
func TestFindingsOfTheChosenTrial(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Type("trial[1].turns", "400")
	s.Choose(1)
	assert.Contains(t, foot(t, v, s), "✗ B: ")
	s.Choose(0)
	assert.NotContains(t, foot(t, v, s), "B: ")
}

// Rows and pictures: what the keys m and v show, at each size.
func TestRowsAndPictures(t *testing.T) {
	s, v := session.NewExample(), New()
	short := tuitest.Draw(t, v, s, 80, 21)
	brief := len(v.ids(s))
	tuitest.Press(t, v, s, 80, 21, "m end")
	assert.Greater(t, len(v.ids(s)), brief)
	assert.Equal(t, v.ids(s)[len(v.ids(s))-1], v.row)
	tuitest.Press(t, v, s, 80, 21, "m")
	assert.Contains(t, v.ids(s), v.row, "the cursor stays on a row there is")
	assert.NotContains(t, short, "net into the battery")
	for size, frames := range map[[2]int][][]string{
		{80, 21}:  {{"wire to buy"}, {"net into the battery", "charging begins", "net amps, full water", "current limit", "A gains from"}, {"17 wires", "21 wires", "charging begins", "current limit"}},
		{100, 27}: {{"wire to buy", "net into the battery"}, {"wire to buy", "42 wires"}, {"wire to buy"}},
		{120, 37}: {{"wire to buy", "net into the battery", "17 wires", "C passes its limit"}},
		{160, 57}: {{"inductance", "net into the battery", "17 wires", "21 wires", "42 wires", "C passes its limit"}, {"net into the battery"}, {"42 wires"}, {"inductance"}},
	} {
		v := New()
		for _, want := range frames {
			frame := tuitest.Draw(t, v, s, size[0], size[1])
			for _, text := range want {
				assert.Contains(t, frame, text, size)
			}
			tuitest.Press(t, v, s, size[0], size[1], "v")
		}
	}
}

// Rows in which all trials agree fold into one, which states them; opened, or different, they are
// separate.
func TestAlikeRowsFold(t *testing.T) {
	s, v := session.NewExample(), New()
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "star, 1 circuit, 1 strand in hand, in all")
	tuitest.Press(t, v, s, 80, 21, ">")
	frame = tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "star, 1 circuit, in all")
	assert.Contains(t, frame, "Strands")
	tuitest.Press(t, v, s, 80, 21, "down down down enter")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Circuits")
	s, v = session.NewExample(), New()
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "alike: winding factor 1.0000, mean turn ")
	s.Type("machine.phases", "1")
	assert.NotContains(t, tuitest.Draw(t, v, s, w, h), "star", "one phase has no star")
	s.Type("machine.phases", "2")
	assert.NotContains(t, tuitest.Draw(t, v, s, w, h), "star, 1 circuit", "nor have two")
}

// A number typed on the folded line opens its inputs, since it is unknown which of them is meant.
func TestANumberOnTheFoldedLineOpensIt(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Draw(t, v, s, 80, 21)
	v.row = rowFold
	tuitest.Press(t, v, s, 80, 21, "2")
	assert.False(t, v.editing, "which input is meant is not known")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Circuits")
	assert.Contains(t, v.ids(s), rowConnection)
}

// The old winding is a column, where there is room for one; without it there is none.
func TestTheOldWindingIsAColumn(t *testing.T) {
	s, v := session.NewExample(), New()
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Regexp(t, ` old +●A ref`, frame)
	assert.Regexp(t, `Turns +11 of 12 +17 of 17`, frame)
	assert.Regexp(t, `charging begins, alt. rpm +~876 `, frame)
	s.Type("old.turns", "")
	s.Type("old.gauge", "")
	assert.NotRegexp(t, ` old +●A`, tuitest.Draw(t, v, s, 80, 21))
}

// A winding that does not fit says so at its turns and in its verdict, and none of its figures counts
// as better.
func TestAWindingThatDoesNotFit(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Type("trial[1].turns", "40")
	s.Choose(1)
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "40 of 21✗")
	assert.Contains(t, tuitest.Words(frame), "B does not fit: 40 turns of 16 AWG where 21 go in.")
	for _, r := range s.Outcome().Comparison {
		assert.NotContains(t, []kit.Role{kit.Better, kit.Worse}, figureCell(s, r, 1).Mark, r.ID)
	}
}

// The difference from the reference is shown in the chosen trial.
func TestDifferences(t *testing.T) {
	s, v := session.NewExample(), New()
	row := s.Outcome().Comparison[0]
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "B vs A")
	want := strings.Replace(fmt.Sprintf("%+.0f %%", row.Cells[1].Percent.Value), "-", "−", 1)
	assert.Equal(t, want, differenceCell(s, row, 1).Text)
	tuitest.Press(t, v, s, w, h, "right r")
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "C vs B", "the reference itself is chosen: the next one")
	tuitest.Press(t, v, s, w, h, "left")
	assert.Contains(t, tuitest.Draw(t, v, s, w, h), "A vs B")
}

// Every figure of a row in inches is the one in millimetres divided by the unit's size, to the digits
// that are shown.
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
		got, err := strconv.ParseFloat(strings.TrimPrefix(strings.ReplaceAll(inch, "−", "-"), session.Rough), 64)
		require.NoError(t, err, r.ID)
		assert.InDelta(t, f.Value, got*size[unit], 0.51*math.Pow(10, -decimals(inch))*size[unit], r.ID)
		converted++
	}
	assert.GreaterOrEqual(t, converted, 3)
}

// decimals is the number of decimal places written.
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

// jobOf is a session on a job of testdata.
func jobOf(t *testing.T, name string) *session.Session {
	t.Helper()
	text, err := os.ReadFile("../../testdata/jobs/" + name + ".toml")
	require.NoError(t, err)
	return session.New(job.Parse(string(text)), "", job.Mark{})
}

// Amps state the operating condition of the drive in which they flow, whatever turns the machine, even
// where there is least room; a drive at full output has no top speed of its own.
func TestAmpsSayTheirCondition(t *testing.T) {
	noDrive := session.NewExample()
	noDrive.Type("drive.kind", "")
	for _, path := range []string{"target.slow", "target.usual", "target.top"} {
		noDrive.Type(path, map[string]string{"target.slow": "450", "target.usual": "600", "target.top": "860"}[path])
	}
	for name, c := range map[string]struct {
		s    *session.Session
		want []string
	}{
		"wind":     {jobOf(t, "wind-good"), []string{"net amps, wind 3.5 m/s, A", "net amps, wind 5 m/s, A", "net amps, wind 12 m/s, A"}},
		"pedals":   {jobOf(t, "pedals"), []string{"net amps, pedals 50 rpm, A", "net amps, full effort, A"}},
		"water":    {session.NewExample(), []string{"net amps, wheel 45 rpm, A", "net amps, full water, A"}},
		"engine":   {jobOf(t, "engine"), []string{"net amps, engine 800 rpm, A", "net amps, engine 1200 rpm, A", "net amps, engine 2200 rpm, A"}},
		"fixed":    {jobOf(t, "fixed"), []string{"net amps, drive 900 rpm, A", "net amps, drive 960 rpm, A", "net amps, drive 1000 rpm, A"}},
		"no drive": {noDrive, []string{"net amps, 450 rpm, A", "net amps, 600 rpm, A", "net amps, 860 rpm, A"}},
	} {
		frame := tuitest.Draw(t, New(), c.s, 80, 24)
		for _, want := range c.want {
			assert.Contains(t, frame, want, name)
		}
		assert.Equal(t, len(c.want), strings.Count(frame, "net amps, "), name)
	}
}

// A negative figure is shown with its sign, and is no difference if both have it.
func TestNetAmpsBelowNothing(t *testing.T) {
	s := session.NewExample()
	i := slices.IndexFunc(s.Outcome().Comparison, func(r winding.Row) bool { return r.ID == "amps_dc_slow" })
	row := s.Outcome().Comparison[i]
	require.Less(t, row.Cells[0].Figure.Value, -1.0)
	assert.Equal(t, fmt.Sprintf("~−%.2f", -row.Cells[0].Figure.Value), figureCell(s, row, 0).Text)
	require.Equal(t, row.Cells[0].Figure.Value, row.Cells[1].Figure.Value)
	assert.Equal(t, "same", differenceCell(s, row, 1).Text)
	assert.Equal(t, fmt.Sprintf("+%.2f A", row.Cells[2].Figure.Value-row.Cells[0].Figure.Value), differenceCell(s, row, 2).Text)
}

// A caution about another trial is not shown with the chosen one.
func TestCautionOfTheChosenTrial(t *testing.T) {
	s, about := session.NewExample(), 0
	for i, o := range s.Outcome().Trials {
		s.Choose(i)
		text := tuitest.Words(strings.Join(caution(s, 200, 50), " "))
		require.NotEmpty(t, text)
		for _, c := range s.Outcome().Cautions {
			if c.Trial != "" && c.Trial != o.Name {
				about++
				assert.NotContains(t, text, tuitest.Words(c.Text))
			}
		}
	}
	assert.Positive(t, about)
}

// Four trials on a small screen: the chosen one and the reference stay, with their difference; the
// others are named.
func TestFourTrialsOnASmallScreen(t *testing.T) {
	s, v := session.NewExample(), New()
	s.AddTrial()
	for chosen, vs := range []string{"B vs A", "B vs A", "C vs A", "D vs A"} {
		s.Choose(chosen)
		frame := tuitest.Draw(t, v, s, 72, 24)
		for _, want := range []string{"net amps, wheel 45 rpm, A", vs, "A ref", "●" + s.Outcome().Trials[chosen].Name, "◂ also "} {
			assert.Contains(t, frame, want)
		}
		assert.NotContains(t, tuitest.Draw(t, v, s, 100, 30), "◂ also ")
	}
}

// While the wire is stepped from thick to thin with the slot full, every column stays in place, though
// figures gain and lose digits and marks.
func TestColumnsStandStill(t *testing.T) {
	head := regexp.MustCompile(`.*A ref .* vs A`)
	fast := 0 // frames in which the speed has four figures and a ~
	for _, size := range [][2]int{{58, 17}, {80, 21}, {100, 27}, {120, 37}, {200, 57}} {
		for _, name := range []string{"", "engine"} {
			s, v, thicker := session.NewExample(), New(), "T ] ] ]"
			if name != "" {
				s, thicker = jobOf(t, name), "T ] ] ] ] ] ]"
			}
			tuitest.Press(t, v, s, size[0], size[1], thicker)
			was := head.FindString(tuitest.Draw(t, v, s, size[0], size[1]))
			require.NotEmpty(t, was)
			for range 10 {
				tuitest.Press(t, v, s, size[0], size[1], "[")
				assert.Equal(t, was, head.FindString(tuitest.Draw(t, v, s, size[0], size[1])), "%v: %d turns", size, s.Job().Trials[0].Turns.Whole())
				if s.Outcome().Trials[0].CutInRPM.Value >= 999.5 {
					fast++
				}
			}
		}
	}
	assert.Greater(t, fast, 5)
}

// With every row shown on a small screen, the old winding keeps its column beside three trials, and no
// unit is cut for it.
func TestTheOldWindingStaysWithEveryRow(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Draw(t, v, s, 80, 21)
	tuitest.Press(t, v, s, 80, 21, "m")
	for range 50 {
		frame := tuitest.Draw(t, v, s, 80, 21)
		assert.Regexp(t, ` old +●A ref +B +C `, frame)
		assert.NotContains(t, frame, "…  ")
		tuitest.Press(t, v, s, 80, 21, "down")
	}
}
