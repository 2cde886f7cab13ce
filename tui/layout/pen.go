package layout

import "slotwright/tui/kit"

// pen is the line that a coil is drawn with, so that phases are distinguished without colour.
type pen struct {
	across, down, left, right string
}

// Pens of the phases U, V and W, and of the current coil.
var (
	boxPens   = [3]pen{{"─", "│", "╭", "╮"}, {"═", "║", "╔", "╗"}, {"┈", "┊", "╭", "╮"}}
	boxHeavy  = pen{"━", "┃", "┏", "┓"}
	asciiPens = [3]pen{{"-", "|", "+", "+"}, {"=", "I", "+", "+"}, {".", ":", "+", "+"}}
	asciiHold = pen{"#", "#", "#", "#"}
)

// penOf is the pen of a phase.
func penOf(t kit.Theme, phase int) pen {
	if t.ASCII {
		return asciiPens[phase%3]
	}
	return boxPens[phase%3]
}

// lineRole is the role of a phase's lines: the pen already identifies it, and an underline, as high
// contrast has for words of W, would look like another coil.
func lineRole(t kit.Theme, phase int) kit.Role {
	if role := kit.Phase(phase); role != kit.PhaseW || t.Look != kit.HighContrast {
		return role
	}
	return kit.Plain
}

// heavyPen is the pen of the current coil.
func heavyPen(t kit.Theme) pen {
	if t.ASCII {
		return asciiHold
	}
	return boxHeavy
}

// arrow is the direction in which a coil is passed: from its left side to its right, or back.
func arrow(t kit.Theme, toRight bool) string {
	if toRight {
		return t.Glyphs().MoreRight
	}
	return t.Glyphs().MoreLeft
}
