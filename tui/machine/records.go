package machine

import (
	"slotwright/tui/form"
	"slotwright/tui/session"
)

// NewRecords is the form of what was really wound; beside adds to a row what is shown beside its input,
// what was planned and what that makes of the reading, and reports whether it is shown.
func NewRecords(beside func(s *session.Session, r *form.Row) bool) *View {
	return &View{name: "Wound", tables: []string{"wound"}, beside: beside}
}

// Marked is the path of the marked field, "" where there is none.
func (v *View) Marked() string { return v.form.Focused().ID }
