package tuitest

import (
	"reflect"
	"testing"

	"slotwright/tui/session"

	tea "github.com/charmbracelet/bubbletea"
)

// Loop gives a model messages in the test's own goroutine, in an order that the test decides: a command
// that an update returns waits until it is run, and its answer is given then. So a test can have every
// order of keys and answers that the program may meet, and the same one each time.
type Loop struct {
	Model tea.Model
	// Ended is set once a command ended the program. The model goes on taking messages.
	Ended   bool
	waiting []tea.Cmd
	// begun has the messages of commands that run in goroutines of their own, of which there are beside.
	begun  chan tea.Msg
	beside int
}

// Send gives the model a message; the resulting command waits.
func (l *Loop) Send(msg tea.Msg) {
	next, cmd := l.Model.Update(msg)
	l.Model = next
	l.Want(cmd)
}

// Want lets a command wait with the others; nil is none.
func (l *Loop) Want(cmd tea.Cmd) {
	if cmd != nil {
		l.waiting = append(l.waiting, cmd)
	}
}

// Waiting is how many commands have not been run.
func (l *Loop) Waiting() int { return len(l.waiting) }

// Run runs the i-th waiting command and gives the model its message. Several in one are separated and
// wait instead of it, as the program runs them concurrently; those in sequence are run at once, in
// their order.
func (l *Loop) Run(i int) {
	cmd := l.waiting[i]
	l.waiting = append(l.waiting[:i:i], l.waiting[i+1:]...)
	l.give(cmd())
}

func (l *Loop) give(msg tea.Msg) {
	switch msg := msg.(type) {
	case nil:
	case tea.QuitMsg:
		l.Ended = true
	case tea.BatchMsg:
		for _, cmd := range msg {
			l.Want(cmd)
		}
	default:
		if list, ok := sequence(msg); ok {
			for _, cmd := range list {
				if cmd != nil {
					l.give(cmd())
				}
			}
			return
		}
		l.Send(msg)
	}
}

// sequence is the commands of tea.Sequence, whose message type is not exported by tea.
func sequence(msg tea.Msg) (list []tea.Cmd, ok bool) {
	v, want := reflect.ValueOf(msg), reflect.TypeFor[[]tea.Cmd]()
	if v.Kind() != reflect.Slice || !v.Type().ConvertibleTo(want) {
		return nil, false
	}
	return v.Convert(want).Interface().([]tea.Cmd), true
}

// settled is how many commands may follow one another: more is a model that never rests.
const settled = 1000

// Settle runs what waits, the first first, until nothing does.
func (l *Loop) Settle(t testing.TB) {
	t.Helper()
	for n := 0; len(l.waiting) > 0; n++ {
		if n == settled {
			t.Fatalf("loop: %d commands were run, and each asks for another", n)
		}
		l.Run(0)
	}
}

// Work does what views asked the session for, piece by piece, and takes the answers, as the program
// would.
func Work(t testing.TB, s *session.Session) {
	t.Helper()
	l := Loop{Model: taker{s}}
	l.Want(s.Working())
	l.Settle(t)
}

// taker takes the answers for a session that has no program.
type taker struct{ s *session.Session }

func (k taker) Init() tea.Cmd { return nil }
func (k taker) View() string  { return "" }

func (k taker) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	if d, ok := msg.(session.Done); ok {
		k.s.Take(d)
	}
	return k, k.s.Working()
}
