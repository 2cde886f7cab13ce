package tui

import "slotwright/tui/quiet"

// init: the terminal's name is given back once bubbletea has initialised without asking it
// anything; see package quiet.
func init() { quiet.Restore() }
