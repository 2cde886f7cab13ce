package wound

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"
	"slotwright/winding/quantity"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// onDay is the screen with a fixed date.
func onDay() *View {
	v := New()
	v.today = func() string { return "2026-03-14" }
	return v
}

// typed enters values into the fields from the marked one on, in a rectangle.
func typed(t *testing.T, v *View, s *session.Session, w, h int, values ...string) {
	t.Helper()
	for _, value := range values {
		for _, r := range value {
			tuitest.Press(t, v, s, w, h, strings.Replace(string(r), " ", "space", 1))
		}
		tuitest.Press(t, v, s, w, h, "enter")
	}
}

// woundB is the example with trial B wound and read: ohms good, volts low, 2 turns more.
func woundB(t *testing.T, w, h int) (*session.Session, *View) {
	t.Helper()
	s, v := session.NewExample(), onDay()
	s.Choose(1)
	tuitest.Press(t, v, s, w, h, "f6")
	v.GoTo(s, "wound[0].turns")
	plan := s.Outcome().Trials[1].Turns.Value
	typed(t, v, s, w, h, fmt.Sprint(plan+2))
	v.GoTo(s, "wound[0].filled")
	tuitest.Press(t, v, s, w, h, "f enter")
	ohms := s.Outcome().Wound[0].LeadOhms20.Expected.Value
	v.GoTo(s, "wound[0].lead")
	typed(t, v, s, w, h, fmt.Sprintf("%.3f", ohms))
	v.GoTo(s, "wound[0].line")
	typed(t, v, s, w, h, "4", "600")
	return s, v
}

func TestWoundFrames(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {80, 21}, {100, 27}, {120, 37}, {200, 57}} {
		s, v := woundB(t, size[0], size[1])
		require.True(t, v.GoTo(s, "wound[0].line"))
		tuitest.Golden(t, fmt.Sprintf("wound-%dx%d", size[0], size[1]), tuitest.Draw(t, v, s, size[0], size[1]))
		s.Theme = kit.Theme{ASCII: true}
		tuitest.CheckASCII(t, tuitest.Draw(t, v, s, size[0], size[1]))
	}
	s, v := woundB(t, 80, 21)
	s.Theme = kit.Theme{Colour: true}
	require.True(t, v.GoTo(s, "wound[0].line"))
	tuitest.GoldenStyled(t, "wound-80x21-styles", tuitest.Draw(t, v, s, 80, 21))
}

// Before anything is wound each field has its plan beside it; f6 begins a record of the chosen
// trial, dated today, in one step of undo.
func TestARecordIsBegun(t *testing.T) {
	s, v := session.NewExample(), onDay()
	s.Choose(1)
	before := s.Document().Text()
	frame := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, frame, "Planned, nothing wound yet: f6 begins a record of trial B.")
	assert.Contains(t, frame, "(B, chosen)")
	assert.Contains(t, frame, "▸ Turns", "what is counted first is marked")
	assert.Regexp(t, `Wire used +m +plan [0-9.]+ m `, frame, "as it is read off the spools")
	assert.Regexp(t, `by weight +kg +plan [0-9.]+ kg `, frame)
	assert.Contains(t, frame, "plan 1 × "+s.Job().Trials[1].Gauge.String())
	assert.Regexp(t, `Lead to lead +Ω +plan [0-9.]+ Ω, [0-9.]+ to [0-9.]+`, frame)
	tuitest.Press(t, v, s, 80, 21, "f6")
	r := s.Job().AsWound[0]
	assert.Equal(t, []string{"B", "2026-03-14"}, []string{r.Trial, r.Date})
	assert.Equal(t, "wound[0].turns", v.form.Marked())
	s.Undo()
	assert.Equal(t, before, s.Document().Text())
}

