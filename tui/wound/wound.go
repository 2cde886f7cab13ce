// Package wound is the Wound screen: what was really put in, typed with the meter in hand, each reading
// immediately with its plan, its limits and its verdict beside it. A record stands beside the plan and
// changes no figure of it.
package wound

import (
	"slices"
	"strings"
	"time"

	"slotwright/tui/kit"
	"slotwright/tui/machine"
	"slotwright/tui/session"
	"slotwright/winding/job"
	"slotwright/winding/text"
	"slotwright/winding/wound"

	tea "github.com/charmbracelet/bubbletea"
)

// View is the Wound screen.
type View struct {
	form *machine.View
	// today is the date a new record gets.
	today func() string
	at    kit.Rect
	made  bool     // a field was marked
	text  []string // what was planned and read
}

// New is the screen.
func New() *View {
	v := &View{today: func() string { return time.Now().Format(time.DateOnly) }}
	v.form = machine.NewRecords(v.beside)
	return v
}

// Name is on the tab.
func (v *View) Name() string { return "Wound" }

// Typing reports whether letters go into a field.
func (v *View) Typing(s *session.Session) bool { return v.form.Typing(s) }

// Editing reports whether a value is being given.
func (v *View) Editing(s *session.Session) bool { return v.form.Editing(s) }

// GoTo marks a field, if it is one of a record.
func (v *View) GoTo(s *session.Session, path string) bool {
	if !v.form.GoTo(s, path) {
		return false
	}
	v.made = true
	return true
}

// Follow marks the first of some fields that is shown.
func (v *View) Follow(s *session.Session, fields []string) { v.form.Follow(s, fields) }

// Click marks the field at a cell of the frame.
func (v *View) Click(s *session.Session, x, y int) { v.form.Click(s, x, y) }

// Bindings are the keys of the screen.
func (v *View) Bindings(s *session.Session) []kit.Binding {
	list := v.form.Bindings(s)
	t, _ := job.TableOf("wound")
	n := s.Document().Count("wound")
	for i, b := range list { // also the keys of an open list
		if do := b.Do; do != nil {
			list[i].Do = func(msg tea.KeyMsg) (cmd tea.Cmd) {
				v.signing(s, func() { cmd = do(msg) })
				return cmd
			}
		}
	}
	if v.form.Editing(s) {
		return list
	}
	return append([]kit.Binding{
		kit.Bind("Records", "f6", "record", "Begin a record of the chosen trial, dated today; typing into an empty one does so too.", func() { v.begin(s) }).When(n < t.Most && len(s.Outcome().Trials) > 0),
		kit.Bind("Records", "f7", "", "Take the marked record out; undo brings it back.", func() { v.remove(s) }).When(v.record() < n),
	}, list...)
}

// Key takes a key.
func (v *View) Key(s *session.Session, msg tea.KeyMsg) (used bool) {
	if _, used := kit.Press(v.Bindings(s), msg); used {
		return true
	}
	v.signing(s, func() { used = v.form.Key(s, msg) })
	return used
}

// signing does something. A record created by it is of the chosen trial and of today.
func (v *View) signing(s *session.Session, do func()) {
	n := s.Document().Count("wound")
	if do(); s.Document().Count("wound") > n {
		v.sign(s, n)
	}
}

// begin begins a record, and marks the first of its fields that is to be measured.
func (v *View) begin(s *session.Session) {
	n := s.Document().Count("wound")
	s.Edit(signed(s.Document().Add("wound", -1), s, n, v.today()))
	v.form.GoTo(s, job.PathOf("wound", n, "turns"))
}

// sign says of record n which trial it is of, and when it was wound.
func (v *View) sign(s *session.Session, n int) {
	if next := signed(s.Document(), s, n, v.today()); next.Text() != s.Document().Text() {
		s.Amend(next)
	}
}

// signed is a document in which record n says which trial it is of and when it was wound.
func signed(d job.Document, s *session.Session, n int, today string) job.Document {
	set := func(field, text string) {
		path := job.PathOf("wound", n, field)
		if _, _, given := d.Typed(path); given || d.Refused() != "" || text == "" {
			return
		}
		d = d.Set(path, text, s.Units)
	}
	if o := s.Outcome(); s.Trial < len(o.Trials) {
		set("trial", o.Trials[s.Trial].Name)
	}
	set("date", today)
	return d
}

