package tui

import (
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/wiretable"

	tea "github.com/charmbracelet/bubbletea"
)

// always are the keys that work on every screen, also while typing in a form.
var always = []kit.Binding{
	{ID: "next", Keys: []string{"tab", "ctrl+right"}, Label: "next screen", Help: "The next screen.", Group: "Everywhere"},
	{ID: "back", Keys: []string{"shift+tab", "ctrl+left"}, Help: "The screen before.", Group: "Everywhere"},
	{ID: "save", Keys: []string{"ctrl+s"}, Label: "save", Help: "Save the job to its file; asks for a name when it has none.", Group: "Everywhere"},
	{ID: "saveas", Keys: []string{"ctrl+o"}, Help: "Save the job under another name.", Group: "Everywhere"},
	{ID: "card", Keys: []string{"ctrl+e"}, Label: "card", Help: "Write the winding card of the chosen trial to a text file.", Group: "Everywhere"},
	{ID: "undo", Keys: []string{"ctrl+z"}, Label: "undo", Help: "Take the last change back.", Group: "Everywhere"},
	{ID: "redo", Keys: []string{"ctrl+y"}, Help: "Do again what was undone.", Group: "Everywhere"},
	{ID: "help", Keys: []string{"f1"}, Help: "This page.", Group: "Everywhere"},
	{ID: "quit", Keys: []string{"ctrl+c", "ctrl+q"}, Help: "Leave; asks when there is unsaved work.", Group: "Everywhere"},
	{ID: "redraw", Keys: []string{"ctrl+l"}, Help: "Draw the screen anew.", Group: "Everywhere"},
}

// single are the keys of every screen while nothing is being typed.
var single = []kit.Binding{
	{ID: "card", Keys: []string{"w"}, Label: "write card", Help: "Write the winding card of the chosen trial to a text file.", Group: "While not typing"},
	{ID: "help", Keys: []string{"?"}, Label: "help", Help: "This page.", Group: "While not typing"},
	{ID: "quit", Keys: []string{"q"}, Label: "quit", Help: "Leave; asks when there is unsaved work.", Group: "While not typing"},
	{ID: "undo", Keys: []string{"u"}, Help: "Take the last change back.", Group: "While not typing"},
	{ID: "redo", Keys: []string{"U"}, Help: "Do again what was undone.", Group: "While not typing"},
	{ID: "inch", Keys: []string{"i"}, Help: "Figures in mm, kg and m or in inches, pounds and feet. What was typed stays as typed.", Group: "While not typing"},
	{ID: "degrees", Keys: []string{"d"}, Help: "Figures in °C or °F.", Group: "While not typing"},
	{ID: "wires", Keys: []string{"g"}, Help: "Steps of the wire go by AWG, SWG or metric sizes.", Group: "While not typing"},
}

var everywhere = append(append([]kit.Binding{}, always...), single...)

// do carries out a key that is not the view's.
func (m *Model) do(id string) tea.Cmd {
	switch id {
	case "next":
		m.active = (m.active + 1) % len(m.views)
	case "back":
		m.active = (m.active + len(m.views) - 1) % len(m.views)
	case "save":
		return m.save()
	case "saveas":
		m.askPath()
	case "card":
		m.askCard()
	case "undo":
		m.s.Undo()
	case "redo":
		m.s.Redo()
	case "help":
		m.helping, m.scroll = true, kit.Scroll{}
	case "quit":
		return m.quit()
	case "redraw":
		return tea.ClearScreen
	case "inch":
		m.s.Units.Inch = !m.s.Units.Inch
		m.s.Say("lengths in " + either(m.s.Units.Inch, "inches", "millimetres"))
	case "degrees":
		m.s.Units.Fahrenheit = !m.s.Units.Fahrenheit
		m.s.Say("temperatures in " + either(m.s.Units.Fahrenheit, "°F", "°C"))
	case "wires":
		m.s.Wires = nextSystem(m.s.Wires)
		m.s.Say("wire steps by " + m.s.Wires.String() + " sizes")
	}
	return nil
}

func either(yes bool, a, b string) string {
	if yes {
		return a
	}
	return b
}

// nextSystem goes round the tables of sizes.
func nextSystem(now wiretable.System) wiretable.System {
	switch now {
	case wiretable.AWG:
		return wiretable.SWG
	case wiretable.SWG:
		return wiretable.IEC
	default:
		return wiretable.AWG
	}
}

// bindings are all keys of the screen that is shown, the view's own first.
func (m *Model) bindings() []kit.Binding {
	own := append([]kit.Binding{}, m.view().Bindings(m.s)...)
	if m.view().Typing(m.s) {
		return append(own, always...)
	}
	return append(own, everywhere...)
}

// statusBindings are those for the bottom line: leaving and help must not fall off.
func (m *Model) statusBindings() []kit.Binding {
	first := []kit.Binding{{ID: "help", Keys: []string{"?"}, Label: "help"}, {ID: "next", Keys: []string{"tab"}, Label: "screen"}}
	if m.view().Typing(m.s) {
		first[0].Keys = []string{"f1"}
	}
	list := append(first, m.view().Bindings(m.s)...)
	for _, b := range everywhere {
		if b.ID != "help" && b.ID != "next" { // named already
			list = append(list, b)
		}
	}
	return list
}

var _ = session.Dash
