package tui

import (
	"slotwright/tui/kit"
	"slotwright/wiretable"

	tea "github.com/charmbracelet/bubbletea"
)

// leading is how many of the keys of every screen stand first in the bottom line: help
// and the way to the other screens must not fall off it.
const leading = 2

// everywhere are the keys of every screen. Letters are among them only while nothing is
// being typed.
func (m *Model) everywhere() []kit.Binding {
	const group, figures = "Everywhere", "Figures"
	letters := !m.view().Typing(m.s)
	keys := func(letter, always string) string {
		if letters {
			return letter + " " + always
		}
		return always
	}
	return []kit.Binding{
		kit.Bind(group, keys("?", "f1"), "help", "This page.", func() { m.helping, m.scroll = true, kit.Scroll{} }),
		kit.Bind(group, "tab ctrl+right", "screen", "The next screen.", func() { m.show(m.active + 1) }),
		kit.Bind(group, "shift+tab ctrl+left", "", "The screen before.", func() { m.show(m.active - 1) }),
		command(group, "ctrl+s", "save", "Save the job to its file; asks for a name when it has none.", m.save),
		kit.Bind(group, "ctrl+o", "", "Save the job under another name.", m.askPath),
		kit.Bind(group, keys("w", "ctrl+e"), "write card", "Write the winding card of the chosen trial to a text file.", m.askCard),
		command(group, keys("q", "ctrl+c ctrl+q"), "quit", "Leave; asks when there is unsaved work.", m.quit),
		kit.Bind(group, keys("u", "ctrl+z"), "undo", "Take the last change back.", m.s.Undo),
		kit.Bind(group, keys("U", "ctrl+y"), "", "Do again what was undone.", m.s.Redo),
		command(group, "ctrl+l", "", "Draw the screen anew.", func() tea.Cmd { return tea.ClearScreen }),
		kit.Bind(figures, keys("i", ""), "", "Figures in mm, kg and m or in inches, pounds and feet. What was typed stays as typed.", m.flipLengths),
		kit.Bind(figures, keys("d", ""), "", "Figures in °C or °F.", m.flipDegrees),
		kit.Bind(figures, keys("g", ""), "", "Steps of the wire go by AWG, SWG or metric sizes.", m.nextWires),
	}
}

// command is a binding of what has a command for the program.
func command(group, keys, label, help string, do func() tea.Cmd) kit.Binding {
	return kit.Command(group, keys, label, help, func(tea.KeyMsg) tea.Cmd { return do() })
}

// show brings up a screen, counted round the ends.
func (m *Model) show(i int) { m.active = (i + len(m.views)) % len(m.views) }

func (m *Model) flipLengths() {
	m.s.Units.Inch = !m.s.Units.Inch
	m.s.Say("lengths in " + either(m.s.Units.Inch, "inches", "millimetres"))
}

func (m *Model) flipDegrees() {
	m.s.Units.Fahrenheit = !m.s.Units.Fahrenheit
	m.s.Say("temperatures in " + either(m.s.Units.Fahrenheit, "°F", "°C"))
}

func (m *Model) nextWires() {
	m.s.Wires = nextSystem(m.s.Wires)
	m.s.Say("wire steps by " + m.s.Wires.String() + " sizes")
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

// helpBindings are all keys of the screen that is shown, its own first.
func (m *Model) helpBindings() []kit.Binding {
	return append(m.view().Bindings(m.s), m.everywhere()...)
}

// statusBindings are those of the bottom line in their order.
func (m *Model) statusBindings() []kit.Binding {
	all := m.everywhere()
	list := append(all[:leading:leading], m.view().Bindings(m.s)...)
	return append(list, all[leading:]...)
}