// Typing into an empty record also begins it, for the chosen trial; undo removes the first letter and
// what came with it together.
func TestTypingBeginsARecord(t *testing.T) {
	s, v := session.NewExample(), onDay()
	s.Choose(2)
	before := s.Document().Text()
	require.True(t, v.GoTo(s, "wound[0].lead"))
	tuitest.Press(t, v, s, 80, 21, "0 . 2")
	r := s.Job().AsWound[0]
	assert.Equal(t, []string{"C", "2026-03-14"}, []string{r.Trial, r.Date})
	assert.Equal(t, 0.2, r.LeadOhms.Value)
	s.Undo()
	assert.Equal(t, before, s.Document().Text())
	tuitest.Draw(t, v, s, 80, 21)
	require.True(t, v.GoTo(s, "wound[0].filled"))
	tuitest.Press(t, v, s, 80, 21, "space f enter")
	assert.Equal(t, []string{"C", "full"}, []string{s.Job().AsWound[0].Trial, s.Job().AsWound[0].Filled}, "a choice begins one too")
	s.Undo()
	require.True(t, v.GoTo(s, "wound[0].date"))
	typed(t, v, s, 80, 21, "2025-12-01")
	assert.Equal(t, "2025-12-01", s.Job().AsWound[0].Date, "a date that was typed stays")
	assert.Equal(t, "C", s.Job().AsWound[0].Trial)
}

// A reading is assessed at once: its limits, its deviation, and what that indicates; and the job is
// wound, then proved.
func TestReadingsSayWhereTheyStand(t *testing.T) {
	s, v := woundB(t, 80, 21)
	frame := tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Contains(t, frame, "not proved: explain volts first, marked !.")
	require.True(t, v.GoTo(s, "wound[0].lead"))
	frame = tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Regexp(t, `◆ Ω good, [0-9.]+ to [0-9.]+`, frame)
	assert.Regexp(t, `Ohms at 20 °C: [0-9.]+ Ω lies within [0-9.]+ to [0-9.]+.*: good\.`, frame)
	require.True(t, v.GoTo(s, "wound[0].line"))
	frame = tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Regexp(t, `! V [0-9.]+ % low, `, frame)
	assert.Regexp(t, `Volts at 600 rpm, 2\.31 A of field: 4\.00 V is [0-9.]+ % low \([0-9.]+ to [0-9.]+.*\): speed, field current or gap`, frame)
	require.True(t, v.GoTo(s, "wound[0].turns"))
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), ", 2 more")
	v.GoTo(s, "wound[0].speed")
	tuitest.Press(t, v, s, 80, 21, "ctrl+k")
	v.GoTo(s, "wound[0].line")
	frame = tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Contains(t, frame, "nothing to compare it with: needs the speed")
	tuitest.Press(t, v, s, 80, 21, "ctrl+k")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Wound, not proved yet")
	v.GoTo(s, "wound[0].cut_in")
	typed(t, v, s, 80, 21, fmt.Sprintf("%.0f", s.Outcome().Wound[0].CutInRPM.Expected.Value))
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Proved.")
}

// A winding warmer than was guessed says by what factor, and that this prevents the proof; for a record
// without a fill, only the plan is shown, and only once.
func TestAWarmReadingSaysWhatItIsOff(t *testing.T) {
	s, v := woundB(t, 80, 21)
	for field, text := range map[string]string{"line": "", "speed": "", "turns": "", "filled": "", "warm": "95", "warm_current": "4", "warm_speed": "900"} {
		s.Edit(s.Document().Set("wound[0]."+field, text, quantity.Choice{}))
	}
	s.Edit(s.Document().Set("wound[0].cut_in", fmt.Sprintf("%.0f", s.Outcome().Wound[0].CutInRPM.Expected.Value), quantity.Choice{}))
	rise := s.Outcome().Wound[0].RisePerWatt
	require.True(t, rise.Expected.Origin.Weak())
	require.Greater(t, rise.Off.Value, 30.0)
	require.True(t, v.GoTo(s, "wound[0].warm"))
	frame := tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Contains(t, frame, "not proved: explain warmth first, marked !.")
	times := regexp.MustCompile(`! °C rise per watt ([0-9.]+) times the guess`).FindStringSubmatch(frame)
	require.NotNil(t, times, frame)
	assert.Equal(t, fmt.Sprintf("%.2g", rise.Read.Value/rise.Expected.Value), times[1])
	assert.NotContains(t, frame, "not judged")
	require.True(t, v.GoTo(s, "wound[0].filled"))
	frame = tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	assert.Contains(t, frame, "plan fill 0.67")
	assert.NotContains(t, frame, "fill 0.67, plan 0.67")
}

