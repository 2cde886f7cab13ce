package tui

import (
	"slotwright/tui/card"
	"slotwright/tui/curves"
	"slotwright/tui/drive"
	"slotwright/tui/layout"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/tui/trials"
)

// views are the screens in the order of the work; the trials come up first.
func views() []session.View {
	return []session.View{machine.NewMachine(), trials.New(), layout.New(), curves.New(), drive.New(), card.New()}
}
