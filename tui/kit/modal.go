package kit

import "strings"

// Option is one answer to a question, or one line of a picker.
type Option struct {
	ID    string // what the owner gets back
	Key   string // single key that answers at once; may be empty
	Label string
	Note  string   // explanation beside the label; may be empty
	Also  string   // other words to find it by, not shown
	Short string   // the text it is searched by
	Names []string // other names
	Far   bool     // comes after equally good matches that are near
	Lead  string   // precedes the label; not searched
	Mark  Role     // its mark precedes the label of a tall option
}

// Answer is the result of a key: not Done yet, or Done with the chosen option's ID ("" when a picker
// was left without choosing).
type Answer struct {
	Done bool
	ID   string
}

// Modal is a question laid over the screen. Arrows or tab move between the options, enter takes the one
// marked, its own key takes it at once, esc takes the last one.
type Modal struct {
	Title   string
	Body    []string // paragraphs, wrapped to the box
	Options []Option // at least one; the last should be the harmless one
	Cursor  int
}

// Key handles one key. Keys that mean nothing here are swallowed: a question is
// answered before anything else happens.
func (m Modal) Key(key string) (Modal, Answer) {
	if len(m.Options) == 0 {
		return m, Answer{Done: true}
	}
	n := len(m.Options)
	m.Cursor = clamp(m.Cursor, 0, n-1)
	switch key {
	case "left", "up", "shift+tab":
		m.Cursor = (m.Cursor + n - 1) % n
	case "right", "down", "tab":
		m.Cursor = (m.Cursor + 1) % n
	case "enter":
		return m, Answer{true, m.Options[m.Cursor].ID}
	case "esc":
		return m, Answer{true, m.Options[n-1].ID}
	default:
		for _, o := range m.Options {
			if o.Key != "" && strings.EqualFold(o.Key, key) {
				return m, Answer{true, o.ID}
			}
		}
	}
	return m, Answer{}
}

// Draw draws the question in the middle of within, as small as it goes.
func (m Modal) Draw(t Theme, within Rect) Block {
	var options []string
	for i, o := range m.Options {
		options = append(options, m.option(t, o, i == m.Cursor))
	}
	buttons := strings.Join(options, "  ")
	w := max(Width(buttons), Width(t.Text(m.Title))+4, 24)
	for _, p := range m.Body {
		w = max(w, min(Width(t.Text(Clean(p))), 56))
	}
	w = min(w, max(1, within.W-4))
	var lines []string
	for _, p := range m.Body {
		lines = append(lines, t.Wrap(p, w)...)
	}
	lines = append(lines, "")
	if Width(buttons) <= w {
		lines = append(lines, buttons)
	} else {
		lines = append(lines, options...)
	}
	return Panel{Title: m.Title, Focused: true}.Draw(t, within.Centre(w+4, len(lines)+2), m.clip(lines, within.H-2, len(options)))
}

// DrawSmall draws the question without a border in a window too small for one: as much of the body as
// fits, and the options with their keys in any case.
func (m Modal) DrawSmall(t Theme, r Rect) Block {
	var options []string
	for i, o := range m.Options {
		mark := " "
		if i == m.Cursor {
			mark = t.Mark(Focus)
		}
		options = append(options, t.Cut(mark+o.Key+" "+t.Text(o.Label), r.W))
	}
	var lines []string
	for _, p := range append([]string{m.Title}, m.Body...) {
		lines = append(lines, t.Wrap(Clean(p), r.W)...)
	}
	room := max(0, r.H-len(options))
	return Bare(t, r, append(lines[:min(len(lines), room)], options...))
}

// clip keeps the options visible when the body is too long for the window.
func (m Modal) clip(lines []string, h, options int) []string {
	if len(lines) <= h || h <= 0 {
		return lines
	}
	keep := min(h, options)
	return append(append([]string(nil), lines[:h-keep]...), lines[len(lines)-keep:]...)
}

func (m Modal) option(t Theme, o Option, on bool) string {
	text := t.Text(o.Label)
	if o.Key != "" {
		text += " (" + KeyName(t, o.Key) + ")"
	}
	if on {
		return t.PaintMark(Focus) + t.Style(Focus).Render("["+text+"]")
	}
	return "  " + text + " "
}
