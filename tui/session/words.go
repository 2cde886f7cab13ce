package session

import (
	"fmt"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
)

// FieldName is a field as a person says it: "B turns", "Spin-up reading 2: volts", "Slot area"; a path
// that is no field's stays as it is.
func (s *Session) FieldName(path string) string { return fieldName(s.doc, path) }

func fieldName(doc job.Document, path string) string {
	in, ok := job.InputAt(path)
	if !ok {
		return path
	}
	_, i, _ := job.SplitPath(path)
	table, _ := job.TableOf(in.Table)
	switch {
	case in.Table == "trial":
		return trialName(doc, i) + " " + lower(in.WholeLabel())
	case table.Many():
		return fmt.Sprintf("%s %d: %s", table.Title, i+1, lower(in.WholeLabel()))
	case in.Table == "old" || in.Table == "drive":
		return table.Title + ": " + lower(in.WholeLabel())
	}
	return in.WholeLabel()
}

// WoundAs is a trial in a legend: "17 turns 15 AWG", or what of it is not given yet.
func (s *Session) WoundAs(trial int) string {
	o := &s.outcome.Trials[trial]
	switch wire := strings.TrimPrefix(o.Wire, "1 × "); {
	case !o.Turns.Known() && wire == "":
		return "empty"
	case !o.Turns.Known():
		return "no turns, " + wire
	case wire == "":
		return quantity.Screen.Number(o.Turns.Value, 0) + " turns, no wire"
	default:
		return quantity.Screen.Number(o.Turns.Value, 0) + " turns " + wire
	}
}

// trialName is a trial's name in a document.
func trialName(doc job.Document, i int) string {
	if trials := doc.Job().Trials; i < len(trials) && trials[i].Name != "" {
		return trials[i].Name
	}
	return fmt.Sprintf("trial %d", i+1)
}

// lower begins a name in lower case for use within a sentence, unless it is all capitals.
func lower(name string) string {
	if len(name) > 1 && strings.ToUpper(name[:2]) == name[:2] {
		return name
	}
	return strings.ToLower(name[:1]) + name[1:]
}

// ProblemText is what is wrong in a field, with the field's name; a problem outside any field has its
// line in the file.
func (s *Session) ProblemText(p job.Problem) string {
	where := s.FieldName(p.Path)
	if _, ok := job.InputAt(p.Path); !ok {
		where = fmt.Sprintf("line %d of the file", p.Line)
	}
	p.Path, p.Fix = "", Mend(p)
	return where + ": " + p.Text()
}

// NotTaken says that a value that cannot be used, whose problem is shown at its field, was left there.
func (s *Session) NotTaken(p job.Problem) string {
	return fmt.Sprintf("%s: %s cannot be used and stays there, marked", s.FieldName(p.Path), p.Read)
}

// Mend is what to do about a problem, worded for the screen: the file's keys, which include the units,
// are not visible there.
func Mend(p job.Problem) string {
	in, ok := job.InputAt(p.Path)
	if !ok || !strings.Contains(p.Fix, "in the key") {
		return p.Fix
	}
	names := make([]string, len(in.Dim))
	for i, u := range in.Dim {
		names[i] = u.Name
	}
	return "give it in " + strings.Join(names, " or ")
}
