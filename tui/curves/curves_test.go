package curves

import (
	"fmt"
	"math"
	"os"
	"slices"
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

var sizes = [][2]int{{80, 21}, {100, 27}, {120, 37}, {200, 57}}

var themes = map[string]kit.Theme{"plain": {}, "ascii": {ASCII: true}, "colour": {Colour: true}}

// frame draws the view as the screen's body.
func frame(v *View, s *session.Session, w, h int) string {
	screen := kit.NewScreen(s.Theme, w, h)
	v.SetSize(s, screen.Rect())
	for _, b := range v.Draw(s) {
		screen.Put(b)
	}
	return screen.String()
}

func press(t *testing.T, v *View, s *session.Session, keys ...string) {
	t.Helper()
	for _, k := range keys {
		require.True(t, v.Key(s, tuitest.KeyMsg(k)), k)
	}
}

// without is the example without the lines that begin with any of the words.
func without(words ...string) *session.Session {
	var keep []string
	for _, line := range strings.Split(job.Example().Text(), "\n") {
		out := false
		for _, w := range words {
			out = out || strings.HasPrefix(line, w)
		}
		if !out {
			keep = append(keep, line)
		}
	}
	return session.New(job.Parse(strings.Join(keep, "\n")), "", job.Mark{})
}

// withTrials is the example with so many trials.
func withTrials(n int) *session.Session {
	s := session.NewExample()
	for len(s.Outcome().Trials) > n {
		s.RemoveTrial()
	}
	for len(s.Outcome().Trials) < n {
		s.AddTrial()
		s.StepTurns(len(s.Outcome().Trials))
	}
	return s
}

// TestFrames compares the pictures of what the frames of the whole screen do not show: other
// quantities, all values, four trials, trials without a curve.
func TestFrames(t *testing.T) {
	s := session.NewExample()
	for _, i := range []int{ofWatts, ofWinding} {
		v := New()
		v.quantity = i
		tuitest.Golden(t, "curves-"+quantities[i].tab+"-80x21", frame(v, s, 80, 21))
	}
	v := New()
	v.flipped = true
	tuitest.Golden(t, "curves-values-80x21", frame(v, s, 80, 21))
	tuitest.Golden(t, "curves-four-80x21", frame(New(), withTrials(4), 80, 21))
	tuitest.Golden(t, "curves-four-120x37", frame(New(), withTrials(4), 120, 37))
	tuitest.Golden(t, "curves-half-80x21", frame(New(), without("turns = 21"), 80, 21))
}

// Every choice at every size in every theme fills its rectangles exactly.
func TestEveryLineFits(t *testing.T) {
	jobs := map[string]*session.Session{
		"none": withTrials(0), "one": withTrials(1), "two": withTrials(2), "three": withTrials(3), "four": withTrials(4),
		"no poles": without("poles"), "no battery cells": without("cells"), "no drive": without("ratio", "slow_rpm", "usual_rpm", "top_rpm", "power_w"),
		"no temperature": without("bore_mm", "stack_mm"), "half": without("turns = 21"),
		"nothing": session.New(job.Parse("format = 1\n"), "", job.Mark{}),
	}
	for name, s := range jobs {
		for _, th := range themes {
			s.Theme = th
			for _, size := range append(sizes, [2]int{81, 22}, [2]int{99, 30}, [2]int{140, 21}) {
				for i := range quantities {
					v := New()
					v.quantity, v.flipped = i, i%2 == 1
					s.Units.Fahrenheit = i > 3
					v.SetSize(s, kit.Rect{Y: 2, W: size[0], H: size[1]})
					for _, b := range v.Draw(s) {
						tuitest.CheckLines(t, b.Lines, b.Rect.W, b.Rect.H)
						require.False(t, t.Failed(), "%s %v %s", name, size, quantities[i].tab)
					}
				}
			}
		}
	}
}

// The cursor shows the outcome's values where it has them, and the bench's elsewhere.
func TestCursorReadsTheOutcome(t *testing.T) {
	s, v := session.NewExample(), New()
	for i, trial := range s.Outcome().Trials {
		list := slices.Clone(trial.Curve)
		for _, o := range trial.Operating {
			list = append(list, o.RunPoint)
		}
		for _, want := range list {
			v.rpm = want.RPM
			got, ok := pointAt(s, i, v.cursor(s))
			require.True(t, ok)
			assert.Equal(t, want, got)
		}
		v.rpm = 701.5
		want, why := s.Bench().RunAt(i, 701.5)
		require.Empty(t, why)
		got, _ := pointAt(s, i, v.cursor(s))
		assert.Equal(t, want, got)
		cells := v.table(s).Rows[i].Cells
		assert.Equal(t, signed(want.NetAmps), cells[len(cells)-3].Text, "net amps in the table's cursor column")
	}
}

// signed is amps as the table writes them.
func signed(amps float64) string { return strings.Replace(fmt.Sprintf("%.2f", amps), "-", "−", 1) }

// At the job's speeds, the table's columns equal the bench's own figures for a machine held at that
// speed with the battery charging; where a trial really runs they equal the outcome's.
func TestTableIsTheOutcome(t *testing.T) {
	s, v := session.NewExample(), New()
	speeds := speedsOf(s, true)
	require.Equal(t, []string{"slow", "test", "usual", "top"}, []string{speeds[0].name, speeds[1].name, speeds[2].name, speeds[3].name})
	for i, trial := range s.Outcome().Trials {
		cells := v.table(s).Rows[i].Cells
		assert.Equal(t, session.Rough+rpmText(trial.CutInRPM.Value), cells[1].Text, "a guess weighs in it")
		for k, at := range speeds {
			p, why := s.Bench().RunAt(i, at.rpm)
			require.Empty(t, why)
			assert.Equal(t, signed(p.NetAmps), cells[2+k].Text)
			over := p.AmpsDC > trial.LimitAmps.Value || p.WindingC > s.Outcome().Machine.MeanLimitC.Value
			assert.Equal(t, over, cells[2+k].Mark != kit.Plain, "marked when over a limit: %s at %g rpm", trial.Name, at.rpm)
		}
		p, ok := pointAt(s, i, trial.RunsUsual.Value)
		require.True(t, ok)
		assert.Equal(t, trial.AmpsUsual.Value, p.NetAmps)
		assert.NotEqual(t, s.Outcome().Machine.UsualRPM.Value, trial.RunsUsual.Value, "it does not run at the speed asked for")
		assert.Equal(t, rpmText(trial.LimitRPM.Value), cells[len(cells)-1].Text)
	}
}

func TestFahrenheit(t *testing.T) {
	s, v := session.NewExample(), New()
	v.quantity = ofWinding
	p, _ := s.Bench().RunAt(0, s.Outcome().Machine.TopRPM.Value)
	top := p.WindingC
	require.Contains(t, frame(v, s, 80, 21), "class F mean 145 °C")
	s.Units.Fahrenheit = true
	out := frame(v, s, 80, 21)
	assert.Contains(t, out, "class F mean 293 °F", "145 °C is 293 °F")
	assert.Equal(t, fmt.Sprintf("%.0f", top*1.8+32), v.table(s).Rows[0].Cells[5].Text, "top speed, in the table")
}

func TestQuantityAndTrialKeys(t *testing.T) {
	s, v := session.NewExample(), New()
	for i := range quantities {
		assert.Equal(t, i, v.quantity)
		assert.Contains(t, frame(v, s, 80, 21), "["+quantities[i].tab+"]")
		press(t, v, s, "y")
	}
	assert.Equal(t, 0, v.quantity, "round again")
	press(t, v, s, "Y")
	assert.Equal(t, len(quantities)-1, v.quantity)
	press(t, v, s, "]", "]", "down")
	assert.Equal(t, len(s.Outcome().Trials)-1, s.Trial)
	press(t, v, s, "[", "up", "[", "k")
	assert.Equal(t, 0, s.Trial)
	assert.False(t, v.Key(s, tuitest.KeyMsg("z")))
}

func TestCursorKeys(t *testing.T) {
	s, v := session.NewExample(), New()
	usual, end := s.Outcome().Machine.UsualRPM.Value, endOf(s)
	assert.Equal(t, usual, v.cursor(s), "begins at the usual speed")
	small, big := steps(end)
	require.Equal(t, 10.0, small, "curves up to %g rpm", end)
	require.Equal(t, 100.0, big)
	for _, step := range []struct {
		key  string
		want float64
	}{
		{"right", 620}, {"right", 630}, {"left", 620}, {"shift+right", 700}, {"pgdown", 800}, {"shift+left", 700},
		{"pgup", 600}, {"home", 0}, {"left", 0}, {"right", 10}, {"end", end}, {"right", end}, {"left", (math.Ceil(end/10) - 1) * 10},
	} {
		press(t, v, s, step.key)
		assert.InDelta(t, step.want, v.cursor(s), 1e-9, step.key)
	}
}

// n and p visit every mark once, forwards and back, and stop exactly on it.
func TestMarks(t *testing.T) {
	s, v := session.NewExample(), New()
	list := marks(s)
	for _, f := range []quantity.Figure{s.Outcome().Trials[0].CutInRPM, s.Outcome().Trials[2].CrossRPM, s.Outcome().Trials[1].LimitRPM, s.Outcome().Trials[1].RunsUsual, s.Outcome().Machine.SlowRPM} {
		assert.Contains(t, list, f.Value)
	}
	press(t, v, s, "home")
	for _, want := range list {
		press(t, v, s, "n")
		assert.Equal(t, want, v.cursor(s))
	}
	press(t, v, s, "n")
	assert.Contains(t, s.Message().Text, "no mark")
	for i := len(list) - 2; i >= 0; i-- {
		press(t, v, s, "p")
		assert.Equal(t, list[i], v.cursor(s))
	}
}

func TestSteps(t *testing.T) {
	for end := 0.7; end < 1e6; end *= 1.37 {
		small, big := steps(end)
		assert.InDelta(t, 10, big/small, 1e-9)
		assert.GreaterOrEqual(t, small, end/120*(1-1e-9))
		assert.Less(t, small, end/120*2.5*(1+1e-9))
	}
}

// A moved cursor stays within curves that become shorter.
func TestCursorStaysWithinTheCurves(t *testing.T) {
	s, v := session.NewExample(), New()
	v.rpm = 1e9
	assert.Equal(t, endOf(s), v.cursor(s))
	none := withTrials(0)
	assert.Zero(t, endOf(none))
	press(t, v, none, "right", "left", "home", "end", "n", "p", "]", "[", "v")
	assert.False(t, math.IsInf(v.cursor(none), 0))
}

func TestWords(t *testing.T) {
	s, v := session.NewExample(), New()
	m, a, b, c := s.Outcome().Machine, s.Outcome().Trials[0], s.Outcome().Trials[1], s.Outcome().Trials[2]
	all := ""
	for _, say := range v.sentences(s) {
		all += say.text + "\n"
	}
	for _, want := range []string{
		fmt.Sprintf("Battery at rest: C charges from %.0f alternator rpm, B from %.0f, A from %.0f.", c.CutInRPM.Value, b.CutInRPM.Value, a.CutInRPM.Value),
		fmt.Sprintf("The rotor paid, taking charge: C gains from %.0f alternator rpm, B from %.0f, A from %.0f.", c.BreakEvenRPM.Value, b.BreakEvenRPM.Value, a.BreakEvenRPM.Value),
		fmt.Sprintf("A gives more than C above %.0f alternator rpm; B gives more than A all the way.", c.CrossRPM.Value),
		fmt.Sprintf("C from %.0f alternator rpm, B from %.0f, A from %.0f", c.LimitRPM.Value, b.LimitRPM.Value, a.LimitRPM.Value),
		fmt.Sprintf("The 6.0 A wanted: B at %.0f alternator rpm, A at %.0f, C not in this range.", b.TargetRPM.Value, a.TargetRPM.Value),
		fmt.Sprintf("Where each really runs, %s: C at %.0f alternator rpm, B at %.0f, A at %.0f.", m.Conditions[1].Label, c.RunsUsual.Value, b.RunsUsual.Value, a.RunsUsual.Value),
		fmt.Sprintf("held at that speed, battery at %.1f V.", m.ChargingVolts.Value),
		fmt.Sprintf("class F allows a mean of %.0f °C", m.MeanLimitC.Value),
	} {
		assert.Contains(t, all, want)
	}
	// What is reported about the crossings holds on the net curves.
	for i := range a.Curve {
		assert.LessOrEqual(t, a.Curve[i].NetAmps, b.Curve[i].NetAmps, "%g rpm", a.Curve[i].RPM)
		if rpm := a.Curve[i].RPM; rpm > c.CrossRPM.Value {
			assert.Greater(t, a.Curve[i].NetAmps, c.Curve[i].NetAmps, "%g rpm", rpm)
		} else {
			assert.LessOrEqual(t, a.Curve[i].NetAmps, c.Curve[i].NetAmps, "%g rpm", rpm)
		}
	}
}

// If the field takes more than comes in, the loss is shown, with its sign; a machine with magnets that
// does not charge shows nothing.
func TestNetAmpsBelowNothing(t *testing.T) {
	s, v := session.NewExample(), New()
	p, _ := pointAt(s, 0, s.Outcome().Machine.SlowRPM.Value)
	require.Less(t, p.NetAmps, -1.0)
	require.Zero(t, p.AmpsDC)
	assert.Equal(t, signed(p.NetAmps), v.table(s).Rows[0].Cells[2].Text)
	for _, xy := range v.points(s, &s.Outcome().Trials[0])[:5] {
		assert.InDelta(t, p.NetAmps, xy.Y, 1e-9, "the curve is below nothing there")
	}
	magnets := session.New(job.Parse(strings.Replace(job.Example().Text(), `kind = "wound"`, `kind = "magnets"`, 1)), "", job.Mark{})
	require.Equal(t, "magnets", magnets.Job().Field.Kind)
	p, _ = pointAt(magnets, 0, 10)
	require.Zero(t, p.AmpsDC)
	v.rpm = 10
	cells := v.table(magnets).Rows[0].Cells
	assert.Equal(t, session.Dash, cells[len(cells)-3].Text)
}

func TestSaysWhyThereIsNoCurve(t *testing.T) {
	assert.Contains(t, frame(New(), withTrials(0), 80, 21), "No trial yet")
	poles := without("poles")
	require.NotEmpty(t, poles.Outcome().Trials[0].NoCharging)
	assert.Contains(t, frame(New(), poles, 80, 21), "A: "+poles.Outcome().Trials[0].NoCharging+".")
	half := frame(New(), without("turns = 21"), 80, 21)
	assert.Contains(t, half, "B has no curve: needs the turns.")
	assert.Contains(t, half, "A from")
}

func TestLetters(t *testing.T) {
	s := session.New(job.Parse(strings.NewReplacer(`"A"`, `"thick"`, `"B"`, `"thin"`, `"C"`, `"third"`).Replace(job.Example().Text())), "", job.Mark{})
	assert.Equal(t, []string{"1", "2", "3"}, letters(s))
	assert.Equal(t, []string{"A", "B", "C"}, letters(session.NewExample()))
}

func BenchmarkDraw(b *testing.B) {
	s, v := session.NewExample(), New()
	v.rpm = 701
	v.SetSize(s, kit.Rect{W: 120, H: 37})
	for b.Loop() {
		v.Draw(s)
	}
}

// Columns of the table and of the list of values stay in place while the cursor moves.
func TestColumnsStandStillUnderTheCursor(t *testing.T) {
	for _, size := range [][2]int{{80, 21}, {120, 37}} {
		s, v := session.NewExample(), New()
		heads := func() (list []string) {
			for _, line := range strings.Split(tuitest.Draw(t, v, s, size[0], size[1]), "\n") {
				if strings.Contains(line, "reached") {
					list = append(list, line)
				}
			}
			return append(list, v.values(s).Head(s.Theme, 50)...)
		}
		was := heads()
		require.Greater(t, len(was), 1)
		for _, keys := range []string{"end", "home", "pgdown", "right right right", "n n"} {
			tuitest.Press(t, v, s, size[0], size[1], keys)
			assert.Equal(t, was, heads(), keys)
		}
	}
}

// Where a winding finds no steady temperature there is no curve of its current, and the table says so;
// unloaded volts continue.
func TestNothingFlowsInAWindingThatBurns(t *testing.T) {
	doc, mark, err := job.Load("../../testdata/jobs/wind-good.toml")
	require.NoError(t, err)
	s, v := session.New(doc, "", mark), New()
	tuitest.Draw(t, v, s, 100, 27)
	o := &s.Outcome().Trials[0]
	burns := 0
	for i, xy := range v.points(s, o) {
		if o.Curve[i].TooHot {
			burns++
			assert.True(t, math.IsNaN(xy.Y), "%g rpm", xy.X)
			assert.Equal(t, "burns", quantityCell(s, v.now(), false, 0, o.Curve[i], true, 1).Text)
		} else {
			assert.False(t, math.IsNaN(xy.Y), "%g rpm", xy.X)
		}
	}
	require.Positive(t, burns)
	v.quantity = ofOpenVolts
	for _, xy := range v.points(s, o) {
		assert.False(t, math.IsNaN(xy.Y))
	}
}

// A limit exceeded only over part of the speeds is reported with its speed range: a regulator that
// lowers the field ends it.
func TestALimitPassedInAPartOfTheSpeeds(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/star-diodes.toml")
	require.NoError(t, err)
	s, v := session.NewCopy(job.Parse(string(text))), New()
	s.Type("battery.most_current", "20")
	all := ""
	for _, say := range v.sentences(s) {
		all += say.text + "\n"
	}
	for i, a := range s.Outcome().Trials {
		require.Positive(t, a.LimitToRPM)
		line := v.series(s, i, false)
		require.NotEmpty(t, line.Thin)
		last := line.Thin[len(line.Thin)-1]
		assert.Less(t, last[1], endOf(s), "it is heavy again above the hump")
		assert.GreaterOrEqual(t, last[1], a.LimitToRPM)
		assert.Regexp(t, fmt.Sprintf(`%s from %.0f to %.0f`, a.Name, a.LimitRPM.Value, a.LimitToRPM), all)
	}
	assert.Regexp(t, `over its \w+ limit: \w from \d+ to \d+ alternator rpm, \w from \d+ to \d+\.`, strings.ToLower(all))
}
