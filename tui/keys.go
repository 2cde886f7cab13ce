package tui

import (
	"slices"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/wiretable"

	tea "github.com/charmbracelet/bubbletea"
)

// leading is how many of the keys of every screen come first in the bottom line: help and the way to
// the other screens must not fall off it.
const leading = 2

// everywhere are the keys of every screen. Letters are among them only where letters begin no value,
// signs only while none is being given.
func (m *Model) everywhere() []kit.Binding {
	const group, files, figures = "Everywhere", "Files", "Figures"
	keys := m.keysNow
	return append(append(m.settling(), m.goingBack()...), []kit.Binding{
		kit.Bind(group, keys("", "?", "f1"), "help", "Help: the keys of this screen, the marks, the cautions.", func() { m.helping, m.scroll = true, kit.Scroll{} }),
		kit.Bind(group, "tab ctrl+right", "screen", "The next screen.", func() { m.show(m.active + 1) }),
		kit.Bind(group, "shift+tab ctrl+left", "", "The screen before.", func() { m.show(m.active - 1) }),
		kit.Bind(group, keys("", ":", "ctrl+p"), "commands", "All commands by name: type a part of it.", m.openCommands),
		kit.Bind(group, keys("", "!", "f3"), "findings", "What is called out, the most serious first; enter goes to its field.", m.openFindings),
		command(files, "ctrl+s", "save", "Save the job to its file; asks for a name when it has none.", m.save),
		kit.Bind(files, "ctrl+o", "open", "Open another job; those opened last are listed.", m.askOpen),
		command(files, "ctrl+n", "", "A new, empty job.", m.newJob),
		kit.Bind(files, "f2", "", "Save the job under another name.", m.askPath),
		command(files, "ctrl+d", "", "Duplicate the job: go on in a copy that is in no file yet.", m.duplicate),
		kit.Bind(files, keys("w", "", "ctrl+e"), "write card", "Write the winding card of the chosen trial to a text file.", m.askCard),
		kit.Bind(files, keys("W", "", ""), "drawing", "Write the drawing of the chosen trial, to print: unrolled, face, slot, amps.", m.askDrawing),
		command(group, keys("q", "", "ctrl+c ctrl+q"), "leave", "Leave; asks when there is unsaved work, and once more leaves with it kept.", m.quit),
		kit.Bind(group, keys("u", "", "ctrl+z"), "undo", "Undo the last change.", func() { m.follow(m.s.Undo()) }),
		kit.Bind(group, keys("U", "", "ctrl+y"), "", "Do again what was undone.", func() { m.follow(m.s.Redo()) }),
		command(group, "ctrl+l", "", "The screen anew, where something else wrote over it.", func() tea.Cmd { return tea.ClearScreen }),
		kit.Bind(group, "ctrl+t", "", "Colours: for any background, dark, light, high contrast, none.", m.nextTheme),
		command(group, "f4", "", "The mouse, on or off. While it is on, the terminal marks text only with shift held.", m.flipMouse),
		kit.Bind(figures, keys("i", "", ""), "", "Figures in mm, kg and m or in inches, pounds, feet and mph. What was typed stays as typed.", m.flipLengths),
		kit.Bind(figures, keys("d", "", ""), "", "Figures in °C or °F.", m.flipDegrees),
		kit.Bind(figures, keys("g", "", ""), "", "Steps of the wire go by AWG, SWG or metric sizes.", m.nextWires),
	}...)
}

// keysNow are a command's keys at present: its letter where that begins no value, its sign while no
// value is being given, and those that always work.
func (m *Model) keysNow(letter, sign, always string) string {
	list := always
	if !m.editing() {
		list = sign + " " + list
	}
	if taker, ok := m.view().(session.Taker); !m.view().Typing(m.s) && !(ok && taker.Takes(m.s, letter)) {
		list = letter + " " + list
	}
	return list
}

