package trials

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// why is the page that explains the marked row, over the screen. Its cursor walks over the inputs that
// the figure comes from; enter goes to the field.
type why struct {
	open bool
	at   int
	n    int
}

// keep keeps the cursor on the present inputs.
func (w *why) keep(list []option) { w.n, w.at = len(list), max(0, min(w.at, len(list)-1)) }

// option is an input that affects a figure.
type option struct {
	path, label, text string
	origin            quantity.Origin
	said              bool // a choice, not a reading
}

// reason is why the field is gone to.
func (o *option) reason() string {
	if o.origin == quantity.Absent {
		return waiting
	}
	return weighing
}

// whyBindings are the keys of the page.
func (v *View) whyBindings(s *session.Session) []kit.Binding {
	const group = "Why"
	w := &v.why
	to := func(i int) func() { return func() { w.at = max(0, min(i, w.n-1)) } }
	return []kit.Binding{
		kit.Bind(group, "enter", "to the field", "Go to the marked input.", func() {
			if list := v.options(s); w.at < len(list) {
				w.open = false
				goTo(s, list[w.at].path, list[w.at].reason())
			}
		}),
		kit.Bind(group, "esc y", "close", "Back to the table.", func() { w.open = false }),
		kit.Bind(group, "down j", "next input", "The next input.", to(w.at+1)),
		kit.Bind(group, "up k", "", "The input before.", to(w.at-1)),
		kit.Bind(group, "pgdown space", "", "Further down.", to(w.at+8)),
		kit.Bind(group, "pgup", "", "Further up.", to(w.at-8)),
		kit.Bind(group, "home", "", "The top.", to(0)),
		kit.Bind(group, "end G", "", "The end.", to(w.n-1)),
		kit.Bind(group, "right l", "", "The same of the next trial.", func() { s.Choose(s.Trial + 1) }),
		kit.Bind(group, "left h", "", "The same of the trial before.", func() { s.Choose(s.Trial - 1) }),
	}
}

// options are the inputs of the marked row: the field that it waits for first, then what was measured
// or chosen, what was guessed, and last what was left at its default.
func (v *View) options(s *session.Session) []option {
	if !v.why.open {
		return nil
	}
	if path := v.inputPath(s); path != "" {
		if o, ok := optionAt(s, path); ok {
			return []option{o}
		}
		return nil
	}
	r := v.marked(s)
	if r == nil {
		return nil
	}
	var first, said, guessed, defaults []option
	if path, ok := v.waitsFor(s); ok {
		f, _ := job.InputAt(path)
		first = append(first, option{path: path, label: label(path, f), text: "not given"})
	}
	how, j := winding.HowOf(r.ID), s.Job()
	for _, path := range paths(s) {
		o, ok := optionAt(s, path)
		switch {
		case !ok || !how.UsesIn(&j, job.Unindexed(path)):
		case o.origin == quantity.Default:
			defaults = append(defaults, o)
		case o.origin.Weak():
			guessed = append(guessed, o)
		default:
			said = append(said, o)
		}
	}
	return slices.Concat(first, said, guessed, defaults)
}

// paths are all fields of the job that may affect the chosen trial's figures: what was wound afterwards
// affects none.
func paths(s *session.Session) []string {
	var list []string
	for i := range job.Tables {
		t := &job.Tables[i]
		from, to := 0, 1
		switch {
		case t.Name == "wound":
			continue
		case t.Name == "trial":
			from, to = s.Trial, s.Trial+1
		case t.Many():
			to = s.Document().Count(t.Name)
		}
		for i := from; i < to; i++ {
			for _, in := range job.InputsOf(t.Name) {
				if in.Kind != job.Text {
					list = append(list, in.PathAt(i))
				}
			}
		}
	}
	return list
}

// optionAt is a field's value, or its default; ok is false where there is neither.
func optionAt(s *session.Session, path string) (option, bool) {
	in, ok := job.InputAt(path)
	j := s.Job()
	if !ok || !in.Applies(&j) {
		return option{}, false
	}
	o := option{path: path, label: label(path, in), origin: quantity.Measured, said: in.Kind == job.Word || in.Table == "trial"}
	text, u, given := s.Document().Typed(path)
	switch {
	case given:
		o.text = strings.TrimSpace(text + " " + u.Name)
		if strings.HasPrefix(strings.TrimSpace(text), "~") {
			o.origin = quantity.Guessed
		}
	case in.Default != nil && (in.Table != "old" || oldGiven(s)):
		o.text, o.origin = in.EmptyIn(&j, s.Units.For(in.Dim)), quantity.Default
	default:
		return option{}, false
	}
	return o, true
}

// oldGiven reports whether anything is given of the old winding: else the defaults of its fields have
// no effect.
func oldGiven(s *session.Session) bool {
	for _, in := range job.InputsOf("old") {
		if _, _, given := s.Document().Typed(in.PathAt(0)); given {
			return true
		}
	}
	return false
}

// label is a field's name, with the index of one that comes many times.
func label(path string, in *job.Input) string {
	table, _ := job.TableOf(in.Table)
	if table == nil || in.Table == "trial" || in.Table == "machine" || in.Table == "slot" {
		return in.Label
	}
	name := table.Title
	if _, n, _ := job.SplitPath(path); table.Many() {
		name += fmt.Sprintf(" %d", n+1)
	}
	return name + ": " + in.Label
}

