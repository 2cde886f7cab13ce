package session

import (
	"fmt"
	"slices"
	"strings"

	"slotwright/winding/job"
)

// mostChanges are reported by name; of more, only how many.
const mostChanges = 3

// changed says in words what differs from one document to the next: "B turns 17 → 18".
func changed(from, to job.Document) string {
	if t := tableChanged(from, to); t != "" {
		return t
	}
	var list []string
	for _, path := range fieldsChanged(from, to) {
		list = append(list, fmt.Sprintf("%s %s → %s", fieldName(from, path), typedIn(from, path), typedIn(to, path)))
	}
	if n := len(list) - mostChanges; n > 0 {
		list = append(list[:mostChanges], fmt.Sprintf("%d more", n))
	}
	if len(list) == 0 {
		return "words that are no field's"
	}
	return strings.Join(list, ", ")
}

// tableChanged says which trial, or which reading, came or went; "" where none did.
func tableChanged(from, to job.Document) string {
	for i := range job.Tables {
		t := &job.Tables[i]
		was, is := from.Count(t.Name), to.Count(t.Name)
		switch {
		case !t.Many() || was == is:
		case t.Name == "trial" && is > was:
			return "trial " + missing(to, from) + " is there"
		case t.Name == "trial":
			return "trial " + missing(from, to) + " is gone"
		case is > was:
			return fmt.Sprintf("%s %d is there", lower(t.Title), is)
		default:
			return fmt.Sprintf("%s %d is gone", lower(t.Title), was)
		}
	}
	return ""
}

// missing is the name of a trial that one document has and the other has not.
func missing(has, not job.Document) string {
	var names []string
	for i := range not.Job().Trials {
		names = append(names, trialName(not, i))
	}
	for i := range has.Job().Trials {
		if name := trialName(has, i); !slices.Contains(names, name) {
			return name
		}
	}
	return "one"
}

// fieldsChanged are the fields that differ between two documents.
func fieldsChanged(from, to job.Document) (list []string) {
	for _, path := range paths(from, to) {
		if typedIn(from, path) != typedIn(to, path) {
			list = append(list, path)
		}
	}
	return list
}

// paths are all fields that either document may have.
func paths(from, to job.Document) []string {
	var list []string
	for _, in := range job.Fields {
		table, _ := job.TableOf(in.Table)
		n := 1
		if table.Many() {
			n = max(from.Count(in.Table), to.Count(in.Table))
		}
		for i := range n {
			list = append(list, in.PathAt(i))
		}
	}
	return list
}

// typedIn is a field's text in a document, with its unit.
func typedIn(doc job.Document, path string) string {
	text, u, given := doc.Typed(path)
	if !given || text == "" {
		return "nothing"
	}
	return strings.TrimSpace(text + " " + u.Name)
}
