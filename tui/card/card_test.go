package card

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding/card"
	"slotwright/winding/job"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The screen shows exactly the text that is written to the file, all of it.
func TestTheCardAsItIsWritten(t *testing.T) {
	s, v := session.NewExample(), New()
	doc := s.Document()
	for _, size := range [][2]int{{80, 21}, {120, 37}} {
		w, h := size[0], size[1]
		seen := tuitest.Draw(t, v, s, w, h)
		require.Greater(t, len(v.lines), h)
		for range v.lines {
			tuitest.Press(t, v, s, w, h, "down")
			seen += "\n" + tuitest.Draw(t, v, s, w, h)
		}
		for _, line := range strings.Split(card.Text(s.Bench(), s.Outcome(), 0, card.Options{Document: &doc}), "\n") {
			require.Contains(t, seen, strings.TrimRight(line, " "))
		}
		last := tuitest.Draw(t, v, s, w, h)
		tuitest.Press(t, v, s, w, h, "home end j G")
		assert.Equal(t, last, tuitest.Draw(t, v, s, w, h), "down stops at the end")
		tuitest.Press(t, v, s, w, h, "home")
	}
}

// The report and each trial's card begin at their top.
func TestReportAndTrials(t *testing.T) {
	s, v := session.NewExample(), New()
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Trial A, as it will be written")
	tuitest.Press(t, v, s, 80, 21, "pgdown r")
	assert.Zero(t, v.scroll.Top)
	report := tuitest.Draw(t, v, s, 80, 21)
	assert.True(t, strings.HasPrefix(report, "Report "))
	doc := s.Document()
	assert.Equal(t, strings.Split(strings.TrimRight(card.Report(s.Bench(), s.Outcome(), card.Options{Document: &doc}), "\n"), "\n"), v.lines)
	tuitest.Press(t, v, s, 80, 21, "r ] pgdown")
	assert.Contains(t, tuitest.Draw(t, v, s, 80, 21), "Trial B, as it will be written")
	assert.Positive(t, v.scroll.Top)
	s.StepTurns(1)
	tuitest.Draw(t, v, s, 80, 21)
	assert.Positive(t, v.scroll.Top, "a change of the job does not lose the place")
	tuitest.Press(t, v, s, 80, 21, "] ]")
	assert.Equal(t, len(s.Outcome().Trials)-1, s.Trial, "no trial after the last")
	tuitest.Press(t, v, s, 80, 21, "[ [ [")
	assert.Zero(t, s.Trial)
	assert.Zero(t, v.scroll.Top)
	assert.False(t, v.Key(s, tuitest.KeyMsg("z")))
}

// Anything the text depends on renews it.
func TestTheCardFollows(t *testing.T) {
	s, v := session.NewExample(), New()
	texts := map[string]bool{}
	for _, change := range []func(){
		func() {}, func() { s.StepTurns(3) }, func() { s.Units.Inch = true }, func() { s.Units.Fahrenheit = true },
		func() { s.Theme = kit.Theme{ASCII: true} }, func() { s.Choose(1) },
	} {
		change()
		tuitest.Draw(t, v, s, 120, 37)
		texts[strings.Join(v.lines, "\n")] = true
	}
	assert.Len(t, texts, 6)
}

func TestWithoutTrials(t *testing.T) {
	s, v := session.New(job.Parse("format = 1\n"), "", job.Mark{}), New()
	for _, w := range []int{80, 120} {
		assert.Contains(t, tuitest.Draw(t, v, s, w, 21), "No trial yet, so no card.")
		tuitest.Press(t, v, s, w, 21, "] [ r down end home")
	}
}

// In a window narrower than the card the text is wrapped: nothing lies beyond its edge, on the card and
// in the report, and no key is needed to see the rest of a line.
func TestANarrowWindowFoldsTheCard(t *testing.T) {
	s, v := session.NewExample(), New()
	for _, key := range []string{"home", "r"} {
		tuitest.Press(t, v, s, 60, 17, key)
		seen := tuitest.Draw(t, v, s, 60, 17)
		for range v.lines {
			tuitest.Press(t, v, s, 60, 17, "down")
			seen += "\n" + tuitest.Draw(t, v, s, 60, 17)
		}
		for _, line := range v.lines {
			require.LessOrEqual(t, ansi.StringWidth(line), 60, line)
			require.Contains(t, seen, strings.TrimRight(line, " "))
		}
		for _, b := range v.Bindings(s) {
			assert.NotContains(t, b.Keys(), ">")
		}
	}
	tuitest.Draw(t, v, s, 80, 17)
	doc := s.Document()
	assert.Equal(t, card.Report(s.Bench(), s.Outcome(), card.Options{Document: &doc}), strings.Join(v.lines, "\n")+"\n", "as it is written where there is room")
}

// Capitals at the beginning of a line are heavier than the text after them, a rule is lighter, and no
// text is lost.
func TestWeights(t *testing.T) {
	th := kit.Theme{Colour: true}
	heavy := func(s string) string { return th.Paint(kit.Title, s) }
	for line, want := range map[string]string{
		"TURNS     17 in each coil":           heavy("TURNS") + "     17 in each coil",
		"ONE COIL  2.96 m":                    heavy("ONE COIL") + "  2.96 m",
		"READY TO WIND, BUT: Charging begins": heavy("READY TO WIND, BUT:") + " Charging begins",
		"! GUARDS. Guard belts":               th.Paint(kit.Warning, "!") + " " + heavy("GUARDS.") + " Guard belts",
		"WINDING CARD, TRIAL A   sheet 1":     heavy("WINDING CARD, TRIAL A") + "   sheet 1",
		"  THE MACHINE":                       heavy("  THE MACHINE"),
		"  Slots":                             "  Slots",
		"A coil lies":                         "A coil lies",
		"          15 AWG":                    "          15 AWG",
		"-----":                               th.Paint(kit.Border, "-----"),
		"":                                    "",
	} {
		assert.Equal(t, want, weigh(th, line), line)
		assert.Equal(t, line, ansi.Strip(weigh(th, line)))
	}
}

// The trade terms on the page are explained at the foot, and beside the card where there is room; the
// next step is named.
func TestWordsOfTheCard(t *testing.T) {
	s, v := session.NewExample(), New()
	frame := tuitest.Draw(t, v, s, 80, 22)
	lines := strings.Split(frame, "\n")
	assert.Contains(t, lines[0], "w writes it, W the drawing")
	assert.Equal(t, session.Explained(strings.Join(lines[1:21], "\n"))[0], strings.TrimSpace(lines[21]))
	first := strings.TrimSpace(lines[21])
	assert.NotEmpty(t, first)
	tuitest.Press(t, v, s, 80, 22, "end")
	assert.NotContains(t, tuitest.Draw(t, v, s, 80, 22), first, "it goes with what is read")
	tuitest.Press(t, v, s, 150, 58, "home")
	beside := tuitest.Words(tuitest.Draw(t, v, s, 150, 58))
	for _, want := range []string{"Words on this page", first[:20], "throw: the slots", "former: the block"} {
		assert.Contains(t, beside, want)
	}
	tuitest.Press(t, v, s, 200, 58, "home")
	under := tuitest.Words(tuitest.Draw(t, v, s, 200, 58))
	for _, want := range []string{first, "throw: the slots", "former: the block", "sheet 1 of 2", "sheet 2 of 2"} {
		assert.Contains(t, under, want, "two pages side by side, the words under both")
	}
}
