// Package shelf is the Shelf screen: the jobs of a folder, how far each has come, and what this bench
// has learned from what it wound. From here an old job is opened, or a new one begun from it. The
// folder is read in the background.
package shelf

import (
	"slices"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// Doors lead from the shelf to a job; the program does it, since it asks about unsaved work first.
type Doors struct {
	// Open opens the job of a file, Begin a new one from it.
	Open, Begin func(path string) tea.Cmd
	// Folder asks which folder to list; now is the one listed, "" where nobody chose one.
	Folder func(now string)
}

// View is the Shelf screen.
type View struct {
	doors  Doors
	folder string // chosen, "" the one that the open job lies in
	again  int    // how often it was to be read again
	by     string // what it is sorted by
	least  bool   // the smallest first
	typed  string // what is searched for
	marked string // the file of the marked job
	bench  bool   // what the bench learns, where there is no room for both boxes
	at     kit.Rect
	shown  listed
}

// New is the screen, sorted by date, the latest first.
func New(doors Doors) *View { return &View{doors: doors, by: byDate} }

// Name is on the tab.
func (v *View) Name() string { return "Shelf" }

// Typing reports that letters search.
func (v *View) Typing(*session.Session) bool { return true }

// Editing reports whether a search is being typed; before it, signs are commands.
func (v *View) Editing(*session.Session) bool { return v.typed != "" }

// Show lists another folder, resetting marks and search.
func (v *View) Show(folder string) { v.folder, v.marked, v.typed = folder, "", "" }

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	const group, list = "Shelf", "The list"
	any := len(v.shown.list) > 0
	bench := kit.Bind(group, "f9", kit.Either(v.bench, "the job", "this bench"), "What this bench learns, or the marked job.", func() { v.bench = !v.bench })
	own := []kit.Binding{
		kit.Command(group, "enter", "open", "Open the marked job.", func(tea.KeyMsg) tea.Cmd { return v.doors.Open(v.path()) }).When(any),
		kit.Command(group, "f6", "new from it", "Begin a new job from the marked one: machine, drive, battery and trials stay, what was read on that piece is emptied.",
			func(tea.KeyMsg) tea.Cmd { return v.doors.Begin(v.path()) }).When(any),
		kit.Bind(list, "right", "sort", "Sort by the next column.", func() { v.sortNext(1) }),
		kit.Bind(list, "left", "", "Sort by the column before.", func() { v.sortNext(-1) }),
		kit.Bind(list, "ctrl+r", "", "The other way round, the largest or the smallest first.", func() { v.least = !v.least }),
		kit.Bind(group, "f7", "folder", "List another folder.", func() { v.doors.Folder(v.folder) }),
		kit.Bind(group, "f8", "", "Read the folder again.", func() { v.again++; s.Say("the folder is being read again") }),
		kit.Bind(list, "down", "", "The job below.", func() { v.move(1) }),
		kit.Bind(list, "up", "", "The job above.", func() { v.move(-1) }),
		kit.Bind(list, "pgdown", "", "A page down.", func() { v.move(max(1, v.rows()-1)) }),
		kit.Bind(list, "pgup", "", "A page up.", func() { v.move(-max(1, v.rows()-1)) }),
		kit.Bind(list, "home", "", "The first job.", func() { v.move(-len(v.shown.list)) }),
		kit.Bind(list, "end", "", "The last job.", func() { v.move(len(v.shown.list)) }),
		kit.Bind("Searching", "backspace ctrl+h", "", "Take the last letter back. Typing searches names, notes, wires, dates, states and pairs like 36/12.", v.shorten).When(v.typed != ""),
		kit.Bind("Searching", "esc", "all jobs", "Search for nothing: all jobs.", func() { v.typed = "" }).When(v.typed != ""),
	}
	if v.together() {
		own = append(own, bench)
	}
	return own
}

// Key takes a key: what is typed searches.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	if _, used := kit.Press(v.Bindings(s), msg); used {
		return true
	}
	if msg.Type != tea.KeyRunes && msg.Type != tea.KeySpace && !msg.Paste {
		return false
	}
	line, used := form.NewTextLine(v.typed).KeyWithin(msg, mostTyped)
	if line.Text != v.typed {
		v.typed, v.marked = line.Text, ""
	}
	return used
}

// mostTyped is how long a search may be.
const mostTyped = 60

// shorten removes the last letter of the search.
func (v *View) shorten() {
	runes := []rune(v.typed)
	v.typed = string(runes[:len(runes)-1])
}

// byDate is what it is sorted by until a person chooses otherwise.
const byDate = "date"

// sortNext sorts by another column; the index wraps.
func (v *View) sortNext(by int) {
	n := len(orders)
	v.sortBy(orders[((slices.Index(orders, v.by)+by)%n+n)%n])
}

// sortBy sorts by one of the orders: dates the latest first, everything else the smallest.
func (v *View) sortBy(order string) { v.by, v.least = order, order != byDate }

// move marks another job.
func (v *View) move(by int) {
	if n := len(v.shown.list); n > 0 {
		v.marked = v.shown.list[max(0, min(v.focus()+by, n-1))].File
	}
}

// SetSize takes in what has been read of the folder, and asks for it.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	v.look(s)
}

// Click marks the job at a cell of the frame, opens the marked one, or sorts by the head that was
// pointed at.
func (v *View) Click(s *session.Session, x, y int) {
	head, body := v.listAreas()
	switch {
	case head.Contains(x, y):
		v.clickHead(s, x-head.X)
	case body.Contains(x, y):
		i := y - body.Y + v.top(body.H)
		_, rows := v.lines(s.Theme, body.W-2)
		_, of := v.unfolded(s.Theme, rows, body.W-2, body.H, len(v.leftOut()))
		if i >= len(of) {
			return
		}
		i = of[i]
		if v.shown.list[i].File == v.marked {
			_ = v.doors.Open(v.path()) // it asks on the screen, and has no command of its own
			return
		}
		v.marked = v.shown.list[i].File
	}
}
