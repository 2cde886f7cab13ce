package kit

import (
	"strings"
	"unicode/utf8"
)

// Choice is a picker: a list of options in a box over the screen. Arrows, pgup,
// pgdown, home and end move; a letter or digit goes to the next option that begins
// with it; enter takes it, esc leaves without choosing. Nothing shows one yet: it is for
// the choices of a field and for the commands by name.
type Choice struct {
	Title   string
	Options []Option
	Cursor  int
}

// Pick returns a picker with the cursor on the option with the given ID, or on
// the first.
func Pick(title string, options []Option, id string) Choice {
	c := Choice{Title: title, Options: options}
	for i, o := range options {
		if o.ID == id {
			c.Cursor = i
			break
		}
	}
	return c
}

// Key handles one key; keys that mean nothing here are swallowed.
func (c Choice) Key(key string) (Choice, Answer) {
	n := len(c.Options)
	if n == 0 {
		return c, Answer{Done: key == "esc" || key == "enter"}
	}
	at := clamp(c.Cursor, 0, n-1)
	switch key {
	case "up", "shift+tab":
		at--
	case "down", "tab":
		at++
	case "pgup":
		at -= 8
	case "pgdown":
		at += 8
	case "home":
		at = 0
	case "end":
		at = n - 1
	case "enter":
		return c, Answer{true, c.Options[at].ID}
	case "esc":
		return c, Answer{Done: true}
	default:
		at = c.jump(key, at)
	}
	c.Cursor = clamp(at, 0, n-1)
	return c, Answer{}
}

// jump is the next option after from that begins with the typed character.
func (c Choice) jump(key string, from int) int {
	if utf8.RuneCountInString(key) != 1 {
		return from
	}
	for i := range c.Options {
		j := (from + 1 + i) % len(c.Options)
		if strings.HasPrefix(strings.ToLower(c.Options[j].Label), strings.ToLower(key)) {
			return j
		}
	}
	return from
}

// Draw draws the picker in the middle of within, scrolled so that the cursor shows.
func (c Choice) Draw(t Theme, within Rect) Block {
	at := clamp(c.Cursor, 0, len(c.Options)-1)
	labelW, noteW := 0, 0
	for _, o := range c.Options {
		labelW, noteW = max(labelW, Width(t.Text(o.Label))), max(noteW, Width(t.Text(o.Note)))
	}
	lines := make([]string, len(c.Options))
	for i, o := range c.Options {
		mark, label := " ", t.Fit(o.Label, labelW)
		if i == at {
			mark, label = t.PaintMark(Focus), t.Style(Focus).Render(label)
		}
		lines[i] = mark + " " + label + "  " + t.Paint(Hint, o.Note)
	}
	w := max(labelW+noteW+6, Width(t.Text(c.Title))+4, 20)
	r := within.Centre(w+4, len(lines)+2)
	in := Inner(r)
	return Panel{Title: c.Title, Focused: true}.Draw(t, r, Window(t, lines, at, in.W, in.H))
}
