package tui

import (
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/tui/trials"
	"slotwright/tui/turning"
)

// views are the screens in the order of the work; the trials come up first.
func views() []session.View {
	return []session.View{machine.NewMachine(), trials.New(), turning.New()}
}
