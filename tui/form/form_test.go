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
	assert.Equal(t, row.Label+" "+row.Help, help, "what is wrong stands at the row")
	assert.Contains(t, strings.Join(strings.Fields(strings.Join(f.Lines(plain, 76, 20), " ")), " "), row.Error)
}

// A doubt is shown whole behind its value or not at all: the row's box has it.
func TestADoubtIsNeverCut(t *testing.T) {
	rows := sampleRows()
	rows[len(rows)-1].Warning = "thin for the 12 A that the plate speaks of; take thicker wire, or two in hand"
	for w := 40; w < 100; w++ {
		f := NewForm(rows)
		text := strings.Join(f.Lines(kit.Theme{}, w, 30), "\n")
		if !strings.Contains(text, rows[len(rows)-1].Warning) {
			require.NotContains(t, text, "thin for", w)
		}
	}
}

// The box of a row marks a doubt as the row itself is marked: ! where it is to be looked at again, ✗ where it cannot be.
func TestTheBoxMarksADoubtAsItsRow(t *testing.T) {
	rows := sampleRows()
	for grave, mark := range map[bool]string{false: kit.Theme{}.Mark(kit.Warning), true: kit.Theme{}.Mark(kit.Broken)} {
		rows[0].Text, rows[0].Warning, rows[0].Grave = "34", "thin", grave
		f := NewForm(rows).FocusID(rows[0].ID)
		assert.Contains(t, strings.Join(f.Explain(kit.Theme{}, 60), "\n"), mark+" thin")
		assert.Contains(t, strings.Split(strings.Join(f.Lines(kit.Theme{}, 60, 20), "\n"), "thin")[0], mark)
	}
	assert.NotEqual(t, kit.Theme{}.Mark(kit.Warning), kit.Theme{}.Mark(kit.Broken))
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
	}{
		{f.By(-1), "name"}, {f.By(1), "slots"}, {f.By(99), "wire"}, {f.By(99).By(-3), "stack"},
		{f.Section(1), "slots"}, {f.Section(1).Section(1), "join"}, {f.Section(1).Section(1).Section(1), "wire"},
		{f.By(3).Section(-1), "slots"}, {f.By(1).Section(-1), "name"}, {f.Section(-1), "name"},
	} {
		assert.Equal(t, step.want, step.to.Focused().ID, i)
		assert.False(t, step.to.Editing())
	}
	assert.Equal(t, "name", f.Focused().ID, "an older copy stays as it was")
}

// Typing and pasting replace the value, a blank opens it, a backspace removes its last letter;
// accepting moves to the next field, leaving restores the old text.
func TestTypingReplacesAndEnterEdits(t *testing.T) {
	slots := NewForm(sampleRows()).FocusID("slots")
	f, edit, used := slots.Key(typed("4"))
	assert.True(t, used)
	assert.Equal(t, Edit{Changed: true, ID: "slots", Text: "4"}, edit)
	f, edit, _ = f.Key(typed("2"))
	assert.Equal(t, "42", edit.Text)
	assert.Equal(t, "36", slots.Focused().Text, "an older copy stays as it was")
	left, edit := f.Leave()
	assert.Equal(t, Edit{Changed: true, ID: "slots", Text: "36", Done: true}, edit)
	assert.Equal(t, "slots", left.Focused().ID)
	took, edit := f.Take()
	assert.Equal(t, Edit{ID: "slots", Done: true}, edit)
	assert.Equal(t, "bore", took.Focused().ID)
	assert.False(t, took.Editing())

	f = slots.Edit()
	f, edit, _ = f.Key(typed("4"))
	assert.Equal(t, "364", edit.Text)
	f, _, _ = f.Key(press(tea.KeyLeft))
	_, edit, _ = f.Key(press(tea.KeyBackspace))
	assert.Equal(t, "34", edit.Text)
	_, edit, _ = slots.Key(press(tea.KeyBackspace))
	assert.Equal(t, "3", edit.Text)
	f, edit, _ = slots.Key(tea.KeyMsg{Type: tea.KeySpace, Runes: []rune(" ")})
	assert.False(t, edit.Changed)
	assert.True(t, f.Editing())
	f, edit, _ = slots.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("18"), Paste: true})
	assert.Equal(t, "18", edit.Text, "a paste opens it")
	assert.True(t, f.Editing())
	for _, msg := range []tea.KeyMsg{typed("<35;1;1M"), press(tea.KeyF5), {Type: tea.KeyRunes, Runes: []rune("x"), Alt: true}} {
		next, edit, _ := slots.Key(msg)
		assert.Equal(t, Edit{}, edit)
		assert.False(t, next.Editing())
	}

	rows := sampleRows()
	rows[1].Text, rows[1].Warning = "34", "doubtful"
	f = slots.Edit().WithRows(rows)
	assert.Equal(t, "slots", f.Focused().ID)
	assert.True(t, f.Editing())
	f = f.WithRows(rows[2:])
	assert.NotEmpty(t, f.Focused().ID, "the row has gone: some other has the focus")
	assert.False(t, f.Editing())
}

