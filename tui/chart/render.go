package chart

import (
	"math/bits"
	"unicode/utf8"

	"slotwright/tui/kit"
)

// Lines is the picture: h lines of exactly w cells, one colour sequence for each run of a role.
func (c *Canvas) Lines() []string {
	buf := make([]byte, 0, c.w*c.h*3+c.h*64)
	ends := make([]int, c.h)
	for row := range c.h {
		buf = c.appendRow(buf, c.cells[row*c.w:(row+1)*c.w])
		ends[row] = len(buf)
	}
	all, from := string(buf), 0
	lines := make([]string, c.h)
	for i, end := range ends {
		lines[i] = all[from:end]
		from = end
	}
	return lines
}

// appendRow draws one row of cells. Blank cells do not interrupt a run, unless the run's
// style would show on them.
func (c *Canvas) appendRow(buf []byte, row []cell) []byte {
	now := kit.Plain
	for _, k := range row {
		r, role, blank := c.show(k)
		if blank && now != kit.Focus && now != kit.Chosen {
			role = now
		}
		if role != now {
			buf = append(buf, c.theme.Style(now).End()...)
			buf = append(buf, c.theme.Style(role).Start()...)
			now = role
		}
		if r < 0x80 {
			buf = append(buf, byte(r))
		} else {
			buf = utf8.AppendRune(buf, r)
		}
	}
	return append(buf, c.theme.Style(now).End()...)
}

// show is what is seen of a cell.
func (c *Canvas) show(k cell) (r rune, role kit.Role, blank bool) {
	switch {
	case k.text != 0:
		return k.text, k.textRole, false
	case k.dots != 0 && c.theme.ASCII:
		return asciiDots(k.dots, k.dotsRole), k.dotsRole, false
	case k.dots != 0:
		return brailleBlank + rune(k.dots), k.dotsRole, false
	case k.back != 0:
		return k.back, k.backRole, false
	}
	return ' ', kit.Plain, true
}

// seriesRunes draw series and phases in ASCII, where dots cannot distinguish them.
var (
	seriesRunes = []rune("*+ox%&")
	phaseRunes  = []rune("uvw")
	asciiShapes = makeShapes()
)

func asciiDots(dots uint8, role kit.Role) rune {
	switch {
	case role >= kit.Series1 && role <= kit.Series6:
		return seriesRunes[role-kit.Series1]
	case role >= kit.PhaseU && role <= kit.PhaseW:
		return phaseRunes[role-kit.PhaseU]
	}
	return asciiShapes[dots]
}

// makeShapes picks for each pattern of dots the character that looks most like it.
func makeShapes() (shapes [256]rune) {
	for i := range shapes {
		shapes[i] = shapeOf(uint8(i))
	}
	return shapes
}

func shapeOf(dots uint8) rune {
	const left, right = 0x47, 0xb8
	rows, leftSum, rightSum := 0, 0, 0
	last := 0
	for y, b := range dotBits {
		if dots&(b[0]|b[1]) != 0 {
			rows, last = rows+1, y
		}
		if dots&b[0] != 0 {
			leftSum += y
		}
		if dots&b[1] != 0 {
			rightSum += y
		}
	}
	nl, nr := bits.OnesCount8(dots&left), bits.OnesCount8(dots&right)
	switch {
	case nl+nr >= 6:
		return '#'
	case nl+nr == 1 && last < 2:
		return '\''
	case nl+nr == 1:
		return '.'
	case rows == 1 && last == 3:
		return '_'
	case rows == 1:
		return '-'
	case nl == 0 || nr == 0:
		return '|'
	case leftSum*nr > rightSum*nl:
		return '/'
	case leftSum*nr < rightSum*nl:
		return '\\'
	}
	return '|'
}
