package tui

import (
	"fmt"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/recovery"
	"slotwright/tui/session"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
)

// The smallest terminal that everything fits.
const (
	needW = 60
	needH = 20
)

// Model is the program. It is a pointer type: views keep cursors and the session keeps the job, and
// nothing uses an older copy.
type Model struct {
	s *session.Session
	unsaved
	views    []session.View
	active   int
	cameFrom *int // the screen from which a field was visited, until another is chosen
	w, h     int

	// question is what must be answered first; then says what an answer does.
	question kit.Modal
	then     func(answer string) tea.Cmd
	// leaving is set while the question is whether to leave.
	leaving bool
	// list is a picker over the screen, such as the commands by name; picked does what its answer says.
	list   kit.Choice
	picked func(id string) tea.Cmd
	// prompt is a line to type, such as a file name.
	prompt *prompt
	// helping is set while the help page is open.
	helping bool
	scroll  kit.Scroll
	mouse   bool
	notices []notice
	// copyOf is the file that the job was copied from, while it has none itself.
	copyOf string
	// chose is set once units were chosen while this job is open.
	chose bool
	// tidier collects garbage between keys, where nobody waits for a frame.
	tidier *session.Tidier
	// tick gives a message after a time: [tea.Tick], except in tests, which do not wait.
	tick func(time.Duration, func(time.Time) tea.Msg) tea.Cmd
}

// New is the program on a session, with the views in their order.
func New(s *session.Session, store recovery.Store) *Model {
	m := &Model{unsaved: unsaved{store: store}, tick: tea.Tick}
	m.begin(s)
	return m
}

// begin starts on a session: its first screen, what was kept of it, what is wrong in it. A blank job
// opens where the work begins.
func (m *Model) begin(s *session.Session) {
	store := m.store
	m.s = s
	m.views, m.active = m.screens()
	if s.Empty() {
		m.active = 0
	}
	if n := len(s.Problems()) + s.Document().More(); n > 0 {
		key := kit.Either(m.view().Typing(s), "f3", "!")
		words := fmt.Sprintf("%d things in the file cannot be used; they stay in it until mended. %s lists them", n, key)
		if n == 1 {
			words = "one thing in the file cannot be used; it stays in it until mended. " + key + " says which"
		}
		m.notify(true, words)
	}
	var err error
	m.unsaved, err = newUnsaved(store, s.Path, s.Document().Text())
	m.beginKeeping(err)
}

// Init asks for nothing: the size arrives by itself.
func (m *Model) Init() tea.Cmd { return nil }

// Session is the open job, for whoever runs the program.
func (m *Model) Session() *session.Session { return m.s }

// Update routes a message.
func (m *Model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.w, m.h = msg.Width, msg.Height
		if m.w == 0 || m.h == 0 { // a terminal that does not know its size
			m.w, m.h = needW, needH
		}
		m.fit()
		return m, m.s.Working()
	case tea.KeyMsg:
		return m, together(together(m.keys(msg), m.s.Working()), m.tidy())
	case tea.MouseMsg:
		return m, together(m.point(msg), m.s.Working())
	case session.GoTo:
		m.goTo(msg.Path)
		m.fit()
		return m, m.s.Working()
	case session.Done:
		m.s.Take(msg)
		m.fit()
		return m, m.s.Working()
	case keepNow:
		cmd := m.timeToKeep()
		m.fit()
		return m, cmd
	}
	return m, nil
}

// Tidily lets the collector run between keys rather than during them.
func (m *Model) Tidily() { m.tidier = new(session.Tidier) }

func (m *Model) tidy() tea.Cmd {
	if m.tidier == nil {
		return nil
	}
	return m.tidier.After()
}

// together is two commands as one, nil when both are nil.
func together(a, b tea.Cmd) tea.Cmd {
	switch {
	case a == nil:
		return b
	case b == nil:
		return a
	}
	return tea.Batch(a, b)
}

