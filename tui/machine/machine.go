// Package machine is the screens with the job's inputs: every field with its unit, what it is, how to
// measure it, and what is wrong with what was typed. One screen shows some of the job file's tables,
// with the results beside them.
package machine

import (
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding/shelf"

	tea "github.com/charmbracelet/bubbletea"
)

// View is one screen of inputs.
type View struct {
	name   string
	tables []string
	form   form.Form
	made   bool
	// adding is, by table, the entry that was asked for and is not yet in the file, counted
	// from 1.
	adding map[string]int
	// first is set while only the few things that matter first are shown.
	first bool
	// begins is set on the screen where a blank job begins.
	begins bool
	at     kit.Rect
	// said is the job's text since the open field was last typed into.
	said string
	// beside adds to a row what is shown beside its input, and reports whether the row is shown; nil
	// for neither.
	beside func(s *session.Session, r *form.Row) bool
	// offer is what the bench's records have for the marked field, where offers is set.
	offer  shelf.Hint
	offers bool
	// result is shown under the help: the figures that follow from the inputs.
	result func(s *session.Session, w int) []string
}

// NewMachine is the screen for the iron, the slot, the old winding and its readings.
func NewMachine() *View {
	return &View{name: "Machine", begins: true, tables: []string{"", "machine", "slot", "old", "spin", "short", "amps", "coil", "field"}, result: machineResult}
}

// NewDrive is the screen for the drive, the battery and what is wanted.
func NewDrive() *View {
	return &View{name: "Drive", tables: []string{"drive", "drive_point", "battery", "target"}, result: DriveFollows}
}

// Name is on the tab.
func (v *View) Name() string { return v.name }

// Hold says whether the keys go elsewhere on the screen for now.
func (v *View) Hold(held bool) { v.form.Held = held }

// Typing reports whether letters go into the marked field.
func (v *View) Typing(*session.Session) bool { return v.form.Typing() }

// Editing reports whether a value is being given.
func (v *View) Editing(*session.Session) bool { return v.form.Editing() }

// Bindings are the keys of a form: of its list or its text when one is open, else those that
// move.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	switch {
	case v.form.Picking():
		return v.picking(s)
	case v.form.Editing():
		return v.editing(s)
	}
	return v.moving(s)
}

// editing are the keys while a text is open.
func (v *View) editing(s *session.Session) []kit.Binding {
	const group = "Typing a value"
	return append([]kit.Binding{
		kit.Bind(group, "enter", "take it", "Take the value and go on to the next field.", func() {
			if !v.asksBack(s) {
				v.take(s)
			}
		}),
		kit.Bind(group, "esc", "leave it", "Leave the value as it was.", func() { v.leave(s) }),
		kit.Bind(group, "down", "", "Take the value; the field below.", func() { v.by(s, 1) }),
		kit.Bind(group, "up", "", "Take the value; the field above.", func() { v.by(s, -1) }),
	}, v.form.Bindings()...)
}

// picking describes the keys of the open list, which handles them itself.
func (v *View) picking(s *session.Session) []kit.Binding {
	const group = "Picking from a list"
	key := func(keys, label, help string) kit.Binding {
		return kit.Command(group, keys, label, help, func(msg tea.KeyMsg) tea.Cmd { v.give(s, msg); return nil })
	}
	return []kit.Binding{
		key("enter", "take it", "Take the one marked and go on to the next field."), key("esc", "leave it", "Leave the value as it was."),
		key("down", "", "The one below."), key("up", "", "The one above."),
		key("home", "", "The first."), key("end", "", "The last."), key("backspace", "", "Take the last letter back."),
	}
}

