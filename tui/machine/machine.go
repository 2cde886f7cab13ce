// Package machine is the screens with the job's inputs: every field with its unit,
// what it is, how to measure it, and what is wrong with what was typed. One screen
// shows some of the job file's tables; what they lead to stands beside them.
package machine

import (
	"fmt"
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"

	tea "github.com/charmbracelet/bubbletea"
)

// View is one screen of inputs.
type View struct {
	name   string
	tables []string
	form   form.Form
	made   bool
	// result is what stands under the help: what the inputs lead to.
	result func(s *session.Session, w int) []string
}

// NewMachine is the screen for the iron, the slot, the old winding and its readings.
func NewMachine() *View {
	return &View{name: "Machine", tables: []string{"", "machine", "slot", "old", "spin", "short", "field"}, result: machineResult}
}

// NewDrive is the screen for the drive, the battery and what is wanted.
func NewDrive() *View {
	return &View{name: "Drive", tables: []string{"drive", "drive_point", "battery", "target"}, result: DriveFollows}
}

// Name stands on the tab.
func (v *View) Name() string { return v.name }

// Typing reports whether the marked field takes letters.
func (v *View) Typing(s *session.Session) bool { v.sync(s); return v.form.Typing() }

// Bindings are the keys of a form.
func (v *View) Bindings(*session.Session) []kit.Binding {
	return []kit.Binding{
		{ID: "down", Keys: []string{"down", "enter"}, Label: "next field", Help: "The next field.", Group: "Filling in"},
		{ID: "up", Keys: []string{"up"}, Help: "The field before.", Group: "Filling in"},
		{ID: "step", Keys: []string{"right", "left"}, Help: "In a field with ◂ ▸: the next or previous choice.", Group: "Filling in"},
		{ID: "page", Keys: []string{"pgdown", "pgup"}, Label: "further", Help: "Several fields down or up.", Group: "Filling in"},
		{ID: "clear", Keys: []string{"ctrl+k"}, Label: "empty", Help: "Empty the field: nothing is said, the dim value holds.", Group: "Filling in"},
	}
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	v.sync(s)
	if msg.String() == "ctrl+k" {
		s.Edit(s.Document().Clear(v.form.Focused().ID))
		return true
	}
	next, edit, used := v.form.Key(msg)
	v.form = next
	if edit.Changed {
		s.Type(edit.ID, edit.Text)
	}
	return used
}

// sync brings the rows up to what the document says.
func (v *View) sync(s *session.Session) {
	rows := v.rows(s)
	if !v.made {
		v.form, v.made = form.NewForm(rows), true
		return
	}
	keepTyping(v.form.Focused(), rows)
	v.form = v.form.WithRows(rows)
}

// keepTyping leaves the field that is being typed into as it was typed, blanks at its ends
// included: the document does without them, but a person is on the way to the next word.
func keepTyping(typing form.Row, rows []form.Row) {
	for i := range rows {
		if rows[i].ID == typing.ID && len(rows[i].Choices) == 0 && strings.TrimSpace(typing.Text) == rows[i].Text {
			rows[i].Text = typing.Text
		}
	}
}

// rows is the form's rows, from the job file's table of fields.
func (v *View) rows(s *session.Session) []form.Row {
	var rows []form.Row
	j := s.Job()
	for _, name := range v.tables {
		t, _ := job.TableOf(name)
		n := 1
		if t.Many() {
			n = min(s.Document().Count(name)+1, t.Most) // an empty one to begin the next
		}
		for i := range n {
			for _, f := range job.InputsOf(name) {
				if f.Name != "format" && f.Applies(&j) && applies(f, &j) {
					rows = append(rows, rowOf(s, t, f, i))
				}
			}
		}
	}
	return rows
}

// applies leaves out the field current of readings where there is no field coil.
func applies(f *job.Input, j *job.Job) bool {
	if (f.Table == "spin" || f.Table == "short") && f.Name == "field" {
		return j.Field.Kind != "magnets"
	}
	return true
}

// rowOf is one field as a row.
func rowOf(s *session.Session, t *job.Table, f *job.Input, i int) form.Row {
	path := f.PathAt(i)
	text, u, given := s.Document().Typed(path)
	if !given {
		u = s.Units.For(f.Dim)
	}
	r := form.Row{
		ID: path, Group: t.Title, Label: f.Label, Unit: u.Name, Text: text, Ghost: f.Empty(u),
		Help: f.Help + " " + f.How,
	}
	if t.Many() {
		r.Group = fmt.Sprintf("%s %d", t.Title, i+1)
	}
	if f.Kind == job.Word {
		r.Choices = f.Words
		if given && !known(f.Words, text) {
			r.Choices = append([]string{text}, f.Words...)
		}
	}
	if given {
		r.Mark = markOf(text)
	}
	if p, bad := s.Document().ProblemAt(path); bad {
		r.Error = "read " + p.Read + ", expected " + p.Expected
		r.Mark = kit.Broken
		return r
	}
	for _, d := range s.Outcome().Findings {
		if d.Path == path && d.Severity >= winding.Doubt {
			r.Warning = d.Text
			if d.Fix != "" {
				r.Warning += "; " + d.Fix
			}
		}
	}
	return r
}

func known(words []string, w string) bool {
	for _, k := range words {
		if k == w {
			return true
		}
	}
	return false
}

// markOf tells a guess from a measured value.
func markOf(text string) kit.Role {
	if len(text) > 0 && text[0] == '~' {
		return kit.Guessed
	}
	return kit.Measured
}

// DrawForm is the form with the marked field explained under it.
func (v *View) DrawForm(s *session.Session, r kit.Rect) []kit.Block {
	v.sync(s)
	form, help := r.SplitBottom(6)
	return []kit.Block{
		kit.Bare(s.Theme, form, v.form.Lines(s.Theme, form.W, form.H)),
		v.explain(s, help),
	}
}

// Draw fills the rectangle: the form, and beside or under it help and results.
func (v *View) Draw(s *session.Session, r kit.Rect) []kit.Block {
	v.sync(s)
	t := s.Theme
	if r.W < 100 {
		form, help := r.SplitBottom(6)
		return []kit.Block{
			kit.Bare(t, form, v.form.Lines(t, form.W, form.H)),
			v.explain(s, help),
		}
	}
	form, side := r.SplitRight(sideWidth(r.W))
	form.W--
	help, result := side.SplitTop(min(11, r.H/2))
	return []kit.Block{
		kit.Bare(t, form, v.form.Lines(t, form.W, form.H)),
		v.explain(s, help),
		kit.Box(t, result, "What follows", append(problems(s, kit.Inner(result).W), v.result(s, kit.Inner(result).W)...)),
	}
}

// explain is the marked field in a box with its name.
func (v *View) explain(s *session.Session, r kit.Rect) kit.Block {
	return kit.Box(s.Theme, r, v.form.Focused().Label, v.form.Explain(s.Theme, kit.Inner(r).W))
}

// problems is what in the file cannot be used.
func problems(s *session.Session, w int) []string {
	var out []string
	for _, text := range s.Problems() {
		out = append(out, s.Theme.WrapPaint(kit.Broken, s.Theme.Mark(kit.Broken)+" "+text, w)...)
	}
	return out
}

func sideWidth(w int) int { return min(56, w*2/5) }
