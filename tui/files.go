package tui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"

	"slotwright/tui/kit"
	"slotwright/winding/card"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
)

// save writes the job to its file, or asks for a name.
func (m *Model) save() tea.Cmd {
	if m.s.Path == "" {
		m.askPath()
		return nil
	}
	m.saveTo("", nil)
	return nil
}

// saveTo writes the job and, when that worked, goes on.
func (m *Model) saveTo(path string, then func() tea.Cmd) tea.Cmd {
	old := m.s.Path
	if err := m.s.Save(path); err != nil {
		m.s.Warn(err.Error())
		if errors.Is(err, job.ErrChanged) && path == "" {
			m.askPath()
		}
		return nil
	}
	m.store.Drop(old)
	m.store.Drop(m.s.Path)
	m.store.SetLast(m.s.Path)
	m.kept = m.s.Document().Text()
	if then != nil {
		return then()
	}
	return nil
}

// askPath asks where to save.
func (m *Model) askPath() { m.askPathThen(nil) }

func (m *Model) askPathThen(then func() tea.Cmd) {
	name := m.s.Path
	if name == "" {
		name = fileName(m.s.Job().Name) + ".toml"
	}
	m.prompt = newPrompt("Save the job as", name, func(text string) tea.Cmd {
		text = strings.TrimSpace(text)
		if text == "" {
			return nil
		}
		if _, err := os.Stat(text); err == nil && text != m.s.Path {
			m.s.Warn(text + " exists already; nothing was written. Choose another name.")
			return nil
		}
		return m.saveTo(text, then)
	})
}

// askCard asks where to write the winding card of the chosen trial.
func (m *Model) askCard() {
	o := m.s.Outcome()
	if len(o.Trials) == 0 {
		m.s.Say("there is no trial to write a card of")
		return
	}
	base := fileName(m.s.Job().Name)
	if m.s.Path != "" {
		base = strings.TrimSuffix(m.s.Path, filepath.Ext(m.s.Path))
	}
	name := base + "-card-" + fileName(o.Trials[m.s.Trial].Name) + ".txt"
	m.prompt = newPrompt("Write the winding card of trial "+o.Trials[m.s.Trial].Name+" to", name, m.writeCard)
}

// writeCard writes the card; a file that is there is asked about first.
func (m *Model) writeCard(path string) tea.Cmd {
	path = strings.TrimSpace(path)
	if path == "" {
		return nil
	}
	doc := m.s.Document()
	text := card.Text(m.s.Bench(), m.s.Outcome(), m.s.Trial, card.Options{ASCII: m.s.Theme.ASCII, Units: m.s.Units, Document: &doc})
	write := func() tea.Cmd {
		if _, err := job.Save(path, text, job.Mark{}, false); err != nil {
			m.s.Warn(err.Error())
		} else {
			m.s.Say("card written to " + path)
		}
		return nil
	}
	if _, err := os.Stat(path); err != nil {
		return write()
	}
	m.ask(kit.Modal{Title: "Write over it?", Body: []string{path + " is there already."}, Options: []kit.Option{
		{ID: "over", Key: "w", Label: "write over"}, {ID: "", Key: "c", Label: "cancel"},
	}, Cursor: 1}, func(answer string) tea.Cmd {
		if answer == "over" {
			return write()
		}
		return nil
	})
	return nil
}

func (m *Model) ask(q kit.Modal, then func(string) tea.Cmd) { m.question, m.then = q, then }

// quit leaves, after asking when there is unsaved work.
func (m *Model) quit() tea.Cmd {
	if !m.s.Dirty() {
		m.store.Drop(m.s.Path)
		return tea.Quit
	}
	m.ask(kit.Modal{Title: "Leave?", Body: []string{"There is work that is in no file yet."}, Options: []kit.Option{
		{ID: "save", Key: "s", Label: "save and leave"},
		{ID: "drop", Key: "d", Label: "leave without it"},
		{ID: "", Key: "c", Label: "stay"},
	}, Cursor: 2}, func(answer string) tea.Cmd {
		leave := func() tea.Cmd { return tea.Quit }
		switch answer {
		case "save":
			if m.s.Path == "" {
				m.askPathThen(leave)
				return nil
			}
			return m.saveTo("", leave)
		case "drop":
			m.store.Drop(m.s.Path)
			return tea.Quit
		}
		return nil
	})
	return nil
}

// keepUnsaved writes unsaved work to the state folder.
func (m *Model) keepUnsaved() {
	text := m.s.Document().Text()
	if text == m.kept {
		return
	}
	m.kept = text
	if m.s.Dirty() {
		m.store.Put(m.s.Path, text)
	} else {
		m.store.Drop(m.s.Path)
	}
}

// KeepUnsaved is for whoever runs the program, when it ends without being asked to.
func (m *Model) KeepUnsaved() { m.kept = ""; m.keepUnsaved() }

// offerRecovered asks whether to bring back what an earlier session left unsaved.
func (m *Model) offerRecovered() {
	text, ok := m.store.Recovered(m.s.Path)
	if !ok || text == m.s.Document().Text() {
		return
	}
	m.ask(kit.Modal{Title: "Unsaved work", Body: []string{"An earlier session ended with unsaved work on this job."}, Options: []kit.Option{
		// Leaving the question (esc) is its last option: it must lose nothing.
		{ID: "drop", Key: "d", Label: "drop it"}, {ID: "back", Key: "b", Label: "bring it back"},
	}, Cursor: 1}, func(answer string) tea.Cmd {
		if answer == "back" {
			m.s.Restore(text)
		} else {
			m.store.Drop(m.s.Path)
		}
		return nil
	})
}

// fileName makes a plain file name of a job's name.
func fileName(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			b.WriteRune(r)
		case b.Len() > 0 && !strings.HasSuffix(b.String(), "-"):
			b.WriteByte('-')
		}
	}
	if s := strings.Trim(b.String(), "-"); s != "" {
		return s
	}
	return "job"
}