// editing reports whether the view is in the middle of a value.
func (m *Model) editing() bool {
	if e, ok := m.view().(session.Editor); ok {
		return e.Editing(m.s)
	}
	return m.view().Typing(m.s)
}

// command is a binding with a command for the program.
func command(group, keys, label, help string, do func() tea.Cmd) kit.Binding {
	return kit.Command(group, keys, label, help, func(tea.KeyMsg) tea.Cmd { return do() })
}

// show brings up a screen; the index wraps.
func (m *Model) show(i int) { m.active, m.cameFrom = (i+len(m.views))%len(m.views), nil }

// goingBack is the key back to the screen from which a field was visited; there is none where something
// on the screen needs that key first.
func (m *Model) goingBack() []kit.Binding {
	if m.cameFrom == nil || m.editing() {
		return nil
	}
	for _, b := range m.view().Bindings(m.s) {
		if slices.Contains(b.Keys(), "esc") && b.Enabled() {
			return nil
		}
	}
	to := *m.cameFrom
	return []kit.Binding{kit.Bind("Everywhere", "esc", "back to "+m.views[to].Name(), "Back to where the field was gone to from.", func() { m.show(to) })}
}

// settling is the key that turns a drive the other way round; there is none where nothing asks for that.
func (m *Model) settling() []kit.Binding {
	q := m.s.Outcome().Reversed
	if q == nil {
		return nil
	}
	label := "swap the wheels"
	switch {
	case q.Ratio != "":
		label = "ratio " + q.Ratio
	case q.Path == "drive.driver":
		label = "swap the pulleys"
	}
	return []kit.Binding{kit.Bind("Everywhere", session.SwapKey, label, "Turn a drive that is probably the wrong way round: its two wheels change places, or the ratio is turned over.", m.s.SwapDrive)}
}

// follow marks what was undone or redone, where the present screen shows it.
func (m *Model) follow(fields []string) {
	if f, ok := m.view().(session.Follower); ok {
		f.Follow(m.s, fields)
	}
}

func (m *Model) flipLengths() {
	m.s.Units.Inch = !m.s.Units.Inch
	m.choose("lengths in " + kit.Either(m.s.Units.Inch, "inches", "millimetres"))
}

func (m *Model) flipDegrees() {
	m.s.Units.Fahrenheit = !m.s.Units.Fahrenheit
	m.choose("temperatures in " + kit.Either(m.s.Units.Fahrenheit, "°F", "°C"))
}

// choose remembers the units that were chosen, for this job.
func (m *Model) choose(says string) {
	m.chose = true
	m.store.SetUnits(m.s.Path, m.s.Units)
	m.s.Say(says)
}

func (m *Model) nextWires() {
	m.s.Wires = nextSystem(m.s.Sizes())
	m.s.Say("wire steps by " + m.s.Wires.String() + " sizes")
}

func (m *Model) nextTheme() {
	m.s.Theme = m.s.Theme.Next()
	m.s.Say("colours: " + m.s.Theme.LookName())
}

// UseMouse says that the program was started with the mouse on.
func (m *Model) UseMouse() { m.mouse = true }

func (m *Model) flipMouse() tea.Cmd {
	m.mouse = !m.mouse
	if !m.mouse {
		m.s.Say("the mouse is the terminal's again")
		return tea.DisableMouse
	}
	m.s.Say("the mouse points and scrolls; hold shift to mark text")
	return tea.EnableMouseCellMotion
}

// nextSystem cycles through the gauge systems.
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

// statusBindings are those of the bottom line in their order: while something is asked those that
// answer it, and none where the question itself names them.
func (m *Model) statusBindings() []kit.Binding {
	switch {
	case m.then != nil, m.picked != nil && m.prompt == nil:
		return nil
	case m.prompt != nil:
		return m.promptBindings()
	case m.helping:
		return m.scroll.Bindings("Help", "read on")
	}
	all := m.everywhere()
	first := leading + len(m.settling())
	list := append(all[:first:first], m.view().Bindings(m.s)...)
	return append(list, all[first:]...)
}
