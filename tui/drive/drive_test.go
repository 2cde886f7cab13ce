package drive

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"slotwright/tui/chart"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/job"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The charts in turn: power that the trials take and that the drive gives, marked as assumed where the
// shape of its law is; net amps; net watts; and round again. Without a drive power there is no law to
// draw.
func TestWhatIsDrawn(t *testing.T) {
	s, v := session.NewExample(), New()
	shown := func(want string, not ...string) string {
		t.Helper()
		frame := tuitest.Words(strings.Join(v.picture(s, v.drawn, 100, 20), "\n"))
		assert.Contains(t, frame, want)
		for _, text := range not {
			assert.NotContains(t, frame, text)
		}
		tuitest.Press(t, v, s, 120, 37, "ctrl+w")
		return frame
	}
	first := shown("what is taken, what it gives, W")
	for _, want := range []string{"drive gives, assumed", "A 17 turns 15 AWG", "B runs 73.2"} {
		assert.Contains(t, first, want)
	}
	shown("net into the battery, A", "drive gives")
	shown("net into the battery, W", "drive gives")
	assert.Equal(t, first, shown("drive gives, assumed"))
	tuitest.Draw(t, v, s, 120, 37)
	assert.Contains(t, tuitest.Words(strings.Join(v.text, "\n")), "~ The drive: assumed: it gives most, 320 W, at 60 rpm")
	s.Type("drive_point[0].speed", "20")
	s.Type("drive_point[0].power", "200")
	s.Type("drive_point[1].speed", "70")
	s.Type("drive_point[1].power", "300")
	v = New()
	shown("drive gives, as typed", "assumed")
	tuitest.Draw(t, v, s, 120, 37)
	assert.NotContains(t, tuitest.Words(strings.Join(v.text, "\n")), "assumed")
	s.Type("drive.kind", "fixed")
	v = New()
	shown("net into the battery, A", "drive gives")
	frame := tuitest.Draw(t, New(), session.NewExample(), 200, 57)
	assert.Contains(t, frame, "what is taken", "both on a tall screen")
	assert.Contains(t, frame, "net into the battery, A")
}

// A trial that is not filled in says so in the legend; none is "0 of".
func TestAnEmptyTrialInTheLegend(t *testing.T) {
	s := session.NewExample()
	s.Type("trial[1].turns", "")
	s.Type("trial[2].gauge", "")
	frame := tuitest.Words(strings.Join(drawn(s, netAmps, 110, 20), "\n"))
	assert.Contains(t, frame, "B no turns, 16 AWG")
	assert.Contains(t, frame, "C 42 turns, no wire")
	assert.NotContains(t, frame, "0 of")
}

// No sentence is cut, at any width: either all trials' sentences show whole, or only the chosen one's.
func TestSentencesOfTheSummaryAreWhole(t *testing.T) {
	s := session.NewExample()
	for _, size := range [][2]int{{60, 17}, {72, 20}, {80, 21}, {100, 27}} {
		for i := range s.Outcome().Trials {
			s.Choose(i)
			v := New()
			drawn, from := tuitest.Draw(t, v, s, size[0], size[1]), 0
			if v.pictured() {
				from = inputCells
			}
			frame := tuitest.Words(between(drawn, from, size[0]))
			assert.Contains(t, frame, tuitest.Words(s.Outcome().Trials[i].Name+": "+sentence(&s.Outcome().Trials[i])+"."), size)
			assert.NotContains(t, frame, "the worst ca…")
		}
	}
}

// On a small screen inputs and answers take turns; letters go into a field only while
// there is one.
func TestInputsAndAnswersTakeTurns(t *testing.T) {
	s, v := session.NewExample(), New()
	inputs := tuitest.Draw(t, v, s, 80, 21)
	assert.Contains(t, inputs, "ctrl+g shows")
	for _, o := range s.Outcome().Trials {
		assert.Contains(t, inputs, o.Name+": "+sentence(&o)[:40])
	}
	assert.NotContains(t, inputs, "What each trial makes of it")
	tuitest.Press(t, v, s, 80, 21, "down down")
	assert.True(t, v.Typing(s))
	tuitest.Press(t, v, s, 80, 21, "ctrl+g")
	assert.False(t, v.Typing(s))
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "What each trial makes of it")
	assert.False(t, v.Key(s, tuitest.KeyMsg("7")), "no field takes it")
	wide := tuitest.Draw(t, New(), s, 120, 37)
	assert.Contains(t, wide, "What each trial makes of it")
	assert.NotContains(t, wide, "ctrl+g shows")
}

