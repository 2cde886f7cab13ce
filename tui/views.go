package tui

import (
	"slotwright/tui/amps"
	"slotwright/tui/machine"
	"slotwright/tui/paper"
	"slotwright/tui/plan"
	"slotwright/tui/session"
	"slotwright/tui/trials"
	"slotwright/tui/turning"
)

// views are the screens in the order of the work; the trials come up first.
func views() []session.View {
	return []session.View{machine.NewMachine(), trials.New(), plan.New(), amps.New(), turning.New(), paper.New()}
}
