package tui

import (
	"slices"

	"slotwright/tui/card"
	"slotwright/tui/curves"
	"slotwright/tui/drive"
	"slotwright/tui/layout"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/tui/shelf"
	"slotwright/tui/trials"
	"slotwright/tui/wound"
)

// screens are in the order of the work; first is the one that comes up: the trials, where the figures
// are.
func (m *Model) screens() (list []session.View, first int) {
	list = []session.View{
		machine.NewMachine(), trials.New(), layout.New(), curves.New(), drive.New(), card.New(), wound.New(),
		shelf.New(shelf.Doors{Open: m.open, Begin: m.beginFrom, Folder: m.askFolder}),
	}
	return list, slices.IndexFunc(list, func(v session.View) bool { return v.Name() == "Trials" })
}