// Scrolling reaches the last line of the answers and no further; every line is shown on the way.
func TestAnswersAreReadToTheirEnd(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Press(t, v, s, 80, 21, "ctrl+g")
	seen := tuitest.Draw(t, v, s, 80, 21)
	require.Greater(t, len(v.text), 15)
	for range v.text {
		tuitest.Press(t, v, s, 80, 21, "down")
		seen += tuitest.Draw(t, v, s, 80, 21)
	}
	for _, line := range v.text {
		assert.Contains(t, seen, strings.TrimSpace(line))
	}
	last := tuitest.Draw(t, v, s, 80, 21)
	tuitest.Press(t, v, s, 80, 21, "home end")
	assert.Equal(t, last, tuitest.Draw(t, v, s, 80, 21), "down stops at the end")
}

// Each trial has its sentence, and what would improve it.
func TestSentences(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/pedals.toml")
	require.NoError(t, err)
	s, v := session.New(job.Parse(string(data)), "", job.Mark{}), New()
	tuitest.Draw(t, v, s, 120, 37)
	text, mended := tuitest.Words(strings.Join(v.text, "\n")), 0
	for _, o := range s.Outcome().Trials {
		require.NotEmpty(t, o.Suits)
		assert.Contains(t, text, o.Name+": "+o.Suits)
		if o.Mend != "" {
			mended++
			assert.Contains(t, text, "would do better: "+tuitest.Words(o.Mend))
		}
		assert.Contains(t, text, fmt.Sprintf("%s: joined leads stop a drive of up to %.0f W", o.Name, o.StopsCold.Value))
	}
	assert.Positive(t, mended, "one trial another winding would better")
	assert.Contains(t, text, fmt.Sprintf("charging %.1f V", s.Outcome().Machine.ChargingVolts.Value))
	s = session.New(job.Parse("format = 1\n[[trial]]\nname = \"A\"\n"), "", job.Mark{})
	tuitest.Draw(t, v, s, 120, 37)
	assert.Contains(t, tuitest.Words(strings.Join(v.text, "\n")), "A: not known: ")
	assert.Contains(t, strings.Join(v.picture(s, 0, 60, 10), "\n"), "No curve yet.")
	none := session.New(job.Parse("format = 1\n"), "", job.Mark{})
	assert.Contains(t, strings.Join(v.picture(none, 0, 60, 10), "\n"), "There is no trial.")
	tuitest.Draw(t, New(), none, 120, 37)
}

// The speed at which shorted leads hold the machine is given for a rotor in wind, and not at all for a
// drive that does not yield; the net curve is negative where the field takes more than comes in.
func TestJoinedLeadsAndNetCurve(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/wind-good.toml")
	require.NoError(t, err)
	wind := session.New(job.Parse(string(text)), "", job.Mark{})
	o := wind.Outcome().Trials[0]
	require.True(t, o.StopsCold.Known())
	assert.Contains(t, worst(wind), o.Name+": joined leads stop a turning rotor in up to ")
	assert.Contains(t, worst(wind), "m/s with a hot one")
	text, err = os.ReadFile("../../testdata/jobs/fixed.toml")
	require.NoError(t, err)
	assert.NotContains(t, worst(session.New(job.Parse(string(text)), "", job.Mark{})), "joined leads stop")

	s := session.NewExample()
	p := s.Outcome().Trials[0].Points[0]
	require.Less(t, p.NetAmps, -1.0)
	assert.Equal(t, p.NetAmps, atStart(&s.Outcome().Trials[0], netAmps))
	assert.Contains(t, tuitest.Words(strings.Join(drawn(s, netAmps, 100, 20), " ")), "-2┤")
}

// The answers end with the explanations of exactly those trade terms that occur in them.
func TestWordsOfTheAnswers(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Draw(t, v, s, 120, 38)
	text := strings.Join(v.text, "\n")
	for _, want := range []string{"Words\n", "brake: all leads joined", "absorption: the volts", "full water: the wheel"} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "gale: ")
}

