package tuitest_test

import (
	"strings"
	"testing"

	"slotwright/tui/session"
	"slotwright/tui/tuitest"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/assert"
)

// counted records the messages it is given; asks maps a message to the command that it triggers.
type counted struct {
	got  *[]string
	asks map[string]tea.Cmd
}

func (c counted) Init() tea.Cmd { return nil }
func (c counted) View() string  { return strings.Join(*c.got, " ") }
func (c counted) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	name, _ := msg.(string)
	*c.got = append(*c.got, name)
	return c, c.asks[name]
}

func says(text string) tea.Cmd { return func() tea.Msg { return text } }

// Every answer of a batch of commands is delivered; a sequence keeps its order; and the test chooses
// which answer comes first.
func TestLoopGivesEveryAnswer(t *testing.T) {
	start := func() *tuitest.Loop {
		return &tuitest.Loop{Model: counted{&[]string{}, map[string]tea.Cmd{
			"all":  tea.Batch(says("a"), tea.Batch(says("b"), says("c")), tea.Sequence(says("d"), nil, says("e"))),
			"c":    says("after c"),
			"stop": tea.Quit,
		}}}
	}
	l := start()
	l.Send("all")
	assert.Equal(t, 1, l.Waiting(), "nothing is done by itself")
	l.Settle(t)
	assert.Equal(t, "all a d e b c after c", l.Model.View())
	assert.False(t, l.Ended)
	l.Send("stop")
	l.Settle(t)
	assert.True(t, l.Ended)

	l = start()
	l.Send("all")
	l.Run(0)
	for l.Waiting() > 0 {
		l.Run(l.Waiting() - 1)
	}
	assert.Equal(t, "all d e c after c b a", l.Model.View(), "the last first")
}

// Two pieces of work asked for at once are both done, and so is what their answers ask for.
func TestWorkDoesEveryPiece(t *testing.T) {
	s := session.NewExample()
	for _, name := range []string{"first", "second"} {
		s.Later(name, "x", func() any { return name })
	}
	tuitest.Work(t, s)
	for _, name := range []string{"first", "second"} {
		v, done, wrong := s.Answer(name, "x")
		assert.True(t, done, name)
		assert.Empty(t, wrong)
		assert.Equal(t, name, v)
	}
}
