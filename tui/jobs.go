package tui

import (
	"os"
	"path/filepath"
	"strings"

	"slotwright/tui/session"
	"slotwright/tui/shelf"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
)

// newJob begins an empty job.
func (m *Model) newJob() tea.Cmd {
	return m.whenSafe("A new job?", "begin anew", func() tea.Cmd {
		m.change(session.New(job.Parse(job.Template("")), "", job.Mark{}))
		m.s.Say("a new job: the few things that matter first, in the order of the bench")
		return nil
	})
}

// example opens the built-in one.
func (m *Model) example() tea.Cmd {
	return m.whenSafe("Open the example?", "open it", func() tea.Cmd {
		m.change(session.NewExample())
		return nil
	})
}

// duplicate continues in a copy of the job that is in no file yet, on the same screen. Unsaved changes
// go with it, so nothing is asked: the file that was open stays as it is.
func (m *Model) duplicate() tea.Cmd {
	was, left := "the example", ""
	if m.s.Path != "" {
		was = filepath.Base(m.s.Path)
	}
	if m.s.Dirty() {
		was += " with what was not saved"
	}
	of, screen := m.s.Path, m.active
	dup, without := m.s.Duplicate()
	if without {
		left = " without what was wound"
	}
	m.change(dup)
	m.copyOf = of
	m.show(screen)
	m.fit()
	m.s.Say("a copy of " + was + left + ", in no file yet: ctrl+s writes it; its name and what differs are yours to change")
	return nil
}

// askOpen asks which job to open: it offers those opened last, else those of this folder.
func (m *Model) askOpen() {
	m.prompt = newPrompt("Open a job", "", m.open)
	m.prompt.files = jobFiles
	open, _ := filepath.Abs(m.s.Path)
	for _, path := range m.store.Recent() {
		if whole, _ := filepath.Abs(path); m.s.Path == "" || whole != open {
			m.prompt.recent = append(m.prompt.recent, path)
		}
	}
	if len(m.prompt.recent) == 0 {
		m.prompt.recent = filesLike("", jobFiles)
	}
}

// folderSays is why a folder is not opened, and what to do.
const folderSays = "this is a folder; ↓ goes through the jobs in it, or type on"

// jobAt is the path of a job as typed, with or without its extension; folder says that it is a folder.
func jobAt(path string) (file string, folder bool) {
	info, err := os.Stat(path)
	switch {
	case err == nil:
		return path, info.IsDir()
	case filepath.Ext(path) == "":
		if _, err := os.Stat(path + ".toml"); err == nil {
			return path + ".toml", false
		}
	}
	return path, false
}

// open opens the job at a path that was typed. If that fails, what was typed stays.
func (m *Model) open(typed string) tea.Cmd {
	again := func(why string) {
		m.askOpen()
		m.prompt = m.prompt.with(typed)
		m.prompt.why = why
	}
	path, err := home(strings.TrimSpace(typed))
	switch {
	case path == "":
		return nil
	case err != nil:
		again(err.Error())
		return nil
	}
	path, folder := jobAt(path)
	if folder {
		typed = strings.TrimSuffix(strings.TrimSpace(typed), string(filepath.Separator)) + string(filepath.Separator)
		again(folderSays)
		return nil
	}
	if _, _, err := job.Load(path); err != nil {
		again(err.Error())
		return nil
	}
	return m.whenSafe("Open "+filepath.Base(path)+"?", "open it", func() tea.Cmd {
		// Read only now: the answer may have saved the work that was open to this very file.
		d, mark, err := job.Load(path)
		if err != nil {
			again(err.Error())
			return nil
		}
		m.change(session.New(d, path, mark))
		m.s.ChooseForemost()
		_ = m.store.SetLast(path)
		return nil
	})
}

// nextOf is the next job modelled on one in a file, and where it is written; or why there is none.
func nextOf(path string) (next job.Document, to, why string) {
	old, _, err := job.Load(path)
	to = otherName(path)
	next = old.From(strings.TrimSuffix(filepath.Base(to), filepath.Ext(to)))
	switch {
	case err != nil:
		return next, to, err.Error()
	case len(old.Problems()) > 0:
		return next, to, "it has a problem, which a new job would have too; open it and mend that first: " + old.Problems()[0].Error()
	}
	return next, to, next.Refused()
}

// beginFrom begins the next job from a job on the shelf, in a file beside it that is written when it is
// saved.
func (m *Model) beginFrom(path string) tea.Cmd {
	if _, _, why := nextOf(path); why != "" {
		m.s.Warn(why)
		return nil
	}
	return m.whenSafe("A new job from "+filepath.Base(path)+"?", "begin it", func() tea.Cmd {
		// Read only now: the answer may have saved the work that was open to this very file.
		next, to, why := nextOf(path)
		if why != "" {
			m.s.Warn(why)
			return nil
		}
		s := session.NewCopy(next)
		s.Path = to
		m.change(s)
		m.goTo("name")
		m.s.Say("a new job from " + filepath.Base(path) + ": what was read on that piece is empty; ctrl+s writes it to " + to)
		return nil
	})
}

// askFolder asks which folder the shelf lists.
func (m *Model) askFolder(now string) {
	m.prompt = newPrompt("List the jobs of which folder", now, func(typed string) tea.Cmd {
		path, err := home(strings.TrimSpace(typed))
		if err != nil {
			m.s.Warn(err.Error())
			return nil
		}
		for _, v := range m.views {
			if v, ok := v.(*shelf.View); ok && path != "" {
				v.Show(filepath.Clean(path))
			}
		}
		return nil
	})
	m.prompt.files = func(string) bool { return false } // folders only
}

// change switches to another job: the person's display choices stay, except for the units, which are
// the job's; what this session kept of the one before is dropped.
func (m *Model) change(to *session.Session) {
	to.Theme, to.Units, to.Wires = m.s.Theme, m.store.Units(to.Path, to.Document()), m.s.Wires
	m.keeper.End()
	parting := m.parting
	m.copyOf, m.chose = "", false
	m.begin(to)
	m.parting = parting
	m.fit()
}
