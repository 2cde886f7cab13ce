package tui

import (
	"fmt"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"
	"slotwright/winding/job/running"

	tea "github.com/charmbracelet/bubbletea"
)

// keepAfter is the time from the first unkept change until unsaved work is written to the state folder:
// a power cut loses at most a second of work, however fast one types.
const keepAfter = time.Second

// keepAgainAfter is the time from a failure to the next try.
const keepAgainAfter = 5 * time.Second

// unsaved is what the program knows of work that is in no file.
type unsaved struct {
	store  recovery.Store
	keeper *recovery.Keeper
	kept   string // the text last written to the state folder, or found in the file
	failed bool   // it could not be written, which has been said
	timing bool   // a timer runs
	// offers are copies that an earlier session left and that are not answered for yet; only an answer
	// removes them.
	offers []recovery.Copy
	// back are copies that were brought back: they go when the work is kept elsewhere.
	back    []recovery.Copy
	met     map[int]bool // the other windows that were named
	parting string       // what to say when the program has left
}

// keepNow says that it is time to keep the unsaved work.
type keepNow struct{}

// newUnsaved announces this session. The error says why nothing can be kept.
func newUnsaved(store recovery.Store, path, text string) (unsaved, error) {
	keeper, err := store.Begin(path)
	return unsaved{store: store, keeper: keeper, kept: text, failed: err != nil, met: map[int]bool{}}, err
}

// beginKeeping says what prevents keeping, and offers what was kept.
func (m *Model) beginKeeping(err error) {
	if err != nil {
		m.notify(true, "unsaved work cannot be kept: "+err.Error())
	}
	m.nameOthers()
	copies, damaged := m.store.Offers(m.s.Path)
	for _, c := range copies {
		if c.Text == m.s.Document().Text() {
			_ = m.store.Discard(c) // it is in the file
			continue
		}
		m.offers = append(m.offers, c)
	}
	for _, d := range damaged {
		m.notify(true, fmt.Sprintf("kept work is damaged (%v) and was left where it is: %s", d.Why, d.File))
	}
	m.offer()
}

// nameOthers names the windows on this job that were not named before.
func (m *Model) nameOthers() {
	for _, o := range m.keeper.Others() {
		if m.met[o.By.PID] {
			continue
		}
		m.met[o.By.PID] = true
		where := ""
		if o.State() == running.Elsewhere {
			where = " on " + o.By.Host
		}
		m.notify(true, fmt.Sprintf("this job is open in another window too (process %d%s, since %s): who saves second is asked", o.By.PID, where, when(o.Kept)))
	}
}

// when is a moment as a person says it: the time today, else with its day.
func when(t time.Time) string {
	t = t.Local()
	if y, d := t.Year(), t.YearDay(); y == time.Now().Year() && d == time.Now().YearDay() {
		return t.Format("15:04")
	}
	return t.Format("2 January 2006, 15:04")
}

// offer asks about the next copy, whether to bring it back.
func (m *Model) offer() {
	if len(m.offers) == 0 {
		return
	}
	c := m.offers[0]
	m.ask(kit.Modal{Title: "Unsaved work", Body: m.offerWords(c), Options: []kit.Option{
		// Leaving the question (esc) is its last option: it must lose nothing.
		{ID: "drop", Key: "d", Label: "drop it"}, {ID: "later", Key: "l", Label: "leave it for later"}, {ID: "back", Key: "b", Label: "bring it back"},
	}, Cursor: 2}, func(answer string) tea.Cmd {
		switch answer {
		case "back":
			m.s.Restore(c.Text, c.Base, session.HalfTyped{Path: c.Typing, Before: c.Before})
			m.back, m.offers = append(m.back, c), nil
			m.keepUnsaved()
			return nil
		case "drop":
			if err := m.store.Discard(c); err != nil {
				m.s.Warn("it could not be dropped: " + err.Error())
			}
		}
		m.offers = m.offers[1:]
		m.offer()
		return nil
	})
	m.leaving = true // ctrl+c leaves it for later, and the program
}