// The planned wire excludes the purchase allowance: if exactly that many metres were used, they
// indicate the planned mean turn; plan and verdict are beside it.
func TestWireUsedStandsBesideItsPlan(t *testing.T) {
	s, v := session.NewExample(), onDay()
	s.Choose(1)
	plan := &s.Outcome().Trials[1]
	used := plan.Used()
	require.True(t, used.Known())
	assert.InEpsilon(t, plan.Buy[0].Metres.Value/(1+plan.Allowance), used.Value, 1e-9)
	require.True(t, v.GoTo(s, "wound[0].wire_length"))
	typed(t, v, s, 80, 21, fmt.Sprintf("%.2f", used.Value))
	assert.InEpsilon(t, plan.MeanTurnMM.Value, s.Outcome().Wound[0].MeanTurnMM.Read.Value, 1e-3)
	assert.Regexp(t, `good, plan [0-9.]+ m `, tuitest.Draw(t, v, s, 80, 21))
	v.GoTo(s, "wound[0].wire_length")
	typed(t, v, s, 80, 21, fmt.Sprintf("%.2f", used.Value/2))
	assert.Regexp(t, `50 % low, plan [0-9.]+ m `, tuitest.Draw(t, v, s, 80, 21))
}

// On the smallest screen the empty end of the values makes room for the notes: plan and verdict are
// shown whole, and so are the values.
func TestNotesAreReadOnTheSmallestScreen(t *testing.T) {
	s, v := woundB(t, 60, 18)
	require.True(t, v.GoTo(s, "wound[0].line"))
	frame := tuitest.Draw(t, v, s, 60, 18)
	assert.Regexp(t, `▸ Volts +\[4\] +! V +73 % low `, frame)
	require.True(t, v.GoTo(s, "wound[0].filled"))
	assert.Regexp(t, `Wire used +m +plan [0-9.]+ m `, tuitest.Draw(t, v, s, 60, 18))
	require.True(t, v.GoTo(s, "wound[0].date"))
	frame = tuitest.Draw(t, v, s, 60, 18)
	assert.Contains(t, frame, "[2026-03-14]")
	assert.Contains(t, frame, "(as the trial)")
}

// The dim text of the marked row is shown whole beside its note, which stays in place.
func TestTheDimValueOfTheMarkedRowIsReadWhole(t *testing.T) {
	s, v := woundB(t, 80, 21)
	s.Edit(s.Document().Clear("wound[0].turns"))
	require.True(t, v.GoTo(s, "wound[0].turns"))
	marked := tuitest.Draw(t, v, s, 80, 21)
	assert.Regexp(t, `▸ Turns +\[ \] \(as the trial\) +plan`, marked)
	require.True(t, v.GoTo(s, "wound[0].date"))
	plan := regexp.MustCompile(`(?m)^(. Turns.*)plan`)
	other := plan.FindStringSubmatch(tuitest.Draw(t, v, s, 80, 21))
	require.NotNil(t, other)
	assert.Equal(t, utf8.RuneCountInString(plan.FindStringSubmatch(marked)[1]), utf8.RuneCountInString(other[1]))
}

// A record of a trial that the job lacks, and a job without trials, say so and accept keys.
func TestRecordsOfNoTrial(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n[[wound]]\ntrial = \"Z\"\nlead_ohm = 1\n"), "", job.Mark{}), onDay()
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 200, 57)), "of no trial of the job")
	s = session.New(job.Parse("format = 1\n"), "", job.Mark{})
	v = onDay()
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Planned, nothing wound yet.")
	require.True(t, v.GoTo(s, "wound[0].lead"))
	tuitest.Press(t, v, s, 80, 21, "1 enter")
	assert.Equal(t, "2026-03-14", s.Job().AsWound[0].Date)
	assert.Empty(t, s.Job().AsWound[0].Trial)
}

