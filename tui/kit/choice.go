package kit

import (
	"slices"
	"strings"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
)

// Choice is a picker: a list of options in a box over the screen, and a line above it with what was
// typed. Typing filters: only the options that match remain, those that begin with it first. Arrows,
// pgup, pgdown, home and end move; enter takes the one marked, esc leaves without choosing. It is for
// the choices of a field, the commands by name, the findings and the files.
type Choice struct {
	Title   string
	Foot    string // in the lower border; "" says how to take and to leave
	Options []Option
	Cursor  int    // among the options that match
	Typed   string // what was typed
	// Tall gives every option as many lines as its label needs, instead of one: for sentences.
	Tall bool
	// Closest puts the option with the shortest name first among equally good matches: for lists that
	// mix several kinds of options, whose order says nothing.
	Closest bool
	// ByName searches names alone, not the notes beside them: for the choices of a field, where a note
	// says what applies when none is chosen.
	ByName bool
	// None is shown behind the typed text when no option matches: what enter then does.
	None string
}

// maxFilter is how much may be typed into a picker.
const maxFilter = 60

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
func (c Choice) Key(msg tea.KeyMsg) (Choice, Answer) {
	if msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace || msg.Paste {
		return c.filtered(c.Typed + typedText(msg)), Answer{}
	}
	list := c.Matching()
	at := clamp(c.Cursor, 0, len(list)-1)
	switch msg.String() {
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
		at = len(list) - 1
	case "backspace", "ctrl+h":
		if runes := []rune(c.Typed); len(runes) > 0 {
			return c.filtered(string(runes[:len(runes)-1])), Answer{}
		}
	case "ctrl+u":
		return c.filtered(""), Answer{}
	case "enter":
		if len(list) == 0 {
			return c, Answer{}
		}
		return c, Answer{true, list[at].ID}
	case "esc", "ctrl+c":
		return c, Answer{Done: true}
	}
	c.Cursor = clamp(at, 0, len(list)-1)
	return c, Answer{}
}

// typedText is the printable text of a key or a paste, in one line.
func typedText(msg tea.KeyMsg) string {
	text := string(msg.Runes)
	if msg.Type == tea.KeySpace {
		text = " "
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) {
			return r
		}
		return -1
	}, Clean(text))
}

// filtered is the picker with this typed, the cursor on the best match.
func (c Choice) filtered(typed string) Choice {
	if runes := []rune(typed); len(runes) > maxFilter {
		typed = string(runes[:maxFilter])
	}
	c.Typed, c.Cursor = typed, 0
	return c
}

// Matching is the options that match what was typed, the best first: those of which it is a whole name,
// those of which a name begins with it, then those in which it is a whole word, those in which a word
// begins with it, then those that contain it anywhere or have it as another name; where Closest is set,
// in each of these classes the near ones first, and of them the one with the shortest such name.
// Colons, commas and ellipses are ignored.
func (c Choice) Matching() []Option {
	want := plain(c.Typed)
	if want == "" {
		return c.Options
	}
	type found struct {
		Option
		rank, length int
	}
	var list []found
	for _, o := range c.Options {
		named := o
		if c.ByName {
			named.Note = ""
		}
		if rank, length := named.match(want); rank < noMatch {
			list = append(list, found{o, rank, length})
		}
	}
	slices.SortStableFunc(list, func(a, b found) int {
		switch {
		case a.rank != b.rank || !c.Closest:
			return a.rank - b.rank
		case a.Far != b.Far && a.Far:
			return 1
		case a.Far != b.Far:
			return -1
		}
		return a.length - b.length
	})
	out := make([]Option, len(list))
	for i, f := range list {
		out[i] = f.Option
	}
	return out
}

// How well an option matches, the best first.
const (
	wholeName = iota
	nameBegins
	hasWord
	wordBegins
	anywhere
	noMatch
)

// match is how well an option matches, by its best name, and the length of the shortest of the names
// that match equally well.
func (o *Option) match(want string) (rank, length int) {
	rank = noMatch
	for _, name := range append([]string{o.Label, o.Short}, o.Names...) {
		name = plain(name)
		r := noMatch
		switch {
		case name == want:
			r = wholeName
		case strings.HasPrefix(name, want):
			r = nameBegins
		case strings.Contains(" "+name+" ", " "+want+" "):
			r = hasWord
		case strings.Contains(" "+name, " "+want):
			r = wordBegins
		}
		if n := Width(name); r < rank || r == rank && n < length {
			rank, length = r, n
		}
	}
	label := plain(o.Label)
	if rank == noMatch && (strings.Contains(label+" "+plain(o.Note), want) || strings.Contains(" "+plain(o.Also), " "+want)) {
		return anywhere, Width(label)
	}
	return rank, length
}

