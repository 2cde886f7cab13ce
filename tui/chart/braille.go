package chart

import "slotwright/tui/kit"

// # Dots
//
// A terminal cell holds the eight dots of a braille character, two across and four down, so a line is
// drawn at twice the columns and four times the rows.

// brailleBlank is the braille character without dots; the bits of dotBits are added to it.
const brailleBlank = 0x2800

// dotBits are the braille bits of a cell's dots, by row and column.
var dotBits = [4][2]uint8{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// setDot sets one dot, if it lies in the area.
func (c *Canvas) setDot(x, y int, role kit.Role) {
	if x < 0 || y < 0 || !c.area.Contains(x>>1, y>>2) {
		return
	}
	k := &c.cells[(y>>2)*c.w+x>>1]
	k.dots |= dotBits[y&3][x&1]
	k.dotsRole = role
}
