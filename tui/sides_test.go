package tui

import (
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"
	"slotwright/winding"
	"slotwright/winding/card"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/winding/wants"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// typeIn types a text into the marked field, letter by letter.
func (m *Model) typeIn(text string) {
	for _, letter := range text {
		m.gets(tuitest.KeyMsg(string(letter)))
	}
}

// A slot's width × depth is a parallel slot of that width and depth, in the file, in the fit and on the
// card, from Machine, from the first things and from Trials, in either unit; one undo removes it.
func TestWidthTimesDepthIsTheSlotsShape(t *testing.T) {
	for _, c := range []struct {
		typed       string
		inch        bool
		first       bool
		screen      string
		top, depth  string
		width, deep float64
	}{
		{"4.2x11", false, false, "Machine", "top_mm = 4.2\n", "depth_mm = 11\n", 4.2, 11},
		{"4.2 × 11 ±0.1", false, true, "Machine", `top_mm = "4.2 ±0.1"`, `depth_mm = "11 ±0.1"`, 4.2, 11},
		{"0.165x0.433", true, false, "Machine", "top_in = 0.165\n", "depth_in = 0.433\n", 4.191, 10.9982},
		{"5*10", false, false, "Trials", "top_mm = 5\n", "depth_mm = 10\n", 5, 10},
	} {
		s := session.New(job.Parse(strings.NewReplacer("shape = \"area\"\n", "").Replace(job.Example().Clear("slot.area").Clear("slot.shape").Clear("slot.depth_per_width").Text())), "", job.Mark{})
		s.Units = quantity.Choice{Inch: c.inch}
		m := opened(s, 120, 40, c.screen, "")
		m.goTo("slot.area")
		if c.screen == "Trials" {
			m.press("shift+tab tab home")
			for i, v := range m.views {
				if v.Name() == c.screen {
					m.bring(i)
				}
			}
			m.press("home")
		}
		if c.first {
			m.press("ctrl+f")
		}
		before := m.s.Document().Text()
		m.typeIn(c.typed)
		if c.screen == "Machine" {
			assert.Contains(t, m.View(), "["+c.typed, "not rewritten")
		}
		m.press("enter")
		text := m.s.Document().Text()
		assert.Contains(t, text, `shape = "parallel"`, c.typed)
		assert.Contains(t, text, c.top)
		assert.Contains(t, text, c.depth)
		slot := m.s.Job().Slot
		assert.InDelta(t, c.width, slot.TopMM.Value, 1e-9)
		assert.InDelta(t, c.deep, slot.DepthMM.Value, 1e-9)
		assert.False(t, slot.AreaMM2.Given())
		report := card.Report(m.s.Bench(), m.s.Outcome(), card.Options{})
		assert.NotContains(t, report, "only the area is given", c.typed)
		assert.Contains(t, plainLines(m.View()), "a parallel slot", "it is said")
		if c.screen == "Machine" {
			in, _ := job.InputAt("slot.depth")
			assert.Regexp(t, in.Label+`.*\n.*▸`, plainLines(m.View()), "what comes behind it is next")
		}
		m.press("ctrl+z")
		assert.Equal(t, before, m.s.Document().Text(), "one step")
	}
}

// The card's widths of wedge and liner follow the sides that were typed: they equal those of the same
// slot given in its own fields.
func TestTheCutListGoesByTheSidesTyped(t *testing.T) {
	bare := job.Example().Clear("slot.area").Clear("slot.shape")
	m := opened(session.New(bare, "", job.Mark{}), 120, 40, "Machine", "")
	m.goTo("slot.area")
	m.typeIn("4.2x11")
	m.press("enter")
	own := bare.Set("slot.shape", "parallel", quantity.Choice{}).Set("slot.top", "4.2", quantity.Choice{}).Set("slot.depth", "11", quantity.Choice{})
	want := winding.Evaluate(own.Job())
	require.NotEmpty(t, want.Trials)
	for i, trial := range want.Trials {
		assert.Equal(t, trial.WireFill, m.s.Outcome().Trials[i].WireFill)
	}
	assert.Equal(t, want.Machine, m.s.Outcome().Machine)
}

// Undo of a slot's width × depth marks the area, where they were typed, though shape, width and depth
// changed too; undo of a choice of its shape marks the shape.
func TestUndoOfASlotsSidesMarksWhereTheyWereTyped(t *testing.T) {
	for path, typed := range map[string]string{"slot.area": "4.2x11", "slot.shape": "parallel"} {
		m := opened(session.NewExample(), 120, 40, "Machine", "")
		m.goTo(path)
		m.typeIn(typed)
		m.press("enter ctrl+home")
		in, _ := job.InputAt(path)
		assert.NotContains(t, plainLines(m.View()), "▸ "+in.Label)
		m.press("ctrl+z")
		assert.Contains(t, plainLines(m.View()), "▸ "+in.Label, path)
	}
}

// Undo marks what it undid, if the screen shows it, and redo what it redid.
func TestUndoMarksWhatItUndid(t *testing.T) {
	for screen, path := range map[string]string{"Machine": "machine.bore", "Drive": "battery.cells"} {
		m := opened(session.NewExample(), 120, 40, screen, "")
		m.goTo(path)
		m.press("1 2 enter ctrl+home")
		in, _ := job.InputAt(path)
		assert.NotContains(t, plainLines(m.View()), "▸ "+in.Label)
		m.press("ctrl+z")
		assert.Contains(t, plainLines(m.View()), "▸ "+in.Label)
		m.press("ctrl+home ctrl+y")
		assert.Contains(t, plainLines(m.View()), "▸ "+in.Label)
	}
}

// Going past the last card or before the first says which one that is.
func TestTheLastCardIsSaid(t *testing.T) {
	m := opened(session.NewExample(), 120, 40, "Card", "")
	last := len(m.s.Outcome().Trials)
	for range last {
		m.press("]")
	}
	assert.Contains(t, plainLines(m.View()), "trial "+m.s.Outcome().Trials[last-1].Name+" is the last")
	for range last {
		m.press("[")
	}
	assert.Contains(t, plainLines(m.View()), "trial "+m.s.Outcome().Trials[0].Name+" is the first")
}

// All readings with the old winding turning are asked in the order of the bench.
func TestSpinUpReadingsAreInOneOrder(t *testing.T) {
	var names []string
	for _, in := range job.InputsOf("spin") {
		names = append(names, in.Name)
	}
	assert.Equal(t, []string{"speed", "line", "field", "frequency"}, names[:4])
	m := opened(blankJob(), 100, 50, "Machine", "")
	m.s.Edit(m.s.Document().Set("field.kind", "wound", m.s.Units).Set("old.turns", "8", m.s.Units).Add("spin", -1))
	var first []string
	j := m.s.Job()
	for _, w := range wants.Of(&j) {
		if name, ok := strings.CutPrefix(w.Path, "spin[0]."); ok {
			first = append(first, name)
		}
	}
	assert.Equal(t, names[:len(first)], first)
}
