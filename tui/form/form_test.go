package form

import (
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func sampleRows() []Row {
	return []Row{
		{ID: "name", Label: "Name", Text: "washing machine, grey"},
		{ID: "slots", Group: "Stator", Label: "Slots", Text: "36", Mark: kit.Measured},
		{ID: "bore", Group: "Stator", Label: "Bore", Unit: "mm", Text: "52,4x", Help: "Across the teeth, with a caliper, at two places a quarter turn apart.", Error: "cannot read \"52,4x\": write a number, for example 52.4"},
		{ID: "stack", Group: "Stator", Label: "Stack length", Unit: "mm", Ghost: "35", Mark: kit.Guessed},
		{ID: "area", Group: "Stator", Label: "Slot area", Unit: "mm²", Text: "98.2", Mark: kit.Derived},
		{ID: "join", Group: "Winding", Label: "Joined in", Text: "star", Choices: []string{"star", "delta"}},
		{ID: "wire", Group: "Winding", Label: "Wire", Text: "18 AWG", Warning: "thin for 12 A"},
	}
}

func TestFormGolden(t *testing.T) {
	plain, colour := kit.Theme{}, kit.Theme{Colour: true}
	f := NewForm(sampleRows()).FocusID("bore")
	tuitest.GoldenLines(t, "form-one", f.Lines(plain, 76, f.Height(plain, 76)))
	tuitest.GoldenStyled(t, "form-one-styles", strings.Join(f.Lines(colour, 76, f.Height(colour, 76)), "\n"))
	tuitest.GoldenLines(t, "form-two", f.FocusID("join").Lines(plain, 130, 9))
	help := strings.Join(strings.Fields(strings.Join(f.HelpLines(plain, 40), " ")), " ")
	row := f.Focused()
	assert.Equal(t, row.Label+" ✗ "+row.Error+" "+row.Help, help)
}

func TestFormSizes(t *testing.T) {
	f := NewForm(sampleRows())
	step := 1
	if testing.Short() {
		step = 5
	}
	for w := 1; w <= 220; w += step {
		for h := 1; h <= 30; h += step {
			f = f.FocusID(f.Rows[(w+h)%len(f.Rows)].ID)
			for _, th := range []kit.Theme{{Colour: true}, {ASCII: true}} {
				lines := f.Lines(th, w, h)
				tuitest.CheckLines(t, lines, w, h)
				require.False(t, t.Failed(), "%d x %d", w, h)
			}
			if w >= 30 {
				text := strings.Join(f.Lines(kit.Theme{}, w, h), "\n")
				require.Contains(t, text, "▸ "+f.Focused().Label[:4], "the focused row shows at %d x %d", w, h)
			}
		}
	}
}

func TestFormColourOnlyAddsSequences(t *testing.T) {
	f := NewForm(sampleRows()).FocusID("join")
	for _, w := range []int{76, 130} {
		assert.Equal(t, f.Lines(kit.Theme{}, w, 20), strings.Split(ansi.Strip(strings.Join(f.Lines(kit.Theme{Colour: true}, w, 20), "\n")), "\n"))
	}
}

func TestFormFocus(t *testing.T) {
	f := NewForm(sampleRows())
	for i, step := range []struct {
		to   Form
		want string
		at   int
	}{
		{f.By(-1), "name", 21}, {f.By(1), "slots", 2}, {f.By(99), "wire", 6}, {f.By(99).By(-3), "stack", 0},
		{f.By(2).Home(), "bore", 0}, {f.By(2).Home().End(), "bore", 5}, {f.By(2).Home().Home(), "name", 21},
		{f.By(2).End(), "wire", 6}, {f.By(5).Home(), "name", 21}, {f.By(5).End(), "wire", 6},
	} {
		assert.Equal(t, step.want, step.to.Focused().ID, i)
		assert.Equal(t, step.at, step.to.Cursor, i)
	}
	assert.Equal(t, "name", f.Focused().ID, "an older copy stays as it was")
}

func TestFormEdits(t *testing.T) {
	f := NewForm(sampleRows()).FocusID("slots")
	old := f
	f, edit, used := f.Key(typed("4"))
	assert.True(t, used)
	assert.Equal(t, Edit{true, "slots", "364"}, edit)
	f, _, _ = f.Key(press(tea.KeyLeft))
	f, edit, _ = f.Key(press(tea.KeyBackspace))
	assert.Equal(t, Edit{true, "slots", "34"}, edit)
	assert.Equal(t, "36", old.Focused().Text, "an older copy stays as it was")

	rows := sampleRows()
	rows[1].Text, rows[1].Warning = "34", "doubtful"
	f = f.WithRows(rows)
	assert.Equal(t, "slots", f.Focused().ID)
	assert.Equal(t, 1, f.Cursor)
	f = f.WithRows(rows[2:])
	assert.NotEmpty(t, f.Focused().ID, "the row has gone: some other has the focus")

	f = NewForm(sampleRows()).FocusID("join")
	assert.False(t, f.Typing())
	f, edit = f.Step(1)
	assert.Equal(t, Edit{true, "join", "delta"}, edit)
	f, edit = f.Step(1)
	assert.Equal(t, Edit{true, "join", "star"}, edit)
	_, edit = f.Step(-1)
	assert.Equal(t, Edit{true, "join", "delta"}, edit)
	_, edit = f.Step(-2)
	assert.Equal(t, Edit{}, edit, "round again")
	_, edit = NewForm(sampleRows()).Step(1)
	assert.Equal(t, Edit{}, edit, "a text has no choices")
	_, edit, used = f.Key(typed("x"))
	assert.Equal(t, Edit{}, edit)
	assert.False(t, used, "a letter on a choice row is the owner's")

	_, edit, used = NewForm(sampleRows()).Key(typed("<35;1;1M"))
	assert.Equal(t, Edit{}, edit)
	assert.True(t, used)
}

func TestEmptyForm(t *testing.T) {
	for _, f := range []Form{{}, NewForm(nil), {Focus: 9}} {
		for _, msg := range []tea.KeyMsg{press(tea.KeyDown), press(tea.KeyHome), press(tea.KeyPgDown), typed("x"), press(tea.KeyTab)} {
			_, edit, _ := f.Key(msg)
			assert.False(t, edit.Changed)
		}
		tuitest.CheckLines(t, f.Lines(kit.Theme{}, 30, 3), 30, 3)
		f.HelpLines(kit.Theme{}, 30)
	}
}

func BenchmarkForm(b *testing.B) {
	f := NewForm(sampleRows())
	b.ReportAllocs()
	for b.Loop() {
		f.Lines(kit.Theme{Colour: true}, 80, 20)
	}
}
