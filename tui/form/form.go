package form

import (
	"slices"
	"unicode/utf8"

	"slotwright/tui/kit"

	tea "github.com/charmbracelet/bubbletea"
)

// Row is one labelled input of a form.
type Row struct {
	ID      string // unique in the form; what the owner gets with an edit
	Group   string // a heading stands where it differs from the row before
	Label   string
	Unit    string
	Help    string   // what it is and how to measure it; the owner shows it with [Form.HelpLines]
	Text    string   // what the person typed, as typed
	Ghost   string   // shown dim while Text is empty: the value that then holds
	Warning string   // doubtful: said behind the value with a mark
	Error   string   // not usable: said behind or below the value with a mark
	Mark    kit.Role // Measured, Derived, Guessed…: its mark stands before the unit
	Choices []string // not empty: the row steps through these instead of being typed
}

// Edit tells the owner what a key changed.
type Edit struct {
	Changed bool
	ID      string
	Text    string // the row's whole new text
}

// Form is an ordered list of rows, one of which has the focus. It is a value:
// keys return a new one and never change an older copy.
type Form struct {
	Rows   []Row
	Focus  int // index into Rows
	Cursor int // in the focused row's text, in runes
}

// NewForm is a form of these rows with the focus on the first.
func NewForm(rows []Row) Form { return Form{Rows: rows}.focusOn(0) }

// WithRows is the form with other rows, or the same with new texts and errors. The
// focus stays on the row with the same ID if it is still there, else near its
// place; the cursor stays where it was.
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

// Typing reports whether text keys would go into a field now, so that
// single-letter bindings must not be offered first. It is false on a choice row.
func (f Form) Typing() bool {
	r := f.Focused()
	return r.ID != "" && len(r.Choices) == 0
}

// Key gives a key message to the text with the focus. used is false for keys that mean
// nothing there, and on a choice row, which [Form.Step] turns.
func (f Form) Key(msg tea.KeyMsg) (next Form, edit Edit, used bool) {
	if !f.Typing() {
		return f, Edit{}, false
	}
	row := f.Focused()
	in, used := TextLine{row.Text, f.Cursor}.Key(msg)
	f.Cursor = in.Cursor
	if in.Text == row.Text {
		return f, Edit{}, used
	}
	return f.withText(in.Text), Edit{true, row.ID, in.Text}, used
}

// Bindings tell the keys of the text with the focus, but for home and end, which
// [Form.Home] and [Form.End] do.
func (f Form) Bindings() []kit.Binding { return told(lineEdits, f.Typing()) }

// Step turns a choice row by so many choices, round its ends; other rows stay as they are.
func (f Form) Step(by int) (Form, Edit) {
	row := f.Focused()
	n := len(row.Choices)
	if n == 0 {
		return f, Edit{}
	}
	at := slices.Index(row.Choices, row.Text)
	if at < 0 && by < 0 {
		at = 0
	}
	text := row.Choices[((at+by)%n+n)%n]
	if text == row.Text {
		return f, Edit{}
	}
	return f.withText(text), Edit{true, row.ID, text}
}

// withText sets the focused row's text in a fresh list of rows.
func (f Form) withText(text string) Form {
	f.Rows = slices.Clone(f.Rows)
	f.Rows[f.Focus].Text = text
	return f
}
