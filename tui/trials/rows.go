package trials

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/tui/kit"
	"slotwright/tui/session"
	"slotwright/winding"
	"slotwright/winding/job"
	"slotwright/winding/text"
	"slotwright/winding/wants"
)

// The rows that are not figures, by their ids; a figure's row has the figure's id.
const (
	rowArea       = "slot.area"
	rowFill       = "slot.fill_limit"
	rowTurns      = "turns"
	rowWire       = "gauge"
	rowStrands    = "strands"
	rowConnection = "connection"
	rowCircuits   = "circuits"
	rowFold       = "fold"  // inputs that are alike in all trials
	rowAlike      = "alike" // figures that are
)

// inputRows are the inputs of the table in their order, after those of the slot's line.
var inputRows = []string{rowTurns, rowWire, rowStrands, rowConnection, rowCircuits}

// foldable are those that one line can show where all trials have the same.
var foldable = []string{rowConnection, rowCircuits, rowStrands}

// entry is one line of the table: an input, a figure, one that shows several, or a heading.
type entry struct {
	id      string
	figure  *winding.Row
	heading string
	text    string   // of one that tells several
	parts   []string // what it tells, each whole or not at all
}

// told is an entry's text for several rows, in at most w cells: each of them whole or left out, and how
// many more there are.
func (e entry) told(w int) string {
	if kit.Width(e.text) <= w || len(e.parts) == 0 {
		return e.text
	}
	for n := len(e.parts) - 1; n > 0; n-- {
		if text := fmt.Sprintf("%s%s, and %d more", alikeHead, strings.Join(e.parts[:n], ", "), len(e.parts)-n); kit.Width(text) <= w {
			return text
		}
	}
	return fmt.Sprintf("%s%d figures", alikeHead, len(e.parts))
}

// alikeHead begins the line of the figures that are alike.
const alikeHead = "alike: "

// entries are the lines of the table.
func (v *View) entries(s *session.Session) []entry {
	var list []entry
	folded := v.folded(s)
	for _, id := range inputRows {
		if !slices.Contains(folded, id) && !(id == rowConnection && noStar(s)) {
			list = append(list, entry{id: id})
		}
	}
	if len(folded) > 0 {
		list = append(list, entry{id: rowFold, text: foldText(s, folded)})
	}
	group := ""
	var alike []string
	for _, r := range v.figures(s) {
		if !v.brief() && !v.flipped && sameInAll(s, r) {
			alike = append(alike, alikeText(s, r))
			continue
		}
		if r.Group != group && !v.brief() {
			group = r.Group
			list = append(list, entry{heading: group})
		}
		list = append(list, entry{id: r.ID, figure: &r})
	}
	if len(alike) > 0 {
		list = append(list, entry{id: rowAlike, text: alikeHead + strings.Join(alike, ", "), parts: alike})
	}
	return list
}

// alikeText is a figure that is the same in all trials, by its whole name: the row above, whose name
// its own continues, need not be next to it.
func alikeText(s *session.Session, r winding.Row) string {
	label := s.Units.Words(strings.Replace(r.Label, "… ", "net amps, ", 1))
	cell := figureCell(s, r, 0)
	if cell.Word {
		return label + " " + cell.Text
	}
	return label + " " + strings.TrimSpace(cell.Text+" "+s.Units.For(r.Dim).Name)
}

// ids are the rows that the cursor walks over, the slot's line first.
func (v *View) ids(s *session.Session) []string {
	list := []string{rowArea, rowFill}
	if len(s.Outcome().Trials) == 0 {
		return append(list, rowTurns)
	}
	for _, e := range v.entries(s) {
		if e.id != "" {
			list = append(list, e.id)
		}
	}
	return list
}

// figures are the rows of the comparison that are shown: all, or where room is short the ones a
// rewinder looks at first; beside a picture on a small screen those that decide.
func (v *View) figures(s *session.Session) []winding.Row {
	all := s.Outcome().Comparison
	if kind := s.Job().Drive.Kind; kind != "" && kind != job.DriveWind { // no year to speak of
		all = slices.DeleteFunc(slices.Clone(all), func(r winding.Row) bool { return r.ID == "year_kwh" })
	}
	if flat(s) {
		all = slices.DeleteFunc(slices.Clone(all), func(r winding.Row) bool { return r.ID == "mouth_spare_mm" })
	}
	if !v.brief() {
		return all
	}
	var rows []winding.Row
	for _, r := range all {
		if r.Key && r.ID != "turns_that_fit" && (!v.deciding() || slices.Contains(decide, r.ID)) {
			rows = append(rows, r)
		}
	}
	return rows
}

