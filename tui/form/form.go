package form

import (
	"slices"
	"strings"
	"unicode/utf8"

	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// Row is one labelled input of a form.
type Row struct {
	ID      string // unique in the form; what the owner gets with an edit
	Group   string // a heading is shown where it differs from the row before
	Label   string
	Unit    string
	Help    string // what it is and how to measure it; the owner shows it with [Form.HelpLines]
	Text    string // what the person typed, as typed
	Ghost   string // shown dim while Text is empty: the value that then applies
	Brief   string // the same in few words, where the whole does not fit
	Warning string // doubtful: shown behind the value with a mark
	// Grave is a warning of something impossible, marked as such.
	Grave   bool
	Error   string // not usable: shown behind or below the value with a mark
	Note    string // shown behind the value where nothing is wrong, in the style of NoteAs
	Few     string // the note where the whole does not fit
	Uncut   bool   // the note is a figure: whole or not at all
	NoteAs  kit.Role
	Mark    kit.Role // Measured, Derived, Guessed…: its mark precedes the unit
	Choices []string // not empty: one of these, picked from a list
	Needed  bool     // empty, and a figure waits for it: marked so
	// Adds marks a row that holds no value: the owner makes an entry of it, such as a reading of a kind
	// that may occur many times.
	Adds bool
}

// Edit tells the owner what a key changed.
type Edit struct {
	Changed bool
	ID      string
	Text    string // the row's whole new text
	// Done is set when the value was taken or left: what is typed next is another value.
	Done bool
}

// Form is an ordered list of rows, one of which has the focus. It is a value: keys return a new one and
// never change an older copy.
//
// A row is closed until a value is given. Typing or pasting begins a new value in place of the present
// one; [Form.Edit] opens the present one. In a row with choices both show the list of them. Nothing
// that is typed is lost: digits typed on an untouched list go to the field below it, and so do those
// behind letters that mark a choice ([Form.Passes]); text that matches no choice stays in the field as
// typed, for its owner to say what is wrong with it.
type Form struct {
	Rows   []Row
	Focus  int  // index into Rows
	Open   bool // the focused row's text is being edited
	Cursor int  // in that text, in runes
	// Asked is set where the open text was asked back: a figure typed next replaces it ([TextLine.Anew]).
	Asked bool
	// Held is set while the keys go elsewhere on the screen: the focused row keeps its mark, but is not
	// drawn as having the keys.
	Held bool
	// LabelW, ValueW and UnitW are the minimum widths of the columns of labels, values and units, where
	// there is room: those of the widest rows that may come and go.
	LabelW, ValueW, UnitW int
	// List is the open list of choices.
	List kit.Choice
	// picking is set while List is open; before is the text as it was when the row opened.
	picking bool
	before  string
}

// NewForm is a form of these rows with the focus on the first.
func NewForm(rows []Row) Form { return Form{Rows: rows}.focusOn(0) }

// WithRows is the form with other rows, or the same with new texts and errors. The focus stays on the
// row with the same ID if it still exists, else near its place; the cursor stays where it was.
func (f Form) WithRows(rows []Row) Form {
	id := f.Focused().ID
	f.Rows = rows
	for i, r := range rows {
		if r.ID == id {
			f.Focus = i
			f.Cursor = min(f.Cursor, utf8.RuneCountInString(r.Text))
			return f
		}
	}
	return f.focusOn(f.Focus)
}

// FocusID is the form with the focus on the row with this ID; unchanged when
// there is none.
func (f Form) FocusID(id string) Form {
	for i, r := range f.Rows {
		if r.ID == id {
			return f.focusOn(i)
		}
	}
	return f
}

// Focused is the row with the focus, the zero Row in an empty form.
func (f Form) Focused() Row {
	if f.Focus < 0 || f.Focus >= len(f.Rows) {
		return Row{}
	}
	return f.Rows[f.Focus]
}

// Typing reports whether text keys would go into a field now, so that single-letter bindings must not
// take them.
func (f Form) Typing() bool { return f.Focused().ID != "" }

// Editing reports whether a value is being given: a text is open, or a list.
func (f Form) Editing() bool { return f.Open || f.picking }

// Picking reports whether the list of choices is open.
func (f Form) Picking() bool { return f.picking }

// Edit opens the focused row with what it says, or its list of choices.
func (f Form) Edit() Form {
	r := f.Focused()
	switch {
	case r.ID == "" || r.Adds:
	case len(r.Choices) > 0:
		f.picking, f.List = true, kit.Pick(r.Label, choices(r), r.Text)
		f.List.ByName = true
		f.List.None = "; enter leaves it in the field, marked as not usable"
	default:
		f.Open, f.before, f.Cursor = true, r.Text, utf8.RuneCountInString(r.Text)
	}
	return f
}

// nothing is the ID of the choice that means not given.
const nothing = ""

// alsoCalled are other words of the trade by which a choice is found.
var alsoCalled = map[string]string{"tapered": "trapezoid trapezium", "lfp": "lithium iron phosphate", "round": "u-shaped", "parallel": "rectangular straight"}

// choices are a row's choices as options, the empty one labelled with what then applies.
func choices(r Row) []kit.Option {
	var list []kit.Option
	for _, c := range r.Choices {
		o := kit.Option{ID: c, Label: c, Also: alsoCalled[c]}
		if c == r.Ghost {
			o.Note = "taken when empty"
		}
		list = append(list, o)
	}
	empty := kit.Option{ID: nothing, Label: "leave empty"}
	if r.Ghost != "" {
		empty.Note = "(" + r.Ghost + ")"
	}
	return append(list, empty)
}

// Take closes the focused row and goes to the next.
func (f Form) Take() (Form, Edit) {
	id := f.Focused().ID
	return f.closed().By(1), Edit{ID: id, Done: true}
}

// Leave closes the focused row with the text it had before.
func (f Form) Leave() (Form, Edit) {
	edit := Edit{ID: f.Focused().ID, Done: true}
	if f.Open && f.Focused().Text != f.before {
		f = f.withText(f.before)
		edit.Changed, edit.Text = true, f.before
	}
	return f.closed(), edit
}

// closed is the form with nothing open.
func (f Form) closed() Form {
	f.Open, f.picking, f.Asked = false, false, false
	return f
}

// Key gives a key message to the focused row: to its open text or list, or, where it is closed, as the
// beginning of a new value. used is false for keys that mean nothing there.
func (f Form) Key(msg tea.KeyMsg) (next Form, edit Edit, used bool) {
	switch {
	case f.picking:
		return f.pick(msg)
	case f.Open:
		return f.typed(msg)
	case f.Focused().ID == "" || f.Focused().Adds || msg.Alt && !msg.Paste:
		return f, Edit{}, false
	}
	if !begins(msg) {
		return f, Edit{}, false
	}
	return f.begin(msg)
}

// Begins reports whether a key or a paste would begin a value, for the owner of a row that
// adds.
func (f Form) Begins(msg tea.KeyMsg) bool {
	return !f.Editing() && begins(msg) && (!msg.Alt || msg.Paste) && !kit.Garbage(msg)
}

func begins(msg tea.KeyMsg) bool {
	return msg.Type == tea.KeyRunes || msg.Type == tea.KeySpace || msg.Type == tea.KeyBackspace || msg.Paste
}

// begin opens the closed row for a key or a paste: a space opens it as it is, a backspace removes its
// last letter, anything else replaces its text.
func (f Form) begin(msg tea.KeyMsg) (Form, Edit, bool) {
	if kit.Garbage(msg) {
		return f, Edit{}, true
	}
	f = f.passing(msg)
	row := f.Focused()
	f = f.Edit()
	if msg.Type == tea.KeySpace {
		return f, Edit{ID: row.ID, Done: true}, true
	}
	if len(row.Choices) == 0 {
		if msg.Type != tea.KeyBackspace {
			f = f.withText("")
			f.Cursor = 0
		}
		return f.typed(msg)
	}
	if pasted := strings.TrimSpace(string(msg.Runes)); msg.Paste && slices.Contains(row.Choices, pasted) {
		return f.chosen(pasted)
	}
	return f.pick(msg)
}

// typed gives a key to the open text.
func (f Form) typed(msg tea.KeyMsg) (Form, Edit, bool) {
	row := f.Focused()
	line := TextLine{row.Text, f.Cursor}
	if f.Asked {
		line, f.Asked = line.Anew(msg), false
	}
	in, used := line.Key(msg)
	f.Cursor = in.Cursor
	if in.Text == row.Text && in.Text == f.before {
		return f, Edit{}, used
	}
	return f.withText(in.Text), Edit{Changed: true, ID: row.ID, Text: in.Text}, used
}

// passing is the form with the focus where a key or a paste belongs: digits typed on an untouched list
// without digits, for which nothing waits, are for the first field below it that accepts them, when
// that is in its section and empty.
func (f Form) passing(msg tea.KeyMsg) Form {
	row, typed := f.Focused(), string(msg.Runes)
	if len(row.Choices) == 0 || row.Text != "" || row.Needed || !isFigure(typed) ||
		len(kit.Choice{Options: choices(row), Typed: typed}.Matching()) > 0 {
		return f
	}
	for i, r := range f.Rows[f.Focus+1:] {
		list := len(r.Choices) > 0
		switch {
		case r.Group != row.Group, r.Adds, r.Text != "", list && r.Needed:
			return f
		case !list:
			return f.focusOn(f.Focus + 1 + i)
		}
	}
	return f
}

// isFigure reports whether a text begins like a number, guessed ones included.
func isFigure(text string) bool { return text != "" && strings.ContainsAny(text[:1], "0123456789~.") }

// Passes reports whether a figure typed on the open list is for the field below: the letters typed so
// far begin the name of the marked choice, and no choice continues with the figure. The marked choice
// is then accepted first, as enter does. Letters that a choice merely contains may begin a value for
// another field, as in a18.
func (f Form) Passes(msg tea.KeyMsg) bool {
	if !f.picking || msg.Type != tea.KeyRunes || msg.Paste || msg.Alt || strings.TrimSpace(f.List.Typed) == "" || !isFigure(string(msg.Runes)) {
		return false
	}
	with := f.List
	with.Typed += string(msg.Runes)
	marked := f.List.Matching()
	return len(marked) > 0 && begun(marked[0], f.List.Typed) && len(with.Matching()) == 0
}

// begun reports whether a choice, or one of its synonyms, begins with the letters.
func begun(o kit.Option, typed string) bool {
	typed = strings.ToLower(strings.TrimSpace(typed))
	return slices.ContainsFunc(append(strings.Fields(strings.ToLower(o.Also)), strings.ToLower(o.Label)), func(name string) bool { return strings.HasPrefix(name, typed) })
}

// pick gives a key to the open list. Text that matches no choice is taken as typed.
func (f Form) pick(msg tea.KeyMsg) (Form, Edit, bool) {
	if typed := strings.TrimSpace(f.List.Typed); msg.String() == "enter" && typed != "" && len(f.List.Matching()) == 0 {
		return f.chosen(typed)
	}
	list, answer := f.List.Key(msg)
	f.List = list
	switch {
	case !answer.Done:
		return f, Edit{}, true
	case msg.String() == "enter":
		return f.chosen(answer.ID)
	}
	return f.closed(), Edit{ID: f.Focused().ID, Done: true}, true
}

// chosen takes a choice and goes on to the next row.
func (f Form) chosen(text string) (Form, Edit, bool) {
	id := f.Focused().ID
	changed := f.Focused().Text != text
	return f.withText(text).closed().By(1), Edit{Changed: changed, ID: id, Text: text, Done: true}, true
}

// Click takes the option of the open list at a cell, when it was drawn within.
func (f Form) Click(t kit.Theme, within kit.Rect, x, y int) (Form, Edit) {
	id, ok := f.List.At(t, within, x, y)
	if !ok {
		return f, Edit{}
	}
	f, edit, _ := f.chosen(id)
	return f, edit
}

// Bindings tell the keys of the open text.
func (f Form) Bindings() []kit.Binding { return told(lineAll, f.Open) }

// Step moves a choice row by so many choices, wrapping at its ends; other rows stay as they are.
func (f Form) Step(by int) (Form, Edit) {
	row := f.Focused()
	n := len(row.Choices)
	if n == 0 {
		return f, Edit{}
	}
	at := slices.Index(row.Choices, row.Text)
	if at < 0 {
		if at = slices.Index(row.Choices, row.Ghost); at < 0 && by < 0 {
			at = 0
		}
	}
	text := row.Choices[((at+by)%n+n)%n]
	if text == row.Text {
		return f, Edit{}
	}
	return f.withText(text), Edit{Changed: true, ID: row.ID, Text: text, Done: true}
}

// withText sets the focused row's text in a fresh list of rows.
func (f Form) withText(text string) Form {
	f.Rows = slices.Clone(f.Rows)
	f.Rows[f.Focus].Text = text
	return f
}