// moving are the keys while nothing is open.
func (v *View) moving(s *session.Session) []kit.Binding {
	const group = "Filling in"
	by := func(rows int) func() { return func() { v.by(s, rows) } }
	all := len(v.form.Rows)
	choice, adds := len(v.form.Focused().Choices) > 0, v.form.Focused().Adds
	list := v.offerBindings(s)
	if v.begins {
		list = append(list, kit.Bind(group, "ctrl+f", kit.Either(v.first, "every field", "first things"),
			"Only the few things that matter first, in the order of the bench, or every field.", func() { v.turn(s) }))
	}
	list = append(list, []kit.Binding{
		kit.Bind(group, "enter", kit.Either(adds, "add it", "next"), "Go on to the next field: what is there holds, or what stands dim. Beside a +, begin an entry.", func() {
			if !v.add(s) {
				v.by(s, 1)
			}
		}),
		kit.Bind(group, "space", kit.Either(adds, "", kit.Either(choice, "choices", "edit")), "Edit the value that is there, or list the choices. Letters and figures typed begin a new value, with a unit of its own where it has one (lengths in mm, cm, in, mil or thou); figures typed on a list of which nothing is said begin one in the field below.", func() {
			if !v.add(s) {
				v.form = v.form.Edit()
				s.Settle()
			}
		}),
		kit.Bind(group, "down", "", "The next field.", by(1)),
		kit.Bind(group, "up", "", "The field before.", by(-1)),
		kit.Bind(group, "pgdown", "section", "The next section.", func() { v.form = v.form.Section(1) }),
		kit.Bind(group, "pgup", "", "The section's beginning, and from there the one before.", func() { v.form = v.form.Section(-1) }),
		kit.Bind(group, "right", "", "In a field with ◂ ▸: the next choice.", func() { v.step(s, 1) }).When(choice),
		kit.Bind(group, "left", "", "In a field with ◂ ▸: the choice before.", func() { v.step(s, -1) }).When(choice),
		kit.Bind(group, "home ctrl+home", "", "The first field.", by(-all)),
		kit.Bind(group, "end ctrl+end", "", "The last field.", by(all)),
		kit.Bind(group, "ctrl+k delete", "empty", "Empty the field: nothing is said, the dim value holds.", func() {
			s.Edit(s.Document().Clear(v.form.Focused().ID))
		}),
	}...)
	return list
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) bool {
	if _, used := kit.Press(v.Bindings(s), msg); used {
		return true
	}
	return v.give(s, msg)
}

// give gives a key to the form, on a list one letter at a time: a digit behind letters that mark a
// choice takes it and is for the field below.
func (v *View) give(s *session.Session, msg tea.KeyMsg) (used bool) {
	if len(v.form.Focused().Choices) == 0 {
		return v.giveOne(s, msg)
	}
	for _, key := range kit.ExpandKeys(msg, false) {
		if v.form.Passes(key) {
			v.giveOne(s, tea.KeyMsg{Type: tea.KeyEnter})
		}
		used = v.giveOne(s, key)
	}
	return used
}

func (v *View) giveOne(s *session.Session, msg tea.KeyMsg) bool {
	if v.form.Begins(msg) {
		v.add(s)
	}
	was, row := v.form.Editing(), v.form.Focused()
	next, edit, used := v.form.Key(msg)
	if next.Editing() && !was {
		s.Settle()
		if to := next.Focused(); to.ID != row.ID {
			s.Say("these figures are for " + to.Label)
		}
	}
	v.form = next
	v.put(s, edit)
	return used
}

// asksBack asks for the gauge system of a wire that was typed as a bare number, where sizes other than
// AWG are in use: the field stays open, for a unit or another figure. Otherwise it says what the number is taken for.
func (v *View) asksBack(s *session.Session) bool {
	row := v.form.Focused()
	said, asks := s.BareWire(row.ID, row.Text)
	switch {
	case asks:
		v.form.Asked = true
		s.Warn(said)
	case said != "":
		s.Say(said)
	}
	return asks
}

// by moves the focus, and takes what was open.
func (v *View) by(s *session.Session, rows int) {
	if v.form.Open && v.asksBack(s) {
		return
	}
	if v.form.Editing() {
		v.refused(s, v.form.Focused().ID)
	}
	from := v.form.Focused().ID
	v.form = v.form.By(rows)
	s.Settle()
	if rows == 1 {
		v.behindSides(s, from)
	}
}

// behindSides marks the field after the slot's depth, where the area just taken was given as width ×
// depth and has become these.
func (v *View) behindSides(s *session.Session, taken string) {
	if _, _, area := s.Document().Typed("slot.area"); taken == "slot.area" && !area && s.Job().Slot.DepthMM.Given() {
		v.form = v.form.WithRows(v.rows(s)).FocusID("slot.depth").By(1)
	}
}

// refused says that what was just taken cannot be used. It stays where it was typed, with its mark and
// the reason, and what is typed next still goes into the next field: so neither is lost.
func (v *View) refused(s *session.Session, id string) {
	if p, bad := s.Document().ProblemAt(id); bad {
		s.Warn(s.NotTaken(p))
	}
}

// step moves a field with choices.
func (v *View) step(s *session.Session, by int) {
	next, edit := v.form.Step(by)
	v.form = next
	v.put(s, edit)
}

// take closes the open field.
func (v *View) take(s *session.Session) {
	next, edit := v.form.Take()
	v.form = next
	v.put(s, edit)
}

// leave closes the open field with its previous value, in the job too: the unit that was typed is
// reverted with it.
func (v *View) leave(s *session.Session) {
	next, edit := v.form.Leave()
	v.form = next
	s.Leave(edit.ID)
	v.put(s, form.Edit{ID: edit.ID, Done: true})
}

