package session

import (
	"fmt"
	"path/filepath"

	"slotwright/winding/quantity"
	"slotwright/winding/shelf"
)

// Folder is the folder of the job's file, "." for a job without one.
func (s *Session) Folder() string {
	if s.Path == "" {
		return "."
	}
	return filepath.Dir(s.Path)
}

// Offer is what the records of the jobs in the folder have for a field that the job leaves empty, with
// its source. They are read, and compared with the job, in the background, and read again once the job
// was saved; until then, and where they have nothing, ok is false. Nothing is put into the job.
func (s *Session) Offer(path string) (h shelf.Hint, ok bool) {
	if _, _, given := s.doc.Typed(path); given || !shelf.Offered(path) {
		return h, false
	}
	folder, j := s.Folder(), s.Job()
	about := fmt.Sprintf("%s\n%v", folder, s.mark)
	s.Later("bench", about, func() any {
		list, _, _ := shelf.Read(folder)
		return shelf.Learn(list)
	})
	value, _, _ := s.Answer("bench", about)
	bench, there := value.(shelf.Bench)
	if !there {
		return h, false
	}
	about += "\n" + s.doc.Text()
	s.Later("offers", about, func() any { return bench.Offers(j) })
	value, _, _ = s.Answer("offers", about)
	list, _ := value.([]shelf.Hint)
	for _, h := range list {
		if h.Path == path {
			return h, true
		}
	}
	return h, false
}

// TakeOffer puts what the records have into its field, as a guess, and says so.
func (s *Session) TakeOffer(h shelf.Hint) {
	s.Edit(s.doc.Set(h.Path, h.Typed, quantity.Choice{}))
	s.Say(h.String() + " is in, as a guess; ctrl+z takes it back")
}

// OfferText says what the records have for a field, and how it is taken.
func OfferText(h shelf.Hint) string {
	return "This bench has: " + h.String() + ". f9 takes it, as a guess."
}
