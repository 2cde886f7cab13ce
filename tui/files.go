package tui

import (
	"errors"
	"fmt"
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
	return m.saveTo(saving{})
}

// saving is one request to save: where to ("" is the job's own file), what has been agreed to, and what
// comes after.
type saving struct {
	path   string
	typed  string // the path as it was typed
	agreed job.Consent
	then   func() tea.Cmd
}

// saveTo writes the job and, if that worked, continues. If not, it gives the reason and asks the next
// best thing: the work stays, and so does what was typed.
func (m *Model) saveTo(w saving) tea.Cmd {
	m.nameAfter(w.path)
	err := m.s.Save(w.path, w.agreed)
	typed := w.path
	if typed == "" {
		typed = m.s.Path
	}
	switch {
	case err == nil:
		m.isSaved()
		if w.then != nil {
			return w.then()
		}
		return nil
	case errors.Is(err, job.ErrReadOnly):
		m.askOver(w, typed, reasonOf(err), job.OverReadOnly)
	case errors.Is(err, job.ErrChanged) && typed == m.s.Path && w.path != "":
		m.askOver(w, typed, "Something else has changed it since it was opened here. What was written there would be lost.", job.OverChanged)
	case errors.Is(err, job.ErrChanged) && w.path == "":
		m.askPathFor(w, otherName(typed), err.Error())
	default:
		m.askPathFor(w, kit.Either(w.typed != "", w.typed, typed), err.Error())
	}
	return nil
}

// nameAfter names a job that has no name yet after the file it is saved to.
func (m *Model) nameAfter(path string) {
	if text, _, _ := m.s.Document().Typed("name"); path == "" || text != "" {
		return
	}
	name := strings.TrimSuffix(filepath.Base(path), filepath.Ext(path))
	if d := m.s.Document().Set("name", name, m.s.Units); d.Refused() == "" {
		m.s.Edit(d)
	}
}

// reasonOf is why a file was not written, as a sentence without its path.
func reasonOf(err error) string {
	why := err.Error()
	if of := new(job.FileError); errors.As(err, &of) {
		why = of.Reason
	}
	return strings.ToUpper(why[:1]) + why[1:] + "."
}

// askOver asks whether to overwrite a file.
func (m *Model) askOver(w saving, typed, why string, consent job.Consent) {
	m.ask(kit.Modal{Title: "Write over it?", Body: []string{typed, why}, Options: []kit.Option{
		{ID: "over", Key: "w", Label: "write over"}, {ID: "other", Key: "n", Label: "another name"}, {ID: "", Key: "c", Label: "cancel"},
	}, Cursor: 2}, func(answer string) tea.Cmd {
		switch answer {
		case "over":
			w.agreed |= consent
			return m.saveTo(w)
		case "other":
			m.askPathFor(w, otherName(typed), "")
		}
		return nil
	})
}

// otherName is a name beside a path that is not taken.
func otherName(path string) string {
	ext := filepath.Ext(path)
	for n := 2; n < 1000; n++ {
		name := fmt.Sprintf("%s-%d%s", strings.TrimSuffix(path, ext), n, ext)
		if _, err := os.Lstat(name); err != nil {
			return name
		}
	}
	return path
}

// askPath asks where to save.
func (m *Model) askPath() { m.askPathThen(nil) }

func (m *Model) askPathThen(then func() tea.Cmd) {
	name := m.s.Path
	switch {
	case name == "" && m.copyOf != "":
		name = otherName(m.copyOf)
	case name == "":
		name = fileName(m.s.Job().Name) + ".toml"
	}
	m.askPathFor(saving{then: then}, name, "")
}

// askPathFor asks where to save, with a name to begin from and the reason why.
func (m *Model) askPathFor(w saving, name, why string) {
	m.prompt = newPrompt("Save the job as", name, func(text string) tea.Cmd {
		path, err := home(strings.TrimSpace(text))
		if path == "" {
			return nil
		}
		if err != nil {
			m.askPathFor(w, text, err.Error())
			return nil
		}
		path = asJob(path)
		there, gone := os.Stat(path)
		if gone == nil && path != m.s.Path {
			why := "there is such a file already, and it was left as it is; choose another name: " + path
			if there.IsDir() {
				why = "this is a folder; put the file's name behind it: " + path
			}
			m.askPathFor(w, text, why)
			return nil
		}
		next := saving{path: path, typed: text, then: w.then}
		if gone != nil {
			next.agreed = job.Anew
		}
		return m.saveTo(next)
	})
	m.prompt.why, m.prompt.files = why, jobFiles
}