// Where the winding finds no steady temperature, no figure is shown for what it would bring. between is
// the text in some columns of a frame.
func between(frame string, from, to int) string {
	lines := strings.Split(frame, "\n")
	for i, line := range lines {
		cells := []rune(line)
		lines[i] = string(cells[min(from, len(cells)):min(to, len(cells))])
	}
	return strings.Join(lines, "\n")
}

func TestWhatBurnsBringsNothing(t *testing.T) {
	text, err := os.ReadFile("../../testdata/jobs/water.toml")
	require.NoError(t, err)
	s, v := session.New(job.Parse(string(text)), "", job.Mark{}), New()
	table := func() string { return strings.Join(v.table(s).Lines(s.Theme, 70), "\n") }
	assert.NotContains(t, table(), "burns")
	s.Type("machine.rise", "40")
	assert.Regexp(t, `net amps, A +burns ✗`, table())
}

// A ratio typed with both its sides is kept as typed, with its value behind it; among the first things
// it is listed below pulleys and teeth, which it can replace.
func TestAWrittenRatioSaysHowItIsRead(t *testing.T) {
	s, v := session.NewExample(), New()
	tuitest.Draw(t, v, s, 100, 40)
	require.True(t, v.GoTo(s, "drive.ratio"))
	tuitest.Press(t, v, s, 100, 40, "1 : 1 . 5 enter")
	tuitest.Press(t, v, s, 100, 40, "up")
	assert.Regexp(t, `Ratio +\[1:1\.5\] +◆ = 1\.50 `, tuitest.Draw(t, v, s, 100, 40))
	assert.Equal(t, 1.5, s.Job().Drive.Ratio.Value)
	tuitest.Press(t, v, s, 100, 40, "up 1 : 3 enter")
	assert.Contains(t, tuitest.Words(between(tuitest.Draw(t, v, s, 100, 50), 0, inputCells)), "a ratio goes into the field Ratio instead")
}

// A remedy without rewinding is reported, and beside it what prevents a new winding: an engine too weak
// for a trial is helped by a regulator alone.
func TestWhatMendsWithoutRewindingIsTold(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/engine.toml")
	require.NoError(t, err)
	s, v := session.New(job.Parse(strings.Replace(string(data), "power_w = 2000", "power_w = 475", 1)), "", job.Mark{}), New()
	tuitest.Draw(t, v, s, 120, 37)
	text, told := tuitest.Words(strings.Join(v.text, "\n")), 0
	for _, o := range s.Outcome().Trials {
		if o.Calmer != "" && o.InTheWay != "" {
			told++
			assert.Contains(t, text, "would do better: "+tuitest.Words(o.Calmer))
			assert.Contains(t, text, tuitest.Words(o.InTheWay))
		}
	}
	assert.Equal(t, 2, told)
}

// While keys go to the answers beside the inputs, the marked input keeps its mark, like any marked row
// without the focus, but is not drawn as the focus.
func TestTheInputsAreHeldWhileAnswersAreRead(t *testing.T) {
	s, v := session.NewExample(), New()
	s.Theme, _ = kit.Theme{}.WithLook("contrast")
	marked := func() string {
		for line := range strings.Lines(tuitest.Draw(t, v, s, 120, 37)) {
			if strings.Contains(line, "Through") {
				return strings.SplitAfter(line, "belt")[0]
			}
		}
		return ""
	}
	tuitest.Press(t, v, s, 120, 37, "down")
	assert.Equal(t, 2, strings.Count(marked(), "\x1b[7m"), "the mark and the choice")
	tuitest.Press(t, v, s, 120, 37, "ctrl+g")
	assert.Contains(t, marked(), "▸ \x1b[1mThrough")
	assert.NotContains(t, marked(), "\x1b[7m")
	tuitest.Press(t, v, s, 120, 37, "ctrl+g")
	assert.Equal(t, 2, strings.Count(marked(), "\x1b[7m"))
}