// decide are the figures that decide between windings.
var decide = []string{"cut_in_rpm", "break_even_rpm", "amps_dc_slow", "amps_dc_usual", "amps_dc_top", "limit_amps_dc", "year_kwh"}

// brief reports whether only the first rows are shown.
func (v *View) brief() bool { return v.room() != wide && !v.flipped }

// deciding reports whether only those that decide are: a small screen with a picture.
func (v *View) deciding() bool { return v.room() == small && v.pictureNow() != onlyTable }

// folded are the inputs that one line shows.
func (v *View) folded(s *session.Session) []string {
	if v.flipped || len(s.Outcome().Trials) == 0 {
		return nil
	}
	var list []string
	for _, id := range foldable {
		same := true
		for i := range s.Outcome().Trials {
			c := inputText(s, id, i)
			same = same && c.Text == inputText(s, id, 0).Text && c.Mark == kit.Plain
		}
		if same && !(v.editing && v.row == id) {
			list = append(list, id)
		}
	}
	return list
}

// foldText is the folded inputs: "star, 1 circuit, 1 strand in all".
func foldText(s *session.Session, folded []string) string {
	var parts []string
	for _, id := range folded {
		part := inputText(s, id, 0).Text
		switch {
		case id == rowConnection && noStar(s):
			continue
		case id == rowCircuits:
			part = text.Count(part, "circuit")
		case id == rowStrands:
			part = text.Count(part, "strand") + " in hand"
		}
		parts = append(parts, part)
	}
	all := strings.Join(parts, ", ")
	if len(s.Outcome().Trials) > 1 {
		all += ", in all"
	}
	return all
}

// noStar reports whether star and delta mean nothing: with one phase, or with two.
func noStar(s *session.Session) bool { return s.Job().Machine.Phases.Or(3) != 3 }

// sameInAll reports whether a figure reads the same in all of several trials.
func sameInAll(s *session.Session, r winding.Row) bool {
	n := len(r.Cells)
	first := figureCell(s, r, 0)
	for k := 0; k < n; k++ {
		if c := figureCell(s, r, k); c.Text != first.Text || !r.Cells[k].Figure.Known() || r.Cells[k].Verdict == winding.Past {
			return false
		}
	}
	return n > 1
}

// inputPath is the field that the cursor is on, "" on a figure.
func (v *View) inputPath(s *session.Session) string {
	switch {
	case v.row == rowArea:
		return areaPath(s)
	case v.row == rowFill:
		return v.row
	case len(s.Outcome().Trials) == 0 || !slices.Contains(inputRows, v.row):
		return ""
	case v.row == rowTurns && len(s.Job().Trials[s.Trial].CoilTurns) > 0:
		return job.PathOf("trial", s.Trial, "coil_turns")
	}
	return job.PathOf("trial", s.Trial, v.row)
}

// marked is the figure that the cursor is on, nil on anything else.
func (v *View) marked(s *session.Session) *winding.Row {
	for _, e := range v.entries(s) {
		if e.id == v.row {
			return e.figure
		}
	}
	return nil
}

// waitsFor is the field that the marked figure of the chosen trial waits for, where it is
// missing.
func (v *View) waitsFor(s *session.Session) (string, bool) {
	r := v.marked(s)
	if r == nil || r.Cells[s.Trial].Figure.Known() {
		return "", false
	}
	j := s.Job()
	return wants.FieldFor(&j, r.Cells[s.Trial].Figure.Why, s.Trial)
}

// goTo asks for a field and says which, and why.
func goTo(s *session.Session, path, why string) {
	if f, ok := job.InputAt(path); ok {
		s.Say(why + ": " + f.Label + "; esc goes back")
	}
	s.Go(path)
}

// waiting says why a field is gone to: that a figure waits for it, or weighing, that it depends on it.
const waiting, weighing = "this is the field that it waits for", "this is one of the fields that it goes by"

// flat reports whether the coils lie flat: there are no slots then, and no mouth.
func flat(s *session.Session) bool { return s.Job().Machine.Stator == job.StatorFlat }

// areaPath is the field that gives the room for wire: the slot's area, or the side of a flat coil.
func areaPath(s *session.Session) string {
	if flat(s) {
		return "machine.side"
	}
	return rowArea
}

// inputLabel is the label of an input row.
func inputLabel(s *session.Session, row string) string {
	path := row
	switch row {
	case rowArea:
		path = areaPath(s)
	case rowFill:
	default:
		path = "trial." + row
	}
	if f, ok := job.InputAt(path); ok {
		return f.Label
	}
	return row
}