// Strands, enamel and metal are asked for once the record has a wire of its own.
func TestAWireOfItsOwn(t *testing.T) {
	s, v := woundB(t, 80, 21)
	assert.False(t, v.GoTo(s, "wound[0].strands"))
	s.Type("wound[0].gauge", "16 AWG")
	assert.True(t, v.GoTo(s, "wound[0].strands"))
	assert.False(t, v.GoTo(s, "wound[0].also_strands"))
	assert.False(t, v.GoTo(s, "wound[0].coil_turns"), "the coils are alike")
}

// A record is removed, and undo restores it.
func TestARecordIsTakenOut(t *testing.T) {
	s, v := woundB(t, 80, 21)
	text := s.Document().Text()
	tuitest.Press(t, v, s, 80, 21, "f7")
	assert.Empty(t, s.Job().AsWound)
	s.Undo()
	assert.Equal(t, text, s.Document().Text())
	assert.Len(t, s.Job().AsWound, 1)
}

// On a narrow screen nothing beside a value is cut, and a deviation is reported whole under it.
func TestNothingIsCutOnANarrowScreen(t *testing.T) {
	s, v := woundB(t, 60, 18)
	blank, over := session.NewExample(), onDay()
	tuitest.Draw(t, over, blank, 60, 18)
	assert.Contains(t, tuitest.Draw(t, over, blank, 60, 18), "plan 0.68 ")
	for _, field := range []string{"turns", "filled", "lead", "line", "cut_in"} {
		require.True(t, v.GoTo(s, "wound[0]."+field))
		for _, line := range strings.Split(tuitest.Draw(t, v, s, 60, 18), "\n") {
			if len([]rune(line)) > 44 && !strings.ContainsAny(line, "┌└") {
				assert.NotContains(t, string([]rune(line)[44:]), "…", field)
			}
		}
	}
	frame := tuitest.Words(tuitest.Draw(t, v, s, 60, 18))
	assert.Contains(t, frame, "explain volts first, marked !.")
	assert.Regexp(t, `volts: \d+ % low, [\d.]+ to [\d.]+; ohms at 20 °C: good`, frame)
	require.True(t, v.GoTo(s, "wound[0].cut_in"))
	assert.Regexp(t, `Begins to charge at.* rpm +\d+–\d+`, tuitest.Draw(t, v, s, 60, 18))
}

// Where nothing is planned yet, the screen says so and where to go.
func TestNothingPlannedYet(t *testing.T) {
	s, v := session.New(job.Parse(job.Template("x")), "", job.Mark{}), onDay()
	frame := tuitest.Words(tuitest.Draw(t, v, s, 80, 22))
	assert.NotContains(t, frame, "plan")
	assert.Contains(t, frame, "nothing to hold readings against: Trials is where they are chosen.")
}

// A third of the planned ohms and 58 % of the planned volts are those of a delta: this is reported
// once, beside the form and in the line under it, with the field current at which the volts hold, at
// every size.
func TestAKnownFaultIsNamed(t *testing.T) {
	for _, size := range [][2]int{{60, 17}, {80, 21}, {120, 37}, {200, 57}} {
		s, v := session.NewExample(), onDay()
		s.Choose(1)
		w, h := size[0], size[1]
		tuitest.Press(t, v, s, w, h, "f6")
		plan := s.Outcome().Trials[1]
		v.GoTo(s, "wound[0].lead")
		typed(t, v, s, w, h, fmt.Sprintf("%.4f", plan.LeadOhms20.Value/3))
		v.GoTo(s, "wound[0].line")
		typed(t, v, s, w, h, fmt.Sprintf("%.3f", plan.LinePerRPM.Value*600/math.Sqrt(3)), "600")
		frame := tuitest.Words(tuitest.Draw(t, v, s, w, h))
		assert.Contains(t, frame, "likely joined in delta, not star", "%v", size)
		require.True(t, v.GoTo(s, "wound[0].lead"))
		frame = tuitest.Words(tuitest.Draw(t, v, s, w, h))
		assert.Contains(t, frame, "likely joined in delta, not star (ohms ×0.33, volts ×0.58)")
		require.True(t, v.GoTo(s, "wound[0].line"))
		assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, w, h)), "the same, as with ohms at 20 °C")
	}
}