// plain is text as it is searched: in lower case, one blank between words, without the marks that a
// label has and that nobody types.
func plain(text string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return unicode.IsSpace(r) || strings.ContainsRune(":,…", r)
	}), " ")
}

// At is the option at a cell of the frame, for a click, when the picker is drawn within.
func (c Choice) At(t Theme, within Rect, x, y int) (id string, ok bool) {
	r, lines, owner, _ := c.lay(t, within)
	in := Inner(r)
	list := c.Matching()
	if !in.Contains(x, y) || len(list) == 0 {
		return "", false
	}
	head := len(c.head(t))
	shown := in.H - head
	top := clamp(c.line(owner)-shown/2, 0, max(0, len(lines)-shown))
	i := y - in.Y - head + top
	if y-in.Y < head || i < 0 || i >= len(owner) {
		return "", false
	}
	return list[owner[i]].ID, true
}

// head is the line with what was typed.
func (c Choice) head(t Theme) []string {
	if c.Typed == "" {
		return nil
	}
	return []string{t.Paint(Key, Clean(c.Typed)) + t.Glyphs().Cursor}
}

// line is the line of the option with the cursor.
func (c Choice) line(owner []int) int {
	for i, o := range owner {
		if o == c.Cursor {
			return i
		}
	}
	return 0
}

// lay is the picker's rectangle, its lines, and the option that each belongs to.
func (c Choice) lay(t Theme, within Rect) (r Rect, lines []string, owner []int, w int) {
	labelW, noteW := 0, 0
	for _, o := range c.Options {
		labelW, noteW = max(labelW, Width(t.Text(o.Lead+o.Label))), max(noteW, Width(t.Text(o.Note)))
	}
	w = max(min(labelW+noteW+6, within.W-4), Width(t.Text(c.Title))+4, 24)
	if c.Tall {
		w = min(within.W-4, max(w, 40), 96)
	}
	w = min(w, max(1, within.W-4))
	list := c.Matching()
	at := clamp(c.Cursor, 0, len(list)-1)
	for i, o := range list {
		for _, l := range c.option(t, o, i == at, labelW, w-2) {
			lines, owner = append(lines, l), append(owner, i)
		}
	}
	if len(list) == 0 {
		lines = t.WrapPaint(Hint, "nothing here has “"+Clean(c.Typed)+"” in it"+c.None, w-2)
	}
	return within.Centre(w+4, len(lines)+2+len(c.head(t))), lines, owner, w
}

// option is an option's lines.
func (c Choice) option(t Theme, o Option, on bool, labelW, w int) []string {
	mark, style := " ", Style{}
	if on {
		mark, style = t.PaintMark(Focus), t.Style(Focus)
	}
	if !c.Tall {
		if labelW > w-2 || labelW+4+Width(t.Text(o.Note)) > w && labelW > w*2/3 {
			labelW = max(1, w-4-min(Width(t.Text(o.Note)), w/3))
		}
		return []string{t.Fit(mark+" "+style.Render(t.Fit(o.Lead+o.Label, labelW))+"  "+t.Paint(Hint, o.Note), w)}
	}
	var out []string
	for i, l := range t.Hang(t.PaintMark(o.Mark)+" ", Plain, o.Label, w-2) {
		if i > 0 {
			mark = " "
		}
		if on {
			l = t.Fit(ansi.Strip(l), w-2) // a bar with one edge
		}
		out = append(out, mark+" "+style.Render(l))
	}
	for _, l := range t.WrapPaint(Hint, o.Note, w-4) {
		out = append(out, "    "+l)
	}
	return out
}

// Draw draws the picker in the middle of within, scrolled so that the cursor shows.
func (c Choice) Draw(t Theme, within Rect) Block {
	r, lines, owner, _ := c.lay(t, within)
	in := Inner(r)
	head := c.head(t)
	foot := c.Foot
	if foot == "" {
		foot = "enter takes, esc leaves"
	}
	body := append(head[:len(head):len(head)], Window(t, lines, c.line(owner), in.W, in.H-len(head))...)
	return Panel{Title: c.Title, Foot: foot, Focused: true}.Draw(t, r, body)
}