// A row with choices lists them when opened; typing selects, and text that no choice begins with is
// reported.
func TestChoicesAreListed(t *testing.T) {
	join := NewForm(sampleRows()).FocusID("join")
	f, edit, _ := join.Key(typed("d"))
	assert.True(t, f.Picking())
	assert.False(t, edit.Changed)
	shown := strings.Join(f.List.Draw(kit.Theme{}, kit.Rect{W: 60, H: 12}).Lines, "\n")
	assert.Contains(t, shown, "delta")
	f, edit, _ = f.Key(press(tea.KeyEnter))
	assert.Equal(t, Edit{Changed: true, ID: "join", Text: "delta", Done: true}, edit)
	assert.Equal(t, "wire", f.Focused().ID)

	f, _, _ = join.Key(typed("7"))
	assert.Contains(t, strings.Join(f.List.Draw(kit.Theme{}, kit.Rect{W: 60, H: 12}).Lines, "\n"), "nothing here has")
	left, edit, _ := f.Key(press(tea.KeyEsc))
	assert.False(t, edit.Changed)
	assert.False(t, left.Picking())
	_, edit, _ = f.Key(press(tea.KeyEnter))
	assert.Equal(t, Edit{Changed: true, ID: "join", Text: "7", Done: true}, edit, "what is typed is never lost")
	_, edit, _ = join.Key(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("delta\n"), Paste: true})
	assert.Equal(t, "delta", edit.Text, "a paste that is a choice is taken")
	f, edit, _ = join.Edit().Key(press(tea.KeyEnd))
	_, edit, _ = f.Key(press(tea.KeyEnter))
	assert.Equal(t, Edit{Changed: true, ID: "join", Text: "", Done: true}, edit, "the last says nothing")

	f, edit = join.Step(1)
	assert.Equal(t, "delta", edit.Text)
	_, edit = f.Step(1)
	assert.Equal(t, "star", edit.Text)
	_, edit = join.Step(-1)
	assert.Equal(t, "delta", edit.Text)
	_, edit = join.Step(-2)
	assert.Equal(t, Edit{}, edit, "round again")
	_, edit = NewForm(sampleRows()).Step(1)
	assert.Equal(t, Edit{}, edit, "a text has no choices")
}

// Figures typed on a list without a value begin a value in the next field below that takes figures; but
// not over an existing value, not in another section, not past a list that is waited for.
func TestFiguresTypedOnAListGoToTheFieldBelow(t *testing.T) {
	rows := func() []Row {
		return []Row{
			{ID: "stator", Group: "A", Label: "Stator", Ghost: "slots", Choices: []string{"slots", "flat"}},
			{ID: "runs", Group: "A", Label: "Runs", Ghost: "inside", Choices: []string{"inside", "outside"}},
			{ID: "bore", Group: "A", Label: "Bore"},
		}
	}
	key := func(rows []Row, msg tea.KeyMsg) (Form, Edit) {
		f, edit, _ := NewForm(rows).Key(msg)
		return f, edit
	}
	for _, msg := range []tea.KeyMsg{typed("9"), typed("~"), {Type: tea.KeyRunes, Runes: []rune("92.5"), Paste: true}} {
		f, edit := key(rows(), msg)
		assert.Equal(t, Edit{Changed: true, ID: "bore", Text: string(msg.Runes)}, edit)
		assert.True(t, f.Open)
	}
	for name, change := range map[string]func([]Row){
		"said": func(r []Row) { r[0].Text = "slots" }, "waited for": func(r []Row) { r[0].Needed = true }, "over a list waited for": func(r []Row) { r[1].Needed = true },
		"full": func(r []Row) { r[2].Text = "90" }, "elsewhere": func(r []Row) { r[2].Group = "B" }, "a choice": func(r []Row) { r[0].Choices[1] = "9" },
	} {
		list := rows()
		change(list)
		f, edit := key(list, typed("9"))
		assert.Equal(t, Edit{}, edit, name)
		assert.True(t, f.Picking(), name)
		assert.Equal(t, "stator", f.Focused().ID, name)
	}
	f, _ := key(rows(), typed("f"))
	assert.True(t, f.Picking(), "a letter picks")
}

// A click finds the row drawn there.
func TestRowsAreFoundByTheirCell(t *testing.T) {
	th := kit.Theme{}
	for _, size := range [][2]int{{60, 5}, {76, 12}, {130, 9}} {
		w, h := size[0], size[1]
		for focus := range sampleRows() {
			f := NewForm(sampleRows()).By(focus)
			found := map[int]bool{}
			for y, line := range f.Lines(th, w, h) {
				for x := range w {
					if i, ok := f.RowAt(th, w, h, x, y); ok {
						found[i] = true
						at := line
						if w >= 104 && x > w/2 {
							at = line[len(line)/2:]
						}
						if f.Rows[i].Error == "" {
							require.Contains(t, at, f.Rows[i].Label[:4], "%v %d,%d", size, x, y)
						}
					}
				}
			}
			require.True(t, found[focus], "%v %d", size, focus)
		}
	}
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

// A choice is found by its synonyms.
func TestAChoiceIsFoundByItsOtherNames(t *testing.T) {
	for typed, want := range map[string]string{"trap": "tapered", "lith": "lfp"} {
		row := Row{ID: "x", Label: "X", Choices: []string{"area", "tapered", "flooded", "lfp"}}
		list := kit.Choice{Options: choices(row), Typed: typed}.Matching()
		if assert.NotEmpty(t, list, typed) {
			assert.Equal(t, want, list[0].ID)
		}
	}
}
