package tui

import (
	"slices"

	"slotwright/tui/card"
	"slotwright/tui/curves"
	"slotwright/tui/drive"
	"slotwright/tui/layout"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/tui/trials"
)

// views are the screens in the order of the work, and which of them comes up first: the
// trials, where the figures are.
func views() (list []session.View, first int) {
	list = []session.View{machine.NewMachine(), trials.New(), layout.New(), curves.New(), drive.New(), card.New()}
	return list, slices.IndexFunc(list, func(v session.View) bool { return v.Name() == "Trials" })
}
