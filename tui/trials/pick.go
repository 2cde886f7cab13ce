package trials

import (
	"fmt"
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/job"
	"slotwright/winding/text"

	tea "github.com/charmbracelet/bubbletea"
)

// choicesOf are the choices of an input that is picked, not typed: the connection, and the circuits
// that the layout allows where it is known.
func choicesOf(s *session.Session, row string) []kit.Option {
	var list []kit.Option
	switch row {
	case rowConnection:
		in, _ := job.InputAt("trial." + row)
		for _, w := range in.Words {
			list = append(list, kit.Option{ID: w, Label: w})
		}
	case rowCircuits:
		for _, n := range s.Outcome().Trials[s.Trial].CircuitChoices {
			list = append(list, kit.Option{ID: fmt.Sprint(n), Label: text.Count(n, "circuit")})
		}
	}
	return list
}

// openChoices lists the choices of the marked row, the cursor on the present one.
func (v *View) openChoices(s *session.Session) {
	v.picking = true
	v.list = kit.Pick(inputLabel(s, v.row), choicesOf(s, v.row), inputText(s, v.row, s.Trial).Text)
	v.list.None = "; enter leaves it in the row, marked as not usable"
}

// pick gives a key to the open list; a choice is taken, and the next input marked, as on every screen.
func (v *View) pick(s *session.Session, msg tea.KeyMsg) bool {
	if typed := strings.TrimSpace(v.list.Typed); msg.String() == "enter" && typed != "" && len(v.list.Matching()) == 0 {
		v.picking = false // nothing typed is lost: it stays in its row, with what is wrong with it
		v.input = form.NewTextLine(typed)
		v.take(s)
		return true
	}
	list, answer := v.list.Key(msg)
	v.list = list
	if answer.Done {
		v.picked(s, answer.ID)
	}
	return true
}

// picked takes a choice, "" for none.
func (v *View) picked(s *session.Session, id string) {
	v.picking = false
	if id == "" {
		return
	}
	s.Edit(s.Document().Set(v.inputPath(s), id, s.Units))
	v.next(s)
}

// pickBindings describe the keys of the open list, which handles them itself.
func (v *View) pickBindings(s *session.Session) []kit.Binding {
	const group = "Picking from a list"
	key := func(keys, label, help string) kit.Binding {
		return kit.Command(group, keys, label, help, func(msg tea.KeyMsg) tea.Cmd { v.pick(s, msg); return nil })
	}
	return []kit.Binding{
		key("enter", "take it", "Take the one marked and go on to the next input."), key("esc", "leave it", "Leave it as it was."),
		key("down", "", "The one below."), key("up", "", "The one above."),
		key("home", "", "The first."), key("end", "", "The last."), key("backspace", "", "Take the last letter back."),
	}
}