// A ratio of stages shows its value and which typed values it uses. If pulleys typed beside it
// disagree, it is doubted there; slip that has no effect is not marked as measured. The typed text is
// shown whole at every width, before its value.
func TestARatioOfStagesSaysWhatWasTaken(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n[drive]\nkind = \"water\"\nthrough = \"belt\"\nusual_rpm = 25\nratio = \"6 x 5.714\"\nslip = 0.02\ndriver_mm = 600\ndriven_mm = 100\n"), "", job.Mark{}), New()
	tuitest.Draw(t, v, s, 100, 40)
	require.True(t, v.GoTo(s, "drive.ratio"))
	shown := tuitest.Words(tuitest.Draw(t, v, s, 160, 40))
	assert.Contains(t, shown, "[6 x 5.714] ◆ = 34.3")
	assert.Regexp(t, `Belt slip +0.02 ◆`, shown)
	assert.Contains(t, shown, "Taken as 32.9: 2 stages, belt: slip 4 %, loss 9.8 %")
	require.True(t, v.GoTo(s, "drive.driver"))
	assert.Contains(t, tuitest.Words(tuitest.Draw(t, v, s, 160, 40)), "pulleys of 600 mm driving 100 mm are 5.88 turns")
	s.Type("drive.ratio", "34.3")
	assert.NotRegexp(t, `Belt slip +0.02 +◆`, tuitest.Draw(t, v, s, 160, 40))
	s.Type("drive.ratio", "14/48 x 12/48")
	for _, wide := range []int{60, 80, 100, 120} {
		require.True(t, v.GoTo(s, "drive.kind"))
		assert.Contains(t, tuitest.Draw(t, v, s, wide, 30), "14/48 x 12/48", "%d", wide)
	}
}

// A winding's demand far above what the drive gives is cut where it leaves the picture, so that the
// crossing of the two is not squeezed down to the axis: a line from 0 to 1000 W over 0 to 100 rpm is at
// 150 W at 15 rpm.
func TestTheDrivesOwnWattsSetTheScale(t *testing.T) {
	line := []chart.XY{{X: 0, Y: 0}, {X: 100, Y: 1000}}
	assert.Equal(t, []chart.XY{{X: 0, Y: 0}, {X: 15, Y: 150}}, upTo(line, 150))
	assert.Equal(t, line, upTo(line, 1000))
	assert.Empty(t, upTo(line[1:], 150))
	assert.Equal(t, 1000.0, line[1].Y, "the line itself stays")
	assert.Equal(t, 90.0, highest([]chart.XY{{Y: 75}, {Y: 20}}, []chart.Marker{{Y: 90}}), "where it runs is always shown")
}

// The legs of the stored job give 110 W at most; a winding that asks for more is drawn up to twice that,
// 220 W, where its line ends.
func TestWhatIsTakenIsDrawnUpToTwiceWhatTheDriveGives(t *testing.T) {
	data, err := os.ReadFile("../../testdata/jobs/pedals.toml")
	require.NoError(t, err)
	s := session.New(job.Parse(string(data)), "", job.Mark{})
	s.Type("trial[1].turns", "40") // asks for far more
	c, any := chartOf(s, shaftWatts, 100, 20)
	require.True(t, any)
	gives, takes := 0.0, 0.0
	for _, line := range c.Series {
		for _, p := range line.Points {
			if line.Letter == "=" {
				gives = max(gives, p.Y)
			} else {
				takes = max(takes, p.Y)
			}
		}
	}
	for _, m := range c.Markers {
		require.LessOrEqual(t, m.Y, gives, "else the scale follows the mark")
	}
	assert.InDelta(t, 2*gives, takes, 1e-9)
}

// Amps that come only once a gust has started the rotor are drawn thin, and the legend says so; those of
// a rotor that starts by itself are not.
func TestAmpsThatNeedAGustAreThin(t *testing.T) {
	for name, gusts := range map[string]bool{"wind-trap": true, "hub-in-wind": false, "pedals": false} {
		text, err := os.ReadFile("../../testdata/jobs/" + name + ".toml")
		require.NoError(t, err)
		s := session.New(job.Parse(string(text)), "", job.Mark{})
		c, _ := chartOf(s, netAmps, 60, 20)
		last := c.Series[len(c.Series)-1]
		assert.Equal(t, gusts, last.Name == "only once started", name)
		for i, tr := range s.Outcome().Trials {
			for _, p := range tr.Points {
				thin := slices.ContainsFunc(c.Series[i].Thin, func(r [2]float64) bool { return r[0] <= p.X && p.X <= r[1] })
				assert.Equal(t, p.Gust, thin, "%s, %s at %g", name, tr.Name, p.X)
			}
		}
	}
}
