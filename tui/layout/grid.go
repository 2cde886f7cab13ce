package layout

import (
	"strings"

	"slotwright/tui/kit"
)

// grid is a rectangle of cells to draw into.
type grid struct {
	w, h  int
	cells []cell
}

// cell is one character, its role, and the number of the coil whose line it is part of.
type cell struct {
	text string
	role kit.Role
	coil int
}

func newGrid(w, h int) *grid { return &grid{w: w, h: h, cells: make([]cell, w*h)} }

// put draws a character; outside the grid nothing happens.
func (g *grid) put(x, y int, c cell) {
	if x >= 0 && x < g.w && y >= 0 && y < g.h {
		g.cells[y*g.w+x] = c
	}
}

// at is a cell; outside the grid an empty one.
func (g *grid) at(x, y int) cell {
	if x < 0 || x >= g.w || y < 0 || y >= g.h {
		return cell{}
	}
	return g.cells[y*g.w+x]
}

// write draws a text of one-cell characters.
func (g *grid) write(x, y int, text string, role kit.Role) {
	for _, r := range text {
		g.put(x, y, cell{text: string(r), role: role})
		x++
	}
}

// lines are the rows, runs of one role painted together.
func (g *grid) lines(t kit.Theme) []string {
	out := make([]string, g.h)
	for y := range out {
		var line, run strings.Builder
		role := kit.Plain
		for x := range g.w {
			c := g.at(x, y)
			if c.text == "" {
				c = cell{text: " "}
			}
			if c.role != role {
				line.WriteString(t.Style(role).Render(run.String()))
				run.Reset()
				role = c.role
			}
			run.WriteString(c.text)
		}
		line.WriteString(t.Style(role).Render(run.String()))
		out[y] = line.String()
	}
	return out
}
