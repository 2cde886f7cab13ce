package session

import (
	"fmt"
	"strconv"
	"strings"

	"slotwright/winding/job"
	"slotwright/winding/quantity"
	"slotwright/wiretable"
)

// maxUndo is how many edits can be undone.
const maxUndo = 500

// step is an edit that can be undone or redone: the text on the other side of it, and the field that
// was typed into, "" where none was.
type step struct{ text, typed string }

// fields are those that differ from one document to the next, the one typed into first: what was typed
// may have been distributed to others.
func (k step) fields(from, to job.Document) []string {
	list := fieldsChanged(from, to)
	if k.typed != "" {
		list = append([]string{k.typed}, list...)
	}
	return list
}

// Edit makes a document the current one and keeps the one before for undo.
func (s *Session) Edit(doc job.Document) {
	s.merging = ""
	s.edit(doc)
}

// Type sets a field as typed, and reports whether the job took it. Successive edits of one field merge
// into one step.
func (s *Session) Type(path, text string) (taken bool) {
	doc := s.doc.Set(path, text, s.Units)
	if doc.Refused() == "" && s.BeingTyped() == path {
		s.put(doc)
		return true
	}
	redo := s.redo
	s.merging = ""
	if s.edit(doc) {
		s.merging, s.aside = path, redo
		s.undo[len(s.undo)-1].typed = path
	}
	return doc.Refused() == ""
}

// Leave restores the job exactly as it was before a field was typed into: the unit of its key, what was
// created with it and what could be redone included. A field that is not being typed is left as it is.
func (s *Session) Leave(path string) {
	if path == "" || s.BeingTyped() != path {
		return
	}
	before := s.undo[len(s.undo)-1].text
	s.undo, s.redo, s.merging = s.undo[:len(s.undo)-1], s.aside, ""
	s.put(job.Parse(before))
}

// Settle ends a typed edit: what is typed next, even into the same field, is another step of undo.
func (s *Session) Settle() {
	if doc, said := unfolded(s.doc, s.merging); said != "" {
		s.put(doc)
		s.Say(said)
	}
	s.merging = ""
}

// unfolded is a document in which a value that gives more than its own field is distributed to its
// fields: a wire with its strands, a slot's width × depth. said describes it, "" where there is nothing
// to do.
func unfolded(doc job.Document, path string) (_ job.Document, said string) {
	if path == "slot.area" {
		if next, width, depth, ok := doc.Shaped(); ok {
			return next, "a parallel slot " + width + " wide and " + depth + " deep, which its shape, width and depth now say in the place of the area"
		}
	}
	return unbundled(doc, path)
}

// unbundled is a document in which a wire that was typed with its strands, "5 x 0.6 mm", is both: the
// wire, and the strands in their own field. said describes it, "" where there is nothing to do.
func unbundled(doc job.Document, path string) (_ job.Document, said string) {
	table, isWire := strings.CutSuffix(path, "gauge")
	if !isWire {
		return doc, ""
	}
	typed, _, _ := doc.Typed(path)
	count, wire, found := strings.Cut(strings.NewReplacer("×", "x", "*", "x").Replace(typed), "x")
	n, err := strconv.Atoi(strings.TrimSpace(count))
	wire = strings.TrimSpace(wire)
	if _, bad := wiretable.Parse(wire); !found || err != nil || n < 1 || bad != nil {
		return doc, ""
	}
	next := doc.Set(path, wire, quantity.Choice{})
	next = next.Set(table+"strands", strconv.Itoa(n), quantity.Choice{})
	if next.Refused() != "" {
		return doc, ""
	}
	return next, fmt.Sprintf("%d strands of %s", n, wire)
}

// BeingTyped is the field whose last typed edit is not settled, "" when there is none.
func (s *Session) BeingTyped() string {
	if len(s.undo) == 0 {
		return ""
	}
	return s.merging
}

// SaidBefore is the previous value of the field that is being typed, with its unit, "" for nothing.
func (s *Session) SaidBefore() string {
	doc := job.Parse(s.undo[len(s.undo)-1].text)
	text, u, given := doc.Typed(s.merging)
	if in, found := job.InputAt(s.merging); given && found && in.Kind == job.Number {
		text = strings.TrimSpace(text + " " + u.Name)
	}
	return text
}

// edit reports whether there was something to change.
func (s *Session) edit(doc job.Document) (changed bool) {
	if why := doc.Refused(); why != "" {
		s.Warn(why)
		return false
	}
	if doc.Text() == s.doc.Text() {
		return false
	}
	doc = keepRecords(s.doc, doc, func(trial int) laid {
		if list := s.outcome.Trials; trial < len(list) {
			return laid{list[trial].Span, list[trial].Layers, list[trial].Kind}
		}
		return laid{}
	})
	s.undo = append(s.undo, step{text: s.doc.Text()})
	if len(s.undo) > maxUndo {
		s.undo = s.undo[1:]
	}
	s.redo = nil
	s.put(doc)
	return true
}

// Undo undoes the last edit; Redo redoes it. Each says what changed, and returns the fields that differ
// now.
func (s *Session) Undo() (fields []string) {
	if len(s.undo) == 0 {
		s.Say("nothing to undo")
		return nil
	}
	s.merging = ""
	back := s.undo[len(s.undo)-1]
	s.redo = append(s.redo, step{s.doc.Text(), back.typed})
	last := job.Parse(back.text)
	s.undo = s.undo[:len(s.undo)-1]
	what := changed(s.doc, last)
	fields = back.fields(s.doc, last)
	s.put(last)
	s.Say(fmt.Sprintf("undone: %s; %d more to undo", what, len(s.undo)))
	return fields
}

// Redo redoes what was undone.
func (s *Session) Redo() (fields []string) {
	if len(s.redo) == 0 {
		s.Say("nothing to redo")
		return nil
	}
	s.merging = ""
	again := s.redo[len(s.redo)-1]
	s.undo = append(s.undo, step{s.doc.Text(), again.typed})
	next := job.Parse(again.text)
	s.redo = s.redo[:len(s.redo)-1]
	what := changed(s.doc, next)
	fields = again.fields(s.doc, next)
	s.put(next)
	s.Say("done again: " + what)
	return fields
}