// asJob is a path that is listed among jobs: one without an extension, that is no folder, gets theirs.
func asJob(path string) string {
	if info, err := os.Stat(path); filepath.Ext(path) != "" || err == nil && info.IsDir() {
		return path
	}
	return path + ".toml"
}

// home expands a path with ~/ in front, as a shell does.
func home(path string) (string, error) {
	rest, ok := strings.CutPrefix(path, "~/")
	if !ok {
		return path, nil
	}
	dir, err := os.UserHomeDir()
	if err != nil {
		return path, errors.New("there is no home folder for ~; write the whole path")
	}
	return filepath.Join(dir, rest), nil
}

// askCard asks where to write the winding card of the chosen trial.
func (m *Model) askCard() {
	o := m.s.Outcome()
	if len(o.Trials) == 0 {
		m.s.Say("there is no trial to write a card of")
		return
	}
	name := m.besideJob() + "-card-" + fileName(o.Trials[m.s.Trial].Name) + ".txt"
	m.prompt = newPrompt("Write the winding card of trial "+o.Trials[m.s.Trial].Name+" to", name, m.writeCard)
}

// besideJob is the beginning of the names of files written for the job.
func (m *Model) besideJob() string {
	if m.s.Path != "" {
		return strings.TrimSuffix(m.s.Path, filepath.Ext(m.s.Path))
	}
	return fileName(m.s.Job().Name)
}

// writeCard writes the card; a file that is there is asked about first.
func (m *Model) writeCard(typed string) tea.Cmd {
	path, err := home(strings.TrimSpace(typed))
	if path == "" {
		return nil
	}
	again := func(err error) {
		m.prompt = newPrompt("Write the winding card to", typed, m.writeCard)
		m.prompt.why = err.Error()
	}
	if err != nil {
		again(err)
		return nil
	}
	doc := m.s.Document()
	text := card.Text(m.s.Bench(), m.s.Outcome(), m.s.Trial, card.Options{ASCII: m.s.Theme.ASCII, Units: m.s.Units, Document: &doc})
	write := func() tea.Cmd {
		if _, err := job.Write(path, text, job.Mark{}, job.OverChanged); err != nil {
			again(err)
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

func (m *Model) ask(q kit.Modal, then func(string) tea.Cmd) {
	m.question, m.then, m.leaving = q, then, false
}

// quit leaves, after asking when there is unsaved work.
func (m *Model) quit() tea.Cmd {
	if !m.s.Dirty() {
		m.forget()
		return tea.Quit
	}
	cmd := m.whenSafe("Leave?", "leave", func() tea.Cmd { m.forget(); return tea.Quit })
	m.leaving = true
	return cmd
}

// whenSafe continues when there are no changes that would be lost, or after asking.
func (m *Model) whenSafe(title, verb string, on func() tea.Cmd) tea.Cmd {
	if !m.s.Dirty() {
		return on()
	}
	what := "changes not saved to " + filepath.Base(m.s.Path)
	if m.s.Path == "" {
		what = "changes not saved to any file"
	}
	body := []string{"There are " + what + "."}
	if verb == "leave" {
		body = append(body, "ctrl+c or q once more leaves; they are offered again next time.")
	}
	m.ask(kit.Modal{Title: title, Body: body, Options: []kit.Option{
		{ID: "save", Key: "s", Label: "save and " + verb},
		{ID: "drop", Key: "d", Label: verb + " without them"},
		{ID: "", Key: "c", Label: "stay"},
	}, Cursor: 2}, func(answer string) tea.Cmd {
		switch {
		case answer == "save" && m.s.Path == "":
			m.askPathThen(on)
		case answer == "save":
			return m.saveTo(saving{then: on})
		case answer == "drop":
			m.forget()
			return on()
		}
		return nil
	})
	return nil
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
