package kit

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Screen composes blocks into one frame of an exact size. Later blocks cover
// earlier ones; what lies outside the frame is cut off. Make a new one for every
// frame.
type Screen struct {
	theme Theme
	w, h  int
	rows  [][]span
}

// span is w cells of text at column x of a row.
type span struct {
	x, w int
	text string
}

// NewScreen returns an empty frame of w x h cells; negative sizes count as 0.
func NewScreen(t Theme, w, h int) *Screen {
	w, h = max(0, w), max(0, h)
	return &Screen{theme: t, w: w, h: h, rows: make([][]span, h)}
}

// Rect is the whole frame.
func (s *Screen) Rect() Rect { return Rect{0, 0, s.w, s.h} }

// Put draws a block over what is there.
func (s *Screen) Put(b Block) {
	for i, line := range b.Lines {
		if i >= b.Rect.H {
			return
		}
		s.put(b.Rect.X, b.Rect.Y+i, b.Rect.W, line)
	}
}

// put draws one line of w cells at x, y.
func (s *Screen) put(x, y, w int, line string) {
	if y < 0 || y >= s.h || w <= 0 || x >= s.w || x+w <= 0 {
		return
	}
	line = s.theme.Fit(line, w)
	if x < 0 {
		line, w, x = slice(line, -x, w), w+x, 0
	}
	if x+w > s.w {
		w = s.w - x
		line = slice(line, 0, w)
	}
	row := s.rows[y]
	for _, old := range row {
		if old.x < x+w && x < old.x+old.w {
			row = without(row, x, w)
			break
		}
	}
	s.rows[y] = append(row, span{x, w, line})
}

// without cuts the cells x to x+w out of a row's spans.
func without(row []span, x, w int) []span {
	out := make([]span, 0, len(row)+2)
	for _, old := range row {
		if old.x+old.w <= x || old.x >= x+w {
			out = append(out, old)
			continue
		}
		if n := x - old.x; n > 0 {
			out = append(out, span{old.x, n, slice(old.text, 0, n)})
		}
		if n := old.x + old.w - (x + w); n > 0 {
			out = append(out, span{x + w, n, slice(old.text, old.w-n, old.w)})
		}
	}
	return out
}

// slice is the cells from..to of a line with its styles. A character of two cells
// that is cut through leaves a blank.
func slice(line string, from, to int) string {
	var b strings.Builder
	x := 0
	var state byte
	for len(line) > 0 {
		seq, w, n, next := ansi.DecodeSequence(line, state, nil)
		switch {
		case w == 0:
			b.WriteString(seq)
		case x >= from && x+w <= to:
			b.WriteString(seq)
		default:
			b.WriteString(spaces(min(x+w, to) - max(x, from)))
		}
		x, line, state = x+w, line[n:], next
	}
	return closeStyle(b.String()) + spaces(to-max(x, from))
}

// String is the frame: exactly h lines, none wider than w cells, no blanks at
// their ends.
func (s *Screen) String() string {
	var b strings.Builder
	b.Grow(s.h * (s.w + 32))
	for y, row := range s.rows {
		if y > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(strings.TrimRight(joinRow(row), " "))
	}
	return b.String()
}

// joinRow is a row's spans from left to right with blanks between.
func joinRow(row []span) string {
	slices.SortFunc(row, func(a, b span) int { return a.x - b.x })
	if len(row) == 1 && row[0].x == 0 {
		return row[0].text
	}
	var b strings.Builder
	x := 0
	for _, sp := range row {
		b.WriteString(spaces(sp.x - x))
		b.WriteString(sp.text)
		x = sp.x + sp.w
	}
	return b.String()
}

// TooSmall is the frame to show when the window is below what a screen needs:
// it says the size needed and the size there is. It fits any window, even one of
// 1 x 1; for 0 x 0 it is empty.
func TooSmall(t Theme, w, h, needW, needH int) string {
	s := NewScreen(t, w, h)
	text := "The window is " + sizeText(w, h) + "; this needs " + sizeText(needW, needH) + ". Nothing is lost: make it larger."
	s.Put(Bare(t, s.Rect(), t.Wrap(text, w)))
	return s.String()
}
