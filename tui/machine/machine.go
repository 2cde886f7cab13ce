// Package machine is the screens with the job's inputs: every field with its unit,
// what it is, how to measure it, and what is wrong with what was typed. One screen
// shows some of the job file's tables; what they lead to stands beside them.
package machine

import (
	"fmt"
	"slices"
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
	at     kit.Rect
	// result is what stands under the help: what the inputs lead to.
	result func(s *session.Session, w int) []string
}

// NewMachine is the screen for the iron, the slot, the old winding and its readings.
func NewMachine() *View {
	return &View{name: "Machine", tables: []string{"", "machine", "slot", "old", "spin", "short", "amps", "coil", "field"}, result: machineResult}
}

// NewDrive is the screen for the drive, the battery and what is wanted.
func NewDrive() *View {
	return &View{name: "Drive", tables: []string{"drive", "drive_point", "battery", "target"}, result: DriveFollows}
}

// Name stands on the tab.
func (v *View) Name() string { return v.name }

// Typing reports whether the marked field takes letters.
func (v *View) Typing(*session.Session) bool { return v.form.Typing() }

// page is how many fields pgup and pgdown pass.
const page = 8

// Bindings are the keys of a form.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	const group = "Filling in"
	by := func(rows int) func() { return func() { v.form = v.form.By(rows) } }
	choices := !v.form.Typing()
	list := []kit.Binding{
		kit.Bind(group, "down enter", "next field", "The next field.", by(1)),
		kit.Bind(group, "up", "", "The field before.", by(-1)),
		kit.Bind(group, "right space", "", "In a field with ◂ ▸: the next choice.", func() { v.step(s, 1) }).When(choices),
		kit.Bind(group, "left", "", "In a field with ◂ ▸: the choice before.", func() { v.step(s, -1) }).When(choices),
		kit.Bind(group, "pgdown", "further", "Several fields down.", by(page)),
		kit.Bind(group, "pgup", "", "Several fields up.", by(-page)),
		kit.Bind(group, "ctrl+home", "", "The first field.", by(-len(v.form.Rows))),
		kit.Bind(group, "ctrl+end", "", "The last field.", by(len(v.form.Rows))),
		kit.Bind(group, "home", "", "The beginning of the text, and from there the first field.", func() { v.form = v.form.Home() }),
		kit.Bind(group, "end", "", "The end of the text, and from there the last field.", func() { v.form = v.form.End() }),
		kit.Bind(group, "ctrl+k", "empty", "Empty the field: nothing is said, the dim value holds.", func() {
			s.Edit(s.Document().Clear(v.form.Focused().ID))
		}),
	}
	return append(list, v.form.Bindings()...)
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	if _, used := kit.Press(v.Bindings(s), msg); used {
		return true
	}
	next, edit, used := v.form.Key(msg)
	v.form = next
	v.take(s, edit)
	return used
}

// step turns a field with choices.
func (v *View) step(s *session.Session, by int) {
	next, edit := v.form.Step(by)
	v.form = next
	v.take(s, edit)
}

// take puts an edit into the job.
func (v *View) take(s *session.Session, edit form.Edit) {
	if edit.Changed {
		s.Type(edit.ID, edit.Text)
	}
}

// SetSize brings the rows up to what the document says.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
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
	if f.Name == "field" && f.Table != "" {
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
		if given && !slices.Contains(f.Words, text) {
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

// markOf tells a guess from a measured value.
func markOf(text string) kit.Role {
	if len(text) > 0 && text[0] == '~' {
		return kit.Guessed
	}
	return kit.Measured
}

// DrawForm is the form with the marked field explained under it.
func (v *View) DrawForm(s *session.Session) []kit.Block {
	form, help := v.at.SplitBottom(6)
	return []kit.Block{v.fields(s, form), v.explain(s, help)}
}

// Draw fills the rectangle: the form, and beside or under it help and results.
func (v *View) Draw(s *session.Session) []kit.Block {
	r := v.at
	if r.W < 100 {
		return v.DrawForm(s)
	}
	form, side := r.SplitRight(sideWidth(r.W))
	form.W--
	help, result := side.SplitTop(min(11, r.H/2))
	in := kit.Inner(result)
	return []kit.Block{
		v.fields(s, form), v.explain(s, help),
		kit.Box(s.Theme, result, "What follows", append(problems(s, in.W), v.result(s, in.W)...)),
	}
}

// fields is the form.
func (v *View) fields(s *session.Session, r kit.Rect) kit.Block {
	return kit.Bare(s.Theme, r, v.form.Lines(s.Theme, r.W, r.H))
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
