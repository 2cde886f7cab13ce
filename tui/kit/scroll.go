package kit

import "strconv"

// Window shows h of the lines, exactly w cells wide, with line focus (counted from 0) inside and near
// the middle. When there are more lines than h, the last column is a scroll bar: marks at its ends say
// that more is above or below. It keeps no state, so that a view can call it.
func Window(t Theme, lines []string, focus, w, h int) []string {
	return Scroll{Top: focus - h/2}.Window(t, lines, w, h)
}

// LineAt is the line in row y of what [Window] shows of n lines.
func LineAt(n, focus, h, y int) (line int, ok bool) {
	line = y
	if n > h {
		line += clamp(focus-h/2, 0, n-h)
	}
	return line, y >= 0 && y < h && line >= 0 && line < n
}

// Scroll is the scroll position in a long page. The zero Scroll is its top. bubbles/viewport is not
// used for it: its lines have no scroll bar, pass through a style that pads and cuts them once more,
// and would be kept a second time beside ours; it would save only the four methods below, as Window
// draws the tables too.
type Scroll struct {
	Top      int // first line shown; out of range counts as the nearest end
	h, total int
}

// SetSize says that h lines of total show, and brings Top into their range.
func (s *Scroll) SetSize(h, total int) {
	s.h, s.total = h, total
	s.By(0)
}

// By moves n lines down, or up.
func (s *Scroll) By(n int) { s.Top = clamp(s.Top+n, 0, max(0, s.total-s.h)) }

// Below is how many lines are below the visible ones. The page's size is the one last set.
func (s *Scroll) Below() int { return max(0, s.total-s.h-s.Top) }

// FurtherLines says how many lines are below, "" for none.
func FurtherLines(n int) string {
	switch {
	case n <= 0:
		return ""
	case n == 1:
		return "one more line"
	}
	return strconv.Itoa(n) + " more lines"
}

// Bindings are the keys that scroll. The page's size is the one last set.
func (s *Scroll) Bindings(group, label string) []Binding {
	page := max(1, s.h-1)
	return []Binding{
		Bind(group, "down j", label, "A line down.", func() { s.By(1) }),
		Bind(group, "up k", "", "A line up.", func() { s.By(-1) }),
		Bind(group, "pgdown space", "", "A page down.", func() { s.By(page) }),
		Bind(group, "pgup", "", "A page up.", func() { s.By(-page) }),
		Bind(group, "home", "", "The top.", func() { s.Top = 0 }),
		Bind(group, "end G", "", "The end.", func() { s.By(s.total) }),
	}
}

// Window shows h of the lines from Top on, like the function [Window].
func (s Scroll) Window(t Theme, lines []string, w, h int) []string {
	h = max(0, h)
	out := make([]string, h)
	if len(lines) <= h || w < 4 {
		for i := range out {
			out[i] = t.Fit(at(lines, i+clamp(s.Top, 0, len(lines)-h)), w)
		}
		return out
	}
	top := clamp(s.Top, 0, len(lines)-h)
	for i := range out {
		out[i] = t.Fit(lines[top+i], w-2) + " " + t.Style(Border).Render(scrollMark(t, i, top, h, len(lines)))
	}
	return out
}

// scrollMark is the scroll bar's character in row i of h.
func scrollMark(t Theme, i, top, h, total int) string {
	g := t.Glyphs()
	switch {
	case i == 0 && top > 0:
		return g.MoreUp
	case i == h-1 && top+h < total:
		return g.MoreDown
	case i >= top*h/total && i <= (top+h-1)*h/total:
		return g.Thumb
	}
	return g.Track
}

func at(lines []string, i int) string {
	if i < 0 || i >= len(lines) {
		return ""
	}
	return lines[i]
}
