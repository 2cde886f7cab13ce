package tui

import (
	"regexp"
	"strings"
	"testing"

	"slotwright/tui/kit"
	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
)

// oneWord is what the screens call a thing, and what else it might be called: two words for one thing
// make people look for two things.
var oneWord = map[string]string{
	"leave":             `quit|exit`,
	"trial":             `variant|candidate|alternative`,
	"charging begins":   `cut-in|cut in|kicks in`,
	"strand":            `filament|parallel wires`,
	"circuit":           `parallel path`,
	"span":              `coil pitch`,
	"finding":           `issue|alert`,
	"job":               `project|document`,
	"limit":             `threshold|ceiling`,
	"turns":             `windings per coil`,
	"duplicate, a copy": `clone`,
}

// The screens and the help use one word for one thing. What a field's help explains (span: slots from
// one side of a coil to the other) is exempt.
func TestOneWordForOneThing(t *testing.T) {
	for _, screen := range []string{"Machine", "Trials", "Layout", "Curves", "Drive"} {
		m := opened(session.NewExample(), 200, 60, screen, "")
		said := m.View()
		for _, b := range append(m.helpBindings(), m.promptWords()...) {
			said += "\n" + b.Label + "\n" + b.Help().Desc
		}
		for is, others := range oneWord {
			found := regexp.MustCompile(`(?i)\b(`+others+`)\b`).FindAllString(said, -1)
			assert.Empty(t, found, "%s: it is called %s here", screen, is)
		}
		for _, d := range m.commands() {
			assert.NotRegexp(t, `(?i)\b(quit|exit)\b`, d.name)
		}
	}
	assert.Regexp(t, `(?i)\b(`+oneWord["leave"]+`)\b`, "Quit", "the check can fail")
}

// promptWords are the keys of a prompt.
func (m *Model) promptWords() []kit.Binding {
	m.askOpen()
	list := m.promptBindings()
	m.prompt = nil
	return list
}

func ofSize(size [2]int) tea.WindowSizeMsg {
	return tea.WindowSizeMsg{Width: size[0], Height: size[1]}
}

// A span is also given as a throw, the trade's term, beside its number.
func TestASpanIsSaidAsAThrow(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Machine", "")
	for _, line := range strings.Split(m.View(), "\n") {
		if strings.HasPrefix(line, "  Span") {
			assert.Contains(t, line, "1 to 4")
			return
		}
	}
	t.Error("no span is shown")
}

// A value that is being typed survives any change of size, including sizes that are too small.
func TestResizingKeepsWhatIsTyped(t *testing.T) {
	m := opened(session.NewExample(), 100, 30, "Trials", "2 4")
	for _, size := range [][2]int{{60, 20}, {1, 1}, {200, 60}, {59, 60}, {80, 24}} {
		m.Update(ofSize(size))
	}
	m.press("enter")
	assert.Equal(t, 24.0, m.s.Job().Trials[0].Turns.Value)
	m = opened(session.NewExample(), 100, 30, "Machine", "h u b")
	for _, size := range [][2]int{{60, 20}, {10, 5}, {200, 60}} {
		m.Update(ofSize(size))
	}
	m.press("2 enter")
	assert.Equal(t, "hub2", m.s.Job().Name)
	m.press("ctrl+o x y")
	m.Update(ofSize([2]int{30, 6}))
	assert.Contains(t, m.View(), "xy", "a line that is asked for is drawn small")
	m.Update(ofSize([2]int{80, 24}))
	assert.Equal(t, "xy", m.prompt.line.Text)
}