// offerWords says whose work it is, from when, and what has become of the file since.
func (m *Model) offerWords(c recovery.Copy) []string {
	who := fmt.Sprintf("process %d, which has ended", c.By.PID)
	if c.State() == running.Elsewhere {
		who = fmt.Sprintf("process %d on %s, which may still run there", c.By.PID, c.By.Host)
	}
	words := []string{fmt.Sprintf("An earlier session ended with unsaved work on this job. Kept %s by %s.", when(c.Kept), who)}
	if m.s.Path != "" && c.Base != m.s.Mark() {
		words = append(words, "The file has been changed since: what you bring back is not written over it unless you say so.")
	}
	if n := len(m.offers) - 1; n > 0 {
		words = append(words, fmt.Sprintf("%d more will be asked about.", n))
	}
	return words
}

// keepInTime starts the timer after a change, unless it runs.
func (m *Model) keepInTime(after time.Duration) tea.Cmd {
	if m.timing {
		return nil
	}
	m.timing = true
	return m.tick(after, func(time.Time) tea.Msg { return keepNow{} })
}

// timeToKeep keeps what there is, and tries again later when that failed.
func (m *Model) timeToKeep() tea.Cmd {
	m.timing = false
	if m.keepUnsaved(); m.failed {
		return m.keepInTime(keepAgainAfter)
	}
	m.nameOthers()
	return nil
}

// Keep is called by the program's owner when it is put to sleep and may never wake.
func (m *Model) Keep() { m.keepUnsaved() }

// keepUnsaved writes unsaved work to the state folder, or removes its copy when there is none any more.
// A failure is reported once.
func (m *Model) keepUnsaved() {
	if m.s.Document().Text() == m.kept && m.keeper.Typing == m.halfTyped() {
		return
	}
	err := m.keep(m.keeper.Put)
	if err != nil && !m.failed {
		m.notify(true, "unsaved work cannot be kept: "+err.Error())
	}
	m.failed = err != nil
}

func (m *Model) keep(put func(string, job.Mark) error) error {
	text, typing := m.s.Document().Text(), m.halfTyped()
	if m.keeper.Typing, m.keeper.Before = typing, ""; typing != "" {
		m.keeper.Before = m.s.SaidBefore()
	}
	if !m.s.Dirty() {
		if err := m.keeper.Drop(); err != nil {
			return err
		}
	} else {
		if err := put(text, m.s.Mark()); err != nil {
			return err
		}
		m.letGo()
	}
	m.kept = text
	return nil
}

// halfTyped is the field into which a value is being typed that was not taken yet; "" for none.
func (m *Model) halfTyped() string {
	if path := m.s.BeingTyped(); path != "" && m.editing() {
		return path
	}
	return ""
}

// letGo removes the copies that were brought back: the work is elsewhere now.
func (m *Model) letGo() {
	for _, c := range m.back {
		_ = m.store.Discard(c)
	}
	m.back = nil
}

// forget removes what this session kept, because it is saved or not wanted.
func (m *Model) forget() {
	_ = m.keeper.Drop()
	m.letGo()
	m.kept = m.s.Document().Text()
}

// isSaved continues after the job has been written to a file.
func (m *Model) isSaved() {
	m.forget()
	if err := m.keeper.Move(m.s.Path); err != nil && !m.failed {
		m.failed = true
		m.notify(true, "unsaved work cannot be kept from now on: "+err.Error())
	}
	_ = m.store.SetLast(m.s.Path)
	if m.chose { // maybe before it had this file
		m.store.SetUnits(m.s.Path, m.s.Units)
	}
}

// KeepUnsaved is called by the program's owner when it ends without being asked to. It says what has
// become of unsaved work, "" when there is none; ok is false when it is lost.
func (m *Model) KeepUnsaved() (words string, ok bool) {
	// A copy of this very text that was written before is as good.
	if err := m.keep(m.keeper.PutLast); err != nil && m.s.Dirty() && m.kept != m.s.Document().Text() {
		return "unsaved work could not be kept: " + err.Error(), false
	}
	if m.s.Dirty() || len(m.offers) > 0 {
		return "unsaved work is offered again next time", true
	}
	return "", true
}

// leaveUnseen leaves where no question can be seen: unsaved work is kept. If it cannot be, the program
// stays.
func (m *Model) leaveUnseen() tea.Cmd {
	words, ok := m.KeepUnsaved()
	if !ok {
		m.s.Warn(words)
		return nil
	}
	m.parting = words
	return tea.Quit
}

// End is called by the program's owner when it has ended. It returns what there is to say.
func (m *Model) End() string {
	m.keeper.End()
	return m.parting
}