// remove takes the marked record out.
func (v *View) remove(s *session.Session) {
	s.Edit(s.Document().Remove("wound", v.record()))
	s.Say("the record is out; undo brings it back")
}

// record is the index of the record that is marked, which may be the empty one to begin.
func (v *View) record() int {
	table, n, _ := job.SplitPath(v.form.Marked())
	if table != "wound" {
		return 0
	}
	return n
}

// wide is the width from which plan and readings are beside the form, tall the height from which they
// are in a box under it; on a small screen two lines give the essentials.
const (
	wide   = 130
	tall   = 30
	boxed  = 17
	column = 103 // a wider form would stand in two columns, without room for what it says
	narrow = 74  // under this a row has room for a few words beside the value
)

// areas are the rectangles of the form and of what was planned and read.
func (v *View) areas() (form, says kit.Rect) {
	r := v.at
	switch {
	case r.W >= wide:
		form, says = r.SplitLeft(min(r.W*11/20, column))
		_, says = says.SplitLeft(1)
		return form, says
	case r.H >= tall:
		form, says = r.SplitBottom(boxed)
		says.W = min(says.W, column) // as wide as what stands over it
	default:
		form, says = r.SplitBottom(kit.Either(r.W < narrow, 3, 2))
	}
	form.W = min(form.W, column)
	return form, says
}

// SetSize shares the rectangle among the form and what it says.
func (v *View) SetSize(s *session.Session, r kit.Rect) {
	v.at = r
	form, says := v.areas()
	v.form.SetSize(s, form)
	if !v.made { // the first thing that is counted at the bench
		v.made = true
		v.form.GoTo(s, job.PathOf("wound", max(0, s.Document().Count("wound")-1), "turns"))
	}
	v.text = strip(s, v.record(), says.W, says.H)
	if says.H > 3 {
		v.text = lines(s, v.record(), kit.Inner(says).W)
	}
}

// Draw fills the rectangle. The verdicts are under the form, whose open list covers both.
func (v *View) Draw(s *session.Session) []kit.Block {
	_, says := v.areas()
	block := kit.Bare(s.Theme, says, v.text)
	if says.H > 3 {
		block = kit.Box(s.Theme, says, "Planned, and read", v.text)
	}
	return append([]kit.Block{block}, v.form.DrawForm(s)...)
}

// strip is how far the job has come and the verdicts on the marked record's readings, in h lines: what
// is off first, and each whole.
func strip(s *session.Session, record, w, h int) []string {
	t := s.Theme
	list := checks(s, record)
	slices.SortStableFunc(list, func(a, b check) int { return urgent(b) - urgent(a) })
	lines := t.WrapPaint(kit.Hint, stands(s), w)
	for _, why := range []bool{true, false} {
		said := inShort(s, record, list, why)
		for n := len(said); n > 0; n-- {
			says := strings.Join(said[:n], "; ")
			if more := len(said) - n; more > 0 {
				says += "; " + text.Count(more, "other reading")
			}
			if read := t.Wrap(says, w); len(lines)+len(read) <= h {
				return append(lines, read...)
			}
		}
	}
	return lines[:min(h, len(lines))]
}

// urgent ranks a reading: marked ones first, then by how they compare with the plan.
func urgent(c check) int {
	rank := int(c.Proof.Stand())
	if markOf(c) == kit.Warning {
		rank += int(wound.Uneven) + 1
	}
	return rank
}

// inShort is each reading's result in a few words, with the likely fault if why is set.
func inShort(s *session.Session, record int, list []check, why bool) (said []string) {
	likely := ""
	if r, ok := recordOf(s, record); ok && why && len(r.Likely) > 0 {
		likely = ", likely " + r.Likely[0].Fault
	}
	for _, c := range list {
		switch text := short(s, c); {
		case text != "" && likely != "" && strings.HasPrefix(c.Speaks(), "likely"):
			said = append(said, c.Label+": "+off(c)+likely)
		case text != "":
			said = append(said, c.Label+": "+text)
		}
	}
	return said
}
