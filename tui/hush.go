package tui

import "slotwright/tui/quiet"

// init restores the terminal's name once bubbletea has initialised without querying it; see package
// quiet.
func init() { quiet.Restore() }
