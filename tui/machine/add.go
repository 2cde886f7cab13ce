package machine

import (
	"fmt"
	"strings"

	"slotwright/tui/form"
	"slotwright/tui/session"
	"slotwright/winding/job"
)

// There may be any number of readings. The existing ones are in the form, and under them a line for
// each kind of which another may be taken; its fields appear when it is asked for, so that a form is
// not half full of empty readings.

// entries is how many entries of a table are shown: those of the file, plus the one that was asked for
// or that a figure waits for.
func (v *View) entries(s *session.Session, t *job.Table, needed map[string]bool) int {
	n := s.Document().Count(t.Name)
	begun := v.adding[t.Name] == n+1 || n == 0 && v.beside != nil // what is planned stands beside the first
	for path := range needed {
		begun = begun || strings.HasPrefix(path, fmt.Sprintf("%s[%d].", t.Name, n))
	}
	if begun && n < t.Most {
		n++
	}
	return n
}

// adds is the line that adds entry n, counted from 0, of a table.
func adds(t *job.Table, n int) form.Row {
	what := strings.ToLower(t.Title[:1]) + t.Title[1:]
	if t.Name == "drive_point" {
		what = "point"
	}
	return form.Row{
		ID: fmt.Sprintf("%s[%d]", t.Name, n), Adds: true, Label: fmt.Sprintf("%s %d", what, n+1),
		Group: addGroup(t), Help: t.Help + " Enter begins one; so does its first value, typed.",
	}
}

// addGroup is the heading over the lines that add.
func addGroup(t *job.Table) string {
	switch t.Name {
	case "drive_point":
		return t.Title
	case "wound":
		return "Wound once more"
	}
	return "More readings"
}

// add begins the entry of the marked line, and marks its first field; ok is false on a line
// that adds nothing.
func (v *View) add(s *session.Session) (ok bool) {
	row := v.form.Focused()
	if !row.Adds {
		return false
	}
	v.adding = entryOf(row.ID + ".")
	v.form = v.form.WithRows(v.rows(s))
	for _, r := range v.form.Rows {
		if strings.HasPrefix(r.ID, row.ID+".") {
			v.form = v.form.FocusID(r.ID)
			break
		}
	}
	s.Settle()
	return true
}

// entryOf is the entry that a field's path is in, counted like [View.adding].
func entryOf(path string) map[string]int {
	table, rest, ok := strings.Cut(path, "[")
	n := 0
	if _, err := fmt.Sscanf(rest, "%d", &n); !ok || err != nil {
		return nil
	}
	return map[string]int{table: n + 1}
}

// isMany reports whether a table of that name comes many times.
func isMany(name string) bool {
	t, ok := job.TableOf(name)
	return ok && t.Many()
}
