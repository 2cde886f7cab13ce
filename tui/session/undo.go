package session

import (
	"fmt"

	"slotwright/winding/job"
)

// maxUndo is how many edits can be taken back.
const maxUndo = 500

// Edit makes a document the current one and keeps the one before for undo.
func (s *Session) Edit(doc job.Document) {
	s.merging = ""
	s.edit(doc)
}

// Type sets a field as typed. Edits of one field after another merge into one step.
func (s *Session) Type(path, text string) {
	doc := s.doc.Set(path, text, s.Units)
	if doc.Refused() == "" && s.merging == path && len(s.undo) > 0 {
		s.redo = nil
		s.put(doc)
		return
	}
	s.edit(doc)
	s.merging = path
}

// Settle ends a typed edit: what is typed next, into the same field too, is another step of
// undo.
func (s *Session) Settle() { s.merging = "" }

func (s *Session) edit(doc job.Document) {
	if why := doc.Refused(); why != "" {
		s.Warn(why)
		return
	}
	if doc.Text() == s.doc.Text() {
		return
	}
	s.undo = append(s.undo, s.doc.Text())
	if len(s.undo) > maxUndo {
		s.undo = s.undo[1:]
	}
	s.redo = nil
	s.put(doc)
}

// Undo takes the last edit back; Redo does it again. Each says what came of it.
func (s *Session) Undo() {
	if len(s.undo) == 0 {
		s.Say("nothing to undo")
		return
	}
	s.merging = ""
	s.redo = append(s.redo, s.doc.Text())
	last := job.Parse(s.undo[len(s.undo)-1])
	s.undo = s.undo[:len(s.undo)-1]
	what := changed(s.doc, last)
	s.put(last)
	s.Say(fmt.Sprintf("undone: %s; %d more to undo", what, len(s.undo)))
}

// Redo does again what was undone.
func (s *Session) Redo() {
	if len(s.redo) == 0 {
		s.Say("nothing to redo")
		return
	}
	s.merging = ""
	s.undo = append(s.undo, s.doc.Text())
	next := job.Parse(s.redo[len(s.redo)-1])
	s.redo = s.redo[:len(s.redo)-1]
	what := changed(s.doc, next)
	s.put(next)
	s.Say("done again: " + what)
}
