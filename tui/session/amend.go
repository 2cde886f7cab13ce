package session

import "slotwright/winding/job"

// Amend makes a document the current one as part of the last edit: undo takes both back.
func (s *Session) Amend(doc job.Document) {
	if why := doc.Refused(); why != "" {
		s.Warn(why)
		return
	}
	s.put(doc)
}
