package kit_test

import (
	"fmt"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// themes are all four themes by the name used in golden files.
var themes = map[string]kit.Theme{
	"colour":       {Colour: true},
	"plain":        {},
	"ascii":        {ASCII: true},
	"colour-ascii": {Colour: true, ASCII: true},
}

var bindings = []kit.Binding{
	kit.Bind("File", "ctrl+s", "save", "Write the file.", func() {}),
	kit.Bind("Moving", "up k", "up", "Go up one line.", func() {}),
	kit.Bind("Moving", "] right", "more", "One more of whatever the line counts; with a longer text that has to be wrapped in a narrow window.", func() {}),
	kit.Bind("File", "space", "", "hidden", func() {}),
	kit.Bind("Nothing", "", "none", "", func() {}),
}

// ask is a question with three answers.
func ask(title string, body ...string) kit.Modal {
	return kit.Modal{Title: title, Body: body, Cursor: 2, Options: []kit.Option{
		{ID: "yes", Key: "y", Label: "yes"}, {ID: "no", Key: "n", Label: "no"}, {ID: "cancel", Key: "c", Label: "cancel"},
	}}
}

func sampleTable() kit.Table {
	return kit.Table{
		Margin: true,
		Columns: []kit.Column{
			{Head: "", Role: kit.Label, Shrink: true}, {Head: "A", Align: kit.Point, Role: kit.Value},
			{Head: "B", Align: kit.Point, Role: kit.Value}, {Head: "better", Shrink: true, Min: 6},
		},
		Rows: []kit.TableRow{
			{Heading: "What comes out"},
			{Focus: true, Cells: []kit.Cell{{Text: "resistance"}, {Text: "0.482", Unit: "Ω", Mark: kit.Measured}, {Text: "12.5", Unit: "mΩ"}, {Text: "B by 3 %", Role: kit.Better}}},
			{Cells: []kit.Cell{{Text: "turns"}, {Text: "48"}, {Text: "—", Mark: kit.Broken}}},
			{Cells: []kit.Cell{{Text: "wire"}, {Text: "0.71", Unit: "mm"}, {Text: "does not fit", Role: kit.Broken}, {Text: "same"}}},
		},
	}
}

// sampleFrame is a whole screen with everything on it.
func sampleFrame(t kit.Theme, w, h int, modal bool) string {
	s := kit.NewScreen(t, w, h)
	top, rest := s.Rect().SplitTop(2)
	body, foot := rest.SplitBottom(1)
	cols := body.Columns(1, 3, 2)
	table := sampleTable()
	right := cols[1].Rows(0, 1, 1)
	s.Put(kit.Bare(t, top, []string{kit.Bar(t, w, "stator 7 · 36 slots", "not saved"), kit.Tabs(t, w, []string{"Stator", "Drive", "Trials", "Layout", "Proof"}, 2)}))
	s.Put(kit.Panel{Title: "Trials", Note: "A is the reference", Foot: "1 of 4", Focused: true}.Draw(t, cols[0], table.Lines(t, kit.Inner(cols[0]).W)))
	s.Put(kit.Box(t, right[0], "Help", kit.HelpLines(t, kit.Inner(right[0]).W, bindings)))
	in := kit.Inner(right[1])
	s.Put(kit.Box(t, right[1], "Marks", kit.Window(t, t.MarkLegend(), 8, in.W, in.H)))
	s.Put(kit.Bare(t, foot, []string{kit.StatusLine(t, w, "saved", bindings)}))
	if modal {
		s.Put(ask("Leave?", "There is work that is not saved. Leaving without saving keeps it as a recovery copy.").Draw(t, s.Rect()))
	}
	return s.String()
}

func TestFrameGolden(t *testing.T) {
	tuitest.Golden(t, "kit-frame", sampleFrame(kit.Theme{}, 80, 24, false))
	tuitest.Golden(t, "kit-frame-ascii", sampleFrame(kit.Theme{ASCII: true}, 80, 24, false))
	tuitest.Golden(t, "kit-modal", sampleFrame(kit.Theme{}, 80, 24, true))
	tuitest.GoldenStyled(t, "kit-modal-styles", sampleFrame(kit.Theme{Colour: true}, 80, 24, true))
	tuitest.Golden(t, "kit-toosmall", kit.TooSmall(kit.Theme{}, 40, 6, 80, 24))
}

// Each role has its look. Better and worse are blue and red, which people with red-green colour
// blindness can tell apart.
func TestRoles(t *testing.T) {
	looks := map[kit.Role]string{
		kit.Plain: "", kit.Title: "bold", kit.Label: "", kit.Value: "bold", kit.Unit: "faint", kit.Hint: "",
		kit.Warning: "bold magenta", kit.Broken: "bold red", kit.Better: "bold", kit.Worse: "",
		kit.Chosen: "bold underlined", kit.Focus: "reversed", kit.Dim: "faint", kit.Border: "faint", kit.Key: "bold",
		kit.Measured: "bright blue", kit.Derived: "faint", kit.Guessed: "magenta", kit.Needed: "bold magenta",
		kit.Series1: "bright blue", kit.Series2: "red", kit.Series3: "grey", kit.Series4: "bright magenta", kit.Series5: "magenta", kit.Series6: "bright red",
		kit.PhaseU: "bold bright blue", kit.PhaseV: "red", kit.PhaseW: "grey",
	}
	th := kit.Theme{Colour: true}
	for role := kit.Plain; role <= kit.PhaseW; role++ {
		want, named := looks[role]
		require.True(t, named, "%d", role)
		for _, painted := range []string{th.Paint(role, "ab"), th.Style(role).Render("ab")} {
			assert.Equal(t, "ab", ansi.Strip(painted))
			if runs := tuitest.Runs(painted); want == "" {
				assert.Empty(t, runs)
			} else {
				assert.Equal(t, []tuitest.Run{{From: 0, To: 2, Style: want}}, runs, "%d", role)
			}
		}
		assert.Equal(t, "ab", kit.Theme{}.Paint(role, "ab"), "no colour, no sequence")
	}
	seen := map[string]bool{}
	for i := range 6 {
		seen[looks[kit.Series(i)]] = true
	}
	assert.Len(t, seen, 6, "every series has its own")
}

// Colour must add sequences and nothing else: everything is conveyed by characters.
func TestColourOnlyAddsSequences(t *testing.T) {
	for _, ascii := range []bool{false, true} {
		coloured := sampleFrame(kit.Theme{Colour: true, ASCII: ascii}, 100, 30, true)
		plain := sampleFrame(kit.Theme{ASCII: ascii}, 100, 30, true)
		assert.Equal(t, plain, ansi.Strip(coloured))
		assert.NotContains(t, plain, "\x1b")
		if ascii {
			for i, r := range plain {
				require.Less(t, r, rune(0x7f), "byte %d", i)
			}
		}
	}
}

func TestFrameHasItsSizeAtEverySize(t *testing.T) {
	step := 1
	if testing.Short() {
		step = 7
	}
	themeList := []kit.Theme{{Colour: true}, {ASCII: true}, {}}
	for w := 1; w <= 220; w += step {
		for h := 1; h <= 70; h += step {
			th := themeList[(w+h)%len(themeList)]
			tuitest.CheckFrame(t, sampleFrame(th, w, h, h%2 == 0), w, h)
			if t.Failed() {
				t.Fatalf("at %d x %d", w, h)
			}
		}
	}
}

func TestTooSmallAtEverySize(t *testing.T) {
	for w := 0; w <= 90; w++ {
		for h := 0; h <= 24; h++ {
			tuitest.CheckFrame(t, kit.TooSmall(kit.Theme{Colour: true}, w, h, 80, 24), w, h)
			require.False(t, t.Failed(), "at %d x %d", w, h)
		}
	}
	one := strings.Join(strings.Fields(kit.TooSmall(kit.Theme{}, 30, 5, 80, 24)), " ")
	assert.Contains(t, one, "30×5")
	assert.Contains(t, one, "80×24")
}

// Each state of a thing must look different without colour.
func TestNoTwoStatesLookTheSame(t *testing.T) {
	for _, th := range []kit.Theme{{}, {ASCII: true}} {
		seen := map[string]kit.Role{}
		for _, r := range []kit.Role{kit.Better, kit.Worse, kit.Broken, kit.Warning, kit.Chosen, kit.Focus, kit.Measured, kit.Derived, kit.Guessed} {
			m := th.Mark(r)
			require.Equal(t, 1, kit.Width(m))
			_, twice := seen[m]
			if th.ASCII && r == kit.Focus || !twice {
				seen[m] = r
				continue
			}
			t.Errorf("roles %d and %d share %q", seen[m], r, m)
		}
		r := kit.Rect{W: 30, H: 3}
		assert.NotEqual(t, kit.Box(th, r, "x", nil).Lines, kit.Panel{Title: "x", Focused: true}.Draw(th, r, nil).Lines)
		m := ask("q")
		m2, _ := m.Key("left")
		assert.NotEqual(t, m.Draw(th, r).Lines, m2.Draw(th, r).Lines)
	}
}

func TestOverlayKeepsWhatIsBeside(t *testing.T) {
	th := kit.Theme{Colour: true}
	s := kit.NewScreen(th, 12, 1)
	s.Put(kit.Bare(th, kit.Rect{W: 12, H: 1}, []string{th.Paint(kit.Broken, "日本語日本語")}))
	s.Put(kit.Bare(th, kit.Rect{X: 3, W: 4, H: 1}, []string{"abcd"}))
	assert.Equal(t, "日 abcd 本語", ansi.Strip(s.String()))
	assert.Equal(t, 12, ansi.StringWidth(s.String()))
	assert.Contains(t, s.String(), "\x1b[0m abcd"[:4])
}

func TestPutIsClipped(t *testing.T) {
	th := kit.Theme{}
	s := kit.NewScreen(th, 5, 2)
	s.Put(kit.Bare(th, kit.Rect{X: -2, Y: -1, W: 20, H: 9}, []string{"", "0123456789", "abcdefghij"}))
	assert.Equal(t, "23456\ncdefg", s.String())
	s.Put(kit.Bare(th, kit.Rect{X: 9, W: 3, H: 1}, []string{"zzz"}))
	assert.Equal(t, "23456\ncdefg", s.String())
}

func BenchmarkFrame(b *testing.B) {
	for _, size := range [][2]int{{80, 24}, {120, 40}} {
		b.Run(fmt.Sprint(size[0], "x", size[1]), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				sampleFrame(kit.Theme{Colour: true}, size[0], size[1], false)
			}
		})
	}
}
