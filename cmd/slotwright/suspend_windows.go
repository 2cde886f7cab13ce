package main

import tea "github.com/charmbracelet/bubbletea"

// suspender does nothing here: Windows has no job control.
type suspender struct {
	program *tea.Program
	keep    func()
	mouse   bool
}

func (s *suspender) watch() func() { return func() {} }

func (s *suspender) filter(_ tea.Model, msg tea.Msg) tea.Msg { return msg }