// put puts an edit into the job.
func (v *View) put(s *session.Session, edit form.Edit) {
	if edit.Changed && s.Type(edit.ID, edit.Text) {
		v.said = s.Document().Text()
	}
	if edit.Done {
		s.Settle()
		v.refused(s, edit.ID)
		if v.form.Focused().ID != edit.ID { // taken, not left
			v.behindSides(s, edit.ID)
		}
	}
	// What was taken may have brought new fields: the next is the next of the present ones.
	if edit.Changed && edit.Done && v.form.Focused().ID != edit.ID {
		v.form = v.form.FocusID(edit.ID).WithRows(v.rows(s)).By(1)
	}
}

// GoTo marks a field, if it is one of this screen's.
func (v *View) GoTo(s *session.Session, path string) bool {
	v.SetSize(s, v.at)
	first, adding := v.first, v.adding
	for _, wider := range []func(){func() {}, func() { v.first = false }, func() { v.adding = entryOf(path) }} {
		wider()
		v.SetSize(s, v.at)
		if v.form = v.form.FocusID(path); v.form.Focused().ID == path {
			return true
		}
	}
	v.first, v.adding = first, adding
	v.SetSize(s, v.at)
	return false
}

// Follow marks the first of some fields that is shown.
func (v *View) Follow(s *session.Session, fields []string) {
	v.SetSize(s, v.at)
	for _, path := range fields {
		if f := v.form.FocusID(path); f.Focused().ID == path {
			v.form = f
			return
		}
	}
}

// turn switches between the first things and every field. The marked field stays marked; where it is
// not among the others, as fields of other screens are not, the nearest before it is.
func (v *View) turn(s *session.Session) {
	was, at := v.form.Rows, v.form.Focus
	v.first = !v.first
	v.form = v.form.WithRows(v.rows(s))
	for ; at >= 0 && at < len(was); at-- {
		if f := v.form.FocusID(was[at].ID); f.Focused().ID == was[at].ID {
			v.form = f
			return
		}
	}
	v.form = v.form.By(-len(v.form.Rows))
}

// Click marks the field at a cell of the frame, or takes the choice there.
func (v *View) Click(s *session.Session, x, y int) {
	form, _, _ := v.areas()
	if !v.begins { // drawn by DrawForm
		form, _ = v.withHelp(v.at)
	}
	if v.form.Picking() {
		next, edit := v.form.Click(s.Theme, v.at, x, y)
		v.form = next
		v.put(s, edit)
		return
	}
	if i, ok := v.form.RowAt(s.Theme, form.W, form.H, x-form.X, y-form.Y); ok {
		if i == v.form.Focus {
			v.form = v.form.Edit()
		} else {
			v.form = v.form.By(i - v.form.Focus)
		}
		s.Settle()
	}
}

// SetSize brings the rows up to what the document says.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	defer v.steady(s.Theme)
	if !v.made {
		v.first = v.begins && s.Empty()
		v.form, v.made = form.NewForm(v.rows(s)), true
		if list := waiting(s); v.first && len(list) > 0 {
			v.form = v.form.FocusID(list[0].Path)
		}
		return
	}
	rows := v.rows(s)
	v.offered(s, rows)
	v.keepTyping(s, rows)
	v.form = v.form.WithRows(rows)
}

// steady keeps the columns as wide as possible rows may need. Readings of a winding have the plan
// beside them, which needs the room more.
func (v *View) steady(t kit.Theme) {
	v.form.LabelW = v.labelWidth(t)
	if v.beside == nil {
		v.form.ValueW, v.form.UnitW = usualValue, widestUnit
	}
}

// usualValue is the usual width of values with dim text for empty ones.
const usualValue = 20

// widestUnit is the greatest width of what is behind a value, a coil's throw or the volts of so many
// cells: kept free, so that nothing moves when it appears.
const widestUnit = len("1 to 10")

// keepTyping leaves the open field exactly as it was typed, as long as the job still says the same: the
// document trims blanks, moves a unit into the key and converts hertz to rpm, but a person is about to
// type the next letter. A unit in what is typed replaces that of the key.
func (v *View) keepTyping(s *session.Session, rows []form.Row) {
	typing := v.form.Focused()
	if !v.form.Open || v.said != s.Document().Text() {
		return
	}
	for i := range rows {
		if rows[i].ID != typing.ID || rows[i].Text == typing.Text {
			continue
		}
		if rows[i].Text != strings.TrimSpace(typing.Text) {
			rows[i].Unit = ""
		}
		rows[i].Text = typing.Text
	}
}
