package tui

import (
	"path/filepath"
	"strings"

	"slotwright/tui/kit"
)

// The bar is the line over every screen: which screen, then which job and whether it is saved. Where
// room is short the least informative parts go first: the program's name, the job's name, the file's.

// withProgram is the width from which the program's name is in the bar.
const withProgram = 120

// leastFile is the shortest a file's name is cut to, leastName a job's: less tells nothing.
const (
	leastFile = 8
	leastName = 12
)

// bar is that line.
func (m *Model) bar() string {
	t := m.s.Theme
	left, w := m.tabsAt()
	program := ""
	if left > 0 {
		program = t.Fit(t.Paint(kit.Dim, " Slotwright"), left)
	}
	return program + m.tabs().Draw(t, w) + kit.Bar(t, m.w-left-w, "", m.jobWords(m.w-left-w))
}

func (m *Model) tabs() kit.TabRow {
	return kit.TabRow{Names: m.tabNames(), Active: m.active}
}

// tabsAt is where the tabs begin, and how many cells they take. They stay in place whatever the job is
// called and whether it is saved.
func (m *Model) tabsAt() (x, w int) {
	if m.w >= withProgram {
		x = 12
	}
	return x, min(m.tabs().Width(m.s.Theme), m.w-x-kit.Width(m.unsavedWord())-1)
}

// tabAt is the tab at a column of the bar.
func (m *Model) tabAt(x int) (i int, ok bool) {
	left, w := m.tabsAt()
	return m.tabs().At(m.s.Theme, w, x-left)
}

func (m *Model) unsavedWord() string { return m.s.Theme.Glyphs().Bullet + " not saved" }

// jobWords names the job and its file and says whether it is saved, in at most w cells.
func (m *Model) jobWords(w int) string {
	t := m.s.Theme
	state := ""
	if m.s.Dirty() {
		state = t.Text(m.unsavedWord())
	}
	file := "no file yet"
	switch {
	case m.s.Path != "":
		file = filepath.Base(m.s.Path)
	case m.s.Invented:
		file = "invented example"
	}
	name := m.s.Job().Name
	if name == "" {
		name = "no name"
	}
	file, name = t.Text(kit.Clean(file)), t.Text(kit.Clean(name))
	words, room := t.Style(kit.Value).Render(state), w-2
	if state != "" {
		words, room = " "+words, room-kit.Width(state)-1
	}
	if m.s.Invented && room < kit.Width(file) {
		file = "example"
	}
	if room < min(kit.Width(file), leastFile) {
		return strings.TrimLeft(words, " ")
	}
	file = t.Cut(file, room)
	words, room = t.Style(kit.Dim).Render(file)+words, room-kit.Width(file)-2
	if room >= min(kit.Width(name), leastName) {
		words = t.Cut(name, room) + "  " + words
	}
	return words
}