// keys takes a message of one or several keys and starts the timer that keeps unsaved
// work when they changed something.
func (m *Model) keys(msg tea.KeyMsg) tea.Cmd {
	if kit.Garbage(msg) {
		return nil
	}
	before, typing := m.s.Document().Text(), m.halfTyped()
	var cmd tea.Cmd
	for _, k := range kit.ExpandKeys(msg, m.typing()) {
		if c := m.key(k); c != nil {
			cmd = c
		}
		m.fit()
	}
	if m.s.Document().Text() == before && m.halfTyped() == typing {
		return cmd
	}
	return tea.Batch(cmd, m.keepInTime(keepAfter))
}

// typing reports whether letters go into a field.
func (m *Model) typing() bool {
	if m.then != nil || m.helping {
		return false
	}
	return m.prompt != nil || m.picked != nil || m.view().Typing(m.s)
}

func (m *Model) view() session.View { return m.views[m.active] }

// tooSmall reports whether the screen has no room.
func (m *Model) tooSmall() bool { return m.w < needW || m.h < needH }

// key takes one key: questions first, then the keys of every view, then the view.
func (m *Model) key(msg tea.KeyMsg) tea.Cmd {
	if m.tooSmall() && m.then == nil && m.prompt == nil {
		if k := msg.String(); k == "ctrl+c" || k == "ctrl+q" {
			return m.quit()
		}
		return nil
	}
	m.s.ClearMessage()
	m.readNotices()
	switch {
	case m.then != nil:
		return m.answer(msg)
	case m.prompt != nil:
		return m.fill(msg)
	case m.picked != nil:
		return m.pick(msg)
	case m.helping:
		return m.readHelp(msg)
	}
	if cmd, used := kit.Press(m.everywhere(), msg); used {
		return cmd
	}
	cmd, used := kit.Press(m.view().Bindings(m.s), msg)
	if !used {
		m.view().Key(m.s, msg)
	}
	if path, ok := m.s.Going(); ok {
		m.goTo(path)
	}
	return cmd
}

// goTo brings up the screen with a field and marks it.
func (m *Model) goTo(path string) {
	table, trial, _ := job.SplitPath(path)
	if table == "trial" {
		m.s.Choose(trial)
	}
	// A trial's own fields are on Trials, though a blank job's first things have them too.
	for pass := range 2 {
		for i, v := range m.views {
			goer, ok := v.(session.Goer)
			if !ok || (pass == 0) != ((table == "trial") == (v.Name() == "Trials")) {
				continue
			}
			if goer.GoTo(m.s, path) {
				if from := m.active; from != i {
					m.show(i)
					m.cameFrom = &from
				}
				return
			}
		}
	}
	m.s.Say("no screen has this field; it is in the file: " + path)
}

// fit gives what is shown its size, after anything that may have changed it or the job.
func (m *Model) fit() {
	if m.tooSmall() {
		return
	}
	m.seeNotices()
	m.view().SetSize(m.s, m.body())
	in := kit.Inner(m.body())
	if m.helping {
		m.scroll.SetSize(in.H, len(m.helpLines(in.W-2)))
	}
}

// answer gives a key to the question. If leaving was asked and is asked again, the program leaves, and
// unsaved work is kept.
func (m *Model) answer(msg tea.KeyMsg) tea.Cmd {
	k := msg.String()
	again := k == "ctrl+c" || k == "ctrl+q"
	if m.leaving && (again || k == "q") {
		m.then, m.leaving = nil, false
		return m.leaveUnseen()
	}
	if again {
		k = "esc"
	}
	next, a := m.question.Key(k)
	m.question = next
	if !a.Done {
		return nil
	}
	then := m.then
	m.then, m.leaving = nil, false
	return then(a.ID)
}

// readHelp scrolls the help page; any other key closes it.
func (m *Model) readHelp(msg tea.KeyMsg) tea.Cmd {
	if _, used := kit.Press(m.scroll.Bindings("", ""), msg); !used {
		m.helping = false
	}
	return nil
}
