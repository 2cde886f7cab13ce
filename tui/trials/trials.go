// Package trials is the screen the work turns on: up to four candidate windings side
// by side, every figure in its row, the three inputs slot area, fill limit and wire a
// single key away.
package trials

import (
	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the trials screen. Its rows are a grid: inputs on top, figures below; the
// cursor walks over all of them so that each can be explained.
type View struct {
	row     int
	editing bool
	input   form.TextLine
	picture bool // the slot's picture over the table, where there is no room beside it
	// small is set by drawing where not every row fits; flipped shows the other choice.
	small, flipped bool
}

// New is the screen with the cursor on the turns.
func New() *View { return &View{row: rowTurns} }

// Name stands on the tab.
func (v *View) Name() string { return "Trials" }

// Typing reports whether a value is being typed.
func (v *View) Typing(*session.Session) bool { return v.editing }

// Bindings are the keys of the screen.
func (v *View) Bindings(*session.Session) []kit.Binding {
	if v.editing {
		return []kit.Binding{
			{ID: "take", Keys: []string{"enter"}, Label: "take it", Help: "Take the value typed.", Group: "Typing a value"},
			{ID: "drop", Keys: []string{"esc"}, Label: "leave it as it was", Help: "Leave the value as it was.", Group: "Typing a value"},
		}
	}
	return bindings
}

var bindings = []kit.Binding{
	{ID: "turn+", Keys: []string{"+", "="}, Label: "turn more", Help: "One turn more on every coil.", Group: "Chosen trial"},
	{ID: "turn-", Keys: []string{"-", "_"}, Label: "fewer", Help: "One turn fewer.", Group: "Chosen trial"},
	{ID: "wire+", Keys: []string{"]"}, Label: "thicker", Help: "Next thicker wire.", Group: "Chosen trial"},
	{ID: "wire-", Keys: []string{"["}, Label: "thinner", Help: "Next thinner wire.", Group: "Chosen trial"},
	{ID: "strand+", Keys: []string{">", "."}, Label: "strand more", Help: "One strand more in hand.", Group: "Chosen trial"},
	{ID: "strand-", Keys: []string{"<", ","}, Label: "fewer", Help: "One strand fewer.", Group: "Chosen trial"},
	{ID: "area+", Keys: []string{"A"}, Help: "Slot area up a step.", Group: "The slot"},
	{ID: "area-", Keys: []string{"a"}, Label: "area", Help: "Slot area down a step (capital A: up).", Group: "The slot"},
	{ID: "fill+", Keys: []string{"F"}, Help: "Fill limit up a hundredth.", Group: "The slot"},
	{ID: "fill-", Keys: []string{"f"}, Label: "fill", Help: "Fill limit down a hundredth (capital F: up).", Group: "The slot"},
	{ID: "connection", Keys: []string{"c"}, Label: "star/delta", Help: "Star to delta and back.", Group: "Chosen trial"},
	{ID: "circuits", Keys: []string{"o"}, Label: "circuits", Help: "Next number of parallel circuits that the layout allows.", Group: "Chosen trial"},
	{ID: "edit", Keys: []string{"enter"}, Label: "type", Help: "Type a value into the marked input. A figure begins typing at once.", Group: "Chosen trial"},
	{ID: "left", Keys: []string{"left", "h"}, Help: "The trial to the left.", Group: "Moving", Hidden: true},
	{ID: "right", Keys: []string{"right", "l"}, Help: "The trial to the right.", Group: "Moving", Hidden: true},
	{ID: "up", Keys: []string{"up", "k"}, Help: "The row above; what it means stands below the table.", Group: "Moving", Hidden: true},
	{ID: "down", Keys: []string{"down", "j"}, Help: "The row below.", Group: "Moving", Hidden: true},
	{ID: "top", Keys: []string{"home", "pgup"}, Help: "The first row.", Group: "Moving", Hidden: true},
	{ID: "bottom", Keys: []string{"end", "pgdown"}, Help: "The last row.", Group: "Moving", Hidden: true},
	{ID: "new", Keys: []string{"n"}, Label: "new", Help: "Copy the chosen trial into a new one.", Group: "Trials"},
	{ID: "remove", Keys: []string{"x"}, Label: "remove", Help: "Take the chosen trial out.", Group: "Trials"},
	{ID: "reference", Keys: []string{"r"}, Label: "reference", Help: "Compare the others with the chosen trial.", Group: "Trials"},
	{ID: "rows", Keys: []string{"m"}, Label: "more rows", Help: "Every row, or only the ones looked at first.", Group: "Moving"},
	{ID: "picture", Keys: []string{"v"}, Label: "slot", Help: "The slot with its wires, drawn to scale, over the table.", Group: "Trials"},
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	if v.editing {
		return v.typed(s, msg)
	}
	key := msg.String()
	if begins(key) && v.inputPath(s) != "" {
		v.begin("")
		return v.typed(s, msg)
	}
	switch id := kit.Lookup(bindings, key); id {
	case "":
		return false
	case "up", "down", "top", "bottom", "left", "right":
		v.move(s, id)
	case "edit":
		v.edit(s)
	case "picture":
		v.picture = !v.picture
	case "rows":
		v.flipped = !v.flipped
		v.row = min(v.row, v.rowCount(s)-1)
	default:
		change[id](s)
	}
	return true
}

// begins reports whether a key starts a value: a figure, or the mark of a guess.
func begins(key string) bool {
	return len(key) == 1 && (key[0] >= '0' && key[0] <= '9' || key == "~")
}

// change is what the single keys do to the job.
var change = map[string]func(*session.Session){
	"turn+":      func(s *session.Session) { s.StepTurns(1) },
	"turn-":      func(s *session.Session) { s.StepTurns(-1) },
	"wire+":      func(s *session.Session) { s.StepWire(1) },
	"wire-":      func(s *session.Session) { s.StepWire(-1) },
	"strand+":    func(s *session.Session) { s.StepStrands(1) },
	"strand-":    func(s *session.Session) { s.StepStrands(-1) },
	"area+":      func(s *session.Session) { s.StepArea(1) },
	"area-":      func(s *session.Session) { s.StepArea(-1) },
	"fill+":      func(s *session.Session) { s.StepFill(1) },
	"fill-":      func(s *session.Session) { s.StepFill(-1) },
	"connection": (*session.Session).FlipConnection,
	"circuits":   (*session.Session).StepCircuits,
	"new":        (*session.Session).AddTrial,
	"remove":     (*session.Session).RemoveTrial,
	"reference":  (*session.Session).MakeReference,
}

// move takes the cursor over the grid.
func (v *View) move(s *session.Session, id string) {
	last := v.rowCount(s) - 1
	switch id {
	case "up":
		v.row = max(0, v.row-1)
	case "down":
		v.row = min(last, v.row+1)
	case "top":
		v.row = 0
	case "bottom":
		v.row = last
	case "left":
		s.Trial = max(0, s.Trial-1)
	case "right":
		s.Trial = max(0, min(len(s.Outcome().Trials)-1, s.Trial+1))
	}
}

// begin opens the input with a text.
func (v *View) begin(text string) {
	v.editing, v.input = true, form.NewTextLine(text)
}

// edit opens the marked input with what it says; words are stepped through instead.
func (v *View) edit(s *session.Session) {
	switch v.row {
	case rowConnection:
		s.FlipConnection()
	case rowCircuits:
		s.StepCircuits()
	default:
		path := v.inputPath(s)
		if path == "" {
			s.Say("this row is worked out; the inputs stand above it")
			return
		}
		text, _, _ := s.Document().Typed(path)
		v.begin(text)
	}
}

// typed takes a key while a value is being typed.
func (v *View) typed(s *session.Session, msg tea.KeyMsg) bool {
	switch msg.String() {
	case "enter":
		v.editing = false
		s.Type(v.inputPath(s), v.input.Text)
		s.Edit(s.Document())
		if p, bad := s.Document().ProblemAt(v.inputPath(s)); bad {
			s.Warn(p.Text())
		}
		return true
	case "esc":
		v.editing = false
		return true
	}
	next, used := v.input.Key(msg, form.Any)
	v.input = next
	return used
}
