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
	"slotwright/winding/quantity"
	"slotwright/winding/ratio"
	"slotwright/winding/wants"
)

// rows is the form's rows, from the job file's table of fields; or only the first things.
func (v *View) rows(s *session.Session) []form.Row {
	if v.first {
		return v.firstRows(s)
	}
	needed := map[string]bool{}
	for _, f := range waiting(s) {
		needed[f.Path] = true
	}
	var rows []form.Row
	j := s.Job()
	var more []form.Row
	for at, name := range v.tables {
		t, _ := job.TableOf(name)
		n := 1
		if t.Many() {
			n = v.entries(s, t, needed)
		}
		for i := range n {
			for _, f := range job.InputsOf(name) {
				_, _, given := s.Document().Typed(f.PathAt(i))
				if f.Name != "format" && (given || Applies(f, &j)) {
					r := rowOf(s, t, f, i)
					r.Needed = needed[r.ID]
					if v.beside == nil || v.beside(s, &r) {
						rows = append(rows, r)
					}
				}
			}
		}
		if t.Many() && n == s.Document().Count(name) && n < t.Most && job.InputsOf(name)[0].Applies(&j) {
			more = append(more, adds(t, n))
		}
		if at+1 == len(v.tables) || !isMany(v.tables[at+1]) {
			rows, more = append(rows, more...), nil
		}
	}
	return patient(rows)
}

// firstRows are the few things that matter first, whatever screen they otherwise belong to, and below
// them the readings that tell more.
func (v *View) firstRows(s *session.Session) []form.Row {
	var rows []form.Row
	j := s.Job()
	for _, first := range wants.Of(&j) {
		f, _ := job.InputAt(first.Path)
		t, _ := job.TableOf(f.Table)
		r := rowOf(s, t, f, 0)
		r.Group, r.Label = first.Part, asLabel(first.Path)
		r.Needed = needs(f) && !first.Instead
		if f.Name == "gauge" {
			inHand(s, &r)
		}
		switch {
		case r.Text != "":
		case first.Way != "":
			r.Help += " Needed for " + first.Unlocks + ". One way is enough; this one: " + first.Way + "."
		default:
			r.Help += " Needed for " + first.Unlocks + "."
		}
		rows = append(rows, r)
	}
	return patient(append(rows, v.moreReadings(s)...))
}

// inHand shows behind a wire an assumed number of strands, since their field is not among the first
// things, and says in its explanation how several are typed.
func inHand(s *session.Session, r *form.Row) {
	_, _, given := s.Document().Typed(strings.TrimSuffix(r.ID, "gauge") + "strands")
	if !given && r.Text != "" && r.Error == "" && kit.Width(r.Text) <= shortWire {
		r.Unit = "single"
	}
	r.Help += " Two in hand: 2 x 0.6 mm. a18 is 18 AWG, s19 is 19 SWG."
}

// shortWire is the longest wire name that leaves room for words behind it, "1.80 mm over" being the
// longest.
const shortWire = 12

// asLabel is a field's name as a label among the first things.
func asLabel(path string) string {
	name := Label(path)
	return strings.ToUpper(name[:1]) + name[1:]
}

// labelWidth is the width of the column of labels, whichever rows there are, so that a row that comes
// or goes moves no value.
func (v *View) labelWidth(t kit.Theme) (w int) {
	if v.first {
		for _, path := range wants.Paths() {
			w = max(w, kit.Width(t.Text(asLabel(path))))
		}
	}
	for _, name := range v.tables {
		for _, f := range job.InputsOf(name) {
			w = max(w, kit.Width(t.Text(f.Label)))
		}
	}
	return w
}

// moreReadings are, last of the first things, out of everyone's way, the further readings of the old
// winding, and a line for one more of each kind: volts at another field current, amps.
func (v *View) moreReadings(s *session.Session) (rows []form.Row) {
	j := s.Job()
	var more []form.Row
	for _, name := range []string{"spin", "coil", "amps", "short"} {
		t, _ := job.TableOf(name)
		begun := s.Document().Count(name)
		if !job.InputsOf(name)[0].Applies(&j) || begun == 0 && (name == "spin" || name == "coil") {
			continue // the first of these is asked for above
		}
		n, first := v.entries(s, t, nil), 0
		if name == "spin" || name == "coil" {
			first = 1
		}
		for i := first; i < n; i++ {
			for _, f := range job.InputsOf(name) {
				if _, _, given := s.Document().Typed(f.PathAt(i)); given || f.Applies(&j) && applies(f, &j) {
					rows = append(rows, rowOf(s, t, f, i))
				}
			}
		}
		if n == begun && n < t.Most {
			line := adds(t, n)
			line.Group = "More readings, for amps and for other field currents"
			more = append(more, line)
		}
	}
	return append(rows, more...)
}

