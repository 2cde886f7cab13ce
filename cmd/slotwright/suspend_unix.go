//go:build !windows

package main

import (
	"os"
	"os/signal"
	"syscall"
	"time"

	tea "github.com/charmbracelet/bubbletea"
)

// stopped and woken are what a shell does to a job of its own: it stops it and resumes it.
type (
	stopped struct{}
	woken   struct{}
)

// stopGrace is how long after asking to be stopped the program believes that it will be. A program
// outside any shell's job control is not stopped by the system, which would never wake it.
const stopGrace = 500 * time.Millisecond

// suspender stops the program when it is told to (SIGTSTP: kill -TSTP, since ctrl+z is undo), with the
// terminal as the shell wants it and the work kept; and takes the terminal again when it resumes, even
// after a SIGSTOP that it could not see.
type suspender struct {
	program    *tea.Program
	keep       func() // keeps unsaved work, in case it is never woken
	mouse      bool
	stop, cont chan os.Signal
}

// watch looks for the signals until the function it returns is called.
func (s *suspender) watch() func() {
	s.stop, s.cont = make(chan os.Signal, 1), make(chan os.Signal, 1)
	signal.Notify(s.stop, syscall.SIGTSTP)
	signal.Notify(s.cont, syscall.SIGCONT)
	over := make(chan struct{})
	go func() {
		for {
			select {
			case <-s.stop:
				s.program.Send(stopped{})
			case <-s.cont:
				s.program.Send(woken{})
			case <-over:
				return
			}
		}
	}()
	return func() {
		signal.Stop(s.stop)
		signal.Stop(s.cont)
		close(over)
	}
}

// filter is for tea.WithFilter: it handles the two messages, in between two others.
func (s *suspender) filter(_ tea.Model, msg tea.Msg) tea.Msg {
	switch msg.(type) {
	case stopped:
		s.keep()
		s.step(s.sleep)
		return nil
	case woken:
		s.step(func() {})
		return nil
	}
	return msg
}

// step hands the terminal back, does something, and takes it again.
func (s *suspender) step(do func()) {
	if s.program.ReleaseTerminal() != nil {
		return // it cannot be handed back: better stay awake
	}
	do()
	_ = s.program.RestoreTerminal()
	if s.mouse {
		go s.program.Send(tea.EnableMouseCellMotion())
	}
}

// sleep stops the program, with everything that the shell started along with it, until it is woken.
// SIGTSTP itself would not stop it: Go keeps the handler of one that was ever asked for, and drops it.
// SIGTTOU stops in the same way, and like SIGTSTP only under a shell's job control.
func (s *suspender) sleep() {
	signal.Stop(s.cont)
	awake := make(chan os.Signal, 1)
	signal.Notify(awake, syscall.SIGCONT)
	_ = syscall.Kill(0, syscall.SIGTTOU)
	select {
	case <-awake:
	case <-time.After(stopGrace):
	}
	signal.Stop(awake)
	signal.Notify(s.cont, syscall.SIGCONT)
}
