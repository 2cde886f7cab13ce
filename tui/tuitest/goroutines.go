package tuitest

import (
	"testing"

	tea "github.com/charmbracelet/bubbletea"
)

// OneGoroutine skips a long test under the race detector, which is ten times slower and finds nothing
// where one goroutine draws or takes keys by itself, as with [Loop]. What Evaluate starts below it is
// under the detector in winding's own tests. Without the detector the test runs, short or not.
func OneGoroutine(t testing.TB) {
	t.Helper()
	if detecting {
		t.Skip("runs in one goroutine: the race detector finds nothing here")
	}
}

// Begin runs all waiting commands, each in a goroutine of its own, as the program does. Their messages
// are kept until they are taken.
func (l *Loop) Begin() {
	if l.begun == nil {
		l.begun = make(chan tea.Msg)
	}
	for _, cmd := range l.waiting {
		l.beside++
		go func() { l.begun <- cmd() }()
	}
	l.waiting = nil
}

// Take gives the model those messages of begun commands that are there, or where it is to wait those
// of all that were begun, and returns how many.
func (l *Loop) Take(wait bool) (taken int) {
	for n := l.beside; n > 0; n-- {
		var msg tea.Msg
		if wait {
			msg = <-l.begun
		} else {
			select {
			case msg = <-l.begun:
			default:
				return taken
			}
		}
		l.beside--
		taken++
		l.give(msg)
	}
	return taken
}
