package kit

import "strings"

// Block is a drawn piece of the screen: len(Lines) == Rect.H, every line Rect.W
// cells wide.
type Block struct {
	Rect  Rect
	Lines []string
}

// Bare fits lines into a rectangle without a border: missing lines are blank,
// surplus ones are left out.
func Bare(t Theme, r Rect, lines []string) Block {
	out := make([]string, max(0, r.H))
	for i := range out {
		line := ""
		if i < len(lines) {
			line = lines[i]
		}
		out[i] = t.Fit(line, r.W)
	}
	return Block{Rect: r, Lines: out}
}

// Panel is a box's decoration. The zero Panel is a bare border.
type Panel struct {
	Title   string // in the top border, left
	Note    string // in the top border, right; dropped when there is no room
	Foot    string // in the bottom border, right; dropped when there is no room
	Focused bool   // has the keys: another border and a mark, in any theme
}

// Box draws lines in a border with a title, exactly as large as r. The inside is
// [Inner](r). A rectangle below 3 x 3 has no room for a border and gets the lines alone.
func Box(t Theme, r Rect, title string, lines []string) Block {
	return Panel{Title: title}.Draw(t, r, lines)
}

// Inner is the room for lines inside the box drawn in r: one column of border and
// one of air at each side, one row of border above and below.
func Inner(r Rect) Rect {
	if r.W < 3 || r.H < 3 {
		return Rect{r.X, r.Y, max(0, r.W), max(0, r.H)}
	}
	if r.W < 6 {
		return r.Inset(1, 1)
	}
	return r.Inset(2, 1)
}

// Draw draws lines in the panel's border, exactly as large as r.
func (p Panel) Draw(t Theme, r Rect, lines []string) Block {
	if r.W < 3 || r.H < 3 {
		return Bare(t, r, lines)
	}
	in := Inner(r)
	air := spaces(in.X - r.X - 1)
	vert := t.Glyphs().Vertical
	border := t.Style(Border)
	if p.Focused {
		vert = t.Glyphs().FocusVertical
		border = t.Style(Title)
	}
	side := border.Render(vert)
	out := make([]string, 0, r.H)
	out = append(out, p.top(t, border, r.W))
	for _, line := range Bare(t, in, lines).Lines {
		out = append(out, side+air+line+air+side)
	}
	return Block{Rect: r, Lines: append(out, p.bottom(t, border, r.W))}
}

// top is the upper border: corner, title, rule, note, corner.
func (p Panel) top(t Theme, border Style, w int) string {
	g := t.Glyphs()
	left, rule, right := g.TopLeft, g.Horizontal, g.TopRight
	title := p.Title
	if p.Focused {
		left, rule, right = g.FocusTopLeft, g.FocusHorizontal, g.FocusTopRight
		title = g.Focus + " " + title
	}
	room := w - 2
	name, n := p.label(t, Title, title, room-2)
	note, m := p.label(t, Dim, p.Note, room-2-n)
	if m > 0 && Width(t.Text(p.Note))+2 > m {
		note, m = "", 0
	}
	if n > 0 {
		left, room = left+rule, room-1
	}
	if m > 0 {
		right, room = rule+right, room-1
	}
	return border.Render(left) + name + border.Render(strings.Repeat(rule, room-n-m)) + note + border.Render(right)
}

// bottom is the lower border, with the foot at its right end.
func (p Panel) bottom(t Theme, border Style, w int) string {
	g := t.Glyphs()
	left, rule, right := g.BottomLeft, g.Horizontal, g.BottomRight
	if p.Focused {
		left, rule, right = g.FocusBottomLeft, g.FocusHorizontal, g.FocusBottomRight
	}
	foot, n := p.label(t, Dim, p.Foot, w-4)
	if n == 0 || Width(t.Text(p.Foot))+2 > n {
		return border.Render(left + strings.Repeat(rule, w-2) + right)
	}
	return border.Render(left+strings.Repeat(rule, w-3-n)) + foot + border.Render(rule+right)
}

// label is text with a space at each side in at most w cells, and its width; ""
// when there is no text or no room for one cell of it.
func (p Panel) label(t Theme, role Role, text string, w int) (string, int) {
	if text == "" || w < 3 {
		return "", 0
	}
	text, n := t.cut(text, w-2)
	return " " + t.Style(role).Render(text) + " ", n + 2
}
