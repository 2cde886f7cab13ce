package kit

// Window shows h of the lines, exactly w cells wide, with line focus (counted from
// 0) inside and near the middle. When there are more lines than h, the last
// column is a scroll bar: marks at its ends say that more is above or below.
// It keeps no state, so that a view can call it.
func Window(t Theme, lines []string, focus, w, h int) []string {
	return Scroll{Top: focus - h/2}.Window(t, lines, w, h)
}

// WindowTop is the first line [Window] shows of total lines.
func WindowTop(focus, h, total int) int {
	return clamp(focus-h/2, 0, max(0, total-h))
}

// Scroll is how far down a long page is read. The zero Scroll is its top.
type Scroll struct {
	Top int // first line shown; out of range counts as the nearest end
}

// Key moves by the keys up, down, pgup, pgdown, home and end through total lines
// shown h at a time. The answer is false for other keys.
func (s Scroll) Key(key string, h, total int) (Scroll, bool) {
	last := max(0, total-h)
	top := clamp(s.Top, 0, last)
	page := max(1, h-1)
	switch key {
	case "up", "k":
		top--
	case "down", "j":
		top++
	case "pgup":
		top -= page
	case "pgdown", " ":
		top += page
	case "home", "g":
		top = 0
	case "end", "G":
		top = last
	default:
		return s, false
	}
	return Scroll{Top: clamp(top, 0, last)}, true
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