// drawWhy is the page over the screen.
func (v *View) drawWhy(s *session.Session, within kit.Rect) kit.Block {
	r, lines, focus := v.whyPage(s, within)
	in := kit.Inner(r)
	panel := kit.Panel{Title: "Why: " + v.whyTitle(s), Foot: "enter to the field, esc closes", Focused: true}
	return panel.Draw(s.Theme, r, kit.Window(s.Theme, lines, focus, in.W, in.H))
}

// whyPage is the page's rectangle, its lines, and the line to keep visible.
func (v *View) whyPage(s *session.Session, within kit.Rect) (r kit.Rect, lines []string, focus int) {
	w := min(within.W, 100)
	lines, marked := v.whyLines(s, w-6)
	if v.why.at > 0 {
		focus = marked
	}
	return within.Centre(w, min(within.H, len(lines)+2)), lines, focus
}

// whyTitle is the marked row and the trial.
func (v *View) whyTitle(s *session.Session) string {
	name := v.row
	if v.row == rowFold || v.row == rowAlike {
		name = "what is alike in all trials"
	}
	if r := v.marked(s); r != nil {
		name = s.Units.Words(r.Label)
	} else if _, ok := job.InputAt(v.inputPath(s)); ok {
		name = inputLabel(s, v.row)
	}
	if len(s.Outcome().Trials) == 0 || v.row == rowArea || v.row == rowFill {
		return name
	}
	return name + ", trial " + s.Outcome().Trials[s.Trial].Name
}

// whyLines are the page's lines, and the one that the cursor is on.
func (v *View) whyLines(s *session.Session, w int) (lines []string, marked int) {
	t := s.Theme
	say := func(role kit.Role, head, text string) {
		if text == "" {
			return
		}
		for i, l := range t.Wrap(text, w-12) {
			h := ""
			if i == 0 {
				h = head
			}
			lines = append(lines, t.Paint(kit.Label, t.Fit(h, 11))+" "+t.Style(role).Render(l))
		}
	}
	if r := v.marked(s); r != nil {
		v.sayFigure(s, *r, say)
	} else if f, ok := job.InputAt(v.inputPath(s)); ok {
		say(kit.Plain, "What it is", s.Units.Words(f.Help))
		head := "Measure it"
		if f.Table == "trial" {
			head = "To know"
		}
		say(kit.Plain, head, s.Units.Words(f.How))
	}
	for i, c := range called(s) {
		head := ""
		if i == 0 {
			head = "Called out"
		}
		say(c.role, head, t.Mark(c.role)+" "+c.text)
	}
	marked = len(lines)
	for i, o := range v.options(s) {
		head := ""
		if i == 0 {
			head = "Comes from"
		}
		mark := " "
		if i == v.why.at {
			mark, marked = t.PaintMark(kit.Focus), len(lines)
		}
		origin := o.origin.String()
		switch {
		case o.origin == quantity.Absent:
			origin = "waits for this"
		case o.said && o.origin == quantity.Measured:
			origin = "chosen"
		}
		lines = append(lines, t.Fit(t.Paint(kit.Label, t.Fit(head, 11))+mark+" "+t.Fit(o.label, max(12, w-46))+" "+t.Paint(kit.Value, t.Fit(o.text, 16))+" "+t.Paint(kit.Hint, origin), w))
	}
	return lines, marked
}

// sayFigure is what there is to say about a figure.
func (v *View) sayFigure(s *session.Session, r winding.Row, say func(role kit.Role, head, text string)) {
	o := s.Outcome()
	f := r.Cells[s.Trial].Figure
	how, j := winding.HowOf(r.ID), s.Job()
	switch {
	case f.Known() && r.Cells[s.Trial].Burns:
		say(kit.Broken, "Would be", s.Text(f, r.Dim, r.Digits)+": the winding does not live through it: "+s.Units.Words(winding.Burnt)+".")
	case f.Known():
		say(kit.Value, "It is", quantity.Screen.Figure(f, s.Units.For(r.Dim), r.Digits)+" "+s.Units.For(r.Dim).Name)
	default:
		say(kit.Warning, "Missing", s.Units.Words(f.Why))
	}
	say(kit.Plain, "What it is", s.Units.Words(r.Help))
	say(kit.Plain, "Formula", how.Words())
	if f.Known() {
		say(kit.Plain, "In numbers", how.Numbers(&j, &o.Machine, &o.Trials[s.Trial], s.Units))
		say(kit.Plain, "At", how.Where(&j, &o.Machine, &o.Trials[s.Trial], s.Units))
		say(kit.Plain, "From", s.Units.Words(f.Why))
	}
	say(kit.Hint, "Source", how.SourceOf(&o.Trials[s.Trial]))
	say(kit.Hint, "How sure", sure(s, f, r))
	switch c := r.Cells[s.Trial]; {
	case c.Verdict != winding.Past:
	case c.Unwound != "":
		say(kit.Broken, "Past", "not to be had: this winding cannot be wound. It "+s.Units.Words(c.Unwound)+".")
	default:
		say(kit.Broken, "Past", "this will not do; to mend it: "+s.Units.Words(r.Mend))
	}
}