// waiting are the first things that are not given and that nothing replaces.
func waiting(s *session.Session) []wants.Want {
	var list []wants.Want
	j := s.Job()
	for _, first := range wants.Of(&j) {
		f, _ := job.InputAt(first.Path)
		if _, _, given := s.Document().Typed(first.Path); !given && needs(f) && !first.Instead {
			list = append(list, first)
		}
	}
	return list
}

// needs reports whether a figure waits for a field that nothing replaces. A job does without a name.
func needs(f *job.Input) bool {
	return f.Default == nil && (f.Ghost == "" || f.Ghost == "not said") && f.Path() != "name"
}

// Label is a field's name, with what distinguishes it from others of that name.
func Label(path string) string {
	f, ok := job.InputAt(path)
	if !ok {
		return path
	}
	switch t, _ := job.TableOf(f.Table); f.Table {
	case "drive":
		if f.Name != "kind" {
			return "drive: " + strings.ToLower(f.WholeLabel())
		}
	case "old", "spin", "short", "amps", "coil", "trial":
		return strings.ToLower(t.Title[:1]) + t.Title[1:] + ": " + strings.ToLower(f.WholeLabel())
	}
	return strings.ToLower(f.WholeLabel())
}

// Applies reports whether a field is asked where nothing was typed into it.
func Applies(f *job.Input, j *job.Job) bool { return f.Applies(j) && applies(f, j) }

// applies leaves out the field current of readings where there is no field coil, and the magnets of a
// wound rotor. What was typed anyway is shown, so that it can be corrected.
func applies(f *job.Input, j *job.Job) bool {
	switch {
	case f.Name == "field" && f.Table != "":
		return j.Field.Kind != job.FieldMagnets
	case f.OfMagnets():
		return j.Field.Kind == job.FieldMagnets
	}
	return true
}

// patient withholds doubts about a reading while the rest of it is awaited: someone who has typed its
// first figure is about to type the next.
func patient(rows []form.Row) []form.Row {
	waits := map[string]bool{}
	for _, r := range rows {
		waits[entryPart(r.ID)] = waits[entryPart(r.ID)] || r.Needed && r.Text == ""
	}
	for i, r := range rows {
		if at := entryPart(r.ID); at != "" && waits[at] {
			rows[i].Warning = ""
		}
	}
	return rows
}

// entryPart is the entry of a path, "coil[0]", "" of one that is in none or a trial's.
func entryPart(path string) string {
	entry, _, ok := strings.Cut(path, "].")
	if !ok || strings.HasPrefix(entry, "trial[") {
		return ""
	}
	return entry
}