// The planned volts name their field current, and follow the one typed with the reading; ohms hundreds
// of times the plan are reported as open, not as so many percent high.
func TestWoundNamesTheFieldCurrent(t *testing.T) {
	s, v := woundB(t, 120, 37)
	amps := s.Outcome().Machine.FieldAmps.Value
	assert.Contains(t, tuitest.Draw(t, v, s, 120, 37), fmt.Sprintf("volts at 600 rpm, %.2f A of field", amps))
	before := s.Outcome().Wound[0].LineVolts.Expected.Value
	require.True(t, v.GoTo(s, "wound[0].field"))
	typed(t, v, s, 120, 37, "1")
	assert.Contains(t, tuitest.Draw(t, v, s, 120, 37), "volts at 600 rpm, 1.00 A of field")
	assert.Less(t, s.Outcome().Wound[0].LineVolts.Expected.Value, before)
	require.True(t, v.GoTo(s, "wound[0].lead"))
	tuitest.Press(t, v, s, 120, 37, "ctrl+k")
	typed(t, v, s, 120, 37, "200")
	require.True(t, v.GoTo(s, "wound[0].lead"))
	frame := tuitest.Words(tuitest.Draw(t, v, s, 120, 37))
	assert.Regexp(t, `is 316 times the plan \(.*\): open: a lead or a joint not connected`, frame)
}

// With the length given too, the weight is assessed in its own row and listed among the readings;
// alone, it is expressed as a mean turn.
func TestAWeightIsHeldAgainstItsPlan(t *testing.T) {
	s, v := session.NewExample(), onDay()
	s.Choose(1)
	plan := &s.Outcome().Trials[1]
	require.True(t, v.GoTo(s, "wound[0].wire_weight"))
	typed(t, v, s, 120, 37, "3.6")
	assert.NotContains(t, tuitest.Draw(t, v, s, 120, 37), "weight of the wire")
	v.GoTo(s, "wound[0].wire_length")
	typed(t, v, s, 120, 37, fmt.Sprintf("%.2f", plan.Used().Value))
	v.GoTo(s, "wound[0].wire_weight")
	page := tuitest.Draw(t, v, s, 120, 37)
	assert.Regexp(t, `by weight +\[3\.6\] +! kg +4\.7 times the plan, plan`, page)
	assert.Regexp(t, `Wire used +[0-9.]+ +◆ m +good`, page)
	typed(t, v, s, 120, 37, fmt.Sprintf("%.3f", plan.CopperKg.Value*1.04))
	assert.Regexp(t, `by weight +[0-9.]+ +◆ kg +good`, tuitest.Draw(t, v, s, 120, 37))
}

// Three pairs are typed one after another; their differences are reported beside them and in the strip,
// and a record of them is kept as typed.
func TestEachPairIsTyped(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Draw(t, v, s, 80, 21)
	plan := s.Outcome().Trials[0].LeadOhms20.Value
	v.begin(s)
	require.True(t, v.GoTo(s, "wound[0].lead"))
	typed := fmt.Sprintf("%.4f %.4f %.4f", plan*1.04, plan, plan*0.96)
	for _, r := range typed {
		v.Key(s, tuitest.KeyMsg(string(r)))
	}
	v.SetSize(s, v.at)
	frame := tuitest.Words(tuitest.Draw(t, v, s, 80, 21))
	text, _, _ := s.Document().Typed("wound[0].lead")
	assert.Equal(t, typed, strings.Join(strings.Fields(text), " "))
	assert.Contains(t, frame, "a pair 4 % off, 2 % allowed", frame)
	assert.Contains(t, frame, "phase W, in V-W and W-U, is 8 % low", frame)
	assert.Equal(t, 1, strings.Count(frame, "is 8 % low"), "once: %s", frame)
	assert.Equal(t, 1, strings.Count(strings.ToLower(frame), "read each pair again"))
	assert.Contains(t, frame, "U-V V-W W-U", "the order of the card")
	assert.Len(t, s.Job().AsWound[0].LeadPairs, 3)
}
