package tui

import (
	"fmt"
	"strings"

	"slotwright/tui/kit"
	"slotwright/winding/drawing"

	tea "github.com/charmbracelet/bubbletea"
)

// askDrawing asks where to write the drawing of the chosen trial.
func (m *Model) askDrawing() {
	o := m.s.Outcome()
	if len(o.Trials) == 0 {
		m.s.Say("there is no trial to draw")
		return
	}
	name := m.besideJob() + "-drawing-" + fileName(o.Trials[m.s.Trial].Name)
	m.askDrawingAs(name, "")
}

// askDrawingAs asks with a name to begin from and the reason why.
func (m *Model) askDrawingAs(name, why string) {
	trial := m.s.Outcome().Trials[m.s.Trial].Name
	m.prompt = newPrompt("Write the drawing of trial "+trial+" to", name, m.writeDrawing)
	m.prompt.why = why
	m.prompt.note = "SVG to print, on " + drawing.PaperFor(m.s.Units).Name + ", a file a page: the winding unrolled, the face of the stator, a slot, the amps. Each puts its word behind the name."
}

// writeDrawing draws the trial, all sheets; it asks before replacing older drawings, and leaves any
// other file as it is.
func (m *Model) writeDrawing(typed string) tea.Cmd {
	path, err := home(strings.TrimSpace(typed))
	if path == "" {
		return nil
	}
	var files []drawing.File
	var older []string
	if err == nil {
		files, err = drawing.Files(m.pages(), path)
	}
	if err == nil {
		older, err = drawing.Older(files)
	}
	if err != nil {
		m.askDrawingAs(typed, err.Error())
		return nil
	}
	write := func() tea.Cmd {
		if err := drawing.Save(files); err != nil {
			m.askDrawingAs(typed, err.Error())
		} else {
			m.s.Say(drawingSays(files))
		}
		return nil
	}
	if len(older) == 0 {
		return write()
	}
	body := append([]string{"Older drawings are there already:"}, older...)
	m.ask(kit.Modal{Title: "Draw over them?", Body: body, Options: []kit.Option{
		{ID: "over", Key: "w", Label: "write over"}, {ID: "other", Key: "n", Label: "another name"}, {ID: "", Key: "c", Label: "cancel"},
	}, Cursor: 2}, func(answer string) tea.Cmd {
		switch answer {
		case "over":
			return write()
		case "other":
			m.askDrawingAs(typed, "")
		}
		return nil
	})
	return nil
}

// pages are all sheets of the chosen trial.
func (m *Model) pages() []*drawing.Page {
	opt := drawing.Options{Paper: drawing.PaperFor(m.s.Units), Units: m.s.Units, ASCII: m.s.Theme.ASCII}
	return drawing.Pages(m.s.Bench(), m.s.Outcome(), m.s.Trial, drawing.All, opt)
}

// drawingSays is what was written, and what could not be drawn on it.
func drawingSays(files []drawing.File) string {
	first, last := files[0].Path, files[len(files)-1].Path
	says := fmt.Sprintf("drawing written, %d files: %s to %s", len(files), first, last)
	for _, f := range files {
		if f.NotDrawn != "" {
			says += fmt.Sprintf("; nothing is drawn on %s: %s", f.Sheet, f.NotDrawn)
		}
	}
	return says
}