// rowOf is one field as a row.
func rowOf(s *session.Session, t *job.Table, f *job.Input, i int) form.Row {
	path := f.PathAt(i)
	text, u, given := s.Document().Typed(path)
	if !given {
		u = s.Units.For(f.Dim)
	}
	j := s.Job()
	r := form.Row{
		ID: path, Group: t.Title, Label: f.Label, Unit: u.Name, Text: text, Ghost: f.EmptyIn(&j, u),
		Help: s.Units.Words(strings.TrimSpace(f.Help + " " + f.How)),
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
	if given && text != "" && f.Kind != job.Text { // words about the job are not measured
		r.Mark = markOf(text)
	}
	if f.Table == "drive" && given && ratio.Idle(&j.Drive, path) != "" {
		r.Mark = kit.Plain // it has no effect, measured or not
	}
	if p, bad := s.Document().ProblemAt(path); bad {
		r.Error = p.Sentence(session.Mend(p))
		r.Mark = kit.Broken
		return r
	}
	for _, d := range s.Outcome().Findings {
		if d.Path == path && d.Severity >= winding.Doubt && (!r.Grave || d.Severity == winding.Broken) { // the gravest is said
			r.Warning, r.Grave = s.Units.Words(d.Text), r.Grave || d.Severity == winding.Broken
			if d.Fix != "" {
				r.Warning += "; " + s.Units.Words(d.Fix)
			}
		}
	}
	if given {
		r.Note, r.NoteAs, r.Uncut = inLiked(s, f, path, text, u), kit.Hint, true
	}
	if f.Kind == job.Wire && text != "" && strings.Trim(text, "0123456789") == "" {
		r.Unit = "AWG" // what a bare whole number is read as
	}
	if text == "" {
		r.Ghost, r.Brief = standsFor(s, path, u, r.Ghost)
	}
	switch {
	case f.Name == "span":
		r.Unit = throw(text)
	case path == "battery.cells":
		r.Unit = atRest(s, text)
	case path == "drive.power" && j.Drive.UsualRPM.Given(): // so that whoever changes Usual sees what becomes of it
		r.Note, r.NoteAs, r.Uncut = "at "+quantity.Screen.Number(j.Drive.UsualRPM.Value, quantity.AtMost(4))+" rpm", kit.Hint, true
	case path == "drive.ratio" && j.Drive.RatioAs != (job.RatioForm{}):
		r.Unit = "= " + quantity.Screen.Number(j.Drive.Ratio.Value, 3)
		if taken := s.Outcome().Machine.Ratio; ratio.By(&j.Drive) == path && j.Drive.RatioAs.Stages > 0 && taken.Known() {
			r.Note, r.NoteAs, r.Uncut = taken.Why, kit.Hint, true
			r.Help = "Taken as " + s.Text(taken, quantity.None, 3) + ": " + taken.Why + ". " + r.Help
		}
	}
	return r
}

// inLiked is a value that was typed in another unit than the chosen one, or in parts, converted: "=
// 11.2 mph"; "" where it is typed in that unit.
func inLiked(s *session.Session, f *job.Input, path, text string, typed quantity.Unit) string {
	liked, j := s.Units.For(f.Dim), s.Job()
	v, ok := j.ReadingAt(path)
	inParts := strings.ContainsAny(text, "x×*G") && f.Dim[0].Suffix == quantity.SquareMM[0].Suffix // sides, cables, a gauge
	if !ok || liked.Suffix == typed.Suffix && !inParts || (quantity.Choice{Inch: true, Fahrenheit: true}).For(f.Dim).Suffix == f.Dim[0].Suffix {
		return ""
	}
	return "= " + quantity.Screen.Value(liked.From(v.Value), liked, quantity.AtMost(4)) + " " + liked.Name
}

// workedOut are the fields of a battery whose empty value is computed, the figure used, and its number
// of figures.
var workedOut = map[string]struct {
	id     string
	digits int
}{
	"battery.rest": {"battery_rest_v", 4}, "battery.charging": {"battery_charging_v", 4}, "battery.absorption": {"battery_absorption_v", 4}, "battery.float": {"battery_float_v", 4},
	"battery.charge_limit": {"battery_charge_limit_a", quantity.AtMost(3)}, "battery.inner": {"battery_inside_ohms", quantity.AtMost(2)}, "battery.diode_drop": {"diode_v", quantity.AtMost(2)},
}

// standsFor is a field's dim words with the figure used in front, where there is one, and the short
// form: the figure alone.
func standsFor(s *session.Session, path string, u quantity.Unit, words string) (whole, brief string) {
	of, ok := workedOut[path]
	if !ok {
		return words, inBrief[words]
	}
	o := winding.MachineOutputOf(of.id)
	v := o.OfMachine(&s.Outcome().Machine)
	if !v.Known() {
		return words, inBrief[words]
	}
	figure := quantity.Screen.Value(u.From(v.Value), u, of.digits)
	return figure + " " + words, figure
}

// inBrief is the short form of fields' dim words: ten cells at most.
var inBrief = map[string]string{
	"from the slots and their widths": "by slots", "from old ohms, else bore, stack": "by ohms", "guessed by size, poles, flux": "guessed",
	"what the supply drives": "by supply", "from speed and poles": "by rpm", "by size and cooling": "by size", "by pulleys or teeth": "by wheels",
	"1 % of the plate's": "1 % of it", "the air around it": "as the air", "that of the coils": "as coils", "that of the ohms": "as ohms",
	"nothing holds it": "nothing", "the usual speed": "usual", "the first trial": "the first", "from the drive": "by drive", "as the machine": "as machine",
	"one pole pitch": "pole pitch", "12 V: 6, lfp 4": "6 or lfp 4", "the battery's": "battery's", "one to a pole": "one a pole",
	"by chemistry": "by kind", "as the trial": "as trial", "0.95 or 0.97": "0.95–0.97", "not checked": "unchecked", "by Ah, kind": "by Ah",
	"the air gap": "air gap", "all of them": "all",
}

// atRest is the volts of so many cells, so that volts typed as cells are noticed.
func atRest(s *session.Session, cells string) string {
	v := s.Outcome().Machine.RestVolts
	if cells == "" || !v.Known() {
		return ""
	}
	o := winding.MachineOutputOf("battery_rest_v")
	return s.Text(v, o.Dim, o.Digits)
}

// throw is a span as the trade says it: the slots a coil goes into, the first being 1.
func throw(text string) string {
	n := 0
	if strings.Contains(text, "to") || strings.ContainsAny(strings.TrimLeft(text, "~ "), "-–") {
		return "" // typed as one
	}
	if _, err := fmt.Sscanf(text, "%d", &n); err != nil || n < 1 || n > 360 {
		return ""
	}
	return fmt.Sprintf("1 to %d", n+1)
}

// markOf distinguishes a guess from a measured value.
func markOf(text string) kit.Role {
	if len(text) > 0 && text[0] == '~' {
		return kit.Guessed
	}
	return kit.Measured
}
