package tui

import (
	"os"
	"path/filepath"
	"testing"

	"slotwright/tui/session"
	"slotwright/winding/drawing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// drawings are the existing files of a drawing, those whose names begin with base.
func drawings(t *testing.T, base string) (texts []string) {
	t.Helper()
	for _, s := range drawing.All {
		text, err := os.ReadFile(base + "-" + string(s) + ".svg")
		if err == nil {
			texts = append(texts, string(text))
		}
	}
	return texts
}

// The drawing of the chosen trial is written from the screen as the command-line verb writes it, on
// Letter paper where figures are in inches.
func TestTheDrawingIsWritten(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, screen := range []string{"Card", "Layout", "Trials"} {
		m := opened(session.NewExample(), 100, 30, screen, "")
		m.s.Choose(1)
		m.press("W")
		assert.Contains(t, m.View(), "Write the drawing of trial B to")
		assert.Contains(t, m.View(), "on A4, a file a page")
		m.press("enter")
		assert.Contains(t, m.View(), "drawing written, 4 files: mill-race-alternator-drawing-b-unrolled.svg")
		texts := drawings(t, "mill-race-alternator-drawing-b")
		require.Len(t, texts, 4, screen)
		assert.Contains(t, texts[1], "trial B: Stator from the connection end")
		assert.Contains(t, texts[1], `width="210mm"`)
		files, err := drawing.Files(drawing.Pages(m.s.Bench(), m.s.Outcome(), 1, drawing.All, drawing.Options{Paper: drawing.A4}), "other")
		require.NoError(t, err)
		require.NoError(t, drawing.Save(files))
		assert.Equal(t, drawings(t, "other"), texts)
		for _, f := range texts {
			require.NotEmpty(t, f)
		}
		for _, s := range drawing.All {
			_ = os.Remove("mill-race-alternator-drawing-b-" + string(s) + ".svg")
		}
	}
	m := opened(session.NewExample(), 80, 24, "Card", "")
	m.s.Units.Inch = true
	m.press("W l e t t e r enter")
	texts := drawings(t, "letter")
	require.Len(t, texts, 4)
	assert.Contains(t, texts[1], `width="215.9mm"`)
}

// The command is found by its name, where letters begin values too.
func TestTheDrawingByName(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, words := range []string{"d r a w", "s v g"} {
		m := opened(session.NewExample(), 80, 24, "Machine", "ctrl+p "+words+" enter")
		assert.Contains(t, m.View(), "Write the drawing of trial A to", words)
	}
}

// Existing drawings are asked about, other files are kept, and an unusable name stays so that it can be
// corrected, with a sentence that says why.
func TestADrawingLosesNothing(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, os.Mkdir("folder", 0o700))
	require.NoError(t, os.WriteFile("mine-slot.svg", []byte("<svg>my own</svg>"), 0o600))
	m := opened(session.NewExample(), 80, 24, "Card", "")
	for typed, why := range map[string]string{
		"mine": "it is no drawing of ours", "folder": "this is a folder", "none/x": "there is no folder", "x.pdf": "drawings are SVG",
	} {
		m.s.ClearMessage()
		m.press("W")
		m.gets(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(typed), Paste: true})
		m.press("enter")
		require.NotNil(t, m.prompt, typed)
		assert.Equal(t, typed, m.prompt.line.Text)
		assert.Contains(t, m.prompt.why, why)
		m.press("esc")
		left, err := filepath.Glob("*")
		require.NoError(t, err)
		assert.Equal(t, []string{"folder", "mine-slot.svg"}, left, typed)
	}
	m.press("W a enter")
	before := drawings(t, "a")
	require.Len(t, before, 4)
	m.s.StepTurns(5)
	m.press("W a enter")
	assert.Contains(t, m.View(), "Draw over them?")
	assert.Contains(t, m.View(), "a-amps.svg")
	m.press("enter")
	assert.Equal(t, before, drawings(t, "a"), "enter alone cancels")
	m.press("W a enter n")
	assert.Contains(t, m.View(), "Write the drawing of trial A to")
	m.press("esc W a enter w")
	assert.NotEqual(t, before[2], drawings(t, "a")[2], "said so")
}

// For a job that has nothing to draw yet the message says what a sheet waits for.
func TestADrawingSaysWhatIsMissing(t *testing.T) {
	t.Chdir(t.TempDir())
	s := session.NewExample()
	s.Edit(s.Document().Clear("machine.slots"))
	m := opened(s, 100, 30, "Card", "W a enter")
	assert.Regexp(t, "nothing is drawn on unrolled: needs the number of slots", m.s.Message().Text)
	for s.Document().Count("trial") > 0 {
		s.Edit(s.Document().Remove("trial", 0))
	}
	m.press("W")
	assert.Contains(t, m.s.Message().Text, "there is no trial to draw")
}
